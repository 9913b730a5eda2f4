"""The second check of a gift: what its printed label and its safety box say against a household.

It reads the words of the list of contents, the sentence of allergens and the cautions, by
label_words.yml and receivers.yml, and asks neither the foods of the larder nor rules.py. Where it
finds what the first check did not, or the other way round, the gift is withheld and it is told.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.of_foods import answer_avoided
from stillroom.core.allergens.sentences import avoided_by_name, read_avoided
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.giving.answers import WORSE, Answer, is_taken_in
from stillroom.giving.label_words import label_words, words_showing
from stillroom.giving.model import Household
from stillroom.giving.receivers import Receiver, receivers_of

# what shows that somebody's diet is not kept, by the words of label_words.yml
_DIET_SHOWN: dict[str, tuple[str, ...]] = {
    "alcohol": ("alcohol",),
    "no meat": ("meat", "gelatine"),
    "source known": ("meat", "gelatine", "insect", "rennet"),
    "vegetarian": ("meat", "gelatine", "insect", "rennet", "fish", "crustaceans", "molluscs"),
    "vegan": (
        *("meat", "gelatine", "insect", "rennet", "fish", "crustaceans", "molluscs"),
        *("milk", "eggs", "honey", "beeswax", "wool"),
    ),
}


@dataclass(frozen=True)
class Printed:
    """The words of a present's label, and its cautions with the rule of each ("" the maker's)."""

    recipe: Recipe
    words: tuple[str, ...]
    cautions: tuple[tuple[str, str], ...]

    def answer(self, avoid: Avoided) -> Answer:
        """Say whether the label is free of something avoided."""
        answers: list[Answer] = [self.answer(one) for one in avoid.of]
        by_label = answer_avoided(self.recipe, replace(avoid, of=()))
        # an ornament is no food: of what it is made of, only what is known counts
        answers.append(by_label if by_label != "not known" or is_taken_in(self.recipe) else "free")
        if self.shown(avoid):
            answers.append("contains")
        if any(rule in avoid.cautions for rule, _ in self.cautions):
            answers.append("contains")
        return max(answers, key=WORSE.index)

    def shown(self, avoid: Avoided) -> str:
        """Return the words of the label that show something avoided, "" when none do."""
        rows = {*avoid.allergens, *_DIET_SHOWN.get(avoid.diet, ()), avoid.meant}
        # butter holds next to no lactose, and gluten-free oats no wheat: its label says only "milk"
        if avoid.but or avoid.little:
            return ""
        found = (
            words_showing(need, words)
            for need in sorted(rows & set(label_words()))
            for words in self.words
        )
        return next((words for words in found if words), "")

    def against(self, household: Household) -> Iterator[tuple[str, Receiver]]:
        """Yield each caution that speaks to somebody in a household, and to whom."""
        for rule, caution in self.cautions:
            for receiver in receivers_of(caution, rule):
                if receiver.lives_with(household):
                    yield caution, receiver


@lru_cache(maxsize=4096)
def print_label(recipe: Recipe, settings: BookSettings) -> Printed:
    """Return what is printed of a recipe in a book."""
    label = label_recipe(recipe, settings)
    box = assess_safety(recipe, settings)
    spoken = (*box.refusals, *box.cautions, *(aside.caution for aside in box.overrides))
    written = (" ".join((one.item, *one.parts)) for one in recipe.ingredients)
    said = tuple((one.rule, one.to_receiver) for one in spoken if one.to_receiver)
    own = tuple(("", caution) for caution in box.own)
    words = (*(entry.whole for entry in label.contents), *written)
    return Printed(recipe, tuple(dict.fromkeys(words)), said + own)


def needs_of_household(household: Household) -> tuple[Avoided, ...]:
    """Return everything a household says that it must not have."""
    named = tuple(read_avoided(word) or avoided_by_name(word) for word in household.avoid)
    return named + tuple(avoided_by_name(word) for word in household.avoid_ingredients)
