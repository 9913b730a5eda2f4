"""One line of a recipe, read as a cook wrote it: how much, of what, and what is said beside it.

Every part keeps its characters. The amount may stand before the food or after it; where none is
measured the line says so. What could mean two things is a question. Used by the recipe file and by
whatever brings recipes in. Leaves out what the food is: the larder knows.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache

from stillroom.core.line_amounts import Measured, read_measured
from stillroom.core.line_numbers import Marks, marks_of
from stillroom.core.problems import Unreadable
from stillroom.core.quantities import Amount, Unmeasured
from stillroom.core.units import System, counted_nouns, read_data

LONGEST = 500  # characters: longer is a paragraph, not a line
_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f\x7f\u2028\u2029]")
_NO_DECIMAL = re.compile(r"[\u2460-\u24ff\u2776-\u2793\u00b2\u00b3\u00b9\u2070-\u2089]")
_BULLET = re.compile(r"^\s*(?:[-*•·–▢□☐]\s+)*(?:optional\s*:\s*)?", re.IGNORECASE)
_OF = re.compile(r"\s*(?:[-x×]\s+)?(?:of\s+(?:the\s+|a\s+|an\s+)?)?", re.IGNORECASE)
_CUT = re.compile(
    r"\s*(?:,|;|\s[-–—]\s|\(|\[|\s+plus\s+(?:extra|more|another)\b|\splus\s(?=[0-9½¼¾])"
    r"|\s+[+]\s+(?:extra|more)\b"
    r"|\s+(?=(?:mixed|dissolved|blended|combined|whisked|beaten|soaked|diluted)\s+(?:with|in|into)\b)"
    r"|\s+(?=or\s+[0-9½⅓⅔¼¾⅛]))"
)
_STRENGTH = re.compile(
    r"\s*\b(?:at\s+)?(?P<number>\d+(?:[.,]\d+)?)\s*"
    r"(?:%\s*(?:vol|abv|alc|alcohol)(?:\s+by\s+vol(?:ume)?)?\b\.?|(?P<proof>(?:°|-|\s)*proof\b))\s*",
    re.IGNORECASE,
)
_BARE_PERCENT = re.compile(r"\s+(?P<number>\d+(?:[.,]\d+)?)\s*%$")
_CASK = re.compile(r"\b(?:cask|barrel|navy)[\s-]strength\b|\b(?:over|under)proof\b", re.IGNORECASE)
_PER = re.compile(r"\bper\b|\bfor (?:each|every)\b|\bto each\b")
_LEFT_OVER = re.compile(
    r"(?:^|[\s(/])(?P<unit>\d*(?:tbsps?|tsps?|tablespoons?|teaspoons?|ozs?|ounces?|fl|mls?|kgs?|lbs?|grams?|litres?"
    r"|liters?|pints?|quarts?|gallons?|dl|cl)\.?)(?=$|[\s,)/])",
    re.IGNORECASE,
)
_FOODS_WITH_UNITS = re.compile(
    r"\bgram\s+(?:flour|dal|dhal)\b|\b(?:black|split|green|red|bengal|horse|urad|white)\s+gram\b"
    r"|\bpound\s+cake\b",
    re.IGNORECASE,
)
# words that cannot be a food alone: the food stands behind the next comma
_NO_FOOD = re.compile(
    r"(?:(?:[a-z-]+(?<!se)(?<!we)ed|[a-z]+less|and|or|not|too|but|very|finely|roughly|freshly|lightly|firmly|loosely"
    r"|thinly|coarsely|well|fresh|frozen|dry|cold|hot|warm|raw|ripe|firm|young|good|quality|large|medium|small"
    r"|big|thick|thin|fat|lean|plump|tender|soft|hard|whole|free-range|boned)\b[\s]*)+",
    re.IGNORECASE,
)
_TRAILING = re.compile(r"\s+(?:or|and|plus|with)$", re.IGNORECASE)
_END_MEASURE = re.compile(r"\s+(?=[0-9½⅓⅔¼¾⅛][0-9½⅓⅔¼¾⅛./ ]*\s*(?:m[lL]|g|kg|L|cl|oz)\.?\s*$)")


@dataclass(frozen=True)
class LineReading:
    """What one line says; `spans` gives the characters (start, end) of each part by its name."""

    amount: Amount | Unmeasured | None
    item: str
    note: str = ""
    also: tuple[Amount, ...] = ()
    each: Amount | None = None
    fullness: str = ""
    spans: Mapping[str, tuple[int, int]] = field(default_factory=dict, hash=False)


@cache
def _data() -> dict[str, list[str]]:
    found: dict[str, list[str]] = read_data("line_words.yml")
    return found


def _either(words: list[str]) -> str:
    ordered = sorted(words, key=len, reverse=True)
    return "|".join(re.escape(word).replace(r"\ ", r"\s+") for word in ordered)


@cache
def _unmeasured() -> re.Pattern[str]:
    return re.compile(rf"(?:^|[\s,(]+)(?P<words>{_either(_data()['unmeasured'])})\b", re.IGNORECASE)


@cache
def _vague() -> re.Pattern[str]:
    return re.compile(rf"(?P<words>{_either(_data()['vague'])})\s+", re.IGNORECASE)


@cache
def _taken() -> re.Pattern[str]:
    return re.compile(
        rf"(?:the\s+)?(?P<what>{_either(_data()['taken'])})\s+(?:of|from)\s+(?:the\s+)?",
        re.IGNORECASE,
    )


@lru_cache(maxsize=8192)
def read_line(text: str, system: System = "metric", language: str = "en_GB") -> LineReading:
    """Read an ingredient line; raises Unreadable with what to write where it could mean two things.

    >>> reading = read_line("225g/8oz butter, softened")
    >>> reading.item, reading.note, str(reading.amount.low), reading.also[0].unit
    ('butter', 'softened', '225', 'oz')
    """
    _refuse_odd_signs(text)
    marks = marks_of(language)
    start = _first(text)
    found = _strength_apart(
        _amount_first(text, start, system, marks)
        or _taken_of(text, start, system, marks)
        or _amount_last(text, start, system, marks)
        or _no_amount(text, start),
        system,
    )
    _refuse_left_over(found, text)
    return found


def _refuse_odd_signs(text: str) -> None:
    if _CONTROL.search(text):
        raise Unreadable(
            "The line holds a sign that cannot be seen.", "Type the line again by hand."
        )
    odd = _NO_DECIMAL.search(text)
    if odd and odd.start() < 12 and not re.search(r"[A-Za-z]", text[: odd.start()]):
        raise Unreadable(f'"{odd[0]}" is not a number here.', 'Write it with figures: "1", "2".')
    if len(text) > LONGEST:
        raise Unreadable("The line is too long for one ingredient.", "Write one ingredient a line.")


def _first(text: str) -> int:
    bullet = _BULLET.match(text)
    start = bullet.end() if bullet else len(text) - len(text.lstrip())
    if re.match(r"[-−]\s?\d", text[start:]):
        raise Unreadable(f'"{text.strip()}" is less than nothing.', "Write an amount above 0.")
    return start


def _amount_first(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    vague = _vague().match(text, start)
    if vague:
        rest = _after_of(text, vague.end())
        reading = _food(text, rest, Unmeasured(" ".join(vague["words"].lower().split())))
        return replace(reading, spans={**reading.spans, "amount": (start, vague.end("words"))})
    measured = read_measured(text, start, system, marks)
    if measured is None:
        return None
    rest = _after_of(text, measured.end)
    if measured.amount.unit and text[rest : rest + 1] == ",":
        rest = _after_of(text, rest + 1)
    reading = _with_measured(text, _food(text, rest, measured.amount), measured)
    if not reading.item:
        return _noun_alone(reading, measured, text)
    if re.match(r"[/\d½⅓⅔¼¾]", reading.item) and not _OWN_NUMBER.match(reading.item):
        raise Unreadable(
            f'"{reading.item}" begins with a number that has no unit.',
            'Write it with its unit, such as "100 g/3½ oz peas", or leave it out.',
        )
    return _said_again(reading, system, marks)


_OWN_NUMBER = re.compile(
    r"\d+(?:[.,]\d+)?\s*(?:%|per\s?cent\b)|0{2,}\b|\d+-[A-Za-z]|\d+[\s-]*proof\b|\d+\s*°|½-|½ fat"
)


def _said_again(reading: LineReading, system: System, marks: Marks) -> LineReading:
    """Take a measure that stands at the end, "1 tbsp soy sauce 15 ml", for the same again."""
    last = _END_MEASURE.search(reading.item)
    measured = read_measured(reading.item, last.end(), system, marks) if last else None
    if last is None or measured is None or not isinstance(reading.amount, Amount):
        return reading
    return replace(
        reading, item=reading.item[: last.start()], also=(*reading.also, measured.amount)
    )


def _after_of(text: str, at: int) -> int:
    of = _OF.match(text, at)
    return of.end() if of else at


def _with_measured(text: str, reading: LineReading, measured: Measured) -> LineReading:
    if isinstance(measured.amount, Amount) and measured.amount.high <= 0:
        raise Unreadable(f'"{text.strip()}" is nothing at all.', "Write an amount above 0.")
    return replace(
        reading,
        amount=measured.amount,
        also=measured.also,
        each=measured.each,
        fullness=measured.fullness,
        spans={**reading.spans, "amount": (measured.start, measured.end)},
    )


def _noun_alone(reading: LineReading, measured: Measured, text: str) -> LineReading:
    """Read "16 cloves" alone is sixteen of them, "2 limes" of course two; "8 oz" is of nothing."""
    noun = measured.amount.noun
    if noun:
        one, many = counted_nouns()[noun]
        item = many if measured.amount.high > 1 else one
        return replace(reading, amount=replace(measured.amount, noun=""), item=item)
    raise Unreadable(f'"{text.strip()}" does not say what it is.', 'Write "250 g sugar".')


def _food(text: str, at: int, amount: Amount | Unmeasured | None) -> LineReading:
    """Split what follows the amount into the food and what is said of it."""
    cut = _first_cut(text, at)
    bracket = cut and cut[0].strip() in ("(", "[")
    end = cut.start() if cut else len(text)
    item, note = _TRAILING.sub("", text[at:end].strip(" .")), ""
    if cut:
        note_at = cut.end() if cut[0].strip() in (",", ";", "–", "-", "—") else cut.start()
        note = text[note_at:].strip(" ,;")
        if bracket:
            item, note, end = _open_bracket(text, at, cut, item)
    wanted = _unmeasured().search(item)
    if wanted and wanted.start() > 0 and wanted["words"].lower() != "to":
        note = ", ".join(part for part in (item[wanted.start() :].strip(" ,"), note) if part)
        item = item[: wanted.start()].strip()
        end = at + len(item)
    begin = at + len(text[at:end]) - len(text[at:end].lstrip())
    spans = {"food": (begin, begin + len(item))} if item else {}
    if note:
        place = text.rfind(note)
        spans["note"] = (place, place + len(note)) if place >= 0 else (end, len(text))
    return LineReading(amount, item, note, spans=spans)


def _first_cut(text: str, at: int) -> re.Match[str] | None:
    """Find where the food ends: not at a comma between words of which none is a food."""
    for cut in _CUT.finditer(text, at):
        named = text[at : cut.start()].strip(" ,")
        if cut[0].strip() in ("(", "[") or not named or not _NO_FOOD.fullmatch(named):
            return cut
    return None


def _open_bracket(text: str, at: int, cut: re.Match[str], item: str) -> tuple[str, str, int]:
    """Put what stands in brackets into the note; the food may go on behind them."""
    close = re.compile(r"[)\]]").search(text, cut.end())
    inner = text[cut.end() : close.start() if close else len(text)].strip()
    after = text[close.end() :] if close else ""
    comma = re.search(r"[,;(\[]", after)
    more = after[: comma.start()] if comma else after
    note_rest = after[comma.start() :].strip(" ,;") if comma else ""
    if more.strip():  # "coriander (cilantro) leaves", "1 inch (2.5 cm) cubes"
        item = f"{item} {more.strip()}".strip()
    note = ", ".join(part for part in (inner, note_rest) if part)
    return item, note, cut.start()


def _taken_of(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "Juice and zest of 2 limes": two limes, of which the juice and zest."""
    taken = _taken().match(text, start)
    measured = read_measured(text, taken.end(), system, marks) if taken else None
    if taken is None or measured is None:
        return None
    reading = _with_measured(text, _food(text, _after_of(text, measured.end), None), measured)
    if not reading.item:
        return None
    note = ", ".join(part for part in (f"{taken['what'].lower()} only", reading.note) if part)
    return replace(reading, note=note)


def _amount_last(text: str, start: int, system: System, marks: Marks) -> LineReading | None:
    """Read "Vanilla extract, 1½ teaspoons", "Butter – 50 g", "Eggs: 3"."""
    found = re.compile(r"(?P<food>[^,:;(]*[^,:;(\s0-9])\s*(?:,|:|;|\s[-–—])\s*(?=\S)").match(
        text, start
    )
    if found is None or _PER.search(text[found.end() :]):
        return None
    measured = read_measured(text, found.end(), system, marks)
    rest = text[measured.end :].strip(" .)") if measured else ""
    if measured is None or not re.match(r"[0-9½⅓⅔¼¾⅛a-z]", text[found.end()], re.IGNORECASE):
        return None
    if rest and not rest.startswith((",", ";", "(")):
        return None
    if not measured.amount.unit and not text[found.end()].isdigit():
        return None
    food = (found.start("food"), found.end("food"))
    reading = LineReading(
        measured.amount, found["food"].strip(), rest.strip(" ,;("), spans={"food": food}
    )
    return _with_measured(text, reading, measured)


def _no_amount(text: str, start: int) -> LineReading:
    """Nothing is measured: "salt, to taste", "butter for greasing", "salt and pepper"."""
    wanted = _unmeasured().search(text, start)
    reading = _food(text, start, None)
    if not reading.item or not re.search(r"[A-Za-zÀ-ÿ]", reading.item):
        raise Unreadable(f'"{text.strip()}" is not an ingredient.', 'Write "250 g sugar".')
    if re.match(r"[^A-Za-zÀ-ÿ]*\d", reading.item) and not _OWN_NUMBER.match(reading.item):
        raise Unreadable(f'"{text.strip()}" does not begin with an amount.', 'Write "250 g sugar".')
    words = wanted["words"].lower() if wanted else "as needed"
    words = " ".join(words.split())
    note = re.sub(rf"^{re.escape(words)}\b[\s,]*", "", reading.note, flags=re.IGNORECASE)
    return replace(reading, amount=Unmeasured(words), note=note)


def _strength_apart(reading: LineReading, system: System) -> LineReading:
    """Put the strength of a spirit into the note as % vol, wherever it was written.

    Proof is a country's own: twice the % vol in the United States, 100 for 57.15 % vol in Britain's
    older books. It is read in an American recipe and asked elsewhere; so is a cask's own strength.
    """
    said = f"{reading.item}, {reading.note}"
    found = _STRENGTH.search(reading.item) or _BARE_PERCENT.search(reading.item)
    proof = _STRENGTH.search(said)
    if found is None and (proof is None or not proof["proof"]):
        if _CASK.search(said) and not re.search(r"\d\s*%", said):
            raise Unreadable(
                f'"{_CASK.search(said)[0]}" differs from bottle to bottle.',  # type: ignore[index]
                'Write the % vol of its label: "whisky, 58% vol".',
            )
        return reading
    strength = found or proof
    assert strength is not None
    number = strength["number"].replace(",", ".")
    if strength.groupdict().get("proof"):
        if system != "us":
            raise Unreadable(
                f'"{strength[0].strip()}" is another strength in Britain and America.',
                f'Write "{float(number) / 2:g}% vol" if it is American, or what its label says.',
            )
        number = f"{float(number) / 2:g}"
    item = reading.item.replace(strength[0], " ").strip(" ,") if found else reading.item
    note = reading.note if found else _STRENGTH.sub(" ", reading.note).strip(" ,")
    told = ", ".join(part for part in (f"{number}% vol", note) if part)
    return replace(reading, item=" ".join(item.split()), note=told)


def _refuse_left_over(reading: LineReading, text: str) -> None:
    """Ask about a unit that stands in the food's name: it was not read, and is not guessed."""
    if _FOODS_WITH_UNITS.search(reading.item):
        return
    left = _LEFT_OVER.search(reading.item) or re.match(
        r"(?P<unit>g|ml|l|c|t|T|kg|oz)\.?\s+[a-z]", reading.item
    )
    if left and isinstance(reading.amount, Amount):
        raise Unreadable(
            f'"{left["unit"]}" is left over in "{reading.item}".',
            'Write one amount before the food, such as "250 g sugar", and the rest after a comma.',
        )
