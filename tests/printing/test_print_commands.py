"""`stillroom print ...` as it is typed: what it refuses in plain words, and what it keeps."""

from __future__ import annotations

import io
from pathlib import Path

import pdfplumber
import pypdf
import pytest
from click.testing import CliRunner, Result
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

from stillroom.cli import main
from stillroom.printing.booklet import booklet_order, count_pages, impose_booklet

from .conftest import MM, ROOT

SALT = str(ROOT / "recipes" / "rosemary-salt.md")
SOUP = str(ROOT / "recipes" / "layered-soup-mix.md")
LABELS = "2,4,15,18.5,90,65"


def run(*words: str) -> Result:
    return CliRunner().invoke(main, ["print", *words])


def test_a_second_print_takes_the_place_of_the_first_and_of_nothing_else(tmp_path: Path) -> None:
    out = tmp_path / "salt.pdf"
    for _ in range(2):
        done = run("sheet", SALT, "--out", str(out))
        assert done.exit_code == 0, done.output
    changed = out.read_bytes().replace(b"/ModDate(D:1980", b"/ModDate(D:2027")
    out.write_bytes(changed)
    refused = run("sheet", SALT, "--out", str(out))
    assert refused.exit_code == 2
    assert "is there already" in refused.output
    assert out.read_bytes() == changed


def test_cards_of_one_recipe_fill_the_sheet(tmp_path: Path) -> None:
    def cards(*words: str) -> int:
        out = tmp_path / f"{len(words)}-{words[-1][-4:]}.pdf"
        done = run("cards", *words, "--out", str(out))
        assert done.exit_code == 0, done.output
        with pdfplumber.open(out) as pdf:
            assert len(pdf.pages) in (1, 2)
            return pdf.pages[0].extract_text().count("Rosemary salt")

    assert cards(SALT, "--size", "90x65") == 8
    assert cards(SALT, "--start-at", "3") == 6
    assert cards(SALT, "--count", "2") == 2
    # as many as the sheet still takes, and a whole new one where it takes none
    assert cards(SALT, "--used", "2,5,8") == 5
    assert cards(SALT, "--start-at", "3", "--used", "1,4") == 5
    assert cards(SALT, "--used", "1,2,3,4,5,6,7,8") == 8


# what is typed, its exit code (2 wrong usage, 1 a fault of the book), and what must be said
REFUSED = {
    "missing file": (["cards", "no-such.md"], 2, "no-such.md"),
    "missing sheet": (["sheet", "no-such.md"], 2, "no-such.md"),
    "no copies": (["cards", SALT, "--count", "0"], 2, "0"),
    "absurd count": (["cards", SALT, "--count", "999999"], 2, "999999"),
    "count that is no number": (["tags", SALT, "--count", "many"], 2, "many"),
    "unknown size": (["cards", SALT, "--size", "a3"], 2, "a3"),
    "place not on the sheet": (["cards", SALT, "--start-at", "9"], 2, "Place 9 is not on this"),
    "label sheet off the paper": (
        ["cards", SALT, "--label-sheet", "3,4,15,18,90,65"], 2, "off A4",
    ),
    "label sheet unreadable": (["cards", SALT, "--label-sheet", "two by four"], 2, "not a label"),
    "labels that overlap": (["cards", SALT, "--label-sheet", "2,4,5,5,50,50"], 2, "overlap"),
    "label too small": (["cards", SALT, "--label-sheet", LABELS + ",39,60"], 2, "readable words"),
    "label without height": (["cards", SALT, "--label-sheet", LABELS + ",88"], 2, "not a label"),
    "label over its pitch": (["tags", SALT, "--label-sheet", LABELS + ",91,60"], 2, "overlap"),
    "label that holds no card": (
        ["cards", SALT, "--label-sheet", LABELS + ",40,25"], 2, "a label of 40 x 25 mm",
    ),
    "round label not round": (
        ["tags", SALT, "--shape", "round", "--label-sheet", LABELS + ",60,50"], 2, "as high as",
    ),
    "folded card on a label": (
        ["cards", SALT, "--size", "folded-a6", "--label-sheet", LABELS], 2, "has no back",
    ),
    "two sides on a label": (
        ["cards", SOUP, "--label-sheet", LABELS], 2,
        'A label has no back: "Layered soup mix" needs two sides. Choose a larger label, or tags.',
    ),
    "round without a lid": (
        ["tags", SALT, "--shape", "round"], 2, "Measure the lid across: --lid 62.",
    ),
    "wrap without a bottle": (
        ["tags", SALT, "--shape", "wrap"], 2, "Measure the bottle: --bottle 52 --wall 70.",
    ),
    "wrap too low": (
        ["tags", SALT, "--shape", "wrap", "--bottle", "50", "--wall", "10"], 2, "no readable label",
    ),
    "wrap wider than the paper": (
        ["tags", SALT, "--shape", "wrap", "--bottle", "150", "--wall", "70"], 2, "does not go on",
    ),
    "no day": (["cards", SALT, "--made-on", "the other day"], 2, "is not a day"),
    "no folder of fonts": (["cards", SALT, "--fonts", "no-such-folder"], 2, "no-such-folder"),
    "sheet of nothing": (["sheet", SALT, "--makes", "a lot"], 2, "a lot"),
    "year of no day": (["year", "--give", "someday"], 2, "is not a day"),
    "year that is past": (["year", "--give", "2020-12-18"], 2, "2020-12-18 is past"),
    "bleed and booklet": (["book", "--bleed", "--booklet"], 2, "choose one of the two"),
    "cuts of nothing": (["cuts"], 2, "--lid 70, --bottle 52,70 or --box"),
    "no box": (["cuts", "--box", "a shoe box"], 2, "is not a box"),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_bad_use_is_refused_in_a_plain_line_and_writes_nothing(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    words, code, said = REFUSED[name]
    monkeypatch.chdir(ROOT)
    out = tmp_path / "made.pdf"
    done = run(*words, "--out", str(out))
    assert done.exit_code == code, done.output
    assert said in " ".join(done.output.replace("│", " ").split())
    assert "Traceback" not in done.output
    assert isinstance(done.exception, SystemExit)
    assert not out.exists()


@pytest.mark.parametrize(
    ("words", "lines"),
    [
        ([], True),
        (["--label-sheet", LABELS], False),
        (["--label-sheet", LABELS, "--cut-lines"], True),
    ],
    ids=["paper", "labels", "labels cut"],
)
def test_bought_labels_have_one_side_and_no_cut_lines_unless_asked(
    words: list[str], lines: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    out = tmp_path / "made.pdf"
    done = run("cards", SALT, *words, "--out", str(out))
    assert done.exit_code == 0, done.output
    with pdfplumber.open(out) as pdf:
        assert len(pdf.pages) == 1
        assert any(line["height"] > 800 for line in pdf.pages[0].lines) == lines  # A4: 842 points


@pytest.mark.parametrize(
    ("command", "label"),
    [(["cards"], (84, 60)), (["tags"], (80, 55)), (["tags", "--shape", "round"], (60, 60))],
    ids=["card", "tag", "round"],
)
def test_what_is_printed_is_as_large_as_the_bought_label(
    command: list[str], label: tuple[int, int], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    out = tmp_path / "made.pdf"
    sheet = f"{LABELS},{label[0]},{label[1]}"
    asked = ("--label-sheet", sheet, "--start-at", "4", "--count", "1", "--out", str(out))
    done = run(*command, SALT, *asked)
    assert done.exit_code == 0, done.output
    left, top = 15 + 90, 18.5 + 65  # the second of the second row
    with pdfplumber.open(out) as pdf:
        chars = [char for char in pdf.pages[0].chars if char["text"].strip()]
        assert min(char["x0"] for char in chars) / MM > left
        assert max(char["x1"] for char in chars) / MM < left + label[0]
        assert min(char["top"] for char in chars) / MM > top
        assert max(char["bottom"] for char in chars) / MM < top + label[1]


@pytest.mark.parametrize("command", ["cards", "tags", "sheet", "cuts", "year", "epub"])
def test_a_file_that_is_there_is_kept(
    command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    out = tmp_path / "kept.pdf"
    out.write_bytes(b"mine")
    words = {"sheet": [SALT], "cards": [SALT], "tags": [SALT], "cuts": ["--lid", "70"]}
    done = run(command, *words.get(command, []), "--out", str(out))
    assert done.exit_code == 2
    assert "is there already" in done.output
    assert out.read_bytes() == b"mine"


@pytest.mark.parametrize("command", ["cards", "tags", "sheet"])
def test_a_broken_recipe_is_named_with_its_line(command: str, tmp_path: Path) -> None:
    recipe = tmp_path / "broken.md"
    recipe.write_text("---\ntitle: Broken\nkind: infusoin\n---\n", encoding="utf-8")
    out = tmp_path / "made.pdf"
    done = run(command, str(recipe), "--out", str(out))
    assert done.exit_code == 1
    assert "broken.md:3:" in done.output
    assert not out.exists()


def test_the_year_shows_the_months_to_come_or_those_up_to_a_day(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    for words, title in (
        (["--from", "2026-11-25"], "October 2027"),
        (["--give", "2027-12-18"], "December 2027"),
        (["--give", "2027-12-18", "--from", "2027-03-01"], "February 2028"),
        ([SALT, "--from", "2026-11-25"], "October 2027"),
    ):
        out = tmp_path / f"{'-'.join(words).replace('/', '-')}.pdf"
        done = run("year", *words, "--out", str(out))
        assert done.exit_code == 0, done.output
        reader = pypdf.PdfReader(out)
        assert len(reader.pages) == 2
        assert reader.metadata is not None
        assert str(reader.metadata.title).endswith(f"the year to {title}")


# The fonts here are made in the test: no font of anybody's is needed.
def make_font(folder: Path, letters: str) -> None:
    """Write a font that has a box for each letter."""
    pen = TTGlyphPen(None)
    pen.moveTo((50, 0))
    for corner in ((50, 700), (450, 700), (450, 0)):
        pen.lineTo(corner)
    pen.closePath()
    box = pen.glyph()
    names = {ord(letter): f"u{ord(letter):04x}" for letter in letters}
    order = [".notdef", *names.values()]
    font = FontBuilder(1000, isTTF=True)
    font.setupGlyphOrder(order)
    font.setupCharacterMap(names)
    font.setupGlyf(dict.fromkeys(order, box))
    font.setupHorizontalMetrics(dict.fromkeys(order, (500, 50)))
    font.setupHorizontalHeader(ascent=800, descent=-200)
    font.setupNameTable(
        {"familyName": "Boxes of Ours", "styleName": "Regular", "psName": "BoxesOfOurs-Regular"}
    )
    font.setupOS2(sTypoAscender=800, sTypoDescender=-200)
    font.setupPost()
    font.save(folder / "boxes.ttf")


@pytest.mark.parametrize("name", ["שרה", "سارة", "数馬"], ids=["Hebrew", "Arabic", "Han"])
def test_a_name_in_another_script_is_set_from_a_folder_of_fonts(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    make_font(tmp_path, name)
    out = tmp_path / "card.pdf"
    without = run("cards", SALT, "--to", name, "--out", str(out))
    assert without.exit_code == 2
    assert name in without.output
    assert "--fonts" in without.output
    done = run("cards", SALT, "--to", name, "--fonts", str(tmp_path), "--out", str(out))
    assert done.exit_code == 0, done.output
    text = pypdf.PdfReader(out).pages[0].extract_text()
    assert all(letter in text for letter in name)


def page_marks(count: int) -> bytes:
    """Return A5 pages that each bear only their number."""
    from stillroom.printing.typesetting import _typst

    source = (
        '#set document(title: "Numbers")\n#set page(width: 148mm, height: 210mm)\n'
        f"#for n in range(1, {count + 1}) {{ if n > 1 {{ pagebreak() }}; [page #n] }}"
    )
    made = _typst().Compiler(input=source.encode()).compile(format="pdf")
    assert isinstance(made, bytes)
    return made


@pytest.mark.parametrize("count", [5, 8])
def test_each_side_of_a_booklet_bears_its_two_pages_on_halves_of_a4(count: int) -> None:
    made = impose_booklet(page_marks(count), count, "Numbers", ("en", "GB"))
    reader = pypdf.PdfReader(io.BytesIO(made))
    assert count_pages(made) == len(reader.pages)
    assert str(reader.trailer["/Root"]["/Lang"]).lower().startswith("en")
    assert reader.metadata is not None
    assert reader.metadata.title == "Numbers"
    for page, (left, right) in zip(reader.pages, booklet_order(count), strict=True):
        assert float(page.mediabox.width) / MM == pytest.approx(297, abs=0.2)
        assert float(page.mediabox.height) / MM == pytest.approx(210, abs=0.2)
        words = page.extract_text().split()
        assert words == [w for n in (left, right) if n for w in ("page", str(n))]
