"""What may be typed for an argument or an option: a number, a file, a folder.

Each names itself in the help by a plain word, and what cannot be read is told with what to type
instead. Leaves out which file was meant: near_files.py.
"""

from __future__ import annotations

import os
import stat
from pathlib import Path
from typing import Final, Literal

import click


class Number(click.ParamType):  # type: ignore[type-arg]
    """A number, from the least to the most that makes sense; `whole` takes no fraction."""

    name = "number"

    def __init__(
        self, least: float | None = None, most: float | None = None, *, whole: bool = False
    ) -> None:
        self.least, self.most, self.whole = least, most, whole

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> float:
        """Return the number; anything else is told with what would do."""
        said = str(value).strip()
        try:
            number = int(said) if self.whole else float(said.replace(",", "."))
        except ValueError:
            number = float("nan")
        is_in = number == number and abs(number) != float("inf")
        is_in &= self.least is None or number >= self.least
        is_in &= self.most is None or number <= self.most
        if not is_in:
            self.fail(f'"{value}" cannot be taken. {self._wanted()}', param, ctx)
        return number

    def _wanted(self) -> str:
        what = "a whole number" if self.whole else "a number"
        if self.least is not None and self.most is not None:
            return f"Write {what} from {self.least} to {self.most}."
        return (
            f"Write {what}, {self.least} or more." if self.least is not None else f"Write {what}."
        )


class Place(click.ParamType):  # type: ignore[type-arg]
    """A file or a folder to be written, or read where there is one."""

    def __init__(self, sort: Literal["file", "folder"]) -> None:
        self.name = self.sort = sort

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> Path:
        """Return the path; one that is the other of the two is told."""
        path = Path(str(value))
        try:
            mode = path.stat().st_mode
        except (OSError, ValueError):
            return path
        if self.sort == "file" and stat.S_ISDIR(mode):
            self.fail(f'"{value}" is a folder. Name a file.', param, ctx)
        if self.sort == "folder" and stat.S_ISREG(mode):
            self.fail(f'"{value}" is a file. Name a folder.', param, ctx)
        return path


class FileThere(click.ParamType):  # type: ignore[type-arg]
    """A file that is there to be read; `sort` says of what, so that a near one can be named."""

    name = "file"

    def __init__(self, sort: Literal["recipe", "list", "paper"]) -> None:
        self.sort: Literal["recipe", "list", "paper"] = sort

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> Path:
        """Return the path of a file; what is none is told with the one that may be meant."""
        from stillroom.commands.near_files import name_near  # slow to load: it opens the book

        path = Path(str(value))
        try:
            mode = path.stat().st_mode
        except (OSError, ValueError):
            self.fail(f'There is no file "{value}". {name_near(str(value), self.sort)}', param, ctx)
        if stat.S_ISDIR(mode):
            near = name_near(str(value), self.sort)
            self.fail(f'"{value}" is a folder, and a file is asked for. {near}', param, ctx)
        if not os.access(path, os.R_OK):
            self.fail(f'"{value}" may not be read by you. Name another.', param, ctx)
        return path


WHOLE: Final = Number(1, whole=True)
MM: Final = Number(0)
FILE: Final = Place("file")
FOLDER: Final = Place("folder")
RECIPE: Final = FileThere("recipe")
LIST: Final = FileThere("list")
PAPER: Final = FileThere("paper")
