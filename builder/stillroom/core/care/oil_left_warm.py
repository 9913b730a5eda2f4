"""Whether what is fresh stands in oil, in honey or at all out of the fridge, by its own words.

What is said of keeping tells only where it goes in the end: three weeks on a windowsill come before
four days in the fridge. Leaves out what is fresh and how much oil or honey there is: the rules.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from stillroom.core.method.last_words import FREEZER, FRIDGE
from stillroom.core.method.sentences import affirmed_clauses
from stillroom.core.recipe.method_times import SHORTEST_MINUTES, sentences_of, times_in_method
from stillroom.core.recipe.model import MethodStep, Recipe
from stillroom.core.recipe.times_not_read import times_not_read
from stillroom.core.recipe.waits_elsewhere import waits_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, parse_span, tidy
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.problems import Unreadable

_OIL = clause_regex(r"\b(?:oils?|öl|huile|aceite|olio|olie|olja)\b|öl\b", re.IGNORECASE)
_HONEY = clause_regex(r"\b(?:honey|\w*honig|miel|miele|honing|honung)\b", re.IGNORECASE)
_ANYTHING = clause_regex(r"\w")
_SUN = (
    r"window(?:[- ]?sill)?s?|sunny|sun(?:shine|light)?|warm (?:place|spot|room)|airing cupboard"
    r"|fensterb(?:ank|rett)|sonne|sonnig\w*|soleil|rebord|davanzale|al sole|al sol|alf[eé]izar"
    r"|vensterbank|zon"
)
_IN_THE_SUN = clause_regex(rf"\b(?:{_SUN})\b", re.IGNORECASE)
_WARM = clause_regex(
    rf"\b(?:{_SUN}|room[- ]temperature|counter(?:top)?|worktop|cupboard|pantry|larder|shel(?:f|ves)"
    r"|cellar|(?:dark|cool) (?:\w+ )?(?:place|spot)|zimmertemperatur|raumtemperatur"
    r"|température ambiante|temperatura ambiente|kamertemperatuur|rumstemperatur)\b",
    re.IGNORECASE,
)
_COLD = clause_regex(
    rf"{FRIDGE.pattern}|{FREEZER.pattern}|\bkühlschrank|\bfrigo|\bréfrigérateur|\bnevera"
    r"|\bkoelkast|\bkylskåp|\b(?:chill|refrigerate|freeze)\b",
    re.IGNORECASE,
)
# what is no longer in the oil, and what is done before it goes in
_TAKEN_OUT = clause_regex(
    r"\b(?:strain|sieve|filter|fish out|lift out|take out|remove|discard|abseihen|filtrer|filtrare"
    r"|colar|zeven)\w*\b",
    re.IGNORECASE,
)
_IS_SERVED = clause_regex(
    r"\b(?:drizzl\w*|serve|dip|pizza|salads?|bread|the oil (?:will|is|has|keeps|takes|should))\b",
    re.IGNORECASE,
)
_DRIES = clause_regex(r"\b(?:dry|dried|drying|dehydrat\w*|wilt\w*)\b", re.IGNORECASE)
_UNTIL = clause_regex(r"\b(?:until|till|'?til|for (?:days|weeks|months|ages))\b", re.IGNORECASE)
_SHORT = clause_regex(r"\b(?:minutes?|mins?|hours?|hrs?)\b", re.IGNORECASE)
_SPAN = late_regex(rf"\b(?:{SPAN_PATTERN}|overnight)\b", re.IGNORECASE)
_COLD_STAGES = clause_regex(r"\b(?:chill|freeze|refrigerate)\w*\b", re.IGNORECASE)


def stands_warm_in_oil(recipe: Recipe) -> str:
    """Return the words by which it stands in oil for a night or longer out of the cold; else ""."""
    return next(_by_timeline(recipe), "") or next(_by_method(recipe, _OIL), "")


def stands_warm_in_honey(recipe: Recipe) -> str:
    """Return the words by which it stands in honey so; "" where none do."""
    return next(_by_timeline(recipe), "") or next(_by_method(recipe, _HONEY), "")


def stands_warm(recipe: Recipe) -> str:
    """Return the words by which all that is made stands out of the cold so long; "" where none."""
    return next(_by_timeline(recipe), "") or next(_by_method(recipe, _ANYTHING), "")


def _by_timeline(recipe: Recipe) -> Iterator[str]:
    for stage in recipe.timeline:
        if stage.role in ("strain", "bottle", "give"):
            return
        long = stage.lasts is not None and stage.lasts.minutes() >= SHORTEST_MINUTES
        said = f"{stage.word}: {stage.text}"
        waits = stage.role in ("rest", "tend") and (long or stage.is_window)
        if waits and not (_COLD.search(said) or _COLD_STAGES.search(said) or _DRIES.search(said)):
            yield said


def _by_method(recipe: Recipe, covers: re.Pattern[str]) -> Iterator[str]:
    """Yield the sentences of waits in what covers it; a place that is not told is the kitchen."""
    # "{olive oil}" is oil
    plain = str.maketrans("", "", "{}")
    steps = tuple(replace(one, text=one.text.translate(plain)) for one in recipe.method)
    told = sentences_of(steps)
    oil_at = next((at for at, (one, _, _) in enumerate(told) if _goes_in(one, covers)), -1)
    cold = False
    for at, (written, _, _) in enumerate(told):
        sentence = ", ".join(affirmed_clauses(written))
        spans = [found for found in _SPAN.finditer(tidy(sentence)) if _is_long(found[0])]
        first = spans[0].start() if spans else len(sentence)
        cold = _is_cold(sentence, first, cold)
        named = bool(_WARM.search(sentence)) and not cold
        there = named and bool(spans or any(waits_elsewhere(written)))
        till = bool(_IN_THE_SUN.search(sentence) and _UNTIL.search(sentence)) and not _SHORT.search(
            sentence
        )
        if _is_in(sentence, at, oil_at, first, covers) and (
            there or till or (not cold and _is_waited(steps, at, written))
        ):
            yield written.rstrip(".;")
        taken = _TAKEN_OUT.search(sentence)
        if taken and at >= oil_at:
            return


def _is_waited(steps: tuple[MethodStep, ...], at: int, written: str) -> bool:
    """Whether a sentence, the one at a place of the method's, is of a wait out of the cold."""
    waits = {one.place: one.word for one in times_in_method(steps)}
    if at in waits and waits[at] not in ("chill", "freeze"):
        return True
    return written.rstrip(".;") in {words for _, words in times_not_read(steps)}


def _is_long(words: str) -> bool:
    if words.lower() == "overnight":
        return True
    try:
        return parse_span(words).minutes() >= SHORTEST_MINUTES
    except Unreadable:
        return False


def _is_cold(sentence: str, at: int, before: bool) -> bool:
    """Whether what waits there waits in the cold: by the place named nearest to how long."""
    places = [
        (abs(found.start() - at), is_cold)
        for pattern, is_cold in ((_COLD, True), (_WARM, False))
        for found in pattern.finditer(sentence)
    ]
    return min(places)[1] if places else before


def _goes_in(sentence: str, covers: re.Pattern[str]) -> bool:
    """Whether a sentence names the oil, and not what is done with it when it is given."""
    return bool(covers.search(sentence)) and not _IS_SERVED.search(sentence)


def _is_in(sentence: str, at: int, oil_at: int, waits_at: int, covers: re.Pattern[str]) -> bool:
    """Whether the oil is in when it waits, and the wait is no drying before."""
    oil = covers.search(sentence)
    taken = _TAKEN_OUT.search(sentence)
    if _DRIES.search(sentence) or (taken and taken.start() < waits_at):
        return False
    if oil is None or at != oil_at:
        return at > oil_at
    return oil.start() < waits_at
