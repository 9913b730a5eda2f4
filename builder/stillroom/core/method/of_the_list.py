"""What a method calls by a new name and is nothing new: what is made of the list, the thing itself.

"Add the sugar syrup" is of the sugar and the water above it, "until the pâté is smooth" is what is
being made. Leaves out what stands on the list by its own name: reading.py.
"""

from __future__ import annotations

from functools import cache

from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import words_of
from stillroom.core.method.reading import Listed
from stillroom.core.method.words import method_words

# what a cook makes of a food before it goes in
_MADE_OF_IT = frozenset(
    {"juice", "zest", "peel", "rind", "puree", "purée", "pulp", "seeds", "infusion"}
)
# the seeds scraped out of the pod that is listed, spirit called what it is
_ITS_OTHER_NAMES = {"vanilla": "vanilla pod"}


def made_of_the_list(food: Staple, listed: Listed) -> bool:
    """Whether a named food is made of a listed one: its juice, the syrup of its sugar."""
    own = {name for one in listed.foods for name in (one.name, one.kind_of) if name}
    tags = {tag for one in listed.foods for tag in one.tags}
    if food.name == "high-proof spirit":  # "l'alcool", "el alcohol": what is on the list
        return "alcohol" in tags
    if food.name == "sugar syrup":
        return "sugar" in tags
    if _ITS_OTHER_NAMES.get(food.name) in own:
        return True
    if food.name == "herbs" and "herb" in tags:
        return True  # "die Kräuter hacken": the rosemary and thyme of the list
    if food.name == "vanilla" and any(name.startswith("vanilla ") for name in own):
        return True  # "in Vanille-Puderzucker wälzen": the vanilla sugar of the list
    whole, _, part = food.name.rpartition(" ")
    roots = own | {name.rpartition(" ")[2] for name in own}
    return part in _MADE_OF_IT and bool(whole) and whole in roots


def is_the_thing_made(forms: tuple[str, ...], before: str, title: str) -> bool:
    """Whether words name what the recipe makes, by the end of its title: "the eggnog".

    >>> is_the_thing_made(("eggnog",), "Pour ", "Nellie's Favourite Eggnog")
    True
    >>> is_the_thing_made(("pesto",), "Stir in ", "Courgette pesto")
    False
    """
    said = " ".join(forms)
    if said not in _dishes():
        return False
    named = tuple(word.form for word in words_of(title.partition("(")[0]))
    behind = before.lower().rstrip().removesuffix(" the").rstrip()
    put_in = any(behind.endswith(word) for word in method_words("stirred_in"))
    return named[-len(forms) :] == forms and not put_in


@cache
def _dishes() -> frozenset[str]:
    return frozenset(
        " ".join(word.form for word in words_of(name)) for name in method_words("dishes")
    )
