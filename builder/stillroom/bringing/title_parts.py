"""What a title of several parts says that is no name of a recipe: the way to it, a column, a site.

"Home » Jams » Damson jam", "7th December: Sugared nuts", "Giardiniera: la ricetta", "Plum gin | The
Still Room". What is certain is taken away; what may be either is asked, with the parts. Leaves out
which line is the title: list_titles.py, title_choice.py.
"""

from __future__ import annotations

import re
from typing import Final
from urllib.parse import urlsplit

from stillroom.bringing.found import Origin, Recipe
from stillroom.bringing.heads import words
from stillroom.bringing.naming import (
    named_by_subject,
    says_its_kind,
    says_kind_or_doubt,
    without_column,
)
from stillroom.bringing.titles import RECIPE_WORD
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

# between the names of a page, of what it is in and of its site
_PAGE_SIGN: Final = late_regex(r"\s*[|»›>→►]+\s*|\s+(?:::|[·•~/])\s+")
_COLON: Final = late_regex(r"\s?:\s+")
_DASH: Final = late_regex(r"\s+[-–—]+\s+")
_WORD: Final = late_regex(r"[^\W\d_]+")
_RECIPES: Final = late_regex(
    rf"\b(?:{RECIPE_WORD}|rezepte|recettes|ricette|recetas|receitas|recepten|recipes|opskrifter|oppskrifter"
    r"|przepisy?|tutorial|how[\s-]to|diy)\b",
    re.IGNORECASE,
)
# "recipe from Nan's book": whose it is
_WHOSE: Final = late_regex(
    r"\b(?:from|by|von|vom|aus|de|du|di|da|del|della|van|av|af|fra|från|od|my|our|mein\w*|unser\w*)\s+(?!(?:scratch|home|casa)\b)"
    r"|[^\W\d]['’]s\b"
)
# the day of a calendar or a series on which it was printed
_MONTHS: Final = (
    r"(?:jan|feb|mar|mär|maart|apr|avr|abr|may|mai|mag|mei|jun|juin|giu|jul|juil|lug|aug|août|ago"
    r"|sep|set|oct|okt|ott|out|nov|dec|dez|déc|dic)[^\W\d]*\.?"
)
_DAY: Final = late_regex(
    rf"(?:the\s+)?\d{{1,2}}(?:st|nd|rd|th|er|\.|º|°)?\s+(?:of\s+|de\s+)?{_MONTHS}(?:\s+\d{{4}})?"
    rf"|{_MONTHS}\s+\d{{1,2}}(?:st|nd|rd|th)?"
    r"|(?:day|tag|jour|giorno|día|dag|dia|türchen|part|teil|partie|parte|deel|del|week|woche|episode|folge|post|no\.?|nr\.?|#)\s*\d{1,3}"
    r"|(?:advent\s+)?(?:calendar|kalender|adventskalender|calendrier\s+de\s+l['’]avent)[^:|]{0,20}",
    re.IGNORECASE,
)
# what names a place of the net, whoever keeps it
_SITE: Final = late_regex(
    r"\b(?:blog|foodblog|kochblog|blogspot|wordpress|website|magazine?|forum)\b|\.(?:com|net|org|de|at|ch|fr|it|es|nl|be|se|dk|no|pl|pt|co\.uk|eu|info)\b",
    re.IGNORECASE,
)
_PAGE_OF_IT: Final = late_regex(
    r"(?P<page>\d{2,3})\s+(?!(?i:day|hour|minute|week|month|year|ingredient|layer|step)s?\b)"
    r"(?P<title>[A-ZÀ-Ý][^\d]{3,60})"
)
_BARE_NUMBER: Final = late_regex(r"(?:about |around |ca\.? )?\d+(?:\s?[-–]\s?\d+)?")
_LEAST_STEM: Final = 4
_STEM: Final = 6
_LEAST_HOST: Final = 6
_NAMELESS: Final = frozenset(
    {"home", "made", "with", "from", "easy", "best", "mein", "unser", "selber", "machen", "selbst"}
)


def named_alone(recipe: Recipe, origin: Origin) -> str:
    """Return what a recipe is called, without what else its title says; doubts are the recipe's.

    Where it makes a number of nothing, its title may say of what: "ANZAC biscuits".
    """
    named = named_by_subject(recipe, origin)
    if origin.letter and named and not recipe.title and not says_kind_or_doubt(named):
        what = f'"{named}" is what the letter is about, and is taken for the title.'
        recipe.doubt("title", what, "If it is called otherwise, write that.")
    counted = _WORD.findall(named.lower())[-1:]
    if _BARE_NUMBER.fullmatch(recipe.makes.strip(" .")) and words("made_in") & {*counted}:
        recipe.makes = f"{recipe.makes.strip(' .')} {counted[0]}"
    said = [*(row for _, row in (*recipe.ingredients, *recipe.steps)), *recipe.intro]
    of_page = origin.others and not recipe.title  # the name of the window, and the site's behind it
    named = _without_page_number(named, recipe)
    title, others = alone(named, " ".join(said).lower(), _host(origin, recipe), of_page=of_page)
    if (
        origin.others
        and title
        and title == origin.title
        and not _names(title, " ".join(said).lower())
    ):
        what = f'"{title}" names the whole page, and nothing that is made.'
        recipe.doubt(
            "title", what, "If it is the name of the site, write what the recipe is called."
        )
    parts = " and ".join(f'"{one}"' for one in others)
    if title in others:
        what = f'"{title}" is a title of several parts, and stands whole.'
        recipe.doubt("title", what, "If one of them alone is what it is called, write that.")
    elif others:
        what = (
            f'"{named.strip()}" is a title of several parts: "{title}" is taken, and not {parts}.'
        )
        recipe.doubt("title", what, "If it is called otherwise, write that.")
    return title


def alone(
    title: str, said: str, host: str = "", *, of_page: bool = False
) -> tuple[str, tuple[str, ...]]:
    """Return the part of a title that names the recipe, and what was left of it with a doubt.

    `said` are the recipe's other words, in small letters. A title of which no part is plainly its
    name stands whole, and among the doubts.

    >>> alone("Home » Jams » Damson jam", "2 lb damsons"), alone("Giardiniera: la ricetta", "")
    (('Damson jam', ()), ('Giardiniera', ()))
    >>> alone("7th December: Sugared nuts", "nuts"), alone("Plum gin | My Still Room", "plums")
    (('Sugared nuts', ()), ('Plum gin', ()))
    >>> alone("Meatless Mood: plum chutney", "plums"), alone("Fun | The Pantry", "")
    (('Plum chutney', ('Meatless Mood',)), ('Fun | The Pantry', ('Fun | The Pantry',)))
    >>> alone("Lebkuchen: the ones of Nuremberg", ""), alone("Kombucha - Second ferment", "")
    (('Lebkuchen: the ones of Nuremberg', ()), ('Kombucha - Second ferment', ()))
    """
    bare = _without_certain(without_column(title.strip()), said, host)
    if found := _of_page(bare, said):
        return found
    head, sign, tail = _cut(bare, _COLON)
    if sign and not _names(head, said) and _names(tail, said) > 1 and not head.endswith("?"):
        return _capital(tail), (head,)
    before, sign, site = _cut_last(bare, _DASH)
    if of_page and sign and _names(before, said) and not _names(site, said):
        return before, (site,)
    return bare, ()


def _of_page(title: str, said: str) -> tuple[str, tuple[str, ...]] | None:
    """Return the one part of a page's name that names the recipe, or the likeliest with doubts."""
    parts = [one.strip() for one in _PAGE_SIGN.split(title) if one.strip()]
    if len(parts) < 2 or not re.search(r"\s", title):
        return None
    # "Drinks": what a page sorts by is one word, and no name of its own unless it is said again
    worth = [_names(one, said) if " " in one else _said_of_it(one, said) for one in parts]
    if "/" in title and all(worth):  # "Gelée de coings / Quince jelly": its two names
        return None
    best = [one for one, how_much in zip(parts, worth, strict=True) if how_much == max(worth)]
    if not max(worth):
        return title, (title,)
    one = best[-1] if re.search("[»›>→►]", title) else best[0]
    rest = tuple(other for other in best if other != one)
    return _capital(one), rest


def _without_certain(title: str, said: str, host: str) -> str:
    """Return a title without parts at its ends that name no recipe for certain."""
    for pattern in (_PAGE_SIGN, _COLON, _DASH):
        while True:
            head, sign, rest = _cut(title, pattern)
            before, last_sign, tail = _cut_last(title, pattern)
            if sign and _is_beside(head, said, host, first=True) and len(rest) > 2:
                title = _capital(rest)
            elif last_sign and _is_beside(tail, said, host, first=False) and len(before) > 2:
                title = before
            else:
                break
    return title


def _is_beside(part: str, said: str, host: str, *, first: bool) -> bool:
    """Whether a part is the day of a series, the site's own name or only talks of recipes."""
    if first and _DAY.fullmatch(part.strip()):
        return True
    letters = "".join(_WORD.findall(part.lower()))
    if host and len(letters) >= _LEAST_HOST and letters in host:
        return True
    if staples_named(part) or says_its_kind(part) or _names(part, said):
        return False
    if _SITE.search(part) and not first:
        return True
    return bool(_RECIPES.search(part)) and not _WHOSE.search(part)


def _without_page_number(title: str, recipe: Recipe) -> str:
    """Return a title without the number of its page, which copying glued to it: "142 Plum jam"."""
    found = _PAGE_OF_IT.fullmatch(title.strip())
    if found is None or not (says_kind_or_doubt(found["title"]) or found["title"].isupper()):
        return title
    what = f'"{found["page"]}" stood before the title, and is taken for the number of a page.'
    recipe.doubt("title", what, "If it is part of what it is called, write it there.")
    return found["title"]


def _names(part: str, said: str) -> int:
    """Return how surely words name the recipe: by its kind, by a food, by what is said again."""
    return 2 * says_kind_or_doubt(part) + _said_of_it(part, said)


def _said_of_it(part: str, said: str) -> int:
    """Return whether words name a food, and whether they are said again in the recipe."""
    named = [word.lower() for word in _WORD.findall(_RECIPES.sub("", part))]
    stems = [word[:_STEM] for word in named if len(word) >= _LEAST_STEM and word not in _NAMELESS]
    again = any(re.search(rf"(?<!\w){stem}", said) for stem in stems)
    return bool(staples_named(part)) + again


def _cut(text: str, pattern: re.Pattern[str]) -> tuple[str, str, str]:
    found = pattern.search(text)
    if found is None or not text[: found.start()].strip() or not text[found.end() :].strip():
        return text, "", ""
    return text[: found.start()].strip(), found[0], text[found.end() :].strip()


def _cut_last(text: str, pattern: re.Pattern[str]) -> tuple[str, str, str]:
    found = [*pattern.finditer(text)][-1:]
    if not found or not text[: found[0].start()].strip() or not text[found[0].end() :].strip():
        return text, "", ""
    [one] = found
    return text[: one.start()].strip(), one[0], text[one.end() :].strip()


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _host(origin: Origin, recipe: Recipe) -> str:
    """Return the letters of the address that a page was saved from: the site's own name."""
    address = origin.address or recipe.address
    return "".join(re.findall(r"[a-z]+", urlsplit(address).netloc.lower())) if address else ""
