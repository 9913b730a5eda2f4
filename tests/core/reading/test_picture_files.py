"""A picture is shown or it is told of: drawings, photographs, and what is neither."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from PIL import Image

from stillroom.core.reading.picture_files import PictureSize, read_picture
from stillroom.core.words.problems import Unreadable

SVG = '<svg xmlns="http://www.w3.org/2000/svg" {}>{}</svg>'


def photograph(kind: str, size: tuple[int, int]) -> bytes:
    out = io.BytesIO()
    Image.new("RGB", size, "tan").save(out, kind)
    return out.getvalue()


GOOD = [
    ("a.svg", SVG.format('viewBox="0 0 480 320"', "<path d='M0 0'/>"), (480, 320)),
    ("a.svg", SVG.format('viewBox=" -10,-5 , 48.5 32 "', ""), (48, 32)),
    ("a.svg", SVG.format('width="30" height="40px"', ""), (30, 40)),
    ("a.svg", SVG.format('width="100%" height="10em"', ""), (400, 400)),
    (
        "a.svg",
        "<?xml version='1.0'?>\n<!-- by hand -->" + SVG.format('viewBox="0 0 1 2"', ""),
        (1, 2),
    ),
    ("a.svg", SVG.format('viewBox="0 0 9 9"', "<style>.a{fill:url(#g)}</style>"), (9, 9)),
    ("a.png", photograph("PNG", (60, 40)), (60, 40)),
    ("a.jpg", photograph("JPEG", (61, 41)), (61, 41)),
    ("a.JPEG", photograph("JPEG", (62, 42)), (62, 42)),
]
BAD = [
    ("a.svg", "", "empty"),
    ("a.svg", "   \n", "empty"),
    ("a.svg", "words", "not what its ending says"),
    ("a.svg", "<svg", "broken"),
    ("a.svg", "<html><body/></html>", "broken"),
    ("a.svg", "<svg viewBox='0 0 4 4'/>", "does not say that it is SVG"),
    ("a.svg", SVG.format('viewBox="0 0 480"', ""), "broken"),
    ("a.svg", SVG.format('viewBox="0 0 a b"', ""), "broken"),
    ("a.svg", SVG.format('viewBox="0 0 nan inf"', ""), "broken"),
    ("a.svg", SVG.format('viewBox=""', ""), "broken"),
    ("a.svg", SVG.format('viewBox="0 0 0 10"', ""), "0 by 10"),
    ("a.svg", SVG.format('viewBox="0 0 -4 10"', ""), "-4 by 10"),
    ("a.svg", SVG.format('viewBox="0 0 1e9 1e9"', ""), "1e"),
    ("a.svg", SVG.format("", "<script>1</script>"), "script"),
    ("a.svg", SVG.format('onload="1"', ""), "onload"),
    ("a.svg", SVG.format("", "<image href='https://a.example/b.png'/>"), "elsewhere"),
    ("a.svg", SVG.format("", "<style>@import 'https://a.example/b.css'</style>"), "elsewhere"),
    ("a.svg", SVG.format("", "<path fill='url(//a.example/b#c)'/>"), "elsewhere"),
    ("a.svg", '<!DOCTYPE svg [<!ENTITY a "b">]>' + SVG.format("", "&a;"), "ENTITY"),
    ("a.svg", photograph("PNG", (6, 4)), "It is a PNG"),
    ("a.png", photograph("JPEG", (6, 4)), "It is a JPEG"),
    ("a.png", photograph("PNG", (6, 4))[:40], "broken"),
    ("a.jpg", photograph("JPEG", (6, 4))[:30], "broken"),
    ("a.jpg", b"\x00\x01", "not what its ending says"),
    ("a.heic", b"ftypheic", "no picture that a book can show"),
    ("a", b"x", "no picture that a book can show"),
]


def put(folder: Path, name: str, data: str | bytes) -> Path:
    path = folder / name
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    return path


@pytest.mark.parametrize(("name", "data", "size"), GOOD)
def test_a_picture_says_its_size(tmp_path, name, data, size):
    assert read_picture(put(tmp_path, name, data)) == PictureSize(*size)


@pytest.mark.parametrize(("name", "data", "words"), BAD)
def test_what_is_no_picture_is_told_in_words(tmp_path, name, data, words):
    with pytest.raises(Unreadable) as told:
        read_picture(put(tmp_path, name, data))
    assert words in told.value.what
    assert told.value.mend


def test_a_huge_picture_is_not_read(tmp_path):
    path = tmp_path / "a.png"
    with path.open("wb") as file:
        file.truncate(40_000_000)
    with pytest.raises(Unreadable, match="larger than 12 MB"):
        read_picture(path)


def test_a_drawing_as_large_as_a_photograph_is_not_read(tmp_path):
    data = b"<svg xmlns='http://www.w3.org/2000/svg'>" + b" " * 2_000_000 + b"</svg>"
    with pytest.raises(Unreadable, match="larger than 2 MB"):
        read_picture(put(tmp_path, "a.svg", data))
