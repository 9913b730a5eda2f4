"""Text files as they come from a kitchen's computer: what cannot be read is told, never guessed.

A file is looked at before it is read (a pipe has no end, ten megabytes are no recipe) and its
signs before its words. Leaves out what the words mean.
"""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path
from typing import Final

from stillroom.core.words.patterns import late_regex
from stillroom.core.words.problems import Problem, ProblemsFound

LARGEST: Final = 250_000
LONGEST_LINE: Final = 4_000
BY_NUMBER: Final = "A sign that cannot be printed is written here by its number."
_SAVE: Final = (
    'Open it where you write, choose "Save as", and there "UTF-8", which is how letters are kept.'
)
# what no keyboard types: it would split lines where no editor shows a new one, or hide words
_UNPRINTABLE: Final = late_regex(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)
# what a program that keeps versions writes where it could not put two together
_ONE: Final = late_regex(r"^(?:<{7}(?: \S|$)|={7}$)", re.MULTILINE)
_END_OF_TWO: Final = late_regex(r"^>{7}(?: \S|$)", re.MULTILINE)
TWO_VERSIONS: Final = "From here on two versions of this file stand one after the other."
CHOOSE: Final = 'Keep the lines that are right, and take out those of seven signs ("<<<<<<<").'
# what a page of the web leaves in copied text, unseen: a place to part a word, and no more
_UNSEEN: Final = late_regex("[\u00ad\u200b\u200c\u200d\u2060\ufeff]")
# what ends a line for some programs: a word processor's own break, the signs for it
_LINE_ENDS: Final = late_regex("\r\n|[\r\x0b\x0c\x85\u2028\u2029]")
# the kinds of blank that a word processor sets; a cook sees a blank
_BLANKS: Final = late_regex("[\u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]")


def is_file_at(path: Path) -> bool:
    """Tell whether a file lies at a path that somebody wrote; none does where no name is so long.

    >>> is_file_at(Path("x" * 5_000))
    False
    """
    return os.path.isfile(path)  # without Path's detour: a page asks a dozen times


def read_text(path: Path, name: str, largest: int = LARGEST) -> str:
    """Return the text of a file; raises ProblemsFound with the one thing that keeps it from that.

    `name` is how the file is called in messages, `largest` its size in bytes.
    """
    try:
        if not path.exists():
            raise _told(name, "The file is not there: what points to it leads nowhere.")
        found = path.stat()
        if stat.S_ISDIR(found.st_mode):
            raise _told(name, "This is a folder, not a file.", "Give the folder another name.")
        if not stat.S_ISREG(found.st_mode):
            raise _told(name, "This is no file that can be read to its end.", "Take it away.")
        if found.st_size > largest:
            kept = f"{largest // 1000} kilobytes"
            what = f"The file is longer than {kept}, which is longer than a cookery book."
            raise _told(name, what, "Divide it, or take out what does not belong.")
        written = path.read_bytes()
    except OSError as error:
        what = f"The file cannot be opened ({(error.strerror or 'no reason given').lower()})."
        raise _told(name, what, "Look at who may read it.") from None
    return decode(written, name)


def decode(written: bytes, name: str) -> str:
    """Return bytes as text with plain line ends; raises ProblemsFound at the line that is wrong."""
    if written[:2] in (b"\xff\xfe", b"\xfe\xff"):
        what = "The file was saved with two signs to a letter, which this book does not read."
        raise _told(name, what, _SAVE)
    try:
        text = written.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = written.count(b"\n", 0, error.start) + 1
        what = "A letter here was saved in an older way that this book does not read."
        raise ProblemsFound([Problem(name, line, what, _SAVE)]) from None
    return clean(text, name)


def is_unprintable(text: str) -> bool:
    """Say whether a text holds a sign that no keyboard types and nothing can show."""
    return _UNPRINTABLE.search(text) is not None


def clean(text: str, name: str) -> str:
    r"""Return text with plain line ends and blanks; raises ProblemsFound for what is unprintable.

    >>> clean("250\u00a0g\r\nsu\u00adgar", "a.md")
    '250 g\nsugar'
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if not text.isascii():
        text = _BLANKS.sub(" ", _UNSEEN.sub("", text))
    lines = text.split("\n")
    if begin := find_two_versions(text):
        raise ProblemsFound([Problem(name, begin, TWO_VERSIONS, CHOOSE)])
    if max(map(len, lines)) <= LONGEST_LINE and not _UNPRINTABLE.search(text):
        return text
    problems = []
    for number, line in enumerate(lines, start=1):
        if len(line) > LONGEST_LINE:
            what = f"This line has {len(line)} letters; {LONGEST_LINE} are the most."
            problems.append(Problem(name, number, what, "Divide it into several lines."))
        if found := _UNPRINTABLE.search(line):
            what = f"A sign that cannot be printed stands here, after {_after(line, found)}."
            problems.append(Problem(name, number, what, "Take it out, and type the line anew."))
        if len(problems) == 10:
            break  # a picture named like a recipe has thousands
    if problems:
        raise ProblemsFound(problems[:1] if problems[0].line == 1 else problems)
    return text


def typed_words(text: str) -> str:
    r"""Return words as somebody typed or pasted them, without signs that no file may hold.

    >>> typed_words("sugar\u200b\u2028250\u00a0g\x07")
    'sugar\n250 g'
    """
    text = _LINE_ENDS.sub("\n", text)
    return _UNPRINTABLE.sub("", _BLANKS.sub(" ", _UNSEEN.sub("", text)))


def find_two_versions(text: str) -> int:
    r"""Return the line where two versions of a file stand and nobody chose between them, or 0.

    >>> find_two_versions("a\n<<<<<<< mine\nb\n=======\nc\n>>>>>>> theirs\n")
    2
    >>> find_two_versions("A heading\n=======\n\n> > a quotation\n<<< see below")
    0
    """
    if "<<<<<<<" not in text and ">>>>>>>" not in text:
        return 0
    last = max((found.start() for found in _END_OF_TWO.finditer(text)), default=0)
    for found in _ONE.finditer(text):
        if found[0][0] == "<" or found.start() < last:
            return text.count("\n", 0, found.start()) + 1
    return 0


def _after(line: str, found: re.Match[str]) -> str:
    before = _UNPRINTABLE.sub("", line[max(0, found.start() - 20) : found.start()]).strip()
    return f'"{before}"' if before else "the beginning of the line"


def _told(name: str, what: str, mend: str = "") -> ProblemsFound:
    return ProblemsFound([Problem(name, 1, what, mend)])
