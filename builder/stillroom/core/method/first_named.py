"""What of many namings is named for the first time only behind one of them: not yet in the pan.

Leaves out who names what: heat.py.
"""

from __future__ import annotations

from collections.abc import Sequence


def first_named_later(named: Sequence[set[int]]) -> list[set[int]]:
    """Return for each of many namings what is named behind it and not up to it.

    >>> first_named_later([{1}, {2}, {1, 3}])
    [{2, 3}, {3}, set()]
    """
    behind: list[set[int]] = [set()]
    for here in reversed(named):
        behind.append(behind[-1] | here)
    later = []
    so_far: set[int] = set()
    for here, after in zip(named, reversed(behind[:-1]), strict=True):
        so_far |= here
        later.append(after - so_far)
    return later
