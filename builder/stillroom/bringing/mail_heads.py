"""The heads that mail programs set into a letter: who wrote what is passed on, and what about.

They are pasted in many layouts: line below line, with blank lines between, the words of a head on
lines of their own, all on one line, in a table. The words are those of words.yml. Leaves out which
letters beside one another are for nobody else: quoting.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Final

from stillroom.bringing.heads import words
from stillroom.core.words.patterns import late_regex

QUOTED: Final = late_regex(r"^(?:\s{0,3}>\s?)+")
_SIGNS: Final = "*_| \t"
_MARKS: Final = late_regex(r"[>*_|\s]+")
_BULLET: Final = late_regex(r"^[-•·]\s+")
_PREFIX: Final = late_regex(
    r"^(?:(?:re|fwd?|aw|wg|tr|rv|i|r|rif|sv|vb|doorst|antw|vs|enc|res|pd|odp|továbbítás|ynt|ilt|πρθ|απ)\s*:\s*)+",
    re.IGNORECASE,
)
# "Tes orangettes ?" asks for them
_ASKED: Final = late_regex(
    r"^(?:(?:your|the|dein\w*|eure?|das|ta|ton|tes|votre|vos|la|le|les|tu|tus|la\stua|il\stuo|jouw|je|din|ditt|dina)\s+)?"
    r"(?:(?:recipe\sfor|rezept\sfür|recette\s(?:de|du|des)|ricetta\s(?:di|del|della)|receta\s(?:de|del)|recept\s(?:voor|på|van))\s+)?",
    re.IGNORECASE,
)
_ON_A_DAY: Final = r"(?:on|am|le|il|el|op|den|em|dne|dňa|w\sdniu|dnia|στις|la\sdata)"
_CLOCK: Final = late_regex(r"\b\d{1,2}[:.h]\d\d\b")
_ADDRESS: Final = r"[\w.+-]{1,64}@[\w-]{1,63}[.\w-]{0,120}"
# "Nan Old <nan@home.example>", above the hour at which it came
_FROM_ALONE: Final = late_regex(rf"(?P<who>[^<>@:]{{2,60}})<\s?{_ADDRESS}\s?>")
_MAILBOX: Final = late_regex(_ADDRESS)
# "-----Original Message----- From: Nan Old", as a page is copied
_MARKED: Final = late_regex(r"[-_]{3,20}[^-_:]{5,50}[-_]{3,20}\s+")
_LONGEST: Final = 300
_LONGEST_VALUE: Final = 120
_MOST_BLANK: Final = 2
"""Blank lines that may stand between two lines of one head."""
_MOST_NAMED: Final = 20
_FEW_WORDS: Final = 8
_LEAST_ON_ONE: Final = 3


@dataclass(frozen=True)
class Heads:
    """Where a letter within another has its head, what it is about, and who wrote it."""

    begin: int
    end: int
    subject: str = ""
    writer: str = ""


def subject_of(said: str) -> str:
    """Return a subject without what answering and forwarding set before it.

    >>> subject_of("Fwd: WG: Quince jelly"), subject_of("Doorst: I: appelstroop")
    ('Quince jelly', 'appelstroop')
    >>> subject_of("Re: Tes orangettes ?"), subject_of("Re: Your recipe for plum jam?")
    ('orangettes', 'plum jam')
    """
    bare = _PREFIX.sub("", said.strip()).strip()
    return _ASKED.sub("", bare).rstrip(" ?") if bare.endswith("?") else bare


def passes_on(line: str) -> bool:
    """Whether a line says that a letter follows which somebody passes on.

    >>> passes_on("---------- Forwarded message ---------"), passes_on("Original Message jam")
    (True, False)
    """
    bare = re.sub(r"^[\W_]+|[\W_]+$", "", line[:_LONGEST])
    return " ".join(bare.lower().replace("’", "'").split()) in words("mail_passed_on")


def wrote(lines: Sequence[str], at: int) -> int:
    """Return how many lines from one on say who wrote what is quoted below: 0, 1 or 2."""
    first = _MARKS.sub(" ", lines[at][:_LONGEST]).strip()
    if _says_who_wrote(first):
        return 1
    if at + 1 >= len(lines) or not re.search(r"\d", first) or first.endswith((".", "!", "?", ":")):
        return 0
    rest = _MARKS.sub(" ", lines[at + 1][:_LONGEST]).strip()
    return 2 if rest and _says_who_wrote(f"{first} {rest}") else 0


def _says_who_wrote(line: str) -> bool:
    if _wrote_on_a_day().match(line):
        return True
    dated = _CLOCK.search(line) or _MAILBOX.search(line)
    return bool(line.endswith(":") and dated and _wrote_word().search(line))


@cache
def _wrote_word() -> re.Pattern[str]:
    said = "|".join(map(re.escape, sorted(words("mail_wrote"))))
    return re.compile(rf"\b(?:{said})\b", re.IGNORECASE)


@cache
def _wrote_on_a_day() -> re.Pattern[str]:
    said = "|".join(map(re.escape, sorted(words("mail_wrote"))))
    return re.compile(rf"{_ON_A_DAY}\b.{{5,200}}\b(?:{said})(?:\b.{{0,120}})?\s?:?$", re.IGNORECASE)


def heads_within(lines: Sequence[str]) -> list[Heads]:
    r"""Return the heads of letters within a text: who each is from and what it is about.

    >>> heads_within("Look!\n\nFrom: Nan Old\n\nSubject: Fwd: jam\n\nBoil it.".split("\n"))
    [Heads(begin=2, end=5, subject='jam', writer='Nan Old')]
    >>> heads_within("From: my aunt\nPara: 6 personas\nTo: taste".split("\n"))
    []
    """
    found: list[Heads] = []
    at = 0
    while at < len(lines):
        head, end = _head_from(lines, at)
        if head:
            found.append(head)
        at = max(end, at + 1)
    return found


def _head_from(lines: Sequence[str], begin: int) -> tuple[Heads | None, int]:
    """Return the head that begins at a line, None for none, and the line to look on from."""
    if alone := _name_above_hour(lines, begin):
        return alone, alone.end
    end, at, count = begin, begin, 0
    said = {"from": "", "subject": ""}
    while at < len(lines) and (labels := labels_on(lines[at])):
        end = at + 1
        name, value = labels[-1]
        if not value and (below := _value_below(lines, end)):
            end = below
            labels[-1] = (name, QUOTED.sub("", lines[below - 1]).strip(_SIGNS))
        end = _behind_names(lines, end, labels[-1][1])
        for kind, value in labels:
            said |= {kind: value} if kind in said and value else {}
        count += len(labels)
        at = _over_blanks(lines, end)
    if not (count >= 2 and said["from"] and (said["subject"] or count > 2)):
        return None, end
    name = re.sub(r"\s*[<\[(].*", "", said["from"]).strip("\"' ")
    writer = "" if "@" in name else name
    return Heads(begin, end, subject_of(said["subject"]), writer), end


def labels_on(line: str) -> list[tuple[str, str]]:
    """Return what a line of a head says of a letter, each as its kind and its words.

    >>> labels_on("**Von:** Nan Old"), labels_on("| Betreff: | WG: Gelee |")
    ([('from', 'Nan Old')], [('subject', 'WG: Gelee')])
    >>> labels_on("From: Nan Old Sent: Saturday, 6:02 PM Subject: jam")
    [('from', 'Nan Old'), ('other', 'Saturday, 6:02 PM'), ('subject', 'jam')]
    >>> labels_on("Para: 6 personas"), labels_on("From: the pan To: the jar")
    ([], [('from', 'the pan To: the jar')])
    """
    bare = _BULLET.sub("", QUOTED.sub("", line[:_LONGEST]).strip(_SIGNS)).strip(_SIGNS)
    marked = _MARKED.match(bare)
    bare = bare[marked.end() :] if marked and passes_on(marked[0]) else bare
    label, colon, said = (one.strip(_SIGNS) for one in bare.partition(":"))
    kind = _kind_of(label) if colon else ""
    if not kind or (said and not re.match(r"[\s*_|]", bare[bare.index(":") + 1 :])):
        return []
    if kind == "to" and said[:1].isdigit():
        return []
    if kind == "from":
        parts = _further_label().split(said)
        if len(parts) // 2 + 1 >= _LEAST_ON_ONE:
            pairs = zip(parts[1::2], parts[2::2], strict=True)
            further = [(_kind_of(name), value.strip(_SIGNS)) for name, value in pairs]
            return [(kind, parts[0].strip(_SIGNS)), *further]
    return [("other" if kind == "to" else kind, said)]


def _kind_of(label: str) -> str:
    """Return what a word before a colon says of a letter; "" for a word of no head."""
    bare = " ".join(label.lower().split())
    if bare.startswith("x-"):
        return "other"
    kinds = ("from", "subject", "to", "other")
    return next((kind for kind in kinds if bare in words(f"mail_{kind}")), "")


@cache
def _further_label() -> re.Pattern[str]:
    names = sorted(words("mail_subject") | words("mail_to") | words("mail_other"), key=len)
    said = "|".join(re.escape(one[:1].upper() + one[1:]) for one in reversed(names))
    return re.compile(rf"(?<=\S)\s+\*{{0,2}}({said})\s?:\*{{0,2}}\s+")


def _over_blanks(lines: Sequence[str], at: int) -> int:
    """Return the first line from one on with words, not far; that line itself where none is."""
    near = range(at, min(at + _MOST_BLANK + 1, len(lines)))
    return next((one for one in near if QUOTED.sub("", lines[one]).strip(_SIGNS)), at)


def _value_below(lines: Sequence[str], at: int) -> int:
    """Return the line behind the words that stand below a label alone; 0 where none do."""
    below = _over_blanks(lines, at)
    if below >= len(lines):
        return 0
    said = QUOTED.sub("", lines[below]).strip(_SIGNS)
    return below + 1 if 0 < len(said) <= _LONGEST_VALUE and not labels_on(said) else 0


def _behind_names(lines: Sequence[str], at: int, said: str) -> int:
    """Return the line behind those on which the names that a letter goes to go on."""
    open_end = said.endswith((",", ";"))
    for line in lines[at : at + _MOST_NAMED]:
        bare = QUOTED.sub("", line[:_LONGEST]).strip(_SIGNS)
        boxed = bool(_MAILBOX.search(bare)) and not re.search(r"[.!?]$", bare)
        if not bare or labels_on(line) or not (open_end or boxed):
            break
        open_end = bare.endswith((",", ";"))
        at += 1
    return at


def _name_above_hour(lines: Sequence[str], at: int) -> Heads | None:
    """Return the head that is a name with an address, and below it the hour: as pages copy it."""
    named = _FROM_ALONE.fullmatch(QUOTED.sub("", lines[at][:_LONGEST]).strip(_SIGNS))
    below = _over_blanks(lines, at + 1) if named else len(lines)
    if named is None or below >= len(lines) or len(lines[below].split()) > _FEW_WORDS + 2:
        return None
    if not (_CLOCK.search(lines[below]) and re.search(r"\d", lines[below])):
        return None
    end = below + 1
    to = _over_blanks(lines, end)
    first = lines[to].split()[:1] if to < len(lines) else []
    if first and first[0] in words("mail_to") and len(lines[to].split()) <= _FEW_WORDS:
        end = to + 1
    return Heads(at, end, "", named["who"].strip("\"' "))
