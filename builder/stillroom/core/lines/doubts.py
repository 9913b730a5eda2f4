"""What a line leaves in doubt: amounts that nothing has read, and what could be two things.

A doubt is asked and never guessed. The strength of a spirit: line_strength.py.
"""

from __future__ import annotations

import re
from functools import cache

from stillroom.core.amounts.quantities import Amount, Unmeasured, show_number
from stillroom.core.amounts.units import size_of
from stillroom.core.larder.harmless import all_harmless
from stillroom.core.larder.words import normal_form
from stillroom.core.lines.each import refuse_each
from stillroom.core.lines.parts_of_line import LineReading, either, line_words
from stillroom.core.lines.shares import refuse_share
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

# a number that is the food's own, and no amount of it
OWN_NUMBER = late_regex(
    r"\d+(?:[.,]\d+)?(?:\s*[-–]\s*\d+)?\s*(?:%|per\s?cent\b)|0{2,}\b|\d+-[A-Za-z]"
    r"|\d+[\s-]*proof\b|\d+\s?:\s?\d+\b|\d+\s*°|½-|½ fat"
    r"|\d+[\s-]+(?:épices?|spezie|especias|kruiden)\b|\d+(?:st|nd|rd|th)\b|\d+\s+(?:grains?|seeds?)\s+bread"
)
_UNIT = (
    r"tbsps?|tsps?|tablespoons?|teaspoons?|ozs?|ounces?|fl|mls?|kgs?|lbs?|grams?|litres?"
    r"|liters?|pints?|quarts?|gallons?|dl|cl|(?-i:EL|TL)"
)
_LEFT_OVER = late_regex(rf"(?:^|[\s(/])(?P<unit>\d*(?:{_UNIT})\.?)(?=$|[\s,)/])", re.IGNORECASE)
_LONE_LETTER = late_regex(r"(?P<unit>g|ml|kg|oz|[b-wyzA-Z])\.?\s+[A-Za-z]")
_FOODS_WITH_UNITS = late_regex(
    r"\bgram\s+(?:flour|dal|dhal)\b|\b(?:black|split|green|red|bengal|horse|urad|white)\s+gram\b"
    r"|\bpound\s+cake\b|\bcuckoo[\s-]+pints?\b|\bhalf[\s-]pounders?\b",
    re.IGNORECASE,
)
_NUMBER = r"(?:[½⅓⅔¼¾⅛]|\d+(?:[.,/]\d+)?)"
_SECOND = late_regex(
    # Dutch "en 4" is one more, "coupées en 4" is how they are cut
    r"(?:\b(?:and|plus|minus|less|und|et|ed?|y|più|más"
    r"|(?<!é )(?<!ée )(?<!és )(?<!ées )(?<!d[oa] )(?<!d[oa]s )en)\b|[+&])\s+"
    rf"(?:(?:about|scant|heaped|generous|another)\s+)?{_NUMBER}"
    rf"|\bof\s+(?:{_NUMBER}|half\b)"
    r"|\band\s+an?\s+(?:pinch|grind|dash|splash|knob|handful|squeeze|drop|sprig|stick|clove|slice|piece)\b",
    re.IGNORECASE,
)
_ANY_NUMBER = late_regex(
    rf"(?:^|[\s(])(?!{OWN_NUMBER.pattern})(?P<number>{_NUMBER})(?=$|[\s,)]|\s?[-–]\s?\d+\s)"
)
_MEASURE_IN_NOTE = late_regex(
    rf"(?:^|[,(;:]|,\s*or)\s*(?:(?:about|approx\.?|around|weighing|approximately)\s*)*"
    rf"(?P<measure>{_NUMBER}(?:\s*(?:-|–|to)\s*{_NUMBER})?\s*-?(?:{_UNIT}|g|l|ml|kg|cups?|pounds?)\b)",
    re.IGNORECASE,
)
_SPOKEN = late_regex(
    r"(?:^|[,(;])\s*(?:about\s+)?(?:an?|one|two|three|four|five|six|half\s+an?)\s+"
    r"(?P<measure>ounces?|pounds?|pints?|quarts?|gallons?|cups?|tablespoons?|teaspoons?|litres?|grams?)\b",
    re.IGNORECASE,
)
# "Zucchero, grammi 750", "Spirito, litri uno e mezzo"
_UNIT_FIRST = late_regex(
    r"(?:^|[,(;])\s*(?P<measure>(?:grammi|gramos|litri|litros|decilitri|chili|chilogrammi|etti|n\.)\s+\w+)",
    re.IGNORECASE,
)
# "3 large and 2 small", "g. 100": how many or how much, behind the food
_BEGINS_COUNTED = late_regex(
    rf"(?P<measure>(?:g|gr|kg|ml|cl|dl|l|oz|lb)s?\.?\s{_NUMBER}|(?:about\s+)?(?!{OWN_NUMBER.pattern}){_NUMBER}"
    rf"(?:\s*[-–]\s*{_NUMBER})?\s+(?!(?:to|or|x|by|inch(?:es)?|[cm]m|°|degrees|days?|hours?|minutes?)\b)[a-z]+)",
    re.IGNORECASE,
)
# "bouquet garni (2 sprigs parsley, 1 bay leaf)": the amounts are those of its parts
_ITS_PARTS = late_regex(rf"(?:[,;]|\band)\s+{_NUMBER}\s+[a-z]{{3,}}\s+[a-z]{{3,}}", re.IGNORECASE)
# another thing in the same line: "6 cloves, 1 blade of mace", "3/4 cup salt in 2 gals water"
_ANOTHER = late_regex(
    rf"{_NUMBER}\s+[a-z]{{3,}}\s+of\s+(?!it\b|them\b|th|which|each|one|your|a\b)[a-z]{{3}}",
    re.IGNORECASE,
)
# "1 kg figs, 600 g sugar": a second thing with its own measure
_WITH_ITS_MEASURE = late_regex(
    rf"{_NUMBER}\s*(?:{_UNIT}|g|gr|ml|kg|l|cups?|litr[oi]s?|chil[oi]|gram(?:mi|os)|Gramm|Liter)\b\.?\s+"
    r"(?:of\s+|d[ei]\s+|d['’]|van\s+)?(?P<food>[a-zà-ÿ][^,;()\d]*)",
    re.IGNORECASE,
)
_PACK = r"pkgs?|packages?|packets?|cans?|tins?|jars?|boxe?s?|bags?|bottles?|blocks?|tubs?"
# "1 cup sugar, 2 eggs": a second thing, counted or measured; "2 lemons, 1 strip of its peel" is not
_THING_BEHIND = late_regex(
    rf"{_NUMBER}(?:\s*[-–]\s*{_NUMBER})?\s*(?:(?:{_UNIT}|g|gr|ml|kg|l|cups?|litr[oi]s?|chil[oi]|gram(?:mi|os)|Gramm"
    rf"|Liter|pinch(?:es)?|cloves?|sticks?|stecche|gousses?|cucchiai\w*|(?P<pack>{_PACK}))\b\.?\s+)?"
    rf"(?:of\s+|d[ei]\s+|d['’]|van\s+)?(?P<food>(?!(?:{_PACK})\s*$)[a-zà-ÿ][^,;()\d%]*)",
    re.IGNORECASE,
)
# "butter, softened 1 cup shortening", "cucumber, sliced 1 onion"
_MEASURED_ON = late_regex(
    rf"(?<=[^\W\d])\s+(?:\d+\s)?{_NUMBER}\s*(?:(?:{_UNIT}|g|gr|ml|kg|l|cups?|sticks?|pinch|cloves?)\b\.?\s+(?:of\s+)?)?"
    r"(?:(?:small|medium|large|whole)\s+)?(?P<food>[a-zà-ÿ][^,;()\d]*)$",
    re.IGNORECASE,
)
_THINGS_APART = late_regex(r"[,;]\s+|(?<=[^\W\d])\s?[-–—]\s+(?=[\d½⅓⅔¼¾⅛])")
_ABOUT = frozenset({"about", "approx", "approximately", "around", "roughly", "or", "circa"})
_AND_SO_MUCH = late_regex(rf"\s+(?:and|&|und|et|e|y|en)\s+(?={_NUMBER})", re.IGNORECASE)
_NEARLY = late_regex(
    r"^\s*(?:about|nearly|almost|barely|fully|scarcely|not\s+quite|rather\s+(?:more|less)\s+than|ca\.?|circa|etwa|knapp|environ"
    rf"|presque|casi|quasi|ongeveer|bijna|nästan)\s+(?={_NUMBER})",
    re.IGNORECASE,
)
_IN_BRACKETS = late_regex(r"\s*\([^()]*\)")
# "1 bouquet garni, with 2 bay leaves, 1 sprig thyme": the amounts are those of its parts
_SAYS_MORE = late_regex(r"(?:with|such|made|or|from|including|plus|e\.g|i\.e)\b", re.IGNORECASE)
_PART_OF_IT = late_regex(
    r"\b(?:sticks?|bones?|ribs?|zest|peel|rind|juice|skin|seeds?|leaves|leaf|yolks?|whites?|pieces?|strips?|slices?|wedges?|halves|schale|saft"
    r"|zeste|jus|scorza|buccia|succo|cáscara|zumo|schil|sap|fruits?|flesh|pulp|chips|berries|meat|florets?|kernels?|crumbs|cubes|chunks)\b",
    re.IGNORECASE,
)
_DILUTED = late_regex(
    rf"\b(?:in|with|to)\s+(?:about\s+)?{_NUMBER}\s*(?:{_UNIT}|g|ml|l|cups?|gals?|qts?|pts?)\b",
    re.IGNORECASE,
)
# "1 orange 1 lemon"; but "flour type 405 sifted", "vitamin B 12 powder"
_NEXT = late_regex(
    r"(?<!type)(?<!typ)(?<!no\.)(?<!no)(?<!number)(?<!grade)(?<!vitamin)(?<!omega)(?<!Omega)(?<!\sen)(?<!\sin)(?<=[a-zà-ÿ]{2})\s[1-9]\d?\s+"
    r"(?!to\b|or\b|x\b|in\b|seeds?\b|grains?\b|spices?\b|years?\b|days?\b|hours?\b)[A-Za-zÄÖÜà-ÿ][a-zà-ÿ]{2,}"
)
# "60 g almonds 100 g butter"
_NEXT_MEASURE = late_regex(
    r"[^\W\d]{3,}\s+(?:\d+[\s-])?[\d½⅓⅔¼¾⅛](?:[\d.,/]*\d)?[½⅓⅔¼¾⅛]?[\s-]*(?:k?g|gr|ml|cl|dl|l|(?-i:EL|TL)|cups?|tbsps?|tsps?"
    r"|tablespoons?|teaspoons?|oz|ounces?|lbs?|pounds?|pints?|quarts?|sticks?)\b\.?\s+[^\W\d]{3,}",
    re.IGNORECASE,
)
# "½ cup sugar: 7 pieces": an amount at both ends, as a page's machine leaves it
_AT_BOTH_ENDS = late_regex(rf"[^\d:]*[^\W\d]\s*:\s*{_NUMBER}(?!\s*%)(?:\s|$)")
_GLUED_UNIT = late_regex(r"(?P<unit>gr?|kg|ml|cl|dl|EL|TL)(?=[A-ZÄÖÜ][a-zäöüß])")
_FOR_ONE = late_regex(
    r"\b(?P<said>(?:per|for\s+each|in\s+each|to\s+each|to\s+every)\s+"
    r"(?:\d+\s*-?(?:ounce|oz|ml|g|pound|lb|litre)\s+)?"
    r"(?:half[\s-]pint|pint|quart|litre|liter|jar|bottle|kg|kilo|pound|lb|cup|gallon|person|container|pot|tin|tube|tub"
    r"|bag|bar|mould|mold|glass))s?\b",
    re.IGNORECASE,
)
_ONE_OF = late_regex(r"\bper\b|\beach\b|\bevery\b", re.IGNORECASE)
_DIGIT = late_regex(r"[\d½⅓⅔¼¾⅛]")
_POUNDS = late_regex(r"#\s*(?=[^\W\d])")
_LONG_FOOD = 10
"""Metres of a food: casings and laces are measured so, and no more than a few of them."""
_FEW = 12  # so many may be cups or spoons; more are grams or millilitres
_GR = late_regex(r"\s*\d{1,2}\s*gr\b", re.IGNORECASE)
_COUNT_FIRST = late_regex(r"(?:about|approx\.?|approximately|around)\s+\d", re.IGNORECASE)
_NO_BEGINNING = late_regex(
    r"(?:and|or|plus|minus|to|from|with|per|à|a|o|ou|oder|bis|tot|[Jj]e(?:weils)?)\s|[lI|][/.]"
)
# "1 lemon and a lime", "un limone e un'arancia"; but "2 eggs and a little milk" is loose anyway
_AND_ONE = late_regex(
    r"[^\W\d]{3,}\s+(?:and|und|et|e|y|en|&|\+)\s+(?:(?:an?|one|eine?|une?|una|uno|een)\s+|un['’])"
    r"(?!(?:bit|little|few|sprinkl\w*|extra|wenig|bisschen|etwas|peu|poco|po['’]?|beetje)\b)[^\W\d]{3,}"
    # "one lemon and a half"
    r"|[^\W\d]{3,}\s+(?:et\s+demie?|e\s+mezz[oa]|y\s+medi[oa])\b",
    re.IGNORECASE,
)
_WRITE_ONE = 'Write one amount before the food, such as "250 g sugar", and the rest after a comma.'


def refuse_left_over(reading: LineReading, text: str) -> None:
    """Ask about an amount or a unit that was not read: it is not guessed, nor lost."""
    item = _FOODS_WITH_UNITS.sub("food", reading.item)
    left = _LEFT_OVER.search(item) or _LONE_LETTER.match(item) or _GLUED_UNIT.match(item)
    if left and isinstance(reading.amount, Amount):
        raise Unreadable(f'"{left["unit"]}" is left over in "{reading.item}".', _WRITE_ONE)
    second = _SECOND.search(item) or re.match(r"[-–—/?]\s?\w", item)
    second = second or _COUNT_FIRST.match(item)
    if isinstance(reading.amount, Amount):
        second = second or _AT_BOTH_ENDS.match(item)
    _refuse_lengths(reading, item)
    counted = isinstance(reading.amount, Amount) and not reading.amount.unit
    second = second or (_AND_ONE.search(item) if counted else None)
    if second:
        raise _several(text)
    refuse_each(reading, text)
    _refuse_another(reading, item, text)
    refuse_share(reading)
    if _NO_BEGINNING.match(item):
        raise Unreadable(f'"{text.strip()}" could not be read whole.', _WRITE_ONE)
    _refuse_unmeasured_number(reading, item, left)
    _refuse_poured_ounces(reading)
    _refuse_short_great(reading, text)
    _refuse_head_behind(reading)


# "4 eggs, beaten Cream Cheese Frosting": the head of what follows, behind what is done
_HEAD_BEHIND = late_regex(
    r"(?:[a-z]+\s+){0,2}(?-i:beaten|softened|chopped|sifted|melted|diced|sliced|peeled|grated|toasted|drained|whisked"
    r"|separated|crushed|minced|halved|optional)\s+(?P<head>(?:[A-Z][a-z'’]+\s+){0,3}[A-Z][a-z'’]+)"
)
_PARTS_OF_A_CAKE = frozenset(
    {"frosting", "icing", "topping", "glaze", "filling", "sauce", "dressing", "crust", "crumble"}
    | {"dough", "batter", "coating", "syrup", "garnish", "base", "streusel"}
)


def _refuse_head_behind(reading: LineReading) -> None:
    """Ask about a heading that a page set behind what is done with the line above it."""
    found = _HEAD_BEHIND.fullmatch(reading.note)
    if found is None or (reading.item.istitle() and " " in reading.item):
        return
    head = found["head"]
    if head.split()[-1].lower() in _PARTS_OF_A_CAKE or find_staple(head):
        raise Unreadable(
            f'"{head}" may be another thing, or the head of what follows.',
            "Write it on a line of its own, or leave it out.",
        )


def _refuse_lengths(reading: LineReading, item: str) -> None:
    """Ask about "175m milk" and "1# butter": a lost letter, and an American sign for the pound."""
    amount = reading.amount
    if not isinstance(amount, Amount):
        return
    number = show_number(amount.high)
    if pounds := _POUNDS.match(item):
        mend = f'Write "{number} lb {item[pounds.end() :]}".'
        raise Unreadable(f'"#" in "{number}{item}" may be pounds.', mend)
    if amount.unit != "m" or amount.high <= _LONG_FOOD:
        return
    food = find_staple(item)
    if food is not None and "craft" not in food.tags:
        raise Unreadable(
            f'"{number} m" of {item} is a length.',
            f'Write "{number} ml {item}", or what it weighs.',
        )


def _several(text: str) -> Unreadable:
    return Unreadable(
        f'"{text.strip()}" says more than one amount.', "Write a line for each of them."
    )


def _refuse_short_great(reading: LineReading, text: str) -> None:
    """Ask about "2 gr. Äpfel": "gr." shortens the gram, and "große" or "grosses" too."""
    amount = reading.amount
    if not (isinstance(amount, Amount) and amount.unit == "g" and _GR.match(text)):
        return
    if amount.high > _FEW or _never_counted().fullmatch(reading.item):
        return
    staple = find_staple(reading.item)
    if staple and staple.each_g and amount.high < staple.each_g:
        raise Unreadable(
            f'"gr" in "{text.strip()}" could be grams or large ones.', 'Write "g" or "large".'
        )


@cache
def _never_counted() -> re.Pattern[str]:
    """Return the pattern of a food that ends in what is weighed or poured."""
    words = either(line_words()["never_counted"])
    # "anchovies in oil" are counted, and a cake of yeast is
    counted = r"(?!.*\s(?:in|with|of)\s)(?!cakes?\s)"
    return late_regex(rf"{counted}(?:.*[\s-])?(?:{words})(?:\s*\([^()]*\))?", re.IGNORECASE)


def _likely(amount: Amount) -> str:
    few = "cup" if amount.high <= 1 else "cups"
    return "g" if amount.high > _FEW else few


def refuse_counted_mass(reading: LineReading, text: str) -> None:
    """Ask about "200 sugar" and "½ milk": what is weighed or poured has lost its unit."""
    amount = reading.amount
    if not isinstance(amount, Amount) or amount.unit or amount.noun or reading.each or reading.also:
        return
    if _never_counted().fullmatch(reading.item):
        such = f"{show_number(amount.high)} {_likely(amount)}"
        mend = f'Write what it is measured in, such as "{such}".'
        raise Unreadable(f'"{text.strip()}" has no unit.', mend)


def _refuse_another(reading: LineReading, item: str, text: str) -> None:
    """Ask where a line measures a second thing, or says how much goes with one of another."""
    if not isinstance(reading.amount, Amount):
        return
    for_one = _FOR_ONE.search(f"{item}, {reading.note}") if _ONE_OF.search(text) else None
    if for_one:
        raise Unreadable(
            f'"{text.strip()}" says how much {for_one["said"]}, not how much in all.',
            'Write the whole amount, or "- item: garlic", "amount: 1 clove", '
            '"scales: per container" below each other.',
        )
    own = reading.spans.get("amount", (0, 0))
    behind = own[1] == len(text) and own[0] > 0  # "garlic, peeled, 3 cloves" has no cloves in it
    if _names_another(item, text[: own[0]] if behind else text):
        raise _several(text)
    if _measures_on(reading):
        raise _several(text)
    if _DIGIT.match(reading.note):
        other = _WITH_ITS_MEASURE.match(reading.note)
        food = find_staple(other["food"]) if other else None
        if food is not None and food not in (find_staple(item), find_staple(text)):
            raise _several(text)
        if _ANOTHER.match(reading.note):
            raise _several(text)
    if _DIGIT.search(item) and (
        _NEXT_MEASURE.search(item) or _DILUTED.search(item) or _NEXT.search(item)
    ):
        raise _several(text)


def _measures_on(reading: LineReading) -> bool:
    """Whether a second thing follows what is said of the first: "softened ¼ cup sugar"."""
    bare = _IN_BRACKETS.sub("", f" {reading.note}")
    for piece in re.split(r"[,;]\s+", bare):
        more = _MEASURED_ON.search(piece)
        said = normal_form(piece[: more.start()]).split() if more else []
        # "(about 1 quart berries)" is the same berries over again
        if more is None or _ABOUT.issuperset(said) or not all_harmless(said):
            continue
        food = find_staple(more["food"].strip())
        if food is not None and food != find_staple(reading.item):
            return True
    return False


def _names_another(item: str, text: str) -> bool:
    """Whether what stands behind a comma is an amount of another food, and nothing else."""
    pieces = _THINGS_APART.split(_IN_BRACKETS.sub("", text))[1:]
    apart = (_AND_SO_MUCH.split(one) if _DIGIT.match(one.strip()) else [one] for one in pieces)
    pieces = [_NEARLY.sub("", piece) for several in apart for piece in several]
    if not any(_DIGIT.match(piece.strip()) for piece in pieces):
        return False
    own = find_staple(_THINGS_APART.split(item)[0]) or find_staple(text)
    foods = []
    for piece in pieces:
        if _SAYS_MORE.match(piece):
            break
        amount_first = _DIGIT.match(piece.strip())
        behind = _THING_BEHIND.fullmatch(piece.strip()) if amount_first else None
        named = "" if behind is None else _PART_OF_IT.sub("", behind["food"]).strip()
        # "2 lemons, 1 strip of peel" is one thing, "1 tsp cayenne, 2 tsp celery seeds" are two
        # a pack is of something, if only its last word is known: "1 pkg garlic cheese"
        whole = named.split()[-1:] if behind and behind["pack"] else []
        known = behind and (find_staple(named) or (whole and find_staple(whole[0])))
        food = find_staple(behind["food"]) or known if behind and known else None
        part = behind is not None and named != behind["food"].strip()
        foods += [food] if food and not (part and find_staple(named) == own) else []
    if not foods:
        return False
    others = sum(own is None or food.name != own.name for food in foods)
    # of an unknown thing one more may be a part of it: "1 string of lights, 3 button cells"
    return others > (own is None)


def _refuse_unmeasured_number(reading: LineReading, item: str, unit: re.Match[str] | None) -> None:
    """Ask where a line that measures nothing holds a number all the same."""
    if not isinstance(reading.amount, Unmeasured) or reading.amount.words != "as needed":
        return
    number = _ANY_NUMBER.search(item)
    if number and not re.search(
        r"\b(?:types?|typ|no|nr|number|grade)\.?$", item[: number.start()], re.I
    ):
        raise Unreadable(f'The amount in "{reading.item}" could not be read.', _WRITE_ONE)
    measure = _MEASURE_IN_NOTE.search(reading.note) or _SPOKEN.search(reading.note)
    measure = measure or _UNIT_FIRST.search(reading.note)
    if not measure and not _ITS_PARTS.search(reading.note):
        measure = _BEGINS_COUNTED.match(reading.note)
    if measure or unit:
        said = measure["measure"] if measure else unit["unit"]  # type: ignore[index]
        raise Unreadable(f'"{said}" stands behind the food and could not be read.', _WRITE_ONE)


@cache
def spirit_words() -> re.Pattern[str]:
    """Return the pattern of the names of strong drinks."""
    return late_regex(rf"\b(?:{either(line_words()['spirits'])})s?\b", re.IGNORECASE)


def _refuse_poured_ounces(reading: LineReading) -> None:
    """Ask about "1½ oz gin": a bar's ounce is a measure by volume, a kitchen's a weight."""
    own = reading.amount
    if not isinstance(own, Amount) or own.unit != "oz" or reading.also:
        return
    if not re.search(rf"(?:{spirit_words().pattern})$", reading.item, re.IGNORECASE):
        return
    number = show_number(own.low)
    raise Unreadable(
        f'"{number} oz {reading.item}" may be poured or weighed.',
        f'Write "{number} fl oz {reading.item}", or its weight in grams.',
    )


def is_poured(amount: object) -> bool:
    """Whether an amount is measured by volume."""
    return isinstance(amount, Amount) and bool(amount.unit) and size_of(amount.unit) == "volume"
