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
from typing import Final

from stillroom.core.recipe.wait_forms import (
    any_of,
    span_of,
    span_words,
    unit_forms,
    wait_words,
    whole,
)
from stillroom.core.recipe.waits_plainly import DURING, LOOSE_LENGTHS, plainly
from stillroom.core.when.spans import LOOSELY, Span, parse_span
from stillroom.core.words.patterns import any_word, late_regex

# "la première semaine", "första veckan": one of them, and the first part of all
_FIRST_ONE: Final = late_regex(
    r"\b(?:(?:der|die|den|das|la|le|el|il|de|den|det|o|a)\s+)?"
    r"(?:erste[nrms]?|premi(?:er|ère)|primer[oa]?|primo|prima|eerste|första|første|primeir[oa]"
    r"|pierwsz\w+)\s+"
    r"(?=(?:Woche|Tag|Monat|semaine|jour|mois|semana|d[ií]a|mes|settimana|giorno|mese|week|dag"
    r"|maand"
    r"|veckan|dagen|månaden|ugen?|uken?|uka|måneden?|mês|tydzień|dzień|miesiąc)\b)",
    re.IGNORECASE,
)
_FIRST_PART: Final = late_regex(
    r"\b(?:erste[nrms]?|premi(?:er|ère)s?|primer[oa]s?|prim[oaie]|eerste|första|første"
    r"|primeir[oa]s?|pierwsz\w+)\s+",
    re.IGNORECASE,
)
_THE_NEXT_DAY: Final = late_regex(
    r"jusqu['’]au lendemain|hasta el día siguiente|bis zum (?:nächsten|folge)\s?tag"
    r"|fino al giorno (?:dopo|successivo|seguente)|tot de volgende dag|till nästa dag",
    re.IGNORECASE,
)
# "hält 3 Monate", "håller den ett år", "dura un anno": the length right behind the verb
_SO_LONG: Final = (
    r"\s+(?:(?:es|er|sie|das|sich|den|det|de|seg|sig)\s+)?"
    r"(?:(?:bis\s+zu|etwa|ca\.?|circa|rund|mindestens|gut|ungefähr|upp\s+till|cirka|minst|mindst"
    r"|op\s+til|opptil|inntil|do|até"
    r"|hasta|fino\s+a|almeno|al\s+menos|pelo\s+menos|około|cerca\s+de|unos)\s+){0,2}"
    r"(?:\d|eine?n?\s|zwei\s|drei\s|vier\s|sechs\s|ett?\s|två\s|tre\s|fyra\s|sex\s|to\s|fire\s"
    r"|seks\s|un[ao]?\s|due\s|dos\s|tres\s"
    r"|sei[s]?\s|um\s|dois\s|duas\s|três\s|dwa\s|trzy\s|roku\b|pół\s)"
)
_HOLDS: Final = late_regex(
    rf"\b(?:hält|halten|håller|holder|wytrzyma|wytrzymuje|wytrzymają|postoi|postoją"
    rf"|vydrží){_SO_LONG}"
    rf"|(?<!ación\s)(?<!azione\s)(?<!ação\s)\bdura(?:n|no|rá|m)?{_SO_LONG}"
    r"|\bblij(?:ft|ven)\b[^.;!?]{0,60}\b(?:goed|vers|lekker|knapperig)\b"
    r"|\b(?:lässt|lassen)\b[^.;!?]{0,20}\bsich\b[^.;!?]{0,60}\blagern\b"
    r"|\bk(?:ann|önnen)\b[^.;!?]{0,60}\bgelagert\s+werden\b",
    re.IGNORECASE,
)
# what stands for days and is then kept in the cellar keeps no days: "6 Tage stehen, dann lagern"
_THEN: Final = late_regex(
    r"\b(?:dann|danach|anschließend|ensuite|puis|luego|después(?! de)|poi|quindi|daarna|vervolgens"
    r"|sedan|därefter|derefter|deretter|depois(?! d)|potem|następnie)\b",
    re.IGNORECASE,
)
# "dopo tre mesi", "nach etwa 2 Wochen": it is to be used then, and keeps no shorter
_BEFORE_LENGTH: Final = late_regex(
    r"\s+(?:(?:circa|ca\.?|etwa|ungefähr|ongeveer|environ|unos|cirka|około|mindestens|minstens"
    r"|almeno|al\s+menos|au\s+moins|minst|mindst)\s+)?$",
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
    parts = _parts_by_rhythm(sentence) if tended else [sentence]
    for part in parts:
        often = next(iter(_rhythms_in(part)), (0, every))[1]
        yield from _waits_in(part, tended, often if tended else "")


def _longest_wait(clause: str) -> re.Match[str] | None:
    """Return the first length of half a day or more in a clause; else the first there is."""
    found = list(span_words().finditer(clause))
    spans = ((one, span_of(one)) for one in found)
    long = (one for one, span in spans if span and span.minutes() >= _HALF_A_DAY * 60)
    return next(long, found[0] if found else None)


def _waits_in(sentence: str, tended: str, every: str) -> Iterator[Elsewhere]:
    sentence = plainly(_without_rhythm(sentence))
    clauses = [one for one in re.split(r"[,;:]\s+|\s(?:und|et|y|e|en)\s", sentence) if one.strip()]
    parts = [is_first_part(clause) for clause in clauses]
    for part, clause in zip(parts, (_FIRST_ONE.sub("1 ", one) for one in clauses), strict=True):
        found = _longest_wait(clause)
        # "till the next day" is a night to wait for, though "till" alone says how it keeps
        if found is None:
            continue
        before_use = any_of("before_use").search(sentence)
        night = found["night"] is not None and bool(
            re.search(r"(?i)n(?:acht|att|uit|oche|otte|oc\b|oite|at)", found[0])
        )
        keeps = any_of("keeps").search(sentence.replace(found[0], ""))
        strained = keeps and _is_strained_then(sentence)  # kept in the dark, and then filtered
        if not night and keeps and not before_use and not strained:
            continue
        span = span_of(found)
        word = "mature" if before_use else _word(clause) or _word(sentence)
        word = word or ("steep" if strained else "")
        hours = span is not None and span.unit == "hour" and span.low >= _HALF_A_DAY
        # "garder une nuit au frais", "24 heures au frais": nobody keeps a thing for hours
        word = word or ("rest" if night or hours else "")
        if span is None or _only_may(sentence, word, span):
            continue
        if any(parts) and not part and word:  # "4 Wochen stehen lassen, in der ersten schütteln"
            yield Elsewhere(word, span)
        elif word or tended:
            yield Elsewhere(tended or word, span, every)
        elif not whole("after").search(clause[: found.start()]):
            continue
        elif any_of("strains").search(sentence):
            yield Elsewhere("rest", span, after=True)
        elif any_of("at_its_best").search(sentence):
            yield Elsewhere("best", span)
        elif whole("ready").search(sentence):
            yield Elsewhere("usable", span)


_MAY: Final = late_regex(
    r"\b(?:kan|kann|kannst|können|peut|peuvent|pouve[zt]|puede[ns]?|podéis|può|possono|potete|pode[m]?"
    r"|można|kunnen|kunt)\b",
    re.IGNORECASE,
)
_COLD: Final = late_regex(
    r"kühlschr|gefrier|tiefkühl|frigo|réfrig|congel|congél|freezer|surgel|nevera|gelad|koelk"
    r"|diepvr|kylsk"
    r"|kylen|fryse|frysen|køle|kjøle|lodów|zamraż",
    re.IGNORECASE,
)
_FROZEN_AT_MOST: Final = 7 * 24 * 60


def _only_may(sentence: str, word: str, span: Span) -> bool:
    """Whether it may be kept cold so long, and need not: "3 dage kan det stå i køleskabet"."""
    if word == "freeze" and span.minutes(longest=False) > _FROZEN_AT_MOST:
        return True
    return bool(_MAY.search(sentence) and _COLD.search(sentence))


def places_elsewhere(sentence: str) -> tuple[str, tuple[tuple[int, Span], ...]]:
    """Return a sentence as its waits are read, and where in it which length stands.

    What is done "nach 3 Wochen" is done behind them, wherever that stands: it is put first.
    """
    plain, after = _FIRST_ONE.sub("1 ", plainly(_without_rhythm(sentence))), whole("after")
    later = eaten_later(sentence)  # "ne consommer qu'au bout de 2 mois": what is done is done
    found = ((one, span_of(one)) for one in span_words().finditer(plain))
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
    if not _few().search(sentence) or any_of("keeps").search(sentence):
        return False
    return bool(_word(sentence))


@cache
def _few() -> re.Pattern[str]:
    """Return the pattern of days, weeks or months without their number."""
    few = "|".join(words for words, least in LOOSE_LENGTHS if least.isdigit())
    units = "|".join(re.escape(form) for form, unit in unit_forms().items() if unit != "hour")
    return late_regex(rf"(?:{few})\s+(?:{units})\b", re.IGNORECASE)


def eaten_later(sentence: str) -> bool:
    """Whether a sentence that is not English says that a thing stands before it is eaten.

    >>> eaten_later("attendre 2 mois avant de déguster"), eaten_later("24 heures au frais")
    (True, False)
    """
    return bool(any_of("before_use").search(sentence))


def rhythm_elsewhere(sentence: str) -> tuple[str, str]:
    """Return what a sentence that is not English does again and again, and how often; else blanks.

    >>> rhythm_elsewhere("Una volta alla settimana agitate leggermente il vaso.")
    ('shake', 'every week')
    """
    for every in _RHYTHMS:
        if whole(every).search(sentence):
            for word in ("shake", "stir"):
                if any_of(f"{word}s").search(sentence):
                    return word, every.replace("_", " ")
    return "", ""


def _rhythms_in(sentence: str) -> list[tuple[int, str]]:
    """Return where in a sentence a rhythm is named, and which, in its order."""
    return sorted(
        (found.start(), every.replace("_", " "))
        for every in _RHYTHMS
        for found in whole(every).finditer(sentence)
    )


def _parts_by_rhythm(sentence: str) -> list[str]:
    """Return the parts of a sentence that each name a rhythm: "täglich …, danach wöchentlich …"."""
    places = [place for place, _ in _rhythms_in(sentence)]
    if len(places) < 2:
        return [sentence]
    cuts = [one.start() for one in re.finditer(r"[,;]\s", sentence)]
    cuts += [one.start() for one in _THEN.finditer(sentence)]
    cut = max((one for one in cuts if places[0] < one < places[1]), default=0)
    return [sentence[:cut], sentence[cut:].lstrip(",; ")] if cut else [sentence]


def rhythm_then(sentence: str) -> str:
    """Return how often a thing is tended in the end, in a sentence that is not English; else "".

    >>> rhythm_then("2 Wochen lang täglich schütteln, danach wöchentlich.")
    'every week'
    """
    parts = _parts_by_rhythm(sentence)
    if len(parts) == 2:
        return _rhythms_in(parts[1])[0][1]
    told = _rhythms_in(sentence)
    return told[0][1] if told and _THEN.match(sentence) else ""


def is_first_part(sentence: str) -> bool:
    """Whether a sentence that is not English names the first of several days, weeks or months.

    >>> is_first_part("Die ersten zwei Wochen täglich schütteln."), is_first_part("Zwei Wochen.")
    (True, False)
    """
    found = _FIRST_PART.search(sentence)
    behind = re.findall(r"[^\W\d_]+", sentence[found.end() :])[:2] if found else []
    return any(word.lower() in unit_forms() for word in behind)


def _without_rhythm(sentence: str) -> str:
    """Return a sentence without how often: "alle zwei Tage" is no wait of two days."""
    for every in _RHYTHMS:
        sentence = whole(every).sub("", sentence)
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
    sentence = _behind_straining(DURING.sub("por", sentence))  # "durante" is no "dura"
    sentence = _behind_standing(sentence)
    if not _keeps(sentence) or any_of("before_use").search(sentence) or _is_strained_then(sentence):
        return None
    if _is_after(sentence):
        return None
    for loose, least in LOOSE_LENGTHS:
        unnumbered = LOOSELY if least.isdigit() else ""
        sentence = re.sub(loose, f"{least}{unnumbered}", sentence, flags=re.IGNORECASE)
    return length_elsewhere(sentence) or (
        parse_span("1 day") if _THE_NEXT_DAY.search(sentence) else None
    )


def _is_after(sentence: str) -> bool:
    """Whether the first length is one after which it is used: "consumarlo dopo tre mesi"."""
    found = span_words().search(sentence)
    before = sentence[: found.start()] if found else ""
    led = _BEFORE_LENGTH.search(before)
    word = before[: led.start()].split()[-1:] if led else []
    return bool(word) and whole("after").fullmatch(word[0]) is not None


def _is_strained_then(sentence: str) -> bool:
    """Whether what is kept so long is strained after it: "4 Wochen lagern, dann filtern"."""
    found = span_words().search(sentence)
    strained = any_of("strains").search(sentence, found.end()) if found else None
    return strained is not None and not any_of("keeping").search(sentence, strained.end())


def _behind_straining(sentence: str) -> str:
    """Return what follows the straining, where that says how it keeps: "…, dann 1 Jahr haltbar"."""
    found = span_words().search(sentence)
    strained = any_of("strains").search(sentence, found.end()) if found else None
    rest = sentence[strained.end() :] if strained else ""
    return rest if any_of("keeping").search(rest) and span_words().search(rest) else sentence


def _behind_standing(sentence: str) -> str:
    """Return what follows a wait, where only that says how it is kept: "…, dann kühl lagern"."""
    then = _THEN.search(sentence)
    if then is None:
        return sentence
    before, rest = sentence[: then.start()], sentence[then.end() :]
    stands = span_words().search(before) and _word(before) and not _keeps(before)
    return rest if stands and _keeps(rest) else sentence


def _keeps(words: str) -> bool:
    return bool(any_of("keeping").search(words) or _HOLDS.search(words))


def length_elsewhere(words: str) -> Span | None:
    """Return the first length of a day or more that words name in another language than English."""
    found = span_words().search(words)
    if found is None or found["night"] or unit_forms()[found["unit"].lower()] == "hour":
        return None
    return span_of(found)


def _word(words: str) -> str:
    """Return the timeline's word for what is done; resting only where nothing else is named."""
    return next((word for word, verbs in _verbs().items() if verbs.search(words)), "")


@cache
def _verbs() -> dict[str, re.Pattern[str]]:
    waits: dict[str, list[str]] = wait_words()["waits"]
    return {word: any_word(f"{stem}*" for stem in stems) for word, stems in waits.items()}
