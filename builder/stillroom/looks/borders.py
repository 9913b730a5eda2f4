"""A border set round a box of any size.

Corners stand as they are drawn, sides are repeated a whole number of times, as CSS sets
`border-image: ... round`.
"""

from __future__ import annotations

from collections.abc import Iterator

from stillroom.looks.card_designs import Design, border_side
from stillroom.looks.cut_drawing import View, cut_drawing


def draw_border(design: Design, width_mm: float, height_mm: float) -> str:
    """Return a design's border for a box of this size as SVG in mm; "" where it has none."""
    border = design.border
    if border is None:
        return ""
    across = border.across
    wide, high = width_mm - 2 * border.edge, height_mm - 2 * border.edge
    if wide <= 2 * across or high <= 2 * across:
        return ""
    views: dict[View, str] = {}
    tiles = "".join(_tiles(design, wide, high, views))
    drawn = "".join(
        f'<g id="{name}">{cut_drawing(design.border_svg, view)}</g>' for view, name in views.items()
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width_mm:g}mm" height="{height_mm:g}mm" '
        f'viewBox="0 0 {width_mm:g} {height_mm:g}"><defs>{drawn}</defs>'
        f'<g transform="translate({border.edge:g} {border.edge:g})">{tiles}</g></svg>'
    )


def _tiles(design: Design, wide: float, high: float, views: dict[View, str]) -> Iterator[str]:
    """Yield each corner and side; what each shows of the drawing is named in `views`."""
    border = design.border
    assert border is not None  # draw_border asks for none
    side, cut, across = border_side(design.border_svg), border.corner, border.across
    middle = side - 2 * cut
    far = side - cut
    spans = {"x": (wide, across), "y": (high, across)}
    for x, u in ((0.0, 0.0), (wide - across, far)):
        for y, v in ((0.0, 0.0), (high - across, far)):
            yield _tile((x, y, across, across), (u, v, cut, cut), views)
    length = middle * across / cut
    for axis, (whole, corner) in spans.items():
        free = whole - 2 * corner
        count = max(1, round(free / length))
        step = free / count
        for index in range(count):
            at = corner + index * step
            if axis == "x":
                yield _tile((at, 0, step, across), (cut, 0, middle, cut), views)
                yield _tile((at, high - across, step, across), (cut, far, middle, cut), views)
            else:
                yield _tile((0, at, across, step), (0, cut, cut, middle), views)
                yield _tile((wide - across, at, across, step), (far, cut, cut, middle), views)


def _tile(box: View, view: View, views: dict[View, str]) -> str:
    x, y, width, height = box
    u, v, w, h = view
    name = views.setdefault(view, f"part{len(views)}")
    return (
        f'<svg x="{x:.4f}" y="{y:.4f}" width="{width:.4f}" height="{height:.4f}" '
        f'viewBox="{u:g} {v:g} {w:g} {h:g}" preserveAspectRatio="none" overflow="hidden">'
        f'<use href="#{name}"/></svg>'
    )
