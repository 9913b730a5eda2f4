"""The wall's third table: what other programs write, with names that nobody here made up.

First names and surnames are the first that a number drew from public lists of the censuses of the
United States and Norway and of Spanish names (dariusk/corpora, humans/firstNames, lastNames,
norwayFirstNamesGirls, norwayLastNames, spanishFirstNames, spanishLastNames). One of them has a
surname that is a drink: nothing of her was sought at all. The shapes were set down before the wall
had seen one; of 888 files 678 were found at first. Of 576 more, with names of several words and of
other languages, 526 were, and 563 are: what stays is too short to say anything ("L. Rice").
"""

from __future__ import annotations

import json
import pickle
import plistlib
import sqlite3
import unicodedata
from collections.abc import Callable
from contextlib import closing

import pytest
import yaml

from stillroom.core.private.seeking import Seeker, hold
from stillroom.core.private.words import list_private_words
from stillroom.publish.wall import _is_food

PEOPLE = (
    ("Caden", "Hughes"), ("Sara", "Perry"), ("Elvira", "Bjørdal"), ("Karianne", "Sørum"),
    ("Isaías", "Molina"), ("Jackson", "Black"),
)  # fmt: skip
Shape = Callable[[str, str], bytes]


def seeker_of(*names: str, streets: tuple[str, ...] = ()) -> Seeker:
    households = [{"name": name, "basket": "small"} for name in names]
    households += [{"name": "Nan", "address": street} for street in streets]
    text = yaml.safe_dump({"giving list": "A", "households": households}, allow_unicode=True)
    return Seeker(list(list_private_words(text.encode(), "list.yml")), _is_food)


def in_table(first: str, last: str) -> bytes:
    with closing(sqlite3.connect(":memory:")) as kept:
        kept.execute("create table people(id integer primary key, first text, last text)")
        kept.execute("insert into people(first, last) values (?, ?)", (first, last))
        kept.commit()
        return kept.serialize()


def tagged(first: str, last: str) -> bytes:
    """Return a map of short texts as MessagePack has it: 0xA0 and the length before each."""
    said = ("given", first, "family", last)
    return b"\x82" + b"".join(bytes([0xA0 + len(one.encode())]) + one.encode() for one in said)


def drawn(first: str, last: str) -> bytes:
    shown = ((50, first.encode("latin-1")), (120, last.encode("latin-1")))
    return b"%PDF-1.4\nBT " + b"".join(
        b"ET BT 1 0 0 1 %d 700 Tm (%b) Tj T* " % (at, word) for at, word in shown
    )


def as_tex(first: str, last: str) -> bytes:
    said = f"\\begin{{letter}}{{{first} {last} \\\\ Here}}"
    return said.replace("ø", "\\o{}").replace("í", "\\'{\\i}").encode()


SHAPES: dict[str, Shape] = {
    "an address card, surname first": lambda first, last: f"N:{last};{first};;;\r\n".encode(),
    "the same, in JSON": lambda first, last: json.dumps(["n", [last, first, ""]]).encode(),
    "a directory's lines": lambda first, last: f"sn: {last}\ngivenName: {first}\n".encode(),
    "a letter's sender": lambda first, last: f'From: "{last}, {first}" <x@y.example>\n'.encode(),
    "a line that a letter softly ends": lambda first, last: (
        f"Some words for {first} {last[:2]}=\n{last[2:]}, with love\n".encode("latin-1")
    ),
    "letters by number before letters": lambda first, last: (
        json.dumps({"real_name": f"{first} {last}"}).encode()
    ),
    "what a program keeps": lambda first, last: pickle.dumps({"first": first, "last": last}),
    "the same, shorter": tagged,
    "a property list, packed": lambda first, last: plistlib.dumps(
        {"First": first, "Last": last}, fmt=plistlib.FMT_BINARY
    ),
    "a name behind its length": lambda first, last: (
        b"\xa1\x61n\x6b" + f"{first} {last}".encode() + b"\xff"
    ),
    "two columns of a database": in_table,
    "two strings of a document": drawn,
    "a letter by TeX": as_tex,
    "a list of books": lambda first, last: f"@misc{{a, author={{{last}, {first}}}}}".encode(),
    "a great machine's letters": lambda first, last: f"FOR {first} {last} ".encode("cp500"),
    "an account's payee": lambda first, last: (
        f"!Type:Bank\nD1/1'27\nP{first} {last}\n^\n".upper().replace("TYPE", "Type").encode()
    ),
    "columns of blanks": lambda first, last: f"{last.upper():<20}{first.upper():<20}X\n".encode(),
    "a note of money": lambda first, last: f"<NAME>{last.upper()} {first.upper()}<MEMO>".encode(),
    "a chat": lambda first, last: f"24.12.27, 18:03 - {first} {last}: thanks\n".encode(),
    "an address": lambda first, last: f"https://x.example/u/{first}-{last}/".lower().encode(),
    "letters lost": lambda first, last: f"For {first} {last}".encode("ascii", "replace"),
    "letters of mail": lambda first, last: f"{first} {last}".encode("utf-7"),
}  # fmt: skip


@pytest.fixture(scope="module")
def seeker() -> Seeker:
    return seeker_of(*(" ".join(one) for one in PEOPLE))


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("who", PEOPLE, ids="-".join)
def test_what_another_program_writes_is_found(
    seeker: Seeker, who: tuple[str, str], shape: str
) -> None:
    assert seeker.seek(hold(SHAPES[shape](*who))) is not None


@pytest.mark.parametrize("shape", SHAPES)
def test_nobody_else_is_found(seeker: Seeker, shape: str) -> None:
    for other in (("Tomas", "Wardle"), ("Elvira", "Sande"), ("Jackson", "Hughes")):
        held = hold(SHAPES[shape](*other))
        assert (seeker.seek(held), seeker.doubt(held)) == (None, ""), other


# who is called like something to eat or to grow; what a cook writes speaks of nobody
PLAIN = (
    "Mary Rice", "Pat Lamb", "Will Pepper", "Mark Lemon", "Rosemary Hughes", "Rosemary Bush",
    "Olive Turner", "Sara Perry", "Mrs Bean", "Frank Bass", "Jack Berry",
)  # fmt: skip
COOKS = (
    "Pat lamb dry; will pepper help? Mark lemon slices. The chilli will pepper it.",
    "A rosemary bush, olive turnover, Rosemary and bush basil, Jack Daniel's berry sauce.",
    "- rice, mary's\n- lamb\n- pat\n- 1 rosemary\n- hughes' own\n",
    "| Pat | Lamb chops |\n|---|---|\n| Mark | Lemons |\n",
    "the Beans, the Berrys and the bean family; A. Rice, P. Lambs",
    "Granny Smith apples, Basil, rice, basil rice",
)


@pytest.mark.parametrize("name", PLAIN)
def test_whoever_is_called_like_a_food_is_found(name: str) -> None:
    seeker = seeker_of(name)
    first, last = name.split()
    for said in (f"For {name}, with love", f"FOR {name.upper()}!", f"<b>{first}</b> <i>{last}</i>"):
        assert seeker.seek(hold(said.encode())) is not None, said


def test_what_cooks_write_of_foods_is_nobody() -> None:
    seeker = seeker_of(*PLAIN, "Basil Rice", "Granny Smith")
    for said in COOKS:
        held = hold(said.encode())
        assert (seeker.seek(held), seeker.doubt(held)) == (None, ""), said


def test_a_name_of_foods_throughout_is_told_and_stops_nothing() -> None:
    seeker = seeker_of("Basil Rice")
    held = hold(b"# A\n\nThank you, Basil Rice!")
    assert seeker.seek(held) is None
    assert seeker.doubt(held).startswith('line 3 says "Basil Rice": somebody of list.yml:')


@pytest.mark.parametrize("street", ["5 Cherry Lane", "7 Rice Close", "3 Mint Street, Ferryton"])
def test_a_street_that_is_called_like_a_food_is_found(street: str) -> None:
    seeker = seeker_of(streets=(street,))
    assert seeker.seek(hold(f"At {street.upper()}".encode())) is not None
    assert seeker.seek(hold(b"5 cherries, mint, 7 g rice")) is None


# surnames of several words, and letters of other languages, as anybody may have them
SEVERAL = (
    ("Sinéad", "O'Brien"), ("Joris", "van der Berg"), ("Ann-Marie", "Clarke-Jones"),
    ("Małgorzata", "Kowalczyk"), ("Ayşe", "Yıldırım"), ("Jiří", "Dvořák"),
)  # fmt: skip
TURNED: dict[str, Shape] = {
    "a register": lambda first, last: f"{last.upper()}, {first}".encode(),
    "an address card": lambda first, last: f"N:{last};{first};;;\n".encode(),
    "a directory's lines": lambda first, last: f"sn: {last}\ngivenName: {first}\n".encode(),
    "settings": lambda first, last: f'first="{first}"\nlast="{last}"\n'.encode(),
    "letters by number": lambda first, last: json.dumps({"f": first, "l": last}).encode(),
    "a table": lambda first, last: f"| {last} | {first} | jam |".encode(),
    "as Windows has it in Prague": lambda first, last: f"Pro {first} {last}".encode(
        "cp1250", "replace"
    ),
    "as Windows has it in Ankara": lambda first, last: f"Icin {first} {last}".encode(
        "cp1254", "replace"
    ),
    "without what is no plain letter": lambda first, last: unicodedata.normalize(
        "NFKD", f"{first} {last}"
    ).encode("ascii", "ignore"),
    "an initial": lambda first, last: f"From {first[0]}. {last}, with love".encode(),
}


@pytest.mark.parametrize("shape", TURNED)
@pytest.mark.parametrize("who", SEVERAL, ids="-".join)
def test_a_name_of_more_words_is_found_however_it_is_turned(
    who: tuple[str, str], shape: str
) -> None:
    seeker = seeker_of(*(" ".join(one) for one in SEVERAL))
    assert seeker.seek(hold(TURNED[shape](*who))) is not None
    for other in (("Sinéad", "Berg"), ("Joris", "Clarke"), ("Nell", "Jones-Brien")):
        held = hold(TURNED[shape](*other))
        assert (seeker.seek(held), seeker.doubt(held)) == (None, ""), other
