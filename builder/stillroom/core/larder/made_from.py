"""What a food is made from: "gelatine from fish", "lecithin (from egg)", "made with cashews".

Leaves out where it is from ("honey from a local beekeeper") and parts of it ("juice from limes").
"""

from __future__ import annotations

from collections.abc import Sequence

from stillroom.core.larder.matching import hint, match_name
from stillroom.core.larder.phrases import Words, forms, phrase_words
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import ANIMAL_BUT_VEGETARIAN, NOT_ANIMAL, Staple
from stillroom.core.larder.two_foods import avoided_in


def source_in(words: Words) -> Words:
    """Return what words say that the food before them is made from, none where they say no such.

    >>> from stillroom.core.larder.phrases import cut_phrase
    >>> [" ".join(forms(source_in(cut_phrase(said).head)))
    ...  for said in ("from fish", "made with hazelnuts", "from 2 limes", "made at home")]
    ['fish', 'hazelnut', 'lime', '']
    """
    said = forms(words)
    if said[0] == "from":
        return words[1:]
    if said[0] not in phrase_words("made_so") or len(words) < 3:
        return ()
    return words[2:] if said[1] in phrase_words("made_by") | phrase_words("made_beside") else ()


def is_beside(words: Words) -> bool:
    """Whether a source is no more than something else that is in it: "made with buttermilk"."""
    return words[0].form in phrase_words("made_so") and words[1].form in phrase_words("made_beside")


def made_from(
    head: Words, source: Words, beside: Sequence[Staple], larder: Larder
) -> tuple[Staple | None, tuple[Staple, ...]]:
    """Return the food that a source makes of what stands before it, and what the source brings.

    "Gelatine from fish" is fish gelatine; for "syrup (from wheat)" there is no such name, and only
    the wheat is told. Both are empty where the source brings nothing that somebody may not have:
    "butter from grass-fed cows".
    """
    named = match_name(source, larder).food
    foods = (named,) if named else tuple(food for one in hint(source, larder) for food in one)
    held = {name for food in beside for name in avoided_in(food)}
    # hens, cows and bees are no news of an egg, of milk and honey
    of_an_animal = any(set(food.animal) & ANIMAL_BUT_VEGETARIAN for food in beside)
    brought = tuple(food for food in foods if not _told(food, of_an_animal) <= held)
    if not brought:
        return None, ()
    turned = match_name((*source, *head), larder)
    made = turned.food if turned.start == 0 else None
    # "flavouring from hazelnuts" holds them, whatever hazelnut flavouring is
    whole = made and all(_told(food, of_an_animal) <= avoided_in(made) for food in brought)
    return (made if whole else None), brought


def _told(food: Staple, of_an_animal: bool) -> set[str]:
    meats = set(food.animal) - NOT_ANIMAL if of_an_animal and not food.allergens else set[str]()
    return avoided_in(food) - meats
