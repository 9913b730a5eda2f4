"""The wall: nothing of the giving list reaches the book, however near the two lie.

Private words are planted in every place of a giving list, a pack and their folders, beside a
book; the book is built; every byte of it is searched, plain and as it might be encoded or
compressed. Also: publishing code cannot reach giving code, by any chain of imports.
"""

from __future__ import annotations

import ast
import base64
import gzip
import shutil
import subprocess
import sys
import urllib.parse
import zlib
from pathlib import Path

import pytest
import yaml

from stillroom.core import private_shapes
from stillroom.giving import reading
from stillroom.giving.pack import Effort, pack_files, shopping_csv, work_out
from stillroom.giving.swapping import swap_in
from stillroom.publish import wall

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "builder" / "stillroom"


def module_path(name: str) -> Path | None:
    path = PACKAGE.parent / name.replace(".", "/")
    if path.with_suffix(".py").is_file():
        return path.with_suffix(".py")
    return path / "__init__.py" if (path / "__init__.py").is_file() else None


def imported_by(path: Path) -> set[str]:
    """Return every module of the package that a file may import, also within its functions."""
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, path
            names |= {str(node.module)} | {f"{node.module}.{alias.name}" for alias in node.names}
    return {name for name in names if name.startswith("stillroom") and module_path(name)}


def test_no_chain_of_imports_leads_from_publish_to_giving():
    waiting = [
        "stillroom." + ".".join(path.relative_to(PACKAGE).with_suffix("").parts)
        for path in (PACKAGE / "publish").rglob("*.py")
    ]
    seen: set[str] = set()
    while waiting:
        name = waiting.pop()
        path = module_path(name)
        if name in seen or path is None:
            continue
        seen.add(name)
        waiting += imported_by(path)
    assert "stillroom.publish.plugin" in seen
    assert [name for name in sorted(seen) if "giving" in name.split(".")[1:2]] == []
    assert "stillroom.giving_commands" not in seen


def test_publish_loads_without_giving():
    script = (
        "import stillroom.publish.plugin, sys; "
        "print([name for name in sys.modules if name.startswith('stillroom.giving')])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, encoding="utf-8", check=True
    )
    assert done.stdout.strip() == "[]"


def test_both_sides_mean_the_same_marks():
    assert private_shapes.GIVING_LIST_KEY == reading.GIVING_LIST_KEY
    for text in (f"{reading.GIVING_LIST_KEY}: Winter\n", f'"{reading.GIVING_LIST_KEY}": Winter\n'):
        assert private_shapes.find_giving_list(text) == 1
    head = shopping_csv(small_pack()).decode("utf-8-sig").splitlines()[0]
    assert tuple(head.split(",")) == private_shapes.SHOPPING_HEAD


def small_pack():
    from giving.lists import TODAY, demo_book, demo_recipes, read_dict, small_list

    read = read_dict(small_list())
    return work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.1))


class Words:
    """Gives out private words that stand nowhere else, and keeps them."""

    def __init__(self) -> None:
        self.given: list[str] = []

    def __call__(self, place: str) -> str:
        word = f"Zw{len(self.given):02d}{place.title().replace(' ', '')}qx"
        self.given.append(word)
        return word


def planted_list(word: Words) -> dict:
    """Return a giving list with a private word in every place that takes one."""
    households = [
        {
            "name": word("household"),
            "to": word("to"),
            "basket": "small",
            "message": word("own message"),
            "avoid": ["alcohol"],
            "avoid ingredients": [word("ingredient")],
            "children": [8],
            "had": {2026: ["rosemary-salt"]},
        },
        {"name": word("posted"), "basket": {"small": 2}, "delivery": "by post"},
    ]
    return {
        "giving list": word("title"),
        "giving day": "2027-12-18",
        "from": word("sender"),
        "message": word("message"),
        "baskets": {"small": {"eat": 2, "cost": 1}},
        "makes": [{"recipe": "lavender-sugar"}, {"recipe": "rosemary-salt"}],
        "households": households,
        "stock": {
            "containers": {f"{word('stock')}, 200 ml": 2},
            "ingredients": [f"2 kg {word('larder')}"],
        },
        "prices": [
            {"item": word("priced"), "packs": ["1 for 3.33"], "section": word("section")},
            {"item": "caster sugar", "packs": ["1 kg for 7.77"]},
        ],
        "batches": [{"recipe": "rosemary-salt", "started": "2027-05-03", "notes": word("notes")}],
    }


@pytest.fixture(scope="module")
def planted(tmp_path_factory):
    """Build the demo book with a private list and its pack all around it."""
    from giving.lists import TODAY, demo_recipes

    folder = tmp_path_factory.mktemp("planted")
    for name in ("recipes", "site_demo"):
        shutil.copytree(ROOT / name, folder / name)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    word = Words()
    text = yaml.safe_dump(planted_list(word), sort_keys=False)
    for place in ("giving/list.yml", "list.yaml", "recipes.private/list.yml",
                  "site_demo/giving/second.yml"):  # fmt: skip
        (folder / place).parent.mkdir(exist_ok=True)
        (folder / place).write_text(text, encoding="utf-8")
    for place in ("notes/private.md", ".env", ".git-notes", "site_demo/giving/README.md"):
        (folder / place).parent.mkdir(exist_ok=True)
        (folder / place).write_text(f"secret: {word('file')}\n", encoding="utf-8")
    from stillroom.core.book import open_book

    settings = open_book(folder / "mkdocs.yml").settings
    read = reading.load_giving_list(folder / "giving" / "list.yml")
    pack = work_out(read, demo_recipes(), settings, TODAY, Effort(5, 0.1))
    files = pack_files(pack)
    for place in ("private", "private-before", "site_demo/private"):
        swap_in(files, folder / place)
    demo = yaml.safe_load((folder / "site_demo/giving/christmas-2027.yml").read_text("utf-8"))
    names = [household["name"] for household in demo["households"]]
    names += [str(household["to"]) for household in demo["households"] if len(household["to"]) > 8]
    site = folder / "site"
    build = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(site)]
    done = subprocess.run(
        build, cwd=folder, capture_output=True, text=True, encoding="utf-8", check=False
    )
    assert done.returncode == 0, done.stderr
    return site, word.given, names, files


def written_as(word: str) -> list[bytes]:
    """Return the bytes of a word plain and in the codings a site may use."""
    plain = word.encode()
    return [
        plain,
        word.lower().encode(),
        urllib.parse.quote(word).encode(),
        word.encode("utf-16-le"),
        base64.b64encode(plain)[:-2],
        plain.hex().encode(),
    ]


def every_byte(site: Path):
    """Yield every file of the site: as it is, and unpacked where it is compressed."""
    for path in sorted(site.rglob("*")):
        if not path.is_file():
            continue
        data = path.read_bytes()
        yield path.relative_to(site).as_posix(), data
        if data[:2] == b"\x1f\x8b":
            yield f"{path.name} unpacked", gzip.decompress(data)
        if data[:4] == b"%PDF":
            for part in data.split(b"stream")[1::2]:
                try:
                    yield f"{path.name} stream", zlib.decompress(part.strip(b"\r\n"))
                except zlib.error:
                    continue


def test_no_private_word_is_in_the_book(planted):
    site, words, names, _files = planted
    sought = [form for word in [*words, *names] for form in written_as(word)]
    kinds, leaks = set(), []
    for name, data in every_byte(site):
        kinds.add(Path(name).suffix)
        leaks += [(name, form) for form in sought if form in data]
    assert leaks == []
    assert {".html", ".json", ".ics", ".xml", ".css", ".js"} <= kinds
    assert (site / "search" / "search_index.json").is_file()


def test_the_words_would_have_been_found(planted):
    """The search is no use if it cannot find: each word of the list is in the pack."""
    _site, words, _names, files = planted
    whole = b"\n".join(files.values())
    absent = [word for word in words if word.encode() not in whole]
    # what a pack has no use for: notes, unused stock, and files beside the list
    unused = ("Stock", "Larder", "Priced", "Section", "Notes", "File")
    assert all(any(part in word for part in unused) for word in absent), absent
    assert len(words) >= 15


def test_nothing_of_a_pack_is_a_file_of_the_book(planted):
    site, _words, _names, files = planted
    built = {path.name for path in site.rglob("*")}
    assert private_shapes.PACK_MARKER not in built
    assert not {"plan.json", "shopping.csv", "slips.html", "costs.html"} & built
    assert files


@pytest.mark.parametrize("place", ["site_demo/pages/list.yml", "recipes/list.yml"])
def test_the_book_is_refused_with_a_list_in_it(planted, place):
    site = planted[0]
    folder = site.parent
    shutil.copy(folder / "giving" / "list.yml", folder / place)
    try:
        found = wall.find_private((folder / "site_demo" / "pages", folder / "recipes"))
        assert any("private giving list" in str(problem) for problem in found)
    finally:
        (folder / place).unlink()
