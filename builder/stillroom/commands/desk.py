"""The command that opens the desk: a browser page for whoever writes the book."""

from __future__ import annotations

from pathlib import Path
from typing import Final

import click

from stillroom.commands.terminal import told_plainly
from stillroom.commands.typed_words import FOLDER, Number

_INSTALL: Final = 'python -m pip install "stillroom[desk]"'


@click.command()
@click.argument("folder", default=".", type=FOLDER, metavar="[FOLDER]")
@click.option(
    "--port",
    default=0,
    type=Number(0, 65535, whole=True),
    help="The number at the end of its address; any that is free if not said.",
)
@click.option("--no-browser", is_flag=True, help="Only say the address; open no browser.")
@told_plainly
def desk(folder: Path, port: int, no_browser: bool) -> None:
    """Open the book of FOLDER in a browser, to write it there; an empty one becomes a book."""
    try:
        from stillroom.desk.serving import open_desk
    except ImportError as missing:
        what = f"The desk needs more than is installed ({missing.name})."
        raise click.ClickException(f"{what} Install it with: {_INSTALL}") from None
    open_desk(folder.resolve(), port, not no_browser, click.echo)
