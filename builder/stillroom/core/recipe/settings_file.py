"""A book's mkdocs.yml as MkDocs reads it, with the line of every setting.

What it inherits (`INHERIT`) and what stands in the surroundings of the command (`!ENV`) is
resolved as MkDocs does, so that checking and building agree; a setting's words stay words, so
that `country: NO` is Norway. Leaves out what the settings mean: settings.py, book.py.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import yaml

from stillroom.core.recipe.settings import Places
from stillroom.core.words.frontmatter import say_in_words
from stillroom.core.words.problems import Problem, ProblemsFound
from stillroom.core.words.text_files import BY_NUMBER, is_unprintable, read_text

PLUGIN: Final = "stillroom"
_THEME: Final = "material"
_DEEPEST_PARENT: Final = 8
_MOST_PARTS: Final = 5_000
_FETCHED: Final = ("extra_css", "extra_javascript", "theme/logo", "theme/favicon")
_PLAIN: Final = ("site_name", "site_url", "docs_dir", "site_dir")
_FOLDERS: Final = ("docs_dir", "site_dir", "theme/custom_dir")


@dataclass(frozen=True)
class WrittenBook:
    """What mkdocs.yml says of the book, and where: file and line by the setting's path."""

    options: Mapping[str, Any]
    site: Mapping[str, Any]
    places: Places
    problems: tuple[Problem, ...] = ()


def read_settings_file(path: Path) -> WrittenBook:
    """Read a mkdocs.yml; raises ProblemsFound when it is no book's.

    `problems` is what is wrong with it beside the plugin's own settings.
    """
    name = path.name
    top = _Top.of(path, name)
    options, at = _plugin(top.found.get("plugins"))
    if at is None:
        mend = 'Add "plugins:" and under it "  - stillroom".'
        place = top.places.get("plugins", (name, 1))
        raise ProblemsFound([Problem(*place, "The stillroom plugin is not switched on.", mend)])
    problems = [*top.twice, *_wrong_theme(top, name), *_other_letters(top, name)]
    problems += [*_from_elsewhere(top, name), *_no_folders(top, name)]
    places = {"": top.places[at]}
    inner = f"{at}/"
    for key, place in top.places.items():
        if key.startswith(inner):
            places[key[len(inner) :]] = place
        elif key in _PLAIN:
            places[{"site_name": "title"}.get(key, key)] = place
    if not isinstance(options, dict):
        what = f'"{PLUGIN}" is followed by what is no setting of the book.'
        mend = 'Write its settings below it, further in: "country: GB".'
        problems.append(Problem(*places[""], what, mend))
        options = {}
    if not top.found.get("site_name"):
        what = "The book has no name."
        mend = 'Write "site_name: The book of our house".'
        problems.append(Problem(*top.places.get("site_name", (name, 1)), what, mend))
    site = {key: top.found[key] for key in _PLAIN if top.found.get(key) is not None}
    if custom := top.value("theme/custom_dir"):
        site["theme_dir"] = custom
    # a folder that is none is told of; the others are looked through all the same
    site = {key: said for key, said in site.items() if isinstance(said, str)}
    return WrittenBook(options, site, places, tuple(problems))


def _plugin(plugins: Any) -> tuple[Any, str | None]:
    """Return what stands under the plugin's name and where; None where it is not named."""
    rows = plugins.items() if isinstance(plugins, dict) else []
    for key, value in rows:
        if key == PLUGIN:
            return value or {}, f"plugins/{PLUGIN}"
    for place, row in enumerate(plugins if isinstance(plugins, list) else [plugins]):
        if row == PLUGIN:
            return {}, f"plugins/{place}" if isinstance(plugins, list) else "plugins"
        if isinstance(row, dict) and PLUGIN in row:
            return row[PLUGIN] or {}, f"plugins/{place}/{PLUGIN}"
    return {}, None


def _wrong_theme(top: _Top, name: str) -> Iterator[Problem]:
    written = top.found.get("theme")
    theme = written.get("name") if isinstance(written, dict) else written
    if theme != _THEME:
        place = top.places.get("theme/name") or top.places.get("theme") or (name, 1)
        what = f'The book is made for the theme "{_THEME}".'
        said = f' Not for "{theme}".' if isinstance(theme, str) else ""
        yield Problem(*place, what + said, f'Write "theme:" and under it "  name: {_THEME}".')


def _other_letters(top: _Top, name: str) -> Iterator[Problem]:
    """Find a typeface that the theme would fetch from another host."""
    font = top.value("theme/font")
    if font and str(font).lower() != "false":
        place = top.places.get("theme/font") or (name, 1)
        what = '"font:" names letters that would be fetched from another host.'
        yield Problem(*place, what, 'Write "font: false": the book brings letters of its own.')


def _no_folders(top: _Top, name: str) -> Iterator[Problem]:
    """Find a list where the name of a folder is wanted."""
    for key in _FOLDERS:
        if isinstance(top.value(key), dict | list):
            what = f'"{key.split("/")[-1]}" names no folder.'
            yield Problem(*top.places.get(key, (name, 1)), what, 'Write one name: "pages".')


def _from_elsewhere(top: _Top, name: str) -> Iterator[Problem]:
    """Find what would be fetched from another host, which no page of the book may do."""
    for key in _FETCHED:
        value = top.value(key)
        for place, row in enumerate(value if isinstance(value, list) else [value]):
            address = row.get("path") if isinstance(row, dict) else row
            if isinstance(address, str) and re.match(r"(?:[a-z][a-z0-9+.-]*:)?//", address.lower()):
                where = top.places.get(f"{key}/{place}") or top.places.get(key) or (name, 1)
                what = f'"{address}" lies on another host, and pages ask nothing of any other.'
                mend = "Put the file among the pages and name it there, or take the line out."
                yield Problem(*where, what, mend)


def _unprintable(text: str, name: str) -> Iterator[Problem]:
    """Find signs that are written by their number, anywhere in the settings."""
    for event in yaml.parse(text, yaml.SafeLoader) if "\\" in text else ():
        if isinstance(event, yaml.ScalarEvent) and is_unprintable(event.value):
            line = event.start_mark.line + 1 if event.start_mark else 1
            yield Problem(name, line, BY_NUMBER, "Take it out.")


@dataclass
class _Top:
    """The settings at the top of a file and of those it inherits, each with its place."""

    found: dict[str, Any]
    places: dict[str, tuple[str, int]]
    twice: tuple[Problem, ...] = ()
    """Names that stand twice: which of the two is meant nobody can tell."""

    def value(self, path: str) -> Any:
        """Return what is written at a path such as "theme/logo", None where nothing is."""
        value: Any = self.found
        for part in path.split("/"):
            value = value.get(part) if isinstance(value, dict) else None
        return value

    @classmethod
    def of(cls, path: Path, name: str, below: tuple[Path, ...] = ()) -> _Top:
        text = read_text(path, name)
        try:
            node = yaml.compose(text, yaml.SafeLoader)
        except yaml.MarkedYAMLError as error:
            raise ProblemsFound([say_in_words(error, name, 1)]) from None
        except (yaml.YAMLError, RecursionError):
            what = "The settings could not be read."
            raise ProblemsFound([Problem(name, 1, what, "Begin from the demo book's.")]) from None
        if node is None:
            return cls({}, {})
        if not isinstance(node, yaml.MappingNode):
            what = "The settings are no list of names, each with a colon."
            raise ProblemsFound([Problem(name, 1, what, 'Write lines such as "site_name: ...".')])
        reader = _Nodes(name)
        top = cls({}, {})
        reader.tell_twice(node)
        if unprintable := tuple(_unprintable(text, name)):
            raise ProblemsFound(unprintable)
        for key, value in node.value:
            wanted = str(key.value)
            if wanted in ("plugins", "theme", "INHERIT", "extra_css", "extra_javascript", *_PLAIN):
                top.places[wanted] = (name, key.start_mark.line + 1)
                top.found[wanted] = reader.plain(value, wanted)
        top.twice = tuple(reader.twice)
        top.places |= {key: place for key, place in reader.places.items() if key not in top.places}
        if parent := top.found.pop("INHERIT", None):
            top = top.over(parent, (*below, path.resolve()))
        return top

    def over(self, said: object, below: tuple[Path, ...]) -> _Top:
        """Return these settings laid over those of the file they inherit.

        `below` are the files that come before it, this one last.
        """
        parent = below[-1].parent / str(said)
        what = ""
        if not isinstance(said, str):
            what = "The settings to build on are one file."
        elif not parent.is_file():
            what = f'The settings to build on, "{parent.name}", are not there.'
        elif parent.resolve() in below or len(below) > _DEEPEST_PARENT:
            what = f'These settings build on themselves, by way of "{parent.name}".'
        if what:
            mend = "Name the file, or take the line out."
            raise ProblemsFound([Problem(*self.places["INHERIT"], what, mend)])
        over = _Top.of(parent, parent.name, below)
        merged = _laid_over(over.found, self.found)
        lists = [key for key, value in self.found.items() if not isinstance(value, dict)]
        kept = {key: where for key, where in over.places.items() if key.split("/")[0] not in lists}
        return _Top(merged, kept | self.places, (*over.twice, *self.twice))


def _laid_over(under: dict[str, Any], over: dict[str, Any]) -> dict[str, Any]:
    merged = dict(under)
    for key, value in over.items():
        below = merged.get(key)
        both = isinstance(below, dict) and isinstance(value, dict)
        merged[key] = _laid_over(below, value) if both else value  # type: ignore[arg-type]
    return merged


class _Nodes:
    """Settings as plain words, their places kept; what MkDocs alone understands is passed over."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.places: dict[str, tuple[str, int]] = {}
        self.left = _MOST_PARTS
        self.twice: list[Problem] = []

    def tell_twice(self, node: yaml.MappingNode) -> None:
        """Keep a problem for each name that stands again in what holds it."""
        seen: set[str] = set()
        for key, _ in node.value:
            name = str(key.value)
            if name in seen:
                line = key.start_mark.line + 1
                what = f'"{name}" stands here twice.'
                self.twice.append(Problem(self.file, line, what, "Keep one of them."))
            seen.add(name)

    def plain(self, node: yaml.Node, path: str) -> Any:
        line = node.start_mark.line + 1
        self.places.setdefault(path, (self.file, line))
        self.left -= 1
        if self.left < 0 or path.count("/") > 12:
            what = "The settings repeat themselves without end."
            raise ProblemsFound([Problem(self.file, line, what, "Write each of them out once.")])
        if node.tag == "!ENV":
            return self._from_surroundings(node, path)
        if isinstance(node, yaml.SequenceNode):
            rows = enumerate(node.value)
            return [self.plain(value, f"{path}/{place}") for place, value in rows]
        if isinstance(node, yaml.MappingNode):
            found = {}
            self.tell_twice(node)
            for key, value in node.value:
                if not isinstance(key, yaml.ScalarNode):
                    line = key.start_mark.line + 1
                    what = "Something in braces or brackets stands before a colon here."
                    mend = "Write a plain word before each colon."
                    raise ProblemsFound([Problem(self.file, line, what, mend)])
                inner = f"{path}/{key.value}".replace("//", "/")
                self.places[inner] = (self.file, key.start_mark.line + 1)
                found[str(key.value)] = self.plain(value, inner)
            return found
        if node.tag.startswith(("tag:yaml.org,2002:python", "!")):
            return None
        plain = isinstance(node, yaml.ScalarNode) and node.style is None
        empty = plain and node.value in ("", "~", "null", "Null", "NULL")
        return None if empty else str(node.value)

    def _from_surroundings(self, node: yaml.Node, path: str) -> Any:
        """Return what `!ENV NAME` or `!ENV [NAME, what else]` stands for."""
        names, default = [node], None
        if isinstance(node, yaml.SequenceNode):
            names = node.value
            if len(names) > 1:
                default = self.plain(names[-1], path)
                names = names[:-1]
        for name in names:
            if str(name.value) in os.environ:
                return os.environ[str(name.value)] or None
        return default
