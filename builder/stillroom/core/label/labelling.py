"""The label and the usage card of a recipe: contents, allergens, diets, dates, how to keep it.

Contents stand in descending weight at the time of use, compounds opened, the allergens emphasised:
Articles 18 to 21 of Regulation (EU) No 1169/2011, taken over as good practice for presents. Uses
allergens.py, keeping.py, date_marks.py and safety.py. Leaves out paper and pages.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from datetime import date

from stillroom.core.allergens.laws import List, Said, list_used, say_of_allergens
from stillroom.core.allergens.of_foods import (
    Known,
    answer_avoid,
    contains,
    know_recipe,
    law_of,
    may_contain,
    say_allergen,
)
from stillroom.core.batch.strength import not_told, strength_of
from stillroom.core.care.looked_at import with_alcohol
from stillroom.core.care.safety import SafetyBox, assess_safety, gather_recipe_facts
from stillroom.core.care.safety_facts import SafetyFacts
from stillroom.core.label.contents_list import ContentsEntry, list_contents
from stillroom.core.label.date_marks import DateMark, mark_date, say_date
from stillroom.core.label.keeping import Kept, decide_keeping
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.joining import join_and
from stillroom.core.words.patterns import late_regex

ASK = "not known: ask the maker"
# what the card says in a line of its own already
_ON_THE_CARD = frozenset({"allergens", "sulphites"})
STRENGTH_NOT_KNOWN = "Strength not known"
_KITCHEN = "Made in a home kitchen; traces of other foods cannot be ruled out."
__all__ = ["ContentsEntry", "DateMark", "Diet", "Label", "UsageCard", "label_recipe", "make_card"]


@dataclass(frozen=True)
class Diet:
    """Who can have it, in plain words; each is "yes", "no" or "not known: ask the maker"."""

    vegan: str
    vegetarian: str
    alcohol: str
    gluten: str

    @property
    def words(self) -> tuple[str, ...]:
        """What is worth saying, as short sentences."""
        said = []
        if self.vegan == "yes":
            said.append("Vegan.")
        elif self.vegetarian == "yes":
            said.append("Vegetarian.")
        if self.vegetarian == "no":
            said.append("Not vegetarian.")
        if self.alcohol == "contains":
            said.append("Contains alcohol; not halal.")
        return tuple(said)


@dataclass(frozen=True)
class Label:
    """Everything a label says. `unknown` names what no staple knows; then nothing is free from.

    `allergen_words` is the sentence that every paper and page sets in the place of allergens,
    `list_used` whose list of allergens it follows.
    """

    contents: tuple[ContentsEntry, ...]
    allergens: tuple[str, ...]
    may_contain: tuple[str, ...]
    free_from: tuple[str, ...]
    unknown: tuple[str, ...]
    diet: Diet
    date_mark: DateMark
    once_opened: str
    keep_how: str
    strength_text: str
    keeping: Kept
    kitchen: str = ""
    allergen_words: tuple[Said, ...] = ()
    list_used: str = ""
    packets: tuple[str, ...] = ()


@dataclass(frozen=True)
class UsageCard:
    """The words of one usage card."""

    title: str
    what: str
    contents: tuple[ContentsEntry, ...]
    allergens: tuple[str, ...]
    may_contain: tuple[str, ...]
    use: str
    keep: str
    made_on_text: str
    date_mark: DateMark
    once_opened: str
    strength_text: str
    cautions: tuple[str, ...]
    kitchen: str = ""
    unknown: tuple[str, ...] = ()
    packets: tuple[str, ...] = ()
    law: List = "eu"
    on_tag: tuple[str, ...] = ()
    to: str = ""
    sender: str = ""
    message: str = ""
    url: str = ""

    @property
    def allergen_words(self) -> tuple[Said, ...]:
        """The sentence that stands in the place of allergens."""
        return say_of_allergens(
            self.law, self.allergens, self.may_contain, self.unknown, self.packets
        )

    @property
    def tag_words(self) -> tuple[Said, ...]:
        """The same sentence for a tag, and behind it what must not be lost with the card."""
        said = self.allergen_words
        rest = "; ".join(self.on_tag)
        if not rest:
            return said
        return (*said, Said(f"; {rest}")) if said else (Said(rest[:1].upper() + rest[1:]),)


def label_recipe(recipe: Recipe, settings: BookSettings, made_on: date | None = None) -> Label:
    """Work out the label of a recipe made on a day, or of no day in particular.

    The country of the book chooses the list of allergens, its language the wording of dates.
    """
    return _label_of(recipe, settings, made_on)


@once_a_recipe  # a page, its card and every list ask for the same label
def _label_of(recipe: Recipe, settings: BookSettings, made_on: date | None) -> Label:
    law = law_of(settings.country)
    known = know_recipe(recipe)
    facts = gather_recipe_facts(recipe, settings)
    kept = decide_keeping(recipe, facts)
    # who feeds a treat has it in the hand, and an animal may be allergic too
    edible, eaten = recipe.kind.edible, recipe.kind.is_eaten
    held = tuple(say_allergen(a, law) for a in contains(known, law)) if eaten else ()
    traces = tuple(say_allergen(a, law) for a in may_contain(known, law)) if eaten else ()
    words = (word for one in known for word in one.unknown)
    unknown = tuple(dict.fromkeys(words)) if eaten else ()
    bought = (name for one in known for name in one.packets)
    packets = tuple(dict.fromkeys(bought)) if eaten else ()
    return Label(
        contents=list_contents(recipe, known, law),
        allergens=held,
        may_contain=traces,
        free_from=_free_from(recipe, known) if edible else (),
        unknown=unknown,
        diet=_diet(recipe),
        date_mark=mark_date(kept.term, kept.unopened, made_on, settings.language, kept.why),
        once_opened=_once_opened(recipe, kept),
        keep_how=_keep_how(recipe, kept, assess_safety(recipe, settings)),
        strength_text=_strength_text(recipe, facts),
        keeping=kept,
        kitchen=_KITCHEN if edible else "",
        allergen_words=say_of_allergens(law, held, traces, unknown, packets),
        packets=packets,
        list_used=list_used(law) if eaten else "",
    )


_COLD = late_regex(r"\b(?:fridge|refrigerat\w*|freez\w*|frozen)\b", re.IGNORECASE)
_KEPT_COLD = late_regex(
    r"\bkeep (?:it )?(?:in the fridge|cold|chilled|refrigerated)\b", re.IGNORECASE
)
FREE_FROM = ("gluten", "nuts", "milk", "eggs", "soya", "alcohol", "animal products")


def _free_from(recipe: Recipe, known: tuple[Known, ...]) -> tuple[str, ...]:
    """Claim only what is known of every ingredient; a trace on a packet forbids the claim."""
    if any(one.open for one in known):
        return ()
    free = []
    for word in FREE_FROM:
        answer = answer_avoid(recipe, word)
        peanut = answer_avoid(recipe, "peanuts") if word == "nuts" else "free"
        if answer == "free" and peanut == "free":
            free.append(word)
    return tuple(free)


def _diet(recipe: Recipe) -> Diet:
    words = {"free": "yes", "contains": "no", "may contain": ASK, "not known": ASK}
    alcohol = answer_avoid(recipe, "alcohol")
    gluten = answer_avoid(recipe, "gluten")
    return Diet(
        vegan=words[answer_avoid(recipe, "vegan")],
        vegetarian=words[answer_avoid(recipe, "vegetarian")],
        alcohol=ASK if alcohol == "not known" else alcohol,
        gluten=ASK if gluten == "not known" else gluten,
    )


def _once_opened(recipe: Recipe, kept: Kept) -> str:
    whole, left = kept.unopened, kept.opened
    if whole and left and not recipe.keeps.opened and left.minutes() >= whole.minutes():
        # four days by guidance are four in all: opened on the fourth it has not four more
        return "Once opened: by the same date"
    told = replace(recipe.keeps, opened=kept.opened).once_opened
    return f"{'Once opened' if recipe.kind.is_eaten else 'In use'}: {told}" if told else ""


def _keep_how(recipe: Recipe, kept: Kept, box: SafetyBox) -> str:
    """Return a published place first, then the maker's words, the method's place, the kind's.

    A danger that wants the fridge outweighs words of another place: two on one card say nothing.
    """
    how = _kept_where(recipe, kept)
    if kept_at(recipe) == "freezer":
        return _of_the_freezer(how, kept)
    told = (*box.refusals, *box.cautions)
    grave = [one.to_receiver for one in told if one.gravity in ("danger", "refuse")]
    colder = not _COLD.search(how) and any(_KEPT_COLD.search(text) for text in grave)
    return "In the fridge." if colder else how


def _of_the_freezer(how: str, kept: Kept) -> str:
    """Say that the date is for the freezer: once it thaws nobody has said how long it keeps."""
    how = how if _COLD.search(how) else "In the freezer."
    dated = "Its date is for the freezer. " if kept.unopened else ""
    thawed = "as once opened" if kept.opened else "how long it keeps is not known"
    return f"{how.rstrip('.')}. {dated}Thawed: {thawed}."


def _kept_where(recipe: Recipe, kept: Kept) -> str:
    if kept.where and kept.where != recipe.keeps.where:
        return kept.where[:1].upper() + kept.where[1:] + "."
    if recipe.card.keep:
        return recipe.card.keep
    if kept.where:
        return kept.where[:1].upper() + kept.where[1:] + "."
    # what the method puts in the fridge is no jar for "cool and dark"
    cold = {"fridge": "In the fridge.", "freezer": "In the freezer."}
    return cold.get(kept_at(recipe), recipe.kind.keep)


def _strength_text(recipe: Recipe, facts: SafetyFacts) -> str:
    """State the strength of a drink above 1.2 % vol: Art. 9(1)(k); never finer than it is known."""
    if recipe.kind.is_eaten and not_told(recipe):
        return STRENGTH_NOT_KNOWN
    found = strength_of(recipe)
    if found is None or not recipe.kind.is_("drink") or found.abv_percent <= 1.2:
        return ""
    if facts.boils_spirit():
        return f"At most {found.text.removeprefix('about ')}"
    return found.text[:1].upper() + found.text[1:]


def _a_little_alcohol(recipe: Recipe, settings: BookSettings, said: list[str]) -> list[str]:
    """Return the flavourings that bring alcohol, where no caution on the card speaks of any.

    It is too little to warn of, and yet no matter of amounts for whoever takes none.
    """
    facts = gather_recipe_facts(recipe, settings)
    told = any("alcohol" in text.lower() for text in said) or _strength_text(recipe, facts)
    if told or not recipe.kind.edible:
        return []
    held = with_alcohol(facts)
    names = join_and(list(dict.fromkeys(thing.item for thing in held)))
    return [f"Holds a little alcohol: {names}."] if held else []


def _net_text(recipe: Recipe) -> str:
    """Return the net quantity where the card is to bear it: Reg. (EU) 1169/2011 Art. 23."""
    return f"Net {recipe.card.net}" if recipe.card.net else ""


@once_a_recipe  # a page and the print room show the same card
def make_card(
    recipe: Recipe,
    settings: BookSettings,
    made_on: date | None = None,
    *,
    to: str = "",
    sender: str = "",
    message: str = "",
    url: str = "",
) -> UsageCard:
    """Make the usage card of a batch made on a day; names typed on it go nowhere else."""
    label = label_recipe(recipe, settings, made_on)
    box = assess_safety(recipe, settings)
    said = [c.to_receiver for c in (*box.refusals, *box.cautions) if c.rule not in _ON_THE_CARD]
    said += _a_little_alcohol(recipe, settings, said)
    made = f"Made on {say_date(made_on, settings.language)}" if made_on else ""
    return UsageCard(
        title=recipe.title,
        what=recipe.card.what or recipe.summary,
        contents=label.contents,
        allergens=label.allergens,
        may_contain=label.may_contain,
        use=recipe.card.use,
        keep=label.keep_how,
        made_on_text=made,
        date_mark=label.date_mark,
        once_opened=label.once_opened,
        strength_text=" · ".join(filter(None, (label.strength_text, _net_text(recipe)))),
        cautions=tuple(dict.fromkeys(text for text in said if text)),
        kitchen=label.kitchen,
        unknown=label.unknown,
        packets=label.packets,
        law=law_of(settings.country),
        on_tag=tuple(dict.fromkeys(one.on_tag for one in box.cautions if one.on_tag)),
        to=to,
        sender=sender,
        message=message,
        url=url,
    )
