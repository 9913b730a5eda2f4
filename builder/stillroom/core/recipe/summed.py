"""A thing that caches are asked by: its sum is made once, not anew for each of a hundred questions.

Two that are equal have one sum. Neither a copy nor another process takes it over: a copy may say
something else, and there words have other sums.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import Any, Self

from pydantic import BaseModel, ConfigDict


class Summed(BaseModel):
    """A frozen model whose hash is that of what it is kept by."""

    model_config = ConfigDict(defer_build=True)

    def kept_by(self) -> tuple[object, ...]:
        """Return what tells it from most others; each model says."""
        raise NotImplementedError

    @cached_property
    def _sum(self) -> int:
        return hash(self.kept_by())

    def __hash__(self) -> int:
        """Return the sum, made when it is first asked for."""
        return self._sum

    def model_copy(self, *, update: Mapping[str, Any] | None = None, deep: bool = False) -> Self:
        """Return a copy, changed as asked."""
        copy = super().model_copy(update=update, deep=deep)
        copy.__dict__.pop("_sum", None)
        return copy

    def __getstate__(self) -> dict[Any, Any]:
        """Return what another process is told."""
        state = super().__getstate__()
        kept = {name: value for name, value in state["__dict__"].items() if name != "_sum"}
        # nobody asks which facts were stated: a set of twenty names in each of a thousand recipes
        return {**state, "__dict__": kept, "__pydantic_fields_set__": set()}
