"""What a giving list holds in lines at the desk: prices, hours, what is in the house.

A line that nobody touched keeps what the file has for it, in whichever form and with its notes.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date
from typing import Any, Final

from stillroom.desk.giving_rows import in_part, part_key
from stillroom.giving.as_written import tidy_list
from stillroom.saving.yaml_files import plain_data, put

_MADE: Final = ("number", "container", "made on")
_NUMBER: Final = re.compile(r"-?\d{1,9}(?:\.\d{1,6})?")
_DAY: Final = re.compile(r"\d{4}-\d{2}-\d{2}")


def shown(value: Any) -> str:
    """Return a fact of the file as its box shows it.

    >>> shown(["nuts", "gluten"]), shown({"small": 2}), shown(True), shown(None)
    ('nuts, gluten', 'small 2', 'yes', '')
    """
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return ", ".join(f"{name} {count}" for name, count in value.items())
    if isinstance(value, list | tuple):
        return ", ".join(shown(one) for one in value)
    return str(value)


def is_day(text: str) -> bool:
    """Whether a box can show a fact as a day to choose: one of the calendar, or none yet."""
    return not text or isinstance(plain_value(text), date)


def plain_value(text: str) -> Any:
    """Return a box's words as the number or day they are, else the words."""
    if _DAY.fullmatch(text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            return text
    if _NUMBER.fullmatch(text):
        return float(text) if "." in text else int(text)
    return text


def lines_of(said: Any, part: str) -> str:
    """Return prices, hours or stock as lines: "vodka: 700 ml for 14.50; 1 l for 18"."""
    lines: Mapping[str, Callable[[Any], list[str]]] = {
        "prices": _price_lines,
        "hours": _hour_lines,
        "stock": _stock_lines,
        "vessels": _vessel_lines,
        "made": _made_lines,
    }
    return "\n".join(lines[part](said))


def change_lines(said: Any, sent: Mapping[str, str]) -> None:
    """Put into a list what the boxes of lines say, where they say something else."""
    for part, change in (
        ("prices", _put_prices),
        ("hours", _put_hours),
        ("stock", _put_stock),
        ("vessels", _put_vessels),
        ("made", _put_made),
    ):
        if part in sent and _lines(sent[part]) != _lines(lines_of(said, part)):
            change(said, _lines(sent[part]))


def _lines(text: str) -> list[str]:
    return [" ".join(line.split()) for line in text.splitlines() if line.strip()]


def _listed(value: Any) -> list[Any]:
    return list(value) if isinstance(value, list) else [] if value is None else [value]


def _price_lines(said: Any) -> list[str]:
    rows = plain_data(in_part(said, "prices"))
    if not isinstance(rows, list | dict):
        return [shown(row) for row in _listed(rows)]
    return [_price_line(row) for row in tidy_list({"prices": rows}, {})[0]["prices"]]


def _price_line(row: Any) -> str:
    if not isinstance(row, dict) or "item" not in row:
        return shown(row)
    section = f" [{row['section']}]" if row.get("section") else ""
    packs = "; ".join(shown(pack) for pack in _listed(row.get("packs")))
    return f"{row['item']}{section}: {packs}"


def _put_prices(said: Any, lines: list[str]) -> None:
    """Leave every price whose line is still there as the file has it; others in their line's place.

    A line that was mended changes its row and no more, so that notes beside and below it stay.
    """
    rows, key = in_part(said, "prices"), part_key(said, "prices")
    old = [_bare(line) for line in _price_lines(said)]
    new = {at: _price(line) for at, line in enumerate(lines) if line not in old}
    if not lines or not isinstance(rows, list | dict):
        put(said, [key], list(new.values()) or None)
        return
    places = list(rows) if isinstance(rows, dict) else list(range(len(rows)))
    gone = [at for at, line in enumerate(old) if line not in lines]
    for at, row in list(new.items()):
        named = (was for was in gone if _price(old[was])["item"] == row["item"])
        was = next(named, at if at in gone and len(old) == len(lines) else None)
        if was is not None and _mended(rows, places[was], row):
            gone.remove(was)
            del new[at]
    for was in reversed(gone):
        del rows[places[was]]
    for at, row in new.items():
        _put_in(rows, at, row)


def _mended(rows: Any, place: Any, row: dict[str, Any]) -> bool:
    """Put a price in place of one; False where a price by name has another name now."""
    facts = {name: value for name, value in row.items() if name != "item"}
    if isinstance(rows, dict) and place != row["item"]:
        return False
    had = rows[place]
    if isinstance(had, dict) and "packs" in had and ("section" in had) == ("section" in row):
        for name, value in (facts if isinstance(rows, dict) else row).items():
            put(had, [name], value)
    else:
        rows[place] = facts if isinstance(rows, dict) else row
    return True


def _put_in(rows: Any, at: int, row: dict[str, Any]) -> None:
    """Put a price that is new before the one that has its place now."""
    facts = {name: value for name, value in row.items() if name != "item"}
    if isinstance(rows, list):
        rows.insert(at, row)
    elif row["item"] in rows or at >= len(rows):
        rows[row["item"]] = facts
    else:
        rows.insert(at, row["item"], facts)


def _bare(line: str) -> str:
    return " ".join(line.split())


def _price(line: str) -> dict[str, Any]:
    item, _, packs = line.partition(":")
    named = re.fullmatch(r"(.*?)\s*\[([^\]]+)\]\s*", item)
    row: dict[str, Any] = {"item": named[1] if named else item.strip()}
    if named:
        row["section"] = named[2]
    row["packs"] = [pack.strip() for pack in packs.split(";") if pack.strip()]
    return row


def _hour_lines(said: Any) -> list[str]:
    hours = in_part(said, "hours")
    if isinstance(hours, dict):
        return [f"{month}: {shown(count)}" for month, count in hours.items()]
    return [] if hours is None else [f"every month: {shown(hours)}"]


def _put_hours(said: Any, lines: list[str]) -> None:
    if len(lines) == 1 and ":" not in lines[0]:  # "6": the same in every month
        lines = [f"every month: {lines[0]}"]
    rows = (line.partition(":") for line in lines)
    hours = {month.strip(): plain_value(count.strip()) for month, _, count in rows}
    put(said, [part_key(said, "hours")], hours or None)


def _stock_lines(said: Any) -> list[str]:
    stock = in_part(said, "stock")
    if not isinstance(stock, dict):
        return [shown(line) for line in _listed(stock)]
    holders = stock.get("containers")
    held = holders.items() if isinstance(holders, dict) else ()
    there = [f"{name}: {shown(count)}" for name, count in held]
    return [*there, *(shown(line) for line in _listed(stock.get("ingredients")))]


def _put_stock(said: Any, lines: list[str]) -> None:
    """Put in what is in the house; what was made before, which the box does not show, stays."""
    key, new = part_key(said, "stock"), _stock(lines)
    if not isinstance(said.get(key), dict):
        put(said, [key], new.get("ingredients") if new.keys() == {"ingredients"} else new or None)
        return
    for name in ("containers", "ingredients"):
        put(said, [key, name], new.get(name))


def _stock(lines: list[str]) -> dict[str, Any]:
    """Read what is in the house: a line with a colon and a number is a container."""
    containers: dict[str, Any] = {}
    ingredients = []
    for line in lines:
        found = re.fullmatch(r"(.+?):\s*(\d{1,5})", line)
        if found:
            containers[found[1]] = int(found[2])
        else:
            ingredients.append(line)
    found_all = {"containers": containers, "ingredients": ingredients}
    return {name: value for name, value in found_all.items() if value}


def _held(said: Any, name: str) -> Any:
    stock = in_part(said, "stock")
    return stock.get(name) if isinstance(stock, dict) else None


def _vessel_lines(said: Any) -> list[str]:
    held = _held(said, "vessels")
    return [f"{name}: {shown(count)}" for name, count in held.items()] if isinstance(
        held, dict
    ) else [shown(one) for one in _listed(held)]  # fmt: skip


def _put_vessels(said: Any, lines: list[str]) -> None:
    rows = (line.rpartition(":") for line in lines)
    held = {name.strip() or count.strip(): plain_value(count.strip()) for name, _, count in rows}
    _put_in_stock(said, "vessels", held or None)


def _made_lines(said: Any) -> list[str]:
    return [_made_line(row) for row in _listed(plain_data(_held(said, "made")))]


def _made_line(row: Any) -> str:
    if not isinstance(row, dict):
        return shown(row)
    behind = [shown(row.get(key)) for key in _MADE]
    return f"{shown(row.get('recipe'))}: {'; '.join(one for one in behind if one)}"


def _put_made(said: Any, lines: list[str]) -> None:
    """Leave every row whose line is still there as the file has it, and add the new ones."""
    rows, old = _held(said, "made"), _made_lines(said)
    if not isinstance(rows, list) or not lines:
        _put_in_stock(said, "made", [_made(line) for line in lines] or None)
        return
    for place, line in reversed(list(enumerate(old))):
        if _bare(line) not in lines:
            del rows[place]
    rows.extend(_made(line) for line in lines if line not in map(_bare, old))


def _made(line: str) -> dict[str, Any]:
    """Read "plum-jam: 6; jar, 200 ml; 3 August 2027": how many, in what, made when.

    >>> _made("plum-jam: 6; jar, 200 ml; 3 August 2027")["container"]
    'jar, 200 ml'
    """
    recipe, _, rest = line.partition(":")
    parts = [part.strip() for part in rest.split(";") if part.strip()]
    row: dict[str, Any] = {"recipe": recipe.strip()}
    if parts:
        row["number"] = plain_value(parts[0])
    if len(parts) > len(_MADE) - 1:
        row["container"] = parts[1]
    if len(parts) > 1:
        row["made on"] = plain_value(parts[-1])
    return row


def _put_in_stock(said: Any, name: str, value: Any) -> None:
    key = part_key(said, "stock")
    if isinstance(said.get(key), list) and value is not None:
        said[key] = {"ingredients": said[key]}
    if isinstance(said.get(key), dict) or value is not None:
        put(said, [key, name], value)
