"""Whether a line of a method is plainly work: something is bidden, measured out, timed or heated.

Told by the words of work.yml, in the language of the paper. Three answers: work, no work, which
sorting.py and its fellows know, and not known, which is asked about: doubted.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.heads import SENTENCE_ENDS
from stillroom.bringing.work_words import Tongue, small_of, tongue_of, words_under
from stillroom.core.words.patterns import clause_regex, late_regex

TONGUES: Final = ("en", "de", "fr", "es", "it", "nl", "sv", "da", "nb", "pt", "pl", "cs")
_LONGEST: Final = 2_000
_LEAST_STEM: Final = 3
_LEAST_AMID: Final = 4
"""Letters of a word that is work wherever it stands: "nas", "tag" may be anything."""
_LEAST_OF_A_FOOD: Final = 4
_HEAD: Final = 5
_GOES_ON: Final = "-"
_NO_END: Final = "-"
_LEAST_TOLD: Final = 2
"""Small words of a language, from which on one line may be in another than its paper."""
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
_HOW_OFTEN: Final = late_regex(r"\w+ly|always|often|sometimes|also")
# within a sentence, in a language that sets things in capitals: "das Mehl", "ein Gewürz"
_THING: Final = clause_regex(r"(?<=[^.:!?–•\s]\s)[A-ZÄÖÜ][a-zäöüß]+")
_MARKS: Final = late_regex(
    r"^[\W\d_]*(?:(?:step|schritt|[ée]tape|paso|passo|steg|trin)\s*\d+\W*)?", re.I
)


def vessels() -> frozenset[str]:
    """Return the words for what things are cooked in, worked with and kept in."""
    return words_under("vessels")


def small_words(tongues: Sequence[str]) -> frozenset[str]:
    """Return the small words of some languages, which name nothing."""
    return frozenset(word for name in tongues for word in small_of(name))


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
    told = {name: sum(map(small_of(name).__contains__, said)) for name in TONGUES}
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


def is_work_in_own(text: str, tongues: Sequence[str], listed: frozenset[str]) -> bool:
    """Whether a line is work in a language of its own, where it is in none of its paper's.

    >>> is_work_in_own("Die Quitten mit dem Zucker in der Pfanne kochen.", ("en",), frozenset())
    True
    """
    own = tongues_of((text,), _LEAST_TOLD)
    return not set(own) & set(tongues) and is_work(text, own, listed)


def may_be_work(text: str, tongues: Sequence[str]) -> bool:
    """Whether a word of a line is one of work, wherever it stands: "Back sweeten for taste".

    >>> may_be_work("Back sweeten for taste", ("en",)), may_be_work("Cook's corner", ("en",))
    (True, False)
    """
    said = words_of(_GENITIVE.sub("s", text[:_LONGEST]))
    return any(
        _form(word, name) or word in tongue_of(name).done for word in said for name in tongues
    )


def only_tells(sentence: str, tongues: Sequence[str]) -> bool:
    """Whether a sentence in which nothing is done asks, or tells of somebody or of what was.

    >>> only_tells("My mother loved this!", ("en",)), only_tells("It will look dull.", ("en",))
    (True, False)
    """
    if sentence.rstrip(' "”’)…!').endswith("?"):
        return True
    said = frozenset(words_of(_MINUTES.sub(" ", sentence[:_LONGEST])))
    if said & (words_under("people") | words_under("furniture")):
        return True
    clauses = list(_clauses(sentence))
    return any(
        bool(said & (tongue.own | tongue.tellers | tongue.was))
        and not any(_one_does(one, name) for one in clauses)
        for name, tongue in ((name, tongue_of(name)) for name in tongues)
    )


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


def listed_words(lines: Iterable[str]) -> frozenset[str]:
    """Return the words of what goes in, and how they begin, by which their other forms are known.

    >>> listed = listed_words(["2 citroner"])
    >>> names_what_is_used("Citronen halverer jeg", listed), names_what_is_used("Cider", listed)
    (True, False)
    """
    said = {word for line in lines for word in words_of(line) if len(word) >= _LEAST_OF_A_FOOD}
    return frozenset(said | {f"{one[:_HEAD]}{_GOES_ON}" for one in said if len(one) >= _HEAD})


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
    furnished = any(one in words_under("furniture") for one in said)
    if furnished and not beside:
        return False
    if timed and _names(said, listed) and len(said) > 1:
        return True
    mine = frozenset(words_of(_MINUTES.sub(" ", sentence)))
    clauses = list(_clauses(sentence))
    things = frozenset(without_accents(one[0]) for one in _THING.finditer(sentence.strip()))
    parts = [[one for one in said if one not in things] for said in clauses]
    bare = [said for said in parts if said]
    return any(
        _does(bare if tongue_of(name).capitals else clauses, name, mine, timed=timed, beside=beside)
        for name in tongues
    )


def _does(
    clauses: Sequence[Sequence[str]],
    name: str,
    mine: frozenset[str],
    *,
    timed: bool,
    beside: bool,
) -> bool:
    """Whether something is done in one language; `mine` are the words of the sentence."""
    tongue = tongue_of(name)
    told = bool(tongue.tellers & mine)
    if beside and told and any(_one_does(said, name) for said in clauses):
        return True
    if told and tongue.past:  # "Häromdagen bakade vi pepparkakor"
        clauses = [[one for one in said if not one.endswith(tongue.past)] for said in clauses]
        clauses = [said for said in clauses if said]
    if not timed and (tongue.own & mine or (told and tongue.had & mine)):
        # "Boil my plums", and nothing of what somebody tells of herself
        begun = (said for said in clauses[:1] if "+".join(said[:2]) not in tongue.pairs)
        clauses = [said[:1] for said in begun]
    return _bids(clauses, name, beside)


def _one_does(said: Sequence[str], name: str) -> bool:
    """Whether somebody says what she does herself: "forme ich Rollen", "I usually mash them"."""
    tongue = tongue_of(name)
    bare = [one for one in said if not _HOW_OFTEN.fullmatch(one)]
    near = {
        bare[to]
        for at, one in enumerate(bare)
        if one in tongue.tellers
        for to in (at - 1, at + 1)
        if 0 <= to < len(bare)
    }
    past = tongue.past or (_NO_END,)
    told = tongue.makes | tongue.had
    return any(_form(one, name) and one not in told and not one.endswith(past) for one in near)


def _names(said: Sequence[str], listed: frozenset[str]) -> bool:
    """Whether some words name what goes in, or what it is worked with."""
    vessels = words_under("vessels")
    return any(
        one in listed or one in vessels or f"{one[:_HEAD]}{_GOES_ON}" in listed for one in said
    )


def _clauses(sentence: str) -> Iterator[list[str]]:
    for one in _CLAUSE.split(_MARKS.sub("", sentence)):
        if said := words_of(one):
            yield said


def _bids(clauses: Sequence[Sequence[str]], name: str, beside: bool) -> bool:
    first = clauses[0] if clauses else []
    if first[1:2] and first[1] in tongue_of(name).named and first[0].endswith("en"):
        clauses = [first[1:], *clauses[1:]]  # "Kochen mit Kindern" names, and bids nothing
    nouns = tongue_of(name).nouns  # "Yummy with toast and butter"
    parts = [*clauses[:1], *(said for said in clauses[1:] if len(said) > 1 or said[0] not in nouns)]
    return any(_clause_bids(said, name, beside) for said in parts)


def _clause_bids(said: Sequence[str], name: str, beside: bool) -> bool:
    tongue = tongue_of(name)
    opened = beside and said[0] in tongue.starts  # "In a bowl mix the flour and the sugar"
    first = True
    for at, one in enumerate(said):
        if at > 0 and said[at - 1] in _PURPOSES and one.endswith(_INFINITIVES):
            continue  # "parfait pour accompagner la viande": what it is good for
        if _is_eased(said, at, tongue):
            continue  # "easy to make", "schnell gemacht"
        after = at > 0 and said[at - 1] in tongue.ones
        if after and one in tongue.done:
            return True
        amid = opened and at > 0 and said[at - 1] not in small_of(name) and one not in tongue.nouns
        told = tongue.anywhere or one.endswith(tongue.plural)  # "al décimo día colaremos"
        if first or after or amid or (told and len(one) >= _LEAST_AMID):
            form = _form(one, name)
            goes_on = at + 1 < len(said) and _goes_on(said[at + 1], tongue)
            if form == "bids" or (form == "weak" and (first or after) and (beside or goes_on)):
                return True
        first = (first and one in tongue.leads) or one in tongue.joins
    return False


def _is_eased(said: Sequence[str], at: int, tongue: Tongue) -> bool:
    """Whether words before one tell how easily it is done, what is liked, or what it is for."""
    pairs = {"+".join(said[one : one + 2]) for one in (at - 1, at) if one >= 0}
    if not pairs.isdisjoint(tongue.pairs):
        return True  # "can't stop eating it"
    before, further = (said[at - by] if at >= by else "" for by in (1, 2))
    if before in tongue.whose and further and further not in tongue.starts | tongue.leads:
        return True  # "the amount of honey you use": which, and nothing that is bidden
    aimed = further in tongue.aimed or not tongue.lets.isdisjoint(said[:at])
    if before in tongue.aims and further and not aimed:
        return True  # "just to make sure that I was right"
    eased = further in tongue.eases and before in tongue.ones
    return eased or (before in tongue.eases and said[at] in tongue.makes)


def _goes_on(word: str, tongue: Tongue) -> bool:
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
    tongue = tongue_of(name)
    for one in _bodies(word, tongue):
        if one in tongue.weak:
            return "weak"
        if one in tongue.bids:
            return "bids"
    return ""


def _bodies(word: str, tongue: Tongue) -> Iterator[str]:
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
