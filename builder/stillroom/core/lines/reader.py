"""One line of a recipe, read as a cook wrote it: how much, of what, and what is said beside it.

Every part keeps its characters. The amount may stand before the food or after it; where none is
measured the line says so. What could mean two things is a question. Used by the recipe file and by
whatever brings recipes in. Leaves out what the food is: the larder knows.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from stillroom.core.amounts.quantities import Amount, Unmeasured, show_amount
from stillroom.core.amounts.units import System, counted_nouns
from stillroom.core.lines.amounts import Measured, is_pack, read_measured
from stillroom.core.lines.aside import read_aside
from stillroom.core.lines.behind import read_amount_behind, read_measured_to, read_taken_of
from stillroom.core.lines.doubts import OWN_NUMBER, refuse_left_over
from stillroom.core.lines.measures import read_noun, read_unit
from stillroom.core.lines.number_in_name import begins_in_its_name
from stillroom.core.lines.number_words import languages_that_begin, read_number_words
from stillroom.core.lines.numbers import Marks, marks_of, read_number
from stillroom.core.lines.packs_said import size_before_pack
from stillroom.core.lines.part_of_one import part_of_one
from stillroom.core.lines.parts_of_line import (
    LineReading,
    after_of,
    past_article,
    split_food,
    unmeasured_words,
    vague_words,
    with_measured,
)
from stillroom.core.lines.plainly import put_plainly
from stillroom.core.lines.ratios import refuse_ratio
from stillroom.core.lines.size_beside import put_size_apart, read_size_alone
from stillroom.core.lines.staple_table import find_staple
from stillroom.core.lines.strength import strength_apart
from stillroom.core.lines.two_measures import refuse_two_measures
from stillroom.core.lines.unglued import parted_from_its_food
from stillroom.core.words.odd_figures import ODD_FIGURE, refuse_endless
from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Unreadable

LONGEST = 500  # characters: longer is a paragraph, not a line
_CONTROL = late_regex(r"[\x00-\x08\x0b-\x1f\x7f\u2028\u2029]")
# `2" piece of ginger`, `1½” stick cinnamon`
_INCH_SIGN = late_regex(r"(?<=[\d½¼¾⅓⅔⅛])\s?(?:[\"”″]|''|’’)(?=[\s-]+[A-Za-z(]|[,)]|$)")
# "3 1/4 Ib. sugar", "4 1bs. plums": how a machine reads the small l of a printed pound
_SCANNED_POUND = late_regex(
    r"\s*(?P<number>\d[\d ./½¼¾]*?|[½¼¾])\s*(?P<said>Ibs?\b\.?|(?<=\s)1bs?\b\.?)(?=\s*[a-zA-Z])"
)
_BULLET = late_regex(r"^\s*(?:[-*•·–▢□☐]\s+)*(?:[-–•·](?=[^\W\d])|\.\s+(?=\d))?", re.IGNORECASE)
# said before an amount: "Additional 1 tbsp sugar", "Optional: ½ cup nuts"
_LEAD = late_regex(
    r"(?P<said>optional(?:ly)?(?=\s*:|\s+[\d½⅓⅔¼¾⅛])|\(optional(?:ly)?\)(?=\s)|(?:an\s+)?additional|another|extra|plus)\s*:?\s+"
    r"(?=(?:about\s+)?(?:[\d½⅓⅔¼¾⅛]|(?:an?|one|two|three|four|six|half|a few)\s)|(?<=:\s))"
    # the same in other languages, before whatever follows: "eventuell etwas Zitronensaft"
    r"|(?P<may>eventuell|eventuelt|evtl?\.?|ewentualnie|opcjonalnie|mahdollisesti|valgfritt|ggf\.|gegebenenfalls|éventuellement|facultatif|facoltativo|facultativo|eventualmente"
    r"|opzionale|opcional|eventueel|optioneel|ev\.?(?=\s+\d)|valfritt"
    r"|(?:nach\s+(?:Belieben|Wunsch|Geschmack)|to\s+taste|if\s+(?:liked|you\s+like)|au\s+choix|a\s+piacere|al\s+gusto"
    r"|naar\s+(?:keuze|smaak)|efter\s+smak)(?=\s*:))\s*:?\s+(?=\S)",
    re.IGNORECASE,
)
# "2:1 Gelierzucker" names a sugar, "80/20 mince" a mince, "80 proof vodka" how strong it is
_PARTS_TO_ONE = late_regex(
    r"\d{1,3}\s?:\s?\d{1,3}\b|(?:50/50|60/40|70/30|80/20|90/10)\s(?=[^\W\d])|\d{2,3}[\s-]*proof\b",
    re.IGNORECASE,
)
_DASH = late_regex(r"\s*[-–—]\s+(?=[^\W\d])")
_AMOUNT_IN_BRACKETS = late_regex(r"\((?P<amount>[\d½⅓⅔¼¾⅛][^()]{0,15})\)\s+(?=[^\W\d])")
# "Cumin- 100 gms", "Olive oil = 26 oz", "sugar | 200 g"
_DASH_BEHIND = late_regex(r"(?<=[^\W\d_]{2})\s?[-–—|=]+$")
_LOOSE_END = late_regex(r"\s+[-–—]+\s*$")  # "3 dl di succo –"
# "Zucchero in polvere, grammi 750", as older Italian books have it; "n." is so many
_UNIT_FIRST = late_regex(
    r"(?P<sep>[,:]|\s)\s*(?P<about>circa\s+)?(?:(?P<unit>grammi|litri|litro|decilitri|centilitri|chilogrammi|chili|etti"
    r"|(?:gr|g|kg|hg|ml|cl|dl|l)\.?)|n\.|numero)\s*(?P<number>\d+(?:[.,]\d+)?(?:/\d+)?)(?=\s*[.,;]?\s*(?:$|\())",
    re.IGNORECASE,
)
# in French "cc" is a coffee spoon, elsewhere a cubic centimetre
_COFFEE_SPOON = late_regex(
    r"(?<![\d.,/])(?P<few>[1-9](?:[.,]5|/[2-9])?|[½¼¾])\s?c\.?\s?c\.?\s(?=[^\W\d])", re.IGNORECASE
)
# two words of one form, and no food before the comma: "dunkle, flüssige Kuvertüre"
_BEFORE_ITS_NOUN = {
    "de": late_regex(r"\b(?P<first>[a-zäöüß]{2,}e[rsnm]?),\s(?=[a-zäöüß]+e[rsnm]?\s[A-ZÄÖÜ])"),
    "pl": late_regex(
        r"(?<=\s)(?P<first>[a-ząćęłńóśźż]{2,}(?:(?P<case>ej|ego)|[yi]ch)),"
        r"\s(?=[a-ząćęłńóśźż]+(?(case)(?P=case)|[yi]ch)\s[^\W\d])"
    ),
    "da": late_regex(r"(?<=\s)(?P<first>[a-zæøå]{3,}ede|fine),\s(?=[a-zæøå]+ede\s(?!og\b)\w)"),
}
_BEFORE_ITS_NOUN["nb"] = _BEFORE_ITS_NOUN["da"]
_CLOVES = late_regex(r"\b(cloves?),\s+(garlic)\b", re.IGNORECASE)  # "4 cloves, garlic, minced"
_INSTEAD = late_regex(r"(?:or|oder|ou)\s+(?P<what>\S.*)", re.IGNORECASE)
_LEFT_OF = late_regex(r"\s+(?:of|de|di|da|von|van|zu(?:\s+je)?|je|à|a|@)$", re.IGNORECASE)
_END_MEASURE = late_regex(r"\s+(?=[0-9½⅓⅔¼¾⅛][0-9½⅓⅔¼¾⅛./ ]*\s*(?:m[lL]|g|kg|L|cl|oz)\.?\s*$)")


def read_line(text: str, system: System = "metric", language: str = "en_GB") -> LineReading:
    """Read an ingredient line; raises Unreadable with what to write where it could mean two things.

    >>> reading = read_line("225g/8oz butter, softened")
    >>> reading.item, reading.note, str(reading.amount.low), reading.also[0].unit
    ('butter', 'softened', '225', 'oz')
    """
    if isinstance(found := _read_once(text, system, language), Unreadable):
        raise Unreadable(found.what, found.mend)
    return found


@lru_cache(maxsize=8192)
def _read_once(text: str, system: System, language: str) -> LineReading | Unreadable:
    """Return what a line says, or why it cannot be read: bringing asks it of most lines thrice."""
    try:
        return _read(text, system, language)
    except Unreadable as wrong:
        return wrong.with_traceback(None)


def _read(text: str, system: System, language: str) -> LineReading:
    _refuse_odd_signs(text)
    marks = marks_of(language)
    text = put_plainly(part_of_one(text), system, marks.language)
    text = _counted_once(_unbracketed(_INCH_SIGN.sub(" inch", text)), marks)
    parted = parted_from_its_food(_LOOSE_END.sub("", text), system, marks.language)
    text = size_before_pack(parted)
    if "lov" in text:
        text = _CLOVES.sub(r"\1 \2", text)
    if marks.language == "fr":
        text = _COFFEE_SPOON.sub(r"\g<few> c. à c. ", text)
    refuse_two_measures(text, system, marks.language)
    if first := _BEFORE_ITS_NOUN.get(marks.language):
        text = first.sub(r"\g<first> ", text)
    if marks.language == "it":
        text = _UNIT_FIRST.sub(r"\g<sep> \g<about>\g<number> \g<unit>", text)
    start = _first(text)
    lead = _LEAD.match(text, start)
    start = lead.end() if lead else start
    found = strength_apart(
        _amount_first(text, start, system, marks)
        or read_taken_of(text, start, system, marks)
        or read_measured_to(text, start, system, marks)
        or read_amount_behind(text, start, system, marks)
        or _no_amount(text, start, system, marks),
        system,
        marks.language,
    )
    found = replace(found, item=_DASH_BEHIND.sub("", found.item))
    refuse_left_over(found, text)
    if lead:
        said = " ".join((lead["said"] or lead["may"]).lower().strip("()").split())
        listed = text[lead.start() : lead.end()].rstrip().endswith(":") and bool(lead["may"])
        both = (
            (found.note, said) if listed else (said, found.note)
        )  # "nach Belieben: Nüsse, Rosinen"
        found = replace(found, note=", ".join(filter(None, both)))
    return found


def _unbracketed(text: str) -> str:
    """Take the brackets from a line that stands in them whole: "(1 lemon)"."""
    bare = text.strip()
    if bare[:1] == "(" and bare[-1:] == ")" and "(" not in bare[1:]:
        return bare[1:-1].strip()
    first = _AMOUNT_IN_BRACKETS.match(bare)  # "(1 kg) sugar"
    return f"{first['amount'].strip()} {bare[first.end() :]}" if first else text


_NUMBER_IN_WORDS = late_regex(r"\s*[(\[]\s*(?P<said>[^\W\d][^()\[\]\d]{1,24}?)\s*[)\]]")


def _counted_once(text: str, marks: Marks) -> str:
    """Take a number said again in words from beside its figure: "3/4 (three-quarters) cup"."""
    start = len(text) - len(text.lstrip())
    if not text[start : start + 1].isnumeric():
        return text
    figure = read_number(text, start, marks)
    said = _NUMBER_IN_WORDS.match(text, figure[1]) if figure else None
    spoken = read_number_words(said["said"], 0, marks.language) if said else None
    if figure is None or said is None or spoken is None or spoken[1] < len(said["said"]):
        return text
    if spoken[0] != figure[0]:
        raise Unreadable(
            f'"{text[start : said.end()]}" says two numbers.', "Write the one that is right."
        )
    return text[: figure[1]] + text[said.end() :]


def _refuse_odd_signs(text: str) -> None:
    if _CONTROL.search(text):
        raise Unreadable(
            "The line holds a sign that cannot be seen.", "Type the line again by hand."
        )
    if "\ufffd" in text:  # what a program could not read: a "½" most often
        raise Unreadable(
            "A sign of the line was lost when it was saved (\ufffd).",
            "Look it up where it came from, and type it.",
        )
    if scanned := _SCANNED_POUND.match(text):
        raise Unreadable(
            f'"{scanned["said"]}" may be a scanned "lb".',
            f'Look it up, and write "{scanned["number"].strip()} lb".',
        )
    odd = ODD_FIGURE.search(text)
    if odd and odd.start() < 12 and not re.search(r"[A-Za-z]", text[: odd.start()]):
        raise Unreadable(f'"{odd[0]}" is not a number here.', 'Write it with figures: "1", "2".')
    if len(text) > LONGEST:
        raise Unreadable("The line is too long for one ingredient.", "Write one ingredient a line.")
    refuse_endless(text)
    refuse_ratio(text)


def _first(text: str) -> int:
    bullet = _BULLET.match(text)
    start = bullet.end() if bullet else len(text) - len(text.lstrip())
    instead = _INSTEAD.match(text, start)
    if instead:
        raise Unreadable(
            f'"{text.strip()}" stands in place of the line before it.',
            f'Write it at the end of that line, after a comma: ", or {instead["what"].strip()}".',
        )
    if re.match(r"[-−‒﹣－]\s?\d", text[start:]) or _BELOW_NOTHING.search(text):
        raise Unreadable(f'"{text.strip()}" is less than nothing.', "Write an amount above 0.")
    return start


# "sugar: -5 g"; in "sugar - 5 g" and "sugar –5 g" the dash only divides
_BELOW_NOTHING = late_regex(
    r"[,:;]\s?[-−﹣－]\d+(?:[.,/]\d+)?\s?(?:k?g|mg|[mcd]?l|oz|lb|cups?|tsp|tbsp)\b"
)


def _amount_first(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    vague = vague_words().match(text, start)
    if vague:
        # "a few dashes of bitters", "ett par matskedar"; a letter alone is no unit there
        noun = read_unit(text, vague.end(), system) or read_noun(text, vague.end())
        noun = noun if noun and noun[1] > vague.end() + 1 else None
        end = noun[1] if noun and text[noun[1] : noun[1] + 1] == " " else vague.end("words")
        words = " ".join(text[vague.start("words") : end].lower().split())
        named = after_of(text, end, measured=True)
        reading = split_food(text, named, Unmeasured(words))
        reading = read_aside(reading, system, marks) or reading
        return replace(reading, spans={**reading.spans, "amount": (start, end)})
    in_name = _PARTS_TO_ONE.match(text, start) or begins_in_its_name(text, start)
    measured = None if in_name else read_measured(text, start, system, marks)
    if measured is None:
        return None
    named = bool(measured.amount.unit or measured.amount.noun or measured.each)
    rest = past_article(text, after_of(text, measured.end, named), measured)
    size = read_size_alone(text, measured)
    if size:
        return size
    dash = _DASH.match(text, rest) if named else None  # "55 g – approx 5 candy canes"
    rest = dash.end() if dash else rest
    sized = measured.amount.unit or (measured.each and not measured.amount.noun)
    if sized and text[rest : rest + 1] in (",", ";"):
        rest = after_of(text, rest + 1, named)
    if measured.amount.noun and _WITH.match(text, rest):  # "6 jars with lids"
        alone = LineReading(measured.amount, "", text[rest:].strip())
        return _noun_alone(with_measured(text, alone, measured), measured, text)
    aside = _ASIDE.match(text, measured.end) if named else None  # "1 sheet (thawed), puff pastry"
    reading = split_food(text, aside.end() if aside else rest, measured.amount)
    if aside:
        reading = replace(reading, note=", ".join(filter(None, (aside["said"], reading.note))))
    reading = with_measured(text, reading, measured)
    if not reading.item:
        return _noun_alone(reading, measured, text)
    reading = put_size_apart(reading)
    if re.match(r"[/\d½⅓⅔¼¾]", reading.item) and not OWN_NUMBER.match(reading.item):
        _refuse_two_figures(text)
        raise Unreadable(
            f'"{reading.item}" begins with a number that has no unit.',
            'Write it with its unit, such as "100 g/3½ oz peas", or leave it out.',
        )
    return _said_again(reading, system, marks)


def _refuse_two_figures(text: str) -> None:
    """Ask about "1 500 g sugar": fifteen hundred, or one of five hundred."""
    two = re.match(r"\s*([1-9]\d{0,2})[ \u00a0](\d{3})\s*([a-z]+)", text, re.IGNORECASE)
    if two:
        raise Unreadable(
            f'"{two[0].strip()}" could be read in two ways.',
            f'Write "{two[1]}{two[2]} {two[3]}" or "{two[1]} x {two[2]} {two[3]}".',
        )


_WITH = late_regex(r"(?:with|for|from|in)\s", re.IGNORECASE)
_ASIDE = late_regex(r"\s*\((?P<said>[^()]*)\)\s*,\s*(?=[A-Za-z])")


def _said_again(reading: LineReading, system: System, marks: Marks) -> LineReading:
    """Take a measure that stands at the end, "1 tbsp soy sauce 15 ml", for the same again.

    Behind "of", "à" or "zu je" it is that of each of what is counted: "2 Dosen Bohnen à 400 g".
    """
    last = _END_MEASURE.search(reading.item)
    measured = read_measured(reading.item, last.end(), system, marks) if last else None
    if last is None or measured is None or not isinstance(reading.amount, Amount):
        return reading
    left = _LEFT_OF.search(reading.item, 0, last.start())  # "crème de 25 cl"
    item = reading.item[: left.start() if left else last.start()]
    if left and not reading.amount.unit and reading.each is None:
        return replace(reading, item=item, each=measured.amount)
    if is_pack(reading.amount.noun) and reading.amount.high > 1:  # of one, or of all of them
        said = reading.item[last.end() :].strip()
        return replace(reading, item=item, note=", ".join(filter(None, (said, reading.note))))
    return replace(reading, item=item, also=(*reading.also, measured.amount))


MEASURE_WORDS = frozenset(
    {"speck", "dab", "smidgen", "sliver", "grain", "soupçon", "klick", "Hauch", "Stich"}
    | {"pinch", "dash", "handful", "knob", "drop", "splash", "splosh", "drizzle", "glug", "dollop"}
    | {"squeeze", "shake", "twist", "grind", "grating", "sprinkling", "sprinkle", "blob", "nub"}
    | {
        "Prise",
        "Schuss",
        "Msp",
        "Messerspitze",
        "Handvoll",
        "pincée",
        "poignée",
        "pizca",
        "pizzico",
    }
    | {"snufje", "scheutje", "puñado", "goutte", "fistful", "capful", "spoonful"}
)
"""Measures in words, never things of their own, and of no size that anybody could miss."""


def _noun_alone(reading: LineReading, measured: Measured, text: str) -> LineReading:
    """Read "16 cloves" alone is sixteen of them, "2 limes" of course two; "8 oz" is of nothing."""
    noun = measured.amount.noun
    if noun in MEASURE_WORDS:
        raise Unreadable(f'"{text.strip()}" does not say what it is.', 'Write "1 pinch salt".')
    if noun and measured.each is None:
        one, many = counted_nouns()[noun]
        item = many if measured.amount.high > 1 else one
        return replace(reading, amount=replace(measured.amount, noun=""), item=item)
    if noun and measured.each:  # "2 half-pint jars": the things themselves, and their size
        item = counted_nouns()[noun][measured.amount.high > 1]
        note = ", ".join(part for part in (show_amount(measured.each), reading.note) if part)
        own = replace(measured.amount, noun="")
        return replace(reading, amount=own, item=item, note=note, each=None)
    raise Unreadable(f'"{text.strip()}" does not say what it is.', 'Write "250 g sugar".')


def _elsewhere(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "mezzo litro di acqua" in a book of another language, where one language alone reads it.

    Raises Unreadable where two languages read two amounts.
    """
    found: list[LineReading] = []
    for language in languages_that_begin(text, start) - {marks.language}:
        other = replace(marks, language=language)
        try:
            reading = _amount_first(text, start, system, other) or read_taken_of(
                text, start, system, other
            )
        except Unreadable:
            continue
        amount = reading.amount if reading else None
        if reading is None or not isinstance(amount, Amount):
            continue
        if amount.unit or amount.noun or find_staple(reading.item):
            found.append(reading)
    if len({one.amount for one in found}) > 1:
        raise Unreadable(
            f'The amount in "{text.strip()}" could not be read.', "Write it in figures."
        )
    return found[0] if found else None


def _no_amount(text: str, start: int, system: System, marks: Marks) -> LineReading:
    """Nothing is measured: "salt, to taste", "butter for greasing", "salt and pepper"."""
    wanted = unmeasured_words().search(text, start)
    reading = split_food(text, start, None)
    if not reading.item or not re.search(r"[A-Za-zÀ-ÿ]", reading.item):
        raise Unreadable(f'"{text.strip()}" is not an ingredient.', 'Write "250 g sugar".')
    if re.match(r"[^A-Za-zÀ-ÿ]*\d", reading.item) and not OWN_NUMBER.match(reading.item):
        raise Unreadable(f'"{text.strip()}" does not begin with an amount.', 'Write "250 g sugar".')
    aside = read_aside(reading, system, marks) or _elsewhere(text, start, system, marks)
    if aside:
        return aside
    words = wanted["words"].lower() if wanted else "as needed"
    words = " ".join(words.split())
    note = re.sub(
        rf"^{re.escape(words.rstrip('.'))}(?!\w)\s*(?:[,.(]\s*|$|(?=\d))",
        "",
        reading.note,
        flags=re.IGNORECASE,
    )
    return replace(reading, amount=Unmeasured(words), note=note)
