"""The templates of the book's own pages: one Jinja environment, a handful of filters.

Knows nothing of MkDocs: the theme's own templates (templates/theme) are handed to it as a folder.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping, MutableMapping
from datetime import date
from functools import cache
from pathlib import Path
from types import CodeType
from typing import Any

import babel.dates
import markdown
from jinja2 import Environment, FileSystemLoader, StrictUndefined, Template
from markupsafe import Markup, escape

from stillroom.publish.clean_html import clean_prose

HERE = Path(__file__).parent
TEMPLATES = HERE / "templates"
THEME = TEMPLATES / "theme"

PROSE_EXTENSIONS = ("tables", "attr_list", "sane_lists", "footnotes", "def_list")


_NEEDS_ESCAPING = re.compile("[&<>\"']").search


def _escape(value: Any) -> str:
    """Escape what a template shows as `markupsafe.escape` does; most of it needs nothing.

    >>> _escape("Salt"), _escape("<b>"), _escape(Markup("<b>")), _escape(1.5)
    ('Salt', Markup('&lt;b&gt;'), Markup('<b>'), '1.5')
    """
    made = type(value)
    if made is str:
        return escape(value) if _NEEDS_ESCAPING(value) else value
    if made is Markup:
        return value  # type: ignore[no-any-return]
    return str(value) if made in (int, float) else escape(value)


class _Template(Template):
    """A template that escapes what it shows without making an object of each word."""

    @classmethod
    def from_code(
        cls,
        environment: Environment,
        code: CodeType,
        globals: MutableMapping[str, Any],  # as Jinja names it
        uptodate: Callable[[], bool] | None = None,
    ) -> Template:
        """Return the template that compiled code makes."""
        made = super().from_code(environment, code, globals, uptodate)
        made.root_render_func.__globals__["escape"] = _escape
        return made


class _Environment(Environment):
    template_class = _Template


@cache
def environment() -> Environment:
    """Return the environment in which the book's own templates are set."""
    made = _Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=False,  # they lie in the package: to look again for each page is in vain
    )
    made.filters["prose"] = show_prose
    made.filters["prose_line"] = show_prose_line
    made.filters["day"] = show_day
    made.filters["json_script"] = show_json
    made.filters["anchor"] = make_anchor
    return made


def render(template: str, context: Mapping[str, Any]) -> str:
    """Return a template of the book filled with `context`; a missing name is an error."""
    return environment().get_template(template).render(**context)


_MARKED = re.compile(
    r"^(?:[\W\d_]|$)|[^\w\ue000\xa0\n ,.:;?!%°/()’'“”\"–—-]|_|  |\s\n|\n(?:[\W\d_]|$)|[ \xa0]$"
)
"""What Markdown may read otherwise than as words and stops, in lines that are run on."""


@cache  # to make one takes ten times as long as to read a sentence with it
def _prose_reader() -> markdown.Markdown:
    return markdown.Markdown(extensions=list(PROSE_EXTENSIONS))


def show_prose(text: str) -> Markup:
    """Turn Markdown into HTML.

    >>> str(show_prose("Two *kinds*."))
    '<p>Two <em>kinds</em>.</p>'
    """
    paragraphs = text.split("\n\n")
    if not any(map(_MARKED.search, paragraphs)):
        return Markup("\n".join(f"<p>{one}</p>" for one in paragraphs))
    return Markup(clean_prose(_prose_reader().reset().convert(text)))


def show_prose_line(text: str) -> Markup:
    """Turn one line of Markdown into HTML without a paragraph around it.

    >>> str(show_prose_line("Stir *well*."))
    'Stir <em>well</em>.'
    """
    if not _MARKED.search(text):
        return Markup(text)
    html = show_prose(text)
    one = html.startswith("<p>") and html.endswith("</p>") and html.count("<p>") == 1
    return Markup(html[3:-4]) if one else html


def show_plain(words: object) -> Markup:
    """Return words as HTML that shows them and does nothing else; tags in them are left out.

    Material writes titles into its pages and into the search as HTML.

    >>> str(show_plain("Salt &amp; <img src=x> pepper")), str(show_plain("Salt & pepper"))
    ('Salt &amp; pepper', 'Salt &amp; pepper')
    """
    return escape(Markup(str(words)).striptags())


def show_day(day: date, language: str = "en_GB", form: str = "d MMMM y") -> Markup:
    """Return a date in words inside a `time` element.

    >>> str(show_day(date(2026, 12, 19)))
    '<time datetime="2026-12-19">19 December 2026</time>'
    """
    words = say_day(day, language, form)
    return Markup('<time datetime="{}">{}</time>').format(day.isoformat(), words)


def say_day(day: date, language: str = "en_GB", form: str = "d MMMM y") -> str:
    """Return a date in words.

    >>> say_day(date(2026, 12, 19), "en_US", "MMMM d, y")
    'December 19, 2026'
    """
    return babel.dates.format_date(day, form, locale=language)


def show_json(value: Any) -> Markup:
    r"""Return JSON that can stand inside a script element: no tag can be closed by it.

    >>> str(show_json({"a": "</script>"}))
    '{"a":"\\u003c/script>"}'
    """
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"), sort_keys=True)
    return Markup(text.replace("<", "\\u003c").replace("&", "\\u0026"))


def make_anchor(words: str) -> str:
    """Turn a heading into a name that an address can end with.

    >>> make_anchor("If it sets too soft")
    'if-it-sets-too-soft'
    """
    return re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-") or "section"
