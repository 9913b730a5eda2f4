"""The browser's scripts as they are published: our own files, and the sentences of every room.

A script is published without its comments and its indentation (rjsmin), so that notes to builders
cost a reader nothing; the files themselves are as they were written, and no step is needed to work
on them. The sentences of each room become small scripts in `data/said/`, in the language spoken.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path, PurePosixPath

import rjsmin  # type: ignore[import-untyped]

from stillroom.core.words.said import read_room, spoken
from stillroom.publish.templating import HERE

SCRIPTS = HERE / "assets" / "js"
SPEAKING = {
    "words": "stillroom.core.words",
    "amounts": "stillroom.core.amounts",
    "when": "stillroom.core.when",
    "batch": "stillroom.core.batch",
    "size": "stillroom.core.size",
    "paper": "stillroom.core.paper",
    "pages": "stillroom.publish",
}
"""The rooms whose sentences the browser says, by the name of their scripts."""

DEFINE = "js/elements/define.js"
_ELEMENT = re.compile(r'^  "(stillroom-[\w-]+)": \(\) => import\("\./([\w-]+\.js)"\)', re.M)
_IMPORT = re.compile(r'^(?:import|export)\s[^;]*?from\s*"(\.[^"]+)"|^import\s*"(\.[^"]+)"', re.M)


def list_scripts() -> Iterator[tuple[str, str]]:
    """Return each script with its path below the folder of our own files, as it is published."""
    for path in sorted(SCRIPTS.rglob("*.js")):
        name = path.relative_to(SCRIPTS).as_posix()
        yield f"js/{name}", str(rjsmin.jsmin(path.read_text(encoding="utf-8")))
    yield from list_said()


def list_sources() -> dict[str, str]:
    """Return every script as it was written, and the sentences they say, by their paths."""
    own = {
        f"js/{path.relative_to(SCRIPTS).as_posix()}": path.read_text(encoding="utf-8")
        for path in SCRIPTS.rglob("*.js")
    }
    return own | dict(list_said())


def list_said() -> Iterator[tuple[str, str]]:
    """Return the sentences of every room as scripts: "data/said/when-season.js"."""
    for name, room in SPEAKING.items():
        for group, phrases in read_room(room, spoken()).items():
            catalogue = {"language": spoken(), "phrases": phrases}
            words = json.dumps(catalogue, ensure_ascii=False, separators=(",", ":"))
            yield f"data/said/{name}-{group}.js", f"export default {words};\n"


@cache
def reach_of(script: str) -> tuple[str, ...]:
    """Return a script and every one that it asks for as it starts, by their paths.

    >>> "js/amounts/amounts.js" in reach_of("js/amounts/tins.js")
    True
    """
    found = [script]
    for name in found:
        path = SCRIPTS.parent / name
        if not path.is_file():  # sentences: they ask for nothing
            continue
        for match in _IMPORT.finditer(path.read_text(encoding="utf-8")):
            asked = _below(PurePosixPath(name).parent, match[1] or match[2])
            if asked not in found:
                found.append(asked)
    return tuple(found)


@cache
def _scripts_of_elements() -> dict[str, str]:
    """Return the script of each element that a page fetches at once, as define.js has it."""
    at_once, _, _ = (SCRIPTS.parent / DEFINE).read_text(encoding="utf-8").partition("WHEN_NEAR")
    return {name: f"js/elements/{script}" for name, script in _ELEMENT.findall(at_once)}


def scripts_of_page(html: str) -> tuple[str, ...]:
    """Return every script that a page asks for as it opens, so that all are fetched at once.

    >>> "js/elements/browse-element.js" in scripts_of_page("<stillroom-browse>")
    True
    """
    named = [script for name, script in _scripts_of_elements().items() if f"<{name}" in html]
    return tuple(dict.fromkeys(path for name in (DEFINE, *named) for path in reach_of(name)))


def _below(folder: PurePosixPath, asked: str) -> str:
    parts = list(folder.parts)
    for step in PurePosixPath(asked).parts:
        if step == "..":
            parts.pop()
        elif step != ".":
            parts.append(step)
    return "/".join(parts)


def lay_scripts(folder: Path) -> None:
    """Write the scripts with their sentences into a folder, as they were written: for tests."""
    for path in SCRIPTS.rglob("*.js"):
        place = folder / "js" / path.relative_to(SCRIPTS)
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(path.read_text(encoding="utf-8"), encoding="utf-8")
    for name, words in list_said():
        place = folder / name
        place.parent.mkdir(parents=True, exist_ok=True)
        place.write_text(words, encoding="utf-8")
