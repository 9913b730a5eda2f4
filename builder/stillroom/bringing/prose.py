"""The list of a recipe that has none: what its sentences measure, gathered one to a line.

"Take the thin rind of four large oranges and put it into two quarts of brandy." Old cookery books
tell recipes so. Every line is asked about as a whole; nothing is weighed that no sentence weighs.
Leaves out lists that a sentence announces: one_line.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import pairwise, takewhile
from typing import Final

from stillroom.bringing.found import Recipe
from stillroom.bringing.heads import plain, words
from stillroom.bringing.prose_elsewhere import told_elsewhere
from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.food_reading import read_food
from stillroom.core.lines.number_words import languages_that_begin
from stillroom.core.lines.parts_of_line import LineReading
from stillroom.core.lines.reader import read_line
from stillroom.core.words.problems import Unreadable

_MOST_WORDS: Final = 8
_MOST_MORE: Final = 3
_LONGEST_LEAD: Final = 30
_MOST_IDLE: Final = 400  # of amounts running that measure no food: it is no recipe
_LEAST_TOLD: Final = 3
_FOREIGN: Final = (
    r"(?:deux|trois|quatre|cinq|six|huit|dix|demi|zwei|drei|vier|fünf|sechs|acht|zehn|due|tre|quattro|cinque|sei"
    r"|mezz[oa]|dos|tres|cuatro|cinco|seis|medi[oa]|twee|drie|vijf|zes|halve?|två|fyra|fem|halv[at]?|dois|duas|três"
    r"|mei[oa]|dwa|dwie|trzy|cztery|pół|une?|un[ao]|ein(?:e[nmr]?)?|een|ett?)"
)
_METRIC: Final = (
    r"(?:k?g|kilo\w*|chilo\w*|quilo\w*|gram\w*|lit\w+|[mcd]?l|pfund|libbr[ae]|libras?|ett[oi]|pond)"
)
_PART_WORDS: Final = (
    r"(?:quarts?|tiers|demi|halb\w*|viertel|drittel|quart[oi]|cuartos?|half|halve?|kwart|halvt?)"
)
_NUMBER: Final = (
    rf"(?:{_FOREIGN}(?:[\s-]+{_PART_WORDS})?(?=(?:\s+d[ei]|\s+d['’])?[\s-]{_METRIC}\s)"
    r"|(?:an?|one|two|three|four|five|six)\s+(?:and\s+(?:an?|one|three)\s+)?"
    r"(?:half|halves|fourths?|quarters?|thirds?|eighths?)(?=\s+(?:cup|pound|ounce|pint|quart|gallon|tea|table|lb|oz))"
    r"|(?:an?|one|two|three|four|five|six|\d+)\s+(?:(?:pounds?|lbs?|ounces?|oz|pints?|quarts?"
    r"|gallons?|gills?|cups?|cupfuls?)\s+)?and\s+(?:an?\s+|one\s+)?(?:half|quarter|third)"
    r"|(?:an?|one|three)\s+(?:quarters?|thirds?|eighths?)\s+of\s+an?|half\s+of\s+an?|(?:\d+\s+)?\d+\s?[/⁄]\s?\d+|\d+(?:[.,]\d+)?\s?[½¼¾⅓⅔]?|[½¼¾⅓⅔]|half\s+(?:an?|a\s+dozen)|an?|one|two|three|four|five|six"
    r"|(?:un[aeo]?|eine?[nmr]?|een|ett?)(?=\s+(?:kg|kilo\w*|chilo|lit\w+|l|pfund|etto|pond)\s)|seven|eight|nine|ten|eleven|twelve|twenty|thirty|forty|fifty)"
)
_BEGINS: Final = re.compile(
    rf"(?:(?P<part>(?:the\s+)?(?:[a-z]{{1,20}}\s+){{0,2}}?(?:juice|rind|peel|zest|yolks?|whites?)\s+of\s+))?"
    rf"(?<![\w/.,-])(?P<number>{_NUMBER})(?:\s+or\s+{_NUMBER})?(?=[\s-]|(?:k?g|m?l|cl|dl|oz|lbs?)\s)",
    re.IGNORECASE,
)
_ENDS: Final = re.compile(
    r"[,;:.!?()]|\b(?:and|into|in|to|for|with|on|over|from|until|till|through|at|then|which|that|when|put|boil|let|add|as"
    r"|if|after|before|per|off|or|under|is|are|be|being"
    r"|und|sowie|oder|mit|auf|zu|dazu|hinzu\w*|geben|zugeben|beifügen|benötigt|et|dans|avec|ajoute[zr]|ou|ed|nel\w*"
    r"|aggiung\w+|con|en|añad\w+|och|till|med|eller|e|y|circa|occorr\w+|servono|necesit\w+|braucht|faut)\b",
    re.IGNORECASE,
)
_OF_EACH: Final = re.compile(
    rf"(?<![\w/.,-])(?P<much>{_NUMBER}\s+[a-z]{{1,12}})\s+(?:of\s+)?each\s+(?:of\s+)?"
    r"(?P<things>[a-z][a-z ]{1,40}(?:,\s(?!and )[a-z ]{2,40}){0,5},?\sand\s[a-z][a-z ]{1,30})"
    r"(?=[,.;:)]|$)",
    re.IGNORECASE,
)
_NEAR: Final = re.compile(rf"(?:\s*+\S{{1,60}}+(?!\S)){{,{_MOST_WORDS}}}")
# "loaf-sugar", "rose-leaves", "half-a-pint", as older books hyphen them
# "To make 4 jars of jam you need": how much is made, and nothing that goes in
_MADE_OF_IT: Final = re.compile(
    r"\b(?:to\s+(?:make|get|fill)|makes?|yields?|gives|for\s+about|per\s+(?:ottenere|fare|preparare)|pour\s+(?:obtenir|faire|préparer)"
    r"|para\s+(?:obtener|hacer|preparar)|um|ergibt|ergeben|voor|för\s+att\s+få|ger)\s+(?:about\s+|circa\s+|etwa\s+|environ\s+|unos\s+)?$",
    re.IGNORECASE,
)
# "to each pint of juice when strained add one pound of sugar", "1 lb of sugar to every pint"
_TO_EACH: Final = re.compile(
    r"[\s,]*(?:(?:and|then|strain\w*(?:\s+it)?)[\s,]+){0,3}"
    r"(?P<said>(?:to|for|with)\s+(?:each|every)\s+(?:pint|quart|gallon|pound|lb|litre|liter|kilo)\w*(?:\s+of(?:\s+the)?\s+[a-z]+)?)",
    re.IGNORECASE,
)
# "beat to a cream", "boil it into a syrup": what it becomes
_BECOMES: Final = re.compile(r"\b(?:to|into|as|like|till|until)\s+$", re.IGNORECASE)
_AND_HALF: Final = re.compile(r"\s+and\s+half\s+of\s+", re.IGNORECASE)
_NUMBER_WORDS: Final = frozenset(
    {"one", "two", "three", "four", "six", "seven", "eight", "nine", "ten", "half"}
)
_STRENGTH: Final = re.compile(r"\d{1,2}(?:[.,]\d)?\s?[°º%]")
_LEFT_OPEN: Final = re.compile(r"(?:\s(?:of|à|al?|de|di|da|von|van|av|af))+$", re.IGNORECASE)
_OR: Final = re.compile(r"\s+(?:or|oder|ou|o|of|eller)\s+", re.IGNORECASE)
_SPOKEN: Final = re.compile(r"(?<=[a-z])-(?!spoon|glass|cup)(?=[a-z])", re.IGNORECASE)
_FOLLOWING: Final = re.compile(
    r"\b(?:following|these|next|first) (?:\w+ )?(?:ingredients|things|items)\b", re.IGNORECASE
)
_DOES: Final = re.compile(
    r"\b(?:and|then|to) (?:add|stir in|mix in|beat in|fold in)$", re.IGNORECASE
)
_NO_FOOD: Final = frozenset({"craft"})
_NOBODY_EATS: Final = frozenset({"white", "kid", "kids"})
"""Words that tell of something else in a sentence: bread in Spanish, who helps to cook."""
# "600 g Zucker schaumig rühren": a German thing ends before what is done with it
_VERB_LAST: Final = re.compile(
    r"(?P<thing>.*\s[A-ZÄÖÜ][a-zäöüß-]{2,40})(?:\s[a-zäöüß]{2,30}){0,3}\s[a-zäöüß]{2,30}(?:en|ern|eln)"
)
_VESSELS: Final = re.compile(
    r"\b(?:pans?|pots?|jars?|bottles?|bowls?|tubs?|casks?|barrels?|bags?|sieves?|kettles?|tureens?"
    r"|dish(?:es)?|vessels?|tumblers?|cloths?|spoons?|napkins?|papers?|plates?)$",
    re.IGNORECASE,
)


def measured_in_prose(sentences: Iterable[str]) -> list[str]:
    """Return what sentences measure of foods that are known, in their order, each once.

    >>> measured_in_prose(["Put the rind of four oranges into two quarts of brandy for a week."])
    ['the rind of four oranges', 'two quarts of brandy']
    >>> measured_in_prose(["Boil a pound and a half of apples, a quarter of a pound of sugar."])
    ['a pound and a half of apples', 'a quarter of a pound of sugar']
    >>> measured_in_prose(["Peel two and a half pounds of plums, and half a pound of figs."])
    ['two and a half pounds of plums', 'half a pound of figs']
    >>> measured_in_prose(["Pour a pint of cider or wine vinegar over it."])
    ['a pint of cider or wine vinegar']
    >>> measured_in_prose(["Half a cup each of sugar and flour, 2 litres d'alcool à 60°."])
    ['Half a cup sugar', 'Half a cup flour', "2 litres d'alcool à 60°"]
    >>> measured_in_prose(["Boil it for two hours in a large pan."])
    []
    """
    return list(_measured(tuple(sentences)))


@lru_cache(maxsize=16)  # the same paragraphs are asked of for several questions
def _measured(sentences: tuple[str, ...]) -> tuple[str, ...]:
    if elsewhere := told_elsewhere(sentences):
        return tuple(elsewhere.things)
    found: list[str] = []
    idle: set[str] = set()  # what was asked about since the last thing found
    for sentence in sentences:
        told = _OF_EACH.sub(_each_by_itself, _SPOKEN.sub(" ", sentence))
        at = 0
        while len(idle) < _MOST_IDLE and (begins := _BEGINS.search(told, at)):
            at = begins.end()
            words = _words_behind(told, at)
            asked = told[begins.start() : at + words[-1].end()] if words else ""
            lead = told[max(0, begins.start() - _LONGEST_LEAD) : begins.start()]
            made = _MADE_OF_IT.search(lead)
            becomes = begins["number"].lower() in ("a", "an") and _BECOMES.search(lead)
            thing = "" if made or asked in idle else _longest_food(told, begins, words)
            idle.add(asked)
            if thing and not (becomes and not _is_measured(thing)):
                thing = _with_its_other(told, thing)
                idle.clear()
                at = max(at, told.find(thing, begins.start()) + len(thing))
                thing = _with_its_share(told, thing, begins.start(), at)
                if thing.lower() not in {one.lower() for one in found}:
                    found.append(thing)
    return tuple(found)


def _is_measured(thing: str) -> bool:
    """Whether a thing is so much by a unit or a vessel: "a cup of cream", never "a cream"."""
    reading = _read(thing)
    amount = reading.amount if reading else None
    return isinstance(amount, Amount) and bool(amount.unit or amount.noun)


def _with_its_share(told: str, thing: str, at: int, end: int) -> str:
    """Return a thing with what it goes to each of: "to each pint of juice add 1 lb of sugar"."""
    clause = max(told.rfind(sign, 0, at) for sign in ".;:") + 1
    share = _TO_EACH.match(told, end) or _TO_EACH.match(told, clause, at)
    return f"{thing} {share['said'][0].lower()}{share['said'][1:]}" if share else thing


def _each_by_itself(found: re.Match[str]) -> str:
    """Return "½ cup of each of A and B" as so much of A, so much of B."""
    things = re.split(r",\s*(?:and\s+)?|\s+and\s+", found["things"])
    return ", ".join(f"{found['much']} {thing}" for thing in things if thing)


def _with_its_other(told: str, thing: str) -> str:
    """Return a thing with what is offered in its place: "cider or wine vinegar" is no cider."""
    behind = told[told.find(thing) + len(thing) :] if thing in told else ""
    other = _OR.match(behind)
    words = [one[0] for one in _words_behind(behind, other.end() - 1)] if other else []
    for size in range(min(len(words), _MOST_MORE), 0, -1):
        whole = f"{thing}{other[0] if other else ''}{' '.join(words[:size])}"
        try:
            food = read_food(read_line(whole).item)
        except Unreadable:
            continue
        counts = re.fullmatch(_NUMBER, words[0], re.IGNORECASE)  # "two eggs or three"
        if food.known and food.food and not counts and _is_no_verb(words[size - 1]):
            return whole
    return thing


def those_that_measure(begins: list[int], rows: Sequence[str]) -> list[int]:
    """Return those beginnings below which something is measured, where any do; else all of them.

    "Bottles of rhubarb gin", below a picture, begins no recipe.
    """
    told = [rows[at + 1 : end] for at, end in pairwise([*begins, len(rows)])]
    found = [at for at, below in zip(begins, told, strict=True) if measured_in_prose(below)]
    return found or begins


def told_over_lists(recipe: Recipe) -> list[str]:
    """Return the steps that stand over the things they are done with, taken from the introduction.

    "Bring the following three ingredients to a boil:", "Remove from the heat and add:".
    """
    told: list[str] = []
    while recipe.intro and _is_told_of_below(recipe.intro, told):
        told.insert(0, recipe.intro.pop())
    for head in dict.fromkeys(head for head, _ in recipe.ingredients if told or _is_told(head)):
        things = [thing for group, thing in recipe.ingredients if group == head]
        if _is_told(head):
            told.append(f"{head} {', '.join(things)}." if _DOES.search(head) else f"{head}.")
    return [f"{one.rstrip(' :')}." if one.endswith(":") else one for one in told]


def _is_told_of_below(intro: list[str], told: list[str]) -> bool:
    """Whether the last words above a list say what is done with what stands in it."""
    last = intro[-1]
    return _is_told(last) and bool(last.endswith(":") or _FOLLOWING.search(last) or told)


def _is_told(said: str) -> bool:
    """Whether some words say what is done: "Then boil 8 minutes", never "Mix" or "Topping"."""
    spoken = [word for word in plain(said).split() if word not in ("then", "and", "now")]
    return len(spoken) >= _LEAST_TOLD and spoken[0] in words("told_first")


def _longest_food(told: str, begins: re.Match[str], words: list[re.Match[str]]) -> str:
    """Return the amount with the most words behind it that name a known food; "" for none."""
    part = _without_verb(begins["part"] or "")
    bare = " ".join(part.split()[-2:])  # "the thin yellow rind of" is its rind
    for last in reversed(words):
        if _VESSELS.search(last[0]) or last[0] in _NOBODY_EATS:  # "a large pan", "with a kid"
            continue
        for before in dict.fromkeys((part, f"{bare} " if bare else "", "")):
            thing = f"{before}{told[begins.start('number') : begins.end() + last.end()].strip()}"
            reading = _read(thing)
            food = read_food(reading.item) if reading else None
            if food and food.known and food.food:
                if food.food.tags & _NO_FOOD:
                    return ""
                # "a pound of fresh rose leaves" is asked about whole, and no pound of roses
                more = (one[0] for one in words[words.index(last) + 1 :][:_MOST_MORE])
                whole = " ".join((thing, *takewhile(_is_no_verb, more)))
                return _VERB_LAST.sub(r"\g<thing>", _LEFT_OPEN.sub("", whole).rstrip("*"))
    return ""


def _read(thing: str) -> LineReading | None:
    """Read what is measured, in the language whose number it begins with; None where nothing is.

    "A pound and half of sugar" is asked about as the line that it then is.
    """
    thing = _AND_HALF.sub(" and a half of ", thing)
    for language in ("en_GB", *sorted(languages_that_begin(thing, 0))):
        try:
            reading = read_line(thing, language=language)
        except Unreadable:
            continue
        if isinstance(reading.amount, Amount):
            return reading
    return None


def _words_behind(told: str, at: int) -> list[re.Match[str]]:
    """Return the first words behind an amount, up to where a clause ends or the next amount begins.

    Looks no further than a few words reach, so that a long line is gone through once.
    """
    near = _NEAR.match(told, at)
    behind = near[0] if near else ""
    stop = _ENDS.search(behind)
    while stop and stop[0] == "," and behind.endswith("ed", 0, stop.start()):  # "washed, chopped"
        stop = _ENDS.search(behind, stop.end())
    words = list(re.finditer(r"\S+", behind[: stop.start()] if stop else behind))[:_MOST_WORDS]
    if words[1:] and words[1][0].lower() in _NUMBER_WORDS:  # "to a cream one cup of sugar"
        return words[:1]
    beside = takewhile(lambda two: not _begins_an_amount(*two), pairwise(words[1:]))
    kept = [*words[:2], *(word for _, word in beside)]
    # "d'alcool à 60°": how strong it is goes with it
    strong = words[len(kept)] if len(words) > len(kept) else None
    return [*kept, strong] if strong and _STRENGTH.fullmatch(strong[0]) else kept


def _begins_an_amount(before: re.Match[str], word: re.Match[str]) -> bool:
    """Whether a word is the next thing's number: "a cup of flour one half cup of cocoa" are two."""
    added = before[0].lower() in ("plus", "minus", "or", "less")
    return word[0][0].isdigit() or (word[0].lower() in _NUMBER_WORDS and not added)


def _without_verb(part: str) -> str:
    """Return "the rind of " of "Put the rind of ": what is done with it is no part of its name."""
    article = part.lower().find(" the ")
    part = part[article + 1 :] if article > 0 else part  # "put into it the juice of"
    first, _, rest = part.partition(" ")
    return rest if first.lower() in words("told_first") else part


def _is_no_verb(word: str) -> bool:
    """Whether a word may still name what is measured, and not what is done with it."""
    return word.endswith("seed") or not word.endswith(("ed", "ing", "é", "ée", "és"))
