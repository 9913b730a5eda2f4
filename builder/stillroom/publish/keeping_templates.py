"""Templates as they were compiled for the build before, kept beside the work of recipes.

Jinja knows each by the sum of its text, and by the version of Python and of Jinja; to compile those
of a theme takes longer than to set fifty pages with them.
"""

from __future__ import annotations

import logging
from pathlib import Path
from typing import TYPE_CHECKING, Final

from jinja2 import FileSystemBytecodeCache

from stillroom.saving.shelf import is_ours, shelf_folder

if TYPE_CHECKING:
    from jinja2 import Environment
    from jinja2.bccache import Bucket

_FOLDER: Final = "templates"
_NAMED: Final = "%s.compiled"

log = logging.getLogger(f"mkdocs.plugins.{__name__}")


class _Compiled(FileSystemBytecodeCache):
    """Compiled templates in a folder; where one cannot be kept, it is compiled again."""

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template."""
        try:
            super().dump_bytecode(bucket)
        except OSError as error:
            log.debug("A template is not kept for the next build: %s", error)


def keep_compiled(environment: Environment) -> None:
    """Let templates be taken as they were compiled before, where anything is kept at all."""
    folder = shelf_folder()
    if folder is None:
        return
    place: Path = folder / _FOLDER
    try:
        place.mkdir(parents=True, exist_ok=True, mode=0o700)
        if is_ours(place):
            environment.bytecode_cache = _Compiled(str(place), _NAMED)
    except OSError as error:
        log.debug("No template is kept for the next build: %s", error)
