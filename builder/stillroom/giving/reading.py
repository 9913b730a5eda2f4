"""A giving list's file to the model, every problem with its line.

Leaves out what needs the recipes: against_book.py checks that.
"""

from __future__ import annotations

import typing
from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.amounts.money import knows_currency, knows_language
from stillroom.core.amounts.units import System
from stillroom.core.private.shapes import GIVING_LIST_KEY, find_written_list
from stillroom.core.words.frontmatter import Located, read_yaml
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable, say_written
from stillroom.core.words.text_files import clean, read_text
from stillroom.giving.as_written import tidy_list
from stillroom.giving.half_read import HalfRead, read_half
from stillroom.giving.list_words import (
    has_a_name,
    is_named_so,
    is_private,
    plain_key,
    words_by_part,
)
from stillroom.giving.model import SORTS, GivingList
from stillroom.giving.written import OwnDays, read_day, with_own_day

_PLAIN = {
    "int_type": "it has to be a whole number",
    "int_parsing": "it has to be a whole number",
    "greater_than": "it has to be at least 1",
    "greater_than_equal": "it has to be 0 or more",
    "bool_type": "it has to be yes or no",
    "bool_parsing": "it has to be yes or no",
    "string_type": "it has to be words",
    "string_too_short": "it is empty",
    "tuple_type": "it has to be a list: one a line, each after a dash",
    "dict_type": "it wants lines of its own, each with a colon",
    "model_type": "it wants lines of its own, each with a colon",
    "too_short": "it is empty",
    "literal_error": f"it has to be one of: {', '.join(SORTS)}",
    "less_than_equal": "it is too many",
}


NOBODY = "Nobody stands in this list yet."
"""What is told of a list that was begun, and names no household."""
_ADD = {
    "giving day": 'Say when the baskets go out: "giving day: 24 December 2027".',
    "baskets": 'Say what a basket holds: "baskets: {small: {eat: 2, drink: 1}}".',
    "makes": 'Say what you make, one a line after a dash: "- recipe: quince-chutney".',
    "households": 'Say who is given a basket, one a line after a dash: "- name: The Rowans".',
    "basket": 'Say which basket they get: "basket: small".',
    "name": 'Say who they are: "name: The Rowans".',
    "recipe": 'Say which recipe: "recipe: quince-chutney".',
    "item": 'Say what it is the price of: "item: granulated sugar".',
    "packs": 'Say the pack and its price: "packs: [1 kg for 1.15]".',
}


# what people write that may mean two things, and how to say which
_MEANT = {
    "people": 'Say how many are grown up, and how old the others: "adults: 2", "children: [3, 6]".',
    "age": 'Write "adults: 1", or "children: [6]" with the age on giving day.',
    "address": "Leave it out: no address is needed for the plan.",
    "phone": "Leave it out: it is not needed for the plan.",
}
_NOTE = (
    'Is it for you alone? Put it behind a "#", and it is printed nowhere: "# likes the blue jar". '
    'Is it for the card? Write "message:".'
)


# what tables and settings are saved as; JSON is read, since YAML takes it in
_OTHER_FORMS = frozenset(
    {".csv", ".tsv", ".toml", ".ini", ".xml", ".xls", ".xlsx", ".ods", ".docx", ".odt"}
)
_ITS_FORM = (
    'It is a text that ends in .yml: "giving list: Christmas 2027", and each household a line '
    'below "households:", as in "- {name: The Rowans, basket: small, avoid: nuts}". '
    "`stillroom giving-list` asks and writes it."
)
_MOST_UNKNOWN = 20  # names told one by one that have no place
_MOST_ROWS = 2_000
_LONGEST_NAME = 300
_LONGEST_NEED = 1_000
_LONGEST_TEXT = 4_000  # folded over lines, or it is a line that is too long
_NEEDS = ("avoid", "avoid ingredients", "likes", "never", "must have", "traces are fine")
_NAMED_BY = {"households": "name", "makes": "recipe", "prices": "item", "posting": "service"}


class ReadList(BaseModel):
    """A giving list with its file's name and the line of every key."""

    file: str
    giving: GivingList
    lines: dict[str, int]
    units: System = "metric"

    def line_of(self, *path: str | int) -> int:
        """Return the line of a key, or of the nearest thing above it."""
        return _line([str(part) for part in path], self.lines)

    def problem(self, path: Sequence[str | int], what: str, mend: str = "") -> Problem:
        """Return what is wrong at a place of the list."""
        at = tuple(str(part) for part in path)
        return Problem(self.file, self.line_of(*at), what, mend, at)


def load_giving_list(
    path: Path,
    name: str = "",
    currency: str = "GBP",
    language: str = "en_GB",
    country: str = "GB",
    units: System = "metric",
    own_days: OwnDays = (),
) -> ReadList:
    """Read a giving list; raises ProblemsFound with every problem in it.

    `currency`, `language` and `country` are the book's, for a list that names none, and so are how
    a pint is read and its own giving days.
    """
    name = name or str(path)
    if path.suffix.lower() in _OTHER_FORMS:
        what = f"A giving list is no file of the sort {path.suffix.lower()}."
        raise ProblemsFound([Problem(name, 1, what, _ITS_FORM)])
    text = read_text(path, name)
    return read_giving_list(text, name, currency, language, country, units, own_days)


def _giving_day(parts: Any, country: str) -> date | None:
    """Return the day that the others lie about; None where it is not said or told as wrong."""
    try:
        return read_day(parts.get("giving day"), country)
    except Unreadable:
        return None


def read_giving_list(
    text: str,
    name: str,
    currency: str = "GBP",
    language: str = "en_GB",
    country: str = "GB",
    units: System = "metric",
    own_days: OwnDays = (),
) -> ReadList:
    """Read a giving list from its text; raises ProblemsFound.

    Prices are read as its language writes them: decimals stay words until then. "Christmas 2027" is
    the book's own giving day of that name, where it has one.
    """
    located = read_yaml(clean(text, name), name, decimals=False)
    # what is read as a list is known as one to the wall: no word counts here that does not there
    if not isinstance(located.data, dict) or not (
        is_named_so(located.data) or (has_a_name(located.data) and find_written_list(text))
    ):
        mend = f'Begin it with "{GIVING_LIST_KEY}: Christmas 2027".'
        raise ProblemsFound([Problem(name, 1, "This is not a giving list.", mend)])
    _refuse_what_no_winter_needs(located, name)
    _refuse_long_texts(located, name)
    data, lines = tidy_list(located.data, located.lines)
    located = replace(located, data=data, lines=lines)
    _refuse_what_no_winter_needs(located, name)  # a text may be the rows: "makes: fudge, jam"
    _refuse_long_names(located, name)
    data = with_own_day(data, own_days, country)
    located = replace(located, data=data)
    own = {"currency": currency, "language": language}
    known = {"currency": knows_currency, "language": knows_language}
    said = {key: data[key] for key in own if isinstance(data.get(key), str) and data[key]}
    # prices beside a currency or a language that is none are read as the book's are
    how = own | {key: value for key, value in said.items() if known[key](value)}

    def validate(parts: Any) -> GivingList:
        filled = {key: parts.get(key) or value for key, value in own.items()}
        day = _giving_day(parts, country)
        said = {**how, "country": country, "giving day": day, "units": units}
        return GivingList.model_validate({**parts, **filled}, context=said)

    try:
        giving = validate(data)
    except ValidationError as error:
        details = [
            detail
            for detail in error.errors()
            # a list all of whose parts are wrong is not empty: its parts are told of instead
            if not (detail["type"] == "too_short" and detail["input"])
        ]
        problems = _told(details, name, located)
        half = read_half(data, error.errors(), validate)
        draft = HalfRead(name, half[0], located.lines, half[1]) if half else None
        raise ProblemsFound(problems, draft) from None
    return ReadList(file=name, giving=giving, lines=located.lines, units=units)


def _refuse_what_no_winter_needs(located: Located, name: str) -> None:
    """Raise ProblemsFound at a part of a list with more rows than a house has of anything."""
    for key, said in located.data.items():
        if isinstance(said, dict | list) and len(said) > _MOST_ROWS:
            what = f'There are {len(said)} rows under "{key}"; {_MOST_ROWS} are the most.'
            mend = "Take out those of other years."
            raise ProblemsFound([Problem(name, located.lines.get(str(key), 1), what, mend)])


def _refuse_long_texts(located: Located, name: str) -> None:
    """Raise ProblemsFound at what is said of a household or a make in more than a page."""
    problems = []
    for part, rows in located.data.items():
        listed = enumerate(rows) if isinstance(rows, list) else ()
        for place, row in rows.items() if isinstance(rows, dict) else listed:
            for key, said in row.items() if isinstance(row, dict) else ((None, row),):
                if isinstance(said, str) and len(said) > _LONGEST_TEXT:
                    path = [str(one) for one in (part, place, key) if one is not None]
                    what = f'"{path[-1]}" says {len(said)} letters; {_LONGEST_TEXT} are the most.'
                    line = _line(path, located.lines)
                    problems.append(Problem(name, line, what, "Say it shorter.", tuple(path)))
    if problems:
        raise ProblemsFound(problems[:_MOST_UNKNOWN])


def _names_said(data: dict[str, Any]) -> Iterator[tuple[list[str], str, int]]:
    """Yield each name and each need, where it stands and how many letters it may have."""
    for part, key in _NAMED_BY.items():
        rows = data.get(part)
        for place, row in enumerate(rows if isinstance(rows, list) else ()):
            said = row if isinstance(row, dict) else {}
            yield [part, str(place), key], said.get(key, ""), _LONGEST_NAME
            for need in _NEEDS:
                words = said.get(need)
                for word in words if isinstance(words, list) else ():
                    yield [part, str(place), need], word, _LONGEST_NEED


def _refuse_long_names(located: Located, name: str) -> None:
    """Raise ProblemsFound at names that are no names: one may be a page folded over lines."""
    problems = []
    for path, said, longest in _names_said(located.data):
        if isinstance(said, str) and len(said) > longest:
            what = f'"{said[:30]} …" has {len(said)} letters; {longest} are the most.'
            mend = f'Say it shorter under "{path[-1]}".'
            line = _line(path, located.lines)
            problems.append(Problem(name, line, what, mend, tuple(path)))
    if problems:
        raise ProblemsFound(problems[:_MOST_UNKNOWN])


def _told(details: Sequence[ErrorDetails], name: str, located: Located) -> list[Problem]:
    """Return what is wrong, of more unknown names than anybody reads only the first ones."""
    unknown = [place for place, one in enumerate(details) if one["type"] == "extra_forbidden"]
    more = [details[place] for place in unknown[_MOST_UNKNOWN:]]
    untold = frozenset(unknown[_MOST_UNKNOWN:])
    problems = [
        _problem(one, name, located) for place, one in enumerate(details) if place not in untold
    ]
    if more:
        line = _problem(more[0], name, located).line
        what = f"{len(more):,} more names from here on have no place here."
        problems.append(Problem(name, line, what, "Put the first ones right, and check again."))
    return problems


def _line(path: list[str], lines: dict[str, int]) -> int:
    for size in range(len(path), 0, -1):
        if line := lines.get("/".join(path[:size])):
            return line
    return 1


def _problem(detail: ErrorDetails, name: str, located: Located) -> Problem:
    path = [str(part) for part in detail["loc"] if part != "[key]"]
    line = _line(path, located.lines)
    wrong = detail.get("ctx", {}).get("error")
    where, at = _where(path, located.data), tuple(path)
    if isinstance(wrong, Unreadable):
        return Problem(name, line, f"{where}: {wrong.what}", wrong.mend, at)
    if detail["type"] == "missing":
        mend = _ADD.get(path[-1], f'Add "{path[-1]}:".')
        return Problem(name, line, f"{where} is missing.", mend, at)
    if detail["type"] == "extra_forbidden":
        mend = (
            _parted_at_its_comma(path, detail["input"], located.data)
            or _MEANT.get(path[-1])
            or (_NOTE if is_private(path[-1]) else "")
            or _key_meant(path)
        )
        return Problem(name, line, f'"{path[-1]}" has no place here.', mend, at)
    why = _PLAIN.get(detail["type"], "it is not written as it should be")
    said = detail["input"]
    if detail["type"] in ("dict_type", "model_type") and path[0] == "baskets":
        return Problem(name, line, f"{where} is not right: {why}.", _ADD["baskets"], at)
    mend = f"It says {say_written(said)}." if isinstance(said, str | int | float) else ""
    if detail["type"] == "too_short" and path == ["households"]:
        return Problem(name, line, NOBODY, _ADD["households"], at)
    if detail["type"] == "too_short":
        mend = _ADD.get(path[-1], "")
    return Problem(name, line, f"{where} is not right: {why}.", mend, at)


_PART_OF = {"households": "household", "makes": "make", "baskets": "basket", "prices": "price"}


def _key_meant(path: list[str]) -> str:
    """Say which key a slip was meant for, by any word for it: "alergies" is "allergies"."""
    words = words_by_part().get(_PART_OF.get(path[0], "list") if len(path) > 1 else "list", {})
    near = nearest(plain_key(path[-1]), words, 0.8)
    return did_you_mean(path[-1], [near] if near else _keys_of(path[:-1]))


def _parted_at_its_comma(path: list[str], value: Any, data: Any) -> str:
    """Return what mends "{container: bottle, 100 ml}", which YAML parts into two; "" for others."""
    here = data
    for part in path[:-1]:
        here = here[int(part)] if isinstance(here, list) else here[part]
    keys = list(here) if isinstance(here, dict) else []
    place = next((n for n, key in enumerate(keys) if str(key) == path[-1]), 0)
    before = here[keys[place - 1]] if place and value is None else None
    if not isinstance(before, str):
        return ""
    return f'Put what has a comma in it in quotes: {keys[place - 1]}: "{before}, {path[-1]}".'


def _where(path: list[str], data: Any) -> str:
    """Say where in the list, by the household's or recipe's own name where there is one."""
    words, here = [], data
    for part in path:
        try:
            here = here[int(part)] if isinstance(here, list) else here[part]
        except (KeyError, IndexError, TypeError, ValueError):
            here = None
        named = (
            (here.get("name") or here.get("recipe") or here.get("item"))
            if isinstance(here, dict)
            else None
        )
        if part.isdecimal():
            words.append(named if isinstance(named, str) and named else f"no. {int(part) + 1}")
        else:
            words.append(part)
    if len(words) > 2 and path[1].isdecimal() and not words[1].startswith("no. "):
        del words[0]  # a name says enough: "The Rowans, delivery"
    return '"' + ", ".join(words) + '"'


def _keys_of(path: list[str]) -> list[str]:
    """Return the keys that may stand at a place of the list."""
    model: type[BaseModel] = GivingList
    for part in path:
        field = next((f for f in model.model_fields.values() if f.alias == part), None)
        if field is None:
            continue
        model = next(iter(_models_in(field.annotation)), model)
    return [field.alias or name for name, field in model.model_fields.items()]


def _models_in(kind: Any) -> list[type[BaseModel]]:
    if isinstance(kind, type) and issubclass(kind, BaseModel):
        return [kind]
    return [model for part in typing.get_args(kind) for model in _models_in(part)]
