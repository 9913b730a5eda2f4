"""What the book's own check says of a draft, as far as it reads.

Used where a draft is written, and at the desk, whose boxes say the same while they are open.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from stillroom.core.care.safety import NOT_SAFE
from stillroom.core.checking import find_unsafe
from stillroom.core.larder.shelves import Larder
from stillroom.core.method.heat_elsewhere import bakes_elsewhere
from stillroom.core.method.keeping_said import ask_of_keeping
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import warn_of_dates
from stillroom.core.recipe.model import Recipe
from stillroom.core.recipe.private_words import warn_of_contacts
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.size.absurd import ask_of_size
from stillroom.core.size.ovens import IN_AN_OVEN, SENTENCES
from stillroom.core.unknown_foods import unknown_foods
from stillroom.core.words.problems import Problem, ProblemsFound

STAND_IN: Final = {"title:": "title: It", "kind:": "kind: bake", "makes:": "makes: 1 kg"}
"""The facts that a draft may leave empty, and what stands in for them while the rest is read."""
NOT_A_FOOD: Final = "is not a food that this book knows"
# as the rule says that refuses what may be dangerous
_NOT_KNOWN_IN: Final = re.compile(r"what is in (?P<names>.+?) is not known, so that")
_RULE: Final = re.compile(r"\(rule ([\w-]+);")
_SETTLED: Final = re.compile(r"\s*(?:Nothing sets this rule aside\.|Or set it aside under .*)$")
# how long a kind keeps is the stand-in's own
_FOR_SO_LONG: Final = re.compile(r"kept [^(]{1,40}? at room temperature")
_BY_ITS_KIND: Final = "It may be otherwise once it says what sort of thing it is."
_OF_THE_SHELF: Final = ("preserve", "infusion")
"""Kinds that stand in for one that is not known: what is put up in jars, and what is steeped."""
_PUT_UP_IN: Final = re.compile(
    r"\b(?:jars?|bottles?|lids?|gl[aä]s(?:er)?|flaschen?|deckel|bocaux|bouteilles?|vas(?:i|etti)|barattoli"
    r"|bottigli[ae]|tarros?|frascos?|botes?|botellas?|garrafas?|potten|flessen|burkar|flaskor|glas(?:set|sene|burkar)?"
    r"|flasker?|słoiki?|butelki?|sklenice|lahve)\b",
    re.IGNORECASE,
)
_STATES: Final = ("title", "kind", "makes", "ingredients", "keeps", "author")


def checked(
    rows: list[str], slug: str, settings: BookSettings, larder: Larder | None
) -> list[Problem]:
    """Return what is wrong with the lines of a draft, by line."""
    text = "\n".join(rows) + "\n"
    try:
        read = read_recipe(text, f"{slug}.md", slug, settings.units, larder, settings.language)
        found = [*find_unsafe(read, settings), *warn_of_dates(read), *ask_of_keeping(read)]
        found += [*ask_of_size(read), *warn_of_contacts(read)]
        found += _unknown((read,))
    except ProblemsFound as wrong:
        half = wrong.draft if isinstance(wrong.draft, Recipe) else None
        unsafe = find_unsafe(half, settings) if half else ()
        rest = half or _read_in_spite(rows, wrong.problems, settings, larder)
        found = [*wrong.problems, *unsafe, *(_unknown((rest,)) if rest else ())]
        found += unsafe_on_a_shelf(rows, wrong.problems, settings, larder)
    return sorted(set(found))


def read_anyhow(rows: list[str], settings: BookSettings, larder: Larder | None) -> Recipe | None:
    """Return what reads of the lines of a draft, its missing facts and doubtful lines apart."""
    text = "\n".join(rows) + "\n"
    try:
        return read_recipe(text, "it.md", "it", settings.units, larder, settings.language)
    except ProblemsFound as wrong:
        return _read_in_spite(rows, wrong.problems, settings, larder)


def unsafe_on_a_shelf(
    rows: list[str], problems: Iterable[Problem], settings: BookSettings, larder: Larder | None
) -> list[Problem]:
    """Return what keeps a draft of no kind from being published, if it is kept as most kinds are.

    `problems` are those that were found in its lines. What no kind of the shelf would allow is told
    before a kind is chosen; nothing is told of what is baked, of what neither waits nor is filled
    into anything, nor where the kind is known.
    """
    at = next((at for at, row in enumerate(rows) if row.startswith("kind:")), None)
    if not any(_is_of_the_kind(one, at) for one in problems):
        return []
    added = int(at is None)  # a row for the kind, where the draft has none
    before, behind = (rows[:1], rows[1:]) if at is None else (rows[:at], rows[at + 1 :])
    shifted = [replace(one, line=one.line + added) for one in problems]
    found: list[dict[str, Problem]] = []
    for kind in _OF_THE_SHELF:
        told = [*before, f"kind: {kind}", *behind]
        read = _read_in_spite(told, shifted, settings, larder)
        if read is None or _is_baked(read) or not _may_be_kept(read):
            return []
        refusals = ((_rule_of(one), one) for one in find_unsafe(read, settings))
        found.append({rule: one for rule, one in refusals if rule})
    put_up, steeped = found
    told_by_both = {rule: one for rule, one in put_up.items() if rule in steeped}
    refused = told_by_both or ({**put_up, **steeped} if put_up and steeped else {})
    return [
        replace(
            one,
            line=max(one.line - added, 1),
            what=_FOR_SO_LONG.sub("kept at room temperature", one.what),
            mend=f"{_SETTLED.sub('', one.mend)} {_BY_ITS_KIND}",
        )
        for one in refused.values()
    ]


def _is_of_the_kind(problem: Problem, at: int | None) -> bool:
    return problem.what.startswith('"kind" is missing') or problem.line - 1 == at


def _rule_of(problem: Problem) -> str:
    named = _RULE.search(problem.what) if problem.what.startswith(NOT_SAFE) else None
    return named[1] if named else ""


def _is_baked(recipe: Recipe) -> bool:
    """Whether an oven is spoken of for anything but what it is put up in."""
    sentences = [one for step in recipe.method for one in SENTENCES.split(step.text)]
    return bool(recipe.oven) or any(
        (IN_AN_OVEN.search(one) or bakes_elsewhere(one)) and not _PUT_UP_IN.search(one)
        for one in sentences
    )


def _may_be_kept(recipe: Recipe) -> bool:
    """Whether a method waits or fills what things are kept in; one that is not known may, too."""
    told = " ".join(step.text for step in recipe.method)
    return not told or bool(recipe.waits_of_method or _PUT_UP_IN.search(told))


def _read_in_spite(
    rows: list[str], problems: Iterable[Problem], settings: BookSettings, larder: Larder | None
) -> Recipe | None:
    """Return what reads of a draft when its missing facts and doubtful lines have a stand-in.

    Of its other lines it is then known which foods the book does not know.
    """
    ready = [STAND_IN.get(row, row) for row in rows]
    for problem in problems:
        at = problem.line - 1
        if 0 <= at < len(ready) and ready[at].lstrip().startswith("- "):
            ready[at] = f"{ready[at].partition('-')[0]}- 1 l water"
    text = "\n".join(ready) + "\n"
    try:
        return read_recipe(text, "it.md", "it", settings.units, larder, settings.language)
    except ProblemsFound as wrong:
        return wrong.draft if isinstance(wrong.draft, Recipe) else None


def place_of(problem: Problem, rows: list[str]) -> tuple[int, bool]:
    """Return the place of a problem among the lines, and whether it is of a fact that is stated.

    What a draft asks at such a fact knows more than the check does; both ask the same.
    """
    if found := re.match(r'"(\w+)" is missing', problem.what):
        return next((at for at, row in enumerate(rows) if row.strip() == f"{found[1]}:"), 1), True
    place = min(max(problem.line - 1, 0), len(rows) - 1)
    return place, rows[place].startswith(_STATES)


def is_asked_by_name(what: str, told: str) -> bool:
    """Whether a rule asks what foods are, each of which is asked about already.

    >>> told = '"quandong" is not a food that this book knows: its allergens cannot be checked.'
    >>> rule = "A food the book does not know: what is in {} is not known, so that it is refused."
    >>> [is_asked_by_name(rule.format(one), told) for one in ("quandong", "quandong and emu")]
    [True, False]
    """
    found = _NOT_KNOWN_IN.search(what)
    names = re.split(r",\s|\sand\s", found["names"]) if found else []
    return bool(names) and all(f'"{one}' in told for one in names)


def _unknown(recipes: Iterable[Recipe]) -> list[Problem]:
    found = []
    for food in unknown_foods(recipes):
        lost = "its allergens cannot be checked" if food.edible else "no caution can come of it"
        what = f'"{food.words}" {NOT_A_FOOD}: {lost}.'
        near = " or ".join(f'"{name}"' for name in food.nearest if name != food.words)
        mend = f"If {near} is meant, write that; " if near else ""
        mend += "else say what it is among the book's own foods (larder.yml)."
        found.append(Problem(*food.places[0], what, mend[0].upper() + mend[1:]))
    return found
