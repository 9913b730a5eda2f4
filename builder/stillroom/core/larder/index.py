"""Every name in the larder, each leading to its food: built from the data, kept as one file.

The hand-made staples (staples/*.yml) go before the tables (larder/foods/*.tsv), a name before an
alias, English before the other languages (larder/names_*.tsv). What stands under `kinds:` of a
staple, or under "also" of a table, is a food of its own name with the same facts: "gazpacho" is
never called "tinned soup". index.txt (index_file.py) holds what `build_index` makes, so that a
command need not make it again; where the data have changed since, it is made anew and nothing is
stale. `python tests/data/make_larder_index.py` rewrites the file.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from stillroom.core.larder.data import read_yaml
from stillroom.core.larder.index_file import (
    HAND_MADE,
    HOUSE,
    LANGUAGES,
    RULES,
    fingerprint,
    held_index,
    source_files,
)
from stillroom.core.larder.words import normal_form
from stillroom.core.words.patterns import late_regex

# in place of a food: words of a language that name several foods in it
SEVERAL = "?"
_ADJECTIVE = late_regex(r"([a-zäöüß]{3,}?)(?:e[rsnm]?)")
COLUMNS = ("name", "also", "from", "allergens", "may_contain", "tags", "parts", "acidity", "source")


@cache
def load_index() -> dict[str, Any]:
    """Return the index from its file, or made anew where the data have changed since."""
    return held_index() or build_index()


def build_index() -> dict[str, Any]:
    """Make the index: food `rows`, `names` of foods, `foreign` by language, `harmless` words.

    `tagged` has the foods of each tag, `data` the files of rules as they are read.

    Raises ValueError where two hand-made staples bear one name.
    """
    rows: dict[str, Any] = {}
    names: dict[str, str] = {}
    others: list[tuple[str, str]] = []
    for file, section, name, row in _hand_made():
        if name in rows:
            raise ValueError(f'{file}: "{name}" is already a staple.')
        rows[name] = {"file": file, "section": section, **row}
        names.setdefault(normal_form(name), name)
        others += [(other, name) for other in row.get("also", ())]
    for other, name in others:
        names.setdefault(normal_form(other), name)
    for name in list(rows):
        for kind in rows[name].get("kinds", ()):
            _add_kind(kind, name, rows, names)
    _add_tables(rows, names)
    return {
        "of": fingerprint(),
        "rows": rows,
        "names": names,
        "foreign": _foreign(rows, names),
        "harmless": _harmless(),
        "tagged": _tagged(rows),
        "data": {name: read_yaml(name) for name in RULES},
    }


def _add_kind(kind: str, keeper: str, rows: dict[str, Any], names: dict[str, str]) -> None:
    """Add a food of its own name that has all the facts of another: a row that says which."""
    form = normal_form(kind)
    if form and form not in names and kind not in rows:
        rows[kind] = keeper
        names[form] = kind


def _harmless() -> dict[str, Any]:
    """Return the classes of harmless.yml, and which of them each of their words is of."""
    rows = []
    words: dict[str, list[int]] = {}
    for place, row in enumerate(read_yaml("harmless.yml")):
        sides = [row.get("after", False), row.get("before", False)]
        rows.append([row.get("only", []), row.get("never", []), *sides])
        for written in row["words"].split(","):
            words.setdefault(normal_form(written), []).append(place)
    return {"rows": rows, "words": words}


def _tagged(rows: dict[str, Any]) -> dict[str, list[str]]:
    """Return the names of the foods that bear each tag."""
    found: dict[str, list[str]] = {}
    for name, row in rows.items():
        own = rows[row] if isinstance(row, str) else row
        tags = split_list(own[5]) if isinstance(own, list) else own.get("tags", ())
        for tag in tags:
            found.setdefault(tag, []).append(name)
    return found


def _hand_made() -> Iterator[tuple[str, str, str, dict[str, Any]]]:
    from stillroom.core.words.data_files import read_data  # late: only a new index needs it

    for file in HAND_MADE:
        table = read_data(file)
        for name, row in table["staples"].items():
            yield file, table["section"], name, row


def read_table(path: Path) -> Iterator[dict[str, str]]:
    """Return the rows of one tab-separated file; lines that begin with "#" are notes."""
    import csv  # late: only a new index needs it

    with path.open(encoding="utf-8", newline="") as lines:
        kept = (line for line in lines if not line.startswith("#"))
        yield from csv.DictReader(kept, delimiter="\t", quoting=csv.QUOTE_NONE)


def _add_tables(rows: dict[str, Any], names: dict[str, str]) -> None:
    own = {name for name, row in rows.items() if isinstance(row, dict)}
    others: list[tuple[str, str]] = []
    for path in source_files():
        if path.suffix != ".tsv" or path.parent.name != "foods":
            continue
        for row in read_table(path):
            name, form = row["name"], normal_form(row["name"])
            like = ""
            held = names.get(form)
            if held in own and normal_form(held) != form:
                like = names.pop(form)  # only an alias there: the name is this food's own
            elif held and isinstance(rows[held], str):
                like = rows.pop(names.pop(form))  # a kind there: these facts go before those
            keeper = names.setdefault(form, name)
            if keeper == name and name not in rows:
                cells = ((row.get(column) or "") for column in COLUMNS[1:])
                rows[name] = [path.name, *cells, like]
            others += [(other, keeper) for other in split_list(row["also"])]
    contested: dict[str, set[str]] = {}
    written: dict[str, str] = {}
    for other, keeper in others:
        form = normal_form(other)
        if form and form not in names:
            contested.setdefault(form, set()).add(keeper)
            written.setdefault(form, other)
    for form, keepers in contested.items():
        if len(keepers) == 1 or _alike(rows, keepers):
            _add_kind(written[form], min(keepers), rows, names)


def _alike(rows: dict[str, Any], keepers: set[str]) -> bool:
    """Whether foods that share a name differ in nothing that a careful giver must know."""
    return len({_facts(rows[name]) for name in keepers}) == 1


def _facts(row: Any) -> tuple[Any, ...]:
    if isinstance(row, list):
        return (*row[2:6], row[7])
    facts = (row.get(key, ()) for key in ("from", "allergens", "may_contain", "tags"))
    return (*("; ".join(fact) for fact in facts), "")


def split_list(text: str | None) -> list[str]:
    """Split a cell of a table: "sugar; water" is two.

    >>> split_list("sugar; water"), split_list("")
    (['sugar', 'water'], [])
    """
    return [part.strip() for part in (text or "").split(";") if part.strip()]


def _foreign(rows: dict[str, Any], names: dict[str, str]) -> dict[str, dict[str, str]]:
    """Return each language's own names; "" for a word that there may be several foods."""
    found: dict[str, dict[str, str]] = {}
    for language in LANGUAGES:
        path = HOUSE / f"names_{language}.tsv"
        table = found.setdefault(language, {})
        given = [*_foreign_names(path)] if path.exists() else []
        # other endings last, so that none takes a name that a food is given
        bent = [(food, one) for food, name in given for one in _declined(name)]
        for food, foreign in [*given, *(bent if language == "de" else ())]:
            form = normal_form(foreign)
            keeper = food if food in rows else names.get(normal_form(food))
            if form and food == SEVERAL:
                table.setdefault(form, "")
            elif keeper and form and names.get(form) != keeper:
                table.setdefault(form, keeper)
    return found


def _declined(name: str) -> Iterator[str]:
    """Yield a German name with the other endings of its adjectives: "braunen Zucker"."""
    *before, last = name.split()
    stems = [found[1] for found in map(_ADJECTIVE.fullmatch, before) if found]
    if stems and len(stems) == len(before):
        for ending in ("e", "er", "es", "en", "em"):
            yield " ".join((*(f"{stem}{ending}" for stem in stems), last))


def _foreign_names(path: Path) -> Iterator[tuple[str, str]]:
    for line in path.read_text(encoding="utf-8").splitlines():
        food, _, names = line.partition("\t")
        if not line.startswith("#") and food != "food":
            yield from ((food, name) for name in split_list(names))
