"""The wall's second table: how a name may be written, packed or wrapped up in what is published."""

from __future__ import annotations

import base64
import bz2
import codecs
import gzip
import io
import lzma
import os
import shutil
import sqlite3
import struct
import tarfile
import unicodedata
import urllib.parse
import zipfile
import zlib
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
import yaml
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen
from PIL import Image

from publish.test_wall import build, small_book
from publish.test_wall_shapes import DATA, LIST, NAME
from stillroom.core.book import open_book
from stillroom.core.private.seeking import Seeker, hold
from stillroom.core.private.shapes import find_private_shape
from stillroom.core.private.words import list_private_words
from stillroom.publish.wall import find_private, know_private_words
from stillroom.saving.places import published_folders

N = NAME.encode()
ZOE = "To Zoë Ängström"
PHONE = "+44 1632 960 961"


def chunked(kind: bytes, data: bytes) -> bytes:
    def chunk(name: bytes, inner: bytes) -> bytes:
        return (
            struct.pack(">I", len(inner))
            + name
            + inner
            + struct.pack(">I", zlib.crc32(name + inner))
        )

    head = chunk(b"IHDR", b"\0\0\0\1\0\0\0\1\x08\0\0\0\0")
    points = chunk(b"IDAT", zlib.compress(b"\0\0"))
    return b"\x89PNG\r\n\x1a\n" + head + chunk(kind, data) + points + chunk(b"IEND", b"")


def taped(mode: str) -> bytes:
    out = io.BytesIO()
    with tarfile.open(fileobj=out, mode=mode) as archive:
        member = tarfile.TarInfo("a.txt")
        member.size = len(N)
        archive.addfile(member, io.BytesIO(N))
    return out.getvalue()


def zipped(
    name: str, data: bytes | str, way: int = zipfile.ZIP_DEFLATED, note: bytes = b""
) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", way) as archive:
        archive.writestr(name, data)
        archive.comment = note
    return out.getvalue()


def photographed(sort: str, **said: object) -> bytes:
    out = io.BytesIO()
    Image.new("RGB", (8, 8)).save(out, sort, **said)
    return out.getvalue()


def with_xmp(photograph: bytes, said: bytes) -> bytes:
    """Put XMP into a JPEG as its first part (XMP part 3, 1.1.3); Pillow does it from 11 on only."""
    part = b"http://ns.adobe.com/xap/1.0/\0" + said
    return photograph[:2] + b"\xff\xe1" + struct.pack(">H", len(part) + 2) + part + photograph[2:]


def exif() -> Image.Exif:
    said = Image.Exif()
    said[0x010E] = NAME  # the picture's description
    said[0x9C9B] = NAME.encode("utf-16-le")  # its title, as Windows writes it
    return said


def typeface(flavour: str | None) -> bytes:
    made = FontBuilder(1000, isTTF=True)
    made.setupGlyphOrder([".notdef"])
    made.setupCharacterMap({})
    made.setupGlyf({".notdef": TTGlyphPen(None).glyph()})
    made.setupHorizontalMetrics({".notdef": (500, 0)})
    made.setupHorizontalHeader()
    made.setupNameTable({"familyName": NAME, "styleName": "Regular"})
    made.setupOS2()
    made.setupPost()
    out = io.BytesIO()
    made.font.flavor = flavour
    made.save(out)
    return out.getvalue()


def database() -> bytes:
    # from Python 3.13 on one that is left open is warned of
    with closing(sqlite3.connect(":memory:")) as kept:
        kept.execute("create table people(name)")
        kept.execute("insert into people values (?)", (NAME,))
        kept.commit()
        return kept.serialize()


def document(stream: bytes) -> bytes:
    return b"%PDF-1.4\n<<>>stream\n" + stream + b"\nendstream\n%%EOF"


XMP = b"<x:xmpmeta><dc:creator>" + N + b"</dc:creator></x:xmpmeta>"
PACKED: dict[str, bytes] = {
    "a picture's packed words": chunked(b"zTXt", b"Comment\0\0" + zlib.compress(N)),
    "its words of many languages": chunked(b"iTXt", b"Comment\0\0\0\0\0" + N),
    "these packed": chunked(b"iTXt", b"XML:com.adobe.xmp\0\1\0\0\0" + zlib.compress(N)),
    "its colours' name": chunked(b"iCCP", b"a\0\0" + zlib.compress(b"desc\0\0\0\x14" + N)),
    "its camera's facts": chunked(b"eXIf", exif().tobytes()[6:]),
    "an archive behind a picture": chunked(b"tEXt", b"a\0b") + zipped("a.txt", N),
    "a packed text behind a picture": chunked(b"tEXt", b"a\0b") + gzip.compress(N),
    "a photograph's comment": photographed("JPEG", comment=N),
    "a photograph's camera": photographed("JPEG", exif=exif()),
    "a photograph's XMP": with_xmp(photographed("JPEG"), XMP),
    "another photograph's XMP": photographed("WEBP", xmp=XMP),
    "another photograph's camera": photographed("WEBP", exif=exif()),
    "a small picture's comment": photographed("GIF", comment=N),
    "a scan's description": photographed("TIFF", description=NAME),
    "a typeface": typeface(None),
    "a typeface for the web": typeface("woff"),
    "a letter of a word processor": zipped(
        "word/document.xml", "<w:t>Zebedee</w:t></w:r><w:r><w:t> Quill</w:t><w:t>feather</w:t>"
    ),
    "another word processor's": zipped("content.xml", f"<text:p>{NAME}</text:p>"),
    "a name within an archive": zipped(f"{NAME}.txt", "x"),
    "an archive's comment": zipped("a.txt", "x", note=N),
    "an archive by bzip2": zipped("a.txt", N, zipfile.ZIP_BZIP2),
    "an archive in an archive in one": zipped("c.zip", zipped("b.zip", zipped("a.txt", N))),
    "an archive that unpacks itself": b"#!/bin/sh\nexit\n" * 9 + zipped("a.txt", N),
    "an archive without its end": zipped("a.txt", N)[:-60],
    "tar": taped("w"),
    "tar, gzip": taped("w:gz"),
    "tar, bzip2": taped("w:bz2"),
    "tar, xz": taped("w:xz"),
    "bzip2": bz2.compress(N),
    "xz": lzma.compress(N),
    "lzma": lzma.compress(N, format=lzma.FORMAT_ALONE),
    "zlib": zlib.compress(N),
    "gzip, its second part": gzip.compress(b"x") + gzip.compress(N),
    "gzip, its file's name": b"\x1f\x8b\x08\x08\0\0\0\0\0\xff" + N + b"\0\3\0",
    "gzip, cut off": gzip.compress(b"To " + N + b" " + os.urandom(900))[:-200],
    "a packed drawing": gzip.compress(b"<svg><title>" + N + b"</title></svg>"),
    "a document": document(zlib.compress(b"(Zebedee Quillfeather) Tj")),
    "a document, letter by letter": document(b"[(Zebedee) -250 (Quill) 20 (feather)] TJ"),
    "a document, by number": document(b"<" + N.hex().encode() + b"> Tj"),
    "a document, in five letters": document(base64.a85encode(zlib.compress(N)) + b"~>"),
    "a document, in two": document(zlib.compress(N).hex().encode() + b">"),
    "a document's author": b"%PDF-1.4\n/Author (Zebedee\\040Quillfeather)",
    "a document's author in UTF-16": b"%PDF <FEFF" + NAME.encode("utf-16-be").hex().encode(),
    "base64 of what is packed": base64.b64encode(gzip.compress(N)),
    "base64 twice": base64.b64encode(base64.b64encode(b"to " + N + b" with love")),
    "base64 of UTF-16": base64.b64encode(NAME.encode("utf-16-le")),
    "base64 of a picture": b"<image href='data:x;base64,"
    + base64.b64encode(chunked(b"zTXt", b"a\0\0" + zlib.compress(N))),
    "a database": database(),
    "a program": b"\x7fELF\0\2" + N + b"\3",
}  # fmt: skip
WRITTEN: dict[str, bytes] = {
    "UTF-32": NAME.encode("utf-32"),
    "UTF-32 without its mark": NAME.encode("utf-32-be"),
    "UTF-7": ZOE.encode("utf-7"),
    "as DOS had it": ZOE.encode("cp437"),
    "as old Macintoshes had it": ZOE.encode("mac_roman"),
    "as Windows has it": ZOE.encode("cp1252"),
    "read wrongly and saved": ZOE.encode().decode("latin-1").encode(),
    "its letters lost": ZOE.encode("ascii", "replace"),
    "accents apart": unicodedata.normalize("NFD", ZOE).encode(),
    "accents apart in UTF-16": unicodedata.normalize("NFD", ZOE).encode("utf-16"),
    "without accents": b"To Zoe Angstrom",
    "as German writes them": "For Jürgen Grünwald".replace("ü", "ue").encode(),
    "with an accent more": "To Zebedée Quillfeather".encode(),
    "wide letters": "Ｚｅｂｅｄｅｅ Ｑｕｉｌｌｆｅａｔｈｅｒ".encode(),
    "bold letters": "𝐙𝐞𝐛𝐞𝐝𝐞𝐞 𝐐𝐮𝐢𝐥𝐥𝐟𝐞𝐚𝐭𝐡𝐞𝐫".encode(),
    "with what is not seen": "Zebe\u2063dee\ufe0f \u202eQuillfeather\u202c".encode(),
    "an old line end": b"To Zebedee\rQuillfeather",
    "in a quotation": b"> To Zebedee\n> Quillfeather",
    "in a remark of a script": b"// To Zebedee\n// Quillfeather",
    "in a remark of a style": b"/* To Zebedee\n * Quillfeather */",
    "parted at a line's end": b"To Zebedee Quill-\nfeather",
    "emphasised": b"To **Zebedee** *Quillfeather*",
    "half emphasised": b"To Zebedee Quill**feather**",
    "two cells": b"Zebedee,Quillfeather,12",
    "surname first": b"Quillfeather, Zebedee",
    "a visiting card": b"N:Quillfeather;Zebedee;;;",
    "hyphens": b"zebedee-quillfeather",
    "an address of mail": b"write to zebedee.quillfeather@post.example",
    "one word": b"see @ZebedeeQuillfeather",
    "two cells of a page": b"<td>Zebedee</td><td>Quillfeather</td>",
    "over a forced line end": b"Zebedee<br>Quillfeather",
    "parted by a tag": b"Zebedee Quill<wbr>feather",
    "parted by a long tag": b"Zebedee <span style='" + b"x" * 900 + b"'>Quillfeather</span>",
    "letters by name": b"Zo&euml; &Auml;ngstr&ouml;m",
    "letters by number, twice": b"&amp;#90;ebedee Quillfeather",
    "percents of percents": urllib.parse.quote(urllib.parse.quote(NAME)).encode(),
    "letters of a style": b'content: "\\5a ebedee\\20 Quillfeather"',
    "letters of a script": b"'\\132ebedee\\040Quillfeather'",
    "put together": b"'Zebedee ' + 'Quillfeather'",
    "bytes of a program": ", ".join(f"0x{byte:02x}" for byte in N).encode(),
    "hexadecimal with colons": N.hex(":").encode(),
    "a word processor's letters": b"{\\rtf1 Zo\\'eb \\'c4ngstr\\'f6m}",
    "a word processor's numbers": b"{\\rtf1 Zo\\u235? \\u196?ngstr\\u246?m}",
    "pieces of a drawing": b"<text><tspan>Zebedee</tspan><tspan>Quillfeather</tspan></text>",
    "an address over two lines": b"7, Rope Walk\nSlipway End",
    "figures for letters": b"Zebedee Qui11feather",
    "all of them": b"z3b3d33 qu111f34th3r",
    "from its end": NAME[::-1].encode(),
    "each letter 13 further on": codecs.encode(NAME, "rot13").encode(),
    "base85 in quotes": b'{"to":"' + base64.b85encode(b"To " + N) + b'"}',
    "ascii85 in quotes": b"x='" + base64.a85encode(b"for " + N) + b"';",
    "base85 by itself": base64.b85encode(N),
    "ascii85 by itself": base64.a85encode(N),
    "bold within a word": b"<b>Ze</b>bedee Quill<i>fea</i>ther",
    "soft hyphens": "Zebe\u00addee Quill&shy;feather".encode(),
    "gaps of no width": "Ze\u200bbedee Quill&#8203;feather".encode(),
    "a telephone": b"Ring 01632 960961.",
    "a telephone, apart": b"Ring 01632/96-09-61.",
    "a telephone from abroad": b"Ring +441632960961",
    "a telephone to be pressed": b"<a href='tel:+44-1632-960961'>",
}
CALLED = (
    "Zebedee Quillfeather.txt", "zebedee-quillfeather.txt", "zebedeequillfeather.svg",
    "Zebedee%20Quillfeather.txt", "Zebedee Quillfeather/a.txt", "Zebedee/Quillfeather.txt",
    unicodedata.normalize("NFD", "Zoë Ängström.txt"),
    "CardZebedeeQuillfeather2.pdf", "quillfeather-zebedee.txt",
)  # fmt: skip
# what stands in many a book and says nothing of anybody, by what might be taken for the list's
HARMLESS = (
    "Zebedee is one, Quill a pen, a feather light.",
    "zebedee quillfeathersome",
    "Make heather mead. Heather-mead keeps. <b>Heather</b> <i>mead</i>",
    "Rosemary salt, rosemarysalt, salt: rosemary",
    "Call 1632, weigh 960 961 g, take 01 6 32 96 09.",
    "7 rope walks to the slipway's end",
    "| name | amount | unit |\n| --- | --- | --- |\n| to taste | 2 | g |",
    "name, to, and so on: avoid what you never had",
    "households: many. They name what they avoid.",
)


@pytest.fixture(scope="module")
def seeker() -> Seeker:
    households = [
        *DATA["households"],
        {"name": "Jürgen Grünwald", "phone": PHONE},
        {"name": "Heather Mead"},
        {"name": "Rosemary Salt"},
    ]
    words = list_private_words(
        yaml.safe_dump({"giving list": "A", "households": households}, allow_unicode=True).encode(),
        "list.yml",
    )
    return Seeker(words, lambda word: word in {"rosemary", "heather mead", "rosemary salt"})


@pytest.mark.parametrize("form", [*PACKED, *WRITTEN])
def test_a_name_is_found_in_every_form(seeker: Seeker, form: str) -> None:
    assert seeker.seek(hold((PACKED | WRITTEN)[form])) is not None


@pytest.mark.parametrize("words", HARMLESS)
def test_what_is_like_it_passes(seeker: Seeker, words: str) -> None:
    for data in (
        words.encode(),
        zipped("a.txt", words),
        words.encode("utf-16"),
        words.encode()[::-1],
    ):
        held = hold(data)
        assert seeker.seek(held) is None
        assert find_private_shape(data, held.texts) == (0, "")
        assert held.sealed == ""


@pytest.mark.parametrize("called", CALLED)
def test_a_name_that_a_file_or_a_folder_bears(tmp_path: Path, called: str) -> None:
    folder = small_book(tmp_path)
    (folder / "list.yml").write_text(LIST, encoding="utf-8")
    (folder / "pages" / called).parent.mkdir(parents=True, exist_ok=True)
    (folder / "pages" / called).write_bytes(b"x")
    opened = open_book(folder / "mkdocs.yml")
    found = find_private([opened.docs_dir], know_private_words(opened))
    assert ["name or address" in problem.what for problem in found] == [True]


LISTS: dict[str, bytes] = {
    "bzip2": bz2.compress(LIST.encode()),
    "xz": lzma.compress(LIST.encode()),
    "UTF-32": LIST.encode("utf-32"),
    "a picture's packed words": chunked(b"zTXt", b"a\0\0" + zlib.compress(LIST.encode())),
    "a document": document(zlib.compress(LIST.encode())),
    "a letter": zipped("w.xml", "".join(f"<w:p>{row}</w:p>" for row in LIST.splitlines())),
    "a spreadsheet": zipped("s.xml", "<t>name</t><t>to</t><t>basket</t><t>avoid</t><t>Jo</t>"),
    "a page's table": b"<tr><th>name</th><th>to</th><th>basket</th></tr><tr><td>Jo</td></tr>",
    "a table of bars": b"| name | to | basket |\n| --- | --- | --- |\n| Jo | Jo | small |\n",
    "a fenced part": b"```\n" + LIST.encode() + b"```\n",
    "a change shown": b"".join(b"+" + row + b"\n" for row in LIST.encode().splitlines()),
    "a letter's quotation": b"".join(b">> " + row + b"\n" for row in LIST.encode().splitlines()),
    "old line ends": LIST.encode().replace(b"\n", b"\r"),
    "without its first line": LIST.partition("\n")[2].encode(),
    "its households alone": yaml.safe_dump({"households": DATA["households"]}).encode(),
}


@pytest.mark.parametrize("form", LISTS)
def test_a_list_is_known_in_every_form(form: str) -> None:
    held = hold(LISTS[form])
    assert find_private_shape(LISTS[form], held.texts)[1] == "giving list"


def _twice(path: Path) -> None:
    os.link(path.parents[1] / "list.yml", path)


def _linked(path: Path) -> None:
    os.symlink(path.parents[1] / "list.yml", path)


def _round(path: Path) -> None:
    path.mkdir()
    os.symlink(path, path / "again", target_is_directory=True)
    os.symlink("nowhere", path / "gone")
    os.symlink("itself", path / "itself")
    shutil.copy(path.parents[1] / "list.yml", path / "b")


@pytest.mark.parametrize("way", [_twice, _linked, _round])
def test_a_list_reached_by_a_link(tmp_path: Path, way: Callable[[Path], None]) -> None:
    folder = small_book(tmp_path)
    (folder / "list.yml").write_text(LIST, encoding="utf-8")
    way(folder / "pages" / "a.md")
    found = find_private(published_folders(open_book(folder / "mkdocs.yml")).values())
    assert ["giving list" in problem.what for problem in found] == [True]


SEALED: dict[str, bytes] = {
    "font": b"wOF2" + bytes(90),
    "Zstandard": b"\x28\xb5\x2f\xfd" + bytes(90),
    "7z": b"7z\xbc\xaf\x27\x1c" + bytes(90),
    "rare way": zipped("a.txt", N, zipfile.ZIP_LZMA),
    "too much": gzip.compress(bytes(31_000_000), 1),
    "password": b"%PDF-1.4\n/Encrypt 3 0 R",
}


@pytest.mark.parametrize("form", SEALED)
def test_what_cannot_be_read_is_said_not_to_be_known(form: str) -> None:
    assert form in hold(SEALED[form]).sealed or form == "too much"
    assert hold(SEALED[form]).sealed


def test_a_build_says_what_it_could_not_look_through(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    (folder / "list.yml").write_text(LIST, encoding="utf-8")
    (folder / "pages" / "own.woff2").write_bytes(SEALED["font"])
    built = build(folder)
    assert built.returncode == 0, built.stderr
    assert built.stderr.count("is not known") == 1  # and not of the faces that the book brings
    assert "own.woff2" in built.stderr


def test_a_build_says_who_may_be_spoken_of(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    (folder / "list.yml").write_text(LIST, encoding="utf-8")
    (folder / "pages" / "thanks.md").write_text("# Thanks\n\nMrs Quillfeather\n", encoding="utf-8")
    for _ in range(2):  # it is told by every build
        built = build(folder)
        assert built.returncode == 0, built.stderr
        assert "thanks.md: line 3 " in built.stderr
        assert 'says "Mrs Quillfeather": somebody of list.yml:' in built.stderr
