"""All of the book's scripts as one, for pages that are opened from a disk without a server.

A browser takes no module from a file. Each module becomes a function that gives what it exports, in
the order in which they need each other. It reads how the book's own scripts are written and no
more: what it does not know it refuses.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from posixpath import dirname, join, normpath
from typing import Final

_IMPORT: Final = re.compile(
    r"^import\s+(?:(?P<default>\w+)\s+from\s+|\{(?P<names>[^}]*)\}\s+from\s+)?\"(?P<file>\.{1,2}/[\w/.-]+\.js)\";\n",
    re.MULTILINE,
)
_LATER: Final = re.compile(r"\bimport\(\"(?P<file>\.{1,2}/[\w/.-]+\.js)\"\)")
_EXPORTED: Final = re.compile(
    r"^export\s+(?P<what>(?:async\s+)?(?:function\*?|class|const|let)\s+(?P<name>\w+))",
    re.MULTILINE,
)
_DEFAULT: Final = re.compile(r"^export\s+default\s+", re.MULTILINE)
_LIST: Final = re.compile(r"^export\s+\{(?P<names>[^}]*)\};\n", re.MULTILINE)
_NOWHERE: Final = "https://book.invalid/assets/js/x.js"
"""Stands for the address of a script, from which others are reckoned; nothing is asked of it."""


class _Bundle:
    """The modules gathered so far, each after those that it needs."""

    def __init__(self, texts: Mapping[str, str]) -> None:
        self.texts = texts
        self.pieces: list[str] = []
        self.seen: dict[str, bool] = {}

    def add(self, file: str) -> str:
        """Gather a module with all that it needs, and return the name of what it gives."""
        name = "module_" + re.sub(r"\W", "_", file.removesuffix(".js"))
        if self.seen.get(file) is False:
            raise ValueError(f"{file} needs itself: it cannot stand in one script.")
        if file in self.seen:
            return name
        if file not in self.texts:
            raise ValueError(f"{file} is not among the scripts.")
        self.seen[file] = False

        def other(found: re.Match[str]) -> str:
            return self.add(normpath(join(dirname(file), found["file"])))

        def imported(found: re.Match[str]) -> str:
            given = other(found)
            if found["default"]:
                return f"const {found['default']} = {given}.default;\n"
            if found["names"] is None:
                return ""
            names = re.sub(r"\b(\w+)\s+as\s+(\w+)\b", r"\1: \2", " ".join(found["names"].split()))
            return f"const {{ {names.strip(' ,')} }} = {given};\n"

        text = _IMPORT.sub(imported, self.texts[file])
        text = _LATER.sub(lambda found: f"Promise.resolve({other(found)})", text)
        self.pieces.append(_as_function(text, name, file))
        self.seen[file] = True
        return name


def _as_function(text: str, name: str, file: str) -> str:
    """Return a module's words as a function that gives what it exports."""
    text = _DEFAULT.sub("const theDefault = ", text)
    given = [found["name"] for found in _EXPORTED.finditer(text)]
    given += ["default: theDefault"] if "const theDefault = " in text else []
    text = _EXPORTED.sub(lambda found: found["what"], text)
    for found in _LIST.finditer(text):
        given += [part.strip() for part in found["names"].split(",") if part.strip()]
    text = _LIST.sub("", text).replace("import.meta.url", json.dumps(_NOWHERE))
    if left := re.search(r"^\s*(?:import|export)\b.*", text, re.MULTILINE):
        raise ValueError(f"{file}: this cannot stand in one script: {left[0]}")
    return f"const {name} = (() => {{\n{text}\nreturn {{ {', '.join(given)} }};\n}})();\n"


def one_script(texts: Mapping[str, str], first: str, fetched: Mapping[str, str]) -> str:
    """Return the module `first` of `texts` with all that it needs, as one plain script.

    `fetched` are the files that the scripts ask for, by the ends of their addresses, with their
    words. Raises ValueError for a script that is written otherwise than the book's are.
    """
    bundle = _Bundle(texts)
    bundle.add(first)
    answers = json.dumps(dict(fetched), ensure_ascii=False)
    return (
        '"use strict";\n(() => {\n'
        f"const beside = {answers};\n"
        "const fetch = async (asked) => {\n"
        "  const name = Object.keys(beside).find((end) => String(asked).endsWith(end));\n"
        '  return new Response(name ? beside[name] : "", { status: name ? 200 : 404 });\n'
        "};\n" + "".join(bundle.pieces) + "})();\n"
    )
