"""A giving list as boxes, and back into its file with the smallest change.

Each sort of row is a table of facts with what each box asks; what a file says beside these stays.
What is wrong is told by the list's own reader before anything is written.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

from stillroom.saving.yaml_files import put


@dataclass(frozen=True)
class Ask:
    """One box: the fact in the file, what is asked, how it is written, a hint."""

    key: str
    words: str
    sort: str = "text"
    hint: str = ""


TOP: Final = (
    Ask("giving list", "What this giving is called", hint="Christmas 2027"),
    Ask("giving day", "The day the baskets go out", "date", "2027-12-18"),
    Ask("from", "Who the cards are from"),
    Ask("message", "A word on every card that has none of its own"),
    Ask("design", "How cards and tags look", "design"),
)
ROWS: Final[Mapping[str, tuple[Ask, ...]]] = {
    "households": (
        Ask("name", "Who"),
        Ask("to", "Name on the card"),
        Ask("basket", "Basket", "basket", "small, or: small 2, large 1"),
        Ask("avoid", "Must not have", "words", "nuts, gluten, alcohol, meat"),
        Ask("avoid ingredients", "Nor these foods", "words"),
        Ask("traces are fine", "Traces of these are fine", "words"),
        Ask("adults", "Adults", "number"),
        Ask("children", "Children’s ages", "words", "6, 18 months"),
        Ask("pregnant", "Somebody is pregnant", "yes"),
        Ask("pets", "Animals live there", "yes"),
        Ask("delivery", "How it goes", "delivery"),
        Ask("likes", "Likes", "words"),
        Ask("must have", "Must have", "words"),
        Ask("never", "Never again", "words"),
        Ask("budget", "The most its contents may cost", "number"),
        Ask("message", "A word on their card"),
        Ask("design", "How their papers look", "design"),
    ),
    "makes": (
        Ask("recipe", "Recipe", "recipe"),
        Ask("container", "In what", hint="bottle, 100 ml"),
        Ask("sort", "Counts as", "sort"),
        Ask("per batch", "How many a batch gives", "number"),
        Ask("batches", "At most so many batches", "number"),
        Ask("by post", "May go by post", "yes"),
        Ask("shop price", "A like thing in a shop costs", "number"),
        Ask("cost", "What one costs you", "number"),
    ),
    "baskets": (
        Ask("eat", "Things to eat", "number"),
        Ask("drink", "Drinks", "number"),
        Ask("craft", "Things made by hand", "number"),
        Ask("cost", "The empty basket costs", "number"),
        Ask("design", "How these papers look", "design"),
    ),
    "batches": (
        Ask("recipe", "Recipe", "recipe"),
        Ask("started", "Begun on", "date"),
        Ask("batches", "How many times the recipe", "number"),
        Ask("tended", "Tended on", "words"),
        Ask("made on", "Filled on", "date"),
        Ask("number", "How many it gave", "number"),
        Ask("container", "In what"),
        Ask("given", "Given away since", "number"),
        Ask("notes", "Notes"),
    ),
}
NEEDED: Final = {"households": "name", "makes": "recipe", "batches": "recipe"}
"""A new row is one where this box is filled."""
MOST_ROWS: Final = 400
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


def value_of(text: str, ask: Ask) -> Any:
    """Return what a box says as the file has it; None where it says nothing.

    >>> value_of("nuts, 6", Ask("a", "", "words")), value_of("small 2", Ask("a", "", "basket"))
    (['nuts', 6], {'small': 2})
    """
    text = " ".join(text.split())
    if not text:
        return None
    if ask.sort == "words":
        return [_plain(one) for one in re.split(r"\s*[,;]\s*", text) if one]
    if ask.sort == "basket":
        parts = [part.strip() for part in text.split(",") if part.strip()]
        counted = [re.fullmatch(r"(.+?)\s+(\d{1,2})", part) for part in parts]
        if any(counted):
            return {
                found[1] if found else part: int(found[2]) if found else 1
                for part, found in zip(parts, counted, strict=True)
            }
        return text if len(parts) == 1 else dict.fromkeys(parts, 1)
    if ask.sort == "yes":
        return {"yes": True, "no": False}.get(text.lower(), text)
    return _plain(text) if ask.sort in ("number", "date") else text


def _plain(text: str) -> Any:
    if _DAY.fullmatch(text):
        try:
            return date.fromisoformat(text)
        except ValueError:
            return text
    if _NUMBER.fullmatch(text):
        return float(text) if "." in text else int(text)
    return text


def rows_of(said: Any, part: str) -> list[tuple[str, dict[str, str]]]:
    """Return the rows of a part of the list: where each stands, and what is in its boxes."""
    rows = said.get(part) or {}
    if isinstance(rows, dict):
        return [
            (str(name), {a.key: shown(row.get(a.key)) for a in ROWS[part]})
            for name, row in rows.items()
        ]
    return [
        (str(at), {a.key: shown(row.get(a.key)) for a in ROWS[part]}) for at, row in enumerate(rows)
    ]


def box_name(part: str, at: str, key: str) -> str:
    """Return how a box is called in what a browser sends.

    >>> box_name("makes", "3", "by post")
    'makes|3|by post'
    """
    return f"{part}|{at}|{key}"


def change_list(said: Any, sent: Mapping[str, str]) -> None:
    """Put into a list what the boxes say."""
    for ask in TOP:
        if ask.key in sent:
            _put(said, ask, sent[ask.key])
    for part in ("households", "makes", "batches"):
        _change_rows(said, part, sent)
    _change_baskets(said, sent)
    for part, read in (("prices", _prices), ("hours", _hours), ("stock", _stock)):
        if part not in sent or _lines(sent[part]) == _lines(lines_of(said, part)):
            continue
        if part == "stock":
            _put_stock(said, sent[part])
        else:
            put(said, [part], read(sent[part]) or None)


def _put(row: Any, ask: Ask, text: str) -> None:
    if " ".join(text.split()) != shown(row.get(ask.key)):
        put(row, [ask.key], value_of(text, ask))


def _change_rows(said: Any, part: str, sent: Mapping[str, str]) -> None:
    rows = said.get(part)
    gone = []
    for at, row in enumerate(rows or []):
        if sent.get(box_name(part, str(at), "gone")):
            gone.append(at)
            continue
        for ask in ROWS[part]:
            if (text := sent.get(box_name(part, str(at), ask.key))) is not None:
                _put(row, ask, text)
    for at in reversed(gone):
        del rows[at]
    new = {
        ask.key: value_of(sent.get(box_name(part, "new", ask.key), ""), ask) for ask in ROWS[part]
    }
    if new[NEEDED[part]] is not None:
        row = {key: value for key, value in new.items() if value is not None}
        if rows is None:
            said[part] = [row]
        else:
            rows.append(row)


def _change_baskets(said: Any, sent: Mapping[str, str]) -> None:
    baskets = said.setdefault("baskets", {})
    for name in [str(name) for name in baskets]:
        if sent.get(box_name("baskets", name, "gone")):
            del baskets[name]
            continue
        for ask in ROWS["baskets"]:
            if (text := sent.get(box_name("baskets", name, ask.key))) is not None:
                _put(baskets[name], ask, text)
    name = " ".join(sent.get(box_name("baskets", "new", "name"), "").split())
    if name:
        new = {
            a.key: value_of(sent.get(box_name("baskets", "new", a.key), ""), a)
            for a in ROWS["baskets"]
        }
        baskets[name] = {key: value for key, value in new.items() if value is not None}


def lines_of(said: Any, part: str) -> str:
    """Return prices, hours or stock as lines: "vodka: 700 ml for 14.50; 1 l for 18"."""
    rows = said.get(part)
    if not rows:
        return ""
    if part == "hours":
        return "\n".join(f"{month}: {shown(hours)}" for month, hours in rows.items())
    if part == "prices":
        return "\n".join(_price_line(row) for row in rows)
    held = [f"{name}: {count}" for name, count in (rows.get("containers") or {}).items()]
    return "\n".join([*held, *(shown(line) for line in _listed(rows.get("ingredients")))])


def _listed(value: Any) -> list[Any]:
    return list(value) if isinstance(value, list) else [] if value is None else [value]


def _price_line(row: Any) -> str:
    section = f" [{row['section']}]" if row.get("section") else ""
    return f"{row['item']}{section}: {'; '.join(shown(pack) for pack in _listed(row['packs']))}"


def _put_stock(said: Any, text: str) -> None:
    """Put in what is in the house; what was made before, which the box does not show, stays."""
    new = _stock(text)
    stock = said.setdefault("stock", {})
    for name in ("containers", "ingredients"):
        put(stock, [name], new.get(name))


def _lines(text: str) -> list[str]:
    return [" ".join(line.split()) for line in text.splitlines() if line.strip()]


def _prices(text: str) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = []
    for line in _lines(text):
        item, _, packs = line.partition(":")
        named = re.fullmatch(r"(.*?)\s*\[([^\]]+)\]\s*", item)
        row: dict[str, Any] = {"item": named[1] if named else item.strip()}
        if named:
            row["section"] = named[2]
        row["packs"] = [pack.strip() for pack in packs.split(";") if pack.strip()]
        found.append(row)
    return found


def _hours(text: str) -> dict[str, Any]:
    rows = (line.partition(":") for line in _lines(text))
    return {month.strip(): _plain(hours.strip()) for month, _, hours in rows}


def _stock(text: str) -> dict[str, Any]:
    """Read what is in the house: a line with a colon and a number is a container."""
    containers: dict[str, Any] = {}
    ingredients = []
    for line in _lines(text):
        found = re.fullmatch(r"(.+?):\s*(\d{1,5})", line)
        if found:
            containers[found[1]] = int(found[2])
        else:
            ingredients.append(line)
    found_all = {"containers": containers, "ingredients": ingredients}
    return {name: value for name, value in found_all.items() if value}
