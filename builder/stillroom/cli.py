"""The command: its name, its list of commands, and where each is found.

Nothing of a book is loaded here: whoever asks for help or for the version waits for no recipe, and
whoever scales one waits for no paper. Leaves out the commands: commands/, one file a group.
"""

from __future__ import annotations

import atexit
import gc
import io
import os
import sys
from dataclasses import dataclass
from importlib import import_module
from typing import Any, Final

import click


@dataclass(frozen=True)
class _Place:
    """Where a command is found: its module, its name there; and the first words of its help."""

    module: str
    name: str
    help: str

    def load(self) -> click.Command:
        name = f"stillroom.commands.{self.module}"
        if name not in sys.modules:
            # no recipe is read by another package's rules; to look for some is to read every one
            os.environ.setdefault("PYDANTIC_DISABLE_PLUGINS", "true")
            _load_to_stay(name)
        found = getattr(sys.modules[name], self.name)
        assert isinstance(found, click.Command)
        return found


def _load_to_stay(name: str) -> None:
    """Load a module and all that it needs, which stay until the command has answered.

    To look through them for what may go, while they are loaded and after, was a fifth of a start.
    """
    gc.disable()
    try:
        import_module(name)
        if "stillroom.core.words.patterns" in sys.modules:
            import_module("stillroom.saving.kept_patterns").take_patterns()
    finally:
        gc.freeze()
        atexit.register(gc.freeze)  # nor once more at the end, when all of it goes
        gc.set_threshold(50_000, 20, 20)
        gc.enable()


COMMANDS: Final = {
    "bring": _Place(
        "bring",
        "bring_command",
        "Make drafts of the recipes in FILES: texts, saved pages, letters, Word and OpenDocument.",
    ),
    "build": _Place(
        "build",
        "build",
        "Build the book's site, to be put on a web host; its settings are looked at first.",
    ),
    "check": _Place(
        "check", "check", "Read the whole book, or the FILES named, and list every problem."
    ),
    "close-year": _Place(
        "giving",
        "close_year_command",
        "Begin next year's list from GIVING_LIST, its log and the pack that went out.",
    ),
    "dates": _Place(
        "dates",
        "dates",
        "Count a recipe's dates back from a giving day or forward from a start.",
    ),
    "desk": _Place(
        "desk",
        "desk",
        "Open the book of FOLDER in a browser, to write it there; an empty one becomes a book.",
    ),
    "giving-list": _Place(
        "first_list",
        "giving_list_command",
        "Ask who is given something, and write a whole giving list for this book.",
    ),
    "giving-schema": _Place(
        "giving",
        "giving_schema",
        "Print what a giving list may state, in the form that text editors read (JSON Schema).",
    ),
    "new": _Place(
        "start",
        "new_command",
        "Begin a recipe called TITLE: a whole file, with notes, to write over.",
    ),
    "note": _Place(
        "noting",
        "note_command",
        "Note WHAT happened to NAME: begun, bottled, failed, bought, given, thanked and more.",
    ),
    "pack": _Place(
        "giving", "pack", "Plan who is given what and write the private pack of GIVING_LIST."
    ),
    "print": _Place(
        "printing", "print_group", "Print cards, tags, sheets, the year or the whole book to PDF."
    ),
    "scale": _Place(
        "scale", "scale", "Scale a recipe to what it makes, what it fills or what is on hand."
    ),
    "schema": _Place(
        "check",
        "schema",
        "Print what a recipe may state, in the form that text editors read (JSON Schema).",
    ),
    "serve": _Place(
        "build", "serve", "Show the book in a browser on this computer, built anew at every save."
    ),
    "start": _Place(
        "start",
        "start",
        "Begin a book in FOLDER: settings, pages and a first recipe, which build at once.",
    ),
    "strength": _Place(
        "strength",
        "strength",
        "Tell how strong a recipe comes out, how to cut a spirit, or the fold of vanilla pods.",
    ),
}
"""Every command. A test holds the words against each command's own help."""


def _in_plain_words(
    wrong: click.UsageError, group: click.Group, ctx: click.Context
) -> click.UsageError:
    from stillroom.commands.refusals import in_plain_words  # nobody who types rightly waits for it

    return in_plain_words(wrong, group, ctx)


class _Commands(click.Group):
    def list_commands(self, ctx: click.Context) -> list[str]:
        return sorted(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        place = COMMANDS.get(cmd_name)
        return place.load() if place else None

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        try:
            return super().parse_args(ctx, args)
        except click.UsageError as wrong:
            raise _in_plain_words(wrong, self, ctx) from None

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except click.UsageError as wrong:
            raise _in_plain_words(wrong, self, ctx) from None

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        room = formatter.width - 6 - max(map(len, COMMANDS))
        rows = [
            (name, click.Command(name, help=place.help).get_short_help_str(room))
            for name, place in sorted(COMMANDS.items())
        ]
        with formatter.section("Commands"):
            formatter.write_dl(rows)


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="stillroom")
def main() -> None:
    """Publish a book of homemade presents, and plan who is given what."""
    write_utf8()


def write_utf8() -> None:
    """Write UTF-8 wherever the output goes.

    On Windows a file or pipe is else written in the system's own page, which has no "⅛" and no
    "−": the command would end in a traceback, or an amount be lost.
    """
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper) and stream.encoding.lower() != "utf-8":
            stream.reconfigure(encoding="utf-8")


if __name__ == "__main__":
    main()
