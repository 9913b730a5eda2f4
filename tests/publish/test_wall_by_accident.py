"""The wall's fourth table: what an address book, a spreadsheet or a letter makes of a name.

A hand has hidden nothing here. Programs write a contact, a label or a head of mail in shapes of
their own, and such a file is dropped among the pages. Below them what is done on purpose. Formats:
vCard (RFC 6350, 2426), jCard (RFC 7095), iCalendar (RFC 5545), heads of mail (RFC 2047, 5322),
LDIF (RFC 2849).
"""

from __future__ import annotations

import base64
import email.header
import email.message
import io
import json
import zipfile

import pytest
import yaml

from stillroom.core.private.seeking import Seeker, hold
from stillroom.core.private.words import list_private_words

HOUSEHOLDS = [
    {"name": "Marion Heddlewick", "address": "3 Tanner's Row, Osierby, OZ4 7QP",
     "phone": "01632 960417", "email": "marion.h@post.example"},
    {"name": "Tobias Quenby and Ilse Varga"},
    {"name": "Zoë Ångström-Pell"},
    {"name": "Edward King"},
    {"name": "June Day"},
    {"name": "Will Cook"},
    {"name": "Grace Field"},
    {"name": "Peter Stone", "address": "12 Mill Road, Osierby"},
]  # fmt: skip


def packed(name: str, words: str) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(name, words)
    return out.getvalue()


def letter() -> bytes:
    said = email.message.EmailMessage()
    said["To"] = "Zoë Ångström-Pell <zap@post.example>"
    said.set_content("Hello")
    return said.as_bytes()


ADDRESS_BOOKS: dict[str, str | bytes] = {
    "a card": "BEGIN:VCARD\r\nN:Heddlewick;Marion;Jane;Mrs;MBE\r\nEND:VCARD",
    "a card of before, coded": "N;CHARSET=UTF-8;ENCODING=QUOTED-PRINTABLE:=C3=85ngstr=C3=B6m-"
    "Pell;Zo=C3=AB;;;",
    "a card, folded": "BEGIN:VCARD\r\nFN:Marion Heddle\r\n wick\r\nEND:VCARD",
    "a card with a telephone alone": "BEGIN:VCARD\r\nFN:Nan\r\nTEL;TYPE=CELL:+44 1632 960417",
    "a card's address": "ADR:;;3 Tanner's Row;Osierby;;OZ4 7QP;",
    "a card in JSON": '["vcard",[["n",{},"text",["Heddlewick","Marion","","",""]]]]',
    "a card in XML": "<n><surname>Heddlewick</surname><given>Marion</given></n>",
    "a square to scan": "MECARD:N:Heddlewick,Marion;;",
    "contacts in JSON": json.dumps(
        {"names": [{"familyName": "Heddlewick", "source": {"x": True}, "givenName": "Marion"}]},
        indent=2,
    ),
    "a telephone's contacts": "Name,Given Name,Additional Name,Family Name\n,Marion,J,Heddlewick\n",
    "a directory": "givenName: Marion\nsn: Heddlewick\n",
    "a directory, coded": b"cn:: " + base64.b64encode("Zoë Ångström-Pell".encode()),
    "a surname and an initial": "Surname,Initial\nHeddlewick,M\n",
    "a title, an initial, a surname": "Mrs,M,Heddlewick,small\n",
    "these in quotes": '"M";"Heddlewick"\n',
    "these between bars": "| Heddlewick | M. |\n",
    "a register": "Heddlewick Marion\n",
    "a register with a gap": "Quenby, T\n",
    "a label": "To M Heddlewick\n",
    "a label of two initials": "Mrs M J Heddlewick\n",
    "a spreadsheet": packed("xl/sharedStrings.xml", "<t>Marion</t></si><si><t>Heddlewick</t>"),
    "a letter in pieces": packed(
        "word/document.xml", "<w:t>Marion Hed</w:t></w:r><w:r><w:t>dlewick</w:t>"
    ),
    "fields of a serial letter": "«First» Marion «Last» Heddlewick",
    "a street without its mark": "3 tanners row osierby",
    "a street, shortened": "at 12 Mill Rd",
    "a code of the post, close": "OZ47QP",
    "a telephone with points": "01632.960.417",
}
LETTERS: dict[str, str | bytes] = {
    "a head": '"Heddlewick, Marion" <m@post.example>',
    "a head, coded": letter(),
    "a head, coded by base64": b"To: "
    + email.header.Header("Zoë Ångström-Pell", "utf-8").encode().encode(),
    "a head of old letters": "To: =?iso-8859-1?Q?Zo=EB_=C5ngstr=F6m-Pell?= <z@post.example>",
    "a head in two pieces": "To: =?utf-8?q?Zo=C3=AB_=C3=85ng?=\r\n =?utf-8?q?str=C3=B6m-Pell?=",
    "these by base64": "Subject: =?utf-8?b?Rm9yIE1hcmlvbiBIZWRk?=\r\n =?utf-8?b?bGV3aWNr?=",
    "an address by an initial": "to m.heddlewick@post.example",
    "an address by the other": "to marionh@post.example",
    "an address, surname first": "heddlewick_marion@post.example",
    "an invitation": "ATTENDEE;CN=Marion Heddlewick;ROLE=REQ-PARTICIPANT:mailto:x@post.example",
    "an entry, folded": "BEGIN:VCALENDAR\r\nSUMMARY:Basket to Marion Heddl\r\n ewick\r\n",
    "an entry's place": "LOCATION:3 Tanner's Row\\, Osierby\\, OZ4 7QP",
    "a signed card": "With love to Marion H.",
    "the same, going on": "Marion H. brings the jars.",
    "half a surname": "For Zoe Pell",
    "the other half": "For Zoë Ångström",
    "as the north writes it": "Zoe Aangstroem-Pell",
    "read wrongly twice": "Zoë Ångström-Pell".encode().decode("cp1252").encode().decode(
        "cp1252", errors="replace"
    ),
    "née": "Marion Smith née Heddlewick",
    "read from paper": "Marion Heddlevvick",
    "read from paper, another": "Rnarion Heddlewick",
}  # fmt: skip
ON_PURPOSE: dict[str, str] = {
    "figures among letters": "M4r1on H3ddl3wick",
    "figures wherever they may": "M4R10N H3DDL3W1CK",
    "another figure": "Mar1on Heddl3wick",
    "places in the alphabet": "13-1-18-9-15-14 8-5-4-4-12-5-23-9-3-11",
    "these with commas": "13, 1, 18, 9, 15, 14, 8, 5, 4, 4, 12, 5, 23, 9, 3, 11",
    "these at one": "13011809151408050404120523090311",
    "spelt aloud": "Mike Alfa Romeo India Oscar November, Hotel Echo Delta Delta Lima Echo Whiskey "
    "India Charlie Kilo",
    "letters three further on": "pdulrq khggohzlfn",
    "letters from the end": "nzirlm svwwovdrxp",
    "without vowels": "Mrn Hddlwck",
    "for the blind": "⠍⠁⠗⠊⠕⠝ ⠓⠑⠙⠙⠇⠑⠺⠊⠉⠅",
    "a gap that fills": "Mar\u3164ion Heddle\u3164wick",
}
# whoever is called like a word: what a kitchen says is nobody
PASSES = (
    "400 g floury potatoes, such as King Edward or Maris Piper",
    "King Edwards, peeled. The potatoes are King Edward.",
    "On Midsummer Day, June 24th, the fields are mown; that day, June or July",
    "What a Cook needs. A Cook. I Cook. Plan B Cook.",
    "A Field of rye, Grace, and a Stone, Peter. O Day! Mill Roads 12",
    "will you cook, grace, a field? stone-peter's path; king-edward-mash",
    "Vitamin E King size. Peter S. Brown. W/C Cook. Grade P Stone",
    "2 18 1 13 2 12 5 19 1 12 5 250 12 3 4 5 6 7 8 9 10 11 12",
    "hotel echo, golf in November, Oscar and Victor in Lima, papa; delta tango sierra",
    "h2o, b12, 4th, w11l not c00k, 1st f13ld, gr4c3",
    "=?utf-8?q?Marion?= and =?nothing?x?a?= =?",
    "marion@post.example, heddle@post.example, m@post.example",
    "Heddlewick is a place. M. is a letter. Marion is anybody, H. too.",
    "Wll Ck, mill rd",
)
TOLD = {
    "a family": ("with thanks to the Heddlewicks", "the Heddlewicks"),
    "what is theirs": ("the Heddlewicks' basket", "the Heddlewicks"),
    "a couple": ("Mr & Mrs Heddlewick", "Mrs Heddlewick"),
    "how a letter begins": ("Dear Mrs Heddlewick,", "Mrs Heddlewick"),
}


@pytest.fixture(scope="module")
def seeker() -> Seeker:
    text = yaml.safe_dump({"giving list": "A", "households": HOUSEHOLDS}, allow_unicode=True)
    return Seeker(list_private_words(text.encode(), "list.yml"))


@pytest.mark.parametrize("form", [*ADDRESS_BOOKS, *LETTERS, *ON_PURPOSE])
def test_a_name_is_found_as_a_program_writes_it(seeker: Seeker, form: str) -> None:
    said = (ADDRESS_BOOKS | LETTERS | ON_PURPOSE)[form]
    assert seeker.seek(hold(said if isinstance(said, bytes) else said.encode())) is not None


@pytest.mark.parametrize("words", PASSES)
def test_what_a_kitchen_says_is_nobody(seeker: Seeker, words: str) -> None:
    held = hold(words.encode())
    assert seeker.seek(held) is None
    assert seeker.doubt(held) == ""


@pytest.mark.parametrize("form", TOLD)
def test_a_family_by_its_surname_is_told(seeker: Seeker, form: str) -> None:
    words, said = TOLD[form]
    held = hold(words.encode())
    assert seeker.seek(held) is None
    assert f'line 1 says "{said}": somebody of list.yml:' in seeker.doubt(held)
