"""A soup's title over the dry things for one: it is a mix to give, and not the soup itself.

"Friendship soup", "Soup in a jar", layered of peas, lentils and rice. Told by its list, as no title
says it; asked about, since a soup that is ready has no safe way into a jar here.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.bringing.found import Recipe

WORD: Final = "soup mix"
_WHAT: Final = 'Its title says a soup, and its list the dry things for one: "soup mix" is taken'
MEND: Final = "If it is a soup that is ready to eat, this book has no kind for it."
_MOST_SHOWN: Final = 3
_SOUP: Final = re.compile(r"\bsoups?\b|suppe\b|\b(?:soupe|zuppa|sopa|soep|soppa)\b", re.IGNORECASE)
_DRY: Final = re.compile(
    r"\b(?:dried|dry|dehydrated|uncooked|instant|granul\w+|powder\w*|flakes?|bouillon|barley|lentils?"
    r"|split peas?|beans?|rice|pasta|macaroni|noodles?|salt|pepper\w*|seasoning|spices?|herbs?"
    r"|oregano|basil|thyme|parsley|bay lea(?:f|ves)|couscous|bulgur|quinoa|getrocknet\w*|linsen"
    r"|reis|nudeln|salz|pfeffer|pulver|graupen|sec|sèche?s?|lentilles|riz|pâtes|sel|poivre"
    r"|secc?[oaie]s?|lenticchie|riso|sale|pepe|lentejas|arroz|sal|pimienta|gedroogd\w*|linzen|rijst)\b",
    re.IGNORECASE,
)
_FILLED: Final = re.compile(
    r"\b(?:jars?|bags?|glas|gläser|bocal|barattolo|vasetto|tarro|pot)\b", re.IGNORECASE
)
_LEAST: Final = 4


def is_soup_mix(recipe: Recipe) -> bool:
    """Whether a recipe called a soup lists the dry things for one, filled into something.

    >>> dry = [("", one) for one in ("1 cup lentils", "1 cup rice", "1/2 cup barley", "1 tsp salt")]
    >>> is_soup_mix(Recipe("Soup in a jar", ingredients=dry))
    True
    >>> wet = [("", one) for one in ("1 kg leeks", "1 l stock", "200 ml cream", "salt")]
    >>> is_soup_mix(Recipe("Leek soup in a jar", ingredients=wet))
    False
    """
    lines = [line for _, line in recipe.ingredients]
    if not _SOUP.search(recipe.title) or len(lines) < _LEAST:
        return False
    said = " ".join((recipe.title, *recipe.intro, *(step for _, step in recipe.steps)))
    dry = sum(bool(_DRY.search(line)) for line in lines)
    return bool(_FILLED.search(said)) and dry * 3 >= len(lines) * 2


def asked_of_mix(recipe: Recipe) -> str:
    """Return the question about a soup that is taken for a mix, with what of it is not dry."""
    wet = [line for _, line in recipe.ingredients if not _DRY.search(line)]
    said = ", ".join(f'"{line[:40]}"' for line in wet[:_MOST_SHOWN])
    more = f"; take out what its cook adds: {said}" if wet else ""
    return f"{_WHAT}{more}."
