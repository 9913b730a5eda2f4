"""What a thing is in a cook's word: over a card's title, and for whoever opens a parcel.

The word that its recipe gives as its kind ("jam"), else one that its title ends with ("cordial"
of "Blackcurrant cordial"), else the bare kind. Leaves out what a page calls its kind.
"""

from __future__ import annotations

from stillroom.core.recipe.kinds import word_of_kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import late_regex

# words of a table of kinds, and no word by which a cook calls what she made
_BARE = frozenset({"infusion", "preserve", "ferment", "bake", "confection", "craft"})
_LONGEST = 3  # words of a name
# what it is in, for or from is not what it is: "pears in brandy syrup"
_BEHIND = late_regex(
    r"\s+(?:in|with|for|from|of|on|to|by|at|de|del|della|di|da|du|des|au|aux|à|en|con|avec|pour|für"
    r"|mit|nach|im|aus|von|vom|met|van|voor|med|från)\s.*|\s*[,(:;–—].*"
)
_SHAPES = frozenset(
    {"rings", "slices", "chips", "crisps", "bites", "pieces", "rounds", "stars", "hearts", "shapes"}
)


def spoken_of(recipe: Recipe) -> str:
    """Return what a thing is, as a cook says it.

    The title's word is taken where the recipe names a kind of the table and no more. One that is
    all of the title says nothing over it; "vinegar" of "raspberry vinegar" does.
    """
    kind = recipe.kind
    if kind.called == recipe.title.strip().lower():  # "Limoncello" over "Limoncello"
        return kind.name
    if kind.called or kind.name not in _BARE:
        return kind.spoken
    return _in_title(recipe.title) or kind.spoken


def _in_title(title: str) -> str:
    """Return the longest word for a kind with which a title ends; "" where there is none.

    >>> _in_title("Blackcurrant cordial"), _in_title("Raspberry vinegar")
    ('cordial', 'vinegar')
    >>> _in_title("Pears in brandy syrup"), _in_title("Quince cheese"), _in_title("Ginger beer")
    ('', '', '')
    """
    words = _BEHIND.sub("", f"{title.lower()} ").replace("’", "'").split()
    whole = len(title.split()) == len(words)
    if len(words) > 1 and words[-1] in _SHAPES and not word_of_kind(" ".join(words[-2:])):
        words.pop()
        whole = False
    of_all = word_of_kind(" ".join(words)) if whole else ""
    for count in range(min(_LONGEST, len(words)), 0, -1):
        said = " ".join(words[-count:])
        found = word_of_kind(said)
        if not found or (whole and count == len(words)):
            continue
        if of_all and (of_all, found) != ("either", "either"):
            continue  # "cheese" of "quince cheese" and "beer" of ginger beer are other things
        return said
    return ""
