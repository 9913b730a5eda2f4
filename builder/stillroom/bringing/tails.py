"""What follows the last step of a method and may be none: chat, thanks, what came of it.

Where the steps are plainly set apart, as numbered lines or as one block, a paragraph behind them in
which nothing is plainly done is kept as a note, and asked about. Leaves out what is plainly a
remark, in whatever place: afterwords.py, remarks.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, section_of, words
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.sorting import is_ingredient, is_passed, is_sentence, is_told

_LEAST: Final = 3
"""Numbered steps, from which on what has no number may be none."""
_LEAST_LINES: Final = 4
"""Lines without a gap, from which on what stands behind one may be no step."""
_OWN: Final = re.compile(
    r"\b(?:i|i['’](?:ve|m|d|ll)|we|we['’](?:ve|re|d|ll)|my|me|myself|our|us|ich|wir|mich|uns|mein\w*|unser\w*|je|j['’]\w+|nous|mon|ma|mes"
    r"|notre|nos|io|noi|mio|mia|nostr\w|yo|nosotros|mi|nuestr\w+|jag|vi|min|mitt|mina|vår\w*|ik|wij|mijn|onze)\b",
    re.IGNORECASE,
)
# something done or kept, whoever tells it, and how long or how hot
_DOES: Final = re.compile(
    r"\b(?:keep|keeps|kept|store[ds]?|fridge|refrigerat\w*|freez\w*|until|matur\w*|strain\w*|bottle[ds]?|pour\w*|put|leave|left|cool\w*|cut|roll\w*"
    r"|dip\w*|spread\w*|boil\w*|simmer\w*|stir\w*|bake[ds]?|add(?:ed)?|mix(?:ed)?|steep\w*|shake[ns]?|seal\w*|steril\w*|process\w*|ferment\w*|rack\w*"
    r"|aufbewahr\w*|lager\w*|haltbar|hält|halten|kühl\w*|conserv\w*|gard(?:er|ez|e)|bewaar\w*|bewaren|förvara\w*|håll\w*|kylskåp\w*)\b"
    r"|[°º]|\d\s*(?:grad|degrees?|min|hours?|hrs?|stunden?|minut\w*|heures?|or[ae]|horas?|uur|timmar?|tim|days?|tage?|jours?|giorni|días|dagen|dagar"
    r"|weeks?|wochen?|semaines?|settiman\w|semanas?|weken|veckor|months?|monate?n?|mois|mesi|meses|maanden|månader)\b",
    re.IGNORECASE,
)
# as one who tells others what to do begins: "Versate", "Mettez", "Ponemos"
_BIDS: Final = re.compile(r"[^\W\d_]{2,}(?:[aei]te(?:l[aeio])?|ez|amos|emos|imos)")
# "Allineare i biscotti", "Ecraser les fruits", "Retirar del fuego", "Wymieszać": told as a cook
# notes it; "część" and "ilość" are things
_INFINITIVE: Final = re.compile(
    r"[a-zà-ÿ]{3,}(?:are|ere|ire|arli|erli|irli|arle|erle|ar|er|ir|arlos|arlas|erlos|erlas)"
    r"|[^\W\d_]{2,}(?:[aeiyuą]ć|(?<![oę])ść|źć)|(?:u|s|wy|za)?(?:piec|tłuc)"
)
_ONE_DOES: Final = re.compile(
    r"\b(?:se\s+[a-zà-ÿ]{3,}[ae]n?|si\s+[a-zà-ÿ]{3,}[aeo](?:no)?|man\s+[a-zäöü]{3,}t|il\s+faut"
    r"|on\s+[a-zà-ÿ]{3,}[et]|[a-zäöü]{3,}n\s+Sie)\b"
)
_FORBIDS: Final = re.compile(r"(?:do not|don['’]t|be sure|make sure)\b", re.IGNORECASE)
_CLAUSE: Final = re.compile(
    r"[,;:]\s+(?:e\s+|et\s+|y\s+|poi\s+|quindi\s+|luego\s+|puis\s+|ora\s+)?"
)
_CONDITIONS: Final = frozenset({"when", "once", "after", "before", "then", "next", "meanwhile"})
_TO_DO: Final = re.compile(r"[a-zäöüß]{3,}(?:en|ern|eln)[.!]?$")
_LAST_DONE: Final = re.compile(r"\b[a-zäöüß]{3,}(?:en|ern|eln)$")
_OF_WHAT: Final = re.compile(r"[^\W\d_]+\s+(?:of|van|av|af|von|der|des)\s")
_IS_TOLD: Final = re.compile(
    r"\b(?:ist|sind|war|waren|hat|habe|haben|wird|werden|kann|könnt|viel)\b", re.IGNORECASE
)


def tail_of(rows: Sequence[Row]) -> tuple[int, ...]:
    """Return the places of the paragraphs behind the steps in which nothing is plainly done.

    >>> steps = [Row("Stone them.", "step"), Row("Boil them.", "step"), Row("Pot it.", "step")]
    >>> tail_of([*steps, Row("Does yours look like this?")])
    (3,)
    >>> tail_of([*steps, Row("Store it in a dark cupboard.")])
    ()
    """
    begin = _behind_steps(rows)
    found: list[int] = []
    for at in range(len(rows) - 1, begin - 1, -1):
        row = rows[at]
        if row.shape != "line" or _does(row.text):
            break
        if not _is_said_otherwise(row.text):
            found.insert(0, at)
    return tuple(found)


def _behind_steps(rows: Sequence[Row]) -> int:
    """Return the row behind the last step, where steps are set apart; else the last of all."""
    numbered = [at for at, row in enumerate(rows) if row.shape in ("step", "item")]
    if len(numbered) >= _LEAST:
        return numbered[-1] + 1
    parted = next((at for at in range(1, len(rows)) if rows[at].gap), len(rows))
    block = rows[:parted]
    lines = len(block) >= _LEAST_LINES and all(row.shape == "line" for row in block)
    told = sum(is_sentence(row.text) or is_told(row.text) for row in block)
    return parted if lines and told * 2 > len(block) else len(rows)


def _is_said_otherwise(text: str) -> bool:
    """Whether a line is read for itself: a yield, a tip with its head, a note with a star."""
    head = re.match(r"([^\W\d][^:–—.]{1,30}?)\s*[:–—]\s+\S", text)
    aside = bool(head) and section_of(f"{head[1]}:") == "aside" if head else False
    return (
        aside
        or text.startswith(("*", "\\*", "~", "("))
        or is_only_makes(text)
        or is_passed(text)
        or is_ingredient(text)
        or text.count("|") > 1
    )


def _does(text: str) -> bool:
    """Whether something is plainly done, or kept, in a sentence of a paragraph."""
    return any(_is_done(one) for one in SENTENCE_ENDS.split(text))


def _is_done(sentence: str) -> bool:
    first = plain(sentence).split(" ")[0]
    if sentence.rstrip().endswith("?"):
        return False
    if first in _CONDITIONS:
        return not _OWN.search(sentence)
    if first in words("told_first") - {"let"} or first in words("told_last"):
        return True
    if _BIDS.fullmatch(first):
        return True
    if _TO_DO.search(sentence) and not _IS_TOLD.search(sentence) and not _OWN.search(sentence):
        return True
    return bool(_DOES.search(sentence)) and not _OWN.search(sentence)


def does_something(sentence: str) -> bool:
    """Whether a sentence may do or keep something, whoever tells it: "We left it for a week"."""
    return says_done(sentence) or _may_be_done(sentence)


def says_done(sentence: str) -> bool:
    """Whether a sentence has a word for what is done or kept, or says how long or how hot."""
    return bool(_DOES.search(sentence))


def begins_to_bid(text: str) -> bool:
    """Whether words begin with what is to be done: "Boil the plums", "Ajouter le sucre".

    >>> begins_to_bid("Cocinar a fuego lento"), begins_to_bid("Zagotować syrop")
    (True, True)
    >>> begins_to_bid("Cooking the plums"), begins_to_bid("Preparación de los membrillos")
    (False, False)
    """
    first = plain(text).split(" ")[0]
    bids = first in words("told_first") | words("told_last")
    return bids or bool(_BIDS.fullmatch(first) or _INFINITIVE.fullmatch(first))


def ends_in_doing(text: str) -> bool:
    """Whether words end with what is to be done, as German and Dutch say it.

    >>> ends_in_doing("Die Quitten waschen"), ends_in_doing("Kochen der Quitten")
    (True, False)
    >>> ends_in_doing("Koken van de kweeperen")
    False
    """
    return bool(_LAST_DONE.search(text)) and not _OF_WHAT.match(text)


def _may_be_done(sentence: str) -> bool:
    """Whether a sentence may say what is done, by how a word of it ends or a clause begins."""
    if _FORBIDS.match(sentence):
        return True
    begun = [plain(one).split(" ")[0] for one in _CLAUSE.split(sentence)]
    if any(_BIDS.fullmatch(one) for one in begun) or _INFINITIVE.fullmatch(begun[0]):
        return True
    told = any(one in words("told_first") for one in begun[1:]) or _ONE_DOES.search(sentence)
    return bool(told) and not _OWN.search(sentence)
