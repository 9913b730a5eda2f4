"""The index of foods as it lies on disk, read in a few milliseconds: a row opens when asked for.

index.txt holds, after the fingerprint of all that it was made from, its parts: a title behind "#",
then a line for each entry, its key and its value in JSON with a tab between. Where the data or the
code that reads them have changed since, the file is passed over and index.py makes the index anew.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import Any

HOUSE = Path(__file__).parent
INDEX = HOUSE / "index.txt"
STAPLES = HOUSE.parent / "staples"
LANGUAGES = ("de", "fr", "es", "it", "nl")
# the hand-made tables, in the order in which they win
HAND_MADE = (
    "spirits.yml",
    "sugars.yml",
    "fruit.yml",
    "vegetables.yml",
    "nuts_and_seeds.yml",
    "flours_and_grains.yml",
    "pulses.yml",
    "dairy_and_eggs.yml",
    "fats_and_oils.yml",
    "vinegars_and_sauces.yml",
    "spices.yml",
    "herbs_and_flowers.yml",
    "toxic_plants.yml",
    "craft.yml",
)
# the rules by which words and foods are read; they are held in the index too
RULES = ("plurals.yml", "phrases.yml", "acidity.yml", "egg_sizes.yml")
_NAMES = ("names", *LANGUAGES)
_PARTS = ("rows", *_NAMES, "harmless", "tagged", "data")


class Lazy(Mapping[str, Any]):
    """A part of the index: each value is read from its JSON when it is asked for."""

    def __init__(self, written: dict[bytes, bytes]) -> None:
        """Keep the values as they are written."""
        self._written = written

    def __getitem__(self, key: str) -> Any:
        """Return one value."""
        return json.loads(self._written[key.encode()])

    def __contains__(self, key: object) -> bool:
        """Say whether there is such a key, without reading its value."""
        return isinstance(key, str) and key.encode() in self._written

    def __iter__(self) -> Iterator[str]:
        """Return every key, in the order of the file."""
        return (key.decode() for key in self._written)

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self._written)


def source_files() -> tuple[Path, ...]:
    """Return every file that the index is made from or by, in a fixed order."""
    tables = sorted((HOUSE / "foods").glob("*.tsv")) if (HOUSE / "foods").is_dir() else []
    names = [HOUSE / f"names_{language}.tsv" for language in LANGUAGES]
    rules = [HOUSE / name for name in (*RULES, "harmless.yml")]
    code = [HOUSE / "words.py", HOUSE / "index.py", Path(__file__), HOUSE.parent / "plurals.py"]
    hand_made = [STAPLES / name for name in HAND_MADE]
    return (*hand_made, *tables, *(path for path in names if path.exists()), *rules, *code)


@cache
def fingerprint() -> str:
    """Return what tells these data, and the code that makes the index of them, from any others."""
    whole = hashlib.sha1(usedforsecurity=False)
    for path in source_files():
        whole.update(path.name.encode() + b"\0" + path.read_bytes())
    return whole.hexdigest()


@cache
def held_index() -> dict[str, Any] | None:
    """Return the index from its file, or None where that is not there or no longer true."""
    if not INDEX.exists():
        return None
    head, *parts = INDEX.read_bytes().split(b"\n#")
    if head.decode() != fingerprint():
        return None
    index: dict[str, Any] = {"of": head.decode()}
    for part in parts:
        title, _, lines = part.partition(b"\n")
        index[title.decode()] = _read_part(title.decode(), lines)
    index["foreign"] = {language: index.pop(language) for language in LANGUAGES}
    return index


def _read_part(title: str, lines: bytes) -> Mapping[str, Any]:
    """Read one part: names at once, what is written in JSON when it is asked for."""
    if title in _NAMES:
        cells = lines.decode().replace("\n", "\t").split("\t")
        return dict(zip(cells[::2], cells[1::2], strict=True))
    pairs = lines.replace(b"\n", b"\t").split(b"\t")
    return Lazy(dict(zip(pairs[::2], pairs[1::2], strict=True)))


def write_index(index: Mapping[str, Any]) -> str:
    """Return the text of the file: one food or name to a line, so that changes read well."""
    parts = [index["of"]]
    for title in _PARTS:
        part = index["foreign"][title] if title in LANGUAGES else index[title]
        lines = (
            f"{key}\t{value if title in _NAMES else _written(value)}" for key, value in part.items()
        )
        parts.append("\n".join((f"#{title}", *lines)))
    return "\n".join(parts)


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
