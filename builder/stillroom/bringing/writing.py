"""Drafts into a folder: each a file of its own, never over one that is there."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from stillroom.bringing.found import Brought
from stillroom.core.recipe.model import LONGEST_NAME
from stillroom.saving.own_folder import OWN, make_own
from stillroom.saving.whole import write_whole

DRAFTS: Final = "drafts"
"""The folder beside a book's settings in which drafts lie: no build reads or publishes it."""


def write_brought(
    found: Brought, folder: Path, root: Path | None = None, taken: Path | None = None
) -> tuple[Path, ...]:
    """Write every draft of a file, and return where; raises ProblemsFound for what the disk says.

    A name that is taken gets a number behind it, that of a recipe in the folder `taken` too: a
    draft of that name would take its place in the end. Beside the book at `root` the lines that
    each was made from are kept, so that the desk can show what became of them.
    """
    written = []
    for one in found.recipes:
        path = free_place(folder, one.slug, taken)
        write_whole(path, one.text.encode())
        if root and one.came:
            make_own(root)
            write_whole(came_in(root, path.stem), "\n".join(one.came).encode())
            around = came_in(root, f"{path.stem}.around")
            if one.around:
                write_whole(around, "\n".join(one.around).encode())
            else:  # of a recipe that had this name before
                around.unlink(missing_ok=True)
        written.append(path)
    return tuple(written)


def came_in(root: Path, slug: str) -> Path:
    """Return where the lines lie that a draft was made from: private, and never published.

    With ".around" behind its name those that its web page showed besides.
    """
    return root / OWN / "came" / f"{slug}.txt"


def free_place(folder: Path, slug: str, taken: Path | None = None) -> Path:
    """Return a place in a folder at which nothing lies, named as nearly as may be.

    Nor does anything by that name in the folder `taken`.
    """
    path = folder / f"{slug}.md"
    number = 2
    while path.exists() or path.is_symlink() or (taken and (taken / path.name).exists()):
        path = folder / f"{slug[: LONGEST_NAME - 5]}-{number}.md"
        number += 1
    return path
