"""Whether what is written of needs is several, or one sentence that is only understood whole."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from stillroom.core.allergens.avoiding import asked_in, is_of_the_body, known_exactly
from stillroom.core.allergens.clauses import says_nothing
from stillroom.core.allergens.near import named_in
from stillroom.core.allergens.phrases import bare_forms, in_plain_words, parts_said
from stillroom.core.allergens.sentences import read_avoided
from stillroom.giving.who import BREASTFEEDING, denies_pregnancy, feeds_alone, read_pregnant

_PREGNANT = "pregnant"  # the row of avoided.yml


def as_understood(said: Any, words: Sequence[str]) -> Sequence[str]:
    """Return needs as one text a need; a sentence that is only understood whole stays whole.

    >>> as_understood("nuts and dairy", ["nuts", "dairy"])
    ['nuts', 'dairy']
    >>> as_understood("eats everything, except nuts", ["eats everything", "except nuts"])
    ['eats everything, except nuts']
    """
    if not isinstance(said, str) or len(words) < 2 or all(map(_understood, words)):
        return words
    return [said.strip()] if _understood(said) else words


def needs_said(said: Any, words: Sequence[Any], pregnant: Any = None) -> dict[str, Any]:
    """Return what a household avoids, and that somebody is pregnant where the same words say so.

    >>> needs_said("pregnant, no nuts", ["pregnant", "no nuts"])
    {'avoid': ['no nuts'], 'pregnant': True}
    >>> needs_said("stillt", ["stillt"])
    {'avoid': [], 'pregnant': 'breastfeeding'}
    >>> needs_said("pregnant, liver", ["pregnant", "liver"])
    {'avoid': ['no liver'], 'pregnant': True}
    >>> needs_said("gestational diabetes", ["gestational diabetes"])
    {'avoid': ['gestational diabetes']}
    """
    needs = [part for word in as_understood(said, words) for part in _parted(word)]
    left = [word for word in needs if not (isinstance(word, str) and _is_pregnant(word))]
    if len(left) == len(needs) or pregnant not in (None, True):
        return {"avoid": [_eaten(word) for word in needs] if pregnant else needs}
    # "in gravidanza, al terzo mese" names one thing
    left = [_eaten(word) for word in left if not (isinstance(word, str) and says_nothing(word))]
    told = [word for word in needs if isinstance(word, str) and _is_pregnant(word)]
    feeds = pregnant is None and all(map(feeds_alone, told))
    return {"avoid": left, "pregnant": BREASTFEEDING if feeds else True}


def _parted(word: Any) -> list[Any]:
    """Return "gravid och äter inte nötter" as two, where one of them is a pregnancy; else the word.

    >>> _parted("schwanger und isst keine Nüsse"), _parted("no nuts and no milk")
    (['schwanger', 'isst keine Nüsse'], ['no nuts and no milk'])
    """
    parts = parts_said(word) if isinstance(word, str) else []
    told = [part for part in parts if _is_pregnant(part)]
    others = [part for part in parts if part not in told]
    return parts if told and others and all(map(_understood, others)) else [word]


def _eaten(word: Any) -> Any:
    """Return an organ as a food: who is pregnant leaves out liver, and has no illness of it."""
    return f"no {word}" if isinstance(word, str) and is_of_the_body(word) else word


def _is_pregnant(words: str) -> bool:
    """Whether words say that somebody is pregnant, or feeds a child, and name nothing besides."""
    words = in_plain_words(words)
    if {one.meant for one in asked_in(words)} != {_PREGNANT} or named_in(words):
        return False
    alone = any(known_exactly(bare) == _PREGNANT for bare in bare_forms(words))
    return (alone and not denies_pregnancy(words)) or read_pregnant(words) in (True, BREASTFEEDING)


def _understood(words: str) -> bool:
    found = read_avoided(words)
    return found is not None and not found.ask
