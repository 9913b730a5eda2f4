"""What a method puts in though no list names it: "2 litres of water", "1 egg yolk", "the butter".

Of what is only named, with no amount, what somebody avoids and nothing listed brings: an allergen,
spirit, meat. Leaves out salt, pepper and the like: the book's own label counts those unasked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import partial
from typing import Final

from stillroom.bringing.checked import STAND_IN, read_anyhow
from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain
from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.lines.ingredient import read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.method.bare_words import is_avoided
from stillroom.core.method.foods_in_method import comes_of_it, foods_in_method
from stillroom.core.method.listed import Listed, is_word_of
from stillroom.core.method.named import all_named
from stillroom.core.method.not_put_in import is_a_substitute, puts_in
from stillroom.core.method.of_the_list import made_of_the_list
from stillroom.core.method.sentences import split_sentences
from stillroom.core.recipe.model import Recipe as ReadRecipe
from stillroom.core.recipe.settings import BookSettings
from stillroom.core.words.problems import Unreadable

_LIST: Final = re.compile(r"(?:ingredients|materials):$")
_RULE: Final = "---"
_MOST: Final = 8
_MOST_TOLD: Final = 16
"""Of a recipe without a list each food that no line has is named."""
_MEASURED: Final = re.compile(
    r"(?<![\w.,/-])(?P<said>(?:\d+\s+)?[\d½¼¾⅓⅔⅛][\d.,/]*\s*"
    r"(?:k?g|grams?|ml|cl|dl|l|lit(?:re|er)s?|ounces?|oz|lbs?|pounds?|cups?|pints?|quarts?|gallons?|tbsps?|tsps?"
    r"|tablespoons?|teaspoons?|EL|TL)\.?\s+(?:of\s+|d[ei]\s+|d['’]|van\s+)?"
    r"(?!(?:pan|pot|bowl|jug|dish|tin)s?\b)(?P<food>[^\W\d]+(?:\s+[^\W\d]+){0,2}))",
    re.IGNORECASE,
)
_BEHIND: Final = re.compile(
    r"\s+(?:in|into|from|with|to|and|or|over|per|for|at|on|und|et|e|y|en|dans|mit|until|till|while"
    r"|then|when|bis|jusqu|fino|hasta|tot|tills?|til|aż|até)\b"
)
_WORD: Final = re.compile(r"\S+")
_JOINED: Final = re.compile(r"[,;:.]\s|^\W*(?:and|und|et|e|y|og|och|ed|i)\s")
_NEAR: Final = 60
"""Letters before a food in which its amount stands."""
_LONGEST_AMOUNT: Final = 6
"""Words before a food that may be its amount: "the juice of half a large"."""
_FATS: Final = frozenset({"butter", "oil", "fat", "flour", "raw-flour"})
_WORDS: Final = re.compile(r"[^\W\d]{3,}")
_AVOIDED: Final = frozenset({"alcohol", "meat", "fish"})
_A_CHOICE: Final = re.compile(
    r"\b(?:(?:you|one) (?:can|could|may|might)\b|(?:kann|können|könnt) (?:man|ihr|sie)"
    r"|(?:man|du|ihr) (?:kann|kannst|könnt)|tu peux|vous pouvez|on peut|puoi|potete|si può"
    r"|puedes|se puede|podemos|(?:je|u|men) kunt|je kan|(?:man|du) kan|kan man"
    r"|pode|podes|podemos|można)\b",
    re.IGNORECASE,
)
_GREASES: Final = re.compile(
    r"\b(?:greas(?:e|ed|ing)|(?:butter|oil|flour|dust|line)s? (?:an?|the|your|two|2)"
    r"|(?:ein|aus)?ge?fettet\w*|(?:ein|aus)?fetten|graiss\w+|beurr(?:er|ez)|huiler|engras\w+"
    r"|unta[r]?|unte|ungere|ungete|imburr\w+|in(?:ge)?vet\w*"
    r"|smörj\w*|smør\s(?:en|et|formen?)|smurt\w*)\b",
    re.IGNORECASE,
)
# "a syrup", "a fine flour" are what it becomes; "an egg", "a bay leaf" are what goes in
_COUNTED_WHOLE: Final = frozenset(
    {"egg", "pasteurised-egg", "fruit", "citrus", "vegetable", "low-acid-vegetable", "herb"}
    | {"fresh-herb", "spice", "fish", "meat", "citrus-peel"}
)


def asked_beside(
    rows: list[str], recipe: Recipe, settings: BookSettings, larder: Larder | None
) -> Iterator[tuple[int, str, str]]:
    """Yield what is asked about such foods of a draft: at which of its rows, what, how to mend it.

    Of a dry mix those that whoever bakes it measures are named too.
    """
    facts = max(rows.index(_RULE, 1) - 1, 0) if _RULE in rows[1:] else 0
    place = next((at for at, row in enumerate(rows) if _LIST.match(row)), facts)
    eaten = [
        STAND_IN["kind:"] if row.startswith("kind:") and row != "kind: craft" else row
        for row in rows
    ]
    mend = "Add it to the list, if it goes into what is made."
    read = read_anyhow(_with_a_list(eaten), settings, larder)
    said = (*(f'"{one}"' for one in recipe.unread[:_MOST]), *measured_beside(recipe, read))
    if beside := [one for one in said if not _is_what_is_made(one, recipe)]:
        yield place, f"The method measures what the list does not have: {', '.join(beside)}.", mend
    own = read if eaten == rows else read_anyhow(_with_a_list(rows), settings, larder)
    told = " ".join(beside).casefold()
    if named := [one for one in _named_beside(recipe, own) if one.casefold() not in told]:
        words = ", ".join(f'"{one}"' for one in named)
        yield place, f"The method puts in what the list does not have: {words}.", mend


def _with_a_list(rows: list[str]) -> list[str]:
    """Return the rows of a draft, with water for a list where it has none."""
    if any(map(_LIST.match, rows)):
        return rows
    end = rows.index(_RULE, 1) if _RULE in rows[1:] else len(rows)
    return [*rows[:end], "ingredients:", "  - 1 l water", *rows[end:]]


def _is_what_is_made(said: str, recipe: Recipe) -> bool:
    """Whether a method counts what comes of it: "Cut 10 pies" of a recipe that makes ten."""
    made = plain(recipe.makes).split()
    named = plain(said).split()
    return bool(made and named) and made[-1] == named[-1]


def measured_beside(recipe: Recipe, read: ReadRecipe | None = None) -> tuple[str, ...]:
    """Return the measured and counted foods of a method, as it says them, that no list names.

    `read` is the recipe as the book reads it: without it only what has a unit is found.

    >>> recipe = Recipe(ingredients=[("", "3 lb honey")], steps=[("", "Add to 2 l of water.")])
    >>> measured_beside(recipe)
    ('"2 l of water"',)
    """
    if not recipe.ingredients and not recipe.told:
        return ()
    listed = {food.name for _, row in recipe.ingredients for food in staples_named(_item(row))}
    rows = _Rows.of(recipe)
    found: dict[str, str] = {}
    for _, step in recipe.steps:
        for one in _MEASURED.finditer(step):
            words = _BEHIND.split(one["food"])[0].split()
            for size in range(len(words), 0, -1):
                food = find_staple(" ".join(words[:size]))
                if food is not None:
                    named = " ".join(words[:size])
                    said = one["said"][: one["said"].index(named) + len(named)]
                    # "3 cups of vinegar" of a list's cider vinegar; jars are what it is put in
                    other = food.name not in listed and not rows.hold(named, food)
                    other = other and not comes_of_it(step[: one.start()])
                    if other and not food.tags & {"craft"}:
                        found.setdefault(food.name, f'"{said}"')
                    break
    for food, named, said in _counted(read) if read else ():
        if food.name not in listed and not rows.hold(named, food):
            found.setdefault(food.name, f'"{_whole(said, recipe)}"')
    return tuple(found.values())[:_MOST]


@dataclass(frozen=True)
class _Rows:
    """The words of each row of a paper's list, its heads among them, and the foods it names."""

    words: tuple[frozenset[str], ...]
    foods: tuple[Staple, ...]

    @classmethod
    def of(cls, recipe: Recipe) -> _Rows:
        """Gather the words, read or not."""
        texts = {text.lower() for row in recipe.ingredients for text in row if text}
        foods = tuple(one for _, row in recipe.ingredients for one in staples_named(_item(row)))
        return cls(tuple(frozenset(_WORDS.findall(text)) for text in texts), foods)

    def hold(self, named: str, food: Staple) -> bool:
        """Whether a row holds a food by its words.

        The last is enough, but for what somebody avoids: condensed milk is no milk of the list.
        """
        words = _WORDS.findall(named.lower()) or [named.lower()]
        if len(words) > 1 and is_avoided(food) and not self._has_its_like(food):
            return any(all(map(partial(_stands_in, row, food), words)) for row in self.words)
        return any(_stands_in(row, food, words[-1]) for row in self.words)

    def _has_its_like(self, food: Staple) -> bool:
        """Whether a listed food differs in its name alone: parmesan, Parmigiano Reggiano."""
        told = (food.tags, food.allergens)
        return any((own.tags, own.allergens) == told for own in self.foods)


def _stands_in(row: frozenset[str], food: Staple, word: str) -> bool:
    return any(is_word_of(word, own, food) for own in row)


def _named_beside(recipe: Recipe, read: ReadRecipe | None) -> list[str]:
    """Return the words for what a method only names, that brings what nothing listed does."""
    if read is None or not (recipe.ingredients or recipe.told):
        return []
    listed = Listed.of(read.ingredients)
    allergens = {one for own in listed.foods for one in own.allergens}
    kept = {tag for own in listed.foods for tag in own.tags & _AVOIDED}
    rows = _Rows.of(recipe)
    found: dict[str, str] = {}
    for one in foods_in_method(read):
        food = food_of(one.ingredient).food
        if (
            food is None
            or food.tags & {"craft", "water"}
            or _is_the_title(one.ingredient.item, recipe)
        ):
            continue
        clause, where = one.clause, all_named(one.clause, read)
        # nobody asks about the spirit of a few drops of vanilla extract
        avoided = frozenset() if "flavouring" in food.tags else food.tags & _AVOIDED
        new = set(food.allergens) - allergens or avoided - kept
        # the butter of a tin is no further one where milk is told anyway
        goes_in = (food.allergens and puts_in(clause)) or recipe.told
        if not new and not (goes_in and not _GREASES.search(clause)):
            continue
        said = next((clause[a:b] for a, b, other in where if other == food), one.ingredient.item)
        if not rows.hold(said, food) and not _is_a_choice(_WORDS.findall(said.lower()), recipe):
            found.setdefault(food.name, said)
    return list(found.values())[: _MOST_TOLD if recipe.told else _MOST]


def _is_the_title(item: str, recipe: Recipe) -> bool:
    """Whether a food is the thing made, by its whole name: "Put the rhubarb gin in the dark"."""
    return bool(item.split()[1:]) and plain(item) in plain(recipe.title)


def _is_a_choice(words: list[str], recipe: Recipe) -> bool:
    """Whether a food is named only where a cook may do otherwise: "you can also add almonds".

    The book counts it all the same, and says so: nobody needs to be asked.
    """
    sentences = (one for _, step in recipe.steps for one in split_sentences(step))
    told = [one for one in sentences if all(word[:-1] in one.lower() for word in words)]
    return bool(told) and all(_A_CHOICE.search(one) or is_a_substitute(one) for one in told)


def _whole(said: str, recipe: Recipe) -> str:
    """Return words with the whole of the number that they begin with: "0,5 tsk", not "5 tsk"."""
    pattern = re.compile(rf"(?<![\d.,/])[\d.,/]+{re.escape(said)}")
    found = filter(None, (pattern.search(step) for _, step in recipe.steps))
    return next((one[0] for one in found), said) if said[0].isdigit() else said


def _counted(read: ReadRecipe) -> Iterator[tuple[Staple, str, str]]:
    """Yield what the method alone brings in with a number or a portion, its name, and all of it."""
    listed = Listed.of(read.ingredients)
    for one in foods_in_method(read):
        food = food_of(one.ingredient).food
        if food is None or food.tags & {"craft", "water"}:
            continue
        begun = 0
        for start, end, named in all_named(one.clause, read):
            # of "an egg and 3 egg whites" both are told
            wanted = named.name == food.name or "egg" in named.tags & food.tags
            # the yolks of its eggs, the zest of its lemons
            own = listed.tells_all_of(named) or made_of_the_list(named, listed)
            greases = named.tags & _FATS and _GREASES.search(one.clause)
            if wanted and not (own or greases):
                said = _with_its_amount(one.clause, begun, (start, end), read)
                yield from [(named, one.clause[start:end], said)] if said else []
            if "craft" not in named.tags:
                begun = end


def _with_its_amount(clause: str, begun: int, at: tuple[int, int], read: ReadRecipe) -> str:
    """Return a food of a clause with the amount before it, as a line of a list says it; or "".

    Words before `begun` are another food's.
    """
    near = max(begun, at[0] - _NEAR)
    before = _JOINED.split(clause[near : at[0]])[-1]
    words = list(_WORD.finditer(before))[-_LONGEST_AMOUNT:]
    for word in words:
        said = before[word.start() :] + clause[slice(*at)]
        amount, food = _amount_of(said, read)
        if food is None or amount is None:
            continue
        one = amount.low == 1 and not amount.unit and not amount.noun
        if food.tags & _COUNTED_WHOLE or not one or said[0].isdigit():
            return said
    return ""


def _amount_of(said: str, read: ReadRecipe) -> tuple[Amount | None, Staple | None]:
    """Return the amount and the food of words read as a line, None for what it has not."""
    units: System = read.units or "metric"
    try:
        line = find_foods(read_ingredient(said, units, read.larder.language), read.larder)
    except Unreadable:
        return None, None
    amount = line.amount if isinstance(line.amount, Amount) else None
    return amount, food_of(line).food


def _item(row: str) -> str:
    try:
        return read_line(row).item
    except Unreadable:
        return row
