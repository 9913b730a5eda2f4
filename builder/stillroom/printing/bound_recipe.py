"""One recipe as the family book and the EPUB hold it: all that its page on the screen says.

Leaves out the chapters and indexes round it (family_book.py) and how it looks (the templates).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from stillroom.core.amounts.quantities import show_amount
from stillroom.core.book import Book
from stillroom.core.care.safety import SafetyBox, assess_safety
from stillroom.core.label.keeping import keeping_words
from stillroom.core.label.labelling import Label, label_recipe
from stillroom.core.paper.qr_code import MODULE_MM, QUIET_MODULES, draw_qr
from stillroom.core.recipe.ages import ages_of
from stillroom.core.recipe.holders import Container
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scaling import scale_recipe
from stillroom.core.when.timeline import plan_forward
from stillroom.core.words.day_words import MONTH_NAMES, say_minutes
from stillroom.core.words.joining import join_and
from stillroom.looks.card_pictures import picture_file
from stillroom.looks.inked import picture_of
from stillroom.printing.card_data import join_sentences, said_data
from stillroom.printing.prose import to_blocks
from stillroom.printing.recipe_data import recipe_data


@dataclass(frozen=True)
class Bound:
    """One recipe with what the book prints of it and what it cites."""

    recipe: Recipe
    box: SafetyBox
    data: dict[str, Any]


def bind_recipe(book: Book, recipe: Recipe, today: date) -> Bound:
    """Return a recipe as written, with its strip, notes, picture, giving words and code.

    `today` is a day to count hands-on time from; no date of it is shown.
    """
    box = assess_safety(recipe, book.settings)
    label = label_recipe(recipe, book.settings, None)
    data = recipe_data(recipe, scale_recipe(recipe), box, book.settings.altitude_m)
    site = book.settings.site_url.rstrip("/")
    address = f"{site}/r/{recipe.slug}/" if site else ""
    code = draw_qr(address) if address else None
    data |= {
        "strip": _strip(recipe, data["makes"], label, today),
        "written": say_written_by(recipe.author, recipe.date),
        "season": join_and([MONTH_NAMES[month - 1] for month in recipe.season]),
        "intro": to_blocks(recipe.intro),
        "sections": [
            {"heading": section.heading, "blocks": to_blocks(section.text)}
            for section in recipe.sections
        ],
        "picture_svg": picture_of(book, picture_file(recipe)),
        "picture_alt": recipe.picture_alt or recipe.title,
        "url": address,
        "qr_svg": code.svg if code else "",
        "qr_mm": code.size_mm if code else 0,
        "qr_quiet_mm": QUIET_MODULES * MODULE_MM,
        "give": _giving_words(recipe, label),
    }
    return Bound(recipe, box, data)


def say_written_by(author: str, day: str) -> str:
    """Say who wrote a recipe down and when, as far as it is known.

    >>> say_written_by("Ann", "2021-05-03"), say_written_by("", "May 2021"), say_written_by("", "")
    ('From Ann, 3 May 2021', 'Written down May 2021', '')
    """
    when = say_when(day)
    if author:
        return f"From {author}, {when}" if when else f"From {author}"
    return f"Written down {when}" if when else ""


def say_when(written: str) -> str:
    """Return a day, a month or a year as its writer would say it; other words as they are.

    >>> say_when("2021-05-03"), say_when("2021-05"), say_when("1987"), say_when("one wet June")
    ('3 May 2021', 'May 2021', '1987', 'one wet June')
    """
    if found := re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", written.strip()):
        year, month, day = found.groups()
        if 1 <= int(month) <= 12:
            return " ".join(
                part
                for part in ((day or "").lstrip("0"), MONTH_NAMES[int(month) - 1], year)
                if part
            )
    return written.strip()


def _strip(recipe: Recipe, makes: str, label: Label, today: date) -> list[tuple[str, str]]:
    """Return the facts under the title, those of the page's strip and the strength."""
    facts = (
        ("Makes", makes),
        ("Hands-on", say_minutes(plan_forward(recipe, today).hands_on_minutes)),
        *((name, age) for _role, name, age in ages_of(recipe)),
        ("Keeps", keeping_words(recipe)),
        ("Strength", label.strength_text.lower()),
    )
    return [fact for fact in facts if fact[1]]


def _giving_words(recipe: Recipe, label: Label) -> dict[str, Any]:
    """Return what a card would say of it, as in the book: without a day of making."""
    return {
        "what": recipe.card.what,
        "filled_into": _say_containers(recipe.filled_into),
        "contents_head": recipe.kind.contents_heading,
        "contents": [
            {
                "text": entry.text,
                "emphasised": entry.emphasised,
                "lead": entry.lead,
                "tail": entry.tail,
            }
            for entry in label.contents
        ],
        "allergens": list(label.allergens),
        "allergen_words": said_data(label.allergen_words),
        "use": recipe.card.use,
        "keep": join_sentences(label.keep_how, label.once_opened),
        "date_text": label.date_mark.text,
        # of what nobody knows, no figure is named as if it held
        "keeps_source": "" if label.date_mark.term == "not known" else label.keeping.source,
    }


def _say_containers(containers: Sequence[Container]) -> str:
    """Return what it is filled into: "bottle, 50 ml, screw cap; jar, 200 ml"."""
    return "; ".join(
        ", ".join(
            part
            for part in (one.name, show_amount(one.size) if one.size else "", one.closure)
            if part
        )
        for one in containers
    )
