"""Whether a line of a method is plainly work: something is bidden, measured out, timed or heated.

Told by the words of work.yml, in the language of the paper. Three answers: work, no work, which
sorting.py and its fellows know, and not known, which is asked about: doubted.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path
from typing import Any, Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.heads import SENTENCE_ENDS, words
from stillroom.core.words.patterns import clause_regex, late_regex
from stillroom.core.words.plain_yaml import read_plain

TONGUES: Final = ("en", "de", "fr", "es", "it", "nl", "sv", "da", "nb", "pt", "pl", "cs")
_LONGEST: Final = 2_000
_LEAST_STEM: Final = 3
_LEAST_AMID: Final = 4
"""Letters of a word that is work wherever it stands: "nas", "tag" may be anything."""
_MOST_SMALL: Final = 400
_PLAINLY: Final = 4
"""Small words from which on a paper is plainly in a language."""
_WORD: Final = clause_regex(r"[^\W\d_]+")
_CLAUSE: Final = clause_regex(
    r"[.!?;:,(…–—/]+\s*|\s[-+&]\s|\s(?:and|then|or|und|oder|et|puis|ou|luego|poi|och|eller|og|oraz|lub|nebo|but|mais|aber|pero|maar)\s",
    re.IGNORECASE,
)
_TIMED: Final = clause_regex(
    r"(?:\d|\b(?:one|two|three|four|five|six|eight|ten|twelve|few|zwei|drei|vier|deux|trois|dos|tres|due|tre|twee|drie|två|tre|quelques|einige|qualche|några|noen|nokre|eine?r?|une?|una?|en|ett|et))\s?(?:-\s?)?(?:min\w*|mn|hours?|hrs?|std|stunden?|h|heures?|or[ae]|horas?|minuut|uur|timm\w+|tim|timer|time|godz\w*|hod\w*|days?|tage?n?|jours?|giorn[io]|gg|d[ií]as?|dage?n?|dag\w*|dias?|dni|dn[ůíy]"
    r"|weeks?|wochen?|semaines?|settiman[ae]|semanas?|we[ek]k?en|weken|veck\w+|uger|uker|tygodn\w+|t[ýy]dn\w+|months?|monate?n?|mois|mes[ei]\w?|maand\w*|m[åa]n\w+|meses|miesi\w+|m[ěe]s[ií]c\w*)\b"
    r"|[°º˚]|\d\s?(?:grad\w*|degrees?|gradi|grados?|graus|graden|st\b\.?|stopni)"
    r"|\bovernight\b|über nacht",
    re.IGNORECASE,
)
_MEASURED: Final = clause_regex(
    r"[\d½¼¾⅓⅔]\s?(?:k?g|gr|grams?|ml|cl|dl|l|lit\w+|ounces?|oz|lbs?|pounds?|cups?|tbsps?|tsps?|tablespoons?|teaspoons?|EL|TL|msk|tsk|spsk|ss|ts|cuill\w+|cucchia\w+|cuchara\w+|colher\w*|x[íi]cara\w*|[łl]y[żz]\w+|szklank\w+|l[žz][íi]c\w+|hrn\w+)\b"
    r"|\d\s?(?:cm|mm|inch)\b",
    re.IGNORECASE,
)
_PURPOSES: Final = frozenset({"pour", "per", "para"})
_INFINITIVES: Final = ("er", "ir", "re", "ar")
_MINUTES: Final = late_regex(r"\d\s?min\b", re.IGNORECASE)
_GENITIVE: Final = late_regex(r"['’]s\b")
_BRACKETS: Final = late_regex(r"\([^()]{0,200}\)")
_MARKS: Final = late_regex(
    r"^[\W\d_]*(?:(?:step|schritt|[ée]tape|paso|passo|steg|trin)\s*\d+\W*)?", re.I
)


@dataclass(frozen=True)
class _Tongue:
    """How one language bids: the forms that do, those that need company, what stands before."""

    own: frozenset[str]
    starts: frozenset[str]
    nouns: frozenset[str]
    joins: frozenset[str]
    named: frozenset[str]
    leads: frozenset[str]
    ones: frozenset[str]
    bids: frozenset[str]
    weak: frozenset[str]
    done: frozenset[str]
    anywhere: bool
    plural: str
    before: tuple[str, ...]
    clitics: tuple[str, ...]


@cache
def _data() -> dict[str, Any]:
    text = (Path(__file__).parent / "work.yml").read_text(encoding="utf-8")
    found: dict[str, Any] = read_plain(text)
    return found


@cache
def _tongue(name: str) -> _Tongue:
    own = _data()[name]
    bids: set[str] = set()
    weak: set[str] = set()
    done: set[str] = set()
    for group in own["groups"]:
        ends = ["" if one == "-" else one for one in str(group["ends"]).split()]
        into = done if group.get("done") else bids
        into.update(f"{stem}{end}" for stem in str(group["stems"]).split() for end in ends)
        few = str(group.get("weak", "")).split()
        weak.update(f"{stem}{end}" for stem in few for end in ends)
    many = {
        key: frozenset(str(own.get(key, "")).split())
        for key in ("own", "starts", "nouns", "joins", "named", "leads", "ones")
    }
    return _Tongue(
        **many,
        bids=frozenset(one for one in bids if len(one) > 1) - weak,
        weak=frozenset(weak),
        done=frozenset(done),
        anywhere=bool(own.get("anywhere")),
        plural=str(own.get("plural", "-")),
        before=tuple(str(own.get("before", "")).split()),
        clitics=tuple(str(own.get("clitics", "")).split()),
    )


@cache
def _small(name: str) -> frozenset[str]:
    return frozenset(str(_data()[name]["small"]).split())


@cache
def _named(which: str) -> frozenset[str]:
    own = frozenset(str(_data()[which]).split())
    if which != "vessels":
        return own
    return own | {without_accents(one) for key in ("tool_last", "tool_first") for one in words(key)}


def vessels() -> frozenset[str]:
    """Return the words for what things are cooked in, worked with and kept in."""
    return _named("vessels")


def small_words(tongues: Sequence[str]) -> frozenset[str]:
    """Return the small words of some languages, which name nothing."""
    return frozenset(word for name in tongues for word in _small(name))


def own_words(tongues: Sequence[str]) -> frozenset[str]:
    """Return the words by which one speaks of oneself in some languages."""
    return frozenset(word for name in tongues for word in _tongue(name).own)


def words_of(text: str) -> list[str]:
    """Return the words of a text as they are compared: small, without accents and signs."""
    return _WORD.findall(without_accents(text))


def tongues_of(texts: Sequence[str], least: int = 1) -> tuple[str, ...]:
    """Return the languages that some lines may be in: the likeliest, and those that come near it.

    None where fewer than `least` words of them tell.

    >>> tongues_of(["Die Zwiebeln mit dem Honig in der Pfanne dünsten."])
    ('de',)
    >>> tongues_of(["Mix the onions with the honey in the pan and stir."])
    ('en',)
    """
    said = [word for text in texts for word in words_of(text[:_LONGEST])][:_MOST_SMALL]
    told = {name: sum(map(_small(name).__contains__, said)) for name in TONGUES}
    most = max(told.values())
    if most < least:
        return ()
    too = {"en"} if most < _PLAINLY else set()  # which has few of them in lists
    return tuple(name for name in TONGUES if told[name] * 3 >= most * 2 or name in too)


def is_work(text: str, tongues: Sequence[str], listed: frozenset[str] = frozenset()) -> bool:
    """Whether a line plainly says that something is done.

    `listed` are the words of what goes in, without accents.

    >>> is_work("Stir in the sugar.", ("en",)), is_work("Die Quitten gut waschen.", ("de",))
    (True, True)
    >>> is_work("My neighbour has a tree of them!", ("en",)), is_work("Share this:", ("en",))
    (False, False)
    >>> is_work("Save the peel.", ("en",), frozenset({"peel"})), is_work("Save it", ("en",))
    (True, False)
    """
    text = text[:_LONGEST]
    return any(_is_done(one, tongues, listed) for one in SENTENCE_ENDS.split(text))


def is_plainly_work(text: str) -> bool:
    """Whether a line by itself says that something is done, in whatever language it is.

    >>> is_plainly_work("Boil the plums and the sugar."), is_plainly_work("2 jars")
    (True, False)
    """
    return is_work(text, tongues_of((text,)))


def may_be_work(text: str, tongues: Sequence[str]) -> bool:
    """Whether a word of a line is one of work, wherever it stands: "Back sweeten for taste".

    >>> may_be_work("Back sweeten for taste", ("en",)), may_be_work("Cook's corner", ("en",))
    (True, False)
    """
    said = words_of(_GENITIVE.sub("s", text[:_LONGEST]))
    return any(_form(word, name) or word in _tongue(name).done for word in said for name in tongues)


def names_what_is_used(text: str, listed: frozenset[str]) -> bool:
    """Whether a line names what goes in, what it is worked with, how much or how long.

    >>> names_what_is_used("In den Topf geben", frozenset())
    True
    >>> names_what_is_used("My friend took the pictures.", frozenset({"plums"}))
    False
    """
    said = text[:_LONGEST]
    measured = _TIMED.search(said) or _MEASURED.search(said)
    return bool(measured) or _names(words_of(said), listed)


def _is_done(sentence: str, tongues: Sequence[str], listed: frozenset[str]) -> bool:
    if sentence.rstrip(' "”’)').endswith("?"):
        return False
    outside = _BRACKETS.sub(" ", sentence)
    sentence = _GENITIVE.sub("s", outside if _WORD.search(outside) else sentence)
    said = words_of(sentence)
    if not said:
        return False
    timed = bool(_TIMED.search(sentence))
    beside = timed or bool(_MEASURED.search(sentence)) or _names(said, listed)
    furnished = any(one in _named("furniture") for one in said)
    if furnished and not beside:
        return False
    if timed and _names(said, listed) and len(said) > 1:
        return True
    mine = frozenset(words_of(_MINUTES.sub(" ", sentence)))
    clauses = list(_clauses(sentence))
    # "Boil my plums", and nothing of what somebody tells of herself
    begun = [one[:1] for one in clauses[:1]]
    return any(
        _bids(clauses if timed or not (_tongue(name).own & mine) else begun, name, beside)
        for name in tongues
    )


def _names(said: Sequence[str], listed: frozenset[str]) -> bool:
    """Whether some words name what goes in, or what it is worked with."""
    vessels = _named("vessels")
    return any(one in listed or one in vessels for one in said)


def _clauses(sentence: str) -> Iterator[list[str]]:
    for one in _CLAUSE.split(_MARKS.sub("", sentence)):
        if said := words_of(one):
            yield said


def _bids(clauses: Sequence[Sequence[str]], name: str, beside: bool) -> bool:
    first = clauses[0] if clauses else []
    if first[1:2] and first[1] in _tongue(name).named and first[0].endswith("en"):
        clauses = [first[1:], *clauses[1:]]  # "Kochen mit Kindern" names, and bids nothing
    return any(_clause_bids(said, name, beside) for said in clauses)


def _clause_bids(said: Sequence[str], name: str, beside: bool) -> bool:
    tongue = _tongue(name)
    opened = beside and said[0] in tongue.starts  # "In a bowl mix the flour and the sugar"
    first = True
    for at, one in enumerate(said):
        if at > 0 and said[at - 1] in _PURPOSES and one.endswith(_INFINITIVES):
            continue  # "parfait pour accompagner la viande": what it is good for
        after = at > 0 and said[at - 1] in tongue.ones
        if after and one in tongue.done:
            return True
        amid = opened and at > 0 and said[at - 1] not in _small(name) and one not in tongue.nouns
        told = tongue.anywhere or one.endswith(tongue.plural)  # "al décimo día colaremos"
        if first or after or amid or (told and len(one) >= _LEAST_AMID):
            form = _form(one, name)
            goes_on = at + 1 < len(said) and _goes_on(said[at + 1], tongue)
            if form == "bids" or (form == "weak" and (first or after) and (beside or goes_on)):
                return True
        first = (first and one in tongue.leads) or one in tongue.joins
    return False


def _goes_on(word: str, tongue: _Tongue) -> bool:
    """Whether a word says what goes on: "begin kneading", never "continue reading".

    Or how a thing is kept: "keep refrigerated".
    """
    if word in tongue.done:
        return True
    stem = word.removesuffix("ing")
    return stem != word and any(one in tongue.bids for one in (stem, f"{stem}e", stem[:-1]))


@lru_cache(maxsize=16_384)
def _form(word: str, name: str) -> str:
    """Return "bids" or "weak" for a word that is work in a language; "" for any other."""
    tongue = _tongue(name)
    for one in _bodies(word, tongue):
        if one in tongue.weak:
            return "weak"
        if one in tongue.bids:
            return "bids"
    return ""


def _bodies(word: str, tongue: _Tongue) -> Iterator[str]:
    """Yield a word, and it without what is grown to its front and its end."""
    yield word
    for end in tongue.clitics:
        if word.endswith(end) and len(word) - len(end) >= _LEAST_STEM:
            yield word[: -len(end)]
    for front in tongue.before:
        if word.startswith(front) and len(word) - len(front) >= _LEAST_STEM:
            rest = word[len(front) :]
            yield rest
            for more in ("ge", "zu"):
                if rest.startswith(more) and len(rest) - 2 >= _LEAST_STEM:
                    yield rest[2:]
