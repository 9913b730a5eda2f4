"""Words without their accents, as many a keyboard and telephone types them.

Leaves out which words are meant: heads.py, known_work.py.
"""

from __future__ import annotations

import unicodedata
from functools import lru_cache
from typing import Final

_PLAIN: Final = str.maketrans({"ł": "l", "ß": "ss", "ø": "o", "æ": "ae", "œ": "oe", "’": "'"})


@lru_cache(maxsize=4096)
def without_accents(text: str) -> str:
    """Return a text in small letters without accents.

    >>> without_accents("Écraser"), without_accents("Włożyć"), without_accents("Gießen")
    ('ecraser', 'wlozyc', 'giessen')
    """
    text = text.lower().translate(_PLAIN)
    return "".join(
        one for one in unicodedata.normalize("NFD", text) if not unicodedata.combining(one)
    )
