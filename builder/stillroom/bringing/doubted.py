"""Lines of a method that are not known to be work nor to be none: one question names them.

At the desk each is answered with a press: brought_questions.py there. Leaves out what is plainly
none: remarks.py, afterwords.py, tails.py.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Sequence
from typing import Final

from stillroom.bringing.known_work import (
    TONGUES,
    is_work,
    is_work_in_own,
    listed_words,
    may_be_work,
    names_what_is_used,
    tongues_of,
)
from stillroom.bringing.said_to_one import greets
from stillroom.bringing.tails import begins_to_bid
from stillroom.core.method.keeping_said import may_say_keeping

ASKED_OF_METHOD: Final = "Is this part of the method?"
"""How the question begins that names them."""
HOW_TO_ANSWER: Final = (
    'Let stand what is a step, write what is a note below "## Notes", and take out the rest.'
)
_SHOWN: Final = 60
_MOST_NAMED: Final = 24
_SAID: Final = re.compile(r"[^\W\d_].*\s.*[.!;…][\"”’)]*$", re.DOTALL)
_QUOTED: Final = re.compile(r'"[^"]*"')


def doubted_steps(
    steps: Sequence[str], listed: Iterable[str], numbered: Collection[str] = ()
) -> list[str]:
    """Return the steps that are not known to be work, nor to say how long it keeps.

    `listed` are the lines of what goes in; `numbered` the steps that a paper numbers itself, of
    which any that is a sentence, or has a word of work, is one.

    One beside a doubted one is doubted too, where it neither bids first nor names what goes in.

    >>> doubted_steps(["Boil the plums in a pan.", "Photograph: Ann"], ["1 kg plums"])
    ['Photograph: Ann']
    >>> doubted_steps(["Boil the plums.", "What joy!", "My friend took the pictures."], ["plums"])
    ['What joy!', 'My friend took the pictures.']
    """
    listed = tuple(listed)
    tongues = tongues_of((*steps, *listed)) or TONGUES
    named = listed_words(listed)
    work = [
        (is_work(step, tongues, named) or is_work_in_own(step, tongues, named))
        and not greets(step)  # "Ciao Vanna, …": an answer that somebody got
        for step in steps
    ]
    keeping = [may_say_keeping(step) for step in steps]
    said = [step in numbered and bool(_SAID.search(step)) for step in steps]
    counted = [one in numbered and may_be_work(one, tongues) for one in steps]
    doubted = {
        at for at in range(len(steps)) if not (work[at] or keeping[at] or said[at] or counted[at])
    }

    def is_idle(at: int) -> bool:
        bids = said[at] or begins_to_bid(steps[at])
        return not (bids or (work[at] and names_what_is_used(steps[at], named)))

    return [steps[at] for at in with_beside(doubted, len(steps), is_idle)]


def quoted(line: str) -> str:
    """Return a line as the question names it: its first words."""
    said = " ".join(line.split()).replace('"', "'")
    return f'"{said[:_SHOWN].rstrip(" .:")}{" …" if len(said) > _SHOWN else ""}"'


def some_of(quotes: Sequence[str], most: int) -> str:
    """Return what a question names: so many of the quotes, each once, and how many more there are.

    >>> some_of(['"a"', '"b"', '"c"'], 2), some_of(['"a"', '"a"'], 2)
    ('"a" · "b" and 1 more', '"a"')
    """
    named = " · ".join(dict.fromkeys(quotes[:most]))
    return f"{named} and {len(quotes) - most} more" if len(quotes) > most else named


def with_beside(found: Collection[int], size: int, goes_on: Callable[[int], bool]) -> list[int]:
    """Return places of a row of so many, and those beside them, one after another, that go on.

    >>> with_beside({1}, 5, lambda at: at != 3)
    [0, 1, 2]
    """
    held, near = {*found}, [*found]
    while near:
        at = near.pop()
        for by in (at - 1, at + 1):
            if 0 <= by < size and by not in held and goes_on(by):
                held.add(by)
                near.append(by)
    return sorted(held)


def asked_of(lines: Sequence[str]) -> str:
    """Return the question that names some lines; "" for none."""
    if not lines:
        return ""
    return f"{ASKED_OF_METHOD} {some_of(list(map(quoted, lines)), _MOST_NAMED)}."


def named_in(question: str, head: str = ASKED_OF_METHOD) -> list[str]:
    """Return how a question that begins so names its lines, as `quoted` does; none of any other.

    >>> named_in(f"{asked_of(['Photograph: Ann', 'Share'])} {HOW_TO_ANSWER}")
    ['"Photograph: Ann"', '"Share"']
    """
    if not question.startswith(head):
        return []
    return _QUOTED.findall(question.removesuffix(HOW_TO_ANSWER))


def without_named(question: str, gone: Iterable[str], head: str = ASKED_OF_METHOD) -> str:
    """Return a question without some of the lines that it names; "" where none is left.

    >>> without_named(asked_of(["Photograph: Ann", "Share"]), ['"Share"'])
    'Is this part of the method? "Photograph: Ann".'
    >>> without_named(asked_of(["Share"]), ['"Share"'])
    ''
    """
    was = named_in(question, head)
    left = [one for one in was if one not in set(gone)]
    rest = question[len(head) :].removeprefix(f" {' · '.join(was)}")
    if not left and rest[:1] == ".":
        return ""
    return " ".join(filter(None, (head, " · ".join(left)))) + rest
