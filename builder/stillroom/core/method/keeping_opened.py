"""What words say of a thing once it is opened, apart from what they say of it unopened.

"10 months in the cupboard; once opened 3 weeks": the second never goes for the first. In English,
German, French, Spanish, Italian, Dutch, Swedish, Danish, Norwegian, Portuguese, Polish and Czech.
Leaves out where it stands unopened: keeping_said.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from stillroom.core.method.keeping_claims import first_span
from stillroom.core.recipe.waits_elsewhere import length_elsewhere
from stillroom.core.when.spans import SPAN_PATTERN, Span
from stillroom.core.words.patterns import clause_regex

_WHAT = (
    r"(?:(?:it|they|the|a|an|jars?|bottles?|tins?|is|are|you|you['’]ve|have|has|been|first|each) )"
    r"{0,4}"
)
_STATE = clause_regex(
    rf"\b(?:once|when|after|if|upon) {_WHAT}"
    r"(?:open(?:ed|ing)?|thaw(?:ed|ing)|defrost(?:ed|ing))\b"
    r"|\bnach (?:dem |der )?(?:öffnen|öffnung|anbruch|auftauen)\b|\bgeöffnet\b|\bangebrochen\w*"
    r"|\baprès (?:l['’])?ouverture\b"
    r"|\bune fois (?:le |la )?(?:pot |bocal |bouteille )?ouvert\w*"
    r"|\buna vez abiert\w*|\bdespués de abrir\w*|\btras (?:abrir|la apertura)\w*"
    r"|\buna volta apert\w*|\bdopo l['’]apertura\b|\bna (?:het )?openen\b|\bgeopend\b"
    r"|\baangebroken\b|\bentamée?s?\b|\bempezad[oa]s?\b|\befter öppn\w+|\böppna(?:d|t|de)\b"
    r"|\b(?:åbnet|åpnet|åbnede|åpnede)\b|\better åpning\b|\befter åbning\b"
    r"|\bpo otwarciu\b|\botwart[yaey]\b|\bpo otevření\b|\botevřen[éýá]\b"
    r"|\b(?:depois de|após|uma vez) (?:a )?abert(?:o|a|os|as|ura)\b"
    r"|(?<=, )(?:apert[oaie]|abiert[oa]s?|abert[oa]s?)\b"
    # "once you start to use it", "when broached"
    r"|\b(?:once|when|after|as soon as) (?:you(?:['’]ve| have)? )?"
    r"(?:start(?:ed|ing)?|beg(?:in|an|un)) (?:to use|using|to eat|eating)(?: it| them)?\b"
    r"|\b(?:once|when|after) (?:broached|in use)\b",
    re.IGNORECASE,
)
# as on a card: "4 wk open in fridge", "opened: 4 weeks"
_ON_A_CARD = clause_regex(
    rf"\b{SPAN_PATTERN} open(?:ed)?\b(?! air)|\bopen(?:ed)? ?[:=,(]? ?{SPAN_PATTERN}",
    re.IGNORECASE,
)
_ANY_OPENING = clause_regex(r"\bopen(?:ed|ing)\b", re.IGNORECASE)
_STILL_CLOSED = clause_regex(
    r"\b(?:before|prior to|until|till) (?:you |first )?open(?:ing|ed)?\b", re.IGNORECASE
)
_JOINT = clause_regex(r"[,;:.(]|\b(?:and|or|but|then|und|oder|et|ou|y|o|e|en|of)\b", re.IGNORECASE)
_THAWED = clause_regex(r"thaw|defrost|auftau", re.IGNORECASE)
_ANY_LENGTH = (clause_regex(rf"\b({SPAN_PATTERN})"),)


def without_opened(sentence: str) -> str:
    """Return what a sentence says of the unopened thing; "" where it cannot be told apart.

    >>> without_opened("Keeps 3 weeks chilled and 1 week after opening.")
    'Keeps 3 weeks chilled '
    >>> without_opened("Once opened, use within a week."), without_opened("Keeps if not opened.")
    ('', '')
    >>> without_opened("Chill for a week before opening."), without_opened("6 months, 4 wk open.")
    ('Chill for a week before opening.', '6 months')
    """
    found = _opened(sentence)
    if found is None:
        told = _STILL_CLOSED.sub("", sentence)
        return "" if _ANY_OPENING.search(told) else sentence
    return sentence[: _begins(sentence, found)]


def opened_in(sentences: Iterable[str]) -> Span | None:
    """Return the shortest time that sentences give a thing once it is opened; None of none.

    >>> str(opened_in(["Once open, 2 weeks.", "Nach dem Öffnen 10 Tage haltbar."]))
    '10 days'
    >>> opened_in(["Keeps 2 weeks.", "Once opened keep in the fridge."])
    """
    spans: list[Span] = []
    for sentence in sentences:
        found = _opened(sentence)
        if found is None or _THAWED.search(found[0]):
            continue
        behind, before = sentence[found.end() :], sentence[_begins(sentence, found) : found.start()]
        spans += filter(None, [_length(found[0]) or _length(behind) or _length(before)])
    return min(spans, key=Span.minutes) if spans else None


def _opened(sentence: str) -> re.Match[str] | None:
    """Return where a sentence first says that it is opened."""
    found = _STATE.search(sentence)
    card = _ON_A_CARD.search(sentence) if "open" in sentence.lower() else None
    return card if card and (found is None or card.start() < found.start()) else found


def _begins(sentence: str, found: re.Match[str]) -> int:
    """Return where the part of a sentence begins that speaks of the opened thing."""
    joints = _JOINT.finditer(sentence[: found.start()])
    return max((joint.start() for joint in joints), default=0)


def _length(words: str) -> Span | None:
    span = first_span(words, _ANY_LENGTH) or length_elsewhere(words)
    # "some weeks" is no figure; "a few days" is short, and better said so than left out
    return None if span and span.loosely and span.unit != "day" else span
