"""What is asked a dozen times of one recipe, and is worked out once.

A book of a thousand recipes asks it of each while that one is worked out and then no more:
`forget_recipes` lets go of it all. It costs time alone, never another answer.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import TYPE_CHECKING, Any, Final, TypeVar

if TYPE_CHECKING:
    from functools import _lru_cache_wrapper

_T = TypeVar("_T")
_asked: Final[list[Callable[[], None]]] = []
_MOST: Final = 4096


def once_a_recipe(ask: Callable[..., _T]) -> _lru_cache_wrapper[_T]:
    """Let a question be answered once for each recipe, until recipes are forgotten."""
    answer: Any = lru_cache(maxsize=_MOST)(ask)
    _asked.append(answer.cache_clear)
    return answer  # type: ignore[no-any-return]


def forget_recipes() -> None:
    """Forget what was answered of recipes."""
    for clear in _asked:
        clear()
