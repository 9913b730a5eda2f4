"""The questions and notes of a first giving list in the book's language, else in English."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from stillroom.core.words.said import OWN, read_room, said_file

_ROOM = "stillroom.giving.starter"


def starter_words(language: str) -> Mapping[str, Any]:
    """Return the groups "questions" and "notes".

    >>> starter_words("de_AT")["questions"]["no"], starter_words("nl")["questions"]["no"]
    ('nein', 'no')
    """
    spoken = language.split("_")[0]
    return read_room(_ROOM, spoken if said_file(_ROOM, spoken).is_file() else OWN)
