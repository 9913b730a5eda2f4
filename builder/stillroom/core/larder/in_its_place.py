"""What a note says may be taken in place of a food, put as English lists a choice: "or walnuts".

"Almonds (can be replaced with hazelnuts if liked)" may hold either, and is read as "almonds (or
hazelnuts)". Every sign keeps its place. Leaves out what "or" then means: notes.py and lists.py.
"""

from __future__ import annotations

import re
from typing import Final

from stillroom.core.words.patterns import late_regex

# before the food: "substitute rye flour", "durch Walnüsse ersetzbar", "a falta de nueces"
_LEAD: Final = (
    r"(?:or )?(?:(?:you|i|we) )?(?:(?:can|could|may|might) )?(?:also |always |just )?(?:be )?"
    r"(?:substitut(?:e|ed)|sub(?:bed)?|replaced?|swap(?:ped)?)(?: (?:it|them|this|in|out))?"
    r"(?: (?:with|by|for))?(?= )"
    r"|(?:or )?(?:(?:you|i|we) )?(?:can|could|may) (?:also |always )?(?:be )?used?(?= )"
    r"|use(?= (?!\d|less|more|only|half|the|fresh|frozen|dried|whole|good|enough)[^(),;]{2,40}? "
    r"(?:if|for an?|for those|when|instead)\b)"
    r"|ersatzweise|(?:(?:man )?kann )?(?:auch )?durch(?= [^(),;]{2,40}? ersetz)"
    r"|man kann(?: auch)?(?= [^(),;]{2,40}? (?:nehmen|verwenden|benutzen)\b)"
    r"|(?:on )?(?:peut|peuvent) (?:être remplacée?s?|(?:le|la|les|l['’])?\s?remplacer) par"
    r"(?: des| du| de la| de l['’])?|à défaut(?: des| du| de la| de l['’]| de)?"
    r"|(?:se )?pued(?:e|en) (?:sustituir|reemplazar|cambiar)(?:se)? por|a falta de"
    r"|sostituibil[ei] con|in mancanza(?: d[i'’])?"
    r"|te vervangen door|(?:kan|kunnen) (?:je )?(?:ook )?(?:worden )?vervangen (?:worden )?door"
    r"|kan (?:ersättas|erstattes|byttes|bytas)(?: ut)? (?:med|mot|av|af)"
    r"|pod(?:e|em) ser substituíd[oa]s? por|można zastąpić"
)
# behind it, to the end of the note: "if you prefer", "for a version without alcohol"
_TAIL: Final = (
    r"(?:\s+(?:if|when|for an?|for those|to make|instead|wenn|falls|si vous|se |als |om |hvis "
    r"|ersetz|nehmen|verwenden|benutzen)[^(),;]*)"
)
_BEFORE_IT: Final = late_regex(
    rf"(?P<open>[(,;]\s*)(?P<lead>{_LEAD})(?P<food>\s[^(),;]{{2,60}}?)(?P<tail>{_TAIL}?)(?=[(),;]|$)",
    re.IGNORECASE,
)
_TOO: Final = r"(?:too|also|as well|instead)\b"
_BEHIND_IT: Final = late_regex(
    r"(?P<open>[(,;]\s*)"
    r"(?P<food>(?!(?:it|they|this|that|these|which|fresh|frozen|(?:un)?salted)\b)"
    r"[^\W\d][^(),;]{2,40}?) "
    rf"(?P<tail>(?:also )?works?(?= (?:fine|well|{_TOO}))"
    rf"|(?:also )?works?(?=\))|(?:is|are) (?:also )?(?:fine|ok|okay|good)(?= {_TOO})"
    r"|(?:can|may|could) (?:also )?be (?:used|substituted)|will (?:also )?do)"
    r"(?P<end>(?: (?:too|also|as well|fine|instead|well))*)(?=[(),;]|$)",
    re.IGNORECASE,
)
_OR: Final = "or "


def with_or(text: str) -> str:
    """Return a phrase in which what may be taken in place of a food stands behind "or".

    >>> " ".join(with_or("almonds (can be replaced with hazelnuts if liked)").split())
    'almonds (or hazelnuts )'
    >>> " ".join(with_or("pecans (walnuts work too)").split())
    'pecans (or walnuts )'
    >>> with_or("butter (use 2 sticks)"), with_or("raspberries (frozen are fine)")
    ('butter (use 2 sticks)', 'raspberries (frozen are fine)')
    """
    if "(" not in text and "," not in text and ";" not in text:
        return text
    return _BEHIND_IT.sub(_behind, _BEFORE_IT.sub(_before, text))


def _before(found: re.Match[str]) -> str:
    lead, tail = found["lead"], found["tail"]
    if len(lead) < len(_OR) - 1:
        return found[0]
    joined = _OR.ljust(len(lead))[: len(lead)]
    return f"{found['open']}{joined}{found['food']}{' ' * len(tail)}"


def _behind(found: re.Match[str]) -> str:
    # the bracket's own place and the blanks behind it are too few for the word: the tail gives room
    moved = f"{_OR}{found['food']}"
    room = len(found["food"]) + 1 + len(found["tail"]) + len(found["end"])
    return f"{found['open']}{moved.ljust(room)}"
