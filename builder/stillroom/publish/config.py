"""What a book's mkdocs.yml may say to the plugin: the settings of core.book, and no others.

MkDocs only has to know their names; core.book checks what is written, for the command and the
plugin alike.
"""

from __future__ import annotations

from typing import Any

from mkdocs.config import config_options as option
from mkdocs.config.base import Config


class StillroomConfig(Config):  # type: ignore[no-untyped-call]  # MkDocs is partly typed
    """The names of the book's settings (see core.book.BookSettings for what each means)."""

    title = option.Optional(option.Type(object))
    recipes = option.Optional(option.Type(object))
    pictures = option.Optional(option.Type(object))
    units = option.Optional(option.Type(object))
    country = option.Optional(option.Type(object))
    altitude_m = option.Optional(option.Type(object))
    language = option.Optional(option.Type(object))
    currency = option.Optional(option.Type(object))
    giving_days = option.Optional(option.Type(object))

    def written(self) -> dict[str, Any]:
        """Return the settings that the book's mkdocs.yml states."""
        return {key: value for key, value in self.items() if value is not None}
