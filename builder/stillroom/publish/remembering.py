"""Which files the wall has looked through, remembered for the next build beside the kept work.

What is remembered are sums of published files in which nothing private was found, made with keys:
nobody can tell from them what is private, nor which file it was. The one key hangs on every word
that is sought, so another word on a giving list has every file looked through again; it is
stretched and salted, so that nobody guesses words from it. Another version of this program looks
through all that is to be published again, and not what the last one made of the site that gives
way: of a thousand pages that took half as long as to make them. What could not be read in full is
not remembered: that is said again in each build.
"""

from __future__ import annotations

import hashlib
import logging
import os
from pathlib import Path
from typing import Final

from stillroom.core.book import Book
from stillroom.core.private.seeking import SUM_BYTES, Memory, Seeker
from stillroom.core.words.problems import Problem
from stillroom.publish.keeping_work import book_folder, code_sum
from stillroom.publish.wall import find_private, know_private_words
from stillroom.saving.places import published_folders
from stillroom.saving.shelf import lay_on_shelf

_FILE: Final = "looked-through"
_SALT: Final = 32
_CODE: Final = 32
_HEAD: Final = _SALT + _CODE
"""What stands before the sums: the salt, and by which code the files were looked through."""
_COUNT: Final = 4
_STRETCHED: Final = 100_000

log = logging.getLogger(f"mkdocs.plugins.{__name__}")


def remember(seeker: Seeker, book: Book) -> None:
    """Let a seeker pass over what it looked through in earlier builds of a book."""
    folder = book_folder(book)
    found = _read(folder / _FILE) if folder else b""
    if found:
        salt, code, rest = found[:_SALT], found[_SALT:_HEAD], found[_HEAD:]
        sums = [rest[at : at + SUM_BYTES] for at in range(_COUNT, len(rest), SUM_BYTES)]
        shapes = int.from_bytes(rest[:_COUNT], "big")
        seeker.memory = _memory(seeker, salt)
        seeker.memory.earlier.update(sums[:shapes])
        if code == code_sum():
            seeker.memory.shapeless.update(sums[:shapes])
        seeker.memory.nameless.update(sums[shapes:])
    else:
        seeker.memory = _memory(seeker, os.urandom(_SALT))


def find_private_in(book: Book) -> tuple[Problem, ...]:
    """Return what keeps a book from being built because it is private; the check says it too.

    What earlier builds looked through is not looked through again.
    """
    seeker = know_private_words(book)
    remember(seeker, book)
    folders = published_folders(book).values()
    return find_private([folder for folder in folders if folder != book.site_dir], seeker)


def keep(seeker: Seeker, book: Book) -> None:
    """Keep what a seeker met in this build, and nothing that it did not meet."""
    folder = book_folder(book)
    if folder is None:
        return
    memory = seeker.memory
    shapeless, nameless = (
        sorted(memory.shapeless & memory.met),
        sorted(memory.nameless & memory.met),
    )
    count = len(shapeless).to_bytes(_COUNT, "big")
    data = b"".join((memory.salt, code_sum(), count, *shapeless, *nameless))
    try:
        if _read(folder / _FILE) != data:
            lay_on_shelf(folder / _FILE, hashlib.sha256(data).digest() + data)
    except OSError as error:
        log.debug("What was looked through is not kept for the next build: %s", error)


def _memory(seeker: Seeker, salt: bytes) -> Memory:
    sought = repr(seeker.sought).encode("utf-8", "surrogatepass")
    names = hashlib.pbkdf2_hmac("sha256", sought, salt + code_sum(), _STRETCHED)
    return Memory(salt, hashlib.sha256(salt).digest(), names)


def _read(path: Path) -> bytes:
    """Return what is kept, or nothing where it is not there or damaged."""
    try:
        data = path.read_bytes()
    except OSError:
        return b""
    whole, rest = data[:32], data[32:]
    return rest if hashlib.sha256(rest).digest() == whole and len(rest) > _HEAD else b""
