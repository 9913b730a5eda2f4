"""What is told behind the last step of another way to make it, or of other recipes: no step.

"For mint jelly, add a bunch of mint.", "Chilli quince jelly: add 2 chillies.", "Cf. Plum jam, page
12", "More like this". Looked for from the end of a method upwards, so that "Alternatively, boil it
in two pans." amid the steps stays one. It is kept as a note, and asked about: remarks.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import plain, says_otherwise, section_of, words
from stillroom.bringing.sorting import is_sentence

_OTHERWISE: Final = re.compile(
    r"(?:alternativ(?:e?ly|a?mente|ement)|alternativ(?:en?)?\s?(?:,|kann|können)|as\s+an?\s+alternative|for\s+a\s+(?:change|twist|variation|different)"
    r"|for\s+(?:an?\s+)?(?:[^\W\d]+\s+){1,4}(?:version|variation|flavou?r)\b"
    r"|(?:variation|variant[es]?|variante[ns]?|variazione|variação|variatie)\s*(?:\d\s*)?[,.]"
    r"|(?:you|one)\s+(?:can|could|may|might)\s+(?:also|instead|of\s+course|equally|even)\b"
    r"|instead\s+of\s|in\s+place\s+of\s|(?:other|different)\s+(?:flavou?rs|fruits?|spices|herbs|nuts)\s"
    r"|(?:statt|anstatt|anstelle)\s|(?:man|ihr|du|sie)\s+(?:kann|könnt|kannst|können)\s+(?:auch|stattdessen)\b"
    r"|(?:on|vous)\s+(?:peut|pouvez)\s+(?:aussi|également)\b|(?:à\s+la\s+place|au\s+lieu)\s+d"
    r"|(?:si\s+può|potete|si\s+possono)\s+anche\b|(?:al\s+posto|invece)\s+d"
    r"|(?:também\s+)?(?:também\s+(?:se\s+)?pode|pode(?:-se|m)?\s+também|você\s+(?:também\s+)?pode)\b"
    r"|(?:también\s+)?(?:se\s+puede|puedes|podéis)\s+(?:también|sustituir)\b|en\s+(?:lugar|vez)\s+de\s|em\s+vez\s+d"
    r"|(?:można|możesz)\s+(?:też|także|również)\b|zamiast\s"
    r"|je\s+kunt\s+ook\b|in\s+plaats\s+van\s|(?:man|du)\s+kan\s+(?:också|også|även|eventuelt|ev\.|evt\.)|kan\s+ev(?:t|entuel[lt])?\.?\s"
    r"|(?:algumas|alcune|algunas|quelques|einige|some|enkele|några|noen|nogle|kilka)\s+(?:[^\W\d]+\s+)?"
    r"(?:modifi[ck]\w+|vari\w+|alternati\w+|wariac\w+|Abwandlung\w*)\b"
    r"|istället\s+för\s|i\s+stedet\s+for\s)",
    re.IGNORECASE,
)
# "Pour ceux qui n'aiment pas les morceaux, ...", "Für alle, die es süßer mögen": for whom
_FOR_SOME: Final = re.compile(
    r"(?:for\s+those\s+(?:who|of\s+you)|für\s+(?:alle|diejenigen|jene),?\s+die|pour\s+(?:ceux|celles)\s+qui|per\s+chi\s|para\s+(?:quien(?:es)?|quem|los\s+que)\s|voor\s+wie\s"
    r"|för\s+(?:dig|den|er)\s+som|for\s+(?:deg|dig|dem|den|jer)\s+(?:som|der)\b|dla\s+(?:tych|osób),?\s+któr)",
    re.IGNORECASE,
)
# "There are lots of ways to vary it": what all below it is
_WAYS_TOLD: Final = re.compile(
    r"(?:there\s+are|es\s+gibt|il\s+(?:y\s+a|existe)|ci\s+sono|hay|er\s+zijn|det\s+finns|(?:det|der)\s+(?:finnes|findes)|há|istnieje)\s(?:[^\W\d]+\s){0,4}?(?:ways?|variations?|varianten?|variantes?|variazioni|variantes|variaties|manieren|sätt|variationer|variasjoner|måter|måder|façons|maneras|modi|formas|sposob\w+|weisen)\b",
    re.IGNORECASE,
)
# "Il est possible d'ajouter ...", "The same way may be used for ...", "Man kan bruge denne metode"
_POSSIBLE: Final = re.compile(
    r"(?:il\s+est\s+(?:aussi\s+)?possible|è\s+possibile|es\s+posible|é\s+possível|es\s+ist\s+(?:auch\s+)?möglich|it\s+is\s+(?:also\s+)?possible|het\s+is\s+(?:ook\s+)?mogelijk|det\s+(?:är|er|går)\s+(?:också\s+|også\s+)?(?:möjligt|mulig|muligt|bra))",
    re.IGNORECASE,
)
# "To make it spicy, add", "For mint jelly, add", "Für Minzgelee": what else comes of it
_FOR_ANOTHER: Final = re.compile(
    r"(?:(?:to|for)\s+(?:make|making)\s+(?:it\s+)?(?:an?\s+)?(?P<made>[^,.:;]{3,40})|for\s+(?!(?:the|an?|each|every|\d|this|these|best|longer|safe)\b)(?P<for>[^,.:;\d]{3,40})"
    r"|for\s+an?\s+(?P<of>[^,.:;\d]{3,40}))[,:]\s+(?P<done>[^\W\d]+)",
    re.IGNORECASE,
)
_MAY_BE: Final = re.compile(
    r"[^.!?]{3,80}\b(?:may|can|could)\s+(?:also\s+)?be\s+(?:added|used|substituted|replaced|omitted|left\s+out)\b[^.!?]*[.!]?",
    re.IGNORECASE,
)
_LEADS_ON: Final = re.compile(
    r"(?:cf\.|see\s+(?:also|page|p\.|our|my)|compare|try\s+(?:this|these|our|my)\s+(?:next|too|as\s+well)|next\s+recipe|(?:more|others?)\s+like\s+(?:this|it)"
    r"|related\s+recipes?|similar\s+recipes?|(?:more|further|other)\s+(?:recipes|from)\b|you\s+(?:may|might)\s+(?:also\s+)?(?:like|enjoy)"
    r"|(?:s\.|siehe)\s+(?:auch|seite)|vgl\.|voir\s+(?:aussi|page)|cfr\.|vedi\s+(?:anche|pag)|v[ée]ase|ver\s+(?:también|pág)|zie\s+(?:ook|blz)|se\s+(?:också|også|sid))",
    re.IGNORECASE,
)
_OTHER: Final = (_OTHERWISE, _FOR_SOME, _POSSIBLE, _WAYS_TOLD, _LEADS_ON)
_NAMED: Final = re.compile(r"(?P<head>[^\W\d][^:.!?\d]{3,50})\s*[:–—]\s+(?P<said>\S.*)", re.DOTALL)
_MOST_OF_A_NAME: Final = 6
_LEAST_TOLD: Final = 2
"""Rows of a method, behind which other ways may be told."""
_ENDED: Final = re.compile(r"[.!?:;,]$")


def ways_behind(rows: Sequence[Row], title: str) -> tuple[int, ...]:
    """Return the rows at the end of a method that tell of another way or of another recipe.

    >>> steps = [Row("Boil the quinces."), Row("Strain them.")]
    >>> more = [Row("For mint jelly, add mint."), Row("Cf. Plum jam, p. 12"), Row("Pot it.")]
    >>> ways_behind([*steps, *more[:2]], "Quince jelly"), ways_behind([*steps, *more], "Jelly")
    ((2, 3), ())
    >>> chilli = Row("Chilli quince jelly: add chillies.")
    >>> ways_behind([*steps, chilli], "Quince jelly"), ways_behind([*steps, chilli], "Plum jam")
    ((2,), ())
    """
    found = set(_below_ways(rows))
    at = min(found, default=len(rows)) - 1
    while at > 0:
        if _is_read_for_itself(rows[at]):
            at -= 1
            continue
        begin = _group_begins(rows, at, title)
        if begin is None:
            break
        found.update(range(begin, at + 1))
        at = begin - 1
    return tuple(sorted(found)) if at >= 0 and any(map(_is_told, rows[: at + 1])) else ()


def _below_ways(rows: Sequence[Row]) -> range:
    """Return the rows from the one that says that there are other ways, behind all the steps."""
    last = max((at for at, row in enumerate(rows) if row.shape == "step"), default=0)
    first = max(last + 1, _LEAST_TOLD)
    told = (at for at in range(first, len(rows)) if _WAYS_TOLD.match(rows[at].text))
    return range(next(told, len(rows)), len(rows))


def _is_read_for_itself(row: Row) -> bool:
    """Whether a line says by its head that it is beside: "Variation: add rum"."""
    head, colon, _ = row.text.partition(":")
    return bool(colon) and row.shape == "line" and section_of(f"{head.strip()}:") == "aside"


def _is_told(row: Row) -> bool:
    return row.shape == "step" or is_sentence(row.text) or row.shape in ("line", "item")


def _group_begins(rows: Sequence[Row], at: int, title: str) -> int | None:
    """Return the row at which what ends at a row begins, if that is another way; else None."""
    row = rows[at]
    if row.shape == "step":
        return None
    if row.shape != "heading" and is_another_way(row.text, title):
        return at
    head = next((up for up in range(at, -1, -1) if _heads_others(rows[up], title)), None)
    if head is None or head == 0:
        return None
    below = rows[head + 1 : at + 1]
    if any(one.shape == "step" for one in below):
        return None
    if _LEADS_ON.match(rows[head].text):  # names of recipes, and no sentence
        return None if any(_ENDED.search(one.text) for one in below) else head
    if _is_named_by(rows[head].text, title):
        return head if len(below) == 1 else None
    return head if rows[head].shape == "heading" or len(below) <= 1 else None


def _heads_others(row: Row, title: str) -> bool:
    """Whether a row heads other ways or other recipes: "More like this", "Spiced quince jelly"."""
    text = row.text.strip()
    if row.shape not in ("line", "heading") or is_sentence(text):
        return False
    if says_otherwise(text) or (_LEADS_ON.match(text) and len(text.split()) <= _MOST_OF_A_NAME):
        return True
    return not _ENDED.search(text) and _is_named_by(text, title)


def _is_named_by(text: str, title: str) -> bool:
    """Whether a few words name the recipe with one word more: "Spiced quince jelly"."""
    said, whole = plain(text), plain(title)
    few = len(said.split()) <= _MOST_OF_A_NAME and bool(whole)
    return few and said != whole and said.endswith(f" {whole}")


def is_another_way(text: str, title: str) -> bool:
    """Whether a line by itself tells of another way, or leads to other recipes.

    >>> is_another_way("You can also add nuts.", "Jam"), is_another_way("Add the nuts.", "Jam")
    (True, False)
    >>> [is_another_way(one, "Cake") for one in ("For the icing, beat it.", "For jam, add it.")]
    [False, False]
    """
    if any(one.match(text) for one in _OTHER) or _MAY_BE.fullmatch(text.strip()):
        return section_of(text) != "method"
    named = _NAMED.fullmatch(text.strip())
    if named and _is_named_by(named["head"], title):
        return True
    other = _FOR_ANOTHER.match(text)
    if other is None or plain(other["done"]) not in words("told_first") | words("told_last"):
        return False
    what = plain(other["made"] or other["for"] or other["of"]).split()
    kind = plain(title).split()[-1:]
    comparing = any(one.endswith(("er", "ier")) or one in ("more", "less") for one in what[:1])
    return comparing or what[-1:] == kind or bool(other["made"])
