"""The command that opens the desk: a browser page for whoever writes the book."""

from __future__ import annotations

from pathlib import Path

import click

from stillroom.commands.terminal import told_plainly
from stillroom.core.words.problems import Problem, ProblemsFound


@click.command()
@click.argument(
    "folder", default=".", type=click.Path(file_okay=False, path_type=Path), metavar="[FOLDER]"
)
@click.option("--port", default=0, type=click.IntRange(0, 65535), help="Use this port.")
@click.option("--no-browser", is_flag=True, help="Only say the address; open no browser.")
@told_plainly
def desk(folder: Path, port: int, no_browser: bool) -> None:
    """Open the book of FOLDER in a browser, to write it there; an empty one becomes a book."""
    try:
        from stillroom.desk.serving import open_desk
    except ImportError as missing:
        what = f"The desk needs more than is installed ({missing.name})."
        mend = "Install it: pip install -e '.[desk]'"
        raise ProblemsFound([Problem("desk", 1, what, mend)]) from None
    open_desk(folder.resolve(), port, not no_browser, click.echo)
