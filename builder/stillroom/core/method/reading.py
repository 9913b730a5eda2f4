"""What the words of a method name: what has an amount, food by food, and what the list holds.

Leaves out which of it counts as food: foods_in_method.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache, lru_cache
from itertools import pairwise

from stillroom.core.amounts.quantities import Unmeasured
from stillroom.core.amounts.units import System
from stillroom.core.larder.index import load_index
from stillroom.core.larder.matching import LONGEST_NAME
from stillroom.core.larder.shelves import (
    Larder,
    languages_elsewhere,
    names_elsewhere,
    names_in,
    staple_named,
)
from stillroom.core.larder.staple import Staple
from stillroom.core.larder.words import Word, words_of
from stillroom.core.lines.ingredient import Ingredient, read_ingredient
from stillroom.core.lines.ingredient_food import find_foods, food_of
from stillroom.core.method.tongue import speaks_no_english
from stillroom.core.method.words import is_a_vessel, method_words, no_food_in, open_words
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.problems import Unreadable

_MEASURED = clause_regex(
    r"(?<![\w.,/°])(?:\d+ \d/\d|\d+(?:[.,/]\d+)?(?: ?[½¼¾⅓⅔])?|[½¼¾⅓⅔])"
    r"(?: ?(?P<unit>kg|mg|g|ml|cl|dl|l|litres?|liters?|grams?|oz|ounces?|lbs?|pounds?|tsp"
    r"|teaspoons?|tbsp|tablespoons?|cups?|c\.|fl oz|pints?|quarts?|gallons?)(?![\w-])"
    r"| ?(?:m|cm|metres?|meters?)(?![\w-]))?\s+"
)
# "2,5 liter water" in a method of any language; "1,125" may be a thousand
_DECIMAL_COMMA = late_regex(r"(?<=\d),(?=\d{1,2}(?!\d))")
_FIGURE = clause_regex(r"[\d½¼¾⅓⅔]")  # most clauses have none: that is seen sooner
_STOP = clause_regex(
    r"\s(?:and|with|into|in|to|for|at|on|onto|until|over|from|then|per|than|by|as|while|when"
    r"|is|are|has|have|if|after|before|between|which|that|each|through"
    # and elsewhere: "2 uova e il burro"
    r"|(?-i:und|et|ed|e|y|en|och|mit|avec|con|met|med|oder|ou|o"
    # "15 g pour le glaçage" are of what was named before
    r"|pour|für|zum|zur|per|para|voor|till))\b",
    re.IGNORECASE,
)
# "20 à 25 minutes l'eau bouillante" are no 20 of anything, nor 25
_A_TIME = late_regex(
    r"(?:(?:à|a|bis|to|tot|til|till|až|do|–|-)\s+\d+\s+)?"
    r"(?:min(?:ut\w*)?|sec(?:ond\w*)?s?|sek\w*|hours?|heures?|stunden?|std|h|horas?|or[ae]|uur|uren"
    r"|tim(?:mar|er|e)?|days?|jours?|tage?n?|dag(?:e|en|ar)?|giorn[io]|d[ií]as?"
    r"|weeks?|wochen?|semaines?)\b",
    re.IGNORECASE,
)
_OF = late_regex(r"^(?:of|av|af)\s+", re.IGNORECASE)
# "175 g of the chocolate", "75 g de la farine" are of what was named before
_OF_THE = late_regex(
    r"(?:the|du|des|della?|dello|dei|degli|delle|do|da|dos|das|van (?:de|het)|von (?:de[rmn])"
    r"|de (?:la|los|las)|de l['’]\S+|av (?:den|det)|af (?:den|det))\b",
    re.IGNORECASE,
)
_GAP = late_regex(r"[\s\-–’']*")
_MOST_WORDS = 5
# what a case or an article adds at the end, and the words that it may stand on
_ENDED: Mapping[str, re.Pattern[str]] = {
    "de": clause_regex(r"\b[A-ZÄÖÜ][^\W\d_]+?(?:e|el|er)n\b"),
    "sv": clause_regex(r"\b[^\W\d_]{3,}(?:n|t|na)\b"),
    "da": clause_regex(r"\b[^\W\d_]{2,}(?:n|t|ne)\b"),
    "nb": clause_regex(r"\b[^\W\d_]{2,}(?:n|t|ne|a)\b"),
}
_ENDINGS: Mapping[str, tuple[str, ...]] = {
    "de": ("n",),
    "sv": ("erna", "arna", "orna", "en", "et", "na", "n", "t"),
    "da": ("rne", "erne", "ene", "ne", "en", "et", "n", "t"),
    "nb": ("ene", "ne", "en", "et", "n", "t", "a"),
}
_DOUBLED = ("da", "nb")
_FARTHEST = 240
"""Letters behind an amount that are looked at: five words are never as long."""
_MOST_IDLE = 200
"""Amounts of nothing one after the other, behind which a clause is no cook's."""
# behind a known word these make another food of it: "honey powder", "cinnamon leaf essential oil"
_ANOTHER_FOOD = frozenset(
    {"powder", "powdered", "essential", "extract", "essence", "drops", "leaf"}
)
_TAGS_OF_JUICE = frozenset(
    {"fruit", "high-acid-fruit", "low-acid-fruit", "borderline-acid", "citrus", "vegetable"}
)
_AS_WARM_AS = clause_regex(
    r"\b(?:milk|blood|new[- ]milk)[- ](?:warm|heat|temperature|warmth)\b"
    r"|\b(?:warmth|heat|temperature) of (?:new |fresh |your )?(?:milk|blood)\b"
    r"|\b(?:luke ?warm|tepid)\W{1,3}(?:milk|blood)\W{0,2}(?= (?:temperature|heat|warm))"
    r"|\b(?:thee|tee|te)[- ]?(?:ei|eier|eitje|ägg|æg)\b",
    re.IGNORECASE,
)


def measured_in(clause: str, recipe: Recipe) -> Iterator[tuple[int, int, Ingredient]]:
    """Yield what has an amount before it; what is known of its longest words, else unknown."""
    idle = 0
    for found in _MEASURED.finditer(clause) if _FIGURE.search(clause) else ():
        near = clause[found.end() - 1 : found.end() + _FARTHEST]
        stop = _STOP.search(near)
        phrase = near[1 : max(stop.start(), 1) if stop else len(near)]
        words = _OF.sub("", phrase).split()[:_MOST_WORDS]
        if not words or (not found["unit"] and _A_TIME.match(phrase)):
            continue
        amount = clause[found.start() : found.end()]
        if _counts_vessels(words, found["unit"] or ""):
            continue
        one = _longest_known(amount, tuple(words), recipe.units or "metric", recipe.larder)
        idle = 0 if one else idle + 1
        if idle > _MOST_IDLE:
            return
        if one is None and (not found["unit"] or _is_a_measured_thing(words)):
            continue
        if one is None and _tells_how_much(amount, words, recipe):
            continue
        one = one or _as_line(amount, words[:2], recipe.units or "metric", recipe.larder)
        yield found.start(), found.end() + len(phrase), one


def _counts_vessels(words: list[str], unit: str) -> bool:
    """Whether a vessel called after what it is for is counted: "6 honey jars", no cup of it.

    "6 peanut butter cups" are a sweet of that name, and "1 large tin tomatoes" is its fill.
    Of "200 ml jam jars" there are several, but "400 g coconut milk tin" holds what is put in.
    """
    for size, word in enumerate(words[1:], 1):
        if is_a_vessel(word) and not (unit and word.rstrip(".,;:")[-1:] != "s"):
            forms = [one.form for one in words_of(" ".join(words[: size + 1]))]
            names = load_index()["names"]
            before = (" ".join(forms[first:-1]) for first in range(len(forms) - 1))
            return " ".join(forms) not in names and any(food in names for food in before)
    return False


@lru_cache(maxsize=4096)  # a method that says the same a thousand times is asked once
def _longest_known(
    amount: str, words: tuple[str, ...], system: System, larder: Larder
) -> Ingredient | None:
    """Return the line of the most words that is known; "1 tin sardines" is more than a tin."""
    for size in range(len(words), 0, -1):
        one = _as_line(amount, words[:size], system, larder)
        reading = food_of(one)
        if reading.known and size < len(words) and words[size].casefold() in _ANOTHER_FOOD:
            return _as_line(amount, words, system, larder)
        a_tin = size < len(words) and reading.food and "craft" in reading.food.tags
        if reading.known and not a_tin:
            return one
    return None


def _as_line(amount: str, words: Sequence[str], system: System, larder: Larder) -> Ingredient:
    try:
        one = read_ingredient(_DECIMAL_COMMA.sub(".", amount) + " ".join(words), system)
    except Unreadable:
        one = Ingredient(" ".join(words), Unmeasured("as needed"))
    return find_foods(one, larder)


def _is_a_measured_thing(words: list[str]) -> bool:
    """Whether what is measured is a jar, a span of time or what already lies in the pan."""
    plain = {word.casefold().strip("-'’") for word in words[:3]}
    listed = _OF_THE.match(" ".join(words[:2]))
    return bool(plain & method_words("measured_things")) or bool(listed)


def _tells_how_much(amount: str, words: list[str], recipe: Recipe) -> bool:
    """Whether words behind an amount say what becomes of it: "auf 500 ml auffüllen", "1 l left".

    What stands with them must be a known food, or the juice of fruit of the list: "800 ml juice".
    """
    said = [word.casefold() for word in _to_its_end(words)]
    glue, tells = method_words("between"), method_words("tells_how_much")
    left = [word for word in said if word not in glue and word not in tells]
    juice = bool(left) and left[0] in method_words("bare_juice")
    # "1 pint liquor for each quart": the whiskey of the list, and something unknown without one
    spirit = bool(left) and left[0] in method_words("bare_spirit") and "alcohol" in _tags_of(recipe)
    left = left[1:] if spirit or (juice and _TAGS_OF_JUICE & _tags_of(recipe)) else left
    if not left:
        return juice or spirit or any(word in tells for word in said)
    known = _longest_known(amount, tuple(left), recipe.units or "metric", recipe.larder)
    return any(word in tells for word in said) and known is not None


def _to_its_end(words: list[str]) -> Iterator[str]:
    for word in words:
        yield word.strip(".,;:()!")
        if word[-1] in ".,;:)!":
            return


def _tags_of(recipe: Recipe) -> frozenset[str]:
    found = (food_of(one).food for one in recipe.ingredients)
    return frozenset(tag for food in found if food for tag in food.tags)


def named_in(clause: str, larder: Larder, tongue: str = "") -> Iterator[tuple[int, int, Staple]]:
    """Yield every food named, the longest name at each place.

    `tongue` is the method's language where it is not the book's.
    """
    language = tongue or larder.language.partition("_")[0]
    # "milk-warm" is as warm as it comes from the cow, and a "thee-ei" holds tea; what stands
    # there keeps its place
    words = words_of(_AS_WARM_AS.sub(lambda found: " " * len(found[0]), clause))
    sizes, own, place = _sizes_of_names(larder), _own_names(larder), 0
    while place < len(words):
        for size in _largest_first(sizes.get(words[place].form, 0)):
            run = words[place : place + size]
            food = _food_of_run(run, own, language) if len(run) == size else None
            # "salt the fish" is no salt fish
            word = clause[run[0].start : run[0].end]
            if food and size == 1 and _is_another_word(word, language):
                food = None
            if food and _stand_together(clause, run):
                yield run[0].start, run[-1].end, food
                place += size
                break
        else:
            place += 1


def tongue_of_foods(method: str, items: Iterable[str], own: str = "") -> str:
    """Return the language in which most of a list's foods are named, "" for English or none.

    Only where no word of the method is one of English's smallest. The book's `own` language, where
    it has no table, is told by its everyday names: Danish "basilikum" is German too.

    >>> tongue_of_foods("Milch mit Zucker aufkochen.", ["Zucker"])
    'de'
    >>> tongue_of_foods("Mix it with the milk.", ["Zucker"])
    ''
    >>> tongue_of_foods("Blend det hele.", ["basilikum", "olivenolie"], "da")
    ''
    """
    if not speaks_no_english(method):
        return ""
    index = load_index()
    tables = index["foreign"]
    if own and own not in tables:
        tables = tables | {"": names_elsewhere(own)}
    told: dict[str, int] = {}
    for item in items:
        form = " ".join(one.form for one in words_of(item))
        for language in (one for one, names in tables.items() if form in names):
            told[language] = told.get(language, 0) + (form not in index["names"])
    most = max(told.values(), default=0)
    best = [language for language, count in told.items() if count == most]
    return best[0] if most and len(best) == 1 else ""


def in_its_plain_case(clause: str, larder: Larder, tongue: str = "") -> str:
    """Return a German or northern clause with its foods as a list writes them.

    "2 Eiern", "den Nüssen", "grädden", "mælken": only words that no food has, and that without
    their ending are one.
    """
    language = tongue or larder.language.partition("_")[0]
    if language not in _ENDED:
        return clause
    known = names_in(language)

    def plain(found: re.Match[str]) -> str:
        if _form(found[0]) in known or _is_another_word(found[0], language):
            return found[0]  # Norwegian "laken" is brine, and no "laks"
        bare = [found[0].removesuffix(end) for end in _ENDINGS[language] if found[0].endswith(end)]
        if language in _DOUBLED:
            # "smørret" and "æggene" double the letter; "nøttene" are "nøtter"
            bare += [word[:-1] for word in bare if word[-1:] == word[-2:-1]]
            bare += [f"{word}er" for word in bare]
        return next((word for word in bare if _form(word) in known), found[0])

    return _ENDED[language].sub(plain, clause)


def _form(word: str) -> str:
    return " ".join(one.form for one in words_of(word))


def _is_another_word(word: str, language: str) -> bool:
    """Whether a word of a language only looks like a food: French "laver", "moule"."""
    return word.casefold() in no_food_in(language)


def _stand_together(clause: str, run: tuple[Word, ...]) -> bool:
    gaps = (clause[one.end : two.start] for one, two in pairwise(run))
    return all(gap in (" ", "-") or _GAP.fullmatch(gap) for gap in gaps)


def _food_of_run(run: tuple[Word, ...], own: Mapping[str, Staple], language: str) -> Staple | None:
    form = " ".join(word.form for word in run)
    if form in own:
        return own[form]
    index = load_index()
    # Swedish "citron" is a lemon
    own_names = names_in(language)
    name = own_names.get(form) or index["names"].get(form)
    name = name or _open_words(language).get(form)
    return staple_named(name) if name else None


@cache
def _open_words(language: str) -> Mapping[str, str]:
    return {_form(word): food for word, food in open_words(language).items()}


@lru_cache(maxsize=16)
def _own_names(larder: Larder) -> dict[str, Staple]:
    return {name: food for food in larder.own for name in (food.name, *food.also)}


@lru_cache(maxsize=16)
def _sizes_of_names(larder: Larder) -> Mapping[str, int]:
    """Return the first word of every name with the sizes of such names, each as a bit.

    An own food's other names are sought as far as its own name is long.
    """
    own = _own_names(larder)
    if not own:
        return _known_sizes()
    longest_own = max(max(len(food.name.split()), 1) for food in larder.own)
    sizes = dict(_known_sizes())
    for name in own:
        first, *rest = name.split(" ")
        known = sizes.get(first, 0)
        if len(rest) < max(longest_own, known.bit_length() - 1):
            sizes[first] = known | 2 << len(rest)
    return sizes


@cache
def _known_sizes() -> Mapping[str, int]:
    """Return the first word of every name that all books know, with how many words they have."""
    index = load_index()
    sizes: dict[str, int] = {}
    elsewhere = [form for table in index["foreign"].values() for form in table]
    elsewhere += [form for language in index["foreign"] for form in _open_words(language)]
    elsewhere += [form for language in languages_elsewhere() for form in names_elsewhere(language)]
    for form in (*index["names"], *elsewhere):
        first, _, rest = form.partition(" ")
        sizes[first] = sizes.get(first, 0) | 1 << (rest.count(" ") + 2 if rest else 1)
    return sizes


@cache
def _largest_first(sizes: int) -> tuple[int, ...]:
    return tuple(size for size in range(LONGEST_NAME, 0, -1) if sizes >> size & 1)
