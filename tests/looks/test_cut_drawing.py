"""A border's tiles carry what they show, and show what they did when they carried the whole."""

from __future__ import annotations

import io

import pypdf
import pypdfium2
import pytest
from PIL import Image, ImageChops

from stillroom.looks import borders
from stillroom.looks.borders import draw_border
from stillroom.looks.card_designs import designs_of
from stillroom.looks.cut_drawing import cut_drawing
from stillroom.printing.typesetting import typeset

BORDERED = [name for name, design in designs_of().items() if design.border]
WHOLE = (0.0, 0.0, 1000.0, 1000.0)


def drawn(svg: str, tmp_path_factory: pytest.TempPathFactory) -> tuple[Image.Image, int]:
    """Return a border as it is printed, and how many bytes a printer is told."""
    folder = tmp_path_factory.mktemp("border")
    (folder / "one.typ").write_text(
        '#set document(title: "border")\n#set page(width: 90mm, height: 65mm, margin: 0mm)\n'
        "#let data = json(bytes(sys.inputs.data))\n"
        '#place(top, pdf.artifact(image(bytes(data.svg), format: "svg", width: 90mm)))\nx',
        encoding="utf-8",
    )
    pdf = typeset("one.typ", {"svg": svg}, root=folder).pdf
    told = pypdf.PdfReader(io.BytesIO(pdf)).pages[0].get_contents()
    assert told is not None
    shown = pypdfium2.PdfDocument(pdf)[0].render(scale=300 / 72).to_pil().convert("L")
    return shown, len(told.get_data())


@pytest.mark.parametrize("name", BORDERED)
def test_a_border_looks_as_it_did_and_says_far_less(
    name: str, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch
) -> None:
    design = designs_of()[name]
    cut = draw_border(design, 90, 65)
    monkeypatch.setattr(borders, "cut_drawing", lambda svg, _view: cut_drawing(svg, WHOLE))
    whole = draw_border(design, 90, 65)
    (one, told), (other, told_before) = (drawn(svg, tmp_path_factory) for svg in (cut, whole))
    assert told < 0.4 * told_before
    assert ImageChops.difference(one, other).getextrema() == (0, 0)
    assert one.getextrema()[0] < 150  # something is drawn


HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 72 72">'
# shapes, and whether a view of the upper left quarter keeps them
SHAPES = {
    '<path d="m2 2l3 3h2v2z"/>': True,
    '<path d="m50 50l3 3h2v2z"/>': False,
    '<path d="M60 60c-50 -50 -50 -50 -55 -55"/>': True,
    '<path d="M60 60t4 4 4 4"/>': False,
    '<path d="M60 10s2 2 4 0"/>': False,
    '<circle cx="40" cy="40" r="12"/>': True,
    '<circle cx="60" cy="60" r="2"/>': False,
    '<ellipse cx="60" cy="10" rx="40" ry="1"/>': True,
    '<rect x="50" y="0" width="9" height="9"/>': False,
    '<line x1="70" y1="70" x2="0" y2="0"/>': True,
    '<g transform="rotate(180 36 36)"><circle cx="60" cy="60" r="2"/></g>': True,
    '<g transform="translate(-50 -50) scale(1)"><circle cx="60" cy="60" r="2"/></g>': True,
    '<circle cx="6" cy="6" r="2" transform="matrix(1 0 0 1 60 60)"/>': False,
    # what is not worked out stays whole
    '<path d="M60 60a5 5 0 0 1 9 9"/>': True,
    '<path d="M60 60l1 1m2 2l3 3"/>': True,
    '<polygon points="60,60 70,70 60,70"/>': True,
    '<circle cx="60" cy="60" r="2" transform="skewX(4)"/>': True,
    '<g class="away"><circle cx="60" cy="60" r="2"/></g>': True,
}


@pytest.mark.parametrize(("shape", "kept"), SHAPES.items())
def test_a_shape_is_kept_where_the_view_shows_some_of_it(shape: str, kept: bool) -> None:
    assert bool(cut_drawing(f"{HEAD}{shape}</svg>", (0, 0, 30, 30))) is kept
