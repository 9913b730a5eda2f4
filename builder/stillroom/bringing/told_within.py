"""Sentences within a step that only tell: of who tells it, of what was, of what is thought of it.

"Then stir in the sugar. I transplanted these plants from my father's plot." The step is work and
stands unasked, and so would the sentence: told_beside.py asks about it. Leaves out steps in which
nothing is done at all, doubted.py, and what a paper numbers itself.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from typing import Final

from stillroom.bringing.doubted import with_beside
from stillroom.bringing.heads import SENTENCE_ENDS
from stillroom.bringing.known_work import (
    TONGUES,
    is_work,
    is_work_in_own,
    listed_words,
    may_be_work,
    names_what_is_used,
    only_tells,
    tongues_of,
    words_of,
)
from stillroom.bringing.makes_said import makes_of
from stillroom.core.method.keeping_said import may_say_keeping

_LEAST_WORDS: Final = 4
_LEAST_OF_A_LEAD: Final = 6
_LONGEST: Final = 4_000
_WHOLE: Final = re.compile(r"[\W\d_]*[^\W\d_a-zß-ÿ].*[.!?…][\"”’»)\s]*$", re.DOTALL)
"""Begun with a capital and ended: no rest behind "ca.", no label of a part."""
_MEASURED: Final = re.compile(r"\d")


def told_within(
    steps: Sequence[str], listed: Iterable[str], left: Collection[str] = ()
) -> list[str]:
    """Return the sentences of steps that only tell, beside others of the step that are work.

    `left` are the steps that their paper numbers. One in which nothing is done is asked about
    whole.

    >>> told_within(["Boil the plums. My mother loved this! Pot it."], ["1 kg plums"])
    ['My mother loved this!']
    >>> told_within(["Boil the plums. They will look dull. Pot it."], ["1 kg plums"])
    []
    """
    listed = tuple(listed)
    tongues = tongues_of((*steps, *listed)) or TONGUES
    named = listed_words(listed)
    found: list[str] = []
    for at, step in enumerate(steps):
        if step not in left:
            found += _told_in(step, tongues, named, leads=at == 0)
    return found


def _told_in(step: str, tongues: Sequence[str], named: frozenset[str], *, leads: bool) -> list[str]:
    """Return the sentences of one step that only tell, and what goes on with them."""
    said = [one for one in SENTENCE_ENDS.split(step[:_LONGEST]) if re.search(r"[^\W\d_]", one)]
    if len(said) == 1:
        return []
    idle = [_is_idle(one, tongues, named) for one in said]
    if all(idle):
        return []
    tells = {
        at
        for at, one in enumerate(said)
        if idle[at] and (only_tells(one, tongues) or (leads and at == 0 and _leads(one)))
    }
    beside = with_beside(
        tells, len(said), lambda at: idle[at] and not names_what_is_used(said[at], named)
    )
    return [said[at] for at in beside]


def _is_idle(sentence: str, tongues: Sequence[str], named: frozenset[str]) -> bool:
    """Whether nothing is done in a sentence, nor said how much it makes or how long it keeps."""
    if len(words_of(sentence)) < _LEAST_WORDS or not _WHOLE.match(sentence):
        return False
    if is_work(sentence, tongues, named) or is_work_in_own(sentence, tongues, named):
        return False
    return not (may_say_keeping(sentence) or makes_of(sentence))


def _leads(sentence: str) -> bool:
    """Whether a sentence may lead to the work, as a story does: long, and without figures."""
    long = len(words_of(sentence)) >= _LEAST_OF_A_LEAD
    return long and not _MEASURED.search(sentence) and not may_be_work(sentence, TONGUES)
