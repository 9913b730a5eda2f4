"""Amounts that stand where a list does not: outside it, or behind its foods for another size.

Nothing measured is passed over in silence: what could be taken in is, the rest is asked about.
Leaves out what a method measures in its sentences: measured.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.heads import SENTENCE_ENDS, plain, words
from stillroom.bringing.known_work import is_plainly_work
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.makes_taken import take_food
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.one_line import foods_named, names_a_food
from stillroom.bringing.prose import measured_in_prose
from stillroom.bringing.sorting import (
    begins_with_amount,
    is_ingredient,
    is_passed,
    is_sentence,
    is_told,
)
from stillroom.core.amounts.quantities import Amount
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.method.keeping_said import may_say_keeping
from stillroom.core.words.problems import Unreadable

_SHOWN: Final = 80
# "3 lbs of beets - Cut the leaves off": two things said
_APART: Final = re.compile(r"(?<=[.!?…])\s+|\s[-–—]\s")
_LASTS: Final = re.compile(
    r"\d\s?(?:min\w*|hours?|hrs?|std|stunden?|h|heures?|or[ae]|horas?|minuut|uur|timm\w+|tim|godz\w*)\b",
    re.IGNORECASE,
)
# how praise begins, and what is done with it when it is ready
_NO_WORK: Final = frozenset(
    {"cool", "dry", "when", "let", "take", "serve", "eat", "drink", "keep", "use", "give", "store"}
    | {
        "servir",
        "servez",
        "servire",
        "servite",
        "servera",
        "serveer",
        "allow",
        "try",
        "start",
        "unsere",
        "andere",
        "mehrere",
    }
)
# "Plocka 30", "Take 4", "Man nehme zwei", "Raccogliere circa 30"
_TAKES: Final = re.compile(
    r"(?P<verb>[^\W\d]+(?:\s[^\W\d]+)?)\s+(?:about\s+|around\s+|circa\s+|ca\.?\s+|etwa\s+|environ\s+|unos?\s+|ungefär\s+|omkring\s+)?"
    r"(?P<number>[\d½¼¾]+|an?|one|two|three|four|five|six|ten|twelve|twenty|zwei|drei|zehn|zwanzig|deux|trois|dix|vingt|due|tre|dieci|venti"
    r"|dos|tres|diez|veinte|twee|drie|tien|twintig|två|tio|tjugo|dwa|trzy)(?=[\s-])",
    re.IGNORECASE,
)
_A_TIME: Final = re.compile(
    r"[\s\d–-]*(?:min|sec|sek|hours?|hrs?|std|stunde|heure|or[ae]\b|hora|uur|tim|godz|days?|tage?|jours?|giorn|d[ií]as?|dag|dni|weeks?|woche|semain|settiman|semana"
    r"|week|vecka|veckor|uger|couple|little|few|look|good|bit|break|moment|walk|trip|photo|picture|step)",
    re.IGNORECASE,
)
_A_VESSEL: Final = re.compile(
    r"(?:\s+[^\W\d]+){0,3}?\s+(?:jars?|bottles?|pans?|pots?|bowls?|bags?|tins?|gläser|flaschen|bocaux|bouteilles|vasetti|bottiglie|tarros|botellas|potten"
    r"|flessen|burkar|flaskor|glas|flasker)\b",
    re.IGNORECASE,
)
_MOST_TOLD: Final = 4
_LEAST_OF_ANOTHER: Final = 2
_MOST_ABOVE: Final = 6
_MOST_OF_A_FOOD: Final = 4
_LONGEST: Final = 14
_LEAST_LINES: Final = 3
_STARTS: Final = re.compile(
    r"\s*(?:[\d½¼¾⅓⅔⅛]|(?:an?|one|two|three|half|ein|une?|un[ao]?|een)\s)", re.I
)
# "1 1/3 cup evaporated milk  2/3": the number of a second size, with no word behind it
_SECOND: Final = re.compile(
    r"(?P<line>[\d½¼¾⅓⅔].*[^\W\d].*?)\s+(?P<other>(?:\d{1,2}\s+)?(?:\d/\d|[½¼¾⅓⅔])|\d{1,2})"
)


def ask_of_left_out(recipe: Recipe) -> None:
    """Ask about lines that measure a food and stand above the list or among the steps."""
    lines = (*recipe.intro, *(step for _, step in recipe.steps))
    left = [line for line in lines if _measures(line)]
    if not left or not recipe.ingredients:
        return
    said = ", ".join(f'"{line}"' for line in left[:_MOST_TOLD])
    more = ", …" if len(left) > _MOST_TOLD else ""
    what = f"Amounts stand outside the list: {said}{more}."
    recipe.doubt("ingredients", what, "What goes in belongs in the list, a line for each.")


def ask_of_another_above(recipe: Recipe) -> None:
    """Ask about sentences above a list that measure things: another recipe may be told there."""
    told = measured_in_prose(recipe.intro)
    if len(told) < _LEAST_OF_ANOTHER:
        if not _ask_of_food_above(recipe):
            _ask_of_work_above(recipe)
        return
    what = f"What stands above the list measures things too: {', '.join(told[:_MOST_TOLD])}."
    recipe.doubt("title", what, "If another recipe is told there, bring it in by itself.")


def _ask_of_food_above(recipe: Recipe) -> bool:
    """Ask about a food that a sentence above the list takes and the list does not have.

    "Pick 30 heads of elderflower on a dry day.", "Take 4 lb of damsons and stew them."
    """
    listed = frozenset(food for _, line in recipe.ingredients for food in foods_named(line))
    sentences = (one for said in recipe.intro for one in SENTENCE_ENDS.split(said))
    taken = (one for one in sentences if _takes_so_much(one))
    missing = (one for one in taken if not foods_named(_first_clause(one)) & listed)
    first = next(missing, "")
    if first and recipe.ingredients:
        what = (
            f'What stands above the list takes something that it does not have: "{first[:_SHOWN]}"'
        )
        recipe.doubt("ingredients", what, "If it goes in, write it in the list.")
    return bool(first)


def _takes_so_much(sentence: str) -> bool:
    """Whether a sentence bids to take so much of something: "Pick 30 elderflowers", no minutes.

    >>> _takes_so_much("Plocka 30 klasar fläder."), _takes_so_much("Take 4 lb of damsons.")
    (True, True)
    >>> _takes_so_much("Use an electric mixer."), _takes_so_much("Stew a pound of damsons.")
    (False, True)
    >>> _takes_so_much("Take 30 minutes."), _takes_so_much("Pick ripe plums on a dry day.")
    (False, False)
    """
    said = _TAKES.match(sentence)
    first = plain(said["verb"]).split(" ") if said else []
    if said is None or not first:
        return False
    behind = sentence[said.end() :]
    if _A_TIME.match(behind) or _A_VESSEL.match(behind):
        return False
    picked = not words("picked").isdisjoint({" ".join(first), first[-1]})
    if picked and said["number"][0].isdigit():
        return True  # "30 klasar", whatever they are
    return (picked or is_plainly_work(sentence)) and bool(foods_named(_first_clause(behind)))


def _first_clause(sentence: str) -> str:
    return re.split(r"[,;(]|\s(?:and|und|et|e|y|en|och|og|i)\s", sentence, maxsplit=1)[0]


def _ask_of_work_above(recipe: Recipe) -> None:
    """Ask about what is done above a list: "Cook until tender", where the method begins below."""
    told = (one for said in recipe.intro for one in _APART.split(said) if _is_work(one))
    if first := next(told, ""):
        what = f'What is done stands above the list, out of the method: "{first[:_SHOWN]}"'
        recipe.doubt("ingredients", what, "If it is a step, write it into the method.")


def _is_work(sentence: str) -> bool:
    """Whether a sentence bids something done to what goes in, and praises or serves nothing.

    >>> _is_work("Cook until tender, cool under water."), _is_work("Lavez et cuisez 1 heure.")
    (True, True)
    >>> _is_work("Cool, crisp and good with the cheese."), _is_work("Serve it within 2 hours.")
    (False, False)
    >>> _is_work("Cuocere le prugne per 20 minuti."), _is_work("Die Quitten 40 Minuten kochen.")
    (True, True)
    """
    first = plain(sentence).split(" ")[0]
    if first in _NO_WORK or may_say_keeping(sentence) or sentence.rstrip().endswith("?"):
        return False
    return bool(_LASTS.search(sentence) and is_plainly_work(sentence)) or is_told(sentence)


_NO_MEASURE: Final = re.compile(
    r"(?:one|two|three|four|five|six|half|one[- ]half|one[- ]quarter|\d)\s+of\s+"
    r"(?!an?\b|the\b)[^\W\d].{2,40}",
    re.IGNORECASE,
)


def ask_of_no_measure(recipe: Recipe) -> None:
    """Ask about things whose measure stands at another alone: "one of cinnamon"."""
    if found := [line for _, line in recipe.ingredients if _NO_MEASURE.fullmatch(line)]:
        said = ", ".join(f'"{line}"' for line in found[:_MOST_TOLD])
        what = f"It does not say of what measure: {said}. That of the thing before may be meant."
        recipe.doubt("ingredients", what, 'Write it there: "1 tsp cinnamon".')


def tell_dropped(recipes: Sequence[Recipe], rows: Sequence[Row]) -> None:
    """Say that sentences above the first of several recipes are left out, and repeat none."""
    if any(is_sentence(row.text) and not is_passed(row.text) for row in rows):
        what = "What stands above the first of several recipes is left out: it may be of them all."
        recipes[0].doubt("title", what, "If a word of it is of one of them, write it there.")


def _measures(line: str) -> bool:
    if len(line.split()) > _LONGEST or not _STARTS.match(line) or is_only_makes(line):
        return False
    try:  # "1 egg (optional) — some leave it out to keep the crumb short."
        read = read_line(line)
    except Unreadable:
        return is_ingredient(line) and bool(staples_named(line))
    measured = isinstance(read.amount, Amount) and bool(read.amount.unit or read.amount.noun)
    if not measured and line[:1].isalpha() and says_its_kind(line):
        return False  # "A good jam for toast." names what is made
    if is_ingredient(line):
        return bool(staples_named(line))
    return isinstance(read.amount, Amount) and find_staple(read.item) is not None


# "24 bars Cooking oil spray": a food of the list that a page's machine set behind how much is made
_FOOD_BEHIND: Final = re.compile(
    r"(?P<made>(?:about\s+)?\d[\d\s./½¼¾–-]*(?:\s*[a-zà-ÿ]+){1,4})[\s.,;]+(?P<food>[A-ZÀ-Ý][^\d.:]{3,40})\.?"
)


def take_food_behind_makes(recipe: Recipe) -> None:
    """Take a known food from behind how much is made into the list, and ask about it."""
    found = _FOOD_BEHIND.fullmatch(recipe.makes)
    if found is None or find_staple(found["food"]) is None:
        return
    recipe.makes = found["made"]
    take_food(recipe, found["food"])


def without_its_own_name(recipe: Recipe) -> None:
    """Take a line that repeats the title out of a list: the words below a picture, mostly."""
    named = plain(recipe.title)
    own = [one for one in recipe.ingredients if named and plain(one[1]) == named]
    own = [one for one in own if "(" not in one[1]]
    recipe.ingredients = [one for one in recipe.ingredients if one not in own]
    asked = tuple(f'"{line}" stands right above the first amount' for _, line in own)
    recipe.doubts = [one for one in recipe.doubts if not (asked and one[1].startswith(asked))]


def take_first_size(recipe: Recipe) -> None:
    """Take the numbers of a second size off the ends of a list's lines, and ask about them."""
    found = [_SECOND.fullmatch(line) for _, line in recipe.ingredients]
    several = [one for one in found if one]
    if len(several) < _LEAST_LINES or len(several) * 2 <= len(recipe.ingredients):
        return
    recipe.ingredients = [
        (group, one["line"] if one else line)
        for (group, line), one in zip(recipe.ingredients, found, strict=True)
    ]
    said = ", ".join(one["other"] for one in several)
    what = f"A second row of amounts stood behind the foods ({said}): the first is taken."
    recipe.doubt("ingredients", what, "Look whether that is the size you mean.")


def with_bare_foods(recipe: Recipe, rows: Sequence[Row]) -> list[Row]:
    """Take foods that stand on lines of their own above the first sentences into the list.

    What stands before them ends in a colon: it leads to them; or numbered steps follow several.
    """
    first = next((at for at, row in enumerate(rows) if stands_as_a_food(row)), len(rows))
    end = next((at for at in range(first, len(rows)) if not stands_as_a_food(rows[at])), len(rows))
    led = all(row.text.rstrip().endswith(":") for row in rows[:first][-1:])
    led = led or (end - first > 1 and all(row.shape == "step" for row in rows[end : end + 1]))
    if first > _MOST_ABOVE or end == len(rows) or not led or not is_sentence(rows[end].text):
        return list(rows)
    recipe.intro += [row.text for row in rows[:first]]
    recipe.ingredients = [("", row.text) for row in rows[first:end]]
    what = "The things above the method stand without a heading, and without amounts."
    recipe.doubt("ingredients", what, "Write how much goes in of each.")
    return list(rows[end:])


def stands_as_a_food(row: Row) -> bool:
    """Whether a row names a food and no more, but for what stands in brackets."""
    bare = re.sub(r"\s*\([^()]*\)", "", row.text).strip()
    few = len(bare.split()) <= _MOST_OF_A_FOOD and not bare.endswith((".", ":", "!"))
    return row.shape in ("line", "item") and few and names_a_food(bare)


def is_one_of_foods(rows: Sequence[Row], at: int) -> bool:
    """Whether a row names a food, and one beside it another: a list without amounts.

    A line with an amount beside it says nothing: it may end the list of the recipe above.
    """
    beside = (*rows[max(at - 1, 0) : at], *rows[at + 1 : at + 2])
    bare = (row for row in beside if not begins_with_amount(row.text))
    return stands_as_a_food(rows[at]) and any(map(stands_as_a_food, bare))
