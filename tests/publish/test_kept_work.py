"""What is kept for the next build changes no byte of it, holds nothing private, and may be broken.

Every book here is built with the work of the build before it at hand and again with none; both must
give the same files, or refuse the book in the same words. Processes are begun for few recipes here.
"""

from __future__ import annotations

import logging
import os
import pickle
import random
import shutil
import subprocess
import sys
import zlib
from collections.abc import Callable
from datetime import date
from itertools import pairwise
from pathlib import Path

import pytest
import yaml
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import PluginError
from mkdocs.structure.pages import Page

from stillroom.core.book import open_book
from stillroom.publish import workers
from stillroom.publish.late_pages import PagesAsTheyWere
from stillroom.publish.leaves import open_library
from stillroom.publish.library import Library
from stillroom.publish.plugin import StillroomPlugin
from stillroom.publish.workers import work_out_all
from stillroom.saving import shelf

ROOT = Path(__file__).resolve().parents[2]
NAMES = (
    "almond-shortbread",
    "bramble-jelly",
    "dried-orange-garland",
    "lavender-sugar",
    "quince-ratafia",
)
NOON = 1795867200
LARDER = "moon flour:\n  contains: [wheat]\n  from: plant\n  price: 500 g for 7.77\n"
Files = dict[str, bytes]


def write_book(folder: Path) -> None:
    (folder / "recipes").mkdir(parents=True)
    (folder / "pages" / "pictures").mkdir(parents=True)
    for name in NAMES:
        shutil.copy(ROOT / "recipes" / f"{name}.md", folder / "recipes")
        shutil.copy(ROOT / f"site_demo/pages/pictures/{name}.svg", folder / "pages" / "pictures")
    (folder / "pages" / "index.md").write_text("Words.\n", encoding="utf-8")
    (folder / "larder.yml").write_text(LARDER, encoding="utf-8")
    write_settings(folder, {})


def write_settings(folder: Path, said: dict[str, object]) -> None:
    config = {
        "site_name": "A short book",
        "site_url": "https://short.example/",
        "docs_dir": "pages",
        "theme": {"name": "material", "font": False},
        "plugins": ["search", {"stillroom": said}],
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")


class Builder:
    """Builds a book in this process, with a shelf of kept work or without one."""

    def __init__(self, book: Path, patch: pytest.MonkeyPatch, log: pytest.LogCaptureFixture):
        self.book, self.patch, self.log, self.noon = book, patch, log, NOON
        self.forgets = False

    def forget(self, plugin: StillroomPlugin) -> None:
        """Take from a plugin what it has at hand of earlier builds in this process."""
        plugin.at_hand.clear()
        plugin.as_they_were = PagesAsTheyWere()

    def built(self, shelf: str) -> Files | list[str]:
        """Return every file of the site, or what the build says is wrong."""
        self.patch.setenv("STILLROOM_CACHE", shelf)
        self.patch.setenv("SOURCE_DATE_EPOCH", str(self.noon))
        self.log.clear()
        site = self.book.parent / "site"
        stopped = False
        try:
            config = load_config(str(self.book / "mkdocs.yml"), site_dir=str(site))
            if self.forgets or shelf == "off":
                self.forget(config.plugins["stillroom"])
            config.plugins.on_startup(command="serve", dirty=False)
            build(config)
        except (PluginError, SystemExit):
            stopped = True
        # while a book is served, its first faults stand on a page instead of stopping it
        found = [one.getMessage() for one in self.log.records if one.levelno >= logging.ERROR]
        assert found or not stopped
        if found:
            return found
        files = (path for path in sorted(site.rglob("*")) if path.is_file())
        return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}

    def agrees(self, shelf: Path) -> Files | list[str]:
        kept, new = self.built(str(shelf)), self.built("off")
        if isinstance(kept, dict) and isinstance(new, dict):
            assert list(kept) == list(new)
            assert [name for name in kept if kept[name] != new[name]] == []
        else:
            assert kept == new
        return kept


@pytest.fixture
def builder(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> Builder:
    write_book(tmp_path / "book")
    return Builder(tmp_path / "book", monkeypatch, caplog)


Edit = Callable[[Builder, random.Random], None]


def _any_recipe(builder: Builder, dice: random.Random) -> Path:
    return dice.choice(sorted((builder.book / "recipes").glob("*.md")))


def _rewrite(path: Path, change: Callable[[str], str]) -> None:
    path.write_text(change(path.read_text(encoding="utf-8")), encoding="utf-8")


def another_amount(builder: Builder, dice: random.Random) -> None:
    old, new = dice.choice(["500 g", "1 l", "900 g", "225 g"]), f"{dice.randint(200, 950)} g"
    _rewrite(_any_recipe(builder, dice), lambda text: text.replace(old, new, 1))


def another_sentence(builder: Builder, dice: random.Random) -> None:
    words = " ".join(dice.choices(["stir", "softly", "again", "*slowly*", "&", "twice"], k=5))
    _rewrite(_any_recipe(builder, dice), lambda text: f"{text}\n{words.capitalize()}.\n")


def another_title(builder: Builder, dice: random.Random) -> None:
    number = dice.randint(1, 3)  # two of one title are refused
    _rewrite(
        _any_recipe(builder, dice),
        lambda text: "\n".join(
            f"title: Number {number}" if line.startswith("title:") else line
            for line in text.split("\n")
        ),
    )


def one_less(builder: Builder, dice: random.Random) -> None:
    if len(list((builder.book / "recipes").glob("*.md"))) > 4:
        _any_recipe(builder, dice).unlink()


def as_it_was(builder: Builder, dice: random.Random) -> None:
    shutil.copy(ROOT / "recipes" / f"{dice.choice(NAMES)}.md", builder.book / "recipes")


def another_picture(builder: Builder, dice: random.Random) -> None:
    pictures = sorted((builder.book / "pages" / "pictures").glob("*.svg"))
    chosen, size = dice.choice(pictures), dice.randint(100, 400)
    drawing = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {size} 90"></svg>'
    chosen.write_text(drawing, encoding="utf-8")


def another_setting(builder: Builder, dice: random.Random) -> None:
    choices: list[dict[str, object]] = [
        {"country": "US", "language": "en_US"},
        {"country": "DE"},
        {"altitude_m": 1800},
        {"giving_days": [{"name": "Midsummer", "day": "24 June"}]},
        {"units": "us"},
        {},
    ]
    write_settings(builder.book, dice.choice(choices))


def another_day(builder: Builder, dice: random.Random) -> None:
    builder.noon += dice.choice([1, 1, 20, 200]) * 24 * 60 * 60


def another_larder(builder: Builder, dice: random.Random) -> None:
    said = dice.choice(["milk", "egg", "nothing"])
    _rewrite(builder.book / "larder.yml", lambda _: f"caster sugar:\n  contains: {said}\n")


def a_fault(builder: Builder, dice: random.Random) -> None:
    wrong = dice.choice(["kind: jamm", "makes: 3 cupps", "picture: nowhere.svg", "was: [ratafia]"])
    _rewrite(_any_recipe(builder, dice), lambda text: text.replace("---\n", f"---\n{wrong}\n", 1))


EDITS: tuple[Edit, ...] = (
    another_amount,
    another_sentence,
    another_title,
    one_less,
    as_it_was,
    another_picture,
    another_setting,
    another_day,
    another_larder,
    a_fault,
)


def test_each_sort_of_edit_gives_the_book_that_a_build_from_nothing_gives(
    builder: Builder, tmp_path: Path
) -> None:
    dice, shelf = random.Random(4), tmp_path / "shelf"
    outcomes = [builder.agrees(shelf)]
    for edit in EDITS:
        edit(builder, dice)
        outcomes.append(builder.agrees(shelf))
        if isinstance(outcomes[-1], list):  # mend it, so that the next is seen
            shutil.rmtree(builder.book)
            write_book(builder.book)
    sites = [one for one in outcomes if isinstance(one, dict)]
    assert len(sites) > 6
    assert any(one != other for one, other in pairwise(sites))
    assert any(isinstance(one, list) for one in outcomes)


@pytest.mark.hundred
@pytest.mark.parametrize("seed", range(2027, 2032))
def test_a_hundred_random_edits(builder: Builder, tmp_path: Path, seed: int) -> None:
    dice, shelf = random.Random(seed), tmp_path / "shelf"
    refused = 0
    for _ in range(20):
        dice.choice(EDITS)(builder, dice)
        if isinstance(builder.agrees(shelf), list):
            refused += 1
            shutil.rmtree(builder.book / "recipes")
            shutil.rmtree(builder.book / "pages")
            write_book(builder.book)
    assert 0 < refused < 12


def kept_files(shelf: Path) -> list[Path]:
    return sorted(shelf.rglob("*.kept"))


def unpacked(path: Path) -> bytes:
    parts = pickle.loads(path.read_bytes()[64:])
    return b"\n".join(zlib.decompress(part) for part in parts if part)


def test_what_is_kept_is_used_and_a_damaged_file_is_not(
    builder: Builder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shelf = tmp_path / "shelf"
    builder.forgets = True  # as each build in a process of its own does
    first = builder.built(str(shelf))
    assert len(kept_files(shelf)) == len(NAMES)
    asked: list[int] = []
    real = workers.work_out_all

    def counted(paths: list[Path], *rest: object) -> object:
        asked.append(len(paths))
        return real(paths, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr("stillroom.publish.leaves.work_out_all", counted)
    assert builder.built(str(shelf)) == first
    one, two, three, *_ = kept_files(shelf)
    one.write_bytes(one.read_bytes()[:-1])
    two.write_bytes(b"")
    three.write_bytes(three.read_bytes()[:64] + zlib.compress(pickle.dumps("x")))
    assert builder.built(str(shelf)) == first
    assert builder.built(str(shelf)) == first
    assert asked == [0, 3, 0]


def test_while_a_book_is_served_pages_are_written_as_they_were(
    builder: Builder, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    written: list[bool] = []
    real = PagesAsTheyWere.of

    def counted(self: PagesAsTheyWere, page: Page) -> str | None:
        found = real(self, page)
        if page.file.src_uri.startswith("r/"):
            written.append(found is not None)
        return found

    monkeypatch.setattr(PagesAsTheyWere, "of", counted)
    shelf = str(tmp_path / "shelf")
    builder.forgets = True
    first = builder.built(shelf)
    builder.forgets = False
    assert not any(written)
    assert builder.built(shelf) == first
    assert written[len(NAMES) :] == [False, *[True] * (len(NAMES) - 1)]
    settings = builder.book / "mkdocs.yml"
    _rewrite(settings, lambda text: text.replace("A short book", "Another book"))
    builder.built(shelf)
    assert not any(written[-len(NAMES) :])
    own = builder.book / "own"
    (own / "partials").mkdir(parents=True)
    _rewrite(settings, lambda text: text.replace("theme:\n", "theme:\n  custom_dir: own\n"))
    builder.built(shelf)
    (own / "partials" / "footer.html").write_text("<footer>Ours</footer>\n", encoding="utf-8")
    again = builder.built(shelf)
    assert isinstance(again, dict)
    pages = [again[f"r/{name}/index.html"] for name in NAMES]
    assert all(b"<footer>Ours</footer>" in data for data in pages)


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="who may write where is told otherwise")
def test_a_folder_in_which_others_may_write_is_left_alone(builder: Builder, tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    builder.built(str(shelf))
    kept_files(shelf)[0].parent.chmod(0o777)
    for path in kept_files(shelf):
        path.unlink()
    assert isinstance(builder.built(str(shelf)), dict)
    assert kept_files(shelf) == []


def test_a_shelf_that_cannot_be_made_stops_nothing(builder: Builder, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    assert isinstance(builder.built(str(tmp_path / "file" / "shelf")), dict)


def test_nothing_private_is_kept(builder: Builder, tmp_path: Path) -> None:
    names = ("Nell Tarrowby", "Zebedee Quillfeather", "14 Thrift Lane")
    people = "".join(f"  - name: {name}\n    address: {names[2]}\n" for name in names[:2])
    giving = f"giving list: Winter\ngiving day: 2027-12-18\nhouseholds:\n{people}"
    (builder.book / "winter.yml").write_text(giving, encoding="utf-8")
    recipe = builder.book / "recipes" / "lavender-sugar.md"
    text = recipe.read_text(encoding="utf-8").replace("---\n", "---\n# for the mantelpiece\n", 1)
    recipe.write_text(text, encoding="utf-8")
    shelf = tmp_path / "shelf"
    assert isinstance(builder.built(str(shelf)), dict)
    every = b"\n".join(map(unpacked, kept_files(shelf)))
    assert b"Lavender sugar" in every
    for word in (*names, "winter.yml", "Tarrowby", "7.77", "777", "mantelpiece", str(tmp_path)):
        assert word.encode() not in every, word
    # a name that is written into a recipe is refused before anything of it is worked out
    shutil.rmtree(shelf)
    _rewrite(recipe, lambda text: text + f"\nFor {names[0]}.\n")
    assert isinstance(builder.built(str(shelf)), list)
    assert kept_files(shelf) == []


def test_two_builds_at_once_share_a_shelf(builder: Builder, tmp_path: Path) -> None:
    shelf = tmp_path / "shelf"
    around = {**os.environ, "STILLROOM_CACHE": str(shelf), "SOURCE_DATE_EPOCH": str(NOON)}
    begun = [
        subprocess.Popen(
            [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(tmp_path / name)],
            cwd=builder.book,
            env=around,
        )
        for name in ("one", "two")
    ]
    assert [one.wait() for one in begun] == [0, 0]
    sites = [
        {
            path.relative_to(tmp_path / name).as_posix(): path.read_bytes()
            for path in (tmp_path / name).rglob("*")
            if path.is_file()
        }
        for name in ("one", "two")
    ]
    served = builder.built(str(shelf))
    assert isinstance(served, dict)
    del served["sitemap.xml.gz"]  # no build leaves one, and serving does not care
    assert sites[0] == sites[1] == served


def test_several_processes_work_out_what_one_does(
    builder: Builder, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = open_book(builder.book / "mkdocs.yml")
    library, larder = Library(book, (), date(2026, 11, 28)), book.own_larder().larder
    paths = book.recipe_files()
    monkeypatch.setenv("STILLROOM_PROCESSES", "1")
    alone = list(work_out_all(paths, library, larder))
    monkeypatch.setenv("STILLROOM_PROCESSES", "2")
    monkeypatch.setattr(workers, "PAYS_FROM", 3)
    together = list(work_out_all(paths, library, larder))
    assert [worked for worked, _ in together] == [worked for worked, _ in alone]
    assert None not in [worked for worked, _ in together]


IN_COPIES = """
import sys
from datetime import date
from pathlib import Path
from stillroom.core.book import open_book
from stillroom.publish import workers
from stillroom.publish.library import Library

book = open_book(Path("mkdocs.yml"))
library, larder = Library(book, (), date(2026, 11, 28)), book.own_larder().larder
paths = book.recipe_files()
alone = [worked for worked, _ in workers.work_out_all(paths, library, larder)]
workers.PAYS_FROM, workers._FIRST = 3, 2
done = list(workers.work_out_all(paths, library, larder))
together = [worked for worked, _ in done]
assert None not in together
assert together == alone
print(workers._way_to_begin(), sum(bool(packed) for _, packed in done))
"""


@pytest.mark.skipif(sys.platform != "linux", reason="elsewhere a process is made anew: see above")
def test_copies_of_a_process_work_out_what_it_does(builder: Builder) -> None:
    around = {**os.environ, "STILLROOM_PROCESSES": "2"}
    made = subprocess.run(
        [sys.executable, "-c", IN_COPIES], cwd=builder.book, env=around, capture_output=True
    )
    assert made.stdout.decode().split() == ["fork", str(len(NAMES) - 2)], made.stderr.decode()


def test_where_no_process_can_be_begun_one_does_all(
    builder: Builder, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError("no further process")

    monkeypatch.setenv("STILLROOM_PROCESSES", "2")
    monkeypatch.setattr(workers, "PAYS_FROM", 3)
    monkeypatch.setattr(workers, "ProcessPoolExecutor", refuse)
    book = open_book(builder.book / "mkdocs.yml")
    assert len(open_library(book, date(2026, 11, 28)).recipes) == len(NAMES)


def test_the_variable_names_the_folder_or_switches_it_off(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("STILLROOM_CACHE", "off")
    assert shelf.shelf_folder() is None
    monkeypatch.setenv("STILLROOM_CACHE", str(tmp_path))
    assert shelf.shelf_folder() == tmp_path
    monkeypatch.delenv("STILLROOM_CACHE")
    usual = shelf.shelf_folder()
    assert usual is not None
    assert usual.name == "stillroom"
