"""How the model is told by which function of ours a fact is read.

Leaves out the facts: model.py.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationInfo
from pydantic_core import CoreSchema
from pydantic_core.core_schema import with_info_plain_validator_function

from stillroom.core.amounts.units import System


def system_of(info: ValidationInfo) -> System:
    """Return the units of the book in which a fact is read."""
    return (info.context or {}).get("system", "metric")  # type: ignore[no-any-return]


def language_of(info: ValidationInfo) -> str:
    """Return the language of the book in which a fact is read."""
    return (info.context or {}).get("language", "en_GB")  # type: ignore[no-any-return]


@dataclass(frozen=True)
class ReadBy:
    """A fact is what a function of ours makes of it.

    Pydantic's own mark for that looks also into what is made, field by field: a third of a start.
    """

    read: Callable[[Any, ValidationInfo], Any]

    def __get_pydantic_core_schema__(self, _of: Any, _ask: Any) -> CoreSchema:
        """Tell pydantic to ask our function, and nothing of what it makes."""
        return with_info_plain_validator_function(self.read)


def read_by(read: Callable[[Any], Any]) -> ReadBy:
    """Read a fact that is written alike in every book."""
    return ReadBy(lambda value, _info: read(value))


def as_written(read: Callable[[Any, System, str], Any]) -> ReadBy:
    """Read a fact in the book's units, numbers as its language writes them."""
    return ReadBy(lambda value, info: read(value, system_of(info), language_of(info)))
