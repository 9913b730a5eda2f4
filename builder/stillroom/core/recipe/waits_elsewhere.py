"""The waits that a method in another language names: "2 Wochen ziehen lassen".

German, French, Spanish, Italian, Dutch, Swedish, Danish, Norwegian, Portuguese and Polish, by the
words of waits_elsewhere.yml; the verb may stand before the length or behind it. Leaves out
English: method_times.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Final

from stillroom.core.lines.number_words import whole_numbers_elsewhere
from stillroom.core.when.spans import LOOSELY, Span, as_loosely, parse_span
from stillroom.core.words.data_files import read_data
from stillroom.core.words.patterns import any_word, late_regex
from stillroom.core.words.problems import Unreadable

_DURING: Final = late_regex(r"\bdurante\b", re.IGNORECASE)
_PLAINLY: Final = (
    (
        late_regex(
            r"\b(?:entre|zwischen|tra|fra|tussen|mellan)\s+(\w+)\s+(?:y|et|und|e|en|och)\s+(\w+)"
            r"(?=\s+[^\W\d])",
            re.IGNORECASE,
        ),
        r"\1-\2",
    ),
    (late_regex(r"\ben (?=(?:vecka|månad|timme)\b)", re.IGNORECASE), "1 "),
    (late_regex(r"\been (dag|week|maand) of (?:2|twee)\b", re.IGNORECASE), r"1-2 \1"),
    (_DURING, "por"),  # and no word of keeping: "dura"
    (
        late_regex(
            r"((?:macera|infus|fermenta)\w*(?:\s+[^\W\d]+){0,3}?)\s+(?:suele\s+)?d[ue]r\w+",
            re.IGNORECASE,
        ),
        r"\1",
    ),
)
# loose lengths at the least that they can mean, since what is shorter is safe
_LOOSELY: Final = (
    (r"\b(?:(?:ein|ett?) )?(?:gut(?:es)? )?(?:halbe[sn]? ?jahr|halvår|half ?jaar)\b", "6 Monate"),
    (r"\b(?:et )?halvt år\b|\bmeio ano\b|\bpół roku\b|\bpůl roku\b", "6 Monate"),
    (r"(?<=\bdo )roku\b", "1 rok"),
    (r"(?<=\botwarciu )miesiąc\b", "1 miesiąc"),
    (r"(?<=\botwarciu )tydzień\b", "1 tydzień"),
    (r"(?<=\bprzechowywać )rok\b|(?<=\bprzez )rok\b|(?<=\bvydrží )rok\b", "1 rok"),
    (r"\b(?:medio año|mezz['’]anno|mezzo anno|une demi-année)\b", "6 Monate"),
    (r"\b(?:ein )?vierteljahr\b", "3 Monate"),
    (
        r"\b(?:mehrere|viele|vele|många|mange|wiele|much[ao]s|molt[ei]|muit[ao]s|plusieurs|varios|varias|diversi|diverse|parecchi\w*|meerdere|flera|flere|vários|várias"
        r"|kilka|několik)\b",
        "3",
    ),
    (r"\b(?:einige|ein paar|quelques|algun[oa]s|un[oa]s poc[oa]s|alcun[ei]|qualche)\b", "2"),
    (r"\b(?:enkele|enige|een paar|några|noen|nogle|alguns|algumas)\b", "2"),
)
_THE_NEXT_DAY: Final = late_regex(
    r"jusqu['’]au lendemain|hasta el día siguiente|bis zum (?:nächsten|folge)\s?tag"
    r"|fino al giorno (?:dopo|successivo|seguente)|tot de volgende dag|till nästa dag",
    re.IGNORECASE,
)
# "hält 3 Monate", "håller den ett år", "dura un anno": the length right behind the verb
_SO_LONG: Final = (
    r"\s+(?:(?:es|er|sie|das|sich|den|det|de|seg|sig)\s+)?"
    r"(?:(?:bis\s+zu|etwa|ca\.?|circa|rund|mindestens|gut|ungefähr|upp\s+till|cirka|minst|mindst|op\s+til|opptil|inntil|do|até"
    r"|hasta|fino\s+a|almeno|al\s+menos|pelo\s+menos|około|cerca\s+de|unos)\s+){0,2}"
    r"(?:\d|eine?n?\s|zwei\s|drei\s|vier\s|sechs\s|ett?\s|två\s|tre\s|fyra\s|sex\s|to\s|fire\s|seks\s|un[ao]?\s|due\s|dos\s|tres\s"
    r"|sei[s]?\s|um\s|dois\s|duas\s|três\s|dwa\s|trzy\s|roku\b|pół\s)"
)
_HOLDS: Final = late_regex(
    rf"\b(?:hält|halten|håller|holder|wytrzyma|wytrzymuje|wytrzymają|postoi|postoją|vydrží){_SO_LONG}"
    rf"|(?<!ación\s)(?<!azione\s)(?<!ação\s)\bdura(?:n|no|rá|m)?{_SO_LONG}"
    r"|\bblij(?:ft|ven)\b[^.;!?]{0,60}\b(?:goed|vers|lekker|knapperig)\b"
    r"|\b(?:lässt|lassen)\b[^.;!?]{0,20}\bsich\b[^.;!?]{0,60}\blagern\b"
    r"|\bk(?:ann|önnen)\b[^.;!?]{0,60}\bgelagert\s+werden\b",
    re.IGNORECASE,
)
# what stands for days and is then kept in the cellar keeps no days: "6 Tage stehen, dann lagern"
_THEN: Final = late_regex(
    r"\b(?:dann|danach|anschließend|ensuite|puis|luego|después(?! de)|poi|quindi|daarna|vervolgens"
    r"|sedan|därefter)\b",
    re.IGNORECASE,
)
# "dopo tre mesi", "nach etwa 2 Wochen": it is to be used then, and keeps no shorter
_BEFORE_LENGTH: Final = late_regex(
    r"\s+(?:(?:circa|ca\.?|etwa|ungefähr|ongeveer|environ|unos|cirka|około|mindestens|minstens|almeno|al\s+menos|au\s+moins|minst|mindst)\s+)?$",
    re.IGNORECASE,
)
_HALF_A_DAY: Final = 12
_RHYTHMS: Final = ("twice_a_day", "every_2_days", "every_3_days", "every_day", "every_week")


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """A wait in another language, in the words of a timeline; `after` is one only implied.

    Of the words "best" and "usable" it is an age, and no wait.
    """

    word: str
    span: Span
    every: str = ""
    after: bool = False


def waits_elsewhere(sentence: str) -> Iterator[Elsewhere]:
    """Yield the waits of one sentence that is not English; nothing for any other.

    >>> [(one.word, str(one.span)) for one in waits_elsewhere("2 bis 3 Wochen ziehen lassen.")]
    [('steep', '2-3 weeks')]
    >>> list(waits_elsewhere("Im Kühlschrank 2 Wochen haltbar."))
    []
    >>> [one.word for one in waits_elsewhere("Na 6 weken is de chutney op volle smaak.")]
    ['best']
    """
    tended, every = rhythm_elsewhere(sentence)
    sentence = _plainly(_without_rhythm(sentence))
    clauses = [one for one in re.split(r"[,;:]\s+|\s(?:und|et|y|e|en)\s", sentence) if one.strip()]
    for clause in clauses:
        found = _span_words().search(clause)
        # "till the next day" is a night to wait for, though "till" alone says how it keeps
        if found is None:
            continue
        before_use = _any_of("before_use").search(sentence)
        night = found["night"] is not None and bool(
            re.search(r"(?i)n(?:acht|att|uit|oche|otte)", found[0])
        )
        keeps = _any_of("keeps").search(sentence.replace(found[0], ""))
        strained = keeps and _is_strained_then(sentence)  # kept in the dark, and then filtered
        if not night and keeps and not before_use and not strained:
            continue
        span = _span(found)
        word = "mature" if before_use else _word(clause) or _word(sentence)
        word = word or ("steep" if strained else "")
        hours = span is not None and span.unit == "hour" and span.low >= _HALF_A_DAY
        # "garder une nuit au frais", "24 heures au frais": nobody keeps a thing for hours
        word = word or ("rest" if night or hours else "")
        if span is None:
            continue
        if word or tended:
            yield Elsewhere(tended or word, span, every)
        elif not _whole("after").search(clause[: found.start()]):
            continue
        elif _any_of("strains").search(sentence):
            yield Elsewhere("rest", span, after=True)
        elif _any_of("at_its_best").search(sentence):
            yield Elsewhere("best", span)
        elif _whole("ready").search(sentence):
            yield Elsewhere("usable", span)


def places_elsewhere(sentence: str) -> tuple[str, tuple[tuple[int, Span], ...]]:
    """Return a sentence as its waits are read, and where in it which length stands.

    What is done "nach 3 Wochen" is done behind them, wherever that stands: it is put first.
    """
    plain, after = _plainly(_without_rhythm(sentence)), _whole("after")
    later = eaten_later(sentence)  # "ne consommer qu'au bout de 2 mois": what is done is done
    found = ((one, _span(one)) for one in _span_words().finditer(plain))
    return plain, tuple(
        (
            -1
            if not later and after.search(plain[max(0, one.start() - 16) : one.start()])
            else one.start(),
            span,
        )
        for one, span in found
        if span is not None
    )


def uncounted_elsewhere(sentence: str) -> bool:
    """Whether a sentence that is not English waits for a number of days that it does not name.

    >>> uncounted_elsewhere("Noch ein paar Tage ziehen lassen."), uncounted_elsewhere("Umrühren.")
    (True, False)
    """
    if not _few().search(sentence) or _any_of("keeps").search(sentence):
        return False
    return bool(_word(sentence))


@cache
def _few() -> re.Pattern[str]:
    """Return the pattern of days, weeks or months without their number."""
    few = "|".join(words for words, least in _LOOSELY if least.isdigit())
    units = "|".join(re.escape(form) for form, unit in _units().items() if unit != "hour")
    return late_regex(rf"(?:{few})\s+(?:{units})\b", re.IGNORECASE)


def eaten_later(sentence: str) -> bool:
    """Whether a sentence that is not English says that a thing stands before it is eaten.

    >>> eaten_later("attendre 2 mois avant de déguster"), eaten_later("24 heures au frais")
    (True, False)
    """
    return bool(_any_of("before_use").search(sentence))


def rhythm_elsewhere(sentence: str) -> tuple[str, str]:
    """Return what a sentence that is not English does again and again, and how often; else blanks.

    >>> rhythm_elsewhere("Una volta alla settimana agitate leggermente il vaso.")
    ('shake', 'every week')
    """
    for every in _RHYTHMS:
        if _whole(every).search(sentence):
            for word in ("shake", "stir"):
                if _any_of(f"{word}s").search(sentence):
                    return word, every.replace("_", " ")
    return "", ""


def _without_rhythm(sentence: str) -> str:
    """Return a sentence without how often: "alle zwei Tage" is no wait of two days."""
    for every in _RHYTHMS:
        sentence = _whole(every).sub("", sentence)
    return sentence


def _plainly(sentence: str) -> str:
    """Return a sentence with what would part or hide its length said otherwise.

    >>> _plainly("Suele durar entre 3 y 6 meses."), _plainly("Låt stå en vecka.")
    ('Suele durar 3-6 meses.', 'Låt stå 1 vecka.')
    """
    for pattern, said in _PLAINLY:
        sentence = pattern.sub(said, sentence)
    return sentence


def keeps_elsewhere(sentence: str) -> Span | None:
    """Return how long a sentence that is not English says that it keeps; None where it does not.

    >>> str(keeps_elsewhere("In der Blechdose halten sie 3 Wochen."))
    '3 weeks'
    >>> str(keeps_elsewhere("Die Mischung hält 3 Monate."))
    '3 months'
    >>> str(keeps_elsewhere("Oöppnad håller den ett år.")), str(keeps_elsewhere("Dura 6 mesi."))
    ('1 year', '6 months')
    >>> keeps_elsewhere("Potrete consumarlo dopo tre mesi.")
    >>> keeps_elsewhere("3 Wochen ziehen lassen."), keeps_elsewhere("Die Form halten und kühlen.")
    (None, None)
    """
    sentence = _behind_straining(_DURING.sub("por", sentence))  # "durante" is no "dura"
    sentence = _behind_standing(sentence)
    if (
        not _keeps(sentence)
        or _any_of("before_use").search(sentence)
        or _is_strained_then(sentence)
    ):
        return None
    if _is_after(sentence):
        return None
    for loose, least in _LOOSELY:
        unnumbered = LOOSELY if least.isdigit() else ""
        sentence = re.sub(loose, f"{least}{unnumbered}", sentence, flags=re.IGNORECASE)
    return length_elsewhere(sentence) or (
        parse_span("1 day") if _THE_NEXT_DAY.search(sentence) else None
    )


def _is_after(sentence: str) -> bool:
    """Whether the first length is one after which it is used: "consumarlo dopo tre mesi"."""
    found = _span_words().search(sentence)
    before = sentence[: found.start()] if found else ""
    led = _BEFORE_LENGTH.search(before)
    word = before[: led.start()].split()[-1:] if led else []
    return bool(word) and _whole("after").fullmatch(word[0]) is not None


def _is_strained_then(sentence: str) -> bool:
    """Whether what is kept so long is strained after it: "4 Wochen lagern, dann filtern"."""
    found = _span_words().search(sentence)
    strained = _any_of("strains").search(sentence, found.end()) if found else None
    return strained is not None and not _any_of("keeping").search(sentence, strained.end())


def _behind_straining(sentence: str) -> str:
    """Return what follows the straining, where that says how it keeps: "…, dann 1 Jahr haltbar"."""
    found = _span_words().search(sentence)
    strained = _any_of("strains").search(sentence, found.end()) if found else None
    rest = sentence[strained.end() :] if strained else ""
    return rest if _any_of("keeping").search(rest) and _span_words().search(rest) else sentence


def _behind_standing(sentence: str) -> str:
    """Return what follows a wait, where only that says how it is kept: "…, dann kühl lagern"."""
    then = _THEN.search(sentence)
    if then is None:
        return sentence
    before, rest = sentence[: then.start()], sentence[then.end() :]
    stands = _span_words().search(before) and _word(before) and not _keeps(before)
    return rest if stands and _keeps(rest) else sentence


def _keeps(words: str) -> bool:
    return bool(_any_of("keeping").search(words) or _HOLDS.search(words))


def length_elsewhere(words: str) -> Span | None:
    """Return the first length of a day or more that words name in another language than English."""
    found = _span_words().search(words)
    if found is None or found["night"] or _units()[found["unit"].lower()] == "hour":
        return None
    return _span(found)


@cache
def _table() -> dict[str, Any]:
    table: dict[str, Any] = read_data("waits_elsewhere.yml")
    return table


@cache
def _span_words() -> re.Pattern[str]:
    """Return the pattern of a number or two and a unit, or of a night."""
    units = "|".join(sorted((re.escape(one) for one in _units()), key=len, reverse=True))
    words = "|".join(sorted(map(re.escape, _numbers()), key=len, reverse=True))
    number = rf"(?:\d{{1,3}}|{words})"
    return late_regex(
        rf"\b(?P<low>{number})(?:(?:\s*[-–/]\s*|\s+(?:bis|à|ou|a|o|oder|tot|of|till|eller)\s+)(?P<high>{number}))?(?:(?<=\d)\s*|\s+)"
        rf"(?P<unit>{units})\b|(?P<night>{'|'.join(map(re.escape, _list('overnight')))})",
        re.IGNORECASE,
    )


def _span(found: re.Match[str]) -> Span | None:
    if found["night"]:
        return parse_span("1 day")
    low, high = (_numbers().get((found[end] or "").lower(), found[end]) for end in ("low", "high"))
    count = f"{low}-{high}" if high else str(low)
    try:
        return as_loosely(parse_span(f"{count} {_units()[found['unit'].lower()]}s"), found[0])
    except Unreadable:
        return None


def _word(words: str) -> str:
    """Return the timeline's word for what is done; resting only where nothing else is named."""
    return next((word for word, verbs in _verbs().items() if verbs.search(words)), "")


@cache
def _verbs() -> dict[str, re.Pattern[str]]:
    waits: dict[str, list[str]] = _table()["waits"]
    return {word: any_word(f"{stem}*" for stem in stems) for word, stems in waits.items()}


@cache
def _units() -> dict[str, str]:
    return {form.lower(): unit for unit, forms in _table()["units"].items() for form in forms}


@cache
def _numbers() -> dict[str, str]:
    more = {form: count for count, forms in _table()["numbers"].items() for form in forms}
    return {form: str(count) for form, count in (whole_numbers_elsewhere() | more).items()}


def _list(name: str) -> list[str]:
    return list(_table()[name])


@cache
def _any_of(name: str) -> re.Pattern[str]:
    """Return the pattern of words that begin with one of a list."""
    return any_word(f"{word}*" for word in _list(name))


@cache
def _whole(name: str) -> re.Pattern[str]:
    return any_word(_list(name))
