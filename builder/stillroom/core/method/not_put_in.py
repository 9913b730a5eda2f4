"""What a method names and nobody puts in: vessels and ovens, what it is served and made up with.

Where it is doubtful the words stay, and what they name is counted: of an allergen or of milk that
is told too often a maker can say so, of one that is lost nobody knows. The patterns are
not_put_in.yml. Leaves out what is taken out again: taken_out.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from stillroom.core.method.sentences import is_for_whoever, split_sentences
from stillroom.core.method.tag_words import before_and_on_the_tag, hands_on, tells_a_use
from stillroom.core.method.words import find_phrase
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex

_SEGMENT = clause_regex(r"([();:]|(?:,\s*|\s)but\s)", re.IGNORECASE)
_MARK = clause_regex(r"([();:])")
_FOR_WHAT_IT_BECOMES = clause_regex(
    r"(?:for|pour|für|per|para|voor) (?:the |le |la |les |l['’]|den |die |das |il |el |het |de |un "
    r"|a |ein |een |une |eine |einen )?(?:\w+ ){0,2}\w+ ?:",
    re.IGNORECASE,
)

_COLON_NEAR = clause_regex(r".(?:[^.:;,]{0,40}?):")
_YOURS = clause_regex(r"\byour (?:mug|cup|glass)\b|\b(?:mug|cup) of (?:hot|warm)", re.IGNORECASE)
_GOES_WITH_IT = clause_regex(
    r"\s*(?:(?:or|and|oder|ou|o|of) (?:simply )?)?(?:(?:zB|zum Beispiel|etwa|gerne?|for example|eg"
    r"|say|ideally|par exemple|pex|por ejemplo|ad esempio|bijv|feks|tex|fx) )?"
    r"(?:with|on|over|alongside|mit|auf|avec|sur|con|met)\b",
    re.IGNORECASE,
)


@cache
def _pattern(name: str) -> re.Pattern[str]:
    either = "|".join(read_data("not_put_in.yml", "method")[name])
    return clause_regex(rf"(?<!\w)(?:{either})(?!\w)", re.IGNORECASE)


def without_things(sentence: str) -> str:
    """Return a sentence without vessels, ovens and verbs called after a food, and eggs that float.

    >>> without_things("Bei 180 Grad Ober-/Unterhitze backen, in Honiggläser füllen.")
    'Bei 180 Grad   backen, in   füllen.'
    >>> without_things("In a bowl, cream together the butter and sugar.")
    'In a bowl,   the butter and sugar.'
    >>> without_things("Make a brine strong enough to float an egg.")
    'Make a brine strong enough to  .'
    """
    done = _pattern("floated").sub(" ", _pattern("verbs").sub(" ", sentence))
    return _pattern("vessels").sub(" ", _pattern("ovens").sub(" ", done))


def without_what_is_served(sentence: str) -> str:
    """Return a sentence without what only goes with it at the table, to the end of its list.

    >>> without_what_is_served("Stir in the almonds and serve with cream, figs or cheese.")
    'Stir in the almonds and '
    >>> without_what_is_served("Lovely with cheese, so add the walnuts.")
    ', so add the walnuts.'
    """
    pieces = (_SEGMENT if "but" in sentence.lower() else _MARK).split(sentence)
    return "".join(
        piece if place % 2 else _of_the_making(piece) for place, piece in enumerate(pieces)
    )


def _of_the_making(segment: str) -> str:
    kept: list[str] = []
    served = False
    before = ""
    for part in segment.split(","):
        told, before = find_phrase(before, "served"), part
        if told and _GOES_WITH_IT.match(part):  # "serve warm, with custard"
            served, part = True, ""
        elif found := _pattern("served_with").search(part):
            served, part = True, _put_in_before(part, found.start())
        elif found := _pattern("served_last").search(part):
            done = [one.end() for one in _pattern("puts_in").finditer(part, 0, found.start())]
            part = part[: done[-1]] if done else part[found.end() :]
        elif served and not _pattern("puts_in").search(part):
            continue
        else:
            served = False
        kept.append(part)
    return ",".join(kept)


def _put_in_before(part: str, end: int) -> str:
    return part[:end] if _pattern("puts_in").search(part[:end]) else ""


def puts_in(clause: str) -> bool:
    """Whether a clause says that something is put in.

    >>> puts_in("Die Nüsse unterheben"), puts_in("Crack the nuts")
    (True, False)
    """
    return bool(_pattern("puts_in").search(clause))


def is_a_substitute(clause: str) -> bool:
    """Whether a clause tells what may be taken in the place of something listed.

    >>> is_a_substitute("You can use almonds instead"), is_a_substitute("You can use the almonds")
    (True, False)
    """
    return bool(_pattern("substitutes").search(clause))


def put_in_before_served(clause: str) -> str:
    """Return what a clause puts in before it says "serve"; all of it where it says no such thing.

    >>> put_in_before_served("Fold in the walnuts and serve"), put_in_before_served("Eat with jam")
    ('Fold in the walnuts and ', '')
    """
    found = find_phrase(clause, "served")
    return _put_in_before(clause, found.start()) if found else clause


def sentences_of_the_maker(recipe: Recipe) -> Iterator[str]:
    """Yield the sentences of the method without what whoever is given it does with it.

    Of a dry mix that is also how it is made up: "To make: add 1 egg", "3 spoons into a mug of hot
    milk". What begins a method is the maker's, and so is all of a bake.
    """
    begun = theirs = handed = False
    dry = recipe.kind.is_("dry")
    for step in recipe.method:
        told, on_the_tag = before_and_on_the_tag(step.text) if dry else (step.text, "")
        for sentence in split_sentences(told):
            if handed and not _pattern("maker_again").search(sentence):
                continue
            handed = dry and begun and hands_on(sentence)
            if is_for_whoever(sentence):
                theirs = theirs or tells_a_use(sentence)
                continue
            if found := _pattern("receiver").search(sentence):
                sentence, theirs = sentence[: found.start()], True
            elif dry:
                own = _before_it_is_made_up(sentence.strip(), begun)
                if own is not None:
                    sentence, theirs = own, True
                elif theirs := theirs and _goes_on(sentence):
                    continue
            begun = True
            yield sentence
        if on_the_tag:
            theirs = True
            yield from filter(_pattern("maker_again").search, split_sentences(on_the_tag))


def _goes_on(sentence: str) -> bool:
    """Whether a sentence behind one of theirs is theirs as well."""
    if _pattern("maker_again").search(sentence):
        return False
    return bool(_pattern("still_theirs").search(sentence) or _pattern("wet").search(sentence))


def _is_used_on_something(sentence: str) -> bool:
    """Whether a sentence says on or in what a dry mix is used, which is no part of it.

    >>> _is_used_on_something("Use 2 tablespoons per pound of ground beef.")
    True
    >>> _is_used_on_something("Add the dried chicken to each jar.")
    False
    """
    if _pattern("used_on").search(sentence) and not _pattern("dried_meat").search(sentence):
        return True
    portion = _pattern("portion").search(sentence)
    if portion and _pattern("into_soft").search(sentence, portion.end()):
        return True
    return bool(_pattern("and_the_mix").search(sentence) and _pattern("fluid").search(sentence))


def _before_it_is_made_up(sentence: str, begun: bool) -> str | None:
    """Return what a sentence of a dry mix puts in before it is made up; None where it is not."""
    becomes = _FOR_WHAT_IT_BECOMES.match(sentence)
    if becomes and not _pattern("for_what_is_made").search(becomes[0]):
        return ""
    if not begun:
        return None
    if _is_used_on_something(sentence):
        return ""
    wet = _pattern("wet").search(sentence)
    if (lead := _pattern("makes_up").match(sentence)) and not becomes:
        return "" if wet or _COLON_NEAR.match(sentence, lead.end() - 1) else None
    if _pattern("emptied").search(sentence) or (wet and _pattern("of_the_mix").search(sentence)):
        return ""
    portion = _pattern("portion").search(sentence)
    found = _pattern("heated_first").search(sentence)
    if found is None and (portion or _YOURS.search(sentence)):
        found = _pattern("into_a_cup").search(sentence)
    if found is None and portion:
        found = _pattern("into_hot").search(sentence, portion.end())
    return sentence[: found.start()] if found else None
