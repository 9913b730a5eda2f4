"""A method told above its list: what stands above says what is done, and nothing below it does.

"Prick the sloes and put them in a bottle." amid a story or a letter, and below it only the list.
What is done becomes steps, the rest stays an introduction; whatever is taken is asked about. Leaves
out a method that has a head: dividing.py, and one that runs on without a list: prose.py.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import SENTENCE_ENDS
from stillroom.bringing.known_work import (
    TONGUES,
    is_work,
    listed_words,
    may_be_work,
    names_what_is_used,
    tongues_of,
)
from stillroom.bringing.said_to_one import greets, is_news
from stillroom.bringing.sorting import is_sentence, is_told
from stillroom.bringing.tails import begins_to_bid, does_something, ends_in_doing

_LEAST: Final = 2
_LEAST_SMALL: Final = 3
"""Small words of a language, from which on a text is plainly in one that is known."""
_MOST_BELOW: Final = 2
_MOSTLY: Final = 3
_SHOWN: Final = 80
_TAKEN: Final = "No method stands below this list: what stood above it was taken for one."
_BEGINS: Final = "What is done stands above the list: it begins the method now."


def take_method_above(recipe: Recipe) -> None:
    """Take what is told above a list for its method, where none stands below it.

    What is told above a list that has a method below begins it, where it tells nothing else.
    """
    if not recipe.ingredients:
        return
    listed = [line for _, line in recipe.ingredients]
    told = [*recipe.intro, *recipe.to_one]
    tongues = tongues_of((*told, *listed))
    named = listed_words(listed)

    def is_done(sentence: str) -> bool:
        if not is_work(sentence, tongues or TONGUES, named):
            return False
        uses = names_what_is_used(sentence, named)
        return uses or does_something(sentence) or begins_to_bid(sentence)

    def may_be_done(sentence: str) -> bool:
        if is_done(sentence):
            return True
        asks = sentence.rstrip().endswith("?")
        return not asks and does_something(sentence) and names_what_is_used(sentence, named)

    def goes_on(sentence: str) -> bool:
        return may_be_done(sentence) or may_be_work(sentence, tongues or TONGUES)

    below = any(is_done(step) for _, step in recipe.steps)
    if below:
        _take_beginning(recipe, lambda one: is_work(one, tongues or TONGUES, named))
        return
    if len(recipe.steps) > _MOST_BELOW:
        return
    sentences = [one for said in recipe.intro for one in SENTENCE_ENDS.split(said)]
    plainly = sum(map(is_done, sentences))
    if recipe.steps and (plainly < _LEAST or any(goes_on(step) for _, step in recipe.steps)):
        return  # what stands below may still be the method
    if plainly or sum(map(may_be_done, sentences)) >= _LEAST:
        steps, intro = _parted(recipe.intro, may_be_done, goes_on)
    else:
        steps, intro = _of_letter(recipe.to_one, is_done), recipe.intro
    unknown = not tongues_of(told, _LEAST_SMALL)  # a language that nobody knows here
    if unknown and not steps and not recipe.steps:
        steps = [one for one in recipe.intro if is_sentence(one) or is_told(one)]
        steps = steps if len(steps) >= _LEAST else []
        intro = [one for one in recipe.intro if one not in steps]
    if not steps:
        _ask_of_story(recipe)
        return
    if recipe.steps:
        recipe.notes.append(("Notes", [step for _, step in recipe.steps]))
    recipe.intro, recipe.steps = intro, [("", step) for step in steps]
    recipe.doubt("ingredients", _TAKEN, "Look whether each of those sentences is a step.")


def _parted(
    paragraphs: Sequence[str], is_done: Callable[[str], bool], goes_on: Callable[[str], bool]
) -> tuple[list[str], list[str]]:
    """Return the steps that some paragraphs tell, and what they say before and behind those.

    What stands right beside a sentence in which something is done, and may be of it, `goes_on`.
    """
    parted = [SENTENCE_ENDS.split(said) for said in paragraphs]
    whole = [place for place, one in enumerate(parted) if any(map(is_done, one))]
    steps: list[str] = []
    intro: list[str] = []
    for place, sentences in enumerate(parted):
        done = [at for at, one in enumerate(sentences) if is_done(one)]
        if not done:
            within = whole[0] < place < whole[-1] and any(map(goes_on, sentences))
            (steps if within else intro).append(paragraphs[place])
            continue
        first, last = done[0], done[-1] + 1
        while first and goes_on(sentences[first - 1]):
            first -= 1
        while last < len(sentences) and goes_on(sentences[last]):
            last += 1
        intro += [" ".join(sentences[:first])] if first else []
        steps.append(" ".join(sentences[first:last]))
        intro += [" ".join(sentences[last:])] if sentences[last:] else []
    return steps, intro


def _of_letter(paragraphs: Sequence[str], is_done: Callable[[str], bool]) -> list[str]:
    """Return the sentences of a letter in which something is done, and none of its news."""
    kept = (
        [one for one in SENTENCE_ENDS.split(said) if is_done(one) and not _is_private(one)]
        for said in paragraphs
    )
    return [" ".join(one) for one in kept if one]


def _is_private(sentence: str) -> bool:
    return greets(sentence) or is_news(sentence)


def _take_beginning(recipe: Recipe, is_done: Callable[[str], bool]) -> None:
    """Take what is told above a list as the first steps, where most of it is plainly done."""
    sentences = [one for said in recipe.intro for one in SENTENCE_ENDS.split(said)]
    done = [one for one in sentences if is_done(one)]
    if len(done) < _MOSTLY or len(done) * _MOSTLY < len(sentences) * _LEAST:
        return
    if len(done) > _MOSTLY and not any(begins_to_bid(one) or ends_in_doing(one) for one in done):
        return  # "If you have plums to spare, this is a way to use them."
    *above, last = recipe.intro
    if last.endswith(":"):  # "Mix:", right above the things
        head = recipe.ingredients[0][0]
        things = ", ".join(thing for group, thing in recipe.ingredients if group == head)
        last = f"{last} {things}."
    heads = {head for head, _ in recipe.ingredients}
    part = heads.pop() if len(heads) == 1 else ""  # "Filling:" heads what follows it too
    below = [(head or part, step) for head, step in recipe.steps]
    recipe.steps = [*(("", said) for said in (*above, last)), *below]
    recipe.intro = []
    mend = "Look whether it does, or tells another recipe."
    recipe.doubt("ingredients", _BEGINS, mend)


def _ask_of_story(recipe: Recipe) -> None:
    """Ask about sentences above a list without a method, which may tell it after all."""
    told = [one for one in recipe.intro if is_sentence(one)]
    if told and not recipe.steps:
        what = f'What stands above the list may tell how it is made: "{told[0][:_SHOWN]}"'
        recipe.doubt("ingredients", what, "If it does, write each thing done as a step.")


def keep_story(recipe: Recipe) -> None:
    """Keep what stands above a list without a method as a note, as a page's story is left out."""
    if recipe.ingredients and recipe.intro and not recipe.steps:
        recipe.notes.append(("Notes", recipe.intro))
        recipe.intro = []
