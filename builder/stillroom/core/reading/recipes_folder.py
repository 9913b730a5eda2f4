"""The folder of recipes: which files are recipes, and what else lies there that should be one.

Whatever a cook put there is read or told of; what programs leave behind is passed over. Leaves
out what stands in the files: reading.py.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from stillroom.core.words.problems import Problem

ENDING: Final = ".md"
# endings under which a cook may have saved a recipe
_TEXTS: Final = frozenset(
    {".markdown", ".mdown", ".mkd", ".mdx", ".txt", ".text", ".rtf", ".doc", ".docx", ".odt"}
    | {".pages", ".pdf", ".html", ".htm", ""}
)
_LARDERS: Final = ("larder.yml", "larder.yaml")
_LEFT_BEHIND: Final = ("~", ".bak", ".swp", ".tmp", ".orig", ".part")
_DEEPEST: Final = 6


def recipe_files(folder: Path) -> list[Path]:
    """Return every recipe file of a folder, in order: what ends in ".md" and is not hidden."""
    if not folder.is_dir():
        return []
    return sorted(path for path in folder.iterdir() if path.suffix == ENDING and _is_shown(path))


def find_strays(folder: Path, named: str) -> Iterator[Problem]:
    """Find what lies among the recipes and would not be read; `named` is the folder's own name."""
    if not folder.is_dir():
        return
    for path in sorted(folder.iterdir()):
        name = f"{named.rstrip('/')}/{path.name}"
        if not _is_shown(path) or path.suffix == ENDING:
            continue
        if path.is_dir():
            count = _recipes_below(path)
            if count:
                held = "a recipe" if count == 1 else f"{count} recipes"
                what = f"This folder holds {held} that would not be read."
                yield Problem(name, 0, what, f'Move them up into "{named}".')
        elif path.name.lower() in _LARDERS:
            what = "The book's own foods are not read here."
            yield Problem(name, 1, what, "Move it one folder up: it lies beside this folder.")
        elif path.suffix.lower() in _TEXTS | {ENDING}:
            what = f'This file would not be read: recipes end in "{ENDING}".'
            mend = f'Save it as plain text under the name "{path.stem.rstrip(". ")}{ENDING}"'
            yield Problem(name, 1, what, f"{mend}, or move it out of the folder.")


def _is_shown(path: Path) -> bool:
    return not path.name.startswith((".", "#")) and not path.name.endswith(_LEFT_BEHIND)


def _recipes_below(folder: Path, depth: int = 0) -> int:
    if depth > _DEEPEST or folder.is_symlink():
        return 0
    try:
        inside = list(folder.iterdir())
    except OSError:
        return 1  # what cannot be looked into may hold one
    below = sum(_recipes_below(path, depth + 1) for path in inside if path.is_dir())
    return below + sum(path.suffix.lower() in (ENDING, ".markdown") for path in inside)
