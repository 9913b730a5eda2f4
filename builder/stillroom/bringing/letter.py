"""A letter (e-mail) to the words that somebody wrote in it: without head, quoting and signature.

Read by Python's own reader of such files. Nobody's address goes into a recipe, only the name that
a letter is from. Leaves out what the words say.
"""

from __future__ import annotations

import email
import email.errors
import email.policy
import email.utils
import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from email.message import EmailMessage
from itertools import takewhile
from typing import Final

from stillroom.bringing.farewell import AFTERWORD
from stillroom.bringing.found import Origin, Paper, Row
from stillroom.bringing.heads import plain, words
from stillroom.bringing.mail_heads import (
    QUOTED,
    Heads,
    heads_within,
    labels_on,
    passes_on,
    subject_of,
    wrote,
)
from stillroom.bringing.plain_text import decode, rows_of, tidy
from stillroom.bringing.quoting import beside_recipe, without_older
from stillroom.bringing.web_page import decode_page, rows_of_page
from stillroom.core.words.problems import Unreadable

MOST_PARTS: Final = 40
_MAILED: Final = re.compile(
    r"(?:From|To|Cc|Bcc|Sent|Date|Subject|Reply-To|Return-Path|Received|Message-ID|MIME-Version|"
    r"Content-Type|Delivered-To|X-[\w-]+)\s?:\s",
    re.IGNORECASE,
)
_SAVED: Final = re.compile(r"\W*saved by\b", re.IGNORECASE)
_FEW_WORDS: Final = 5


def is_letter(text: str) -> bool:
    """Whether a text begins with the head of a letter: two lines of it or more, nothing between."""
    lines = list(takewhile(str.strip, text[:4000].lstrip("\n").split("\n")))[:6]
    if not lines or not _MAILED.match(lines[0]):
        return False
    return sum(bool(_MAILED.match(line)) for line in lines) >= 2


def read_letter(
    data: bytes, called: str
) -> tuple[tuple[Row, ...], Origin, list[tuple[str, bytes]]]:
    """Return a letter's rows, where it is from, and the files that hang from it.

    Raises Unreadable for one of more parts than anybody sends: none is passed over in silence.
    """
    message = email.message_from_bytes(data, policy=email.policy.default)
    assert isinstance(message, EmailMessage)
    subject = subject_of(_header(message, "subject"))
    sender = _header(message, "from")
    # an archive hides addresses: "Nan <nan_at_example.org>" is no address that a reader knows
    name = email.utils.parseaddr(sender)[0] if "@" in sender else _HIDDEN.sub("", sender)
    saved = tidy(_header(message, "snapshot-content-location"))  # a page that a browser saved
    name = "" if _SAVED.match(name) else name
    origin = Origin(
        called,
        address=saved,
        writer=tidy(name).strip("\"' "),
        title=tidy(subject),
        others=bool(saved),
        letter=not saved,
    )
    body = b""
    html = False
    hung: list[tuple[str, bytes]] = []
    for part in _parts(message):
        kind, content = part.get_content_type(), _bytes(part)
        if part.get_content_disposition() == "attachment" or kind.startswith("application/"):
            hung.append((_file_name(part), content))
        elif kind == "text/html" and (html or not body or len(body) < len(content) // 20):
            body, html = body + content if html else content, True
        elif kind == "text/plain" and not body:
            body = content
        elif kind == "text/plain" and not html:
            body += b"\n" + content
    if html:
        return *read_rows(rows_of_page(decode_page(body)), origin), hung
    pasted = read_pasted(decode(body), called)
    writer = pasted.origin.writer or origin.writer
    origin = replace(
        origin,
        writer=writer,
        title=origin.title or pasted.origin.title,
        beside=pasted.origin.beside,
    )
    rows = pasted.rows if pasted.origin.writer else rows_of(without_quoting(decode(body), writer))
    return tuple(rows), origin, hung


def read_rows(page: tuple[Row, ...], origin: Origin) -> tuple[tuple[Row, ...], Origin]:
    """Return the rows of a letter that was written as a page or put into Word, and whose it is."""
    said = [row.text for row in page]
    left = beside_recipe(said)
    subject, writer = _about(heads_within(said), left)
    passed_on = replace(
        origin,
        writer=tidy(writer) or origin.writer,
        title=tidy(subject) or origin.title,
        beside=bool(left),
        letter=not origin.others,
    )
    return _unsigned(page, left), passed_on


def read_pasted(text: str, called: str) -> Paper:
    """Return the rows of a letter that was pasted, called as its innermost head says."""
    lines = without_older(text.split("\n"))
    left = beside_recipe(lines)
    subject, writer = _about(heads_within(lines), left)
    rows = rows_of(without_quoting(text, writer))
    origin = Origin(called, writer=writer, title=tidy(subject), beside=bool(left), letter=True)
    return Paper(tuple(rows), origin)


def _about(heads: Sequence[Heads], left: Collection[int]) -> tuple[str, str]:
    """Return what a letter within another is about, and who wrote it: none that is left out."""
    kept = [one for one in heads if one.begin not in left]
    subject = next((one.subject for one in reversed([*heads, *kept]) if one.subject), "")
    return subject, next((one.writer for one in reversed(kept) if one.writer), "")


def _header(message: EmailMessage, name: str) -> str:
    try:
        return str(message.get(name) or "")
    except (ValueError, IndexError, AttributeError, email.errors.MessageError):
        return ""  # a head that Python's own reader stumbles over says nothing that is needed


def _parts(message: EmailMessage) -> Iterator[EmailMessage]:
    for count, part in enumerate(message.walk()):
        if count >= MOST_PARTS:
            what = f"More than {MOST_PARTS} parts and files are in this letter."
            raise Unreadable(what, "Save what hangs from it, and bring that in by itself.")
        if isinstance(part, EmailMessage) and not part.is_multipart():
            yield part


def _bytes(part: EmailMessage) -> bytes:
    """Return what a part holds, its letters in UTF-8 where it says which they are."""
    try:
        data = part.get_payload(decode=True)
    except (ValueError, AssertionError, LookupError):
        return b""
    if not isinstance(data, bytes):
        return b""
    name = str(part.get_content_charset() or "")
    if name and part.get_content_type().startswith("text/"):
        try:
            return data.decode(name, errors="replace").encode("utf-8", "replace")
        except (LookupError, UnicodeError):
            return data
    return data


def _file_name(part: EmailMessage) -> str:
    try:
        return tidy(part.get_filename() or "") or "a file of the letter"
    except (ValueError, LookupError, AttributeError):
        return "a file of the letter"


_HIDDEN: Final = re.compile(r"\s*[<(][^<>()]*[>)]\s*|\S+(?:_at_|\s+at\s+)\S+\.\S+")
_RULE: Final = re.compile(r"_{8,}")
_AMOUNT: Final = re.compile(r"[-*•·\s]*(?:\d|[½⅓⅔¼¾⅛])")
_FEWEST: Final = 2
"""Lines that begin with a number, from which on they are a list."""


def _last_list(lines: list[str]) -> int:
    """Return the line up to which a rule parts sections: below it no list follows."""
    numbered = [at for at, line in enumerate(lines) if _AMOUNT.match(QUOTED.sub("", line))]
    return numbered[-_FEWEST] if len(numbered) >= _FEWEST else -1


def without_quoting(text: str, writer: str = "") -> list[str]:
    """Return the lines of a letter without the marks of quoting, heads, greeting and signature."""
    lines = without_older(text.split("\n"))
    heads = {at for one in heads_within(lines) for at in range(one.begin, one.end)}
    left = beside_recipe(lines)
    listed = _last_list(lines)
    kept: list[str] = []
    signed = False
    passed = 0
    for place, line in enumerate(lines):
        bare = QUOTED.sub("", line).strip()
        passed = max(passed - 1, wrote(lines, place))
        ruled = _RULE.fullmatch(bare) is not None
        if QUOTED.sub("", line).rstrip() == "--" or (ruled and place > listed):
            signed = True
        elif ruled:  # a circular's sections stand between rules
            kept.append("")
        elif passed or passes_on(bare):
            signed = False
            kept = [*_without_close(kept), ""]  # of whoever passes it on
        elif place in heads or (labels_on(bare) and _amid_head(lines, place)):
            signed = False if place in heads else signed
            kept.append("")
        elif not signed and place not in left:
            kept.append(QUOTED.sub("", line))
    return _without_name(_without_close(kept), writer)


def _without_name(lines: list[str], writer: str) -> list[str]:
    """Take the writer's own name at the foot out, with a few words of parting above it."""
    said = [place for place, line in enumerate(lines) if line.strip()]
    names = {plain(writer), plain(writer).split(" ")[0]} - {""}
    if len(said) < 2 or plain(lines[said[-1]]) not in names:
        return lines
    parting = lines[said[-2]].strip()
    few = len(parting.split()) <= _FEW_WORDS and not re.search(r"\d|[.;:]$", parting)
    return lines[: said[-2] if few else said[-1]]


def _amid_head(lines: list[str], at: int) -> bool:
    """Whether another line of a head stands beside this one: "To: taste" alone is none."""
    beside = lines[max(at - 1, 0) : at] + lines[at + 1 : at + 2]
    return any(labels_on(other) for other in beside)


def _without_close(lines: list[str]) -> list[str]:
    """Take "Love, Nan" at the foot out; the greeting tells dividing.py to whom it was written."""
    said = [place for place, line in enumerate(lines) if line.strip()]
    dropped: set[int] = set()
    for place in said[-3:]:
        bare = plain(lines[place].partition(",")[0])
        ends = len(lines[place].split()) <= 9 and lines[place].rstrip().endswith(",")
        first = bare.split(" ")[0] if bare else ""
        if (
            bare in words("closing")
            or (ends and first in words("closing"))
            or bare.startswith("sent from my")
        ):
            below = next(
                (at for at in said if at > place and AFTERWORD.match(lines[at])), len(lines)
            )
            dropped.update(one for one in said if place <= one < below)
    return [line for place, line in enumerate(lines) if place not in dropped]


def _unsigned(rows: tuple[Row, ...], left: Collection[int]) -> tuple[Row, ...]:
    """Return the rows of a letter written as a page without its heads and its signature."""
    kept: list[Row] = []
    lines = [row.text for row in rows]
    for place, row in enumerate(rows):
        if place in left:
            continue
        if row.text in ("--", "—"):
            break
        if wrote([row.text], 0) or passes_on(row.text):
            continue
        if labels_on(row.text) and _amid_head(lines, place):
            continue
        if not plain(row.text).startswith("sent from my"):
            kept.append(row)
    said = [row.text for row in kept]
    open_end = set(_without_close(said))
    return tuple(row for row in kept if row.text in open_end)
