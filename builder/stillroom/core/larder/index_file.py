"""The index of foods as it lies on disk, read in a few milliseconds: a row opens when asked for.

index.txt holds, after the fingerprint of all that it was made from, its parts: a title behind "#",
then a line for each entry in order of the keys, its value in JSON behind a tab. Where the data or
the code that reads them have changed since, it is passed over and index.py makes the index anew.
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
_PLURALS = [HOUSE.parent / "words" / name for name in ("plurals.py", "plurals.yml")]
LANGUAGES = ("de", "fr", "es", "it", "nl", "sv", "la")
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
RULES = ("phrases.yml", "acidity.yml", "egg_sizes.yml", "names_elsewhere.yml", "allergen_words.yml")
_NAMES = ("names", *LANGUAGES)
_PARTS = ("rows", *_NAMES, "harmless", "tagged", "data")


class Lazy(Mapping[str, Any]):
    """A part of the index: lines in order of their keys, each read when it is asked for."""

    def __init__(self, lines: bytes) -> None:
        """Keep the lines as they are written."""
        self._lines = lines

    def _find(self, key: bytes) -> bytes | None:
        """Return what is written for a key, found by halving what is left to look through."""
        low, high = 0, len(self._lines)
        while low < high:
            middle = (low + high) // 2
            start = self._lines.rfind(b"\n", 0, middle) + 1
            end = self._lines.find(b"\n", middle)
            end = len(self._lines) if end < 0 else end
            found, _, written = self._lines[start:end].partition(b"\t")
            if found == key:
                return written
            if found < key:
                low = end + 1
            else:
                high = start - 1
        return None

    def __getitem__(self, key: str) -> Any:
        """Return one value."""
        written = self._find(key.encode())
        if written is None:
            raise KeyError(key)
        return json.loads(written)

    def __contains__(self, key: object) -> bool:
        """Say whether there is such a key, without reading its value."""
        return isinstance(key, str) and self._find(key.encode()) is not None

    def __iter__(self) -> Iterator[str]:
        """Return every key, in the order of the file."""
        lines = self._lines.split(b"\n") if self._lines else []
        return (line.partition(b"\t")[0].decode() for line in lines)

    def __len__(self) -> int:
        """Return how many there are."""
        return self._lines.count(b"\n") + 1 if self._lines else 0


def source_files() -> tuple[Path, ...]:
    """Return every file that the index is made from or by, in a fixed order."""
    tables = sorted((HOUSE / "foods").glob("*.tsv")) if (HOUSE / "foods").is_dir() else []
    names = [HOUSE / f"names_{language}.tsv" for language in LANGUAGES]
    rules = [HOUSE / name for name in (*RULES, "harmless.yml")]
    code = [HOUSE / "words.py", HOUSE / "index.py", Path(__file__), *_PLURALS]
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
    return Lazy(lines)


def write_index(index: Mapping[str, Any]) -> str:
    """Return the text of the file: one food or name to a line, so that changes read well."""
    parts = [index["of"]]
    for title in _PARTS:
        part = index["foreign"][title] if title in LANGUAGES else index[title]
        lines = (
            f"{key}\t{part[key] if title in _NAMES else _written(part[key])}"
            for key in sorted(part, key=str.encode)
        )
        parts.append("\n".join((f"#{title}", *lines)))
    return "\n".join(parts)


def _written(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))
