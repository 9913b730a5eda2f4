"""What is asked about a word of "avoid" that tells not enough, or that nobody knows.

Nothing is guessed: the nearest word is only ever a question, and where a letter or more stands
between, what else may be written is said beside it.
"""

from __future__ import annotations

from collections.abc import Sequence

from stillroom.core.allergens.clauses import clauses, says_nothing
from stillroom.core.allergens.near import named_in, nearest_avoided
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.words.nearest import nearest
from stillroom.core.words.problems import Unreadable, say_written

WHAT_TO_AVOID = (
    'Write a food ("coconut"), an allergen ("milk", "nuts") or a diet ("vegan", "halal"). '
    'An ingredient that no recipe knows goes under "avoid ingredients".'
)
_MOST_ASKED = 20  # of one household: nobody reads more at once
_A_SLIP = 0.87  # so like is a word with one letter too many, too few or changed, in seven or more


def asked_about(word: str, what_to_write: str = WHAT_TO_AVOID) -> Unreadable | None:
    """Return the question about a word to avoid, None where it is understood.

    >>> print(asked_about("glutten").mend)
    Did you mean "gluten"?
    >>> print(asked_about("malabsorption of fructose").mend[:10])
    Most begin
    """
    avoided = read_avoided(word)
    near = () if avoided else nearest_avoided(word)
    of_near = read_avoided(near[0]) if len(near) == 1 else None
    ask = (avoided and avoided.ask) or (of_near and of_near.ask)
    if ask:
        named = ", ".join(one for one in named_in(word) if one not in ask)
        more = f" Named there: {named}." if named else ""
        return Unreadable(f"{say_written(word)} does not tell which foods are meant.", ask + more)
    if avoided:
        return None
    if (whole := named_in(word)) and (left := _not_understood(word)):
        understood = f'"avoid: [{", ".join(whole)}]"'
        what = f"{say_written(word)} is not all understood: what of {say_written(left)}?"
        return Unreadable(what, f"Named there: {understood}. Write that, and what else is meant.")
    mend = f"Did you mean {listed(near)}?" if near else what_to_write
    if near and not nearest(word, [", ".join(near)], _A_SLIP):
        mend = f"{mend} If not: {what_to_write[0].lower()}{what_to_write[1:]}"
    return Unreadable(f"{say_written(word)} is nothing that can be avoided.", mend)


def _not_understood(word: str) -> str:
    """Return the clause of a sentence of several that keeps the whole from being understood."""
    parts = [one.text for one in clauses(word)]
    bad = (one for one in parts if not (says_nothing(one) or _is_understood(one)))
    return next(bad, "") if len(parts) > 1 else ""


def _is_understood(text: str) -> bool:
    found = read_avoided(text)
    return found is not None and not found.ask


def asked_about_all(words: Sequence[str], what_to_write: str = WHAT_TO_AVOID) -> list[Unreadable]:
    """Return the questions about all that one household avoids.

    >>> [asked.what for asked in asked_about_all(["nuts", "coconut is fine"])]
    []
    >>> asked_about_all(["coconut is fine"])[0].what
    '"coconut is fine" leaves nothing out.'
    """
    asked: list[Unreadable] = []
    once = list(dict.fromkeys(words))  # what is written twice is asked about once
    for place, word in enumerate(once):
        if found := asked_about(word, what_to_write):
            asked.append(found)
        if len(asked) == _MOST_ASKED and place + 1 < len(once):
            what = f"{len(once) - place - 1:,} more words from here on were not looked at."
            asked.append(Unreadable(what, "Put the first ones right, and check again."))
            break
    if asked or not words or any(leaves_out(word) for word in words):
        return asked
    mend = f"{what_to_write} Where they may have everything, leave the line out."
    return [Unreadable(f"{say_written(', '.join(words))} leaves nothing out.", mend)]


def leaves_out(word: str) -> bool:
    """Whether words leave something out, and do not only allow a thing or say how grave it is."""
    found = read_avoided(word)
    return bool(found and (found.of or not (found.allowed or says_nothing(word))))


def listed(words: tuple[str, ...]) -> str:
    """Return words in quotation marks, one after another."""
    return ", ".join(f'"{word}"' for word in words)
