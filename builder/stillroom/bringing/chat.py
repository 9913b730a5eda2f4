"""A recipe in the messages of a chat, as telephones export them or as they are copied.

The hour and the name before each go, and what the others say: it was for those who wrote. Leaves
out what the messages say of a recipe: dividing.py.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from stillroom.bringing.found import Origin, Paper
from stillroom.bringing.heads import AMOUNT_ALONE, plain, section_of, words
from stillroom.bringing.plain_text import rows_of
from stillroom.core.lines.staple_table import staples_named

_CLOCK: Final = r"\d{1,2}[:.]\d\d(?:[:.]\d\d)?(?:\s?[ap]\.?m\.?)?"
_DAY: Final = r"\d{1,4}[./-]\s?\d{1,2}[./-]\s?\d{1,4}"
_NAME: Final = r"(?P<name>[~+]?[^\W\d_][^:\[\]<>]{0,39}?|\+[\d\s()-]{6,20})"
# "[12/11/2023, 18:04:11] Jo: 1 kg plums", "12.11.23, 18:04 - Jo: 1 kg plums", "18:04 Jo: ..."
_STAMPED: Final = re.compile(
    rf"\[?(?:{_DAY},?\s+)?{_CLOCK}(?:,?\s+{_DAY})?\]?\s*[-–]?\s*(?:{_NAME}:\s*(?P<said>.*)|(?P<told>.*))",
    re.IGNORECASE,
)
# "Jo  18:04", "Jo, [12.11.2023 18:04]", above what she says
_ABOVE: Final = re.compile(
    rf"{_NAME}(?:,?\s+\[?(?:{_DAY},?\s+)?{_CLOCK}\]?|,?\s+\[?{_DAY},?\s+(?:at\s+|um\s+|à\s+)?{_CLOCK}\]?)",
    re.IGNORECASE,
)
_SPOKEN: Final = re.compile(
    r"(?P<name>[A-ZÀ-Ý][^\W\d_]{0,20}(?:\s[A-ZÀ-Ý][^\W\d_]{0,20})?):\s+(?P<said>\S.*)"
)
_NOT_SAID: Final = re.compile(
    r"\W*(?:(?:media|image|photo|video|audio|sticker|gif|document|contact card)\s+omitted"
    r"|medien\s+ausgeschlossen|attached:.*|anhang:.*|this message was (?:deleted|edited)"
    r"|you deleted this message|missed (?:voice|video) call.*"
    r"|(?:yes|no|nope|yep|ok(?:ay)?|ja|nein|nee|nej|oui|non|s[iì]|sí|sim|não|tak|nie))\W*",
    re.IGNORECASE,
)
# how one begins to tell: "ok so the autumn chutney"
_BEGUN: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|so|right|well|yes|sure|here(?:['’]s|\s+is|\s+goes)|it['’]s|also|gut|ja|hier|alors|bon|voilà|allora|ecco|pues|bueno|nou|jo|altså)\b[\s,:!.…-]*)+"
    r"(?:(?:the|my|our|for(?:\s+the)?|das|die|den|der|für|la|le|les|il|el|de|het)\s+)?(?=[^\W\d])",
    re.IGNORECASE,
)
_LEAST: Final = 3
_LEAST_SPOKEN: Final = 4
_MOST_NAMES: Final = 5
_FEW: Final = 3


@dataclass(frozen=True)
class Message:
    """What somebody says at a time; her name is "" where a program says something."""

    name: str
    said: tuple[str, ...]


def messages_in(lines: Sequence[str]) -> list[Message]:
    """Return the messages of a chat; [] for a text that is none.

    >>> chat = ("[1/2/23, 18:04] Jo: plums", "[1/2/23, 18:05] Jo: boil", "or bake", "18:06 Al: x")
    >>> [one.said for one in messages_in(chat)]
    [('plums',), ('boil', 'or bake'), ('x',)]
    >>> messages_in(("8:00 Dough: knead it", "9:00 Loaf: shape it", "10:00 Oven: bake it"))
    []
    >>> messages_in(("Plum jam", "1 kg plums", "12:30 lunch", "Note: boil it"))
    []
    """
    told = [line.replace("\u200e", "").replace("\u202f", " ").strip() for line in lines]
    said = [line for line in told if line]
    if not said:
        return []
    stamped = [one["name"] for one in map(_STAMPED.fullmatch, said) if one and one["name"]]
    same = Counter(stamped).most_common(1)
    if _STAMPED.fullmatch(said[0]) and len(stamped) >= _LEAST and same[0][1] * 2 > _LEAST:
        return _messages(told, _STAMPED)
    if _ABOVE.fullmatch(said[0]) and sum(bool(_ABOVE.fullmatch(one)) for one in said) >= _LEAST:
        return _messages(told, _ABOVE)
    spoken = [_SPOKEN.fullmatch(one) for one in said]
    names = Counter(one["name"] for one in spoken if one and _may_be_called(one["name"]))
    many = sum(names.values()) >= max(_LEAST_SPOKEN, len(said) * 4 // 5)
    if many and len(names) <= _MOST_NAMES and names.most_common(1)[0][1] >= _LEAST:
        return _messages(told, _SPOKEN)
    return []


def _may_be_called(name: str) -> bool:
    """Whether a word before a colon may be who speaks, and heads nothing: "Jo", never "Method"."""
    known = words("no_names") | words("told_first") | words("told_last") | words("parts")
    spoken = set(plain(name).split())
    return not spoken & known and section_of(name) is None and not staples_named(name)


def _messages(lines: Sequence[str], shape: re.Pattern[str]) -> list[Message]:
    found: list[Message] = []
    for line in lines:
        begins = shape.fullmatch(line)
        if begins:
            parts = begins.groupdict()
            said = parts.get("said") or ""
            found.append(Message((parts["name"] or "").strip(), (said,) if said else ()))
        elif found:
            found[-1] = replace(found[-1], said=(*found[-1].said, line))
    return found


def read_chat(text: str, called: str) -> Paper | None:
    """Return the rows of what one of a chat tells, without hours and names; None for no chat."""
    messages = messages_in(text.split("\n"))
    if not messages:
        return None
    letters: Counter[str] = Counter()
    for one in messages:
        letters[one.name] += sum(map(len, one.said))
    teller = max((name for name in letters if name), key=lambda name: letters[name], default="")
    rows = rows_of(_told_by(teller, messages))
    # each message is whole: none goes on in the next
    return Paper(tuple(replace(row, wraps=False) for row in rows), Origin(called, chat=True))


def _told_by(teller: str, messages: Sequence[Message]) -> list[str]:
    """Return what one says; "1.5 tsp" that answers "salt?" is told of that."""
    lines: list[str] = []
    asked = ""
    for one in messages:
        said = [line for line in one.said if not _NOT_SAID.fullmatch(line)]
        if one.name != teller:
            last = said[-1].strip() if said else ""
            short = last.endswith("?") and len(last.split()) <= _FEW
            asked = last.strip(" ?").lower() if short and staples_named(last) else ""
            continue
        if asked and said and AMOUNT_ALONE.fullmatch(said[0].strip()):
            said[0] = f"{said[0].strip()} {asked}"
        asked = ""
        if not lines and said:
            said[0] = _BEGUN.sub("", said[0])
        lines += [f"{line[:1].upper()}{line[1:]}" for line in said]
    return lines
