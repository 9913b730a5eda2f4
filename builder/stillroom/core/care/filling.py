"""Whether a thing goes hot into glass, read step by step: what has gone cold breaks no jar.

A preserve for the shelf that is cooked and never said to cool counts as filled hot, since so it is
done. Leaves out how hot: warm sugar and glass crack it as well as boiling water does.
"""

from __future__ import annotations

import re
from collections.abc import Iterable

from stillroom.core.method.drying import dried_through
from stillroom.core.method.said_elsewhere import in_english_too
from stillroom.core.words.patterns import clause_regex

_HEATED = clause_regex(
    r"\b(?:boil\w*|simmer\w*|cook(?!ie)\w*|bak(?:e|ed|ing)\b(?! (?:tray|sheet"
    r"|powder|soda))|heat(?:ed)?"
    r"|hot\b(?! (?:pepper|sauce|water bottle))|fry|fried|roast\w*|scald\w*"
    r"|steam\w*|poach\w*|caramel\w*"
    r"|blanch\w*|melt\w*|(?:to|at) (?:[6-9]\d|1\d\d) ?°? ?c\b|warm(?:ed)?)\b",
    re.IGNORECASE,
)
_COOLED = clause_regex(
    # a cool cupboard and cold meats cool nothing that is in the pan
    r"\b(?:cool(?!er|,? (?:and )?(?:dark|dry|airy)\b"
    r"|,? (?:place|spot|cupboard|larder|pantry|cellar|room)\b)\w*"
    r"|(?<!keep )(?<!kept )(?<!store )"
    r"cold(?! (?:meats?|cuts|ham|turkey|pork|pies?|beef|chicken|game|place|larder))"
    r"|fold\w* in (?:the |your )?(?:\w+ ){0,2}(?:whites?|cream)\b"
    r"|chill(?!i)\w*|overnight|next day|freez\w*|refrigerat\w*|room temperature"
    r"|peel(?:ed)? (?:the|them)|cover\w* (?:\w+ )?with (?:the )?(?:\w+ )?oil"
    r"|\d+ (?:hours?|days?|weeks?)\b(?=.*\b(?:leave|stand|steep|infuse|marinate))"
    r"|(?:leave|left|stand|steep|infus|macerat|ferment|soak)\w*\b[^.;]*\b(?:\d+|an?|one|two|three"
    r"|four|five|six|seven|eight|nine|ten|twelve|several|some) (?:days?|weeks?|months?)\b)",
    re.IGNORECASE,
)
# it is the cover that waits until it is cold, not the filling
_COVERED_COLD = clause_regex(
    r"\b(?:cover|seal|lid|tie|close|screw|cap|cork|label)\w*\b[^.;]*\b(?:when|once|after|until|till"
    r"|as soon as)\b[^.;]*\b(?:cold|cool(?:ed)?)\b",
    re.IGNORECASE,
)
_UNDER_OIL = clause_regex(r"\bcover\w* (?:\w+ )?with (?:the )?(?:\w+ )?oil", re.IGNORECASE)
# "fill hot jars", "boil and bottle": what is done, and into what
_FILLS = clause_regex(
    r"\b(?:fill\w*|ladl\w*|transfer\w*|pour\w*|pot(?:ted)?|pack\w*|spoon\w*|bottl(?:e|ed|ing)\b|put\b|decant\w*"
    r"|can(?:ned|ning)\b|funnel\w*|strain\w*|press\w*|bake\w*|steam\w*|half full|layer\w*)\b",
    re.IGNORECASE,
)
_GLASS = clause_regex(
    r"\b(?:jars?|bottles?|glass(?:es)?|kilners?|carboys?|demijohns?)\b", re.IGNORECASE
)
_VERB_ALONE = clause_regex(
    r"\b(?:pot|bottle|can) (?:it |them |hot |while |up|at once|and seal)", re.I
)
_NOT_GLASS = clause_regex(
    r"\b(?:plastic|freezer|ice[- ]cube|paper|silicone) (?:\w+ )?(?:containers?"
    r"|tubs?|bags?|trays?|jars?"
    r"|bottles?)\b",
    re.IGNORECASE,
)
_EMPTY = clause_regex(
    # "sterilise the mason jar and its lid by dipping it into boiling water for 10 seconds"
    r"\b(?:sterili[sz]|scald|wash|rins|dip)\w*\s+(?!(?:\w+\s+){0,4}(?:filled|full|sealed|closed|packed)\b)"
    r"(?:\w+\s+){0,4}(?:jars?|bottles?|lids?)\b[^.;]*\b(?:boiling|hot|simmering) (?:soapy )?water\b"
    r"|\bwarm,? (?:and )?(?:dark |dry |quiet )*(?:place|spot|corner|cupboard|room)"
    r"|(?<!into )(?<!in )(?<!into the )(?<!in the )\b"
    r"(?:boil|scald|heat|warm|steam|wash|sterilis|steriliz)\w*\s+(?:(?:the"
    r"|your|a|clean|empty|washed"
    r"|glass|preserving)\s+)*(?:jars?|bottles?|lids?)\b(?! (?:of|full|with))",
    re.IGNORECASE,
)
# heat that the filling never had: of water to wash in, of tools, of a mug, a day, a bought roast
_NOT_ITS_HEAT = clause_regex(
    r"\b(?:wash|rins|scrub|clean|wip)\w*\b[^.]*?\b(?:in|with|under) (?:very )?(?:hand[- ])?"
    r"(?:hot|warm|boiling)(?:,? (?:and )?soapy)? water"
    r"|\b(?:scald|boil|steam|warm|sterilis|steriliz)\w* (?:(?:the|a|your|clean|piece of|double) )*"
    r"(?:muslin|cloth|cheesecloth|tea ?towel|jelly bag|bag|funnel|filter|sieve|strainer|spoon|ladle"
    r"|knife|tongs|corks?|stoppers?|rings?|rubbers?|seals?|weights?|stones?|plates?)\b"
    r"|\bmelt\w* in (?:the|your|a) (?:mug|cup|mouth|glass)\b|\bice\b(?! cream)[^.]*?\bmelt\w*"
    r"|\b(?:keep|leave|stand|put|place|set|stor)\w*\b[^.]*\bwarm\b(?! (?:water|syrup|brine))"
    r"|\bwarm (?:und \w+ )?(?:steh|stell|gestell|aufbewahr|lager|zieh|halt)\w*"
    r"|\b(?:stå|ställ\w*) varmt\b"
    r"|\bhot(?=[- ](?:days?|weather|spell|summers?|sun|climates?|room|kitchen|place|cupboard"
    r"|chocolate|cocoa|toddy|cross|dogs?|chill?i|chill?ies|mustard|curry|paprika|spice|smoked|pan\b"
    r"|oven|hob|stove|hotplate|plate|sauces?\b|salsa|peppers?\b))"
    r"|\b(?:roast|toast|bak|boil|cook|blanch|smok|fri|cand)(?:i?ed) (?=(?:\w+ )?(?:nuts?|almonds?"
    r"|hazelnuts?|walnuts?|pecans?|cashews?|pistachios?|peanuts?|chestnuts?|seeds?|coconut|oats|coffee"
    r"|beans|chickpeas|sweets|flakes|chips|peel)\b)",
    re.IGNORECASE,
)
_FILLED_BOILED = clause_regex(
    r"\b(?:process|boil|steam|bath)\w*\b[^.]*\b(?:filled|full|sealed|closed"
    r"|packed|the) (?:jars?|bottles?)"
    r"|\bjars?\b[^.]*\b(?:boiling[- ]water|water[- ]bath|oven)\b"
    r"|\b(?:boiling[- ]water|water[- ]bath)[- ]cann"
    r"|pressure[- ]can(?! (?:be|build|get|rise|burst|blow))"
    r"|\bboil (?:them|the jars) for\b|\bfill(?:ed)? jars? and boil",
    re.IGNORECASE,
)
_HOT_COVER = clause_regex(
    r"\b(?:cover|pour|top)\w*\b[^.]*\b(?:boiling|hot)\b(?! water bath)"
    r"|\b(?:boiling|hot)\b[^.]*\b(?:pour|cover)"
    r"\w* (?:it |them )?(?:over|into)",
    re.IGNORECASE,
)
# the filled glass itself goes into the oven or the pan
_HEATED_IN_GLASS = clause_regex(
    r"\b(?:bake|steam|boil|simmer)\w*\s+(?:at|for|them|in|until|gently|the jars)\b"
    # and no "process until smooth", which a blender does
    r"|\bprocess\w*\s+(?:at|for|them|the jars"
    r"|in(?! (?:an?|the|your) (?:food|blender|processor)))\b",
    re.IGNORECASE,
)
_CHILLED_AFTER = clause_regex(r"\b(?:then|and) chill|\bbefore chill", re.IGNORECASE)
# the grains go into the jar, and the sugared water stays where it cools
_A_CULTURE = clause_regex(
    r"\b(?:put|place|add|drop|spoon|tip)\w* (?:the |your |some )?(?:\w+ ){0,2}"
    r"(?:grains|scoby|starter|culture|mother)\b",
    re.IGNORECASE,
)
# "Once the oil is hot, pour it over the tomatoes", which lie in their jars
_POURED_OVER = clause_regex(
    r"\bpour\w* (?:it|them|this|(?:the|this) (?:\w+ )?\w+) (?:over|on|onto)\b", re.IGNORECASE
)
_SHUT_HOT = clause_regex(
    r"\b(?:clip|close|seal|screw|lids?)\b[^.]*\b(?:hot|at once|immediately)\b", re.I
)


def _goes_cold(clause: str, hot: str) -> bool:
    """Whether a clause cools or dries what an earlier one, `hot`, or it itself made hot."""
    cools = bool(_COOLED.search(_COVERED_COLD.sub(" ", clause)))
    if cools and _UNDER_OIL.search(clause) and re.search(r"\boil\b", hot, re.IGNORECASE):
        cools = False  # the oil that covers it is the hot one
    return (cools and not _CHILLED_AFTER.search(clause)) or bool(dried_through([clause]))


def filled_hot(clauses: Iterable[str], sure_of_glass: bool) -> str:
    """Return the clause that puts something hot into glass, "" where none does.

    `sure_of_glass` is true of a preserve for the shelf, which lies in a jar whatever is said.

    >>> filled_hot(["boil to a set", "fill hot jars"], True)
    'fill hot jars'
    >>> filled_hot(["boil for an hour", "cool and fill a jar"], True)
    ''
    """
    hot = cooked = ""
    filled = dried = False
    for clause in clauses:
        english = _NOT_GLASS.sub(" tub ", in_english_too(clause))
        plain = _NOT_ITS_HEAT.sub(" ", _EMPTY.sub(" ", english))
        if _FILLED_BOILED.search(plain):
            return clause
        glass = bool(_GLASS.search(plain)) or bool(_VERB_ALONE.search(f"{plain} "))
        if _HEATED.search(plain):
            hot = cooked = clause
        dried = dried or bool(dried_through([plain]))
        if filled and _HEATED_IN_GLASS.search(plain):
            return clause
        if hot and _goes_cold(plain, hot):
            hot = ""
        fills = _FILLS.search(plain) and not _A_CULTURE.search(plain)
        if hot and glass and (fills or _SHUT_HOT.search(plain)):
            return clause
        if hot and filled and _POURED_OVER.search(plain):
            return clause
        if (glass or filled or sure_of_glass) and _HOT_COVER.search(plain):
            return clause
        filled = filled or (glass and bool(_FILLS.search(plain)))
    # jerky that is heated once more when it is dry goes into no jar hot
    return hot if hot and cooked and sure_of_glass and not (filled or dried) else ""
