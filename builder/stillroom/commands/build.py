"""`stillroom build` and `stillroom serve`: the book as a folder for a web host, or to look at.

Exit 0 when all is well, 1 when the book has problems, 2 for wrong usage.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

import click

from stillroom.commands.terminal import called, config_here, told_plainly
from stillroom.core.book import open_book

_STRICT = click.option("--strict", is_flag=True, help="Stop at a warning too.")
_QUIET = click.option("--quiet", "-q", is_flag=True, help="Say only what is wrong or doubtful.")


@click.command()
@_STRICT
@_QUIET
@click.option("--site-dir", metavar="FOLDER", help="Where the site goes; else as mkdocs.yml says.")
@told_plainly
def build(strict: bool, quiet: bool, site_dir: str | None) -> None:
    """Build the book's site, to be put on a web host; its settings are looked at first."""
    config = config_here()
    _run("build", config, strict, quiet, ["--site-dir", site_dir] if site_dir else [])
    if not quiet:
        site = config.parent / site_dir if site_dir else open_book(config).site_dir
        near = Path(os.path.relpath(site)).as_posix()
        there = str(site) if near.startswith("..") else near
        click.echo(f'The book is in the folder "{there}": put all that is in it on a web host.')
        click.echo(f"Look at it here first: {called()} serve")


@click.command()
@_STRICT
@_QUIET
@click.option("--address", metavar="HOST:PORT", help='Where; else "localhost:8000".')
@click.option("--open", "opened", is_flag=True, help="Open it in the browser.")
@told_plainly
def serve(strict: bool, quiet: bool, address: str | None, opened: bool) -> None:
    """Show the book in a browser on this computer, built anew at every save."""
    options = ["--dev-addr", address] if address else []
    _run("serve", config_here(), strict, quiet, [*options, *(["--open"] if opened else [])])


def _run(command: str, config: Path, strict: bool, quiet: bool, options: list[str]) -> None:
    """Build or serve a book; leaves where that does not end well."""
    from stillroom.publish.building import run_checked  # slow to load, and needed here alone

    code = run_checked(command, config, [*(["--strict"] if strict else []), *options], quiet=quiet)
    if code:
        sys.exit(code)
