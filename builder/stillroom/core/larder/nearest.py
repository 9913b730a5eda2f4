"""Which known foods a phrase that is not known may mean, for the message that asks."""

from __future__ import annotations

from functools import lru_cache

from stillroom.core.larder.shelves import Larder

_MOST = 3
_LIKENESS = 0.78
# so short a word is like everything: "bar" is no boar, "tom" no ham
_SHORTEST = 4


@lru_cache(maxsize=4)
def _names_by_letter(larder: Larder) -> dict[str, list[str]]:
    """Return the names of a larder by the letter with which they begin."""
    found: dict[str, list[str]] = {}
    for name in larder.names():
        found.setdefault(name[:1], []).append(name)
    return found


@lru_cache(maxsize=1024)
def nearest_foods(form: str, larder: Larder) -> tuple[str, ...]:
    """Return up to three names that are spelt like a phrase (in its normal form).

    Only names that begin alike and are about as long are compared: it is asked for a message only.

    >>> from stillroom.core.larder.shelves import common_larder
    >>> nearest_foods("cinammon stick", common_larder())[0]
    'cinnamon stick'
    """
    if len(form) < _SHORTEST:
        return ()
    near = [
        name
        for name in _names_by_letter(larder).get(form[:1], ())
        if abs(len(name) - len(form)) < 4
    ]
    import difflib  # late: only a slip needs it

    found: list[str] = []
    for name in difflib.get_close_matches(form, near, n=2 * _MOST, cutoff=_LIKENESS):
        staple = larder.named(name)
        if staple and staple.name not in found:
            found.append(staple.name)
    return tuple(found[:_MOST])
