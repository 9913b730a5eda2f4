"""Tables that are typed with strokes: one of ingredients is a list, any other is words beside it.

A table that gives several sizes ("1 litre | 3 litres") is read by its first, and that is told.
Those of web pages and word processors give their cells themselves.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import AMOUNT_ALONE, plain, section_of, words
from stillroom.bringing.page_figures import tells_nutrition
from stillroom.bringing.sorting import is_ingredient, is_passed
from stillroom.bringing.typed_marks import bare

_RULE: Final = re.compile(r"\s*(?:[|+](?:[-=:\s|+])*|:?-{2,}:?\s*\|[-:\s|]*)\s*$")
_NOTHING: Final = re.compile(r"(?:\\N\b\s*)+")  # how a database writes an empty cell
_BARE_RULE: Final = re.compile(r"\s*:?-{2,}:?(?:\s*\|\s*:?-{2,}:?)+\s*")
_FOOD_HEAD: Final = re.compile(
    r"(?:ingr[eé]dients?|ingrediënt(?:en)?|ingredienti?e?s?|ingrediens(?:er)?|zutat(?:en)?|item|food"
    r"|what|was|wat|quoi|producto|vara|råvara|składniki?)",
    re.IGNORECASE,
)
_AMOUNT_HEAD: Final = re.compile(
    r"(?:amounts?|quantity|quantities|qty|how much|units?|measures?|mengen?|(?:maß)?einheit"
    r"|quantités?"
    r"|unités?|cantidad(?:es)?|unidad(?:es)?|quantità|unità|hoeveelheid|eenheid|mängd|mængde|mengde|enhe[dt]"
    r"|quantidades?|unidades?|ilość|miara)",
    re.IGNORECASE,
)
_ALL_OF_IT: Final = re.compile(
    r"(?:sub)?(?:total|totaal|totale|gesamt|summe)(?!\w*mehl)\w*\b", re.IGNORECASE
)
_COLUMNS: Final = re.compile(r"\s{2,}|\t|\s--\s")
_HOW: Final = re.compile(r"(?:preparation(?: method)?|notes?|zubereitung|bemerkung)", re.I)
_MONEY: Final = re.compile(r"[£$€¥]\s?\d|\d\s?(?:[£$€¥]|kr\b|zł\b|Fr\.|CHF|EUR|USD|GBP)")
_DIGIT: Final = re.compile(r"\d")
_NUMBER: Final = re.compile(r"[\d½¼¾⅓⅔⅛~≈±]")
_LETTERS: Final = re.compile(r"[^\W\d_]{2}")
_BRACKETED: Final = re.compile(r"\([^()]+\)")
_LONGEST_CELL: Final = 60
_LEAST: Final = 2


@dataclass(frozen=True)
class Table:
    """A table's cells by row, and the row of its heads where a stroke stands below one."""

    heads: tuple[str, ...]
    body: tuple[tuple[str, ...], ...]


def is_table_line(line: str) -> bool:
    """Whether a line belongs to a table that is typed with strokes.

    >>> is_table_line("| 2 | eggs |"), is_table_line("+---+---+"), is_table_line("1 cup | 2 cups")
    (True, True, False)
    """
    said = line.strip()
    edged = said.startswith("|") or (said.endswith("|") and not said.startswith(("#", "-", "*")))
    return bool(said) and ((edged and said.count("|") >= _LEAST) or _rules(said))


def with_strokes(lines: Sequence[str]) -> list[str]:
    """Return lines with a stroke at both ends of those of a table that is typed without.

    >>> with_strokes(["flour|g", "----|---", "oats|100", "", "a | b"])
    ['|flour|g|', '|----|---|', '|oats|100|', '', 'a | b']
    >>> with_strokes(["Item | Small | Large", "Plums | 1 kg | 2 kg", "Sugar | 1 cup | 2 cups"])[1]
    '|Plums | 1 kg | 2 kg|'
    """
    found = list(lines)
    end = 0
    for at, line in enumerate(lines):
        if at >= end and "|" in line and _heads_strokes(lines, at):
            end = next((one for one in range(at, len(lines)) if "|" not in lines[one]), len(lines))
            found[at:end] = [f"|{one.strip().strip(chr(124))}|" for one in lines[at:end]]
        elif at > end and _BARE_RULE.fullmatch(line) and "|" in lines[at - 1]:
            end = next((one for one in range(at, len(lines)) if "|" not in lines[one]), len(lines))
            found[at - 1 : end] = [
                f"|{one.strip().strip(chr(124))}|" for one in lines[at - 1 : end]
            ]
    return found


def _heads_strokes(lines: Sequence[str], at: int) -> bool:
    """Whether a line heads the columns of two or more lines below it, with no rule between."""
    below = lines[at + 1 : at + 1 + _LEAST]
    many = lines[at].count("|")
    return (
        len(below) == _LEAST
        and all(one.count("|") == many for one in below)
        and (_names_columns(_cells_of(lines[at])))
    )


def _cells_of(line: str) -> tuple[str, ...]:
    return tuple(_NOTHING.sub("", one).strip() for one in line.strip().strip("|").split("|"))


def _names_columns(row: Sequence[str]) -> bool:
    """Whether cells are the heads of columns, of which one is of what goes in, and none counts."""
    said = [cell.strip("*_: ") for cell in row]
    named = any(map(_FOOD_HEAD.fullmatch, said))
    return named and len(said) > 1 and not any(map(_DIGIT.search, said)) and all(said)


def _rules(line: str) -> bool:
    return bool(_RULE.match(line)) and ("-" in line or "=" in line)


def rows_of_table(lines: Sequence[str]) -> list[Row]:
    """Return the rows of a table: items where it is one of ingredients, else rows of words.

    >>> lines = ["| Amount | Ingredient |", "|---|---|", "| 2 | eggs |"]
    >>> [row.text for row in rows_of_table(lines)]
    ['2 eggs']
    """
    table = _read(lines)
    if facts := _facts_of(table):
        return [Row(bare(fact), "line", 0, place == 0) for place, fact in enumerate(facts)]
    foods = _column_of_foods(table)
    if foods is not None and (both := _list_and_method(table, foods)):
        return both
    if foods is None:
        rows = (*([table.heads] if table.heads else []), *table.body)
        texts = (bare(" | ".join(filter(None, row))) for row in rows)
        return [Row(text, "row", 0, place == 0) for place, text in enumerate(texts) if text]
    return _list_of(table, foods)


def rows_of_cells(cells: Sequence[Sequence[str]]) -> list[Row] | None:
    """Return the rows of a table that a page or a word processor drew; None for one of no list.

    What heads its columns is no thing of it, and an amount belongs to the food in its own row.
    Nothing of a table that says what a portion feeds or costs is kept; a page's facts are lines.

    >>> drawn = [["How much", "What"], ["2.5 kg (5 lb)", "plums"], ["800 g", "sugar"]]
    >>> [row.text for row in rows_of_cells(drawn) or []]
    ['2.5 kg (5 lb) plums', '800 g sugar']
    >>> rows_of_cells([["Energy", "62 kcal"], ["Protein", "2 g"]])
    []
    """
    kept = [tuple(cell.strip() for cell in row) for row in cells if any(map(str.strip, row))]
    if not kept or max(map(len, kept)) < _LEAST:
        return None
    if tells_nutrition(kept) or all(_MONEY.search(row[-1]) for row in kept):
        return []
    headed = len(kept) > 1 and _heads_columns(kept[0])
    table = Table(kept[0], tuple(kept[1:])) if headed else Table((), tuple(kept))
    if facts := _facts_of(table):
        return [Row(bare(fact), "line", 0, place == 0) for place, fact in enumerate(facts)]
    foods = _column_of_foods(table)
    if foods is None or any(map(_holds_two, table.body)):
        return None
    found: list[Row] = []
    begun = 0
    for at, row in enumerate((*table.body, ("",))):
        head = row[0] if foods and not any(row[1:]) and _is_name(row[0]) else ""
        if at == len(table.body) or head:
            found += (
                _list_of(replace(table, body=table.body[begun:at]), foods) if at > begun else []
            )
            found += [Row(bare(head), "heading", 6, True)] if head else []
            begun = at + 1
    return found


def _holds_two(row: Sequence[str]) -> bool:
    """Whether a row holds two things, as a list set in two columns has them."""
    return sum(is_ingredient(cell) and not _is_amount(cell) for cell in row) > 1


def _is_amount(cell: str) -> bool:
    """Whether a cell is an amount with nothing behind it but another one in brackets."""
    return bool(AMOUNT_ALONE.fullmatch(_BRACKETED.sub("", cell).strip()))


def heads_columns(line: str) -> bool:
    """Whether a typed line only says what stands in the columns below it.

    >>> heads_columns("Amount  Measure       Ingredient -- Preparation Method")
    True
    >>> heads_columns("Menge   Zutat"), heads_columns("What you need")
    (True, False)
    """
    cells = [one.strip() for one in _COLUMNS.split(line.strip())]
    return _heads_columns([one for one in cells if one and not _HOW.fullmatch(one)])


def _heads_columns(row: Sequence[str]) -> bool:
    said = [cell.strip("*_: ") for cell in row if cell]
    known = [bool(_FOOD_HEAD.fullmatch(cell) or _AMOUNT_HEAD.fullmatch(cell)) for cell in said]
    return len(said) > 1 and all(known)


def _facts_of(table: Table) -> list[str]:
    """Return a page's facts that stand in a table, "Servings: 24"; [] for any other table."""
    if len(table.heads) >= _LEAST and len(table.body) == 1:
        pairs = list(zip(table.heads, table.body[0], strict=False))
    else:
        rows = (*([table.heads] if table.heads else []), *table.body)
        pairs = [(row[0], row[1]) for row in rows if len(row) == _LEAST]
        pairs = pairs if len(pairs) == len(rows) else []
    pairs = [(_own_label(bare(name)), value) for name, value in pairs]
    told = sum(is_passed(f"{name}: x") or plain(name) in words("fact_labels") for name, _ in pairs)
    if len(pairs) < _LEAST or told * 2 <= len(pairs):
        return []
    said = [(name, value) for name, value in pairs if plain(value) not in words("no_value")]
    return [f"{name}: {value}" for name, value in said if plain(name) not in words("made_for")]


def _own_label(name: str) -> str:
    """Return "Author" for the other words by which a table says whose a recipe is, and so on."""
    if plain(name) in words("author_labels"):
        return "Author"
    return "Serves" if plain(name) == "serve" else name


def _read(lines: Sequence[str]) -> Table:
    cells = [None if _rules(line) else _cells_of(line) for line in lines]
    doubled = [at for at, line in enumerate(lines) if _rules(line.strip()) and "=" in line]
    ruled = doubled or [at for at, row in enumerate(cells) if row is None and at]
    above = [row for row in cells[: ruled[0]] if row is not None] if ruled else []
    body = [row for row in cells[ruled[0] if ruled else 0 :] if row is not None]
    if not ruled and len(body) > _LEAST and _names_columns(body[0]):
        return Table(body[0], tuple(body[1:]))
    heads = above[-1] if len(above) == 1 and body else ()
    body = body if heads else [row for row in cells if row is not None]
    return Table(heads, tuple(body))


def _column_of_foods(table: Table) -> int | None:
    """Return the column that names the ingredients; None for a table of anything else."""
    named = [at for at, head in enumerate(table.heads) if _FOOD_HEAD.fullmatch(head.strip("*_ "))]
    if named:
        return named[0]
    width = max((len(row) for row in table.body), default=0)
    if width < _LEAST or any(len(cell) > _LONGEST_CELL for row in table.body for cell in row):
        return None
    worded = [
        at
        for at in range(width)
        if sum(bool(_is_name(_cell(row, at))) for row in table.body) * 2 > len(table.body)
    ]
    if len(worded) != 1:
        return None
    put = [row.text for row in _list_of(table, worded[0]) if row.shape == "item"]
    listed = sum(map(is_ingredient, put))
    return worded[0] if listed >= _LEAST and listed * 2 > len(put) else None


def _is_name(cell: str) -> bool:
    return bool(_LETTERS.search(cell)) and not _NUMBER.match(cell.strip("*_ "))


def _cell(row: Sequence[str], at: int) -> str:
    return row[at].strip() if at < len(row) else ""


def _list_of(table: Table, foods: int) -> list[Row]:
    """Return a table of ingredients as the lines of a list."""
    width = max(len(row) for row in table.body)
    beside = [at for at in range(width) if at != foods]
    sizes = [at for at in beside if _is_size(table, at)]
    found: list[Row] = []
    if len(sizes) > 1:
        said = " | ".join(f'"{_cell(table.heads, at)}"' for at in sizes if _cell(table.heads, at))
        found.append(Row(said, "sizes", 0, True))
        beside = [at for at in beside if at not in sizes[1:]]
    for row in table.body:
        name = _cell(row, foods)
        amounts = [_cell(row, at) for at in beside if _cell(row, at)]
        if _goes_on(name, amounts, found):
            found[-1] = replace(found[-1], text=bare(" ".join([found[-1].text, name, *amounts])))
            continue
        if _ALL_OF_IT.match(name.strip("*_ ")):
            continue
        if not name:
            found += [Row(bare(" ".join(amounts)), "row")] if amounts else []
            continue
        if name[:1] in "*_" and not amounts:
            found.append(Row(bare(name), "heading", 6, True))
            continue
        first = [one for one in amounts if _NUMBER.match(one)] + [
            one for one in amounts if not _NUMBER.match(one) and len(one.split()) == 1
        ]
        rest = [one for one in amounts if one not in first]
        text = " ".join([*first, name]) + "".join(f", {one}" for one in rest)
        found.append(Row(bare(text), "item", 0, not found))
    return found


def _goes_on(name: str, amounts: Sequence[str], found: Sequence[Row]) -> bool:
    """Whether a row is brackets alone, below a thing: what is said of that, "(unsalted)"."""
    said = " ".join(filter(None, [name, *amounts]))
    return bool(found) and found[-1].shape == "item" and bool(_BRACKETED.fullmatch(said))


def _list_and_method(table: Table, foods: int) -> list[Row]:
    """Return the list and the steps of a table with a column for each; [] for any other."""
    told = [at for at, head in enumerate(table.heads) if section_of(head.strip("*_ ")) == "method"]
    if len(told) != 1:
        return []
    rest = tuple(tuple(cell for at, cell in enumerate(row) if at != told[0]) for row in table.body)
    steps = [bare(_cell(row, told[0])) for row in table.body]
    place = foods - (told[0] < foods)
    things = Table((), tuple(row for row in rest if any(map(str.strip, row))))
    return [
        Row("Ingredients", "heading", 6, True),
        *_list_of(things, place),
        Row(bare(table.heads[told[0]]), "heading", 6, True),
        *(Row(step, "step") for step in steps if step),
    ]


def _is_size(table: Table, at: int) -> bool:
    """Whether a column holds whole amounts: most of its cells begin with a number."""
    cells = [_cell(row, at) for row in table.body]
    said = [cell for cell in cells if cell]
    return bool(said) and sum(bool(_NUMBER.match(cell)) for cell in said) * 2 > len(said)
