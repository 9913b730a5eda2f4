"""What a clause of a method takes out again, or only cleans with, and what stays in all the same.

"Remove from the heat and stir in the almonds" takes no almond out: each verb has its own part of
the clause. Leaves out which words are foods: foods_in_method.py.
"""

from __future__ import annotations

import re

from stillroom.core.method.sentences import FROM_ITS_VESSEL
from stillroom.core.words.patterns import clause_regex

_ELSEWHERE = (
    # German, French, Italian, Spanish, Dutch, Swedish
    r"\b(?:entfern|herausn[ei]hm|herausnehm|entkern|entstein|wegwerf|retire|enlev|ôte|jete|dénoyaut"
    r"|toglie|rimuov|elimin|scart|denocciol|quita|retira|deshues|desech|verwijder|weggooi|ontpit|urkärn)\w*"
)
_TAKEN_OUT = clause_regex(
    # in Spanish "remover" is to stir
    r"\b(?:(?:discard|compost|pick out|take out|lift out|cut (?:off|out)|strip off)\w*"
    r"|remov(?:e[sd]?|ing))\b|\bbin\b"
    r"|\bthrow[ns]?\b(?=[^.;]*\b(?:away|out|off)\b)"
    r"|\b(?:chop|trim|slic|snip|pull|break|twist|pick|peel|cut|scrape?)\w*\b"
    rf"(?=[^.;]*\b(?:off|away)\b(?! {FROM_ITS_VESSEL}))"
    rf"|\b(?:another|some other) (?:day|time|use|recipe|purpose)\b|{_ELSEWHERE}",
    re.IGNORECASE,
)
# what is taken off the heat is still in the pan
_OFF_THE_HEAT = clause_regex(
    r"\b(?:remove|take|lift|tog\w+|retir\w*|quit\w*|enlev\w*|neem|haal) "
    r"(?P<what>(?:the|your|all|il|lo|la|le|gli|el|los|las|les|de|het) (?:[^\W\d_]+ ){1,4}?)"
    r"(?:from|off|dal|del|du|van het|van de) ?(?:the )?"
    r"(?:heat|hob|stove|fire|fuoco|fuego|feu|vuur)\b",
    re.IGNORECASE,
)
_OUT_ELSEWHERE = clause_regex(_ELSEWHERE, re.IGNORECASE)
_AND_ELSEWHERE = clause_regex(r"\s+(?:und|et|e|y|en)\s+", re.IGNORECASE)
# "almonds with skins removed" are in it
_WITHOUT_A_PART = clause_regex(
    r"\bwith (?:the |their |its )?(?:\w+ ){1,2}"
    r"(?:removed|discarded|cut off|taken (?:out|off|away))\b",
    re.IGNORECASE,
)
_VESSELS = (
    r"(?:jars?|bottles?|lids?|pans?|equipment|boards?|hands|rims?|funnel|utensils|knife|knives|tools?"
    r"|surfaces?|demijohn|bucket|vessels?|crock|everything)"
)
# what is said to do, and no "clean jars"
_CLEANING = clause_regex(
    r"(?:^|\b(?:and|then|to|first|now|by)\b)\W*(?:wash|clean|scrub|rins|wip|disinfect|sterili[sz]"
    rf"|sanitis)(?:e|es|ing)?\s.*\b{_VESSELS}\b"
    rf"|\b{_VESSELS}\s+(?:\w+\s+)?(?:are|is|be|were)\s+(?:\w+\s+)?(?:washed|cleaned|scrubbed|rinsed"
    r"|wiped|disinfected|sterili[sz]ed)\b",
    re.IGNORECASE,
)
_OUT = (
    r"discard|remove|compost|pick out|take (?:out|off|it|them|the \w+ (?:out|off))|lift (?:out|off)"
    r"|cut (?:off|out)|strip off|throw|bin"
)
_DONE = (
    r"add|stir|mix in|fold|beat|whisk|sprinkle|brush|bind|fill|melt|pour|scatter|dust|combine|blend"
    r"|knead|crumble|rub in|spread|grate|squeeze|swirl|drizzle|fry|simmer|boil|bake|throw in"
    r"|throw (?:it|them|all|everything) (?:in|together|all)|chuck in|place|mash|spoon|ladle|infuse"
    r"|steep|let|leave|return|scrape|stuff|glaze|decorate"
)
# these are things as well: "peanut butter", "a cover", "the mix"
_DONE_NEXT = (
    r"put|top|coat|roll|dip|work|rub|press|layer|tip|drop|cover|finish|season|toss|cook|use|lay|pack"
    r"|mix|pound|process|crush|soak|give|push|ice|line|grease|butter|cream|chop|grind|chuck"
    r"|wash|clean|wipe|rinse|scrub|sterili[sz]e|trim|slice|snip|peel|pull|twist|pick"
)
_LEAD = r"(?:^|(?<=\band )|(?<=\bthen )|(?<=& ))"
# where a verb begins that says what to do, and no thing: "its cover"
_A_VERB = clause_regex(
    r"(?<!\bthe )(?<!\ba )(?<!\ban )(?<!\byour )(?<!\bits )(?<!\bto )(?<![-'’])"
    rf"\b(?:(?:{_OUT}|{_DONE})|{_LEAD}(?:{_DONE_NEXT}))\b(?!-)",
    re.IGNORECASE,
)
# what was named before goes with it: "lift out the almonds and throw them away"
_WHAT_WENT_BEFORE = clause_regex(
    rf"^(?:{_OUT})(?:\s+(?:it|them|these|those|this|both|all|away|out|off))*\W*$", re.IGNORECASE
)


def what_stays_in(clause: str) -> list[str]:
    """Return the parts of a clause that neither take anything out nor clean anything.

    >>> what_stays_in("Remove from the heat and stir in the almonds")
    ['stir in the almonds']
    >>> what_stays_in("Strain out the almonds and throw them away"), what_stays_in("Add almonds")
    ([], ['Add almonds'])
    >>> what_stays_in("Blanch the almonds and discard the skins")
    ['Blanch the almonds and ']
    """
    clause = _WITHOUT_A_PART.sub("", clause)
    clause = _OFF_THE_HEAT.sub(r"\g<what>", clause)
    if not _TAKEN_OUT.search(clause) and not _CLEANING.search(clause):
        return [clause]
    begins = [found.start() for found in _A_VERB.finditer(clause)]
    ends = [*begins, len(clause)]
    kept: list[str] = []
    for start, end in zip([0, *begins], ends, strict=True):
        part = clause[start:end]
        if _WHAT_WENT_BEFORE.match(part) and kept:
            kept.pop()
        elif _OUT_ELSEWHERE.search(part):
            pieces = _AND_ELSEWHERE.split(part)
            kept += [piece for piece in pieces if not _OUT_ELSEWHERE.search(piece)]
        elif part.strip() and not _TAKEN_OUT.search(part) and not _CLEANING.search(part):
            kept.append(part)
    return kept
