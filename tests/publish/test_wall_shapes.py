"""The wall's table: every shape in which something private was hidden, and what is none of it."""

from __future__ import annotations

import base64
import csv
import gzip
import io
import json
import os
import quopri
import struct
import urllib.parse
import zipfile
import zlib
from pathlib import Path

import pytest
import yaml

from publish.test_wall import build, small_book
from stillroom.core.book import open_book
from stillroom.core.private.seeking import Seeker, hold
from stillroom.core.private.shapes import find_giving_list, find_private_shape
from stillroom.core.private.words import list_private_words
from stillroom.publish.wall import find_private, know_private_words
from stillroom.saving.places import published_folders

DATA = {
    "giving list": "Winter 2027",
    "giving day": "2027-12-18",
    "baskets": {"small": {"eat": 2}},
    "makes": [{"recipe": "lavender-sugar"}],
    "households": [
        {"name": "Zebedee Quillfeather", "basket": "small", "address": "7 Rope Walk, Slipway End"},
        {"name": "The Marrowbanks", "to": "Ottilie and Dov", "basket": "small"},
        {"name": "Rosemary", "basket": "small"},
        {"name": "The choir", "basket": "small"},
        {"name": "Zoë Ängström", "basket": "small"},
    ],
}
LIST = yaml.safe_dump(DATA, sort_keys=False, allow_unicode=True)
NAME = "Zebedee Quillfeather"


def table(delimiter: str) -> bytes:
    out = io.StringIO()
    rows = csv.writer(out, delimiter=delimiter)
    rows.writerow(["name", "to", "basket", "delivery"])
    rows.writerow(["Jo Stranger", "Jo", "small", "by post"])
    return out.getvalue().encode()


def zipped(name: str, data: bytes) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, data)
    return out.getvalue()


def commented(mark: str) -> bytes:
    return "".join(f"{mark}{line}\n" for line in LIST.splitlines()).encode()


def drawn(*, points: bytes = b"", words: bytes = b"", behind: bytes = b"") -> bytes:
    """Return a PNG with such points, such words beside them, and more behind its end."""
    chunks = [(b"IHDR", b"\0\0\0\1\0\0\0\1\x08\0\0\0\0"), (b"tEXt", b"Title\0" + words)]
    chunks += [(b"IDAT", points), (b"IEND", b"")]
    parts = [
        struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))
        for kind, data in chunks
    ]
    return b"\x89PNG\r\n\x1a\n" + b"".join(parts) + behind


# what a list was saved as; the first of each pair is where it lies
LISTS: dict[str, tuple[str, bytes]] = {
    "as it is": ("list.yml", LIST.encode()),
    "no ending": ("list", LIST.encode()),
    "an editor's copy": ("list.yml~", LIST.encode()),
    "a copy": ("list.yml.bak", LIST.encode()),
    "a hidden file": (".list.yml.swp", LIST.encode()),
    "a picture's ending": ("list.png", LIST.encode()),
    "behind a picture": ("list.png", drawn(behind=LIST.encode())),
    "in a picture's words": ("list.png", drawn(words=LIST.encode())),
    "a mark of UTF-8": ("list.yml", LIST.encode("utf-8-sig")),
    "an indented key": (
        "list.yml",
        b"".join(b"  " + row + b"\n" for row in LIST.encode().splitlines()),
    ),
    "UTF-16": ("list.txt", LIST.encode("utf-16")),
    "UTF-16 without its mark": ("list.txt", LIST.encode("utf-16-le")),
    "UTF-16, big end first": ("list.txt", LIST.encode("utf-16-be")),
    "Latin-1": ("list.yml", LIST.encode("latin-1")),
    "JSON": ("list.json", json.dumps(DATA, indent=1).encode()),
    "JSON in one line": ("list.json", json.dumps(DATA).encode()),
    "a script": ("list.js", b"const list = " + json.dumps(DATA).encode()),
    "a table, commas": ("people.csv", table(",")),
    "a table, semicolons": ("people.csv", table(";")),
    "a table, tabs": ("people.tsv", table("\t")),
    "commented out": ("list.yml", commented("# ")),
    "commented out, slashes": ("list.txt", commented("// ")),
    "in a comment of a page": ("page.md", b"# A page\n\n<!--\n" + LIST.encode() + b"-->\n"),
    "in a page's head": ("page.md", b"---\n" + LIST.encode() + b"---\n\nWords.\n"),
    "after other words": ("notes.md", b"Notes of mine\n\n" + LIST.encode()),
    "capitals": ("list.yml", LIST.replace("giving list", "Giving List").encode()),
    "ends of lines of Windows": ("list.yml", LIST.replace("\n", "\r\n").encode()),
    "base64": ("list.txt", base64.encodebytes(LIST.encode())),
    "packed": ("list.yml.gz", gzip.compress(LIST.encode())),
    "in an archive": ("lists.zip", zipped("list.yml", LIST.encode())),
    "with a letter of nought": ("list.yml", LIST.encode() + b"\x00"),
}
TO_NAME = f"To {NAME}".encode()
# how a name that is on a list beside the book stands in a file to be published
NAMES: dict[str, tuple[str, bytes]] = {
    "plain": ("page.md", f"# Thanks\n\nTo {NAME}.\n".encode()),
    "capitals": ("page.md", f"# Thanks\n\nTo {NAME.upper()}.\n".encode()),
    "in a picture's words": ("a.png", drawn(words=NAME.encode())),
    "in a picture's words, in base64": ("a.png", drawn(words=base64.b64encode(TO_NAME))),
    "among a picture's points": ("a.png", drawn(points=NAME.encode("latin-1"))),
    "two lines": ("page.md", b"# Thanks\n\nTo Zebedee\nQuillfeather.\n"),
    "a hard gap": ("page.md", "To Zebedee\u00a0Quillfeather".encode()),
    "a soft hyphen": ("page.md", "To Zebedee Quill\u00adfeather".encode()),
    "a file's name": ("zebedee-quillfeather.txt", b"zebedee_quillfeather"),
    "an address": ("page.md", b"Bring it to 7 Rope Walk, Slipway End by noon"),
    "letters by number": ("page.html", "".join(f"&#{ord(letter)};" for letter in NAME).encode()),
    "by hexadecimal": ("a.html", "".join(f"&#x{ord(letter):x};" for letter in NAME).encode()),
    "between tags": ("page.html", b"<p>To <b>Zebedee</b> <i>Quill</i>feather</p>"),
    "in an address of the web": ("a.txt", b"?to=" + urllib.parse.quote(NAME).encode()),
    "with plus signs": ("a.txt", b"?to=" + urllib.parse.quote_plus(NAME).encode()),
    "wholly in percents": ("a.txt", "".join(f"%{ord(letter):02x}" for letter in NAME).encode()),
    "letters of JSON": ("a.json", "".join(f"\\u{ord(letter):04x}" for letter in NAME).encode()),
    "base64": ("a.txt", b"x " + base64.b64encode(f"To {NAME}, with love".encode())),
    "base64 in a picture": (
        "a.svg", b"<image href='data:;base64," + base64.b64encode(NAME.encode()) + b"'/>"),
    "hexadecimal": ("a.txt", NAME.encode().hex().encode()),
    "UTF-16": ("a.txt", NAME.encode("utf-16")),
    "UTF-16 within other bytes": ("a.bin", b"\x01\x02\x03" + NAME.encode("utf-16-le") + b"\x04"),
    "a calendar's folded line": ("a.ics", b"SUMMARY:For Zebedee Quill\r\n feather\r\n"),
    "quoted printable": ("a.vcf", quopri.encodestring("Zoë Ängström".encode())),
    "letters beyond ASCII": ("page.md", "To ZOË ÄNGSTRÖM".encode()),
    "such letters in Latin-1": ("page.txt", "To Zoë Ängström".encode("latin-1")),
    "a spreadsheet": ("people.xlsx", zipped("xl/sharedStrings.xml", f"<t>{NAME}</t>".encode())),
    "packed": ("a.txt.gz", gzip.compress(NAME.encode())),
    "a recipe's words": ("../recipes/note.md", f"For {NAME}".encode()),
    "the theme's own folder": ("../own/extra.html", f"<p>{NAME}</p>".encode()),
    "what is on a card": ("page.md", b"For Ottilie and Dov"),
}  # fmt: skip
# what stands in many a book and says nothing of anybody
HARMLESS = {
    "a herb like a name": "Strip the rosemary. Rosemary keeps its leaves; so do heather and sage.",
    "a plain word": "Taken to the choir at midsummer.",
    "one name of two": "Zebedee was here, and a Quillfeather.",
    "a longer word": "Zebedee Quillfeathers",
    "how a list is written": "# Giving list: how to write one\n\nA giving list names households.",
    "a word in passing": "See your giving list: it is private.",
    "a recipe's table": "name,amount,unit\nsugar,200,g\n",
    "nothing": "",
    "a row of dashes": "-" * 5000 + "\n" + "#" * 5000 + "\n" + "> " * 3000,
}


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = small_book(tmp_path_factory.mktemp("shapes"))
    config = yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))
    config["theme"]["custom_dir"] = "own"
    (folder / "own").mkdir()
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    return folder


def problems_of(folder: Path, *, names: bool) -> list[str]:
    opened = open_book(folder / "mkdocs.yml")
    seeker = know_private_words(opened) if names else None
    return [str(problem) for problem in find_private(published_folders(opened).values(), seeker)]


@pytest.mark.parametrize("shape", LISTS)
def test_a_giving_list_in_a_published_folder(book: Path, shape: str) -> None:
    name, data = LISTS[shape]
    path = book / "pages" / name
    path.write_bytes(data)
    try:
        found = problems_of(book, names=False)
    finally:
        path.unlink()
    assert len(found) == 1
    assert name in found[0]
    assert "private giving list" in found[0]


@pytest.mark.parametrize("shape", NAMES)
def test_a_name_of_a_list_kept_beside_the_book(book: Path, shape: str) -> None:
    name, data = NAMES[shape]
    kept = book / "private-notes" / "list.yml"
    kept.parent.mkdir(exist_ok=True)
    kept.write_text(LIST, encoding="utf-8")
    path = book / "pages" / name
    path.write_bytes(data)
    try:
        found = problems_of(book, names=True)
    finally:
        path.unlink()
    assert len(found) == 1, found
    assert Path(name).name in found[0]
    assert "private-notes/list.yml:" in found[0]
    assert "Zebedee" not in found[0].replace("zebedee-", "")


@pytest.mark.parametrize("words", HARMLESS.values(), ids=HARMLESS)
def test_what_says_nothing_of_anybody_passes(book: Path, words: str) -> None:
    seeker = Seeker(list_private_words(LIST.encode(), "list.yml"), lambda word: word == "rosemary")
    assert seeker.seek(hold(words.encode())) is None
    assert find_private_shape(words.encode(), [words]) == (0, "")
    assert find_giving_list(words) == 0


def test_three_single_names_are_taken_for_the_list() -> None:
    rows = [{"name": name} for name in ("Ottilie", "Merrin", "Tamsin", "Heather")]
    text = yaml.safe_dump({"giving list": "A", "households": rows}).encode()
    seeker = Seeker(list_private_words(text, "list.yml"), lambda word: word == "heather")
    assert seeker.seek(hold(b"Ottilie likes it, and so does Merrin.")) is None
    assert seeker.seek(hold(b"Merrin, Heather and Ottilie like it.")) is None
    assert seeker.seek(hold(b"Ottilie, Merrin and Tamsin like it.")) is not None


@pytest.mark.parametrize("linked", ["folder", "file", "folder of a pack"])
def test_links_are_followed(tmp_path: Path, linked: str) -> None:
    folder = small_book(tmp_path / "book")
    away = tmp_path / "away"
    away.mkdir()
    (away / "list").write_text(LIST, encoding="utf-8")
    if linked == "file":
        os.symlink(away / "list", folder / "pages" / "words.md")
    else:
        os.symlink(away, folder / "pages" / "linked", target_is_directory=True)
        os.symlink(folder / "pages", away / "round", target_is_directory=True)
    assert problems_of(folder, names=True)


@pytest.fixture(scope="module")
def pack(tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    from giving.lists import TODAY, demo_book, demo_recipes, read_dict, small_list
    from stillroom.giving.pack import Effort, pack_files, work_out

    read = read_dict(small_list())
    made = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.1))
    return pack_files(made)


def test_every_file_of_a_pack_is_known_by_itself(
    pack: dict[str, bytes], tmp_path: Path, book: Path
) -> None:
    telling = [name for name in pack if not name.startswith("fonts/") and name != "pack.css"]
    assert len(telling) >= 14
    for name in telling:
        path = book / "pages" / f"copied-{name}"
        path.write_bytes(pack[name] or b"x")
        found = problems_of(book, names=False)
        path.unlink()
        assert found or name == ".stillroom-pack", name


def test_a_pack_without_its_mark_is_refused_and_nothing_is_built(
    pack: dict[str, bytes], tmp_path: Path
) -> None:
    folder = small_book(tmp_path)
    for name, data in pack.items():
        if not name.startswith("."):
            path = folder / "pages" / "copied" / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
    built = build(folder)
    assert built.returncode == 1
    assert "part of a pack" in built.stderr
    assert not (folder / "site").exists()


HOOK = """
from mkdocs.structure.files import File

def on_files(files, config):
    files.append(File.generated(config, "extra.txt", content="For Zebedee Quillfeather"))
    return files

def on_post_build(config):
    import pathlib
    pathlib.Path(config.site_dir, "late.txt").write_text("For Zebedee Quillfeather", "utf-8")
"""


def test_what_other_hands_add_is_sought_through_before_anything_is_published(
    tmp_path: Path,
) -> None:
    folder = small_book(tmp_path)
    (folder / "hooks.py").write_text(HOOK, encoding="utf-8")
    with (folder / "mkdocs.yml").open("a", encoding="utf-8") as file:
        file.write("hooks: [hooks.py]\n")
    assert build(folder).returncode == 0
    before = sorted((folder / "site").rglob("*"))
    (folder / "giving").mkdir()
    (folder / "giving" / "list.yml").write_text(LIST, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "extra.txt" in built.stderr
    assert "late.txt" in built.stderr
    assert "Traceback" not in built.stderr
    assert sorted((folder / "site").rglob("*")) == before
