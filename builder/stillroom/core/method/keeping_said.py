"""What a recipe says of its own keeping: under "keeps", else in the last words of its method.

Only words that put the finished thing away count: "leave in the fridge for two hours" sets it,
"keep in a dark place for three months" makes it. Leaves out what guidance says: keeping_limits.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal

from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, Span, parse_span
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, Unreadable

Place = Literal["room", "fridge", "freezer"]
PLACE_WORDS: Mapping[Place, str] = {
    "room": "at room temperature",
    "fridge": "in the fridge",
    "freezer": "frozen",
}

_FREEZER = late_regex(r"\b(freezer?|frozen)\b")
_FRIDGE = late_regex(r"\b(fridge|refrigerat\w*|chilled)\b")
_ONCE_OPENED = late_regex(r"[^,.;]*\b(?:once|when|after|if) open(?:ed|ing)\b[^,.;]*")
_PUT_AWAY = late_regex(
    r"\b(?:keeps?|kept|stored?|stays?|lasts?)\b(?! stirring)[^.;]*"
    r"\b(?:fridge|refrigerator|freezer|frozen|refrigerated)\b"
    r"|\b(?:fridge|refrigerator|freezer|refrigerated?|freeze|frozen)\b[^.;]*"
    r"\b(?:for up to|up to|within|use by|at once)\b[^.;]*\b(?:days?|weeks?|months?)\b"
    r"|\brefrigerate\b"
    r"(?![^.;]*\b(?:minutes?|hours?|overnight|until|till|to (?:set|firm|chill)|then)\b)"
    r"|\b(?:chill|leave|put|place|rest|cure|stand)\b[^.;]*\b(?:fridge|refrigerator)\b"
    r"[^.;]*\b(?:weeks?|months?)\b"
    r"|\bfreeze\b(?![^.;]*\b(?:minutes?|hours?|overnight|until|solid|machine|churn))"
)
_ON_THE_SHELF = late_regex(
    r"\b(?:cupboard|pantry|larder|shel(?:f|ves)|cellar|room temperature|cool,? (?:dark |dry )?place"
    r"|cool,? dark|dark,? cool)\b"
)
_ONLY_SERVES = late_regex(
    r"\b(?:when|once) (?:it is |they are )?(?:served|serving)|\bto serve\b|^\W*(?:serve|garnish"
    r"|decorate|label|tie|give|enjoy|spread it on|eat)\b"
)
_LONG = rf"(?:about |roughly )?({SPAN_PATTERN})"
_CLAIMS = (
    late_regex(
        rf"\b(?:keeps|(?:will|should|can|may) (?:keep|last|stay good)|lasts|stays good)\b[^.;]*?"
        rf"\b(?:for up to|for at least|for|up to)\s+{_LONG}"
    ),
    late_regex(rf"\b(?:use|eat|drink|consume|enjoy)\b[^.;]*?\bwithin\s+{_LONG}"),
    late_regex(
        r"\b(?:keep|store|stored|kept|refrigerate|freeze)\b[^.;]*?"
        rf"\b(?:up to|no longer than)\s+{_LONG}"
    ),
)


def kept_at(recipe: Recipe) -> Place:
    """Return where the unopened thing is kept: what "keeps" says, else what its last step says.

    A place that only the book named makes nothing safe: what the recipe leaves open is the shelf.
    """
    where = "" if recipe.keeps.by == "book" else recipe.keeps.where
    words = _ONCE_OPENED.sub("", where.lower())
    if not words.strip():
        # whole, since "a cool, dark place, but not the fridge" is one place and no fridge
        last = " . ".join(
            ", ".join(affirmed_clauses(one)) for one in split_sentences(_last_words(recipe))
        )
        words = " . ".join(found[0] for found in _PUT_AWAY.finditer(last))
        # "chill for a week, then keep in the cupboard": the shelf is where it ends
        if _ON_THE_SHELF.search(last):
            words = ""
    if _FRIDGE.search(words):
        return "fridge"
    return "freezer" if _FREEZER.search(words) else "room"


def claimed_in_method(recipe: Recipe) -> Span | None:
    """Return how long the last step says that it keeps; None where it does not say plainly."""
    words = _last_words(recipe)
    for pattern in _CLAIMS:
        if found := pattern.search(words):
            try:
                return parse_span(found[1])
            except Unreadable:
                return None
    return None


def ask_of_keeping(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a question where the method says in another language how long it keeps.

    Which state is meant is not read there, so that nothing is taken from it unasked.
    """
    if recipe.keeps.unopened is not None and recipe.keeps.by not in ("book", "method"):
        return ()
    for step in recipe.method:
        for sentence in split_sentences(step.text):
            if span := keeps_elsewhere(sentence):
                what = f'How long it keeps may stand here: "{sentence.strip()}"'
                mend = f'If that is of one unopened, write "keeps: {span} unopened" above.'
                return (Problem(recipe.file, step.line, what, mend),)
    return ()


def _last_words(recipe: Recipe) -> str:
    """Return the sentences of the last step that do not speak of it once it is opened."""
    steps = [step.text.lower() for step in recipe.method]
    while len(steps) > 1 and _ONLY_SERVES.search(steps[-1]) and not _PUT_AWAY.search(steps[-1]):
        steps.pop()  # "lay a leaf on it when it is served" says nothing of where it stood
    sentences = split_sentences(steps[-1]) if steps else []
    return " . ".join(one for one in sentences if not re.search(r"\bopen(?:ed|ing)\b", one))
