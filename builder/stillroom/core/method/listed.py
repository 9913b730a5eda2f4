"""The words and foods of a recipe's list: what its method calls by them is no further food.

Leaves out what is made of them: of_the_list.py.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import words_of
from stillroom.core.lines.ingredient import Ingredient
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.words import method_words

# of these none stands for another of its tags
_EACH_ITS_OWN = frozenset(
    {"fruit", "citrus", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "dried-fruit"}
    | {"stone-fruit", "vegetable", "low-acid-vegetable", "dried-vegetable", "nut", "seed"}
)
_SHORTEST: Final = 4
"""Letters of a word of the list that may stand in a method with another ending."""
_LONGEST_ENDING: Final = 3
_COMPOUND: Final = 5
_STEM: Final = 5
# "tomat" of the method, "tomater" in the list: endings of several in the North and in German
_SEVERAL: Final = ("ar", "er", "or", "en", "et", "n", "erne", "erna", "arna", "ene")


@dataclass(frozen=True)
class Listed:
    """The words and foods of the list: what the method calls by them is no further food."""

    lines: tuple[frozenset[str], ...]
    foods: tuple[Staple, ...]

    @classmethod
    def of(cls, ingredients: Iterable[Ingredient]) -> Listed:
        """Gather the words and the foods of ingredients."""
        lines, foods = [], list[Staple]()
        for one in ingredients:
            named = food_of(one).named
            noun = getattr(one.amount, "noun", "")
            text = " ".join((one.item, one.note, noun, *one.parts, *(food.name for food in named)))
            lines.append(frozenset(word.form for word in words_of(text)))
            foods += named
        return cls(tuple(lines), tuple(foods))

    def holds(self, forms: tuple[str, ...], food: Staple | None) -> bool:
        """Whether words are those of one line, or its food's, or the end of a word of it."""
        if food and any(_is_the_same(food, own) for own in self.foods):
            return True
        if not forms:  # "1 cup - the best": no food is named
            return False
        # "the whipped cream" of 300 ml whipping cream
        done = tuple(form for form in forms[:-1] if form not in method_words("made_so"))
        spoken = frozenset((*done, forms[-1]))
        if any(spoken <= line for line in self.lines):
            return True
        own = forms[-1]
        words = [word for line in self.lines for word in line] if len(forms) == 1 else []
        if any(is_word_of(own, word, food) for word in words):
            return True
        # "tofuternene" of the tofu: what it brings is told already
        told = {one for listed in self.foods for one in listed.allergens}
        return bool(food and food.allergens) and any(
            len(own) - len(word) >= _COMPOUND and len(word) >= _SHORTEST and own.startswith(word)
            for word in words
            if food and set(food.allergens) <= told
        )

    def tells_all_of(self, food: Staple) -> bool:
        """Whether a listed food already brings all that a mentioned one would: yolks, of eggs.

        A fruit or a vegetable is never another one: grapes are no apple to a dog.
        """
        if food.tags & _EACH_ITS_OWN or ("dairy" in food.tags and food.name != "cheese"):
            return False
        may = set(food.may_contain)
        return any(
            food.tags - {"flavouring"} <= own.tags
            and set(food.allergens) <= set(own.allergens)
            and may <= {*own.allergens, *own.may_contain}
            for own in self.foods
        )


def is_word_of(own: str, word: str, food: Staple | None) -> bool:
    """Whether a word of a method is the end of a listed one, or the same with another ending.

    "Kylling" is of "kyllingelår", too: of meat and fish a cut is named behind it.

    >>> is_word_of("sahne", "schlagsahne", None), is_word_of("tofuen", "tofu", None)
    (True, True)
    >>> is_word_of("śmietankę", "śmietanki", None), is_word_of("cream", "creamy", None)
    (True, False)
    """
    if len(own) > 2 and word.endswith(own):
        return True
    if len(word) >= _SHORTEST and own.startswith(word) and len(own) - len(word) <= _LONGEST_ENDING:
        return True
    bare = [own.removesuffix(end) for end in _SEVERAL if own.endswith(end)]
    if any(len(one) >= _SHORTEST and word.endswith(one) for one in bare):  # "färsen" of "köttfärs"
        return True
    ended = word.removeprefix(own) in _SEVERAL and word.startswith(own)
    if len(own) >= _SHORTEST and ended:
        return True
    # "śmietankę" of "śmietanki": each has an ending of its own, so that "cream" is none of "creamy"
    shorter = min(len(own), len(word))
    stem = next((at for at in range(shorter) if own[at] != word[at]), shorter)
    longest = max(len(own), len(word)) - stem
    if stem >= _STEM and stem < shorter and longest <= _LONGEST_ENDING:
        return True
    cut = food is not None and bool(food.tags & {"meat", "fish"})
    return cut and len(own) >= _SHORTEST and word.startswith(own)


def _is_the_same(food: Staple, own: Staple) -> bool:
    """Whether a food is a listed one, or "the chicken" is of its chicken thighs.

    "The red onion" is of its onions: it brings nothing that those would not.
    """
    if own.kind_of == food.name or food.name == own.name:
        return True
    more = set(food.allergens) - set(own.allergens) or food.tags - own.tags
    return food.kind_of == own.name and not more
