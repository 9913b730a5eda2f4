"""What a mail program writes into a letter: heads of forwarded ones, marks and lines of quoting.

In the languages in which such programs speak. Leaves out what the letter's writer says: letter.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from stillroom.bringing.sorting import begins_with_amount, is_ingredient

_FROM: Final = r"From|Von|Van|De|Da|Från|Fra|Od"
_SUBJECT: Final = r"Subject|Betreff|Objet|Oggetto|Asunto|Onderwerp|Ämne|Emne|Assunto|Temat|Předmět"
HEAD: Final = re.compile(
    rf"(?:(?P<sender>{_FROM})|(?P<subject>{_SUBJECT})|To|Cc|Bcc|Sent|Date|Reply-To|Return-Path|Received|Message-ID|MIME-Version|"
    r"Content-Type|Delivered-To|X-[\w-]+|An|Gesendet|Datum|À|Envoyé|Data|Inviato|A|Para|Enviado(?:\sel)?|Fecha|Aan|Verzonden|Till|Til|Dato|Kopie|Copie(?:\s[àa])?|Copia|Kopia|Répondre\sà"
    r"|Skickat|Sendt|Gesendet\sam|Envoyé\sle|Inviato\sil|Verzonden\sop"
    r"|Enviad[ao](?:\sem)?|Wysłan[oey]|Odesláno|Do|Komu|DW|Kopia)\s?:\s+(?P<said>\S.*)?",
    re.IGNORECASE,
)
_TO: Final = re.compile(r"(?:De|Da|To|An|À|A|Para|Aan|Till|Do)\b", re.IGNORECASE)
FORWARDED: Final = re.compile(
    r"\W*(?:original\smessage|forwarded\smessage|begin\sforwarded\smessage|ursprüngliche\snachricht|original-nachricht"
    r"|weitergeleitete\snachricht|anfang\sder\sweitergeleiteten\s(?:nachricht|e-mail)|message\stransféré|début\sdu\smessage\stransféré|message\sd['’]origine"
    r"|messaggio\s(?:inoltrato|originale)|inizio\smessaggio\sinoltrato|mensaje\s(?:reenviado|original)|inicio\sdel\smensaje\sreenviado"
    r"|doorgestuurd\sbericht|begin\sdoorgestuurd\sbericht|oorspronkelijk\sbericht|vidarebefordrat\s(?:meddelande|brev)"
    r"|ursprungligt meddelande|(?:opprinnelig|oprindelig)\s(?:melding|meddelelse)"
    r"|videresendt\s(?:melding|meddelelse)"
    r"|mensagem\s(?:original|encaminhada)"
    r"|(?:oryginalna|przekazana|przesłana)\swiadomość|wiadomość\s(?:oryginalna|przekazana)|(?:původní|přeposlaná)\szpráva)\W*$",
    re.IGNORECASE,
)
_WROTE: Final = re.compile(
    r"(?:on|am|le|il|el|op|den)\b.{5,200}"
    r"\b(?:wrote|schrieb.*|a écrit|ha scritto|escribió|schreef.*|skrev.*)\s?:?$",
    re.IGNORECASE,
)
QUOTED: Final = re.compile(r"^(?:\s{0,3}>\s?)+")
_MARKS: Final = re.compile(r"[>*_\s]+")
_PREFIX: Final = re.compile(
    r"^(?:(?:re|fwd?|aw|wg|tr|rv|i|r|rif|sv|vb|doorst|antw|vs|enc|res)\s*:\s*)+", re.IGNORECASE
)
# "Tes orangettes ?" asks for them
_ASKED: Final = re.compile(
    r"^(?:(?:your|the|dein\w*|eure?|das|ta|ton|tes|votre|vos|la|le|les|tu|tus|la\stua|il\stuo|jouw|je|din|ditt|dina)\s+)?"
    r"(?:(?:recipe\sfor|rezept\sfür|recette\s(?:de|du|des)|ricetta\s(?:di|del|della)|receta\s(?:de|del)|recept\s(?:voor|på|van))\s+)?",
    re.IGNORECASE,
)
# what is measured in a sentence, and no hour or day of a letter
_AMOUNT: Final = re.compile(
    r"\d\s?(?:k?g|gr|ml|cl|dl|l|lbs?|oz|cups?|pints?|lit[a-z]{1,4}|grams?|gramm[aei]?|min[a-z]{0,5}|°)\b",
    re.IGNORECASE,
)
_LONGEST: Final = 300
_LEAST_LISTED: Final = 2
_FEW_LINES: Final = 3


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


def wrote(lines: Sequence[str], at: int) -> int:
    """Return how many lines from one on say who wrote what is quoted below: 0, 1 or 2."""
    first = _MARKS.sub(" ", lines[at][:_LONGEST]).strip()
    if _WROTE.match(first):
        return 1
    rest = _MARKS.sub(" ", lines[at + 1][:_LONGEST]).strip() if at + 1 < len(lines) else ""
    broken = re.match(r"(?:On|Am|Le|Il|El|Op|Den)\b.*\d", first) and rest
    return 2 if broken and _WROTE.match(f"{first} {rest}") else 0


def heads_within(lines: Sequence[str]) -> list[Heads]:
    """Return the heads of letters within a text: who it is from and what about, line below line."""
    found: list[Heads] = []
    at = 0
    while at < len(lines):
        end, said = at, {"sender": "", "subject": ""}
        while end < len(lines) and (one := _head_on(lines[end])):
            said.update({name: value for name, value in one.items() if value})
            end += 1
        if end - at >= 2 and said["sender"] and (said["subject"] or end - at > 2):
            name = re.sub(r"\s*[<\[(].*", "", said["sender"]).strip("\"' ")
            found.append(Heads(at, end, subject_of(said["subject"]), "" if "@" in name else name))
        at = max(end, at + 1)
    return found


def _head_on(line: str) -> dict[str, str]:
    one = HEAD.match(re.sub(r"\*", "", QUOTED.sub("", line[:_LONGEST])).strip())
    said = (one["said"] or "") if one else ""
    if one is None or (said[:1].isdigit() and _TO.match(one[0])):  # "Para: 6 personas"
        return {}
    return {
        "sender": said if one["sender"] else "",
        "subject": said if one["subject"] else "",
        "other": said or "-",
    }


def without_older(lines: Sequence[str]) -> list[str]:
    """Return the lines of a letter without the one it answers, where the recipe is in its own.

    Where a list stands in what is quoted, that is what somebody passes on: nothing is taken out.
    """
    quoted = {at for at, line in enumerate(lines) if QUOTED.match(line)}
    told = next((at for at in range(len(lines)) if wrote(lines, at)), None)
    begins = [one.begin for one in heads_within(lines) if any(map(str.strip, lines[: one.begin]))]
    if told is not None and not quoted:
        quoted = set(range(told, len(lines)))
    elif told is None and begins and not quoted:
        quoted = set(range(begins[0], len(lines)))
    own = [line for at, line in enumerate(lines) if at not in quoted]
    older = [QUOTED.sub("", lines[at]) for at in sorted(quoted)]
    few = sum(bool(line.strip()) for line in older)
    asked = 0 < few <= _FEW_LINES and not any(re.search(r"\d", line) for line in older)
    asked = asked and sum(bool(line.strip()) for line in own) > 2 * few
    is_in_own = _listed(own) >= _LEAST_LISTED > _listed(older)
    return own if asked or is_in_own else [*lines]


def beside_recipe(lines: Sequence[str]) -> frozenset[int]:
    """Return the places of the letters of a text in which no recipe stands, where another has one.

    Whoever passes a recipe on writes above it to one person; what they were asked stands below.
    """
    signs = _signs(lines)
    begins = sorted({0, *(at for at in signs if at - 1 not in signs)})
    ends = [*begins[1:], len(lines)]
    letters = [
        (range(begin, end), said)
        for begin, end in zip(begins, ends, strict=True)
        if any(map(str.strip, said := [lines[at] for at in range(begin, end) if at not in signs]))
    ]
    if len(letters) < 2:
        return frozenset()
    listed = [one for one in letters if _listed(one[1]) >= _LEAST_LISTED]
    kept = listed or [max(letters, key=lambda one: _measured(one[1]))]
    return frozenset(at for one in letters if one not in kept for at in one[0])


def _signs(lines: Sequence[str]) -> frozenset[int]:
    """Return the places of the lines that a mail program wrote between one letter and another."""
    found = {at for one in heads_within(lines) for at in range(one.begin, one.end)}
    for at, line in enumerate(lines):
        found.update(range(at, at + wrote(lines, at)))
        if FORWARDED.match(QUOTED.sub("", line).strip()):
            found.add(at)
    return frozenset(found)


def _measured(lines: Sequence[str]) -> tuple[int, int]:
    """Return how much is measured in a letter's sentences, and how many words it has."""
    text = " ".join(lines)
    return len(_AMOUNT.findall(text)), len(text.split())


def _listed(lines: Sequence[str]) -> int:
    """Return how many lines may be of a list of ingredients."""
    bare = [re.sub(r"^[-*•–]\s+", "", QUOTED.sub("", line).strip()) for line in lines]
    return sum(is_ingredient(line) and begins_with_amount(line) for line in bare if line)


def is_pasted_letter(text: str) -> bool:
    r"""Whether a text holds the head of a letter passed on, or says who wrote what is quoted.

    >>> is_pasted_letter("Von: Anna\nBetreff: WG: Gelee\n\n1 kg Quitten"), is_pasted_letter("Jam")
    (True, False)
    """
    lines = text.split("\n")
    said = any(wrote(lines, at) or FORWARDED.match(line) for at, line in enumerate(lines))
    return said or bool(heads_within(lines))
