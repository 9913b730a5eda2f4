"""What a recipe claims to be free from, held against what is in it.

Title, summary, first words, and the card are read; claims.yml holds the words. What is only told to
those who would change it ("for a vegan version ...") claims nothing. Leaves out what is not known:
the rule of unknown foods refuses that.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from stillroom.core.allergens.of_foods import answer_avoid, know_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.problems import Problem

# another version, another dish beside it, or the opposite
_NO_CLAIM = clause_regex(
    r"\b(?:version|option(?:al)?s?|alternative\w*|instead|if you|use|swap\w*|substitut\w*|replac\w*"
    r"|can (?:be|also)|could|to make (?:it|this|them)|not|never|unless|isn['’]t|aren['’]t|neither"
    r"|nor"
    r"|except|serve|served|friends|neighbours?|cousins?|aunts?|daughter|son|even|kitchen|unlike|ask"
    r"|whether|half|almost|nearly|some|other)\b",
    re.IGNORECASE,
)
_WITHOUT = clause_regex(r"\W*(?:contains?|made|with|without|has|no)\b", re.IGNORECASE)
_SHORT = 7  # words of a sentence that says nothing besides
_OF_THE_WHOLE = clause_regex(
    r"\W*(?:(?:it|this|these|they|all|also)(?:['’]s|['’]re| is| are)? )?(?:(?:naturally|totally"
    r"|completely|all|100 ?%) )?(?:non|free|vegan|vegetarian|veggie|\w+[- ]free\b|no\b|contains no"
    r"|suitable|safe|coeliac|celiac|made without|without|alkoholfrei|\w+frei\b|sans|sin|senza)",
    re.IGNORECASE,
)
_SENTENCE = clause_regex(r"\s(?:(?<=[.;!?]\s)\s*|(?<=\n)\n*)")  # a blank begins it: soon seen


@dataclass(frozen=True)
class _Claim:
    name: str
    pattern: re.Pattern[str]
    avoid: tuple[str, ...]
    tags: frozenset[str]
    but: re.Pattern[str] | None
    traces: str


@cache
def _claims() -> tuple[_Claim, ...]:
    rows = read_data("claims.yml", "care")
    return tuple(
        _Claim(
            row["claim"],
            _pattern(row["free"], row["say"]),
            tuple(row.get("avoid", ())),
            frozenset(row.get("tags", ())),
            late_regex(row["but"], re.IGNORECASE) if "but" in row else None,
            row.get("traces", ""),
        )
        for row in rows
    )


def _pattern(free: list[str], say: list[str]) -> re.Pattern[str]:
    what = "|".join(sorted(map(re.escape, free), key=len, reverse=True))
    own = "".join(rf"|\b{re.escape(word)}\b" for word in say)
    others = r"(?:[\w' -]+(?:,| and| or|,? nor) )*"
    return late_regex(
        rf"\b(?:{what})[- ]free\b|\bfree[- ](?:from|of) (?:all |any )?{others}(?:{what})\b"
        rf"|\b(?:contains? no|made without|without any|with no|has no"
        rf"|no added) {others}(?:{what})\b"
        rf"|^\W*no (?:{what})\b{own}",
        re.IGNORECASE,
    )


def contradicted_claim(recipe: Recipe) -> str:
    """Return the first claim that its ingredients contradict, and by what; "" when none is."""
    for sentence in _said(recipe):
        for claim, words in _claims_in(sentence):
            if against := _against(recipe, claim):
                return f"“{words}” is said, and {against} says otherwise"
    return ""


def ask_of_claims(recipe: Recipe) -> tuple[Problem, ...]:
    """Return a question for each allergen that the recipe's page promises no trace of.

    That it is made without it is no such promise. Food Standards Agency, allergen guidance for food
    businesses (from memory): a free-from claim is a guarantee, cross-contact counted in.
    """
    if not recipe.kind.edible or contradicted_claim(recipe):
        return ()
    asked: dict[str, Problem] = {}
    for sentence in _said(recipe):
        for claim, words in _claims_in(sentence):
            if claim.traces and not _WITHOUT.match(words):
                line = _line_of(recipe, sentence)
                what = f"“{words}” promises that there is not a trace of it."
                mend = (
                    "In a home kitchen traces cannot be ruled out, as the page says: write "
                    f'"made without {claim.traces}", if none goes into it.'
                )
                asked.setdefault(claim.name, Problem(recipe.file, line, what, mend))
    return tuple(asked.values())


def _line_of(recipe: Recipe, sentence: str) -> int:
    for step in recipe.method:
        if sentence in step.text:
            return step.line
    return recipe.line_of("summary" if sentence in recipe.summary else "title")


def _claims_in(sentence: str) -> Iterator[tuple[_Claim, str]]:
    """Yield the claims that a sentence makes, each with its words."""
    if _may_claim(sentence):
        for claim in _claims():
            if found := claim.pattern.search(sentence):
                yield claim, found[0].strip()


def _may_claim(sentence: str) -> bool:
    """Say whether a sentence holds a word of any claim: most need no closer look."""
    lowered = sentence.lower()
    return not sentence.isascii() or any(word in lowered for word in _claiming_words())


@cache
def _claiming_words() -> tuple[str, ...]:
    own = (word.lower() for row in read_data("claims.yml", "care") for word in row["say"])
    return ("free", "without", "no ", *own)


def _said(recipe: Recipe) -> list[str]:
    texts = [recipe.title, recipe.summary, recipe.intro, recipe.card.what, recipe.card.use]
    texts += [recipe.card.keep, recipe.makes.things]
    said = [sentence for text in texts for sentence in _SENTENCE.split(text)]
    # "stir in the dairy-free milk" tells of a food; a short sentence alone tells of the whole
    below = (*(step.text for step in recipe.method), *(part.text for part in recipe.sections))
    short = (one for text in below for one in _SENTENCE.split(text))
    said += [one for one in short if len(one.split()) <= _SHORT and _OF_THE_WHOLE.match(one)]
    return [one for one in said if one.strip() and not _NO_CLAIM.search(one)]


def _against(recipe: Recipe, claim: _Claim) -> str:
    """Name the line that contradicts a claim; what its own words say it is counts as that."""
    lines = [
        one.ingredient
        for one in know_recipe(recipe)
        if not (claim.but and claim.but.search(f"{one.ingredient.item} {one.ingredient.note}"))
    ]
    for line in lines:
        alone = recipe.model_copy(update={"ingredients": (line,), "method": ()})
        alone = alone.model_copy(update={"slug": f"{recipe.slug} {line.item} {line.note}"})
        if any(answer_avoid(alone, what) == "contains" for what in claim.avoid):
            return line.item
        tags = {tag for one in know_recipe(alone) for food in one.staples for tag in food.tags}
        if claim.tags & tags:
            return line.item
    return ""
