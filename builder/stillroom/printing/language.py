"""The language of a printed thing, as a PDF and an EPUB name it."""

from __future__ import annotations


def split_language(locale: str) -> tuple[str, str]:
    """Return language and region of a locale such as a book's settings hold.

    >>> split_language("en_GB")
    ('en', 'GB')
    """
    language, _, region = locale.replace("-", "_").partition("_")
    return language, region or language.upper()
