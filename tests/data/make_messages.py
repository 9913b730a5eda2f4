"""Write every message the program can print into messages.tsv, to be read as a whole.

Walks the code for what is told (`Problem`, `Unreadable`) and for wrong usage (`UsageError`,
`BadParameter`), and the sentences of the rooms (said/); a part that is filled in when it is said
stands as "…". Run it after a message was added or reworded: `python tests/data/make_messages.py`.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "builder" / "stillroom"
TABLE = Path(__file__).with_name("messages.tsv")
# which arguments of a call are words for the reader
SAID = {
    "Problem": slice(2, 4),
    "Unreadable": slice(0, 2),
    "UsageError": slice(0, 1),
    "BadParameter": slice(0, 1),
    "ClickException": slice(0, 1),
    "PluginError": slice(0, 1),
    "_Refused": slice(1, 3),
    "told_at": slice(0, 2),
    "tell": slice(1, 3),
    "_told": slice(1, 3),
    "_tell": slice(2, 4),
}


def words(node: ast.expr, names: dict[str, list[str]]) -> list[str]:
    """Return every text an argument may be."""
    if isinstance(node, ast.Constant):
        return [node.value] if isinstance(node.value, str) else []
    if isinstance(node, ast.JoinedStr):
        parts = [part.value if isinstance(part, ast.Constant) else "…" for part in node.values]
        return ["".join(str(part) for part in parts)]
    if isinstance(node, ast.IfExp):
        return words(node.body, names) + words(node.orelse, names)
    if isinstance(node, ast.BoolOp):
        return [text for value in node.values for text in words(value, names)]
    if isinstance(node, ast.BinOp):
        left, right = words(node.left, names) or ["…"], words(node.right, names) or ["…"]
        return [f"{one}{two}" for one in left for two in right]
    if isinstance(node, ast.Name):
        return names.get(node.id, [])
    if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "format":
        return words(node.func.value, names)  # type: ignore[attr-defined]
    return []


def texts_of(tree: ast.AST) -> dict[str, list[str]]:
    """Return the texts that each name of a module is ever given."""
    found: dict[str, list[str]] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None:
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            for target in targets:
                pairs = [(target, node.value)]
                if isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple):
                    pairs = list(zip(target.elts, node.value.elts, strict=False))
                for name, value in pairs:
                    if isinstance(name, ast.Name):
                        found.setdefault(name.id, []).extend(words(value, found))
    return found


def tables_of(tree: ast.AST) -> Iterator[str]:
    """Yield the texts of tables of mends and of what is said (`_MENDS`, `_WHY`, `_IN_WORDS`)."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Assign | ast.AnnAssign):
            continue
        targets = node.targets if isinstance(node, ast.Assign) else [node.target]
        named = [target.id for target in targets if isinstance(target, ast.Name)]
        if named and named[0] in ("_MENDS", "_WHY", "_IN_WORDS", "_PLAIN", "_HOW_TO_WRITE"):
            rows = node.value.elts if isinstance(node.value, ast.Tuple) else [node.value]
            for row in rows:
                # the first of a row is what another program says, and is looked for only
                parts = row.elts[1:] if isinstance(row, ast.Tuple) else [row]
                for part in parts:
                    yield from _constants(part)


def _constants(node: ast.AST | None) -> Iterator[str]:
    for inner in ast.walk(node) if node is not None else ():
        if isinstance(inner, ast.Constant) and isinstance(inner.value, str):
            yield inner.value


@cache
def messages() -> list[tuple[str, str]]:
    """Return the module and the words of every message, in order, each once."""
    found = set()
    for path in sorted(PACKAGE.rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names = texts_of(tree)
        module = path.relative_to(PACKAGE).as_posix()
        for node in ast.walk(tree):
            if not isinstance(node, ast.Call):
                continue
            called = getattr(node.func, "attr", getattr(node.func, "id", ""))
            if called not in SAID:
                continue
            for argument in node.args[SAID[called]]:
                for text in words(argument, names):
                    found.add((module, " ".join(text.split())))
        found |= {(module, " ".join(text.split())) for text in tables_of(tree) if " " in text}
    return sorted(pair for pair in {*found, *sentences()} if pair[1])


def sentences() -> Iterator[tuple[str, str]]:
    """Yield what stands in the catalogues of the rooms, a blank as "…"."""
    for path in sorted(PACKAGE.rglob("said/en.yml")):
        module = path.relative_to(PACKAGE).as_posix()
        for group in yaml.safe_load(path.read_text(encoding="utf-8")).values():
            for phrase in group.values():
                for text in _texts(phrase):
                    yield module, " ".join(re.sub(r"\{\w+\}", "…", text).split())


def _texts(phrase: object) -> Iterator[str]:
    if isinstance(phrase, str):
        yield phrase
    elif isinstance(phrase, dict | list):
        for part in phrase.values() if isinstance(phrase, dict) else phrase:
            yield from _texts(part)


def table() -> str:
    """Return the whole table as it stands in the file."""
    rows = [f"{module}\t{text}" for module, text in messages()]
    return "\n".join(["where\twhat is said", *rows]) + "\n"


if __name__ == "__main__":
    TABLE.write_text(table(), encoding="utf-8")
