"""Where a photograph was made is never published; it stands upright on page, list and paper."""

from __future__ import annotations

import base64
import contextlib
import io
import json
import os
import random
from datetime import date
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from PIL import Image, PngImagePlugin

from loaded import run_loaded
from stillroom.beginning.book import Answers, begin_book
from stillroom.beginning.recipe import write_recipe
from stillroom.core.book import open_book
from stillroom.core.checking import check_book
from stillroom.core.reading.photographs import (
    drawing_without_places,
    orientation_of,
    without_places,
)
from stillroom.core.reading.picture_files import picture_size
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.looks import photographs, take_in
from stillroom.looks.inked import picture_of
from stillroom.looks.link_previews import cut_preview, preview_size
from stillroom.looks.take_in import keep_picture, take_picture
from stillroom.publish.library import Library

PLANTED = b"Sandgerd, the house by the pier"
GPS, MADE_BY, TURNED = 0x8825, 0x010F, 0x0112


def exif(turned: int = 1) -> Image.Exif:
    """Return what a camera adds: a place, its maker, which way up it was held."""
    found = Image.Exif()
    found[MADE_BY] = PLANTED.decode()
    found[TURNED] = turned
    found.get_ifd(GPS).update({1: "N", 2: (58.0, 59.0, 12.5), 3: "W", 4: (2.0, 57.0, 30.0)})
    return found


def drawn(width: int = 60, height: int = 40) -> Image.Image:
    """Return a picture that is red at its upper left and blue elsewhere."""
    image = Image.new("RGB", (width, height), (20, 40, 200))
    image.paste((220, 30, 30), (0, 0, width // 3, height // 3))
    return image


def saved(kind: str, turned: int = 1, image: Image.Image | None = None) -> bytes:
    written = io.BytesIO()
    image = image or drawn()
    if kind == "JPEG":
        image.save(written, kind, exif=exif(turned), comment=PLANTED, quality=92)
    elif kind == "PNG":
        notes = PngImagePlugin.PngInfo()
        notes.add_text("Comment", PLANTED.decode())
        notes.add_itxt("XML:com.adobe.xmp", PLANTED.decode())
        image.save(written, kind, exif=exif(turned), pnginfo=notes)
    else:
        image.save(written, kind, exif=exif(turned), xmp=PLANTED, lossless=True)
    return written.getvalue()


SVG = b"<svg xmlns='http://www.w3.org/2000/svg'"
KINDS = {"JPEG": ".jpg", "PNG": ".png", "WEBP": ".webp"}


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_but_the_picture_is_left(kind: str) -> None:
    data = saved(kind) + b"\0\0trailing " + PLANTED * (kind != "WEBP")
    assert PLANTED in data
    clean = without_places(data)
    assert PLANTED not in clean
    opened = Image.open(io.BytesIO(clean))
    assert not opened.getexif().get_ifd(GPS)
    assert not opened.info.get("xmp")
    assert opened.tobytes() == Image.open(io.BytesIO(data)).tobytes()
    assert without_places(clean) == clean


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("turned", range(1, 9))
def test_which_way_up_it_was_held_is_kept(turned: int, kind: str) -> None:
    clean = without_places(saved(kind, turned))
    assert orientation_of(clean) == turned
    assert without_places(clean) == clean
    assert dict(Image.open(io.BytesIO(clean)).getexif()) == (
        {} if turned == 1 else {TURNED: turned}
    )
    size = picture_size(f"a{KINDS[kind]}", clean)
    assert (size.width, size.height) == ((40, 60) if turned >= 5 else (60, 40))


def test_a_photograph_within_a_drawing_is_cleaned_too() -> None:
    inner = base64.b64encode(saved("JPEG")).decode()
    svg = (
        '<svg xmlns="http://www.w3.org/2000/svg"><metadata>Sandgerd, the house by the pier'
        f'</metadata><image href="data:image/jpeg;base64,{inner}"/></svg>'
    )
    clean = drawing_without_places(svg.encode())
    assert PLANTED not in clean
    kept = clean.partition(b"base64,")[2].partition(b'"')[0]
    assert PLANTED not in base64.b64decode(kept)
    assert Image.open(io.BytesIO(base64.b64decode(kept))).size == (60, 40)


@pytest.mark.parametrize("kind", KINDS)
def test_what_is_cut_off_or_mangled_is_told_and_never_passed_on_whole(kind: str) -> None:
    data = saved(kind)
    chance = random.Random(11)
    for _ in range(120):
        mangled = bytearray(data[: chance.randrange(12, len(data))])
        for _ in range(chance.randrange(4)):
            mangled[chance.randrange(len(mangled))] = chance.randrange(256)
        with contextlib.suppress(Unreadable):
            assert PLANTED not in take_picture("a", bytes(mangled)).data
    with pytest.raises(Unreadable, match="broken"):
        without_places(data[: len(data) // 2])


@pytest.mark.parametrize("kind", [*KINDS, "HEIF"])
def test_it_is_taken_in_upright_small_and_clean(kind: str, tmp_path: Path) -> None:
    begin_book(tmp_path / "ours", Answers("Ours"))
    book = open_book(tmp_path / "ours" / "mkdocs.yml")
    if kind == "HEIF":
        heif = pytest.importorskip("pillow_heif")
        written = io.BytesIO()
        heif.from_pillow(drawn(2400, 1600)).save(written, exif=exif(1).tobytes())
        data = written.getvalue()
    else:
        data = saved(kind, 6, drawn(2400, 1600))
    name = keep_picture(book, "plum-gin", "IMG 1.HEIC" if kind == "HEIF" else "IMG 1.JPG", data)
    shown = (book.pictures_dir / name).read_bytes()
    assert PLANTED not in shown
    opened = Image.open(io.BytesIO(shown))
    assert max(opened.size) == photographs.LONGEST_SIDE
    assert not opened.getexif().get_ifd(GPS)
    if kind != "HEIF":
        assert opened.size == (1200, 1800)
        red, _, blue = opened.convert("RGB").getpixel((1150, 50))
        assert red > 150 > blue, "its upper left, turned a quarter to the right"
    (kept,) = (book.root / "originals").iterdir()
    assert kept.read_bytes() == data
    assert keep_picture(book, "plum-gin", "again.jpg", data) != name


def test_without_the_library_a_photograph_is_cleaned_all_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(photographs, "open_pillow", lambda: None)
    monkeypatch.setattr(take_in, "open_pillow", lambda: None)
    for kind in KINDS:
        taken = take_picture("a", saved(kind, 6))
        assert PLANTED not in taken.data
        assert (taken.width, taken.height) == (40, 60)
    with pytest.raises(Unreadable, match="is not read here yet"):
        take_picture("a.heic", b"\0\0\0\x18ftypheic" + b"\0" * 40)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"", "empty"),
        (b"GIF89a" + b"\0" * 40, "no picture that a book can show"),
        (b"%PDF-1.7", "no picture"),
        (SVG + b"><script>1</script></svg>", "script"),
        (SVG + b" onload='x()'/>", "script"),
        (SVG + b"><image href='http://a.example/'/></svg>", "elsewhere"),
        (b"\0\0\0\x18ftypheic" + b"\0" * 40, "broken"),
        (
            saved("PNG")[:16] + b"\x00\x00\x4e\x20\x00\x00\x4e\x20" + saved("PNG")[24:],
            "Save it smaller: at most",
        ),
    ],
)
def test_a_broken_or_unsafe_picture_is_one_clear_message(data: bytes, says: str) -> None:
    with pytest.raises(Unreadable, match=says):
        take_picture("a", data)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build a new book with a photograph dropped straight into its folder."""
    folder = tmp_path_factory.mktemp("ours")
    begin_book(folder, Answers("Ours", site_url="https://ours.example/"))
    book = open_book(folder / "mkdocs.yml")
    path = write_recipe(book, "Plum gin", "liqueur")
    text = path.read_text(encoding="utf-8")
    facts = "picture: plums.jpg\npicture_focus: 20% 30%\ncard:"
    path.write_text(text.replace("card:", facts, 1), encoding="utf-8")
    for kind, ending in KINDS.items():
        (book.pictures_dir / f"plums{ending}").write_bytes(saved(kind, 6))
    # of the pictures only what a page shows is published
    shown = "\n".join(f"![Plums](pictures/plums{ending})" for ending in KINDS.values())
    about = book.docs_dir / "about.md"
    about.write_text(f"{about.read_text(encoding='utf-8')}\n{shown}\n", encoding="utf-8")
    (book.pictures_dir / "IMG.HEIC").write_bytes(b"\0\0\0\x18ftypheic" + PLANTED)
    (book.docs_dir / "house.jpg").write_bytes(saved("JPEG"))
    built = run_loaded(["mkdocs", "build", "--strict"], folder, os.environ)
    assert built.returncode == 0, built.stderr
    return folder / "site"


def test_no_byte_of_the_site_says_where_it_was_made(site: Path) -> None:
    assert [
        path for path in site.rglob("*") if path.is_file() and PLANTED in path.read_bytes()
    ] == []
    assert (site / "house.jpg").is_file()
    assert not (site / "pictures" / "IMG.HEIC").exists()
    for ending in KINDS.values():
        with Image.open(site / "pictures" / f"plums{ending}") as opened:
            assert not opened.getexif().get_ifd(GPS)


def test_page_list_and_preview_show_it(site: Path) -> None:
    page = BeautifulSoup((site / "r/plum-gin/index.html").read_text("utf-8"), "html.parser")
    shown = page.select_one(".opening__picture.photograph img")
    assert shown is not None
    assert (shown["width"], shown["height"]) == ("40", "60")
    preview = page.find("meta", property="og:image")
    assert preview["content"] == "https://ours.example/assets/stillroom/previews/plum-gin.jpg"
    assert page.find("meta", property="og:image:width")["content"] == "40"
    assert page.find("meta", property="og:image:height")["content"] == "21"
    with Image.open(site / "assets/stillroom/previews/plum-gin.jpg") as opened:
        assert opened.size == (40, 21)
    whole = json.loads(page.select_one('script[type="application/ld+json"]').text)
    assert whole["image"] == "https://ours.example/pictures/plums.jpg"
    home = BeautifulSoup((site / "index.html").read_text("utf-8"), "html.parser")
    cut = home.select_one(".leaves__picture.photograph img")
    assert cut["style"] == "object-position: 20% 30%"


RED, BLUE, WHITE = (220, 30, 30), (20, 40, 200), (255, 255, 255)


def near(point: tuple[int, ...], colour: tuple[int, int, int]) -> bool:
    return all(abs(one - other) < 40 for one, other in zip(point[:3], colour, strict=True))


@pytest.mark.parametrize(
    ("shape", "focus", "turned", "top"),
    [
        # red is the upper third; the upper edge of a piece shows whether it was taken from there
        ((600, 1800), "50% 0%", 1, RED),
        ((600, 1800), "", 1, BLUE),
        ((600, 1800), "50% 100%", 1, BLUE),
        # held upside down: what lies lowest in the file is seen on top
        ((600, 1800), "50% 100%", 3, RED),
        ((600, 1800), "50% 0%", 3, BLUE),
    ],
)
def test_the_piece_beside_a_link_is_cut_round_the_point(
    tmp_path: Path, shape: tuple[int, int], focus: str, turned: int, top: tuple[int, int, int]
) -> None:
    image = Image.new("RGB", shape, BLUE)
    image.paste(RED, (0, 0, shape[0], shape[1] // 3))
    path = tmp_path / "one.jpg"
    path.write_bytes(saved("JPEG", turned, image))
    with Image.open(io.BytesIO(cut_preview(path, focus))) as cut:
        assert cut.size == preview_size(path) == (600, 315)
        assert near(cut.getpixel((300, 5)), top)
        assert not cut.getexif()
    assert PLANTED not in cut_preview(path, focus)


def test_a_large_one_is_shown_in_the_usual_size_and_never_enlarged(tmp_path: Path) -> None:
    for shape, expected in (((4000, 3000), (1200, 630)), ((1000, 4000), (450, 236))):
        path = tmp_path / "one.jpg"
        path.write_bytes(saved("JPEG", image=Image.new("RGB", shape, BLUE)))
        with Image.open(io.BytesIO(cut_preview(path, "0% 0%"))) as cut:
            assert cut.size == preview_size(path) == expected


def test_where_one_sees_through_it_is_white_and_a_broken_one_is_told(tmp_path: Path) -> None:
    path = tmp_path / "one.png"
    for image in (Image.new("RGBA", (300, 300)), Image.new("P", (300, 300), 0)):
        image.info["transparency"] = 0
        image.save(path)
        with Image.open(io.BytesIO(cut_preview(path, ""))) as cut:
            assert near(cut.getpixel((5, 5)), WHITE)
    broken = saved("PNG", image=drawn(200, 200))
    path.write_bytes(broken[: len(broken) // 2])
    with pytest.raises(Unreadable, match="broken"):
        cut_preview(path, "")


def test_without_pillow_the_photograph_stands_there_whole(
    site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    book = open_book(site.parent / "mkdocs.yml")
    recipe = next(one for one in check_book(book) if one.slug == "plum-gin")
    library = Library(book, (recipe,), date(2026, 11, 29))
    assert library.preview_of(recipe) == "assets/stillroom/previews/plum-gin.jpg"
    monkeypatch.setattr("stillroom.publish.library.open_pillow", lambda: None)
    assert library.preview_of(recipe) == "pictures/plums.jpg"
    assert library.size_of_preview(recipe) == (40, 60)


def test_without_a_picture_the_drawing_of_its_kind_stands_there(site: Path) -> None:
    page = BeautifulSoup((site / "r/vanilla-sugar/index.html").read_text("utf-8"), "html.parser")
    drawing = page.select_one(".opening__picture.emblem img")
    assert drawing["alt"] == ""
    assert (site / "r/vanilla-sugar" / drawing["src"]).is_file()
    home = BeautifulSoup((site / "index.html").read_text("utf-8"), "html.parser")
    emblem = home.select_one(".leaves__picture.emblem img")
    assert (site / emblem["src"]).is_file()


def test_paper_shows_it_upright(site: Path) -> None:
    book = open_book(site.parent / "mkdocs.yml")
    svg = picture_of(book, "plums.jpg")
    assert 'viewBox="0 0 40 60"' in svg
    assert 'transform="matrix(0 1 -1 0 40 0)"' in svg
    assert "data:image/jpeg;base64," in svg


def test_a_point_that_is_none_is_told(site: Path, tmp_path: Path) -> None:
    begin_book(tmp_path / "ours", Answers("Ours"))
    book = open_book(tmp_path / "ours" / "mkdocs.yml")
    path = write_recipe(book, "Plum gin", "liqueur")
    text = path.read_text(encoding="utf-8").replace("card:", "picture_focus: top\ncard:", 1)
    path.write_text(text, encoding="utf-8")
    with pytest.raises(ProblemsFound, match='"top" is no point of a picture'):
        check_book(book)
