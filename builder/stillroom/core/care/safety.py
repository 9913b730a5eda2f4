"""The safety box of a recipe: cautions, refusals, what was set aside, and whom it defers to.

The rules are data: staples/hazards.yml. Uses the altitude table, the allergens and the strength of
the finished drink. Leaves out how a box looks.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from stillroom.core.allergens.of_foods import (
    contains,
    know_recipe,
    law_of,
    say_allergen,
)
from stillroom.core.batch.altitude import (
    FEET_PER_METRE,
    sterilise_minutes,
)
from stillroom.core.batch.strength import shown_percent
from stillroom.core.care.acid import (
    counted_at_most,
    foods_beyond,
    published_process,
    said_percent,
    unweighed,
)
from stillroom.core.care.brine import say_salt
from stillroom.core.care.curing import say_cure
from stillroom.core.care.evidence import Evidence
from stillroom.core.care.finished_strength import finished_percent
from stillroom.core.care.jar_styles import is_strained, style_of
from stillroom.core.care.looked_at import Look, look_at
from stillroom.core.care.process_words import SWEET, say_jam_process, say_process
from stillroom.core.care.processes import Process
from stillroom.core.care.safety_facts import SafetyFacts, Thing, gather_facts
from stillroom.core.care.safety_rules import judge
from stillroom.core.care.safety_table import GRAVITIES, Gravity, Rule, all_rules, rules_for
from stillroom.core.care.sources import say_source
from stillroom.core.care.unchecked import could_not_check
from stillroom.core.method.keeping_said import PLACE_WORDS
from stillroom.core.recipe.asked_once import once_a_recipe
from stillroom.core.recipe.model import Override, Recipe
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.data_files import read_data
from stillroom.core.words.joining import join_and
from stillroom.core.words.nearest import did_you_mean
from stillroom.core.words.problems import Problem

NOT_SAFE = "It cannot be published as safe."
"""How a problem begins that keeps a recipe out of the book for what may harm."""
# beside these nobody is told how to keep it well, as if it could be
_NOT_TO_BE_KEPT = frozenset(
    {"low-acid-sealed", "low-acid-in-oil", "animal-food-sealed", "animal-food-fermented"}
    | {"oil-left-warm", "cake-in-jar", "sauce-for-shelf"}
    | {"egg-at-room", "ph-above-limit", "borderline-acid-bare", "alkali-in-food", "weak-vinegar"}
    | {"vegetables-in-honey", "honey-left-warm"}
)


# of every bark sold as cinchona the richest: 7 % by weight
_QUININE_MG_A_GRAM = 70

_SILENCE = (
    "Each line of the list is known to the book, and none of its rules has anything to say. That "
    "is no promise: a rule sees only what is written."
)


@dataclass(frozen=True)
class Caution:
    """One caution: its rule, how grave, what it says and to whom, why, and who says so."""

    rule: str
    gravity: Gravity
    title: str
    to_maker: str
    to_receiver: str
    because: str
    source: str
    checked: str
    read: str = ""
    on_tag: str = ""


@dataclass(frozen=True)
class SetAside:
    """A caution the maker set aside: the caution in full, and the reason in full."""

    caution: Caution
    why: str


@dataclass(frozen=True)
class SafetyBox:
    """Everything to be said of a recipe's safety, the gravest first."""

    cautions: tuple[Caution, ...]
    refusals: tuple[Caution, ...]
    overrides: tuple[SetAside, ...]
    own: tuple[str, ...]
    deference: str
    unchecked: tuple[str, ...] = ()
    looked: tuple[Look, ...] = ()

    @property
    def silence(self) -> str:
        """What is said where no rule speaks, nothing is set aside and all of the list is known.

        It promises nothing: a rule sees only what is written.
        """
        told = self.cautions or self.refusals or self.overrides or self.own or self.unchecked
        return "" if told else _SILENCE

    @property
    def to_receiver(self) -> tuple[str, ...]:
        """What the receiver must know, each once, the gravest first."""
        said = [caution.to_receiver for caution in (*self.refusals, *self.cautions)]
        return tuple(dict.fromkeys(text for text in said if text))


@once_a_recipe  # the check, the page, its card and the print room ask for the same box
def assess_safety(recipe: Recipe, settings: BookSettings) -> SafetyBox:
    """Judge every rule against a recipe.

    The country of the book chooses the authority deferred to and the list of allergens, its
    altitude the minutes. A rule set aside by the recipe stands among the overrides with its why,
    unless it is one that nothing sets aside.
    """
    facts = gather_recipe_facts(recipe, settings)
    why = {override.rule: override.why for override in recipe.overrides}
    cautions: list[Caution] = []
    refusals: list[Caution] = []
    aside: list[SetAside] = []
    for rule in rules_for(recipe.kind):
        evidence = judge(rule.when, facts)
        if evidence is None:
            continue
        caution = _word(rule, evidence, facts, settings)
        if rule.name in why and rule.may_be_overridden:
            aside.append(SetAside(caution, why[rule.name]))
        elif rule.gravity == "refuse":
            refusals.append(caution)
        else:
            cautions.append(caution)
    if any(caution.rule in _NOT_TO_BE_KEPT for caution in refusals):
        cautions = [one for one in cautions if not all_rules()[one.rule].silent_beside_refusal]
    cautions.sort(key=lambda caution: GRAVITIES.index(caution.gravity))
    spoken = (*refusals, *cautions, *(one.caution for one in aside))
    return SafetyBox(
        cautions=tuple(cautions),
        refusals=tuple(refusals),
        overrides=tuple(aside),
        own=recipe.cautions,
        deference=defer(recipe, settings),
        unchecked=could_not_check(recipe),
        looked=look_at(facts, {caution.rule: caution.title for caution in spoken}),
    )


@once_a_recipe
def gather_recipe_facts(recipe: Recipe, settings: BookSettings) -> SafetyFacts:
    """Return the facts of a recipe in a book, its finished strength among them."""
    law = law_of(settings.country)
    allergens = contains(know_recipe(recipe), law)
    said = tuple(say_allergen(allergen, law) for allergen in allergens)
    facts = gather_facts(recipe, finished_percent(recipe), said)
    # what boils off nobody can say: then its strength is not known, and not as reckoned
    return replace(facts, strength=None) if facts.boils_spirit() else facts


def _word(rule: Rule, evidence: Evidence, facts: SafetyFacts, settings: BookSettings) -> Caution:
    asked = rule.to_maker + rule.to_receiver + rule.because
    fills = _fills(evidence, facts, settings, asked)
    given_on = rule.receiver_when is None or judge(rule.receiver_when, facts) is not None
    return Caution(
        rule=rule.name,
        gravity=rule.gravity,
        title=rule.title,
        to_maker=rule.to_maker.format_map(fills),
        to_receiver=rule.to_receiver.format_map(fills) if given_on else "",
        because=rule.because.format_map(fills),
        source=say_source(rule.source, rule.read),
        checked="" if rule.read == "memory" else rule.checked,
        read=rule.read,
        on_tag=rule.on_tag,
    )


def _fills(
    evidence: Evidence, facts: SafetyFacts, settings: BookSettings, asked: str
) -> Mapping[str, str]:
    """Return what fills the blanks of a rule; what is slow to say, only where it is asked for."""
    strongest = max((thing.abv for thing in evidence.things if thing.abv), default=None)
    grams = sum((thing.grams or Fraction(0) for thing in evidence.things), Fraction(0))
    acidity = facts.recipe.acidity
    limit = evidence.limit
    slow: Mapping[str, Callable[[], str]] = {
        "vinegar": lambda: _say_vinegar(facts),
        "salt": lambda: say_salt(facts.things),
        "little_acid": lambda: _say_little_acid(facts),
        "cure": lambda: say_cure(facts.recipe, facts.things),
    }
    return {
        "items": join_and(_names(evidence.things)),
        "also": join_and(_names(evidence.also)),
        "words": join_and([f"“{word}”" for word in evidence.words]),
        # a ferment that brings no yeast: its own words stand where the yeast would
        "works": "" if evidence.things else join_and(evidence.words),
        "abv": _plain(strongest) if strongest else "unstated",
        "strength": _say_strength(facts),
        "keeps": facts.recipe.keeps.claim_words or "for a time that is not stated",
        "where": PLACE_WORDS[facts.place],
        "book_keeps": f"{limit.longest} {limit.where}".strip() if limit else "",
        "book_source": limit.source if limit else "",
        "ph": _plain(acidity.ph) if acidity else "not stated",
        "grams": str(round(grams)),
        "quinine_mg": str(round(grams * _QUININE_MG_A_GRAM)),
        "allergens": join_and(facts.allergens),
        "altitude": _say_altitude(settings),
        "sterilise_minutes": str(sterilise_minutes(settings.altitude_m)),
        **{blank: say() for blank, say in slow.items() if f"{{{blank}}}" in asked},
        **(_process_fills(facts, settings) if "process}" in asked else {}),
    }


def _say_strength(facts: SafetyFacts) -> str:
    """Return ", about 14 % vol" as the label shows it; "" where it is not known."""
    return f", about {shown_percent(float(facts.strength))} % vol" if facts.strength else ""


def _say_little_acid(facts: SafetyFacts) -> str:
    """Return that the acid is too little, or what must be weighed before that can be told."""
    missing = unweighed(facts.things)
    named = _names(tuple(thing for thing in facts.things if thing in missing))
    if not named:
        most = counted_at_most(facts.things)
        counted = _names(tuple(thing for thing in facts.things if thing in most))
        taken = f" ({join_and(counted)} counted, not weighed: taken at the heaviest)"
        return f"with too little acid{taken if counted else ''}"
    has = "has" if len(named) == 1 else "have"
    quoted = join_and([f'"{item}"' for item in named])
    return f"and whether the acid is enough cannot be told, since {quoted} {has} no weight"


def _say_vinegar(facts: SafetyFacts) -> str:
    """Return what is assumed of vinegars whose lines say no strength, "" when all say it."""
    unsaid = [one for one in facts.tagged(["vinegar"]) if not said_percent(one)]
    if not unsaid:
        return ""
    named = join_and(list(dict.fromkeys(thing.words.split(",")[0].strip() for thing in unsaid)))
    return (
        f" How strong the {named} is, the recipe does not say: it was reckoned as 5 % acid. "
        "Read the bottle; a weaker one is not for this."
    )


def _process_fills(facts: SafetyFacts, settings: BookSettings) -> dict[str, str]:
    """Return the words about a tested process: only few cautions ask for them."""
    words = (facts.recipe.title, facts.clauses)
    process = published_process(facts.things, *words)
    if process and _holds_more(process, facts):
        process = None
    untested = foods_beyond(process, facts.things) if process else ()
    said = say_process(process, settings.altitude_m)
    if untested:
        none = join_and([f"no {name}" for name in untested])
        said = f"{said} When it was tested, {none} was in it."
    return {
        "process": said,
        "jam_process": say_jam_process(
            facts.share(SWEET),
            style_of(*words),
            process,
            settings.altitude_m,
            _sugar_to_strained(facts),
        ),
    }


def _sugar_to_strained(facts: SafetyFacts) -> Fraction | None:
    """Return the sugar to each g of fruit that drips through a bag; None where it is not known."""
    fruit = facts.grams(["fruit"])
    sugar = facts.grams(SWEET)
    if not fruit or sugar is None or not is_strained(facts.clauses):
        return None
    return sugar / fruit


def _holds_more(process: Process, facts: SafetyFacts) -> bool:
    """Whether something is in it that the process was not tested with: no time is promised then."""
    dried = any("dried-fruit" in thing.tags for thing in facts.things)
    return any(thing.unknown for thing in facts.things) or (dried and "chutney" not in process.name)


def _say_altitude(settings: BookSettings) -> str:
    """Return the book's altitude in the book's own units."""
    if settings.units == "us":
        return f"{round(settings.altitude_m * FEET_PER_METRE):,} ft"
    return f"{settings.altitude_m} m"


def _names(things: tuple[Thing, ...]) -> list[str]:
    return list(dict.fromkeys(thing.item for thing in things))


def _plain(value: Fraction) -> str:
    return f"{float(value):.1f}".removesuffix(".0")


def defer(recipe: Recipe, settings: BookSettings) -> str:
    """Return the last words of a box: whose guidance goes before this page's, and of selling."""
    table = read_data("authorities.yml")
    row = table["countries"].get(settings.country, table["elsewhere"])
    text = {"people": "food", "pets": "pets", "nobody": "craft"}[recipe.kind.eaten_by]
    whose = "craft" if text == "craft" else "food"
    return str(table[text]).format(authority=row[whose], selling=row["selling"])


def check_safety(recipe: Recipe, settings: BookSettings) -> tuple[Problem, ...]:
    """Return what stops a recipe from being published: refusals, and overrides that are none."""
    box = assess_safety(recipe, settings)
    problems = [
        Problem(
            recipe.file,
            _line_of(caution.because, recipe),
            f"{NOT_SAFE} {caution.title}: {caution.because} "
            f"(rule {caution.rule}; {caution.source}).",
            _mend(all_rules()[caution.rule], caution),
        )
        for caution in box.refusals
    ]
    for place, override in enumerate(recipe.overrides):
        problems.extend(_faulty_override(recipe, place, override))
    return tuple(problems)


def _line_of(because: str, recipe: Recipe) -> int:
    """Return the line of the ingredient that a refusal names first, or of their list."""
    named = [
        (because.find(ingredient.item), -len(ingredient.item), place)
        for place, ingredient in enumerate(recipe.ingredients)
        if ingredient.item in because
    ]
    return recipe.line_of("ingredients", *([min(named)[2]] if named else []))


def _mend(rule: Rule, caution: Caution) -> str:
    if not rule.may_be_overridden:
        return f"{caution.to_maker} Nothing sets this rule aside."
    return (
        f'{caution.to_maker} Or set it aside under "overrides:" with "rule: {rule.name}" and why.'
    )


def _faulty_override(recipe: Recipe, place: int, override: Override) -> list[Problem]:
    line = recipe.line_of("overrides", place)
    rules = all_rules()
    if override.rule not in rules:
        what = f'"{override.rule}" is not a safety rule.'
        return [Problem(recipe.file, line, what, did_you_mean(override.rule, rules))]
    if not rules[override.rule].may_be_overridden:
        what = f'The safety rule "{override.rule}" cannot be set aside.'
        return [Problem(recipe.file, line, what, 'Take it out from under "overrides:".')]
    return []
