"""Which water and which vinegar of a recipe are poured off before anything is filled.

Water counts as poured off only where the method leaves no doubt, since it dilutes what is sour;
vinegar counts so wherever nothing says that any goes on with the food, since none is in the jar.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction

from stillroom.core.amounts.units import convert
from stillroom.core.words.patterns import clause_regex

_DRAIN = clause_regex(
    r"\b(?:drain\w*|pour(?:ed)? off|press(?:ed)? out|rins(?:e|ed|ing)"
    r"|(?:tip|lift|pour|turn|empty|put)\w*\b[^.]*\b(?:colander|sieve|strainer)"
    r"|pat(?:ted)?\b[^.]*\bdry"
    # and in the other languages that a method is read in
    r"|abgie(?:ß|ss)\w*|abgegossen|abtropf\w*|abschütt\w*|abspül\w*|trocken ?tupf\w*"
    r"|ausdrück\w*|gie(?:ß|ss)\w* (?:\w+ ){1,3}ab|égoutt\w*|rinc(?:er|ez)|essor\w*"
    r"|jet\w+ (?:l['’]eau|la saumure|le liquide)|escurr\w*|enjuag\w*"
    r"|tir\w+ (?:el agua|el líquido|la salmuera)|scol(?:a|are|ate|atele|arle)|sgocciol\w*"
    r"|strizz\w*|sciacqu\w*|gi(?:et|eten)\b[^.]*\baf|afgieten|afgegoten|uitlek\w*|uitgelekt"
    r"|afspoel\w*|häll\w* (?:\w+ ){0,3}(?:av|bort)|rinna av|skölj\w*|krama ur"
    r"|hæld\w* (?:\w+ ){0,3}(?:fra|af)|hell\w* (?:\w+ ){0,3}av|skyll\w*|escorr\w*"
    r"|odcedz\w*|odsącz\w*)\b",
    re.I,
)
_COVERS = clause_regex(
    r"\b(?:water|brine|liquid|liquor|solution|syrup|ice|wasser|salzwasser|\w*lake|sud"
    r"|flüssigkeit|einlegeflüssigkeit|eau|saumure|liquide|agua|salmuera|líquido|acqua|salamoia"
    r"|liquido|\w*pekel|vloeistof|vocht|vatten|\w*lag|\w*lagen|\w*laken|vand|vann|lage|água|salmoura"
    r"|woda|wody|wodę|solank\w*|zalew\w*"
    # what was mixed before and goes over it afterwards
    r"|(?:hot|boiling|warm|vinegar|pickling|cooled) (?:\w+ )?mixture|marinad\w*|miscela|aufguss"
    r"|(?:heiße|warme) mischung|mezcla caliente|mélange (?:chaud|bouillant)"
    r"|(?:hete|warme) mengsel)\b",
    re.I,
)
# whose pint it is the method does not say: either will do
_UNITS = {
    "l": ("l",),
    "m": ("ml",),
    "g": ("us_gallon", "imp_gallon"),
    "q": ("us_quart", "imp_quart"),
    "p": ("us_pint", "imp_pint"),
    "c": ("us_cup", "cup"),
}
_AMOUNT = clause_regex(
    r"\b(\d+(?:\.\d+)?|\d+/\d+) ?(ml|l|litres?|liters?|gal|gallons?|qt|quarts?|pt|pints?|c"
    r"|cups?)\b",
    re.IGNORECASE,
)
_NO_WATER_IN_IT = clause_regex(
    r"\bboiling[- ]water (?:canner|bath)|\bwater[- ]bath\b|\b(?:over|in) (?:a pan of )?"
    r"(?:simmering|boiling|hot) water\b|\bcold water to (?:cool|rinse)\w*"
    r"|\bim wasserbad\b|\bbain[- ]marie\b|\bbaño maría\b|\bbagnomaria\b|\bvattenbad\b",
    re.I,
)


def drained_rows(rows: Sequence[Fraction | None], clauses: Sequence[str]) -> frozenset[int]:
    """Return the places of the water that is poured off; `rows` says how many g each line is.

    None is a line that is no water. Of two waters it is the one whose amount the method says before
    it drains; where that does not tell, the smaller, so that no brine is taken for stronger.

    >>> sorted(drained_rows([None, Fraction(500)], ["salt them in the water and drain", "boil"]))
    [1]
    >>> sorted(drained_rows([None, Fraction(500)], ["pekel erover", "giet de vloeistof af"]))
    [1]
    >>> drained_rows([None, Fraction(500)], ["stand in brine and drain", "cover with the liquid"])
    frozenset()
    """
    water = [place for place, grams in enumerate(rows) if grams is not None]
    pours = [place for place, clause in enumerate(clauses) if _DRAIN.search(clause)]
    if not water or not pours:
        return frozenset()
    before = " . ".join(clauses[: pours[-1] + 1])
    after = " . ".join(_NO_WATER_IN_IT.sub(" ", clause) for clause in clauses[pours[-1] + 1 :])
    if not _COVERS.search(_NO_WATER_IN_IT.sub(" ", before)):
        return frozenset()
    if not _COVERS.search(after):
        return frozenset(water)
    if len(water) < 2:
        return frozenset()
    said_before = [place for place in water if _says_amount(before, rows[place])]
    said_after = [place for place in water if _says_amount(after, rows[place])]
    told = [place for place in said_before if place not in said_after]
    left = [place for place in water if place not in said_after]
    if len(told) != 1 and len(left) == 1:
        told = left
    return frozenset(told if len(told) == 1 else [min(water, key=lambda place: rows[place] or 0)])


# taken out of what it was blanched or soaked in
_TAKEN_OUT = clause_regex(
    r"\b(?:lift|take|scoop|fish)\w*\b[^.]*\b(?:out|from|slotted|skimmer)\b"
    r"|\b(?:discard|throw|pour|tip)\w* (?:away |off |out )?(?:the |this |that )?(?:\w+ )?"
    r"(?:vinegar|brine|liquid|liquor|marinade)\b(?= (?:away|off|out)\b)"
    r"|\b(?:discard\w*|throw\w* (?:away|out)|pour\w* (?:away|off|out)) (?:the |this )?(?:\w+ )?"
    r"(?:vinegar|brine|liquid|liquor|marinade)\b"
    r"|\bherausnehm\w*|\bheraushe[bn]\w*|\bnimm\w* \w+ heraus|\bretir(?:er|ez)|\bsort(?:ir|ez)\b"
    r"|\bsac(?:ar|a|ad|amos)\b|\btogli\w*|\blev(?:are|ate|a)\b|\b(?:ta|tag) \w+ (?:upp|op)\b"
    r"|\bwyjm\w*",
    re.I,
)
_ADDED = clause_regex(
    r"\b(?:add|put|return|cover|pour|mix|toss|stir|place)\w*\b[^.]*\b(?:to|into|in|with|over)\b",
    re.I,
)
_NEAR = 2
"""Clauses back within which the sour liquid is named that something is drained of."""
_SOUR = clause_regex(
    r"\b(?:vinegar|\w*essig\w*|vinaigre|vinagre|aceto|\w*azijn|\w*ättikan?|ättiks\w*|\w*vinäger"
    r"|\w*eddiken?|\w*eddik(?:en)?|oc(?:et|tu|cie|tem)|\w*etikka\w*|(?:lemon|lime) juice"
    r"|zitronensaft|jus de citron|zumo de limón|succo di limone|citroensap|citronsaft)\b",
    re.I,
)
_SOUR_LIQUID = clause_regex(
    r"\b(?:brine|pickle|pickling|liquid|liquor|solution|marinad\w*|mixture|\w*lake|sud|flüssigkeit"
    r"|mischung|saumure|liquide|mélange|salmuera|líquido|mezcla|salamoia|liquido|miscela|\w*pekel"
    r"|vloeistof|vocht|mengsel|\w*lag|\w*lagen|\w*laken|blandning\w*|lage\w*|salmoura|zalew\w*|solank\w*)\b",
    re.I,
)
# it goes over the food, and nothing says that it is only oil or water
_GOES_ON = clause_regex(
    r"\b(?:everything|all the (?:other )?ingredients|the rest|remaining ingredients|juices?|sauce"
    r"|dressing|reserv\w*|alle zutaten|die restlichen|le reste|tous les ingrédients|el resto"
    r"|il resto)\b"
    r"|\b(?:pour|cover|top|fill|auffüll|übergie|bedeck|couvr|recouvr|cubr|copr|ricopr|overgiet"
    r"|täck|häll)\w*\b(?![^.]*\b(?:oil|water|\w*öl|wasser|huile|eau|aceite|agua|olio|acqua|olie|olja|vatten)\b)",
    re.I,
)


_KEPT = clause_regex(
    r"\b(?:reserv\w*|sav(?:e|ing)|kept|keep(?:ing)? the|set aside|auffang\w*|aufgefangen|aufheb\w*"
    r"|réserv\w*|gard(?:er|ez|ant)|conserv\w*|guard\w*|bewaar\w*|spara\w*|gem\w*)\b",
    re.I,
)


def drained_sour(sour: Sequence[bool], clauses: Sequence[str]) -> frozenset[int]:
    """Return the places of the vinegar or lemon juice that is poured off; `sour` tells which it is.

    What is only blanched or soaked in it takes next to nothing of it into its jar.

    >>> sorted(drained_sour([False, True], ["blanch in the vinegar", "drain and pack into jars"]))
    [1]
    >>> drained_sour([False, True], ["salt and drain", "boil the vinegar", "pour over"])
    frozenset()
    >>> drained_sour([False, True], ["simmer in the vinegar, drain", "pour the vinegar over"])
    frozenset()
    """
    pours = [
        place
        for place, clause in enumerate(clauses)
        if _DRAIN.search(clause) or _TAKEN_OUT.search(clause)
    ]
    if not any(sour) or not pours:
        return frozenset()
    last = pours[-1]
    poured, after = clauses[last], clauses[last + 1 :]
    found = _DRAIN.search(poured) or _TAKEN_OUT.search(poured)
    behind = poured[found.end() :] if found else ""
    added = _ADDED.search(behind) and (_SOUR.search(behind) or _SOUR_LIQUID.search(behind))
    if _KEPT.search(poured) or added:  # "reserving the vinegar", "and add to the marinade"
        return frozenset()
    named = any(_SOUR.search(clause) for clause in clauses)
    near = clauses[max(0, last - (_NEAR if _DRAIN.search(poured) else 1)) : last + 1]
    in_it = any(_SOUR.search(one) or (not named and _SOUR_LIQUID.search(one)) for one in near)
    goes_on = (_SOUR, _SOUR_LIQUID, _GOES_ON)
    if not in_it or any(pattern.search(one) for one in after for pattern in goes_on):
        return frozenset()
    return frozenset(place for place, is_sour in enumerate(sour) if is_sour)


def _says_amount(words: str, grams: Fraction | None) -> bool:
    """Whether words name this amount of water, in whatever unit."""
    return any(
        abs(convert(Fraction(found[1]), unit, "ml") - (grams or 0)) <= (grams or 0) / 20
        for found in _AMOUNT.finditer(words)
        for unit in _UNITS[found[2][0].lower()]
    )
