"""What a book's mkdocs.yml may set under the plugin's name, and what is wrong with what it sets.

The command and the plugin read the same ones here. Leaves out the file: settings_file.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from functools import cache
from typing import Annotated, Any, Final

from babel import Locale, UnknownLocaleError
from babel.core import get_global
from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, ValidationError
from pydantic_core import ErrorDetails

from stillroom.core.amounts.units import System
from stillroom.core.paper.qr_code import LONGEST_ADDRESS
from stillroom.core.recipe.family_book import FamilyBook
from stillroom.core.recipe.model import LONGEST_NAME
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.day_words import say_month
from stillroom.core.words.nearest import did_you_mean, nearest
from stillroom.core.words.problems import Problem, ProblemsFound, Unreadable

LONGEST_SITE_URL: Final = LONGEST_ADDRESS - LONGEST_NAME - len("/r//")
Places = Mapping[str, tuple[str, int]]
"""File and line of each setting, by its path joined with "/"."""


def _known_locale(text: str) -> str:
    try:
        Locale.parse(text)
    except (UnknownLocaleError, ValueError):
        raise ValueError from None
    return text


_NO_COUNTRIES: Final = ("EU", "EZ", "UN", "XA", "XB", "QO", "ZZ")


@cache
def _countries() -> dict[str, str]:
    """Return the two capitals of every country by its English name in small letters."""
    return {
        name.lower(): code
        for code, name in Locale("en").territories.items()
        if re.fullmatch("[A-Z]{2}", code) and code not in _NO_COUNTRIES
    }


@cache
def _with_money() -> frozenset[str]:
    """Return the countries of today of whose money babel knows: nearly all, and quickly told."""
    old = get_global("territory_aliases")
    return frozenset(code for code in get_global("territory_currencies") if code not in old)


@cache
def _money_of_today() -> frozenset[str]:
    held = get_global("territory_currencies")
    return frozenset(held[code][-1][0] for code in _with_money() - {*_NO_COUNTRIES})


def _known_country(code: str) -> str:
    if code in _NO_COUNTRIES or not (code in _with_money() or code in _countries().values()):
        raise ValueError
    return code


def _known_currency(code: str) -> str:
    if code not in _money_of_today() and code not in Locale("en").currencies:
        raise ValueError
    return code


def _site_url(text: str) -> str:
    if text and not re.match(r"https?://[^\s/?#]+", text):
        raise ValueError
    if len(text.encode()) > LONGEST_SITE_URL or re.search(r"[\s\x00-\x1f\"<>]", text):
        raise ValueError
    return text


def _as_text(value: Any) -> Any:
    return str(value) if isinstance(value, int | float) else value


Text = Annotated[str, BeforeValidator(_as_text), Field(min_length=1, max_length=200)]


_MEASURES: Final = r"^\s*\d+(\.\d+)?(\s*,\s*\d+(\.\d+)?){5}((\s*,\s*\d+(\.\d+)?){2})?\s*$"
"""A bought sheet: columns, rows, margins, pitch, and perhaps a label's own width and height."""
_FEED: Final = r"^\s*[-+]?\d(\.\d{1,2})?\s*,\s*[-+]?\d(\.\d{1,2})?\s*$"
"""Millimetres to the right and down: under 10, since more is another paper."""


class GivingDay(BaseModel):
    """One day of the year on which baskets go out: its name and the rule of its date."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    name: Text
    day: Text


class LabelStock(BaseModel):
    """A bought sheet of labels by a name of one's own, and its measures in mm."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    name: Text
    measures: Annotated[str, Field(pattern=_MEASURES)]


class BookSettings(BaseModel):
    """What holds for the whole book.

    `country` (ISO 3166 alpha-2) chooses which food-safety authority is deferred to, `altitude_m`
    the processing times, `units` how spoons, cups and pints are read (without it as the country
    does), `language` the wording of dates, `currency` (ISO 4217) the giver's money, `send_us`
    whether the page "Send us a recipe" is published, `family_book` what the printed book bears
    beside its recipes, `design` how cards and tags look, `family_mark` a few letters or a drawing
    among the pictures that stands on the backs of cards, `labels` bought sheets of labels by a name
    of one's own, `printer_feed` the millimetres, right and down, by which a printer misses. Folders
    are relative to mkdocs.yml.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    title: Text = "A stillroom book"
    site_url: Annotated[str, AfterValidator(_site_url)] = ""
    recipes: Text = "recipes"
    larder: str = ""
    pictures: Text = "pictures"
    units: System = "metric"
    country: Annotated[str, AfterValidator(_known_country)] = "GB"
    altitude_m: Annotated[int, Field(ge=-430, le=6000)] = 0
    language: Annotated[str, AfterValidator(_known_locale)] = "en_GB"
    currency: Annotated[str, AfterValidator(_known_currency)] = "GBP"
    send_us: bool = True
    design: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{0,39}$")] = "plain"
    family_mark: Annotated[str, BeforeValidator(_as_text), Field(max_length=60)] = ""
    labels: tuple[LabelStock, ...] = ()
    printer_feed: Annotated[str, BeforeValidator(_as_text), Field(pattern=_FEED)] = "0, 0"
    giving_days: Annotated[tuple[GivingDay, ...], Field(min_length=1)] = (
        GivingDay(name="Christmas", day="the Saturday before Christmas"),
    )
    family_book: FamilyBook = FamilyBook()

    @property
    def own_days(self) -> tuple[tuple[str, str], ...]:
        """The book's own giving days: the name and the rule of each."""
        return tuple((day.name, day.day) for day in self.giving_days)


_MENDS: Final = {
    "title": 'Write "site_name: The book of our house".',
    "site_url": 'Write the whole address, not too long: "https://book.example/".',
    "recipes": 'Write the name of a folder beside mkdocs.yml: "recipes".',
    "larder": 'Write the name of the file that says what your own foods are: "larder.yml".',
    "pictures": 'Write the name of a folder among the pages: "pictures".',
    "units": 'Write "metric", "us" or "imperial".',
    "country": 'Write its two capitals: "GB".',
    "altitude_m": "Write whole metres from -430 to 6000.",
    "language": 'Write a language and its country: "en_GB" is English as in Britain, "de_AT" '
    "German as in Austria.",
    "currency": 'Write its three capitals: "GBP".',
    "send_us": 'Write "yes", or "no" to leave the page out.',
    "design": 'Write the name of a design: "plain", "leaves", "winter".',
    "family_mark": 'Write a few letters, "R & T", or the name of a drawing: "mark.svg".',
    "labels": 'Write each as "- {name: jam jars, measures: "2,4,15,18.5,90,65"}".',
    "printer_feed": 'Write millimetres to the right and down: "0.8, -1.2". See print test-sheet.',
    "giving_days": 'Write each as "- {name: Christmas, day: 24 December}".',
    "family_book": 'Under it stand "dedication: For Ann", "handwriting: hand.jpg" with "says: what '
    'it reads", and "photographs:", each "- {picture: hut.jpg, shows: The hut}".',
}
_WRITTEN_AS: Final = {"title": "site_name"}
_READ_BY: Final = ("units", "language", "country", "recipes")
_ANY_YEAR = date(2024, 1, 1)
"""Whether a rule can be read hangs on no year; a leap year knows 29 February."""


def read_settings(
    written: Mapping[str, Any], file: str = "mkdocs.yml", places: Places | None = None
) -> BookSettings:
    """Check settings as written; raises ProblemsFound with every mistake at its own line.

    What is written and left empty is as if it were not written.
    """
    places = places or {}
    stated = {key: value for key, value in written.items() if value is not None}
    # cups, gills and proof are an American book's own, unless it says otherwise
    if stated.get("country") == "US":
        stated = {"units": "us"} | stated
    try:
        settings = BookSettings.model_validate(stated)
    except ValidationError as error:
        problems = [
            _problem(detail, stated, file, places)
            for detail in error.errors()
            # a list all of whose parts are wrong is not empty: its parts are told of instead
            if not (detail["type"] == "too_short" and detail["input"])
        ]
        raise ProblemsFound(problems) from None
    problems = [
        problem
        for number, day in enumerate(settings.giving_days)
        for problem in _faults(
            day, settings, *place_of(("giving_days", number, "day"), places, file)
        )
    ]
    problems.extend(_named_twice(settings.giving_days, places, file))
    if problems:
        raise ProblemsFound(problems)
    return settings


def read_what_fits(
    written: Mapping[str, Any], file: str, places: Places | None = None
) -> tuple[BookSettings | None, tuple[Problem, ...]]:
    """Check settings as written, and return those that are right with what is wrong of the others.

    None where amounts or cautions hang on what is wrong: nothing could be told of the recipes then.
    """
    try:
        return read_settings(written, file, places), ()
    except ProblemsFound as found:
        wrong = found.problems
    fits = {key: value for key, value in written.items() if _is_right(key, value)}
    lost = {key for key, value in written.items() if value is not None} - set(fits)
    if any(nearest(key, _READ_BY, 0.75) for key in lost):
        return None, wrong
    return read_settings(fits, file, places), wrong


def _is_right(key: str, value: Any) -> bool:
    try:
        read_settings({key: value})
    except ProblemsFound:
        return False
    return True


def place_of(path: tuple[str | int, ...], places: Places, file: str) -> tuple[str, int]:
    """Return file and line of a setting, or of the nearest thing above it."""
    for size in range(len(path), 0, -1):
        if found := places.get("/".join(str(part) for part in path[:size])):
            return found
    return places.get("", (file, 1))


def _problem(
    detail: ErrorDetails, written: Mapping[str, Any], file: str, places: Places
) -> Problem:
    loc = detail["loc"]
    key = str(loc[0])
    name, line = place_of(loc, places, file)
    if detail["type"] == "extra_forbidden" and len(loc) == 1:
        mend = did_you_mean(key, BookSettings.model_fields)
        return Problem(name, line, f'"{key}" is not a setting of the book.', mend)
    shown = _WRITTEN_AS.get(key, key)
    value = detail["input"] if detail["type"] != "missing" else "something is missing"
    what = f'The setting "{shown}" is not right: {_say_value(value)}.'
    if detail["type"] == "missing":
        what = f'The setting "{shown}" is not right: it says no "{loc[-1]}".'
    elif detail["type"] == "extra_forbidden":
        what = f'The setting "{shown}" is not right: it cannot say "{loc[-1]}".'
    elif detail["type"] == "too_short":
        what = f'The setting "{shown}" is not right: nothing is in it.'
    return Problem(name, line, what, _mend(key, value))


def _mend(key: str, value: Any) -> str:
    if key == "country" and isinstance(value, str):
        code = "GB" if value.upper() == "UK" else value.upper()
        named = _countries().get(nearest(value, _countries(), 0.8) or "")
        code = code if code in _countries().values() else named or ""
        return f'Write "{code}".' if code else _MENDS["country"]
    return _MENDS.get(key, "")


def _say_value(value: Any) -> str:
    if isinstance(value, str | int | float):
        text = str(value)
        return f'"{text if len(text) <= 60 else text[:57] + "..."}"'
    return "it is not written as wanted"


def _named_twice(days: Sequence[GivingDay], places: Places, file: str) -> Iterator[Problem]:
    """Find each giving day that has the name of one before it: a list could mean either."""
    first: dict[str, int] = {}
    for number, day in enumerate(days):
        known = first.setdefault(" ".join(day.name.casefold().split()), number)
        if known != number:
            name, line = place_of(("giving_days", number, "name"), places, file)
            other, above = place_of(("giving_days", known, "name"), places, file)
            where = f"in line {above}" if other == name else f"in {other}, line {above}"
            what = f'Two giving days are called "{day.name}": the first stands {where}.'
            yield Problem(name, line, what, "Give one of them another name, or take it out.")


def _faults(giving: GivingDay, settings: BookSettings, file: str, line: int) -> Iterator[Problem]:
    """Find a giving day whose rule is no day, or one that would come only once."""
    named = f'The giving day "{giving.name}" is not right:'
    try:
        day = find_day(giving.day, _ANY_YEAR, settings.country)
        again = find_day(giving.day, day + timedelta(days=1), settings.country)
    except Unreadable as wrong:
        yield Problem(file, line, f"{named} {wrong.what}", wrong.mend)
        return
    if again <= day:
        mend = f'Write it without its year, as in "{day.day} {say_month(day.month)}".'
        yield Problem(file, line, f"{named} {giving.day} comes only once.", mend)
