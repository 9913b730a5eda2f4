"""How a source is named on a page: as it was read, or with the word that it was not looked up."""

from __future__ import annotations


def say_source(source: str, read: str) -> str:
    """Name a source; one named from memory says so, common practice needs no looking up.

    >>> say_source("FSA guidance", "memory")
    'FSA guidance (named from memory, its text not looked up)'
    >>> say_source("common practice, no published source", "memory")
    'common practice, no published source'
    """
    if read == "memory" and "common" not in source:
        return f"{source} (named from memory, its text not looked up)"
    return source
