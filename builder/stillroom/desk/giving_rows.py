"""The rows of a giving list however its file writes them: "- plum-jam" is a row, too.

What the reader takes for the same is shown in the same boxes, under the word that the file has. A
short row stays short until something of it is changed. Leaves out the boxes (giving_form.py).
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from stillroom.giving.as_written import several, tidy_list
from stillroom.giving.list_words import said_key
from stillroom.saving.yaml_files import plain_data, put

NEEDED: Final[Mapping[str, str]] = {
    "households": "name",
    "makes": "recipe",
    "baskets": "name",
    "batches": "recipe",
    "posting": "service",
}
"""A new row is one where this box is filled."""
_WORDS_OF: Final = {
    "households": "household",
    "makes": "make",
    "baskets": "basket",
    "posting": "service",
}
_POSTED: Final = "by post"

Row = dict[str, Any]


def part_key(said: Any, part: str) -> str:
    """Return the word under which a list has a part of it: "people" for households.

    >>> part_key({"people": []}, "households")
    'people'
    """
    return said_key("list", said, part)


def in_part(said: Any, part: str) -> Any:
    """Return what a list has of a part, under whichever word; None where it has nothing."""
    return said.get(part_key(said, part))


def fact_key(part: str, row: Row, key: str) -> str:
    """Return the word under which a row has a fact: "allergies" for avoid."""
    return said_key(_WORDS_OF[part], row, key) if part in _WORDS_OF else key


def fact_of(part: str, row: Row, key: str) -> Any:
    """Return a fact of a row, under whichever word; "by post: yes" tells how it goes."""
    value = row.get(fact_key(part, row, key))
    if value is None and part == "households" and key == "delivery":
        sent = row.get(fact_key(part, row, _POSTED))
        return {"yes": "by post", "no": "by hand", "True": "by post", "False": "by hand"}.get(
            str(sent), sent
        )
    return value


def put_fact(part: str, row: Row, key: str, value: Any) -> None:
    """Put a fact into a row, under the word that the row has for it."""
    if part == "households" and key == "delivery" and fact_key(part, row, key) not in row:
        put(row, [fact_key(part, row, _POSTED)], None)
    put(row, [fact_key(part, row, key)], _as_it_was(row.get(fact_key(part, row, key)), value))


def _as_it_was(had: Any, value: Any) -> Any:
    """Return several words as one text where the file has them so, and they read the same.

    >>> _as_it_was("nuts, dairy", ["nuts"]), _as_it_was("nuts", ["salt and vinegar crisps"])
    ('nuts', ['salt and vinegar crisps'])
    """
    if not isinstance(had, str) or not isinstance(value, list):
        return value
    said = ", ".join(map(str, value))
    return said if several(said) == [str(one) for one in value] else value


def rows_in(said: Any, part: str) -> list[tuple[str, Row]]:
    """Return the rows of a part, each with where it stands: a basket's name, or its number.

    >>> rows_in({"makes": ["plum-jam"], "baskets": {"small": "1 to eat"}}, "baskets")
    [('small', {'eat': 1})]
    """
    data = in_part(said, part)
    if part == "baskets":
        long = _tidied(said, part)
        kinds = data.items() if isinstance(data, dict) else ()
        return [(str(name), _or_long(row, long.get(str(name)))) for name, row in kinds]
    if isinstance(data, str):
        data = _tidied(said, part) if part in _WORDS_OF else []
    if isinstance(data, dict):
        data = [_named(NEEDED[part], word, row) for word, row in data.items()]
    long = _tidied(said, part) if part in _WORDS_OF else data
    rows = data if isinstance(data, list) else []
    whole = long if isinstance(long, list) and len(long) == len(rows) else rows
    return [
        (str(at), _or_long(row, own, NEEDED[part]))
        for at, (row, own) in enumerate(zip(rows, whole, strict=True))
    ]


def _named(needed: str, word: Any, row: Any) -> Any:
    return {needed: str(word), **row} if isinstance(row, dict) else row


def _or_long(row: Any, long: Any, needed: str = "") -> Row:
    """Return a row as it is where it is long, else the long form of it, else its bare words."""
    if isinstance(row, dict):
        return row
    if isinstance(long, dict):
        return dict(long)
    return {needed: row} if needed and row is not None else {}


def _tidied(said: Any, part: str) -> Any:
    """Return a part of the list as its reader takes it."""
    parts = {one: plain_data(in_part(said, one)) for one in {"baskets", part}}
    parts = {one: rows for one, rows in parts.items() if isinstance(rows, dict | list | str)}
    return tidy_list(parts, {})[0].get(part) or {}


def _to_change(said: Any, part: str) -> Any:
    """Return the data of a part so that it may be changed: rows in one text become rows."""
    if isinstance(in_part(said, part), str):
        said[part_key(said, part)] = [dict(row) for _, row in rows_in(said, part)]
    return in_part(said, part)


def row_to_change(said: Any, part: str, at: str) -> Row:
    """Return a row so that facts may be put into it: a short one is written long from here on."""
    shown = dict(rows_in(said, part))[at]
    data = _to_change(said, part)
    place = _place(data, part, at)
    if not isinstance(data[place], dict):
        named = NEEDED.get(part, "")
        data[place] = {
            key: value for key, value in shown.items() if key != named or isinstance(data, list)
        }
    row: Row = data[place]
    return row


def _place(data: Any, part: str, at: str) -> Any:
    """Return the key or number by which the file has a row."""
    if part == "baskets":
        return next(name for name in data if str(name) == at)
    return list(data)[int(at)] if isinstance(data, dict) else int(at)


def take_out(said: Any, part: str, places: list[str]) -> None:
    """Take rows out of a part."""
    data = _to_change(said, part)
    for place in reversed([_place(data, part, at) for at in places]):
        del data[place]


def add_row(said: Any, part: str, row: Row) -> None:
    """Add a row to a part, in the form that the part has."""
    data = _to_change(said, part)
    if isinstance(data, dict):
        data[row[NEEDED[part]]] = {key: v for key, v in row.items() if key != NEEDED[part]}
    elif isinstance(data, list):
        data.append(row)
    elif part == "baskets":
        said[part_key(said, part)] = {row["name"]: {k: v for k, v in row.items() if k != "name"}}
    else:
        said[part_key(said, part)] = [row]
