"""Keep what a function says, apart for each state of the house that its words hang on.

Such a state is the language that is spoken, or how decimals are written. Leaves out the states.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from functools import lru_cache, wraps
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")


def kept_apart(by: Callable[[], Hashable], most: int) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Let a function be asked once for each of its arguments and for what `by` says meanwhile.

    >>> sign = "."
    >>> shown = kept_apart(lambda: sign, 8)(lambda whole: f"{whole}{sign}5")
    >>> first, sign = shown(1), ","
    >>> first, shown(1)
    ('1.5', '1,5')
    """

    def keep(say: Callable[P, R]) -> Callable[P, R]:
        @lru_cache(maxsize=most)
        def said(_state: Hashable, *args: P.args, **kwargs: P.kwargs) -> R:
            return say(*args, **kwargs)

        @wraps(say)
        def asked(*args: P.args, **kwargs: P.kwargs) -> R:
            return said(by(), *args, **kwargs)  # type: ignore[arg-type]

        return asked

    return keep
