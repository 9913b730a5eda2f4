"""Whether meat is hung to dry, in one sentence or over several ("Hang it up. Leave for 3 weeks").

What hangs in the air is not sealed from it. Leaves out how dry is dry enough, and what hanging meat
keeps: the rules.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import affirmed_clauses
from stillroom.core.recipe.method_times import sentences_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.wait_words import KEEPS
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere, waits_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, parse_span, tidy
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.problems import Unreadable

_HANGS = clause_regex(
    r"\b(?:hang|hung|suspend\w*|aufh[äa]ng\w*|aufgeh[äa]ngt|suspend\w*|pend(?:re|ez)|accroch\w*"
    r"|colg\w*|cuelg\w*|append\w*|ophang\w*|opgehangen|häng\w*|hæng\w*|heng\w*|pendur\w*|powie[sś]\w*)\b"
    # a cloth, a bag and a sign hold no meat, and what is hung over a bowl drips
    r"(?!(?: (?:a|an|the|your|it in a))? (?:clean |jelly |muslin |tea ?)*"
    r"(?:cloth|towel|bag|sign|label|curtain)\b)",
    re.IGNORECASE,
)
_DRIES = clause_regex(
    r"\b(?:dr(?:y|ied|ies|ying)|firm|hard|lost|loses|trockn\w*|getrocknet|fest|séch\w*|sec|ferme"
    r"|sec[ao]\w*|seque|asciug\w*|secc\w*|droog|drogen|tork\w*|tørr\w*)\b",
    re.IGNORECASE,
)
_IN_THE_AIR = clause_regex(
    r"\b(?:airy|ventilated|draught\w*|fan|box|up|luftig\w*|auf|aérée?|ventilé)\b", re.IGNORECASE
)
_SPAN = late_regex(rf"\b{SPAN_PATTERN}", re.IGNORECASE)
_TAKEN_DOWN = clause_regex(r"\b(?:take|took|taken) (?:it |them )?down\b", re.IGNORECASE)
_SENTENCES_BEHIND = 2
_A_DAY = 24 * 60


def hung_to_dry(recipe: Recipe) -> str:
    """Return the sentence that hangs something for days, or until it is dry; "" where none does.

    How long may stand in the next sentence or the one after it.
    """
    told = [", ".join(affirmed_clauses(sentence)) for sentence, _, _ in sentences_of(recipe.method)]
    for at, sentence in enumerate(told):
        found = _HANGS.search(sentence)
        if not found:
            continue
        if _IN_THE_AIR.search(sentence[found.start() :]):
            return sentence
        behind = [sentence[found.start() :], *told[at + 1 : at + 1 + _SENTENCES_BEHIND]]
        for one in behind:
            keeps = KEEPS.search(tidy(one)) or keeps_elsewhere(one) is not None
            if not keeps and (_DRIES.search(one) or _lasts_days(one)):
                return sentence
            if _TAKEN_DOWN.search(one):
                break
    return ""


def _lasts_days(sentence: str) -> bool:
    if any(one.span.minutes() >= _A_DAY for one in waits_elsewhere(sentence)):
        return True
    for found in _SPAN.finditer(tidy(sentence)):
        try:
            if parse_span(found[0]).minutes() >= _A_DAY:
                return True
        except Unreadable:
            continue
    return False
