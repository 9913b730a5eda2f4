"""Several ingredients that were written on one line, taken apart where that is certain enough.

"1 tbsp salt; 1 kg sugar" is two. Commas part things only where three or more of them begin with an
amount, since a comma also says how a thing is prepared. Whoever brings a recipe in is asked.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from stillroom.bringing.each_of import lines_of_each
from stillroom.core.amounts.quantities import Amount
from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.reader import read_line
from stillroom.core.lines.staple_table import find_staple, staples_named
from stillroom.core.words.patterns import OUTSIDE_BRACKETS
from stillroom.core.words.problems import Unreadable

_AMOUNT: Final = re.compile(r"(?:about |ca\.? )?(?:\d|[½⅓⅔¼¾⅛⅜⅝⅞])")
_SIGNS: Final = re.compile(
    r"\s*(?:[;|•·]|\s\+\s)\s*(?=(?:about |ca\.? )?[\d½⅓⅔¼¾⅛⅜⅝⅞])" + OUTSIDE_BRACKETS
)
# "60 g almonds 100 g butter 45 g icing sugar": one after the other without a sign
_NEXT_MEASURE: Final = re.compile(
    r"(?<=[^\W\d])[\s,]+(?=\d+(?:[.,]\d+)?\s*(?:k?g|gr|ml|cl|dl|l|EL|TL|Msp|Prise|Pck|cups?|tbsp|tsp|oz|lb)\b\.?\s+[^\W\d])"
    + OUTSIDE_BRACKETS
)
# where two columns may part: "2 cups sugar ½ cup butter"
_MAY_PART: Final = re.compile(
    rf"(?<=[^\W\d])\)?,?\s+(?=[\d½⅓⅔¼¾⅛]){OUTSIDE_BRACKETS}|(?<=\))\s+(?=[\d½⅓⅔¼¾⅛])"
)
# a number behind one of these goes on with what stands before it: "flour type 405", "juice of 2"
_OPEN_BEFORE: Final = re.compile(
    r"\b(?:types?|typ|t|no|nr|number|grade|size|for|of|in|into|to|with|at|by|or|and|from|about|up|over|plus|minus|less"
    r"|oder|und|von|mit|ou|et|de|pour|o|y|e|con|di|per|para|of|en|van|met"
    # "1 lemon for every", "500 g Zucker auf": so much to another thing
    r"|x|×|each|every|ogni|auf|je|jede[nrs]?|pro|par|chaque|cada|elke|iedere|op|varje|till|til|hver|na|każd\w+)\.?$",
    re.IGNORECASE,
)
_MOST_PLACES: Final = 6
# "0,5 tl zout" is one
_COMMAS: Final = re.compile(rf"\s*(?:,(?!\d)|(?<!\d),)\s*{OUTSIDE_BRACKETS}(?!\d+\s*%)")
_TIME: Final = re.compile(
    r"[\d\s–-]+(?:minutes?|mins?|hours?|days?|weeks?|months?|minuten|stunden|tage|wochen)\b", re.I
)
# what leads to a list told in a sentence
_NEED: Final = (
    r"(?:you|we)(?:['’]ll|\s+will)?\s+need|(?:il|on)\s+(?:(?:vous|te|nous)\s+)?(?:faut|faudra)|(?:avez|aurez|avons|aurons|ai)\s+besoin\s+de"
    r"|man\s+(?:nehme|nimmt|braucht|benötigt)|(?:wir|ihr|sie|du|ich)\s+(?:brauche?[nt]?|benötige?[nt]?)|(?:brauchst|braucht|brauchen)\s+(?:du|ihr|sie|wir)"
    r"|benötigt\s+man|(?:occorrono|occorre|servono|serviranno|ci\s+vogliono)|(?:avrete|avremo|abbiamo)\s+bisogno\s+di"
    r"|necesit(?:as|amos|aremos|arás|an)|(?:hacen?|hará[n]?)\s+falta|vamos\s+a\s+necesitar|heb(?:ben)?\s+(?:je|we|wij)\s+nodig|(?:je\s+hebt|we\s+hebben)\s+nodig"
    r"|(?:vai|vais|vão|vamos)\s+precisar\s+de|precisa(?:mos|s|m)?\s+de|são\s+precis[oa]s"
    r"|(?:du|man|vi|ni)\s+behöver|behövs|(?:du|man|vi)\s+skal\s+bruge|skal\s+der\s+bruges|(?:du|man|vi)\s+trenger|trengs"
    r"|potrzebujemy|potrzebujesz|potrzeba|potrzebne\s+(?:będą|są)|bierzemy|będziemy\s+potrzebować"
)
_ONE: Final = (
    r"an?|one|two|three|half|eine?|einen|zwei|une?|deux|una|uno|dos|due|um|uma|dois|duas|een|twee|ett?|två|to|pół|półtora|dwa|dwie|jed\w{2}"
    r"|medi[oa]|mezz[oa]|mei[oa]"
)
_TELLS: Final = re.compile(
    rf"(?:\b(?:{_NEED})\b\s*:?|:)\s+(?=[\d½¼¾⅓⅔⅛]|(?:{_ONE})\s)", re.IGNORECASE
)
_NUMBER_WORDS: Final = (
    r"One|Two|Three|Four|Five|Six|Half|Eine?|Zwei|Drei|Une?|Deux|Trois|Uno|Una|Due|Tre|Dos|Tres"
    r"|Een|Twee|Drie"
)
# an amount in a list that runs on, and the capital with which its method begins
_THING_BEGINS: Final = re.compile(rf"(?:^|(?<=\s))(?:\d|[½¼¾⅓⅔]|(?:{_NUMBER_WORDS})\s(?=[a-z]))")
_TOLD_BEGINS: Final = re.compile(
    rf"(?<=[^\W\d_])\s+(?=(?!(?:{_NUMBER_WORDS}|Large|Small|Medium|Big)\s)[A-ZÄÖÜÉ][a-zà-ÿ]+\s+(?:[a-zà-ÿ]+|\d+)\s[^.!?]*[.!?])"
)
# "3 lbs vegetables (I used 800 g cauliflower, 160 g onions, 125 g beans)"
_I_USED: Final = re.compile(
    r".{3,60}\((?:(?:i|we)(?:['’]ve|\s+have)?\s+used?|i\s+had)\s*:?\s+(?P<things>[^()]+)\)\.?",
    re.IGNORECASE,
)
_BRACKETS: Final = re.compile(r"\s*\([^()]*\)")
_FOR_WHAT: Final = re.compile(r"(?:for|für|zum|zur|pour|per|para|voor|till|til)\s", re.I)
_OPEN_END: Final = re.compile(
    r"\b(?:and|or|about|around|approximately|und|oder|etwa|ca|circa|et|ou|environ|e|o|y|con|unos|unas|en|of|ongeveer|och|eller|ungefär"
    r"|is|are|need|needs|take|takes|makes|occorrono|servono|braucht|faut|hacen\s+falta)\.?$",
    re.IGNORECASE,
)
_LONGEST_LIST: Final = 600
_WHAT_FOR: Final = re.compile(r"(?:for|to|zum|zur|pour|per|para|voor)\s")
_SPOON: Final = re.compile(r"[\d½¼¾⅓⅔][\d\s/½¼¾⅓⅔]*[tT]\.?\s+[a-z]{3}")
# "muslin bag w/ 6 peppercorns + 4 cloves"
_BAG: Final = re.compile(
    r"(?:an?\s+)?(?:muslin|spice|cheesecloth|cloth)\s+bag\s+(?:w/|with|of|containing)\s*(?P<within>[^()]+?)\.?",
    re.IGNORECASE,
)
_WITHIN: Final = re.compile(r"\s*(?:,|&|\+|\band\b)\s*")
_JOINTS: Final = "and|und|et|y|e|en|och|og|i|oraz"
_JOINT: Final = re.compile(rf"\s+(?:{_JOINTS})\s+(?=[^\W_])")
# Swedish "en kanelstång" is one of them
_LED: Final = re.compile(r"(?:and|und|et|y|e|och|og|i|oraz)\s+(?=[^\W_])|en\s+(?=[\d½¼¾])")
_AND: Final = re.compile(rf"\s+(?:{_JOINTS})\s+")
# "o sumo de 1 limão", "sok z 1 cytryny": so much of the part of a thing
_PART_OF_SO_MANY: Final = re.compile(
    r"(?:[^\W\d]+\s+){1,4}(?:of|de|d['’]|di|von|van|av|af|fra|z|ze)\s*[\d½]\s*[^\W\d]+",
    re.IGNORECASE,
)
_WORDS: Final = 5
_MOST_OF_A_THING: Final = 16
_BRACKETED: Final = re.compile(r"\([^()]*\)")
_SENTENCES: Final = re.compile(r"[^\W\d]{3}[.!?]\s+[^\W\d_a-zß-ÿ]")
_MEASURED: Final = re.compile(
    r"\d[\d.,/½¼¾]*\s*(?:k?g|ml|cl|dl|l|lit\w+|oz|lb|cups?|tbsp|tsp|tl|el|c\.?\s?à\s?\w)\b\.?\s+[^\W\d]{2}",
    re.IGNORECASE,
)
_PAIR: Final = 2
_LEAST: Final = 3
"""Parts that begin with an amount, from which on commas part things."""


@dataclass(frozen=True)
class Told:
    """A list told in a sentence: what stands before it, its things, and what follows."""

    before: str
    named: str
    things: tuple[str, ...]
    after: str


def said_in_prose(text: str) -> Told | None:
    """Return the list that a sentence tells, with what stands before and behind it; else None.

    >>> said_in_prose("You will need 20 lemons, 3 quarts of rum and 2 cloves. Steep them.").things
    ('20 lemons', '3 quarts of rum', '2 cloves')
    >>> said_in_prose("Boil it: 20 minutes are enough, or 30.") is None
    True
    """
    begins = _TELLS.search(text)
    if begins is None:
        return None
    told = text[begins.end() :]
    end = re.search(r"(?<=[^\W\d]{3})[.!](?=\s|$)", told)
    listed = told[: end.start()] if end else told
    starred = len(re.findall(r"\s[*•·]\s", listed)) >= _PAIR
    signs = r"\s[*•·]\s" if starred else ";" if listed.count(";") >= _PAIR else ","
    parts = [
        part.strip() for part in re.split(f"{signs}{OUTSIDE_BRACKETS}", listed) if part.strip()
    ]
    last = _JOINT.split(parts[-1], maxsplit=1) if parts else []
    parts = _with_what_is_done([*parts[:-1], *last])
    things = sum(_is_thing(part) for part in parts)
    if things < _LEAST or not all(_is_thing(part) or _is_loose(part) for part in parts):
        return None
    named = re.split(
        r"[.,:]|\b(?:you|voor|für|pour|per|para|il|man)\b", text[: begins.start()], flags=re.I
    )[0]
    after = told[end.end() :].strip() if end else ""
    return Told(text[: begins.end()].strip(" :"), named.strip(), tuple(parts), after)


def _with_what_is_done(parts: list[str]) -> list[str]:
    """Return parts with "finely chopped" at its thing, and "2 eggs and 1 lemon" parted."""
    found: list[str] = []
    for part in parts:
        bare = part[led.end() :] if (led := _LED.match(part)) else part
        if _AMOUNT.match(bare) or not found:
            found += re.split(rf"\s+(?:{_JOINTS})\s+(?=[\d½¼¾])", bare)
        elif all_harmless(normal_form(bare).split()) or _WHAT_FOR.match(bare):
            found[-1] = f"{found[-1]}, {bare}"
        else:
            found.append(bare)
    return found


def listed_and_told(text: str) -> tuple[tuple[str, ...], str] | None:
    """Return the things of a paragraph that lists them without a sign, and its method; else None.

    >>> listed_and_told("1 l water 3 lb honey One packet yeast Boil the water. Let it cool.")
    (('1 l water', '3 lb honey', 'One packet yeast'), 'Boil the water. Let it cool.')
    >>> listed_and_told("2 eggs and 1 lemon are enough for the cake. Beat them.") is None
    True
    """
    begins = [one.start() for one in _THING_BEGINS.finditer(text[:_LONGEST_LIST])]
    told = _TOLD_BEGINS.search(text)
    if told is None or not begins or begins[0] != 0:
        return None
    ends = [at for at in begins if at < told.start()]
    parts = [text[at:end].strip(" ,") for at, end in pairwise([*ends, told.start()])]
    if len(parts) < _LEAST or not all(map(_is_thing, parts)):
        return None
    if any(_OPEN_END.search(part) for part in parts):  # "we need about", "10 oranges and"
        return None
    return tuple(parts), text[told.start() :].strip()


def _is_thing(part: str) -> bool:
    """Whether a part of a sentence is an amount of something, the last perhaps in words."""
    count = len(_BRACKETED.sub("", part).split())
    if count > _MOST_OF_A_THING or (count > _WORDS and _SENTENCES.search(part)):
        return False  # "1 kg owoców przebieramy i myjemy. Odkładamy na bok": it tells
    try:
        read = read_line(part)
    except Unreadable:
        return bool(_SPOON.match(part))  # which spoon is asked where the line stands
    return isinstance(read.amount, Amount) and bool(read.item) and not _TIME.match(part)


def _is_loose(part: str) -> bool:
    """Whether a few words name a food, or the part of so many: "sok z 1 cytryny"."""
    few = len(part.split()) <= _WORDS
    return few and bool(_PART_OF_SO_MANY.fullmatch(part) or foods_named(part))


def _with_last_parted(parts: list[str]) -> list[str]:
    """Return things with the last two apart: "1 cinnamon stick and the juice of 1 lemon"."""
    last = _JOINT.split(parts[-1], maxsplit=1)
    apart = len(last) == _PAIR and all(_is_thing(one) or _is_loose(one) for one in last)
    return [*parts[:-1], *last] if apart and _is_thing(last[0]) else parts


def things_on(row: str) -> list[str]:
    """Return what stands on one line of a list, each thing by itself; mostly it is one.

    >>> things_on("1 tbsp salt; 1kg sugar"), things_on("1 cup + 2 tbsp sugar")
    (['1 tbsp salt', '1kg sugar'], ['1 cup + 2 tbsp sugar'])
    >>> things_on("1 kg oranges, 1 lemon, 2 kg sugar, a large pan")
    ['1 kg oranges', '1 lemon', '2 kg sugar', 'a large pan']
    >>> things_on("500 g plums, 50 g of them unripe, stoned")
    ['500 g plums, 50 g of them unripe, stoned']
    >>> things_on("60 g almonds 100 g butter 1 tsp salt")
    ['60 g almonds', '100 g butter', '1 tsp salt']
    >>> things_on("140 g almonds (ground), 210 g butter, 2 egg yolks")
    ['140 g almonds (ground)', '210 g butter', '2 egg yolks']
    >>> things_on("icing sugar, lemon juice and cinnamon")
    ['icing sugar', 'lemon juice', 'cinnamon']
    >>> things_on("1 kg figs, 600 g sugar")
    ['1 kg figs', '600 g sugar']
    >>> things_on("1 cup butter, softened ½ cup brown sugar, packed")
    ['1 cup butter, softened', '½ cup brown sugar, packed']
    >>> things_on("muslin bag w/ 6 peppercorns + 4 cloves")
    ['6 peppercorns, in a muslin bag', '4 cloves, in a muslin bag']
    >>> things_on("½ teaspoon each of ground nutmeg, cinnamon & mace")
    ['½ teaspoon ground nutmeg', '½ teaspoon ground cinnamon', '½ teaspoon ground mace']
    """
    if bag := _BAG.fullmatch(row.strip()):
        within = [part for part in _WITHIN.split(bag["within"]) if part]
        whole = len(within) >= _PAIR and all(map(names_a_food, within))
        return [f"{part}, in a muslin bag" for part in within] if whole else [row]
    used = _I_USED.fullmatch(row)
    if used and not re.search(r"\d", used["things"]):
        return [row]  # "350 g nuts (I use pecans, cashews and almonds)": so much in all
    if used and len(parts := things_on(used["things"])) >= _LEAST:
        return parts
    if foods := foods_on(row):
        return foods
    if each := lines_of_each(row, names_a_food):
        return each
    if pair := _side_by_side(row):
        return pair
    if some := _some_with_amounts(row):
        return some
    glued = _NEXT_MEASURE.split(row) if len(_amounts_between_commas(row)) < _LEAST else [row]
    if len(glued) >= _LEAST and _certain(glued):
        return [part.strip(" ,") for part in glued]
    found: list[str] = []
    for piece in _SIGNS.split(row) if _certain(_SIGNS.split(row)) else [row]:
        parts = [part for part in (one.strip() for one in _COMMAS.split(piece)) if part]
        parts = _with_last_parted(parts) if len(parts) >= _LEAST else parts
        amounts = [part for part in parts if _AMOUNT.match(part)]
        apart = len(amounts) >= _LEAST and _certain(amounts)
        apart = apart or (len(amounts) == len(parts) == _PAIR and all(map(_measures_a_food, parts)))
        found += parts if apart else [piece.strip()]
    return found


def is_plainly_parted(row: str, things: Sequence[str]) -> bool:
    """Whether signs part the things of a line, and each is so much of a known food.

    >>> is_plainly_parted("1 kg figs, 600 g sugar", ["1 kg figs", "600 g sugar"])
    True
    >>> is_plainly_parted("1 kg figs 600 g sugar", ["1 kg figs", "600 g sugar"])
    False
    >>> is_plainly_parted("icing sugar, cinnamon", ["icing sugar", "cinnamon"])
    False
    """
    left = row
    for one in things:
        left = left.replace(one, "", 1)
    signs = re.sub(r"[\s.]", "", left)
    parted = len(signs) >= len(things) - 1 and not signs.strip(",;+|")
    return parted and all(map(_is_so_much_of_a_food, things))


def _some_with_amounts(row: str) -> list[str]:
    """Return the things of a line of which but one or two have an amount; [] for any other.

    >>> _some_with_amounts("1 kg quinces, sugar (the same weight), the juice of 1 lemon.")
    ['1 kg quinces', 'sugar (the same weight)', 'the juice of 1 lemon']
    >>> _some_with_amounts("1 kg plums, stoned, halved"), _some_with_amounts("1 kg flour, butter")
    ([], [])
    """
    parts = [part.strip() for part in _COMMAS.split(row.strip().rstrip(".")) if part.strip()]
    bare = [_BRACKETS.sub("", part).strip() for part in parts]
    counted = any(
        re.search(r"\d", part) for part in parts[1:]
    )  # "300 g fruit, raisins, peel" is one
    whole = len(parts) >= _LEAST and bool(_AMOUNT.match(row)) and all(map(names_a_food, bare))
    return parts if whole and counted else []


def _side_by_side(row: str) -> list[str]:
    """Return the two things of a line that lists two columns beside each other; [] for any other.

    Both must be so much of a food that is known, and there must be one place where they part.
    """
    places = [one.start() for one in _MAY_PART.finditer(row)]
    pairs = [(row[:at].strip(" ,"), row[at:].strip()) for at in places[:_MOST_PLACES]]
    pairs = [pair for pair in pairs if not _OPEN_BEFORE.search(pair[0])]
    whole = [pair for pair in pairs if all(map(_is_so_much_of_a_food, pair))]
    return list(whole[0]) if len(whole) == 1 else []


def _is_so_much_of_a_food(part: str) -> bool:
    """Whether a part is an amount of a known food, whatever its unit: "4 onions", "1 jar honey"."""
    try:
        read = read_line(part)
    except Unreadable:
        return False
    return isinstance(read.amount, Amount) and find_staple(read.item) is not None


def _amounts_between_commas(row: str) -> list[str]:
    parts = (one.strip() for one in _COMMAS.split(row))
    return [part for part in parts if _AMOUNT.match(part)]


def foods_named(text: str) -> frozenset[str]:
    """Return the foods that a line names, whatever else it says; what is only for crafts is none.

    >>> sorted(foods_named("walnuts and honey, stirred")), foods_named("Tie a ribbon round it")
    (['honey', 'walnuts'], frozenset())
    """
    return frozenset(food.name for food in staples_named(text) if "craft" not in food.tags)


def names_a_food(text: str) -> bool:
    """Whether a line names a food that is known by the whole of its name."""
    try:
        return find_staple(read_line(text).item) is not None
    except Unreadable:
        return False


def foods_on(row: str) -> list[str]:
    """Return the foods that a line lists without amounts; [] where it is not foods alone.

    >>> foods_on("salt; a few cloves; a blade of mace.")
    ['salt', 'a few cloves', 'a blade of mace']
    >>> foods_on("icing sugar, lemon juice and cinnamon for decoration")
    ['icing sugar', 'lemon juice', 'cinnamon for decoration']
    >>> foods_on("cherries, halved and stoned"), foods_on("Boil; then strain."), foods_on("salt")
    ([], [], [])
    """
    bare = row.strip().removesuffix(".")
    signs = ";" if ";" in bare else ","
    parts = [part.strip() for part in bare.split(signs)]
    if signs == ",":
        parts = [*parts[:-1], *_AND.split(parts[-1], maxsplit=1)]
    least = _PAIR if signs == ";" else _LEAST
    if len(parts) < least or any(_AMOUNT.match(part) for part in parts):
        return []
    return parts if all(len(one.split()) <= _WORDS and names_a_food(one) for one in parts) else []


def _measures_a_food(part: str) -> bool:
    """Whether a part measures a food that is known: "600 g de sucre", but not "50 g of them"."""
    try:
        read = read_line(part)
    except Unreadable:
        return False
    measured = isinstance(read.amount, Amount) and bool(read.amount.unit)
    return measured and find_staple(read.item) is not None


def _certain(parts: list[str]) -> bool:
    """Whether each part is a thing by itself: an amount, and what of."""
    return len(parts) > 1 and all(_names_a_thing(part) for part in parts)


def _names_a_thing(part: str) -> bool:
    if not _AMOUNT.match(part):
        return False
    try:
        item = read_line(part).item
        return bool(item) and not _FOR_WHAT.match(item)  # "1 tbsp for the tin"
    except Unreadable:
        return bool(_MEASURED.match(part))  # "1 l alcool a 90°": a thing, though it is asked about
