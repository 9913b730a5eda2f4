"""The part of a drawing that a view shows: a tile of a border carries no more than that.

A drawing of anything but lines and simple shapes is left whole. Leaves out where tiles stand
(borders.py).
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final
from xml.etree import ElementTree

View = tuple[float, float, float, float]
"""Left, top, width and height in the drawing's own units."""
Point = tuple[float, float]
_Matrix = tuple[float, float, float, float, float, float]

_SHAPES: Final = frozenset({"path", "circle", "ellipse", "rect", "line"})
_SVG: Final = "{http://www.w3.org/2000/svg}"
_REFERS: Final = frozenset({"clip-path", "mask", "filter", "style", "class"})
_NUMBER: Final = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?"
_STEP: Final = re.compile(rf"([MLHVCSQTZmlhvcsqtz])|({_NUMBER})|([^\s,])")
_TAKES: Final = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2}
_TURN: Final = re.compile(r"\s*(\w+)\s*\(([^)]*)\)\s*")
_SAME: Final[_Matrix] = (1, 0, 0, 1, 0, 0)


class _NotSimple(Exception):
    """The drawing holds something whose extent is not worked out here."""


@lru_cache(maxsize=512)
def cut_drawing(svg: str, view: View) -> str:
    """Return what stands in a drawing's <svg>, without the shapes of which a view shows nothing.

    >>> drawn = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L2 2M50 50H60"/></svg>'
    >>> cut_drawing(drawn, (40.0, 40.0, 30.0, 30.0))
    '<path d="M50 50H60" />'
    """
    root = ElementTree.fromstring(svg)
    margin = 2 * max((float(one.get("stroke-width", 1)) for one in root.iter()), default=1)
    left, top, width, height = view
    seen = (left - margin, top - margin, left + width + margin, top + height + margin)
    try:
        for child in list(root):
            _cut(root, child, _SAME, seen)
    except _NotSimple:
        root = ElementTree.fromstring(svg)
    said = "".join(ElementTree.tostring(child, encoding="unicode") for child in root)
    return said.replace("ns0:", "").replace(' xmlns:ns0="http://www.w3.org/2000/svg"', "")


def _cut(parent: ElementTree.Element, one: ElementTree.Element, place: _Matrix, seen: View) -> None:
    name = one.tag.removeprefix(_SVG)
    if (name != "g" and name not in _SHAPES) or _REFERS & set(one.attrib):
        raise _NotSimple
    place = _times(place, _matrix(one.get("transform", "")))
    if name == "g":
        for child in list(one):
            _cut(one, child, place, seen)
        if len(one) == 0:
            parent.remove(one)
    elif name == "path":
        kept = [said for said, points in _runs(one.get("d", "")) if _meets(points, place, seen)]
        one.set("d", "".join(kept))
        if not kept:
            parent.remove(one)
    elif not _meets(_corners(name, one), place, seen):
        parent.remove(one)


def _runs(path: str) -> Iterator[tuple[str, list[Point]]]:
    """Yield each stretch of a path that begins anew, with points that its lines stay between."""
    said, points, command, figures = "", list[Point](), "", list[float]()
    at: Point = (0, 0)
    for letter, number, other in _STEP.findall(path):
        if other or not (letter or command) or (letter == "m" and said):
            raise _NotSimple  # an arc; a stretch that begins where the one before ended
        if letter:
            if letter == "M" and said:
                yield said, points
                said, points = "", []
            elif letter in "Zz":
                at = points[0]
            command, figures = letter, []
            said += letter
            continue
        said += number if said[-1:].isalpha() or number[0] in "-+" else f" {number}"
        figures.append(float(number))
        if len(figures) == _TAKES.get(command.upper(), 1):
            points += _reached(command, figures, at)
            at, figures = points[-1], []
    if said:
        yield said, points


def _reached(command: str, figures: list[float], at: Point) -> list[Point]:
    """Return points that one step of a path stays between, its end last."""
    x, y = at if command.islower() else (0.0, 0.0)
    if command in "Hh":
        return [(x + figures[0], at[1])]
    if command in "Vv":
        return [(at[0], y + figures[0])]
    told = [(x + dx, y + dy) for dx, dy in zip(figures[::2], figures[1::2], strict=True)]
    if command in "STst":  # the point the curve is bent to is the last one's, mirrored
        far = max(abs(a - b) for point in told for a, b in zip(point, at, strict=True))
        return [(at[0] - far, at[1] - far), (at[0] + far, at[1] + far), *told]
    return told


def _corners(name: str, one: ElementTree.Element) -> list[Point]:
    def read(key: str) -> float:
        return float(one.get(key, 0))

    if name == "line":
        return [(read("x1"), read("y1")), (read("x2"), read("y2"))]
    if name == "rect":
        x, y = read("x"), read("y")
        wide, high = read("width"), read("height")
        return [(x, y), (x + wide, y), (x, y + high), (x + wide, y + high)]
    across, down = (read("r"), read("r")) if name == "circle" else (read("rx"), read("ry"))
    x, y = read("cx"), read("cy")
    return [(x + a * across, y + b * down) for a in (-1, 1) for b in (-1, 1)]


def _meets(points: list[Point], place: _Matrix, seen: View) -> bool:
    a, b, c, d, e, f = place
    xs = [a * x + c * y + e for x, y in points]
    ys = [b * x + d * y + f for x, y in points]
    left, top, right, bottom = seen
    return bool(xs) and not (max(xs) < left or min(xs) > right or max(ys) < top or min(ys) > bottom)


def _matrix(transform: str) -> _Matrix:
    whole, read = _SAME, 0
    for found in _TURN.finditer(transform):
        figures = [float(one) for one in re.findall(_NUMBER, found[2])]
        whole = _times(whole, _turn(found[1], figures))
        read += len(found[0])
    if read != len(transform):
        raise _NotSimple
    return whole


def _turn(name: str, figures: list[float]) -> _Matrix:
    if name == "translate" and figures:
        return (1, 0, 0, 1, figures[0], figures[1] if len(figures) > 1 else 0)
    if name == "scale" and figures:
        return (figures[0], 0, 0, figures[-1], 0, 0)
    if name == "matrix" and len(figures) == 6:
        a, b, c, d, e, f = figures
        return (a, b, c, d, e, f)
    if name == "rotate" and len(figures) in (1, 3):
        sine, cosine = math.sin(math.radians(figures[0])), math.cos(math.radians(figures[0]))
        x, y = figures[1:] if len(figures) == 3 else (0.0, 0.0)
        about = (1.0, 0.0, 0.0, 1.0, x, y)
        turned = _times(about, (cosine, sine, -sine, cosine, 0, 0))
        return _times(turned, (1, 0, 0, 1, -x, -y))
    raise _NotSimple


def _times(one: _Matrix, other: _Matrix) -> _Matrix:
    a, b, c, d, e, f = one
    g, h, i, j, k, m = other
    return (
        a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j,
        a * k + c * m + e, b * k + d * m + f,
    )  # fmt: skip
