"""A new book from a few answers: its settings, its pages and a first recipe, which builds at once.

Nothing is ever written over. Leaves out who asks: the command (start) and the desk.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any, Final, cast

import yaml
from babel import Locale, UnknownLocaleError
from babel.core import get_global
from babel.languages import get_official_languages
from babel.numbers import get_decimal_symbol, get_territory_currencies

from stillroom.beginning.recipe import new_recipe
from stillroom.core.book import BookSettings, find_book, open_book, read_settings
from stillroom.core.reading.recipe_file import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.settings_file import PLUGIN, read_settings_file
from stillroom.core.when.giving_days import find_day
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.saving.places import guard_out
from stillroom.saving.whole import clear_leftovers, write_several

PAGES: Final = Path(__file__).parent / "pages"
SETTINGS: Final = "mkdocs.yml"
LIST: Final = "giving-list.yml"
FIRST: Final = ("Vanilla sugar", "infused sugar")
"""The recipe that a new book holds, so that there is something to look at."""
READ: Final = ("en", "de", "fr", "es", "it", "nl", "sv")
"""The languages whose numbers and foods the book reads."""

_FEASTS: Final = ("Christmas", "Easter", "Thanksgiving", "Midsummer", "Michaelmas")
_CHRISTMAS: Final = re.compile(r"\b2[456](?:th)?\.? (?:of )?dec|\bdec\w*\.? 2[456]\b|-12-2[456]\b")


@dataclass(frozen=True)
class Answers:
    """What is asked of whoever begins a book; what is left empty is as usual in the country."""

    title: str
    country: str = "GB"
    keeper: str = ""
    giving_name: str = "Christmas"
    giving_day: str = "the Saturday before Christmas"
    language: str = ""
    units: str = ""
    currency: str = ""
    altitude_m: int | str = 0
    site_url: str = ""
    today: date | None = None


def settings_of(answers: Answers) -> BookSettings:
    """Return the settings of a book to be; raises ProblemsFound with every answer that is wrong."""
    country = _country(answers.country)
    stated: dict[str, Any] = {
        "title": " ".join(answers.title.split()),
        "site_url": answers.site_url,
        "country": country,
        "altitude_m": answers.altitude_m,
        "language": answers.language or usual_language(country),
        "units": answers.units or ("us" if country == "US" else "metric"),
        "currency": answers.currency or usual_currency(country),
        "giving_days": [{"name": answers.giving_name, "day": answers.giving_day}],
    }
    return read_settings(stated, "answers")


def name_of_day(day: str) -> str:
    """Return what a giving day is called where nobody has said so.

    >>> [name_of_day(day) for day in ("the Saturday before Christmas", "24 December", "6 December")]
    ['Christmas', 'Christmas', 'The giving day']
    >>> name_of_day("the Sunday after Easter")
    'Easter'
    """
    said = day.casefold()
    if named := next((name for name in _FEASTS if name.casefold() in said), ""):
        return named
    return "Christmas" if _CHRISTMAS.search(said) else "The giving day"


def book_files(answers: Answers, giving_list: str = "") -> dict[str, str]:
    """Return every file of a new book by its place below the folder; raises ProblemsFound.

    `giving_list` is the text of a list that was asked for; else there is one that names nobody yet.
    """
    settings = settings_of(answers)
    keeper = " ".join(answers.keeper.split())
    giving = settings.giving_days[0]
    filled = {
        "title": f"site_name: {_quoted(settings.title)}",
        "site_url": f"site_url: {_quoted(settings.site_url)}",
        "copyright": f"copyright: {_quoted(f'Kept by {keeper}.')}\n" if keeper else "",
        "country": _quoted(settings.country),
        "altitude_m": settings.altitude_m,
        "language": _quoted(settings.language),
        "units": settings.units,
        "currency": _quoted(settings.currency),
        "giving": f"{{name: {_quoted(giving.name)}, day: {_quoted(giving.day)}}}",
    }
    first = new_recipe(*FIRST, settings)
    return {
        SETTINGS: _page("mkdocs.yml.txt").format(**filled),
        "pages/index.md": _page("index.md"),
        "pages/about.md": _page("about.md"),
        f"recipes/{first.slug}.md": first.text,
        ".gitignore": _page("gitignore.txt"),
        f"giving/{LIST}": giving_list or _giving_list(answers, settings),
    }


def _giving_list(answers: Answers, settings: BookSettings) -> str:
    """Return a giving list that names nobody yet, for the next giving day of the book."""
    giving = settings.giving_days[0]
    day = find_day(giving.day, answers.today or date.today(), settings.country)
    decimal = get_decimal_symbol(settings.language)
    return _page("giving.yml.txt").format(
        name=LIST,
        title=_quoted(f"{giving.name} {day.year}"),
        day=day.isoformat(),
        keeper=_quoted(" ".join(answers.keeper.split())),
        price=f"2{decimal}10",
    )


def check_place(folder: Path, answers: Answers, giving_list: str = "") -> None:
    """Raise ProblemsFound where anything of a new book is there already, or an answer is wrong."""
    files = {
        folder / name: text.encode() for name, text in book_files(answers, giving_list).items()
    }
    for place in files if folder.is_dir() else ():
        clear_leftovers(place)
    if problems := [*_in_the_way(folder, files)]:
        raise ProblemsFound(problems)


def first_recipe(settings: BookSettings) -> Recipe:
    """Return the recipe that a new book holds."""
    new = new_recipe(*FIRST, settings)
    return read_recipe(new.text, new.slug, new.slug, settings.units, language=settings.language)


def books_below(folder: Path) -> tuple[str, ...]:
    """Return the names of the folders right below that hold a book: one of them may be meant."""
    kept = sorted(folder.glob(f"*/{SETTINGS}")) if folder.is_dir() else []
    return tuple(settings.parent.name for settings in kept if _is_a_book(settings))


def begin_book(folder: Path, answers: Answers, giving_list: str = "") -> tuple[Path, ...]:
    """Write a new book; raises ProblemsFound where anything of it is there, and writes nothing.

    Where the disk refuses a part of it, nothing of it stays.

    The settings come last: without them there is no book yet, and what was written of one by a run
    that was ended is no obstacle to the next.
    """
    check_place(folder, answers, giving_list)
    files = {folder / name: text for name, text in book_files(answers, giving_list).items()}
    last = sorted(files, key=lambda path: path.name == SETTINGS)
    pictures = folder / "pages" / "pictures"
    write_several({path: files[path].encode() for path in last}, [pictures])
    return tuple(files)


def _in_the_way(folder: Path, files: Mapping[Path, bytes]) -> Iterator[Problem]:
    if folder.exists() and not folder.is_dir():
        yield Problem(str(folder), 0, "This is a file.", "Name a folder that is not there yet.")
        return
    mend = "Name an empty folder, or one that is not there yet: nothing is written over."
    begun = not (folder / SETTINGS).exists()
    for path, data in files.items():
        if begun and path.is_file() and not path.is_symlink() and path.read_bytes() == data:
            continue
        if path.exists() or path.is_symlink():
            yield Problem(str(path), 1, "This is there already.", mend)
    above = find_book(folder)
    if above is not None and above.parent != folder.resolve() and _is_a_book(above):
        try:
            guard_out(folder, open_book(above))
        except ProblemsFound as found:
            yield from found.problems


def _is_a_book(settings: Path) -> bool:
    try:
        return bool(read_settings_file(settings).places)
    except ProblemsFound:
        return PLUGIN in settings.read_text(encoding="utf-8", errors="replace")


def _page(name: str) -> str:
    return (PAGES / name).read_text(encoding="utf-8")


def _quoted(text: str) -> str:
    """Return a text as it may stand behind any colon of the settings, whatever is in it."""
    return str(yaml.safe_dump(text, allow_unicode=True, width=10_000, default_style='"')).strip()


def _country(said: str) -> str:
    """Return the two capitals of a country that is called by its name or by them."""
    bare = " ".join(said.split())
    names = Locale("en").territories
    called = {name.lower(): code for code, name in names.items() if len(code) == 2}
    usual = {"uk": "GB", "usa": "US", "england": "GB", "scotland": "GB", "wales": "GB"}
    return str((usual | called).get(bare.lower(), bare.upper()))


def usual_language(country: str) -> str:
    """Return the language of a country that the book can read, English where it knows none.

    >>> usual_language("AT"), usual_language("CA"), usual_language("NO"), usual_language("US")
    ('de_AT', 'en_CA', 'en_GB', 'en_US')
    """
    spoken = get_official_languages(country, regional=False, de_facto=True)
    known = [one for one in spoken if one in READ]
    for language in known:
        try:
            return str(Locale.parse(f"{language}_{country}"))
        except (UnknownLocaleError, ValueError):
            continue
    return "en_GB"


def usual_currency(country: str) -> str:
    """Return what is paid with in a country; euros where nobody knows.

    >>> usual_currency("CH"), usual_currency("US")
    ('CHF', 'USD')
    """
    known = cast("dict[str, Any]", get_global("territory_currencies"))
    found = get_territory_currencies(country) if country in known else []
    return str(found[-1]) if found else "EUR"
