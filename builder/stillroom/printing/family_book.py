"""The family book: the whole collection as one PDF, A5 unless asked otherwise.

`book_data` gathers what the printed book and the EPUB both hold; `print_book` sets it. Leaves out
the booklet (booklet.py), the EPUB's own files (epub_book.py) and how pages look (templates).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from stillroom.core.book import Book
from stillroom.core.lines.staple_table import staple_of
from stillroom.core.paper.sheets import PAPERS, Size
from stillroom.core.recipe.kinds import all_kinds
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.giving_days import find_day
from stillroom.core.when.season import last_good_start
from stillroom.core.words.day_words import MONTH_NAMES
from stillroom.looks.inked import emblem_of, picture_of
from stillroom.looks.quotes import curl_all
from stillroom.printing.bound_recipe import Bound, bind_recipe, say_when
from stillroom.printing.language import split_language
from stillroom.printing.prose import to_blocks
from stillroom.printing.typesetting import typeset

BLEED_MM = 3
"""What printers usually ask for round the trimmed page; common practice, no published source."""


def print_book(
    data: dict[str, Any],
    *,
    page: Size = PAPERS["a5"],
    bleed: bool = False,
    fonts: Path | None = None,
) -> bytes:
    """Set the family book, with a bleed round every page when a printer asks for one."""
    shown = data | {
        "page": {"width": float(page.width_mm), "height": float(page.height_mm)},
        "bleed_mm": BLEED_MM if bleed else 0,
    }
    return typeset("book.typ", shown, fonts=fonts).pdf


def book_data(
    book: Book,
    recipes: Sequence[Recipe],
    today: date,
    *,
    whom: str = "",
    dedication: str = "",
) -> dict[str, Any]:
    """Return everything the family book holds, as plain data.

    `today` decides for which giving day the index by month counts back, and is the day an EPUB
    says it was made. `whom` is the household it is made for, whose own `dedication` goes before
    the book's.
    """
    settings = book.settings
    language, region = split_language(settings.language)
    bound = [bind_recipe(book, recipe, today) for recipe in recipes]
    giving = settings.giving_days[0]
    day = find_day(giving.day, today, settings.country)
    data = {
        "title": settings.title,
        "made_on": today.isoformat(),
        "subtitle": f"{len(recipes)} things to make and give",
        "language": language,
        "region": region,
        "url": settings.site_url,
        "imprint": _imprint(settings.title, settings.site_url),
        "household": household_of(book, whom, dedication),
        "writers": list_writers(recipes),
        "cover_svg": picture_of(book, "frontispiece.svg"),
        "cover_alt": f"The frontispiece of {settings.title}",
        "chapters": _chapters(book, bound),
        "titles": {one.recipe.slug: one.recipe.title for one in bound},
        "before": _before(bound[0].box.deference, settings.site_url),
        "deference": bound[0].box.deference,
        "safety": _safety(bound),
        "ingredient_index": index_ingredients(recipes),
        "month_note": f"Begin by then to give it at its best on {giving.name}; or when its "
        "produce is to be had.",
        "month_index": index_months(recipes, day, giving.name),
        "sources": _sources(bound),
    }
    return dict(curl_all(data, settings.language))


def household_of(book: Book, whom: str, dedication: str) -> dict[str, Any]:
    """Return a household's own pages: words, the giver's hand and photographs."""
    own = book.settings.family_book
    return {
        "whom": whom,
        "own": bool(whom or dedication or own.dedication or own.handwriting or own.photographs),
        "dedication": to_blocks(dedication or own.dedication),
        "hand_svg": picture_of(book, own.handwriting),
        "says": own.says,
        "photographs": [
            {"svg": picture_of(book, one.picture), "shows": one.shows} for one in own.photographs
        ],
    }


def list_writers(recipes: Iterable[Recipe]) -> list[dict[str, Any]]:
    """Return who wrote which recipe down and when; nobody of whom nothing is said."""
    found: dict[str, list[dict[str, str]]] = {}
    for recipe in sorted(recipes, key=lambda one: one.title.casefold()):
        if recipe.author or recipe.date:
            row = {"title": recipe.title, "slug": recipe.slug, "when": say_when(recipe.date)}
            found.setdefault(recipe.author, []).append(row)
    return [
        {"name": name or "Nobody said", "named": bool(name), "entries": found[name]}
        for name in sorted(found, key=lambda name: (not name, name.casefold()))
    ]


def _before(deference: str, url: str) -> list[str]:
    """Return what a reader must know first; pages it points to are the template's to find."""
    words = [
        deference,
        "Amounts are those of one batch, as its maker writes it down.",
        "The box at the end of a recipe is worked out from its ingredients, vessels and steps. "
        "What it says to whoever is given the thing, say when you give it.",
    ]
    if url:
        words.append(
            f"On the screen, at {url}, every recipe scales to what you want to make and counts the "
            "days for you. The code beside each leads to its page."
        )
    return words


def _chapters(book: Book, bound: Sequence[Bound]) -> list[dict[str, Any]]:
    chapters: list[dict[str, Any]] = []
    for kind in all_kinds().values():
        members = [one.data for one in bound if one.recipe.kind.name == kind.name]
        if members:
            words = kind.describes
            chapters.append(
                {
                    "name": kind.many.capitalize(),
                    "describes": f"{words[:1].upper()}{words[1:]}.",
                    "emblem_svg": emblem_of(kind.slug),
                    "recipes": sorted(members, key=lambda one: str(one["title"]).casefold()),
                }
            )
    return chapters


def index_ingredients(recipes: Iterable[Recipe]) -> list[dict[str, Any]]:
    """Return each ingredient by its staple's name, or its own, with the recipes that use it."""
    found: dict[str, set[str]] = {}
    for recipe in recipes:
        for ingredient in recipe.ingredients:
            staple = staple_of(ingredient)
            word = staple.name if staple else ingredient.item
            found.setdefault(word.lower(), set()).add(recipe.slug)
    return [{"word": word, "slugs": sorted(found[word])} for word in sorted(found)]


def index_months(recipes: Iterable[Recipe], day: date, giving: str) -> list[dict[str, Any]]:
    """Return for each month what to begin in it for a giving day, and what is then in season."""
    entries: list[list[dict[str, str]]] = [[] for _month in MONTH_NAMES]
    for recipe in recipes:
        start = last_good_start(recipe, recipe.season, day)
        row = {"title": recipe.title, "slug": recipe.slug}
        entries[start.month - 1].append(row | {"why": f"by the {_ordinal(start.day)}"})
        for month in recipe.season:
            if month != start.month:
                entries[month - 1].append(row | {"why": "in season"})
    return [
        {"name": name, "entries": sorted(rows, key=lambda row: row["title"].casefold())}
        for name, rows in zip(MONTH_NAMES, entries, strict=True)
        if rows
    ]


def _ordinal(day: int) -> str:
    ending = "th" if 10 < day % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(day % 10, "th")
    return f"{day}{ending}"


def _safety(bound: Iterable[Bound]) -> list[dict[str, Any]]:
    rules: dict[str, dict[str, Any]] = {}
    for one in bound:
        for caution in (*one.box.refusals, *one.box.cautions):
            rule = rules.setdefault(
                caution.rule,
                {"title": caution.title, "text": caution.to_maker, "source": caution.source},
            )
            rule.setdefault("slugs", []).append(one.recipe.slug)
    return sorted(rules.values(), key=lambda rule: str(rule["title"]))


def _sources(bound: Iterable[Bound]) -> list[str]:
    said = set()
    for one in bound:
        aside = [entry.caution for entry in one.box.overrides]
        said |= {caution.source for caution in (*one.box.refusals, *one.box.cautions, *aside)}
        said |= {one.recipe.keeps.source, one.data["give"]["keeps_source"]}
        if one.recipe.acidity:
            said.add(one.recipe.acidity.source)
        said.add(one.recipe.kind.timeline_source)
    return sorted((source for source in said if source), key=str.casefold)


def _imprint(title: str, url: str) -> list[str]:
    lines = [title, "Set in EB Garamond and Alegreya Sans, both under the SIL Open Font License."]
    if url:
        lines.insert(1, f"The book is kept up to date at {url}")
    return lines
