"""What is wrong with a giving list, each at the box in which it is mended, in words that fit it.

What the list's own reader tells has to be mended before it is kept. What only the recipes show
("no such recipe", "avoids what it must have") is told and hinders nothing but the plan.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, Final
from urllib.parse import quote

from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.desk.desk import Desk
from stillroom.desk.giving_form import ROWS, TOP, Ask, box_name, new_places
from stillroom.desk.giving_lines import lines_of
from stillroom.desk.giving_rows import NEEDED, rows_in
from stillroom.desk.looking import plainly
from stillroom.giving.against_whole import check_whole, with_the_rest
from stillroom.giving.basket_designs import design_problems
from stillroom.giving.names import with_names_of
from stillroom.giving.reading import ReadList, read_giving_list

LINES: Final[Mapping[str, str]] = {
    "prices": "Prices", "hours": "Hours to give", "stock": "In the house",
    "vessels": "Pans, jars and ovens you have to make things in", "made": "Made already, and over",
}  # fmt: skip
"""The boxes in which each line says one thing, and what stands above them."""
ANOTHER: Final[Mapping[str, str]] = {
    "households": "Somebody else",
    "baskets": "Another basket",
    "makes": "Another thing made",
    "batches": "Another batch that was begun or filled",
    "posting": "Another way to post",
}
_NAMELESS: Final[Mapping[str, tuple[str, str]]] = {
    "households": ("Who is it?", "Write their name."),
    "baskets": ("It has no name yet.", 'Write one: "small".'),
    "makes": ("Which recipe is it?", "Choose one."),
    "batches": ("Which recipe is it?", "Choose one."),
    "posting": ("Which service is it?", "Write what it is called."),
}
_FIRST: Final = {**NEEDED, "baskets": "eat"}
_KEYS: Final = sorted(
    {ask.key for asks in (TOP, *ROWS.values()) for ask in asks} | {"item", "packs"},
    key=len,
    reverse=True,
)
_KEYED: Final = re.compile(rf'"({"|".join(_KEYS)}): ([^"]*)"')
_HELD: Final = re.compile(r'"[\[{]([^"\[\]{}]*)[\]}]"')
_PLACED: Final = re.compile(r'^".*?"(?:: | is not right: )')
_ADD_IT: Final = re.compile(r'^Add "[^"]*:"\.$')
_AT_DESK: Final = (
    (", one a line after a dash:", ":"),
    ('Say which recipe: "quince-chutney".', "Choose one."),
    ('goes under "avoid ingredients"', "goes under “Nor these foods”"),
    ('under "makes"', "under “What is made”"),
)
"""What is said of lines of the file, and in its place at the boxes."""
_AS_IN: Final = re.compile(r'Write it as in "- \{recipe: [^"]*, per batch: (\d+)\}"')
_MAY_BE: Final = re.compile(r"(?<=It may be: )[^.]+(?=\.)")
_MISSING: Final = re.compile(r'^".*" is missing\.$')


@dataclass(frozen=True)
class Told:
    """One thing to mend: the box's name ("" where none is meant), where it stands, its words."""

    box: str
    where: str
    what: str
    mend: str

    @property
    def words(self) -> str:
        """What stands at the box."""
        return f"{self.what} {self.mend}".rstrip()


def box_id(name: str) -> str:
    """Return the id of a box, which may hold no blank.

    >>> box_id("households|0|must have")
    'households|0|must_20have'
    """
    return quote(name, safe="|").replace("%", "_")


def read_at_desk(desk: Desk, text: str, name: str) -> ReadList:
    """Read a list as its book writes money and days; raises ProblemsFound."""
    said = desk.book().settings
    return read_giving_list(
        text, name, said.currency, said.language, said.country, said.units, said.own_days
    )


def all_wrong(desk: Desk, text: str, name: str) -> tuple[Problem, ...]:
    """Return all that is wrong with a list: by itself, with the book, with its posting."""
    book, recipes = desk.book(), desk.recipes()
    found: list[Problem] = []
    try:
        read = read_at_desk(desk, text, name)
        found += design_problems(read, book)
        check_whole(with_names_of(read, recipes), recipes, book.settings.country)
    except ProblemsFound as wrong:
        found += with_the_rest(wrong, recipes, book.settings.country).problems
    return tuple(found)


def tell(problems: Iterable[Problem], said: Any, names: Mapping[str, str]) -> tuple[Told, ...]:
    """Return each problem at its box, once; `said` is what the list says.

    `names` are the recipes' titles: at a box that is chosen from them, nobody sees a file's name.
    """
    told = dict.fromkeys(_told(problem, said) for problem in problems)
    return tuple(_titled(one, names) for one in told)


def _titled(told: Told, names: Mapping[str, str]) -> Told:
    """Return what is told with the titles of recipes in place of their files' names."""

    def called(found: re.Match[str]) -> str:
        return ", ".join(names.get(one, one) for one in found[0].split(", "))

    told = replace(told, what=_MAY_BE.sub(called, told.what), mend=_MAY_BE.sub(called, told.mend))
    if told.box.partition("|")[0] not in ("makes", "batches"):
        return told
    slug = told.where.partition(", ")[0]
    title = names.get(slug, slug)
    where = f"{title}{told.where.removeprefix(slug)}"
    return replace(told, where=where, what=re.sub(rf"\b{re.escape(slug)}\b", title, told.what))


def nameless(sent: Mapping[str, str]) -> tuple[Told, ...]:
    """Return what has no name: a new row in which something else is said, or the list itself."""
    found = []
    if not sent.get("giving list", "").strip():
        mend = 'Write what this giving is called: "Christmas 2027".'
        found.append(Told("giving list", TOP[0].words, "It has no name.", mend))
    for part in ROWS:
        for at in new_places(part, sent):
            needed = box_name(part, at, NEEDED[part])
            if not sent.get(needed, "").strip():
                found.append(Told(needed, ANOTHER[part], *_NAMELESS[part]))
    return tuple(found)


def _told(problem: Problem, said: Any) -> Told:
    box, where, is_own = _place(problem.at, said)
    own = box.rpartition("|")[2]
    what, mend = problem.what, _ADD_IT.sub("Fill it in.", _plain(problem.mend, own))
    if _MISSING.match(what) and box:
        what = "Nothing is said here yet."
    elif is_own:
        what = _plain(_PLACED.sub("", what))
        if problem.at[0] in LINES and (line := _line_of(problem.at, said)):
            if problem.at[0] == "prices" and what.startswith("it is empty"):
                what = "no pack and price stand behind a colon."
                mend = "Write the food, a colon, the pack and its price: “brandy: 700 ml for 16”."
            return Told(box, where, f"“{line}”: {what}", mend)
    if not box and problem.at[:1] and problem.at[0] in ANOTHER:
        mend = f"Fill in “{ANOTHER[problem.at[0]]}” below."
    what = _plain(what)
    return Told(box, where, what[:1].upper() + what[1:], mend)


def _plain(text: str, own: str = "") -> str:
    """Return a message about a file in words that fit the box of the fact `own`.

    >>> _plain('Write "pregnant: yes".', "children")
    'Write “yes” under “Somebody is pregnant”.'
    >>> _plain('Write "basket: small" or "basket: {small: 2}".')
    'Write "small" or "small 2".'
    """
    text = _AS_IN.sub(r'Write how many, such as "\1"', text)
    text = _HELD.sub(
        lambda held: f'"{held[1].replace(": ", " ")}"', _KEYED.sub(partial(_said_at, own), text)
    )
    for said, at_desk in _AT_DESK:
        text = text.replace(said, at_desk)
    return plainly(text)


def _said_at(own: str, found: re.Match[str]) -> str:
    """Return what is to be written in a box: alone in its own, else with what that is called."""
    key, value = found[1], found[2]
    asked = next((ask for asks in (*ROWS.values(), TOP) if (ask := _ask(asks, key))), None)
    if not own or key == own or asked is None:
        return f'"{value}"'
    return f"“{value}” under “{asked.words}”"


def _place(at: tuple[str, ...], said: Any) -> tuple[str, str, bool]:
    """Return the box of a place in the list, its name in words, and whether the fact is its own."""
    part, asks = (at[0], ROWS.get(at[0], ())) if at else ("", ())
    if at[:1] == ("stock",) and at[1:2] and at[1] in LINES:
        part = at[1]
    if part in LINES:
        return part, LINES[part], True
    if top := _ask(TOP, part):
        return top.key, top.words, True
    if not asks or len(at) < 2:
        return "", "", False
    row = dict(rows_in(said, part)).get(at[1], {})
    named = at[1] if part == "baskets" else str(row.get(NEEDED[part]) or "")
    ask = _ask(asks, at[2] if len(at) > 2 else "")
    if ask:
        return box_name(part, at[1], ask.key), f"{named}, {ask.words}", True
    return box_name(part, at[1], _FIRST[part]), named, False


def _ask(asks: Iterable[Ask], key: str) -> Ask | None:
    return next((ask for ask in asks if ask.key == key), None)


def _line_of(at: tuple[str, ...], said: Any) -> str:
    """Return the name of the line that is meant, in a box of lines: "vodka"."""
    lines = lines_of(said, "prices").split("\n")
    is_row = at[0] == "prices" and len(at) > 1 and at[1].isdecimal() and int(at[1]) < len(lines)
    return lines[int(at[1])].partition(":")[0] if is_row else ""
