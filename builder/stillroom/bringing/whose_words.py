"""Whose recipe it is, and whose words: what of it is printed, and what is asked before it is.

A name that somebody has published already is printed with whence the recipe is. Any other is asked
about: a recipe's page is read by everybody.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.found import Origin, Recipe
from stillroom.core.reading.markup import find_markup

STANDS_AS: Final = "stands as whose recipe it is"
"""What is said of a name in the question about it."""
_LONGEST_NAME: Final = 120
_ASKED: Final = re.compile(rf'"(?P<name>[^"]+)" (?:sent it, and )?{STANDS_AS}\b')


def asked_of_name(writer: str, recipe: Recipe) -> tuple[str, str]:
    """Return what is asked about a name that nobody has published, and how to mend it.

    >>> asked_of_name("Ann Sedge", Recipe(writer="Ann Sedge"))[0]
    '"Ann Sedge" stands as whose recipe it is, and everybody will read the name.'
    """
    if recipe.writer:
        what = f'"{writer}" {STANDS_AS}, and everybody will read the name.'
        return what, "Let it stand if they may be named; else take it out."
    what = f'"{writer}" sent it, and {STANDS_AS}.'
    return what, "If it is somebody else's, write that; if they may not be named, take it out."


def name_asked_about(question: str) -> str:
    """Return the name that such a question is about; "" for any other.

    >>> name_asked_about(asked_of_name("Ann Sedge", Recipe(writer="Ann Sedge"))[0])
    'Ann Sedge'
    """
    found = _ASKED.match(question)
    return found["name"] if found else ""


def source_of(recipe: Recipe, origin: Origin) -> str:
    """Return whence it was brought, as far as that is public; "" where nobody said.

    A file's name is the cook's own, and an address of letters its writer's. A name that nobody has
    published stands as whose recipe it is alone: where that is taken out it is printed nowhere.
    """
    writer = " ".join((recipe.writer or origin.writer)[:_LONGEST_NAME].split())
    address = recipe.address or origin.address
    parts = [f"by {writer}"] if writer and origin.others else []
    parts += [address] if address and find_markup(address) is None else []
    return f"Brought in, {', '.join(parts).removesuffix('.')}." if parts else ""


def asked_of_words(recipe: Recipe, origin: Origin) -> tuple[str, str]:
    """Return what is asked about the steps of a recipe that others published."""
    whose = recipe.writer or origin.writer or "whoever published them"
    left = " Their introduction was left out." if recipe.intro else ""
    what = f"The steps are the words of {whose}.{left}"
    mend = (
        "Say them in your own words, or ask for leave, before the book is published: a list of "
        "ingredients is anybody's, the words are not."
    )
    return what, mend
