"""Sentences beside a recipe that name from whom it is: "My neighbour Rosa gave me this".

Whoever is named may not want to be printed, and may be whose recipe it is: that is asked. Leaves
out lines that say it alone, "By Ann Sedge": titles.py.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import Final

from stillroom.bringing.accents import without_accents
from stillroom.bringing.afterwords import is_name
from stillroom.bringing.doubted import some_of
from stillroom.bringing.heads import SENTENCE_ENDS, plain, words
from stillroom.bringing.known_work import words_of
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

NAMED_BESIDE: Final = "Somebody is named beside the recipe:"
"""How the question begins that names sentences with somebody in them."""
_MOST_NAMED: Final = 4
_NEAR: Final = 4
"""Words between somebody and what she does with her recipe."""
_BEFORE: Final = 3
_SHOWN: Final = 70
_LEAD: Final = 30
"""Letters before a name with which the question shows it."""
_LONGEST: Final = 4_000
_NAME: Final = r"[A-ZÀ-ÝŁŚŻČŠŽ][a-zà-ÿąćęłńóśźżčďěňřšťůž]+"
_ME: Final = r"(?:me|us|mir|uns|nous|mi|ci|nos|mij|ons|mig|meg|oss|mnie|nam|mně|nám)"
_GAVE: Final = (
    r"(?:gave|gives|sent|showed|taught|passed|handed|told|hat|gab|zeigte|schickte|donné|envoyé|ha|dio|pasó|enseñó|mandó|gaf|stuurde|leerde"
    r"|gav|skickade|lärde|sendte|lærte|deu|ensinou|passou|dała|dał|przysłała|dala|poslala)"
)
_TITLE_OF: Final = (
    r"(?:Mrs|Mr|Ms|Frau|Herr|Mme|Madame|Monsieur|Signora|Signor|Doña|Don|Señora|Señor|Sra|Mevrouw"
    r"|Meneer|Fru|Dona|Tannie|Pani|Chef|Suor)"
)
_WROTE: Final = (
    r"(?:wrote|writes|says|schreibt|schrieb|écrit|scrive|escribe|schrijft|skriver|escreve|pisze)"
)
_NAMED: Final = late_regex(
    rf"\b{_TITLE_OF}\.?\s(?P<title>{_NAME})"
    # "Rosa gave me this", "Rosa m'a donné", "Rosa hat mir"
    rf"|\b(?P<gives>{_NAME})\s(?:{_GAVE}\s{_ME}\b|{_ME}\s{_GAVE}\b|(?:m['’]|nous\s)a\s)"
    rf"|^(?P<says>{_NAME}(?:\s{_NAME}){{0,2}})\s{_WROTE}\b"
    # "Rosa's recipe", "a recipe by Jeremy and Jane", "Rezept von Rosa Berg"
    rf"|\b(?P<whose>{_NAME})['’]s\s(?:[\w-]+\s){{0,2}}(?i:recipe|rezept|recept)\b"
    r"|\b(?i:recipe|rezept|recept(?:et)?|opskrift(?:en)?|oppskrift(?:en)?)\s(?:(?:is|was|comes?|came|ist|stammt|kommt|är|er|kommer)\s)?"
    rf"(?:by|from|von|van|av|af|från|fra)\s(?P<by>{_NAME})"
    rf"|\b(?i:recette|ricetta|receta|receita|przepis)\s(?:de|di|da|od|del|della)\s(?P<of>{_NAME}\s{_NAME})"
    # "Recipe contributed by Laurie Fisher, who adds: …"
    rf"|\b(?i:contributed|submitted|shared|sent\sin|given|supplied|handed\son)\sby\s(?P<sent>{_NAME})"
    # "Shirley (that's my mom)", "Carla (unsere Nachbarin)"
    rf"|\b(?P<kin>{_NAME})\s\((?:(?i:that|this|she|he|who|das|die)(?:['’]s|\s(?:is|ist))\s)?(?i:my|our|meine?|unsere?|mon|ma|notre"
    r"|mi[ao]?|nuestr[ao]|nostr[ao]|mijn|onze|min|vår|vores|minha|meu|nossa|nosso|moja|mój|nasza|nasz)\s[^\W\d_]+"
    # "From Elsabe, she always brings it"
    rf"|^(?:From|By|Von|Par|De|Da|Di|Van|Av|Af|Från|Fra|Od)\s(?P<from>{_NAME}(?:\s{_NAME})?),"
    r"\s(?:she|he|who|they|die|der|sie|er|qui|elle|il|che|lei|que|ella|él|som|hon|han|hun|zij|hij|która|który)\b"
)
_SIGNED: Final = late_regex(r"\((?P<who>[^()]{3,40})\)\s*$")
_CALLED: Final = late_regex(rf"(?P<person>[^\W\d_]+),?\s(?P<name>{_NAME})")
_NOBODY: Final = frozenset(
    {
        "the",
        "a",
        "an",
        "my",
        "our",
        "your",
        "here",
        "there",
        "that",
        "what",
        "it",
        "today",
        "this",
        "where",
        "who",
        "let",
        "she",
        "he",
    }
    | {"christmas", "easter", "noel", "natale", "navidad", "claus", "scratch", "memory"}
    | {"weihnachten"}
)
"""Words in capitals that are nobody's name where one would stand."""


def somebody_named(texts: Iterable[str], title: str, writer: str) -> list[tuple[str, int]]:
    """Return the sentences that do so, each with the place in it where she stands.

    What the title says already, and whose recipe it is said to be, are passed over; a name in
    brackets behind the title is named itself.

    >>> somebody_named(["It keeps. My neighbour Rosa gave me this."], "Plum jam", "")
    [('My neighbour Rosa gave me this.', 13)]
    >>> somebody_named(["My neighbour Rosa gave me this."], "Plum jam", "Rosa Berg")
    []
    >>> somebody_named([], "Nocino (Lina Pecchini)", ""), somebody_named([], "Jam (Easy Way)", "")
    ([('Nocino (Lina Pecchini)', 8)], [])
    """
    told = (one for text in texts for one in SENTENCE_ENDS.split(text[:_LONGEST].strip()))
    known = {*words_of(title), *words_of(writer)}
    signed = _SIGNED.search(title)
    named = [(title, signed.start("who"))] if signed and is_name(signed["who"]) else []
    return named + [(one, at) for one in told if (at := somebody_in(one, known)) is not None]


def asked_whose(found: Sequence[tuple[str, int]]) -> str:
    """Return the question that names such sentences.

    >>> asked_whose([("My neighbour Rosa gave me this.", 13)])
    'Somebody is named beside the recipe: "My neighbour Rosa gave me this".'
    """
    named = some_of([_shown(*one) for one in found], _MOST_NAMED)
    return f"{NAMED_BESIDE} {named}."


def _shown(sentence: str, at: int) -> str:
    """Return a sentence as the question shows it: what stands about the name in it."""
    said = " ".join(sentence.split()).replace('"', "'")
    begin = 0 if len(said) <= _SHOWN else max(0, at - _LEAD)
    begin = said.rfind(" ", 0, begin) + 1 if begin else 0
    shown = said[begin : begin + _SHOWN].rstrip(" .:")
    return f'"{"… " if begin else ""}{shown}{" …" if begin + _SHOWN < len(said) else ""}"'


def somebody_in(sentence: str, known: Iterable[str] = ()) -> int | None:
    """Return where a sentence names from whom a recipe is; None where it does not.

    By her name, or by what she is to whoever writes. `known` are words of names that are said.

    >>> somebody_in("This recipe came from Cheryl."), somebody_in("Receptet fick jag av svärmor.")
    (22, 21)
    >>> somebody_in("Give it to a neighbour."), somebody_in("From my freezer, it is as good.")
    (None, None)
    """
    known = {without_accents(one) for one in known}
    for found in _NAMED.finditer(sentence):
        name = next((one for one in found.groupdict() if found[one]), "")
        if name and _may_be_named(found[name], known):
            return found.start(name)
    return _kin_in(sentence, known)


def _may_be_named(who: str, known: set[str]) -> bool:
    said = words_of(who)
    spoken = plain(who).split(" ")[0]
    told = {*said} & (known | _NOBODY) or spoken in words("told_first") | words("hands_on")
    return not told and not staples_named(who)


def _kin_in(sentence: str, known: set[str]) -> int | None:
    """Return where a friend or one of the family stands who handed a recipe on."""
    said = words_of(sentence)
    persons = [at for at, one in enumerate(said) if _is_person(one) and one not in known]
    if not persons:
        return None
    handed, had, whom = _known("handed_on"), _known("had_from"), _known("from_whom")
    of_recipe = not _known("a_recipe").isdisjoint(said)
    for found in _CALLED.finditer(sentence):
        called = without_accents(found["person"].lower())
        if _is_person(called) and not known.isdisjoint(words_of(found["name"])):
            return None
        if _is_person(called) and _may_be_named(found["name"], known):
            return found.start("name")
    for at in persons:
        behind = said[at + 1 : at + 1 + _NEAR]
        from_her = not whom.isdisjoint(said[max(0, at - _BEFORE) : at])
        has = from_her and (said[0] in whom or not had.isdisjoint(said[:at]))
        if of_recipe or has or not handed.isdisjoint(behind):
            return max(0, without_accents(sentence.lower()).find(said[at]))
    return None


def _is_person(word: str) -> bool:
    known = _known("hands_on")
    return word in known or (word.endswith("s") and word[:-1] in known)


@cache
def _known(which: str) -> frozenset[str]:
    return frozenset(map(without_accents, words(which)))
