"""What sentences in other languages than English measure, gathered one to a line.

"Zu 2 Pfund Kirschen nimmt man ein Pfund Zucker", "kwartę miodu smażyć": amounts as the book's own
reader takes them in that language, each with the longest food behind it that is known. What is
measured and names no known food is told apart, so that it can be asked about by name. Leaves out
English, whose old books have their own turns: prose.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import takewhile
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.known_work import tongues_of
from stillroom.bringing.work_words import small_of, words_under
from stillroom.core.amounts.units import all_units
from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.staple import Staple
from stillroom.core.lines.amounts import Measured, read_measured
from stillroom.core.lines.behind import read_taken_of
from stillroom.core.lines.measures import read_noun, read_unit
from stillroom.core.lines.number_words import begins_number_in, languages_with_numbers
from stillroom.core.lines.numbers import Marks, marks_of
from stillroom.core.lines.parts_of_line import after_of
from stillroom.core.method.tongue import tongue_of
from stillroom.core.words.problems import Unreadable

_WORD: Final = re.compile(r"(?<![\w.,/°-])(?:[\d½¼¾⅓⅔⅛]|[^\W\d_])")
_FIRST: Final = re.compile(r"[^\W\d_]+")
_CLAUSE: Final = re.compile(r"[;:!?()]|\.(?!\d)|,(?!\d)|\s[-–—]\s")
_TOKEN: Final = re.compile(r"[^\s,;:.!?()]+")
# "alcool a 90°", "alcohol de 90 grados": how strong it is goes with it
_STRENGTH: Final = re.compile(
    r"\s+(?:(?:à|a|al|de|di|mit|med|met|på|von|van|z|o\s+mocy)\s+)?\d{2}(?:[.,]\d)?\s?(?:°|º|%|grad\w*|degr[eé]s|graus|stopni)",
    re.IGNORECASE,
)
_OF: Final = frozenset(
    {"de", "d", "di", "du", "des", "da", "do", "dos", "das", "del", "dei", "degli", "della"}
    | {"delle", "van", "af", "av", "von", "z", "ze"}
)
# what stands between a thing and what is done with it, besides a language's smallest words
_BEHIND: Final = frozenset(
    {"efter", "vor", "avant", "apres", "dopo", "prima", "despues", "antes", "depois", "voor", "na"}
    | {"fore", "for", "przed", "mod", "mot", "gegen", "contre", "sous", "sotto", "bajo", "sob"}
    | {"pod", "onder", "mellem", "mellan", "mellom", "zwischen", "tussen", "entre", "tra", "fra"}
    | {"samt", "sowie", "ainsi", "sammen", "tillsammans", "zusammen", "insieme", "junto"}
)
_FEWEST: Final = 2
_MOST_WORDS: Final = 6
_FARTHEST: Final = 110
_MOST_BEFORE: Final = 5
_MOST_UNKNOWN: Final = 3
_MOST_OF_A_TEXT: Final = 12_000
"""Letters of the sentences that are gone through: a recipe has no more."""
# "the three eggs" are those that were told before
_THE: Final = {
    "de": "die den der diese diesen dieser",
    "fr": "les ces",
    "es": "los las estos estas esos esas",
    "it": "i gli le questi queste",
    "nl": "de deze die",
    "sv": "de dessa",
    "da": "de disse",
    "nb": "de disse",
    "pt": "os as estes estas esses essas",
    "pl": "te tych tymi",
}
# what only says how much of what follows: "cassis bien mûr"
_HOW: Final = frozenset(
    {"a", "bien", "tres", "quelques", "ben", "bene", "molto", "muy", "bem", "muito", "helt", "val"}
    | {"godt", "sehr", "gut", "heel", "goed", "dobrze", "bardzo"}
)
_A_TIME: Final = re.compile(
    r"(?:min|se[ck]|stund|std|heure|h$|hor|or[ae]$|uur|uren|tim|dag|tag|jour|giorn|d[ií]a|week|woch|semain|settiman|vecko|uke|uge|mes|mois|mois"
    r"|monat|maand|månad|måned|år|ann|año|godzin|dni|dzie|tydzie|tygodni|miesi|rok|lat|gang|volt|fois|vec|vezes|mal$|raz|keer|grad|stopni)",
    re.IGNORECASE,
)
# "um 4 Gläser zu füllen", "ger 3 liter": how much is made
_MADE: Final = re.compile(
    r"\b(?:per\s+(?:ottenere|fare|preparare)|pour\s+(?:obtenir|faire|préparer)|para\s+(?:obtener|hacer|preparar|fazer)|um"
    r"|ergibt|ergeben|voor|för\s+att\s+få|ger|giver|gir|rende|rinde|donne|na\s+około)\s+"
    r"(?:(?:ca\.?|circa|etwa|environ|unos|cerca\s+de|około)\s+)?$",
    re.IGNORECASE,
)
_NEAR_MADE: Final = 40
# "til hver liter saft", "per ogni litro": so much goes to each of something, and none is said
_OF_WHAT: Final = r"(?:\s+(?:d[eiu]|d['’]|van|von|af|av)?\s*[^\W\d]+)?"
_TO_EACH: Final = re.compile(
    r"(?:^|(?<=\s)|\s)(?P<said>(?:(?:zu|auf|pour|à|per|ad?|por|para|till|til|for|på|na|do|op|voor)\s+"
    r"(?:jede[rmns]?|chaque|ogni|cada|varje|vart|hvarje|hvart|hwarje|hver|hvert|każd\w+|elke?|ieder\w*)\s+[^\W\d]+"
    r"|(?:par|per|por|pro|pr\.?|auf|na|till|til)\s+(?:(?:1|ein(?:en)?|en|un[oa]?|jeden)\s+)?(?:lit\w+|l|kilo\w*|kg|pot|pfund|pund|funt\w*|kwart\w*|pintes?|livre))"
    rf"\b{_OF_WHAT})",
    re.IGNORECASE,
)
# what comes of it is told with an article: "une liqueur"; an egg or a lemon is counted
_COUNTED_WHOLE: Final = frozenset(
    {"egg", "pasteurised-egg", "fruit", "citrus", "vegetable", "low-acid-vegetable", "herb"}
    | {"fresh-herb", "spice", "citrus-peel"}
)
_NO_FOOD: Final = frozenset({"craft"})
_VERB_LAST: Final = re.compile(r"[a-zäöüß]{3,}(?:en|ern|eln|t)")
_SPEAKS_CASES: Final = frozenset({"pl", "fi", "cs"})
"""Languages in which "funt mąki" is one pound, without a number."""


@dataclass(frozen=True)
class Told:
    """What some sentences measure: the lines of a list, and what names no known food."""

    things: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()


def told_elsewhere(sentences: Sequence[str]) -> Told | None:
    """Return what sentences measure that are in another language than English; None in English.

    Of two languages that are alike, Danish and Norwegian, the one that tells more counts.

    >>> told_elsewhere(["Til 2 Pund Kirsebær tages 1 Pund Sukker, og det koges med Eddike."]).things
    ('2 Pund Kirsebær', '1 Pund Sukker')
    >>> told_elsewhere(["Take two quarts of brandy and put it into a large bottle."])
    """
    tongues = tongues_of(sentences, _FEWEST)
    if not tongues or "en" in tongues:
        return None
    plainly = tongue_of(" ".join(sentences)[:_MOST_OF_A_TEXT])
    tongues = (plainly,) if plainly in tongues else tongues
    told = [told_in(sentences, tongue) for tongue in tongues if tongue in languages_with_numbers()]
    return max(told, key=lambda one: len(one.things), default=None)


def told_in(sentences: Iterable[str], tongue: str) -> Told:
    """Return what sentences of a language measure, in their order, each once.

    >>> told_in(["Prenez deux livres de cassis et six pintes d'eau-de-vie."], "fr").things
    ('deux livres de cassis', "six pintes d'eau-de-vie")
    >>> told_in(["Kwartę miodu smażyć, wsypać garść cukru, piec 2 godziny."], "pl").things
    ('Kwartę miodu', 'garść cukru')
    >>> told_in(["Die Masse zwei Stunden in eine große Schüssel geben."], "de").things
    ()
    >>> told_in(["Tag tre skålpund gott wetemjöl."], "sv").unknown
    ('tre skålpund gott wetemjöl',)
    """
    things: dict[str, str] = {}
    unknown: dict[str, str] = {}
    room = _MOST_OF_A_TEXT
    for sentence in sentences:
        for said, known in _told(sentence[:room], tongue):
            (things if known else unknown).setdefault(said.casefold(), said)
        room -= len(sentence)
        if room <= 0:
            break
    return Told(tuple(things.values()), tuple(unknown.values()))


def _told(text: str, tongue: str) -> Iterator[tuple[str, bool]]:
    marks, end = marks_of(tongue), 0
    for found in _WORD.finditer(text):
        at = found.start()
        if at < end or not _may_begin(text, at, tongue):
            continue
        measured = _measured_at(text, at, marks)
        if measured is None or _MADE.search(text[max(0, at - _NEAR_MADE) : at]):
            continue
        one = _thing_at(text, (end, at), measured, tongue)
        if one is None:
            end = measured.end  # no other measure begins within one: "1 g à 1 g à 1 g"
            continue
        begin, stop, known = one
        end = stop
        if known and not measured.amount.unit and _is_told_of(text, at, tongue):
            continue
        yield _with_its_share(text, begin, stop), known


def _is_told_of(text: str, at: int, tongue: str) -> bool:
    """Whether an article says of a number that its things were told before."""
    before = text[max(0, at - 8) : at].split()
    return bool(before) and before[-1].lower() in _THE.get(tongue, "").split()


def _may_begin(text: str, at: int, tongue: str) -> bool:
    if not text[at].isalpha():
        return True
    if begins_number_in(text, at, tongue):
        return True
    is_case = tongue in _SPEAKS_CASES
    return is_case and bool(read_unit(text, at, "metric") or read_noun(text, at))


def _measured_at(text: str, at: int, marks: Marks) -> Measured | None:
    try:
        return read_measured(text, at, "metric", marks)
    except Unreadable:
        return None


def _thing_at(
    text: str, place: tuple[int, int], measured: Measured, tongue: str
) -> tuple[int, int, bool] | None:
    """Return where a measured thing begins and ends, and whether its food is known; or None.

    `place` is where the thing before it ends, and where its number stands.
    """
    before, at = place
    sized = bool(measured.amount.unit or measured.amount.noun or measured.each)
    if measured.amount.unit and all_units()[measured.amount.unit].size not in ("mass", "volume"):
        return None
    start = after_of(text, measured.end, sized)
    if not text[measured.end : start + 1].strip() and start == measured.end:
        start += 1
    words = _words_behind(text, start, tongue)
    larder = _larder_of(tongue)
    for size in range(len(words), 0, -1):
        phrase = text[start : words[size - 1].end()]
        food = _food_of(phrase, larder)
        if food is None or (without_accents(words[size - 1][0]) in _OF):
            continue
        one = measured.amount.low == measured.amount.high == 1 and not sized
        if one and text[at].isalpha() and not food.tags & _COUNTED_WHOLE:
            return None
        while size > 1 and without_accents(words[size - 1][0]) in _HOW:
            size -= 1
        stop = words[size - 1].end()
        strong = _STRENGTH.match(text, stop) if "alcohol" in food.tags else None
        begin = at if sized else _with_its_part(text, (before, at), stop, tongue)
        return begin, strong.end() if strong else stop, True
    if (sized or text[at].isdigit() or len(words) > 2) and (
        end := _behind_its_praise(text, words, larder)
    ):
        return at, end, True
    if text[at].isalpha() and not begins_number_in(text, at, tongue):
        return None
    few = list(takewhile(lambda word: word[0][0].isalpha(), words[:_MOST_UNKNOWN]))
    if sized and few and not _is_time_or_length(measured):
        return at, few[-1].end(), False
    return None


def _behind_its_praise(text: str, words: Sequence[re.Match[str]], larder: Larder) -> int:
    """Return where a known food ends before which stand words that are not known; 0 for none.

    "½ litro di buon latte", "ett kvarter god honung": each is asked about, with what it may be.
    """
    if not words or _A_TIME.match(words[0][0]) or words_under_vessels(words[0][0]):
        return 0
    for first in range(1, min(len(words), _MOST_UNKNOWN + 1)):
        for last in range(len(words), first, -1):
            plain = without_accents(words[last - 1][0])
            if plain not in _OF and _food_of(
                text[words[first].start() : words[last - 1].end()], larder
            ):
                while last > first + 1 and without_accents(words[last - 1][0]) in _HOW:
                    last -= 1
                return words[last - 1].end()
    return 0


def words_under_vessels(word: str) -> bool:
    """Whether a word is a vessel's."""
    return without_accents(word) in words_under("vessels")


def _is_time_or_length(measured: Measured) -> bool:
    unit = measured.amount.unit
    return bool(unit) and all_units()[unit].size not in ("mass", "volume")


@cache
def _larder_of(tongue: str) -> Larder:
    return Larder(language=tongue)


def _food_of(phrase: str, larder: Larder) -> Staple | None:
    reading = read_food(phrase, larder)
    food = reading.food if reading.known else None
    return None if food is None or food.tags & _NO_FOOD else food


def _words_behind(text: str, start: int, tongue: str) -> list[re.Match[str]]:
    """Return the words behind an amount that may name its food, before something else begins."""
    clause = _CLAUSE.search(text, start, start + _FARTHEST)
    stop = clause.start() if clause else min(len(text), start + _FARTHEST)
    small = (small_of(tongue) | _BEHIND) - _OF
    kept: list[re.Match[str]] = []
    for word in _TOKEN.finditer(text, start, stop):
        bare = without_accents(word[0])
        if kept and (bare in small or word[0][0].isdigit() or len(kept) == _MOST_WORDS):
            break
        if not kept and bare in small:
            break
        kept.append(word)
    return kept


def _with_its_part(text: str, place: tuple[int, int], stop: int, tongue: str) -> int:
    """Return where "la scorza di mezzo limone" begins, whose number is the second of `place`."""
    least, at = place
    before = list(_TOKEN.finditer(text, max(least, at - _NEAR_MADE), at))[-_MOST_BEFORE:]
    marks = marks_of(tongue)
    for word in before:
        if _CLAUSE.search(text, word.start(), at):
            continue
        try:
            if read_taken_of(text[word.start() : stop], 0, "metric", marks):
                return word.start()
        except Unreadable:
            continue
    return at


def _with_its_share(text: str, begin: int, stop: int) -> str:
    """Return a thing with what it goes to each of: "2 Pund Sukker til hver Pot Saft"."""
    thing = text[begin:stop]
    behind = _TO_EACH.match(text, stop)
    clause = max(text.rfind(sign, 0, begin) for sign in ".;:")
    before = _TO_EACH.match(text[clause + 1 : begin])
    share = behind or before
    return f"{thing} {share['said']}" if share else thing
