"""What a clause allows again of what somebody must not have: "oats are fine".

What is allowed only so made, or so much of it, is left out all the same; what somebody was, and is
not, leaves nothing out; of "eats everything except pork" the pork is left out.
"""

from __future__ import annotations

import re

from stillroom.core.allergens.avoiding import read_phrase, says_of_somebody
from stillroom.core.allergens.near import is_name, named_in
from stillroom.core.allergens.plainly import tells_more
from stillroom.core.words.patterns import late_regex

# who it is; whatever else stands before it may turn it round ("never outgrew", "hardly eats")
_WHO = (
    r"(?:(?:she|he|they|we|i|who|mum|mom|dad|granny|gran|nan|grandma|grandpa"
    r"|(?:my|our|his|her|their|the) [\w-]+"
    r"|(?!(?:hard|bare|rare|scarce)ly|seldom|never|nobody|not?\b|does|do|can|wo|is|has|ha)"
    r"(?-i:[A-Z])[\w-]+)(?:'s|'re)? )?"
)
_WELL = r"(?:fine|ok|okay|alright|all right|allowed|safe|tolerated|permitted|no problem)"
# "X is fine", "can have X", "eats X": allowed, unless anything in it takes something back again
_FINE = late_regex(
    rf"^(?:(?P<what>.+) (?:is|are|.s) (?:all |absolutely |quite )?{_WELL}(?P<tail> .*)?"
    rf"|{_WHO}(?:can (?:have|eat|drink|tolerate|manage)|(?:(?:will|would|does|do) )?(?:still )?eat"
    r"|eats|loves|likes|enjoys|does.?n.?t mind|tolerates?|copes with"
    r"|(?:(?:is|are) )?(?:fine|ok|okay|happy|safe|good) with) (?P<has>.+)"
    r"|(?P<short>.+) (?:ok|okay|fine|allowed|geht|gehen|sind ok|ist ok|va|vont|passe|va bene))$",
    re.IGNORECASE,
)
# "tolerates baked milk", "oats are fine if certified": so much, or so made, and no more of it
_SO_FAR = late_regex(
    r"\b(?:if|when|once|as long as|so long as|provided|only|free|small|little|tiny|some|traces?"
    r"|amounts?|a bit|bits|baked|cooked|heated|boiled|roasted|processed|peeled|in moderation"
    r"|in (?:cakes?|cooking|baking)|now and then|sometimes|occasional\w*)\b",
    re.IGNORECASE,
)
# "he outgrew his egg allergy", "no longer allergic to egg", "used to be vegan": it was, and is not
_PAST = late_regex(
    rf"^{_WHO}(?:(?:is|are|was|has|have) )?"
    r"(?:(?:no longer|not|isn't|aren't|was never|never been) (?:allergic|intolerant|sensitive) to "
    r"(?:his |her |their |the )?(?P<to>.+?)(?: any ?more| now)?"
    r"|(?:(?:does|do|did) ?(?:not|n't)|never) reacts? to (?:the )?(?P<no>.+?)(?: any ?more| now)?"
    r"|(?:has|have) no (?:allerg\w+|reactions?|intolerances?) to (?P<none>.+?)"
    r"|(?:no longer|not|isn't|aren't) (?:an? )?"
    r"(?P<is>vegan|vegetarian|veggie|coeliac|celiac|diabetic)(?: any ?more| now)?"
    r"|(?:outgr[eo]wn?|gr[eo]wn? out of) (?:(?:his|her|their|the|my|an?) )?(?P<out>.+?)"
    r"(?: allergy| intolerance)?|used to be (?:allergic to |an? )?(?P<used>.+?))$",
    re.IGNORECASE,
)
# "eats everything except pork": what is behind it is all that is left out
_ALL_BUT = late_regex(
    rf"^{_WHO}(?:(?:(?:will|can|does|do|.ll) )?(?:eats?|has|have|loves?|likes?|drinks?|tolerates?"
    r"|enjoys?|(?:(?:is|are) )?(?:fine|ok|okay|happy) with)"
    r" (?:pretty much |nearly |almost |just about |absolutely )?(?:everything|anything)(?: else)?"
    r"|(?:everything|anything)(?: else)?(?: (?:is|are|goes)|'s)(?: all)?"
    r"(?: fine| ok| okay| allowed| good)?"
    r"|isst alles|verträgt alles|mange (?:de )?tout|come de todo|mangia (?:di )?tutto|eet alles),? "
    r"(?:but|except(?:ing)?(?: for)?|bar|apart from|other than|save for|besides|außer|sauf|menos"
    r"|salvo|excepto|tranne|behalve"
    r"|(?:as|so) long as (?:it.?s|they.?re|it is|they are|there.?s no|there is no|there are no))"
    r" (?:du |de la |de l'|des )?(?P<what>.+)$"
    # "only eats gluten free"
    rf"|^{_WHO}only (?:eats?|has|have|drinks?) (?P<only>.+[ -]free|vegan|vegetarian|halal|kosher)"
    r"(?: foods?| things)?$"
    # "eet alleen nog veganistisch", "isst nur noch vegan"
    r"|^(?:(?:sie|er|zij|hij|elle|il|ella|lei|lui|hon|han|hun) )?(?:isst|essen|eet|eten|mangent?"
    r"|comen?|mangia(?:no)?|äter|spiser) (?:nur(?: noch)?|ausschließlich|alleen(?: nog)?(?: maar)?"
    r"|enkel|uniquement|seulement|exclusivement|s[oó]lo|solamente|únicamente|soltanto|solamente"
    r"|esclusivamente|bara|endast|enbart|kun|bare) (?P<diet>[^\W\d]+)$",
    re.IGNORECASE,
)
_AN_ILL = late_regex(r" (?:allergy|allergies|intolerance|intolerant|free)$")
# a need of its own, though the word leaves out no more than some food: "but loves milk, diabetic"
_A_NEED = late_regex(
    r"\b(?:diab[eéè]t\w*|pre-?diab\w*|type (?:1|2|one|two)|t[12]d?|pesc[ae]tarian\w*|teetotal\w*"
    r"|abstain\w*|non-?drinker|alcoholic|disulfiram|metronidazole|tinidazole|epi-?pen\w*|gf|df"
    r"|low|reduced)\b|\b(?:and|who|as|because) (?:\w+ )?(?:is|'s|has|was|takes?|needs?|on|an?)\b",
    re.IGNORECASE,
)
_MORE_THAN_ONE = late_regex(r"\b(?:not|never|no|nor|without|but|except|only)\b|n't\b")
# "(except coconut)", in a clause of its own
_EXCEPT = late_regex(
    r"^(?:except(?:ing)?(?: for)?|apart from|other than|bar|save for|unless) (?P<what>.+)$",
    re.IGNORECASE,
)
_BUT = late_regex(r"^(?:but|though|although|however) ", re.IGNORECASE)
_TAKEN_BACK = late_regex(
    r"\b(?:not?|never|only|without|nothing|avoid\w*|except\w*|but|free|decaf|alternatives?"
    r"|substitutes?|bar|apart|other than|unless|besides|if|when|neither|nor|hardly|allerg\w*"
    r"|react\w*|sensitiv\w*|intoler\w*|ill|sick|problems? with|small|little|tiny)\b"
    r"|n't\b|\bcannot\b",
    re.IGNORECASE,
)
_AGAIN = late_regex(
    r"^(?P<bare>.+?),?\s+(?P<again>(?:but|except(?:ing)?(?: for)?|bar|apart from|other than|unless"
    r"|save for|though|although)\s+(?P<what>.+))$",
    re.IGNORECASE,
)
# the same in other languages, only where what stands behind is plain: "mais pas aux arachides" is
# read as one thing more, "aber Butter geht", "mais mange du poisson" allow a thing by its name
_ELSEWHERE = late_regex(
    r"^(?P<bare>.+?),?\s+(?P<again>(?:aber|mais|pero|però|ma|maar)\s+"
    r"(?:(?:auch|aussi|también|anche|ook)\s+)?"
    r"(?:(?P<more>(?:nicht|keine?[nmrs]?|pas|sans|no|non|sin|senza|geen|niet|zonder|ni)\s.+)"
    r"|(?:isst|trinkt|verträgt|darf|mag|mange|boit|supporte|come|bebe|tolera|mangia|beve|tollera"
    r"|eet|drinkt)\s+(?:(?:du|de la|de l['’]|des|el|la|los|las|il|lo|gli|le|den|die|das)\s*)?"
    r"(?P<eats>[^\W\d]+(?: [^\W\d]+)?)"
    r"|(?P<fine>[^\W\d]+(?: [^\W\d]+)?) (?:geht|gehen|ok|okay|ist ok|sind ok|va|vont|passe"
    r"|está bien|va bene|mag)))$",
    re.IGNORECASE,
)
_IS = late_regex(r"\b(?:is|are|has|have|was|needs?|must|'s|'re)\b")
# "anything but nuts" leaves the nuts out, and nothing else
_ALL = late_regex(r"\b(?:anything|everything|nothing|whatever|all (?:foods?|sorts|else))\b")


def allowed_again(text: str) -> bool:
    """Whether a clause only allows something: "other nuts are fine", "but can have oats".

    >>> [allowed_again(one) for one in ("but spelt is fine", "coconut is ok", "can have oats")]
    [True, True, True]
    >>> [allowed_again(one) for one in ("eats no egg", "milk but butter is ok", "decaf is fine")]
    [False, False, False]
    """
    plain = _BUT.sub("", text)
    if was_once(plain):
        return True
    return _is_fine(plain) and not _TAKEN_BACK.search(plain) and not _SO_FAR.search(plain)


def _is_fine(plain: str) -> bool:
    """Whether it says that something is fine, and no more: no "wheat kills him oats are fine"."""
    found = _FINE.match(plain)
    if found is None or named_in(found["tail"] or ""):
        return False
    return not tells_more(found["what"] or found["has"] or found["short"])


def without_but(text: str) -> str:
    """Return a clause without the word that only ties it to the one before: "but no sesame"."""
    return _BUT.sub("", text)


def was_once(text: str) -> bool:
    """Whether a clause tells what somebody was, or is not, and no more than that one thing.

    >>> was_once("used to be vegan"), was_once("used to be vegetarian now vegan")
    (True, False)
    """
    past = _PAST.match(_BUT.sub("", text))
    what = next(filter(None, past.groupdict().values())).lower() if past else ""
    return is_name(what) or is_name(_AN_ILL.sub("", what))


def tells_a_need(text: str) -> bool:
    """Whether what is allowed goes on with a need: "loves milk and is coeliac".

    >>> tells_a_need("but loves milk and diabetic"), tells_a_need("but eats honey")
    (True, False)
    """
    if says_of_somebody(text) or _A_NEED.search(text):
        return True
    named = (read_phrase(name) for name in named_in(text))
    return any(one.of_somebody or one.cautions or one.why for one in named if one)


def allowed_so_far(text: str) -> bool:
    """Whether something is allowed only so made, or so much of it.

    >>> allowed_so_far("tolerates baked milk"), allowed_so_far("oats are fine if certified")
    (True, True)
    >>> allowed_so_far("oats are fine"), allowed_so_far("no milk if raw")
    (False, False)
    """
    plain = _BUT.sub("", text)
    return _is_fine(plain) and bool(_SO_FAR.search(plain)) and not _MORE_THAN_ONE.search(plain)


def all_that_is_not(text: str) -> str:
    """Return what somebody who has everything else has not; "" where that is not what is said.

    >>> all_that_is_not("eats everything except pork"), all_that_is_not("everything except pork")
    ('pork', '')
    >>> all_that_is_not("doesn't eat anything but nuts"), all_that_is_not("hardly eats anything")
    ('', '')
    """
    found = _ALL_BUT.match(text)
    if found and found["diet"]:  # of "isst nur Fleisch" no meat is left out
        return found["diet"] if says_of_somebody(found["diet"]) else ""
    what = (found["what"] or found["only"]) if found else ""
    return "" if _MORE_THAN_ONE.search(what) else what


def exception_in(text: str) -> str:
    """Return what a clause takes out of what the one before it says, "" where it takes out none.

    >>> exception_in("except coconut"), exception_in("unless it is not cooked")
    ('coconut', '')
    """
    found = _EXCEPT.match(text)
    return found["what"] if found and not _TAKEN_BACK.search(found["what"]) else ""


def speaks_of_all(text: str) -> bool:
    """Whether a clause speaks of everything: what is taken out of that is what is left out.

    >>> speaks_of_all("eats everything else"), speaks_of_all("no nuts")
    (True, False)
    """
    return bool(_ALL.search(text.lower()))


def without_what_is_allowed(text: str) -> tuple[str, str, bool]:
    """Return what a clause leaves out, what it puts behind "but", and whether that is one more.

    >>> without_what_is_allowed("vegan but eats honey")
    ('vegan', 'but eats honey', False)
    >>> without_what_is_allowed("fruits à coque mais pas aux arachides")
    ('fruits à coque', 'pas aux arachides', True)
    >>> without_what_is_allowed("vegetarian but no eggs")
    ('vegetarian', 'no eggs', True)
    >>> without_what_is_allowed("anything but nuts")
    ('', '', False)
    """
    if elsewhere := _ELSEWHERE.match(text):
        allowed = (elsewhere["eats"] or elsewhere["fine"] or "").lower()
        if elsewhere["more"] or is_name(allowed):
            return (
                elsewhere["bare"],
                elsewhere["more"] or elsewhere["again"],
                bool(elsewhere["more"]),
            )
        return "", "", False
    found = _AGAIN.match(text)
    if found is None or _ALL.search(found["bare"].lower()) or _AGAIN.match(found["what"]):
        return "", "", False
    is_more = (
        _BUT.match(found["again"]) and _IS.search(found["what"]) and not _is_fine(found["what"])
    )
    if is_more or _TAKEN_BACK.search(found["what"]):  # "no nuts but Ann is vegan"
        return found["bare"], found["what"], True
    if tells_a_need(found["again"]) or tells_more(found["what"]):
        return "", "", False
    return found["bare"], found["again"], False
