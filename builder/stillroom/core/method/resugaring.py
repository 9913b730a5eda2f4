"""Whether a working ferment is given sugar again and then shut up in glass.

Leaves out whether anything lives in it: told.py asks for yeast or a live culture.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import affirmed_clauses, split_sentences
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.patterns import clause_regex

_STOPPED = clause_regex(
    r"\b(?:sorbate|campden|pasteuris\w*|pasteuriz\w*|plastic|pet bottles?|kegs?"
    r"|airlock on the bottle)\b",
    re.IGNORECASE,
)
_WORKED = clause_regex(
    r"\b(?:ferment\w*|works?\b|working|airlock|days?|weeks?|months?|racked?|strain\w*|dry)\b",
    re.IGNORECASE,
)
# what is only made ready for it has not worked yet
_FITTINGS = clause_regex(
    r"\bferment\w* (?:locks?|vessels?|jars?|buckets?|bins?|crocks?|bottles?|weights?|bungs?)\b"
    r"|\b(?:take|fit|takes|fits|for) an? (?:airlock|fermentation lock)\b",
    re.IGNORECASE,
)
# nothing works in what is only cleaned
_CLEANS = clause_regex(
    r"\b(?:sterili[sz]|saniti[sz]|wash|clean|rins|scald)\w*\b[^.;]*"
    r"\b(?:equipment|utensils|vessels?|jugs?|jars?|bottles?|airlocks?|carboys?|demijohns?|buckets?|tubing|siphon)\b",
    re.IGNORECASE,
)
# and where the yeast goes in with it, the sugar is the first
_WITH_THE_YEAST = clause_regex(
    r"\b(?:add|pitch|sprinkle|stir in)\w* (?:the |your |in )?(?:\w+ )?yeast\b", re.IGNORECASE
)
_SUGAR_AGAIN = clause_regex(
    r"\bprim(?:e|ed|ing)\b|\b(?:second|secondary|2nd) ferment\w*"
    r"|\b(?:add|stir in|stir|put|drop|sweeten|dissolve|top up|feed|pour|spoon|divide|share"
    r"|cut|slice|chop|crush)\w*\b"
    r"[^.;]{0,40}\b(?:sugar|honey|juice|syrup|cordial|fruit|raisins?|dates|\w*berries|cherries|peach(?:es)?|mango(?:es)?"
    r"|pineapple|pomegranate|plums|apricots|apples?|pears?|grapes|sweeten\w*|treacle|jam)\b"
    r"|\b(?:strain|pour|run|ladle)\w*\b[^.;]{0,25}\b(?:onto|over|on to|on top of)\b[^.;]{0,30}"
    r"\b(?:fruit|\w*berries|cherries|sugar|honey|juice|peach(?:es)?|mango(?:es)?|plums)\b"
    r"|\b(?:teaspoons?|spoons?|cubes?|lumps?|pinch)\b[^.;]{0,25}\b(?:sugar|honey|syrup)\b"
    r"|\bsweeten\w*\b",
    re.IGNORECASE,
)
_EACH = clause_regex(r"\b(?:each|every|per) bottle\b|\bprim(?:e|ed|ing)\b", re.IGNORECASE)
_SHUT = clause_regex(
    r"\b(?:cork|cap|seal|shut|close|clip|stopper|screw|swing|crown|wire)\w*\b|\bbottles?\b(?! of)"
    r"|\btight\w*\b",
    re.IGNORECASE,
)


def sugars_again(recipe: Recipe) -> str:
    """Return the words that sweeten it again before it is shut, "" when none do."""
    sentences = [
        ", ".join(affirmed_clauses(one))
        for step in recipe.method
        for one in split_sentences(step.text)
    ]
    whole = " ".join(step.text for step in recipe.method)
    words = " ".join(one.item for one in recipe.ingredients)
    if _STOPPED.search(whole) or _STOPPED.search(words):
        return ""
    worked = False
    for place, sentence in enumerate(sentences):
        found = _SUGAR_AGAIN.search(sentence)
        # the sugar of the first step is what it works on
        again = worked or bool(_EACH.search(sentence))
        again = again and not _WITH_THE_YEAST.search(sentence)
        if found and again and any(_SHUT.search(one) for one in sentences[place : place + 3]):
            return found[0]
        cleaned = _CLEANS.search(sentence)
        worked = worked or bool(not cleaned and _WORKED.search(_FITTINGS.sub(" ", sentence)))
    return ""
