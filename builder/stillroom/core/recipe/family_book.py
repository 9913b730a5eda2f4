"""What a household puts into its printed book beside the recipes: words, a hand, photographs.

Leaves out how they are set (printing/) and whether the pictures can be shown (picture_files.py).
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

LONGEST_DEDICATION = 600
"""Letters: what stands on one A5 page with a hand beneath it."""


def _as_list(value: Any) -> Any:
    return value if isinstance(value, list) else [value]


class Photograph(BaseModel):
    """A photograph of the household: a file among the book's pictures, and what it shows."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    picture: Annotated[str, Field(min_length=1, max_length=200)]
    shows: Annotated[str, Field(min_length=1, max_length=200)]


class FamilyBook(BaseModel):
    """What the printed book bears: a dedication, the giver's own hand scanned in, photographs."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    dedication: Annotated[str, Field(max_length=LONGEST_DEDICATION)] = ""
    handwriting: Annotated[str, Field(max_length=200)] = ""
    says: Annotated[str, Field(max_length=LONGEST_DEDICATION)] = ""
    photographs: Annotated[
        tuple[Photograph, ...], BeforeValidator(_as_list), Field(max_length=12)
    ] = ()
