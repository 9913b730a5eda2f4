"""What a method says of waiting that gives no length to count: "leave til xmas", "some weeks".

A page must not say that such a recipe states no dates: it says what was seen and not read. Leaves
out what is read: method_times.py.
"""

from __future__ import annotations

import re
from difflib import get_close_matches
from functools import lru_cache
from typing import Final

from stillroom.core.recipe.method_times import sentences_of, times_in_method
from stillroom.core.recipe.model import MethodStep
from stillroom.core.recipe.rhythms import so_often_then
from stillroom.core.recipe.wait_words import EVERY, IF, KEEPS, STORED, VERB
from stillroom.core.recipe.waits_elsewhere import uncounted_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, tidy
from stillroom.core.words.patterns import late_regex

_MONTHS: Final = (
    "january|february|march|april|may|june|july|august|september|october|november|december"
)
_FEASTS: Final = (
    r"xmas|christmas|yule|advent|easter|lent|michaelmas|hallowe['’]?en|new year|bonfire night|"
    r"spring|summer|autumn|winter|the harvest|mother['’]?s day"
)
# a day that no recipe can count to, or a length without its number
_UNCOUNTED: Final = late_regex(
    rf"\b(?:until|till|'?til|by|before) (?:about |around |next |the |early |late |mid[- ])*"
    rf"(?:{_MONTHS}|{_FEASTS})\b"
    r"|\b(?:a few|some|several|many|a good many|weeks and) (?:days|weeks|months|years)\b"
    r"|\bfor (?:days|weeks|months|years|ages)\b"
)
_PROSE: Final = 300
_LENGTH: Final = late_regex(rf"\b{SPAN_PATTERN}")
# what is done before a day is no wait till then
_NOT_A_WAIT: Final = late_regex(r"\b(?:made|make|picked|pick|gathered|harvest(?:ed)?) ")
# a ferment ends by itself: "ferment until it stops", "bis die Gärung beendet ist"
_WORKS: Final = late_regex(
    r"ferment|bubbl|\bwork|fizz|hiss|air-?lock|gär|blubber|gist|jäs|\bbull|burbuj|\bboll", re.I
)
_ENDS: Final = late_regex(
    r"\b(?:(?:until|till|'?til|once|when|before|after)\b.*\b(?:stop|ceas|finish|complet|over\b|done"
    r"|end|die[sd]?\b|subsid|slow|quiet|still|dry|no (?:more|longer)|clear)"
    r"|bis\b.*\b(?:aufhör|aufgehört|abgeschlossen|beendet|zu ende|fertig|vorbei|stopp|ruhig|nachl)"
    r"|jusqu['’]à\b.*\b(?:s['’]arrêt|cess|termin|fini|plus de bulle)"
    r"|hasta\b.*\b(?:par[ea]|ces[ea]|termin|dej[ea]|acab|fin)"
    r"|fin(?:o|ché)\b.*\b(?:fine|ferm[ai]|cess|termin|smett|esaur|complet)"
    r"|tot(?:dat)?\b.*\b(?:stop|gestop|klaar|ophoud|voorbij|uitge|rustig)"
    r"|tills\b.*\b(?:slut|avstann|klar|upphör|färdig|stann))",
    re.IGNORECASE,
)


@lru_cache(maxsize=1024)
def ends_by_itself(steps: tuple[MethodStep, ...]) -> tuple[int, str] | None:
    """Return the step and the words that let a ferment work until it ends, without its length."""
    read = {one.place for one in times_in_method(steps)}
    for place, (sentence, step, _) in enumerate(sentences_of(steps)):
        if place not in read and _ends(sentence):
            return step, _as_typed(steps[step - 1].text, sentence).rstrip(".;")
    return None


def _ends(sentence: str) -> bool:
    return len(sentence) <= _PROSE and bool(_WORKS.search(sentence) and _ENDS.search(sentence))


@lru_cache(maxsize=1024)
def times_not_read(steps: tuple[MethodStep, ...]) -> tuple[tuple[int, str], ...]:
    """Return what a method says of waiting without a length to count, each with its step."""
    read = {one.place for one in times_in_method(steps)}
    return tuple(
        (step, _as_typed(steps[step - 1].text, sentence).rstrip(".;"))
        for place, (sentence, step, _) in enumerate(sentences_of(steps))
        if (place not in read and (_waits(tidy(sentence)) or uncounted_elsewhere(sentence)))
        or _goes_on_uncounted(sentence, steps)
    )


def _goes_on_uncounted(sentence: str, steps: tuple[MethodStep, ...]) -> bool:
    """Whether a thing is tended otherwise from then on, and nothing says for how long."""
    then = so_often_then(sentence)
    told = {one.every for one in times_in_method(steps)}
    return bool(then) and bool(told - {""}) and then not in told


def _as_typed(text: str, sentence: str) -> str:
    """Return a sentence as its step has it: "til" is read as "until", and quoted as typed."""
    close = get_close_matches(sentence, re.split(r"(?<=[.;!?])\s+|[:;]\s+", text), 1, 0.5)
    return close[0].strip() if close else sentence


def _waits(plain: str) -> bool:
    if IF.match(plain) or KEEPS.search(plain):
        return False
    plain = EVERY.sub("", re.sub(r"\bevery few [a-z]+", "", plain))
    found = _UNCOUNTED.search(plain)
    if not found or _LENGTH.search(plain) or _NOT_A_WAIT.search(plain[: found.start()]):
        return False
    verb = VERB.search(plain)
    told_when = re.match(r"(?:until|till|'?til|by|before)\b", found[0])
    return bool(verb) and bool(told_when or not STORED.match(verb[0] if verb else ""))
