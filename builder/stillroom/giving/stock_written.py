"""What is in the house as it is written: lines after dashes or "name: amount", both ways.

Brought into the form the model reads: ingredients as lines, containers counted by name. What it
does not know it leaves for the reader to tell. Pure.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any

from stillroom.core.amounts.summed import take_amount

_COUNTED = re.compile(r"^(?P<count>\d+)\s*(?:x|×)?\s+(?P<name>\D.*)$", re.IGNORECASE)
_NAMED = re.compile(r"^(?P<name>\D.*?)\s*[:=]\s*(?P<count>\d+)$")
_BEHIND = re.compile(r"^(?P<name>\D.*?)\s*(?:[,:=]|\s[x×-])?\s*(?P<amount>\d[^,;]*)$")
_PLURAL = re.compile(r"^(jar|bottle|bag|tin|box|tub|pot|vial|flask)(?:s|es)\b", re.IGNORECASE)
Move = Callable[[str, str], None]


def stock_written(stock: dict[str, Any], move: Move) -> dict[str, Any]:
    """Return stock with its ingredients as lines and its containers by name.

    `move` is told where each name stands now.

    >>> stock_written({"ingredients": {"sugar": "1 kg"}, "containers": ["3 jars, 500 ml"]}, print)
    stock/ingredients/sugar stock/ingredients/0
    stock/containers/0 stock/containers/jar, 500 ml
    {'ingredients': ['1 kg sugar'], 'containers': {'jar, 500 ml': 3}}
    """
    found = dict(stock)
    if isinstance(found.get("ingredients"), dict | list):
        found["ingredients"] = list(_lines(found["ingredients"], move))
    for key in ("containers", "vessels"):
        if isinstance(found.get(key), list):
            found[key] = _counted(found[key], f"stock/{key}", move)
    return found


def _lines(said: dict[Any, Any] | list[Any], move: Move) -> Iterator[Any]:
    """Yield a line an ingredient: of "sugar: 1 kg", of "- sugar: 1 kg" and of "sugar, 1 kg"."""
    path = "stock/ingredients"
    if isinstance(said, dict):
        for place, (name, amount) in enumerate(said.items()):
            move(f"{path}/{name}", f"{path}/{place}")
            yield _line(name, amount)
        return
    for one in said:
        if isinstance(one, dict) and len(one) == 1:
            ((name, amount),) = one.items()
            yield _line(name, amount)
        elif isinstance(one, str) and (parted := _BEHIND.match(one.strip())):
            turned = _line(parted["name"], parted["amount"])
            yield turned if _has_amount(turned) and not _has_amount(one) else one
        else:
            yield one


def _line(name: Any, amount: Any) -> Any:
    """Return "1 kg sugar" of the two; an amount that is none stays, and is told of."""
    if isinstance(amount, bool) or not isinstance(amount, str | int | float):
        return {name: amount}
    return f"{amount} {name}".strip()


def _has_amount(line: str) -> bool:
    amount, item = take_amount(line, "metric")
    return amount is not None and bool(item)


def _counted(said: list[Any], path: str, move: Move) -> Any:
    """Return "3 jars, 500 ml" and "jar, 500 ml: 3" after dashes as counts by name."""
    found: dict[Any, Any] = {}
    for place, one in enumerate(said):
        if isinstance(one, dict) and len(one) == 1:
            ((name, count),) = one.items()
        elif isinstance(one, str) and (parted := _COUNTED.match(one.strip())):
            name, count = _PLURAL.sub(r"\1", parted["name"]), int(parted["count"])
        elif isinstance(one, str) and (parted := _NAMED.match(one.strip())):
            name, count = parted["name"], int(parted["count"])
        else:
            return said
        if name in found:
            return said
        move(f"{path}/{place}", f"{path}/{name}")
        found[name] = count
    return found
