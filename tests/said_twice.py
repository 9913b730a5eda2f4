"""Pieces of text that Python and the browser's scripts both hold: each should be said once.

Python is read by its own parser, the scripts by the JavaScript grammar of tree-sitter. A piece is a
string with its blanks as "{}"; what no reader sees (classes, keys, patterns) is told by its shape.
"""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from collections.abc import Iterator
from difflib import SequenceMatcher
from pathlib import Path

import tree_sitter_javascript
from tree_sitter import Language, Node, Parser

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "builder" / "stillroom"
SCRIPTS = PACKAGE / "publish" / "assets" / "js"
# a sentence or a part of one: two words with a space between, or one with a blank beside
_WORDS = re.compile(r"[A-Za-zÀ-ÿ]{2,}.*\s|\s.*[A-Za-zÀ-ÿ]{2,}")
_CODE = re.compile(
    r"^[\w-]+$|[<>#;]|^\.|[\s,]\.[a-z]|--|::|\[|\\|^\(max|=|^M\{|\bvar\b|^(?:\w+-)+\w+ |__"
)
NEAR = 0.85


def python_pieces(text: str) -> Iterator[str]:
    """Yield every string of a module but its docstrings, blanks as "{}"."""
    tree = ast.parse(text)
    inside = {
        id(part)
        for node in ast.walk(tree)
        if isinstance(node, ast.JoinedStr)
        for part in node.values
    }
    docs = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield "".join(
                str(part.value) if isinstance(part, ast.Constant) else "{}" for part in node.values
            )
        elif (
            isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and id(node) not in inside | docs
        ):
            yield node.value


def script_pieces(text: bytes) -> Iterator[str]:
    """Yield every string of a script, the blanks of its templates as "{}"."""
    tree = Parser(Language(tree_sitter_javascript.language())).parse(text)
    yield from _strings(tree.root_node, text)


def _strings(node: Node, text: bytes) -> Iterator[str]:
    if node.type == "string":
        yield text[node.start_byte + 1 : node.end_byte - 1].decode()
        return
    if node.type == "template_string":
        parts, at = [], node.start_byte + 1
        for child in node.children:
            if child.type == "template_substitution":
                parts += [text[at : child.start_byte].decode(), "{}"]
                at = child.end_byte
        yield "".join([*parts, text[at : node.end_byte - 1].decode()])
    for child in node.children:
        yield from _strings(child, text)


def words_of_script(text: bytes) -> list[bytes]:
    """Return the signs of a script in order, its comments and blanks left out."""
    found: list[bytes] = []
    waiting = [Parser(Language(tree_sitter_javascript.language())).parse(text).root_node]
    while waiting:
        node = waiting.pop()
        if node.type == "comment":
            continue
        if node.type in ("string", "template_string", "regex") or not node.children:
            found.append(text[node.start_byte : node.end_byte])
        else:
            waiting += reversed(node.children)
    return [one for one in found if one not in (b"", b";")]


def plain(piece: str) -> str:
    """Return a piece as it is compared: every blank alike, quotes straight, one space."""
    bare = re.sub(r"\{[^{}]*\}", "{}", piece).replace("’", "'").replace("“", '"').replace("”", '"')
    return re.sub(r"\s+", " ", bare).strip()


def is_said(piece: str) -> bool:
    """Whether a reader sees such a piece."""
    return bool(_WORDS.search(f"{piece} ")) and not _CODE.search(piece.strip())


def pieces_of_python() -> dict[str, set[str]]:
    """Return what Python says, with the files that hold it."""
    ours: dict[str, set[str]] = defaultdict(set)
    for path in sorted(PACKAGE.rglob("*.py")):
        for piece in python_pieces(path.read_text(encoding="utf-8")):
            if is_said(piece):
                ours[plain(piece)].add(path.relative_to(PACKAGE).as_posix())
    return dict(ours)


def pieces_of_scripts() -> dict[str, set[str]]:
    """Return what the scripts say, with the files that hold it."""
    theirs: dict[str, set[str]] = defaultdict(set)
    for path in sorted(SCRIPTS.rglob("*.js")):
        for piece in script_pieces(path.read_bytes()):
            if is_said(piece):
                theirs[plain(piece)].add(path.relative_to(SCRIPTS).as_posix())
    return dict(theirs)


def said_twice() -> list[tuple[str, str, str, str]]:
    """Return pieces that both hold, alike or nearly: script's words and file, Python's and file."""
    ours, theirs = pieces_of_python(), pieces_of_scripts()
    found = []
    for piece, where in sorted(theirs.items()):
        if piece in ours:
            found.append((piece, min(where), piece, min(ours[piece])))
            continue
        near = [other for other in ours if abs(len(other) - len(piece)) < len(piece) / 2]
        best = max(near, key=lambda other: _likeness(piece, other), default="")
        if best and _likeness(piece, best) >= NEAR and len(piece) > 8:
            found.append((piece, min(where), best, min(ours[best])))
    return found


def _likeness(one: str, other: str) -> float:
    matcher = SequenceMatcher(None, one, other, autojunk=False)
    return matcher.ratio() if matcher.quick_ratio() >= NEAR else 0.0


if __name__ == "__main__":
    for row in said_twice():
        print("\t".join(row))
