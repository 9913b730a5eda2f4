"""What of an introduction, of notes and amid steps may be none of the recipe's: one question.

A line that is no whole sentence ("Our shop · Contact"), one that only asks, a paragraph no
sentence of which does, measures or keeps something or speaks of what is made, and what somebody
tells of herself or of a day. It stays until that is answered. Leaves out what is plainly nothing
of a recipe: sorting.py, outside_recipe.py; and whole lines of the method: doubted.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cache
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.doubted import quoted, some_of
from stillroom.bringing.found import Origin, Recipe
from stillroom.bringing.handed_on import asked_whose, somebody_named
from stillroom.bringing.heads import SENTENCE_ENDS, heads_tools, is_wish, plain, words
from stillroom.bringing.known_work import (
    TONGUES,
    small_words,
    tongues_of,
    words_of,
)
from stillroom.bringing.labelled_spans import labelled_span
from stillroom.bringing.private_end import is_day, is_of_recipe
from stillroom.bringing.told_within import told_within
from stillroom.bringing.work_words import tongue_of
from stillroom.core.words.patterns import late_regex

ASKED_BESIDE: Final = "Does this belong to the recipe?"
"""How the question begins that names such lines."""
_HOW_TO_ANSWER: Final = "Take out what does not; let the rest stand."
_WHOSE: Final = (
    "If that is whose recipe it is, and they may be printed, write it as its author; else take"
    " the name out."
)
_BARS: Final = late_regex(
    r"\s[|»›→·•]|https?:|www\.|[^\W_]\.(?:com|net|org|info|blog|eu|uk|de|at|ch|fr|it|es|nl|be|se|no|dk|pt|pl|cz)\b(?!\.)"
)
_STOPPED: Final = late_regex(r"[.!…][\"”“’»')\]]*$")
_ENDED: Final = late_regex(r"[.!?:;…][\"”“’»')\]]*$")
_ASKS: Final = late_regex(r"\?[\"”’»')\]]*$")
_LABEL: Final = late_regex(
    r"[^\W\d][\w'’()/&-]*(?:\s[\w'’()/&-]+){0,3}\s?(?::|\s[-–—])\s+\S+(?:\s\S+){0,4}"
)
_TIP: Final = late_regex(r"(?P<head>[^\W\d][^:–—.!\d]{1,30}?)\s*\d{0,2}\s*[:–—!]\s+\S")
_LEAST_LONG: Final = 3
"""Letters of a word that stands in capitals in a heading."""
_LEAST_WORD: Final = 4
_ENDING: Final = 2
"""Letters at a word's end that another form of it may have otherwise."""
_LONGEST_WORD: Final = 24
_LEAST_BROKEN: Final = 7
"""Words of a line without a stop from which on a machine may have broken it off."""
_FEW: Final = 3
_MOST_NAMED: Final = 12
_LEAST_QUOTED: Final = 30
_LONGEST: Final = 4_000


def questions_beside(
    recipe: Recipe, origin: Origin, asked: Iterable[str]
) -> Iterator[tuple[str, str]]:
    """Yield what is asked about what stands beside a recipe's list and steps, and how to mend it.

    What was `asked` already is not asked again; the introduction of others is in no draft.
    """
    intro = [] if origin.others else recipe.intro
    notes = (one for _, rows in recipe.notes for one in rows)
    steps = (step for _, step in recipe.steps)
    whose = somebody_named(
        (*_whole(intro), *notes, *steps), recipe.title, recipe.writer or origin.writer
    )
    if whose:
        yield asked_whose(whose), _WHOSE
    said = " ".join(asked)
    told = {one for one, _ in whose}
    lines = [one for one in doubted_beside(recipe, intro) if one[:_LEAST_QUOTED] not in said]
    if lines := [one for one in lines if one not in told]:
        named = some_of(list(map(quoted, lines)), _MOST_NAMED)
        yield f"{ASKED_BESIDE} {named}.", _HOW_TO_ANSWER


def doubted_beside(recipe: Recipe, intro: Sequence[str]) -> list[str]:
    """Return such lines of a recipe, and such sentences of its notes and steps.

    >>> recipe = Recipe("Plum jam", ingredients=[("", "1 kg plums")], steps=[("", "Boil them.")])
    >>> doubted_beside(recipe, ["About me", "Lovely plums this year.", "Our shop | Contact"])
    ['About me', 'Our shop | Contact']
    """
    steps = [step for _, step in recipe.steps]
    rows = [(head, one) for head, told in recipe.notes for one in _whole(told)]
    rows = [(head, one) for head, one in rows if not _is_of_tools(head)]
    tongues = tongues_of([*intro, *steps, *(one for _, one in rows)]) or TONGUES
    said = " ".join((recipe.title, *(line for _, line in recipe.ingredients)))
    listed = frozenset(one for one in words_of(said) if len(one) >= _LEAST_WORD)
    about = _Known(tongues, listed - small_words(tongues))
    found = _beside_doubted(list(_whole(intro)), about)
    for head, one in rows:
        if about.is_doubted(one, alone=head == "Notes"):
            found.append(one)
        else:
            found += [said for said in _sentences(one) if about.is_of_somebody(said)]
    rows_listed = [line for _, line in recipe.ingredients]
    found += told_within(steps, rows_listed, recipe.numbered)
    return found


def _beside_doubted(intro: Sequence[str], about: _Known) -> list[str]:
    """Return the doubted lines of an introduction, and those without a stop that are among them."""
    doubted = [about.is_doubted(one, alone=True) for one in intro]
    return [
        one
        for at, one in enumerate(intro)
        if doubted[at]
        or (any(doubted[max(at - 1, 0) : at + 2]) and not _ENDED.search(one.strip(" *_")))
    ]


class _Known:
    """What is known of a recipe by which its sentences are told from others."""

    def __init__(self, tongues: Sequence[str], listed: frozenset[str]) -> None:
        self.tongues = tongues
        self.listed = listed
        self.parts = frozenset(
            one[begin:end]
            for one in (word[:_LONGEST_WORD] for word in listed)
            for begin in range(len(one) - _LEAST_WORD + 1)
            for end in range(begin + _LEAST_WORD, len(one) + 1)
        )

    def is_doubted(self, text: str, alone: bool) -> bool:
        """Whether a line may be none of the recipe's; one below a head of its own is no heading."""
        bare = text.strip(" *_")
        if labelled_span(bare) or _is_a_tip(bare):
            return False
        if not any(map(self.is_of_recipe, _sentences(bare))):
            return True
        return alone and is_no_sentence(bare)

    def is_of_recipe(self, sentence: str) -> bool:
        """Whether a sentence does, measures or keeps something, or speaks of what is made."""
        if is_of_recipe(sentence, self.tongues, self.listed):
            return True
        said = words_of(sentence)
        if is_day(sentence) or not said:
            return False
        if not _praised().isdisjoint(said):
            return True
        stems = {one[:-_ENDING] for one in said if len(one) >= _LEAST_WORD + _ENDING}
        return not self.parts.isdisjoint(stems.union(said))

    def is_of_somebody(self, sentence: str) -> bool:
        """Whether a sentence of a note is of a day of somebody's, of herself, or wishes well."""
        if self.is_of_recipe(sentence):
            return False
        said = frozenset(words_of(sentence))
        own = any(said & tongue_of(name).own for name in self.tongues)
        wishes = is_wish(sentence) or plain(sentence) in words("passed")
        return own or wishes or is_day(sentence)


def _is_of_tools(head: str) -> bool:
    return head == "Equipment" or heads_tools(f"{head}:")


@cache
def _praised() -> frozenset[str]:
    return frozenset(map(without_accents, words("praised")))


def _sentences(text: str) -> list[str]:
    return SENTENCE_ENDS.split(text[:_LONGEST].strip())


def _is_a_tip(text: str) -> bool:
    """Whether a note begins with what heads a tip: "Nota importante 1: …"."""
    found = _TIP.match(text)
    head = plain(found["head"]).split() if found else []
    return any(one in words("tip_heads") for one in head)


def _whole(rows: Sequence[str]) -> Iterator[str]:
    """Yield rows, with those that go on in the next as one."""
    held = ""
    for row in rows:
        broken = len(held.split()) >= _LEAST_BROKEN or (held and row[:1].islower())
        if held and broken and not _ENDED.search(held):
            held = f"{held} {row}"
            continue
        if held:
            yield held
        held = row
    if held:
        yield held


def is_no_sentence(text: str) -> bool:
    """Whether a line is no whole sentence: a heading, a label with its value, a question, a menu.

    >>> is_no_sentence("Recipe Introduction"), is_no_sentence("Where did it come from?")
    (True, True)
    >>> is_no_sentence("Yummy with toast and butter"), is_no_sentence("The best of them.")
    (False, False)
    """
    if _BARS.search(text) or text.endswith(":"):
        return True
    if all(_ASKS.search(one) for one in SENTENCE_ENDS.split(text)):
        return True
    if _STOPPED.search(text):
        return False
    said = text.split()
    long = [
        one for one in said if len(one) >= _LEAST_LONG and plain(one) not in small_words(TONGUES)
    ]
    capital = all(one[:1].isupper() or one[:1].isdigit() for one in long)
    return len(said) <= _FEW or capital or bool(_LABEL.fullmatch(text))
