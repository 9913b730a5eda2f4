"""The rules of staples/hazards.yml, judged against the facts of a recipe.

A condition is a mapping: every line must hold. A word that means nothing here stops the build,
so that a rule can never fall silent by a slip of the pen. Leaves out what is done with a rule that
holds: safety.py; and how a row is read: safety_table.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from stillroom.core.care.acid import is_weak_vinegar, soaked_in_acid, sours_fish, too_little_acid
from stillroom.core.care.curing import cures_over
from stillroom.core.care.damp import damp_lines
from stillroom.core.care.evidence import HOLDS, Evidence
from stillroom.core.care.keeping_limits import strictest_of, told_on_card
from stillroom.core.care.safety_facts import SafetyFacts, Thing, days_of
from stillroom.core.care.shares import sure_share
from stillroom.core.care.soda import SODA, soda_is_much
from stillroom.core.care.stood import days_stood
from stillroom.core.care.unsaid import keeping_is_unsaid
from stillroom.core.lines.staple_table import staples_tagged
from stillroom.core.words.patterns import clause_pattern, clause_regex

_PRESSURE = clause_regex(r"\bpressure[- ]can", re.IGNORECASE)
_GUIDE = clause_regex(
    r"\b(?:USDA|NCHFP|Complete Guide to Home Canning|So Easy to Preserve|AIB 539)\b", re.IGNORECASE
)
_MEASURED = clause_regex(r"\b(?:meter|laborator(?:y|ies)|lab)\b", re.IGNORECASE)
_GUESSED = clause_regex(
    r"\b(?:guess\w*|estimat\w*|no|not|without|probably|about|likely)\b", re.IGNORECASE
)

# wine and the like; a spirit of which nobody says how much may still be enough
_STRONG_ENOUGH = 25

Check = Callable[[SafetyFacts, Any, Mapping[str, Any]], Evidence | None]


def _found(things: tuple[Thing, ...]) -> Evidence | None:
    return Evidence(things) if things else None


def _yes(holds: bool) -> Evidence | None:
    return HOLDS if holds else None


def _tags(facts: SafetyFacts, tags: list[str], when: Mapping[str, Any]) -> Evidence | None:
    """Any thing with one of the tags; `not_item`, `only_item`, `grams_from` and so on narrow."""
    things = facts.tagged(tags)
    if "not_item" in when:
        pattern = re.compile(when["not_item"])
        things = tuple(thing for thing in things if not pattern.search(thing.words))
    if "only_item" in when:
        pattern = re.compile(when["only_item"])
        things = tuple(thing for thing in things if pattern.search(thing.words))
    if "not_tags_of_item" in when:
        barred = set(when["not_tags_of_item"])
        things = tuple(thing for thing in things if not barred & thing.tags)
    if when.get("raw"):
        things = tuple(thing for thing in things if thing.place not in facts.cooked)
    if when.get("stays"):
        things = tuple(thing for thing in things if thing.stays)
    if "grams_from" in when:
        known = sum((thing.grams or Fraction(0) for thing in things), Fraction(0))
        unknown = any(thing.grams is None for thing in things)
        if known < when["grams_from"] and not unknown:
            return None
    if "grams_known_from" in when:
        known = sum((thing.grams or Fraction(0) for thing in things), Fraction(0))
        if known < when["grams_known_from"]:
            return None
    return _found(things)


def _share(facts: SafetyFacts, asked: dict[str, Any], when: Mapping[str, Any]) -> Evidence | None:
    """Things with the tags make up at least so many percent; unknown weights count as enough."""
    if facts.is_sure and "sugar" in asked["tags"]:  # sugar keeps a thing when there is enough of it
        return _share_known(facts, asked, when)
    share = facts.share(asked["tags"])
    if share is None:  # "a knob of butter" is little, however much it is
        share = facts.share_at_most(asked["tags"])
    if share is not None and share < asked["from"]:
        return None
    things = facts.tagged(asked["tags"])
    # beside "tags" it is the medium, and those are what the rule is about
    return Evidence(also=things) if things and "tags" in when else _found(things)


def _share_known(
    facts: SafetyFacts, asked: dict[str, Any], _: Mapping[str, Any]
) -> Evidence | None:
    return _yes((sure_share(facts.things, asked["tags"]) or 0) >= asked["from"])


def _acid(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Too little acid, by proportion: see care/acid.py."""
    return _yes(too_little_acid(facts.things))


def _weak_vinegar(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Look for a vinegar under 5 %, or one that nobody has measured."""
    return _found(tuple(thing for thing in facts.things if is_weak_vinegar(thing)))


def _said_source(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Look for a pressure canner by a process that names its published guide."""
    text = " . ".join((*facts.clauses, facts.recipe.summary))
    return _yes(bool(_PRESSURE.search(text)) and bool(_GUIDE.search(text)))


def _acid_soak(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Look for soaking in a citric acid solution of 3 %, as published: a pinch is no soaking."""
    return _yes(soaked_in_acid(facts.things, facts.sentences))


def _ph_measured(facts: SafetyFacts, limit: float, _: Mapping[str, Any]) -> Evidence | None:
    """Count a pH only with how it was measured: by a meter or a laboratory."""
    acidity = facts.recipe.acidity
    if acidity is None or not _MEASURED.search(acidity.source) or _GUESSED.search(acidity.source):
        return None
    return _yes(acidity.ph <= Fraction(str(limit)))


def _spirit_from(facts: SafetyFacts, abv: int, when: Mapping[str, Any]) -> Evidence | None:
    top = when.get("spirit_below", 101)
    spirits = facts.spirits()
    if not spirits or spirits[0].abv is None or not abv <= spirits[0].abv < top:
        return None
    return Evidence(spirits[:1])


def _strength(facts: SafetyFacts, limit: float, below: bool) -> Evidence | None:
    if facts.strength is None:
        # not known is not strong: then the strongest that is poured must be far above
        strongest = max((thing.abv or 0 for thing in facts.tagged(["alcohol"])), default=0)
        return _yes(not below or strongest < _STRONG_ENOUGH)
    # it is known no finer than to one part in a hundred
    under = facts.strength < Fraction(str(limit)) - Fraction(1, 10)
    return _yes(under if below else not under)


def _clause(facts: SafetyFacts, pattern: str, _: Mapping[str, Any]) -> Evidence | None:
    asked = clause_pattern(pattern)
    for clause, english in facts.with_english:
        if asked.search(english):
            return Evidence(words=(clause,))
    return None


_SWEET = clause_regex(
    r"\b(?:sugar|syrup|honey|caramel|mixture|together|everything)\b", re.IGNORECASE
)


def _boils(facts: SafetyFacts, pattern: str, _: Mapping[str, Any]) -> Evidence | None:
    """Find a clause that boils the sugar.

    One that heats only other things by name does not, nor one before the sugar goes in.
    """
    sweet = {thing.place for thing in facts.tagged(["sugar", "honey", "syrup"])}
    asked = clause_pattern(pattern)
    for clause, english in facts.with_english:
        if asked.search(english) and (
            _SWEET.search(english) or _is_in_the_pan(facts, clause, sweet)
        ):
            return Evidence(words=(clause,))
    return None


def _is_in_the_pan(facts: SafetyFacts, clause: str, sweet: set[int]) -> bool:
    """Whether a clause may boil the sweet lines: not named apart, nor first named later."""
    apart = facts.boiled_apart
    if clause in apart and not sweet & apart[clause]:
        return False
    return not sweet or bool(sweet - facts.named_later.get(clause, frozenset()))


def _words(text: str, pattern: str) -> Evidence | None:
    found = clause_pattern(pattern).search(text)
    return Evidence(words=(found[0].strip(),)) if found else None


def _stage(facts: SafetyFacts, words: list[str], _: Mapping[str, Any]) -> Evidence | None:
    found = [word for stage in facts.recipe.stages for word in words if word in stage.word]
    return Evidence(words=tuple(found)) if found else None


def _own_stage(facts: SafetyFacts, words: list[str], _: Mapping[str, Any]) -> Evidence | None:
    """Find a stage that the recipe states: what its kind brings says nothing of the method."""
    found = [word for stage in facts.recipe.timeline for word in words if word in stage.word]
    return Evidence(words=tuple(found)) if found else None


def _ph(facts: SafetyFacts, limit: float, over: bool) -> Evidence | None:
    acidity = facts.recipe.acidity
    return _yes(acidity is not None and (acidity.ph > Fraction(str(limit))) == over)


def _days_from(facts: SafetyFacts, days: int, _: Mapping[str, Any]) -> Evidence | None:
    """Hold where it is said to keep so long, or where nobody says how long."""
    kept = days_of(facts.recipe.keeps.claim)
    return _yes(kept is None or kept >= days)


def _days_to(facts: SafetyFacts, days: int, _: Mapping[str, Any]) -> Evidence | None:
    keeps = facts.recipe.keeps
    kept = days_of(keeps.unopened) if keeps.by != "book" else None
    return _yes(kept is not None and kept <= days and days_stood(facts.recipe) < days)


def _keeps_denied(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Find the published limit that the recipe's own claim runs past."""
    limit = strictest_of(facts, facts.recipe.keeps.claim, judge)
    return Evidence(limit=limit) if limit else None


def _keeps_beyond(facts: SafetyFacts, _: bool, when: Mapping[str, Any]) -> Evidence | None:
    """Find the book's usual figure that the claim runs past, where nothing denies it plainly."""
    keeps = facts.recipe.keeps
    limit = told_on_card(facts, judge, keeps.claim, bool(keeps.reason))
    return None if limit is None or _keeps_denied(facts, True, when) else Evidence(limit=limit)


def _items(facts: SafetyFacts, pattern: str, _: Mapping[str, Any]) -> Evidence | None:
    """Find things by their words, or by the name of their food, in whatever language they stand."""
    asked = re.compile(pattern).search
    return _found(tuple(thing for thing, called in facts.called if any(map(asked, called))))


def _any(
    facts: SafetyFacts, conditions: list[dict[str, Any]], _: Mapping[str, Any]
) -> Evidence | None:
    held = [found for condition in conditions if (found := judge(condition, facts)) is not None]
    if not held:
        return None
    together = held[0]
    for other in held[1:]:
        together = together.plus(other)
    return together


def _none(
    facts: SafetyFacts, conditions: list[dict[str, Any]], _: Mapping[str, Any]
) -> Evidence | None:
    # sugar that nobody can weigh excuses nothing
    return _yes(all(judge(condition, facts.sure) is None for condition in conditions))


def _spirit_meets_heat(facts: SafetyFacts, how: Any, _: Mapping[str, Any]) -> Evidence | None:
    sentences = facts.spirit_and_heat(by_the_spoon=how == "by the spoon")
    return Evidence(words=sentences[:1]) if sentences else None


def _toxic(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Look for a plant in the method; kernels that count as a thing have a rule of their own."""
    kernels = staples_tagged("cyanide-kernel") if "cyanide-kernel" in facts.tags else ()
    told = {name for staple in kernels for name in (staple.name, *staple.also)}
    names = tuple(name for name in facts.toxic_in_method() if name not in told)
    return Evidence(words=names) if names else None


def _allergens(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    holding = tuple(t for t in facts.things if t.staple and t.staple.allergens)
    return Evidence(holding) if facts.allergens else None


def _also(facts: SafetyFacts, tags: list[str], _: Mapping[str, Any]) -> Evidence | None:
    things = facts.tagged(tags)
    return Evidence(also=things) if things else None


def _staple(facts: SafetyFacts, names: list[str], _: Mapping[str, Any]) -> Evidence | None:
    sought = set(names)
    return _found(
        tuple(t for t in facts.things if t.staple and sought & {t.staple.name, t.staple.kind_of})
    )


def _unknown(facts: SafetyFacts, _: bool, __: Mapping[str, Any]) -> Evidence | None:
    """Any line that no food explains; crafts' tools and materials are asked for by edible."""
    return _found(tuple(thing for thing in facts.things if thing.unknown))


def _said_for(facts: SafetyFacts, who: str, _: Mapping[str, Any]) -> Evidence | None:
    words = {"infants": facts.infants, "pets": facts.pets}.get(who, facts.young)
    return Evidence(words=(words,)) if words else None


def _words_of(clause: str, wanted: bool) -> Evidence | None:
    if not wanted:
        return _yes(not clause)
    return Evidence(words=(clause,)) if clause else None


def _told(facts: SafetyFacts, name: str, _: Mapping[str, Any]) -> Evidence | None:
    """Ask for a fact of care/told.py by its name."""
    words = facts.told(name)
    return Evidence(words=(words,)) if words else None


def _soda(facts: SafetyFacts, to_the_kilo: int, _: Mapping[str, Any]) -> Evidence | None:
    """Look for more baking soda than raises a dough: see care/soda.py."""
    soda = tuple(thing for thing in facts.things if thing.staple and thing.staple.name in SODA)
    much = soda_is_much(facts.things, facts.recipe.kind, to_the_kilo)
    return _found(soda) if much else None


def _damp(facts: SafetyFacts, wanted: bool, _: Mapping[str, Any]) -> Evidence | None:
    """Look for what is fresh and nobody dries: see care/damp.py. A stage of drying dries too."""
    english = [clause for _, clause in facts.with_english]
    dries = any("dry" in stage.word for stage in facts.recipe.timeline)
    found = () if dries else damp_lines(facts.things, english)
    return _found(found) if wanted else _yes(not found)


CHECKS: dict[str, Check] = {
    "cure_over": lambda facts, limit, _: _found(cures_over(limit, facts.recipe, facts.things)),
    "damp": _damp,
    "soda_from": _soda,
    "told": _told,
    "dried_by_method": lambda facts, wanted, _: _words_of(facts.dried, wanted),
    "hot_in_glass": lambda facts, wanted, _: _words_of(facts.hot_in_glass, wanted),
    "unknown": _unknown,
    "said_for": _said_for,
    "kind": lambda facts, names, _: _yes(facts.recipe.kind.name in names),
    "eaten_by": lambda facts, who, _: _yes(facts.recipe.kind.eaten_by in who),
    "edible": lambda facts, wanted, _: _yes(facts.recipe.kind.edible == wanted),
    "heated": lambda facts, wanted, _: _yes(facts.heated == wanted),
    "kept_at": lambda facts, places, _: _yes(facts.place in places),
    "keeps_days_to": _days_to,
    "keeps_unsaid": lambda facts, wanted, _: _yes(keeping_is_unsaid(facts.recipe) == wanted),
    "keeps_days_from": _days_from,
    "keeps_denied": _keeps_denied,
    "keeps_beyond": _keeps_beyond,
    "tags": _tags,
    "tags_also": _also,
    "staple": _staple,
    "item": _items,
    "share": _share,
    "share_known": _share_known,
    "too_little_acid": _acid,
    "weak_vinegar": _weak_vinegar,
    "sours_fish": lambda facts, wanted, _: _yes(sours_fish(facts.things) == wanted),
    "pressure_guide": _said_source,
    "acid_soak": _acid_soak,
    "ph_measured_to": _ph_measured,
    "spirit_from": _spirit_from,
    "spirit_meets_heat": _spirit_meets_heat,
    "strength_below": lambda facts, limit, _: _strength(facts, limit, below=True),
    "strength_not_under": lambda facts, limit, _: _strength(facts, limit, below=False),
    "strength_known_from": lambda facts, limit, _: _yes((facts.strength or 0) >= limit),
    "ph_over": lambda facts, limit, _: _ph(facts, limit, over=True),
    "clause": _clause,
    "sugar_boils": _boils,
    "said": lambda facts, pattern, _: _words(facts.said, pattern),
    "vessel": lambda facts, pattern, _: _words(facts.vessels, pattern),
    "stage": _stage,
    "own_stage": _own_stage,
    "toxic_in_method": _toxic,
    "allergens": _allergens,
    "any": _any,
    "none": _none,
}
# these narrow another line of the same condition and are read by it
NARROWING = {
    "not_item": "tags",
    "only_item": "tags",
    "not_tags_of_item": "tags",
    "stays": "tags",
    "raw": "tags",
    "grams_from": "tags",
    "grams_known_from": "tags",
    "spirit_below": "spirit_from",
}


def judge(when: Mapping[str, Any], facts: SafetyFacts) -> Evidence | None:
    """Return what made every line of a condition hold, or None when one does not."""
    if "tags" in when and facts.tags.isdisjoint(when["tags"]):
        return None  # of most rules no more need be asked
    together = HOLDS
    for word, value in when.items():
        if word in NARROWING:
            continue
        found = CHECKS[word](facts, value, when)
        if found is None:
            return None
        together = together.plus(found)
    return together
