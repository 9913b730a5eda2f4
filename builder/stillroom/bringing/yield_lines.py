"""Lines of their own that say how much is made without its usual words: "Jag får 8 dl", "Ca 1 l".

Made into "Makes …" before anything else is read, so that none begins a list or names a recipe.
Leaves out what a label heads: yield_labels.py, and sentences of a step: yields.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from re import IGNORECASE, Match, Pattern, escape
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.head_rows import is_head
from stillroom.bringing.heads import NEED, SPAN_UNIT, plain, words
from stillroom.bringing.makes_said import is_only_makes
from stillroom.bringing.naming import says_its_kind
from stillroom.bringing.sorting import is_ingredient
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_LONGEST: Final = 110
_NUMBER: Final = (
    r"(?:(?:about|around|roughly|approx\.?|approximately|some|at least|up to|ca\.?|c:a|circa"
    r"|cirka|etwa|ungefähr|rund|environ|env\.|unos|unas|aproximadamente|ongeveer|zo['’]n|ungefär"
    r"|omkring|cerca de|około|±|~)\s?)?"
    r"(?:\d[\d.,/]*(?:\s?[½¼¾]|\s\d/\d)?"
    r"(?:\s?(?:-|–|to|or|bis|oder|à|ou|o|a|of|tot|till|til|eller|do)\s?\d[\d.,/]*)?|[½¼¾]"
    r"|a dozen|half a dozen|two|three|four|five|six|seven|eight|nine|ten|twelve"
    r"|zwei|drei|vier|fünf|sechs|acht|zehn"
    r"|deux|trois|quatre|cinq|huit|dix|due|quattro|cinque|sei|otto|dieci|dos|tres|cuatro|cinco|seis|ocho|diez"
    r"|twee|drie|vijf|zes|tien|två|tre|fyra|fem|sex|åtta|tio|seks|otte|ti|to|fire|quatro|oito|dez|dwa|dwie|trzy|cztery|pięć|sześć)"
)
# "1 fancy bottle" is a thing to work with
_ONE: Final = late_regex(r"(?:1|an?|one|eine?|une?|uno|una|ett?|een)\s(?!\d)", IGNORECASE)
_ENDS: Final = (
    r"(?:\s(?:bekommen|erhalten|gemacht|herausbekommen|van|ut|ud|in total|altogether"
    r"|insgesamt|en tout|in tutto|en total|in totaal|totalt|i alt"
    r"|(?:färdig|færdig|ferdig|finished|fertig\w*)\s[^\W\d_]+))"
)
_TIME_SAID: Final = late_regex(
    rf"(?:[^\W\d][^:]{{1,30}}:\s?)?(?:ca\.?|about|etwa|circa|environ)?\s?\d+(?:\s?[-–]\s?\d+)?\s?{SPAN_UNIT}\.?",
    IGNORECASE,
)
_BETWEEN: Final = late_regex(r"\s[/|·]\s")
# "genoeg chutney voor", "enough to fill": what leads to how much, in a head's brackets
_ENOUGH: Final = late_regex(
    r"(?:just\s)?(?:enough|sufficient|genug|ausreichend|genoeg|voldoende|assez|de\squoi|suffisant\w*|abbastanza|sufficient[ei]|suficientes?"
    r"|nok|tillräckligt|tilstrækkeligt|wystarczy|wystarcza|reicht|räcker|rækker|makes|yields?|ergibt|donne|rinde|rende|ger|giver|gir)"
    r"\s(?:(?:[^\W\d]+\s){0,3}?(?:for|to\sfill|to\smake|für|voor|pour|faire|remplir|per|para|för|till|til|na)\s)?",
    IGNORECASE,
)
_HEAD_AND_REST: Final = late_regex(
    r"(?P<head>[^:(\d]{4,40}?)\s?(?:(?P<open>\()|:\s|\s[-–—]\s)(?P<rest>.{3,60})"
)
# "Pour deux kilos de gelée de coings", "Til 8 l. marmelade": of what it is so much
_OF_WHAT: Final = r"\.?\s(?:(?:de|di|of|von|van|av|af)\s|d['’])?(?P<what>[^\W\d][^\d,;:()]{3,40}?)"
# "a quantity to fill 4 jars of a litre you need:", above a list
_ASIDE: Final = late_regex(r"\s*\([^()]*\)")
_TO_FILL: Final = late_regex(
    r"\b(?:to fill|riempire|remplir|llenar|füllen|befüllen|vullen|fylla|fylde|fylle|encher"
    r"|napełnić)\s"
    rf"(?P<said>{_NUMBER}\s(?:[^\W\d_]+\s){{1,2}}?(?:(?:of|da|de|d['’]|di|van|von|à)\s?[^\W_]+(?:\s[^\W\d_]+)?)?)",
    IGNORECASE,
)
_NEEDED_BEHIND: Final = late_regex(rf"[\s,]{NEED}\s?:?$", IGNORECASE)
_SO: Final = r"(?:(?:sådan|sånn|so|así como)\s)?"
_BELOW_TITLE: Final = 4


def with_yields_told(rows: Sequence[Row]) -> list[Row]:
    """Return rows with such lines as "Makes …"; an amount of nothing only right below a title.

    >>> told = [Row("Rose jelly"), Row("ca 8 dl"), Row("2 l petals"), Row("Jeg får 4 glas.")]
    >>> [row.text for row in with_yields_told(told)]
    ['Rose jelly', 'Makes ca 8 dl', '2 l petals', 'Makes 4 glas']
    """
    sizes = {said for row in rows if (said := _is_for(row.text))}
    begins = next((at for at, row in enumerate(rows) if at and _begins(rows, at)), len(rows))
    found: list[Row] = []
    for at, row in enumerate(rows):
        below_title = 0 < at <= min(begins, _BELOW_TITLE) and _stands_apart(rows, at)
        of_a_size = len(sizes) > 1 and _is_for(row.text)  # "For 4 jars:", and below "For 8 jars:"
        said = _said(row, below_title) if row.shape in ("line", "heading") and at else ""
        said = "" if of_a_size else said
        if not said and (headed := _in_head(row)):
            found.append(replace(row, text=f"Ingredients for {headed}"))
            continue
        found.append(replace(row, text=f"Makes {said}", shape="line", level=0) if said else row)
    return found


def _in_head(row: Row) -> str:
    """Return how much the head of a list says is made behind its word: "Zutaten: ca. 1 kg".

    >>> _in_head(Row("Ingrédients : environ 1 kg")), _in_head(Row("Ingredienti (per tutti)"))
    ('environ 1 kg', '')
    >>> _in_head(Row("INGREDIËNTEN (genoeg chutney voor 4 grote potten van 500g)"))
    '4 grote potten van 500g'
    """
    found = _HEAD_AND_REST.fullmatch(row.text.strip(" :")) if row.shape != "step" else None
    if found is None or plain(found["head"]) not in words("ingredients"):
        return ""
    rest = found["rest"].strip(" :")
    rest = rest.removesuffix(")") if found["open"] else rest
    led = _ENOUGH.match(rest)
    return (
        amount_of_nothing(rest[led.end() :])
        if led
        else amount_of_nothing(rest) or yield_of_line(rest)
    )


def _stands_apart(rows: Sequence[Row], at: int) -> bool:
    """Whether no label leads to a row, and nothing goes on below it: "1 bottle" above "gin"."""
    below = rows[at + 1] if at + 1 < len(rows) else None
    led = rows[at - 1].text.endswith(":")
    goes_on = below is not None and not below.gap and not _begins(rows, at + 1)
    return not led and not goes_on


def _begins(rows: Sequence[Row], at: int) -> bool:
    """Whether a list or a method begins at a row: an amount of something, a head, an item."""
    row = rows[at]
    listed = is_ingredient(row.text) and not amount_of_nothing(row.text)
    return row.shape in ("item", "step", "row", "sizes") or is_head(row) or listed


def _said(row: Row, below_title: bool) -> str:
    """Return how much a row says is made; "" for one that does not, or says it in plain words."""
    text = row.text.strip()
    if len(text) > _LONGEST:
        return ""
    if is_only_makes(text):  # "Für ca. 1,5 l fertigen Likör benötigt man:" is more than its words
        return yield_of_line(text) if _NEEDED_BEHIND.search(text) else ""
    parts = _BETWEEN.split(text)
    told = [one for one in map(yield_of_line, parts) if one]
    if len(told) == 1 and all(
        yield_of_line(one) or _TIME_SAID.fullmatch(one.strip()) for one in parts
    ):
        return told[0]
    if text.endswith(":") and (filled := _TO_FILL.search(text)):
        return " ".join(filled["said"].split())
    return amount_of_nothing(text) if below_title else ""


def yield_of_line(text: str) -> str:
    """Return how much a whole line says is made in words of its own language; "" for any other.

    >>> yield_of_line("These ingredients make about eight medium-sized jars.")
    'about eight medium-sized jars'
    >>> yield_of_line("Für ca. 1,5 l fertigen Likör benötigt man:")
    'ca. 1,5 l'
    >>> yield_of_line("Para 10 potes:"), yield_of_line("For 2 kg plums:"), yield_of_line("For 1 h:")
    ('10 potes', '', '')
    >>> yield_of_line("Pour deux kilos de gelée de coings :"), yield_of_line("Pour 2 kg de coings")
    ('deux kilos', '')
    """
    bare = text.strip(" .:!–-")
    bare = bare[1:-1] if bare[:1] == "(" and bare.find(")") == len(bare) - 1 else bare
    found = _told_plainly().fullmatch(bare) or _told_by_what().fullmatch(bare)
    found = found or _of_what(bare) or _of_what(_ASIDE.sub("", bare))
    said = " ".join(found["said"].split()) if found else ""
    return re.sub(r"^to\s", "2 ", said)  # two, in Danish and Norwegian


def _of_what(text: str) -> Match[str] | None:
    """Return how much of what is made a line heads a list by; None where it is no thing made."""
    found = _told_of_what().fullmatch(text)
    if found is None or not (found["what"] or found["needed"]):
        return None
    what = found["what"] or ""
    other = bool(found["needed"]) and not staples_named(what)  # "For 2 l squash you need:"
    return found if not what or other or says_its_kind(what) else None


def _is_for(text: str) -> str:
    found = _told_by_what().fullmatch(text.strip(" .:!")) if len(text) <= _LONGEST else None
    return str(found["said"]) if found else ""


def amount_of_nothing(text: str) -> str:
    """Return a line that is an amount of nothing: so many jars, a volume, pieces; "" for others.

    >>> amount_of_nothing("ca 8 dl"), amount_of_nothing("20 stycken")
    ('ca 8 dl', '20 stycken')
    >>> amount_of_nothing("6 jars"), amount_of_nothing("1 litre milk")
    ('6 jars', '')
    """
    bare = text.strip(" .")
    bare = bare[1:-1] if bare[:1] == "(" and bare[-1:] == ")" else bare
    found = _counted().fullmatch(bare)
    one = _ONE.match(bare) and not words("made_measured") & frozenset(bare.lower().split())
    return " ".join(found[0].split()) if found and not one else ""


@cache
def _held() -> str:
    """Return the pattern of what is counted or measured when something is made, in any language."""
    counted = words("made_in") | words("made_measured")
    said = "|".join(sorted(map(escape, counted), key=len, reverse=True))
    sized = r"(?:[^\W\d_][\w'’-]*\s|\d+\s?(?:ml|g|cl|dl|oz)[\s-]){0,2}?"
    behind = r"(?:\s(?:pequeñ[ao]s?|grandes?|median[ao]s?|piccol[ie]|grandi|petite?s?|moyens"
    behind += r"|moyennes|pequen[ao]s?|médi[ao]s?|małe|duże))?"
    behind += r"(?:\s(?:à|of|je|von|da|de|di|van|på|på ca\.?|à ca\.?|po|per)\s\d[\w.,/ ]{0,12}"
    behind += r"|\s?\([^()]{1,30}\))?"
    return rf"{_NUMBER}\s?{sized}(?:{said}){behind}"


@cache
def _counted() -> Pattern[str]:
    return late_regex(_held(), IGNORECASE)


@cache
def _told_plainly() -> Pattern[str]:
    """Return the pattern of a line that says who gets how much: "Jag får 4 burkar gelé"."""
    leads = "|".join(sorted(map(escape, words("yield_leads")), key=len, reverse=True))
    return late_regex(
        rf"(?:{leads})\s(?P<said>{_held()}){_ENDS}{{0,2}}",
        IGNORECASE,
    )


@cache
def _told_by_what() -> Pattern[str]:
    """Return the pattern of a line that heads a list by how much it is for: "For 6 jars"."""
    leads = "|".join(sorted(map(escape, words("yield_for")), key=len, reverse=True))
    return late_regex(rf"(?:{leads})\s?:?\s{_SO}(?P<said>{_held()})", IGNORECASE)


@cache
def _told_of_what() -> Pattern[str]:
    """Return the pattern of such a line that says of what it is so much as well."""
    leads = "|".join(sorted(map(escape, words("yield_for")), key=len, reverse=True))
    of_what = rf"(?:{_OF_WHAT})??(?P<needed>[\s,]+{NEED})?"
    return late_regex(rf"(?:{leads})\s?:?\s{_SO}(?P<said>{_held()}){of_what}", IGNORECASE)
