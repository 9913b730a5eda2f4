"""What a book's mkdocs.yml may say to the plugin: the settings of core.settings, and no others.

MkDocs only has to know their names; core.settings checks what is written, for the command and the
plugin alike.
"""

from __future__ import annotations

from markupsafe import escape
from mkdocs.config import config_options as option
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig


class StillroomConfig(Config):  # type: ignore[no-untyped-call]  # MkDocs is partly typed
    """The names of the book's settings (see core.settings.BookSettings for what each means)."""

    title = option.Optional(option.Type(object))
    recipes = option.Optional(option.Type(object))
    larder = option.Optional(option.Type(object))
    pictures = option.Optional(option.Type(object))
    units = option.Optional(option.Type(object))
    country = option.Optional(option.Type(object))
    altitude_m = option.Optional(option.Type(object))
    language = option.Optional(option.Type(object))
    currency = option.Optional(option.Type(object))
    send_us = option.Optional(option.Type(object))
    design = option.Optional(option.Type(object))
    family_mark = option.Optional(option.Type(object))
    labels = option.Optional(option.Type(object))
    printer_feed = option.Optional(option.Type(object))
    giving_days = option.Optional(option.Type(object))
    family_book = option.Optional(option.Type(object))


_IN_HEAD = ("site_description", "site_author")


def escape_head(config: MkDocsConfig) -> None:
    """Make words of what the theme writes into each page's head as HTML: a quote would end it."""
    for name in _IN_HEAD:
        if config[name]:
            config[name] = str(escape(config[name]))
