"""How long a brought recipe says that it keeps: as the draft's own fact, with its words as source.

Only what the book would take of the method anyway is taken; what may be of one that is opened, of
a part, or in another language is asked. Leaves out words beside the method: drafting.py asks.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.checked import read_anyhow
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.keeping_claims import plainly_claimed_in
from stillroom.core.method.keeping_opened import without_opened
from stillroom.core.method.keeping_said import keeping_of_method
from stillroom.core.method.last_words import FRIDGE, is_of_a_failed_seal
from stillroom.core.method.sentences import split_sentences
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.recipe.waits_elsewhere import keeps_elsewhere
from stillroom.core.when.spans import Span

_SHORTENED: Final = re.compile(r"(\b(?:ca|approx|max|min|env|mind))\.(?=\s*\d)", re.IGNORECASE)
# "can be kept refrigerated for weeks", "keeps for ages", "hält sich ewig": no length to take
_VAGUELY: Final = re.compile(
    r"\b(?:keeps?|kept|lasts?|stores?|stored|stays?\s+(?:good|fresh))\b[^.;!?]{0,60}?"
    r"\b(?:for\s+)?(?:(?:many|several|a\s+few|some)\s+)?(?:weeks|months|years|ages|indefinitely|forever|(?:a\s+)?(?:long|good)\s+(?:time|while))\b"
    r"|\b(?:hält|halten|haltbar|aufbewahren)\b[^.;!?]{0,60}?\b(?:ewig|lange|mehrere\s+(?:wochen|monate)|wochenlang|monatelang|jahrelang)\b"
    r"|\bconserv\w*[^.;!?]{0,60}?\b(?:longtemps|plusieurs\s+(?:semaines|mois)|a\s+lungo|per\s+mesi|mucho\s+tiempo|varios\s+meses|varias\s+semanas)\b"
    r"|\b(?:maandenlang|wekenlang|monatelang|wochenlang|jahrelang|jarenlang|lange|länge)\s+(?:[^\W\d]+\s+)?(?:bewa\w+|houdbaar|goed|haltbar|halten|aufbewahren|hålla\w*)\b"
    r"|\b(?:bewa\w+|houdbaar|goed)\b[^.;!?]{0,60}?\b(?:lang|maandenlang|wekenlang|weken|maanden)\b"
    r"|\b(?:håller|hållbar\w*|förvara\w*)\b[^.;!?]{0,60}?\b(?:länge|flera\s+(?:veckor|månader)|i\s+(?:veckor|månader))\b"
    # "keeps until next season", "hält sich bis zur nächsten Ernte"
    r"|\b(?:keeps?|lasts?|hält|halten|se\s+garde|se\s+conserv\w+|si\s+conserv\w+|aguanta|conserva-se|blijft|håller|holder)\b"
    r"[^.;!?]{0,60}?\b(?:next|following|nächste[nrs]?|prochaine?|prossim[oa]|próxim[oa]|volgende?|nästa|næste|neste)\s(?:[^\W\d]\S*[\s-])?"
    r"(?:\w*(?:season|crop|harvest|summer|spring|autumn|winter|year|ernte|saison|sommer|jahr|récolte|été|année|stagione|raccolto|anno|estate"
    r"|temporada|cosecha|verano|año|colheita|ano|oogst|seizoen|zomer|jaar|säsong|skörd|sommar|år|sæson|høst|sesong|innhøsting))\b",
    re.IGNORECASE,
)
_NUMBERED: Final = re.compile(
    r"\d|\b(?:a|an|one|two|three|four|six|twelve)\s+(?:day|week|month|year)"
)
A_WAIT: Final = re.compile(
    r"\b(?:to mature|before (?:use|using|eating|serving|opening|drinking|tasting)"
    r"|(?:store|leave|let|stand|rest|age|steep|infuse)\b[^.!?]{0,120}\bat least)\b"
    r"|\b(?:store|keep|leave|let|stand|rest|age|steep|infuse)\b[^.!?]{0,120}\bthen\s(?:strain|filter|sieve|decant|bottle)\b",
    re.IGNORECASE,
)
"""What says how long it waits, and not how long it keeps: "allow 2 weeks before using"."""


_ELSEWHERE_TOO: Final = re.compile(
    r"\b(?:pantry|cupboard|shelf|larder|freezer|frozen|room\s+temperature|opened|after\s+opening"
    r"|schrank|vorratskammer|raumtemperatur|gefrierschrank|placard|congélateur|dispensa|congelatore|despensa|congelador"
    r"|kast|vriezer|skafferi|frys\w*|or|oder|ou|o|of|eller|lub)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class Kept:
    """How long it keeps by a sentence of its method, and whether that is yet to be asked."""

    unopened: Span
    opened: Span | None
    said: str
    is_asked: bool

    @property
    def source(self) -> str:
        """Whence the length is, for the draft."""
        return f"the recipe as it was brought in: {self.said}"


def sentences_of_keeping(steps: Iterable[str]) -> list[tuple[str, Span]]:
    """Return the sentences of steps that say how long the unopened thing keeps, and how long.

    >>> found = sentences_of_keeping(["Pot it. Use within 2 years.", "Hält sich 6 Monate."])
    >>> [(said, str(span)) for said, span in found]
    [('Use within 2 years.', '2 years'), ('Hält sich 6 Monate.', '6 months')]
    >>> sentences_of_keeping(["Keep it dark for three months.", "Once open, use in 1 week."])
    []
    """
    found = []
    for step in steps:
        for sentence in split_sentences(_SHORTENED.sub(r"\1", step)):
            closed = "" if is_of_a_failed_seal(sentence) else without_opened(sentence)
            if closed and (span := keeps_elsewhere(closed) or plainly_claimed_in(closed)):
                found.append((sentence.strip(), span))
    return found


def keeping_of(
    rows: list[str], steps: Iterable[str], settings: BookSettings, larder: Larder | None
) -> Kept | None:
    """Return the keeping that a draft's method says plainly; None where it does not."""
    recipe = read_anyhow(rows, settings, larder)
    kept = keeping_of_method(recipe) if recipe is not None else None
    if kept is None or kept.unopened is None:
        return None
    for said, span in sentences_of_keeping(steps):
        if span == kept.unopened:
            elsewhere = keeps_elsewhere(without_opened(said)) is not None
            return Kept(kept.unopened, kept.opened, said, elsewhere)
    return None


def kept_cold_beside(notes: Iterable[str]) -> tuple[str, Span] | None:
    """Return the sentence beside a method that says how long a thing keeps in the fridge, unopened.

    What keeps on a shelf by a note is asked and never taken; the cold makes nothing keep longer.

    >>> found = kept_cold_beside(["Storage: Keeps in the fridge for up to 4 weeks. Do not freeze."])
    >>> found and (found[0], str(found[1]))
    ('Storage: Keeps in the fridge for up to 4 weeks.', '4 weeks')
    >>> kept_cold_beside(["Keeps for a year.", "Once opened, keep it in the fridge for 4 weeks."])
    >>> kept_cold_beside(["Keeps 6 months in the pantry or 4 weeks in the fridge."])
    """
    told = [(said, span) for said, span in sentences_of_keeping(notes) if FRIDGE.search(said)]
    alone = len(told) == 1 and len({str(span) for _, span in sentences_of_keeping(notes)}) == 1
    one_place = alone and not _ELSEWHERE_TOO.search(told[0][0])
    return told[0] if one_place else None


def vaguely_kept(lines: Iterable[str]) -> str:
    """Return the sentence that says a thing keeps without saying how long; "" for none.

    >>> vaguely_kept(["Roll them.", "They can be kept refrigerated for weeks."])
    'They can be kept refrigerated for weeks.'
    >>> vaguely_kept(["It keeps for 3 weeks.", "Leave it for a few weeks.", "Keep stirring it."])
    ''
    """
    for line in lines:
        for sentence in split_sentences(line):
            if _VAGUELY.search(sentence) and not _NUMBERED.search(sentence):
                return sentence.strip()
    return ""
