"""A reckoned number that carries its rule, its source and how far it may be trusted."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Estimate:
    """A value between `low` and `high`, in `unit`, with where it came from in plain words."""

    value: float
    low: float
    high: float
    unit: str
    rule: str
    source: str
    uncertainty: str

    def shown(self, places: int = 0) -> str:
        """Show the value as "about 34 % vol", no finer than `places` decimals.

        >>> Estimate(33.94, 30.0, 34.5, "% vol", "", "", "").shown()
        'about 34 % vol'
        """
        return f"about {self.value:.{places}f} {self.unit}".rstrip()
