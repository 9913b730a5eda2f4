"""The wall's third table: names taken apart, letters disguised, bytes in figures, and common prose.

Each sort has its two sides: what must be found, and what is like it and must pass.
"""

from __future__ import annotations

import base64
import binascii
import gzip
import zlib
from pathlib import Path

import pytest
import typst
import yaml

from publish.test_wall_forms import document
from publish.test_wall_shapes import DATA, LIST, NAME
from stillroom.core.private.seeking import Seeker, hold
from stillroom.core.private.shapes import find_private_shape
from stillroom.core.private.words import list_own_words, list_private_words
from stillroom.publish.wall import find_shapes

N = NAME.encode()
LETTER = f"For {NAME}, with love".encode()
DAMAGED = gzip.compress(b"To " + N + b" " + bytes(range(256)) * 40)


def unicode_table(letters: str) -> bytes:
    """Return a font's table that gives the letters the numbers from 1 on (ISO 32000-2, 9.10.3)."""
    rows = [f"<{number:04x}> <{ord(one):04x}>" for number, one in enumerate(letters, 1)]
    return (
        "/ToUnicode begincmap 1 begincodespacerange <0000> <ffff> endcodespacerange "
        f"{len(rows)} beginbfchar {' '.join(rows)} endbfchar endcmap"
    ).encode()


LETTERS = "".join(sorted(set(NAME)))
CODED = "".join(f"{LETTERS.index(one) + 1:04x}" for one in NAME).encode()
APART: dict[str, bytes] = {
    "fields of a program": b'{"first": "Zebedee", "last": "Quillfeather"}',
    "fields, surname first": b'{"surname":"Quillfeather","age":3,"given":"Zebedee"}',
    "fields in small letters": b'{"first": "zebedee", "age": 3, "last": "quillfeather"}',
    "fields a line each": b"first: Zebedee\nhouse: 7\nlast: Quillfeather\n",
    "a table with commas": b"Zebedee,12,small,Quillfeather\n",
    "a table with semicolons": b"Quillfeather;12;Zebedee\n",
    "a table with tabs": b"Zebedee\tsmall\tby post\tQuillfeather\n",
    "a table with bars": b"| Zebedee | small | Quillfeather |\n",
    "cells of a page": b"<tr><td>Zebedee</td><td>12</td><td>Quillfeather</td></tr>",
    "attributes": b'<p first="Zebedee" last="Quillfeather"/>',
    "an address of the web": b"?first=zebedee&basket=small&last=quillfeather&x=1",
    "a database's line": b"values ('Zebedee', 12, 'Quillfeather')",
    "an initial": b"To Zebedee Q. Quillfeather",
    "two initials": b"To Zebedee J. Q. Quillfeather",
    "a second name": b"To Zebedee Aloysius Quillfeather",
    "a nickname": b'To Zebedee "Zeb" Quillfeather',
    "one of a couple": b"To Zebedee and Ottilie Quillfeather",
    "of somewhere": b"To Zebedee van der Quillfeather",
    "of a couple on the list": b"To Nell Tarrowby",
    "without the list's initial": b"To Ada Penhallow",
    "a street without its town": b"at 7 Rope Walk",
    "a code of the post": b"Send it to QX51 9ZZ.",
}
DISGUISED: dict[str, bytes] = {
    "Cyrillic letters": "To Zеbеdее Quillfеаthеr".encode(),
    "Cyrillic capitals": "ZЕВЕDЕЕ QUILLFЕАТНЕR".encode(),
    "Greek letters": "Ζεbεdεε Quillfeαther".encode(),
    "one Cyrillic letter": "To Zebedee Quillfeathеr".encode(),
    "Armenian and Cherokee ones": "Ꮓebedee Qսillfeather".encode(),
    "small capitals": "ᴢᴇʙᴇᴅᴇᴇ Qᴜɪʟʟꜰᴇᴀᴛʜᴇʀ".encode(),
    "letters not seen": "".join(chr(0xE0000 + ord(one)) for one in NAME).encode(),
    "letters in discs": "".join(
        chr(0x1F150 + ord(one) - 65) if one != " " else one for one in NAME.upper()
    ).encode(),
    "letters spaced out": b"Z e b e d e e   Q u i l l f e a t h e r",
    "letters with points": b"Z.e.b.e.d.e.e.Q.u.i.l.l.f.e.a.t.h.e.r",
    "a tag for each letter": b"".join(b"<i>%c</i> " % letter for letter in N),
    "put together by a script": b"'Zebe' + 'dee Quill' + \"feather\"",
    "letters by number with %u": b"%u005A%u0065%u0062%u0065%u0064%u0065%u0065 Quillfeather",
    "letters by number with U+": b" ".join(b"U+%04X" % letter for letter in N),
}
MORSE = "--.. . -... . -.. . . / --.- ..- .. .-.. .-.. ..-. . .- - .... . .-."
SHORT: dict[str, bytes] = {
    "an initial for the first name": b"To Z. Quillfeather",
    "an initial, close by": b"Z.Quillfeather",
    "two initials for it": b"Z. Q. Quillfeather",
    "an initial behind": b"Quillfeather, Z.",
    "an initial, by capitals": b"Z. QUILLFEATHER",
    "an initial, by a line's end": b"From Z. Quillfeather's garden",
    "one of a couple by an initial": b"To B. Tarrowby",
    "an address of mail by an initial": b"zquillfeather@post.example",
    "another address of mail": b"quillfeatherz@post.example",
    "as the list addresses somebody": b"Thank you, Mrs Finch.",
    "that without its point": b"For Dr Bushell, with love",
    "a letter wrong": b"To Zebedee Quillfeathor",
    "a letter missing": b"To Zebedee Quilfeather",
    "a letter too many": b"To Zebedee Quillfeatherr",
    "two letters exchanged": b"To Zebedee Quillfaether",
    "a slip in the first name": b"To Zebeddee Quillfeather",
    "each word from its end": b"eedebeZ rehtaeflliuQ",
    "Morse": MORSE.encode(),
    "Morse without words": MORSE.replace("/ ", "").encode(),
    "Morse in other signs": MORSE.translate(str.maketrans("./-", "· −")).encode(),
}
FIGURES: dict[str, bytes] = {
    "base32": base64.b32encode(N),
    "base32 in small letters": base64.b32encode(N).lower(),
    "base32, its other alphabet": base64.b32hexencode(N),
    "base32 over lines": b"\n".join(
        base64.b32encode(N * 3)[at : at + 20] for at in range(0, 96, 20)
    ),
    "uuencode": b"begin 644 a.txt\n" + binascii.b2a_uu(N) + b"`\nend\n",
    "ascii85": base64.a85encode(N),
    "ascii85 in its marks": base64.a85encode(N, adobe=True),
    "base85": base64.b85encode(N),
    "numbers with commas": ", ".join(map(str, N)).encode(),
    "numbers with gaps": " ".join(map(str, N)).encode(),
    "numbers of a script": b"String.fromCharCode(" + ",".join(map(str, N)).encode() + b")",
    "numbers in eights": " ".join(f"{letter:o}" for letter in N).encode(),
    "numbers in twos": " ".join(f"{letter:08b}" for letter in N).encode(),
    "numbers in twos, at one": "".join(f"{letter:08b}" for letter in N).encode(),
    "gzip with a wrong sum": gzip.compress(N)[:-8] + b"\1\2\3\4\5\6\7\0",
    "gzip, damaged behind": DAMAGED[:-40] + bytes(40),
    "gzip with all that its head may have": b"\x1f\x8b\x08\x1e\0\0\0\0\0\xff\3\0abc"
    b"name\0remark\0\1\1" + zlib.compress(N)[2:-4] + bytes(8),
    "zlib with a wrong sum": zlib.compress(N)[:-4] + b"abcd",
    "a document as the paper room sets it": typst.compile(LETTER),
    "coded letters": document(unicode_table(LETTERS) + b" BT <" + CODED + b"> Tj ET"),
    "coded letters, packed": document(
        zlib.compress(unicode_table(LETTERS)) + b"\nendstream stream\n"
        + zlib.compress(b"BT <" + CODED + b"> Tj ET")
    ),
    "coded letters, one by one": document(
        unicode_table(LETTERS) + b" BT ["
        + b" -9 ".join(b"<" + CODED[at : at + 4] + b">" for at in range(0, len(CODED), 4))
        + b"] TJ ET"
    ),
}  # fmt: skip


@pytest.fixture(scope="module")
def seeker() -> Seeker:
    households = [
        *DATA["households"],
        {"name": "Nell and Bob Tarrowby", "address": "Slipway End, QX51 9ZZ"},
        {"name": "Ada J. Penhallow"},
        {"name": "Rose Baker"},
        {"name": "Will Cook"},
        {"name": "Ginger Mason"},
        {"name": "Grace Field"},
        {"name": "Mrs Finch"},
        {"name": "Dr. Bushell and the practice"},
    ]
    text = yaml.safe_dump({"giving list": "A", "households": households}, allow_unicode=True)
    return Seeker(
        list_private_words(text.encode(), "list.yml"), lambda word: word in {"rosemary", "ginger"}
    )


@pytest.mark.parametrize("form", [*APART, *DISGUISED, *FIGURES, *SHORT])
def test_a_name_is_found_however_it_is_taken_apart(seeker: Seeker, form: str) -> None:
    assert seeker.seek(hold((APART | DISGUISED | FIGURES | SHORT)[form])) is not None


# both of somebody's names are here, as words or as other people's
PASSES = (
    "Strew the rose petals where the baker can see them.",
    "Rose hips, sugar and a baker's peel; will you cook them, or field them with grace?",
    "Rose is a baker. Will you cook? Grace, in a field, eats ginger with a mason jar.",
    "A baker's rose: rose, thyme, baker's ammonia, and a cook, who will.",
    "<li>Ginger</li><li>2 Mason jars</li>",
    "<b>rose</b> petals and <b>baker's ammonia</b>",
    "| rose hips | 200 g | the baker's |\n| --- | --- | --- |",
    '{"title": "Rose petal jelly", "text": "As a baker does. Will it set? Cook it on."}',
    "Ring Grace. Will the field be mown? A cook, a rose, a mason.",
    "Zebedee baked it. The next day old Mr Quillfeather ate it.",
    "Zebedee Marrow and Ottilie Quillfeather",
    "Nell, who is nobody's, met Ada and Bob at Penhallow's Cove.",
    "Wir kochen, Rose und Bäcker, mit Will. Der Koch (Grace) steht im Feld.",
    "Zе всё это варенье из роз — Zebеdeе",
    "α = 3, β = 4; Ω of the Quill feather",
    "90 g, 101 g, 98 g, 101 g, 100 g, 101 g, 101 g, 32 g",
    "7 Rope Walks, 51 9ZZ",
    "a. quillfeather, b. quill, c. A quillfeather by Y. Quillfeather",
    "W. Cooks it. Will Cooks. G. Fields, A. Penhallows, R. Bakery; r. baker; a finch",
    "Miss A. Finchley",
    "David Z. Quillfeather, Ottilie Z. Quillfeather",
    "Will Coot met Grace Fell. Nell Tarrow and Bob Harrowby. Xebedee Quillfeather",
    "| --- | :--- | ---: | --- | --- | --- |\n-----\n. . . . . . . . . .\n- . - . - . -",
)


@pytest.mark.parametrize("words", PASSES)
def test_prose_with_common_names_passes(seeker: Seeker, words: str) -> None:
    held = hold(words.encode())
    assert seeker.seek(held) is None
    assert find_private_shape(words.encode(), held.texts) == (0, "")
    assert held.sealed == ""


# whoever is addressed by a surname may be another of that name: told, and nothing is stopped
DOUBTED = {
    "Mrs Quillfeather": b"Thank you, Mrs Quillfeather!",
    "Mr. J. Quillfeather": b"Mr. J. Quillfeather's shop",
    "Quillfeather family": b"the Quillfeather family",
    "Familie Tarrowby": b"Familie Tarrowby",
}


@pytest.mark.parametrize("said", DOUBTED)
def test_somebody_of_that_surname_is_told(seeker: Seeker, said: str) -> None:
    held = hold(b"# A\n\n" + DOUBTED[said])
    assert seeker.seek(held) is None
    told = seeker.doubt(held)
    assert told.startswith(f'line 3 says "{said}": somebody of list.yml:')
    signed = b"giving list: A\nfrom: Ann Quillfeather and Jo Tarrowby\n"
    own = Seeker(set(seeker.known.values()), own=list_own_words(signed))
    assert own.doubt(held) == ""  # the family whose book it is


@pytest.mark.parametrize(
    "words", ["a Mrs of the quillfeather", "Mr Will", *(one for one in PASSES if "Mr " not in one)]
)
def test_nobody_is_told_of_in_prose(seeker: Seeker, words: str) -> None:
    assert seeker.doubt(hold(words.encode())) == ""


LISTS: dict[str, str] = {
    "XML": "<givingList><households><household><name>Jo Stranger</name><basket>small</basket>"
    "<avoid>nuts</avoid></household></households></givingList>",
    "XML of another name": "<list><one><name>Jo</name><to>Jo</to><avoid>nuts</avoid></one></list>",
    "XML in attributes": '<household name="Jo" basket="small" delivery="by post"/>',
    "a property list": "<dict><key>households</key><array><dict><key>name</key><string>Jo</string>"
    "<key>basket</key><string>small</string><key>avoid</key></dict></array></dict>",
    "TOML": '[[households]]\nname = "Jo"\nbasket = "small"\navoid = ["nuts"]\n',
    "settings in sections": "[household Jo]\nname=Jo\nbasket=small\navoid=nuts\n",
    "bullets with bold words": "* **giving list**: Winter\n* **households**\n  * **name**: Jo\n",
    "a numbered list": "1. giving list: Winter\n2. households:\n   1. name: Jo\n",
    "settings with points": "households.0.name=Jo\nhouseholds.0.basket=small\n"
    "households.0.avoid=nuts\n",
    "PHP": "array('giving list' => 'W', 'households' => array(array('name' => 'Jo', "
    "'basket' => 'small')))",
    **{
        f"with {mark} for colons": LIST.replace(": ", f" {mark} ").replace(":\n", f" {mark}\n")
        for mark in ("-", "–", "—", "=", "=>", "->")
    },
}


@pytest.mark.parametrize("form", LISTS)
def test_a_list_in_another_layout_is_known(form: str) -> None:
    data = LISTS[form].encode()
    assert find_private_shape(data, hold(data).texts)[1] == "giving list"


PROSE = {
    "bullets": "# Giving list 2027\n\n- Jo and Sam: no nuts, small basket\n- Nan: by post\n",
    "headings": "Our giving list\n===============\n\n## Jo\n\nNo nuts.\n\n## Nan\n\nBy post.\n",
    "a table": "## Giving list\n\n| Who | |\n| --- | --- |\n| Jo | vegan |\n| Nan | posted |\n",
    "bold names": "**The giving list**\n\n1. **Jo** – allergic to nuts\n2. **Nan** – 2 adults\n",
    "a page": "<h1>Giving list</h1><ul>\n<li>Jo: no nuts</li>\n<li>Nan (by post)</li>\n</ul>",
}


@pytest.mark.parametrize("form", PROSE)
def test_a_list_written_as_a_page_is_known(form: str) -> None:
    data = PROSE[form].encode()
    assert find_private_shape(data, hold(data).texts)[1] == "giving list"


def test_no_page_of_the_project_is_taken_for_a_list() -> None:
    root = Path(__file__).resolve().parents[2]
    pages = [*root.glob("*.md"), *(root / "site_demo" / "pages").rglob("*.md")]
    assert len(pages) > 10
    for page in pages:
        data = page.read_bytes()
        assert find_private_shape(data, hold(data).texts) == (0, ""), page


def test_no_file_of_the_built_book_stands_in_the_way_of_the_next_build(built_book: Path) -> None:
    """A new build looks through the site before it, guide and all."""
    assert (built_book / "guide" / "giving-list" / "index.html").is_file()
    assert find_shapes(built_book, Seeker(())) == ()


@pytest.mark.parametrize(
    "words",
    [
        "# The giving list\n\n- Avoid: what they avoid\n- Basket: which, by post\n- Name: whose\n",
        "# Giving lists\n\nWrite who is given what: no names on a page.\n\n- Jam: no nuts\n",
        "# Write a giving list\n\n- A household has: by post, if you like.\n"
        "- It is no promise: not every coeliac can have those sold as gluten-free.\n",
        "# What to bring\n\n- Jo and Sam: no nuts\n- Nan: by post\n",
        "- **Giving list**: who gets what, and when\n- **Kitchen**: where it is made\n",
        "1. Write a giving list: see below.\n2. Bake.\n",
        "- day: 2027-06-03\n  made: jam\n- day: 2027-06-04, giving day: no\n",
        "Giving list – who gets what\n\nBaskets – small ones\n\nPeople – many\n",
        "<p>name</p><p>by</p><ul><li>basket</li></ul><input name='basket'><address>A</address>",
        "name = read(it)\nto = here\nchildren = node.children\n",
        "- name – what it is called\n- basket – what it is put into\n",
        "<svg><name>a</name><to>b</to></svg>",
    ],
)
def test_what_is_like_such_a_list_passes(words: str) -> None:
    assert find_private_shape(words.encode(), hold(words.encode()).texts) == (0, "")


def test_lines_of_a_log_are_known_without_its_head() -> None:
    for row in (
        "- {day: 2027-06-03, given: Jo Stranger, things: [jam]}",
        "- day: 2027-06-03\n  thanked: Jo Stranger\n",
        '[{"day": "2027-06-03", "posted": "Jo Stranger"}]',
    ):
        assert find_private_shape(row.encode(), (row,))[1] == "giving log", row


UNREAD = {
    "letters that only a font knows": document(b"/Type0 /Encoding /Identity-H BT <0001> Tj ET"),
    "bzip2 with a wrong sum": b"BZh91AY&SY" + bytes(90),
    "xz, damaged": b"\xfd7zXZ\x00" + bytes(90),
}


@pytest.mark.parametrize("form", UNREAD)
def test_what_gives_up_no_words_is_said_not_to_be_known(form: str) -> None:
    assert hold(UNREAD[form]).sealed


def test_a_print_of_the_book_is_read_in_full(seeker: Seeker, tmp_path: Path) -> None:
    held = hold(typst.compile(b"Not for anybody: 1 jar"))
    assert held.sealed == ""
    assert seeker.seek(held) is None
    assert any("Not for anybody" in text for text in held.texts)
