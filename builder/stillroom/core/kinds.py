"""The kinds of making and the defaults each brings; the facts are in staples/kinds.yml."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Any

from stillroom.core.problems import Unreadable, did_you_mean
from stillroom.core.units import read_data


@dataclass(frozen=True)
class Kind:
    """One kind: its words, default timeline (word and text), container and card wording."""

    name: str
    many: str
    describes: str
    timeline: tuple[tuple[str, str], ...]
    timeline_source: str
    solids_left_in: bool
    container: str
    contents_heading: str
    keep: str
    mark: str

    @property
    def slug(self) -> str:
        """The name as it stands in addresses and file names."""
        return self.name.replace(" ", "-")

    @property
    def edible(self) -> bool:
        """Whether it is made to be eaten or drunk."""
        return self.name != "craft"


def _read(name: str, row: dict[str, Any]) -> Kind:
    return Kind(
        name=name,
        many=row["many"],
        describes=row["describes"],
        timeline=tuple(next(iter(stage.items())) for stage in row["timeline"]),
        timeline_source=row["timeline_source"],
        solids_left_in=row["solids"] == "left in",
        container=row["container"],
        contents_heading=row["contents_heading"],
        keep=row["keep"],
        mark=row["mark"],
    )


@cache
def all_kinds() -> dict[str, Kind]:
    """Return every kind by name, in the order of the book's chapters."""
    return {name: _read(name, row) for name, row in read_data("kinds.yml").items()}


def find_kind(name: str) -> Kind:
    """Return the kind of that name, or raise Unreadable with the nearest one."""
    kinds = all_kinds()
    if name not in kinds:
        raise Unreadable(f'"{name}" is not a kind.', did_you_mean(name, kinds))
    return kinds[name]
