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

from publish.test_wall import small_book
from stillroom.core.book import open_book
from stillroom.core.private import shapes as private_shapes
from stillroom.core.private.words import list_private_words
from stillroom.core.words.data_files import read_data
from stillroom.giving import list_words, reading
from stillroom.giving.list_words import plain_key
from stillroom.giving.log import log_kinds
from stillroom.giving.pack import Effort, shopping_csv, work_out
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
    assert "stillroom.commands.giving" not in seen


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


def test_both_sides_know_by_which_words_a_list_names_somebody():
    """What the private side reads as a name or an address, the wall seeks."""
    known = read_data("list_names.yml", "private")
    words = {part: {plain_key(word) for word in said} for part, said in known.items()}
    said = list_words.words_by_part()

    def also(part, *keys):
        return {word for word, key in said[part].items() if key in keys}

    assert words["households"] == also("list", "households")
    assert words["name"] == also("household", "name", "to")
    assert words["place"] >= also("household", "address")
    for part, key in (("day", "giving day"), ("baskets", "baskets"), ("makes", "makes")):
        assert words[part] == also("list", key)
    # what a page or a recipe may be headed by as well is no list for its name alone
    weak = also("list", "giving list") - words["list"]
    assert words["list"] <= also("list", "giving list")
    assert weak == {"list", "title", "liste", "lista", "lijst", "titel", "titre", "título",
                    "titolo", "tittel", "presents for"}  # fmt: skip
    kinds = [kind for kind in log_kinds().values() if kind.names == "household"]
    assert len(kinds) > 6
    assert words["log"] == {plain_key(w) for kind in kinds for w in (kind.kind, *kind.also)}


def test_a_small_letter_with_a_mark_is_no_capital():
    """A name begins with a capital: not "élan" nor "übel", but "Étienne" and "Übelacker"."""
    text = "giving list: X\nhouseholds:\n  - name: Frau {}\n"
    alone = {
        word: any(one.alone for one in list_private_words(text.format(word).encode(), "x"))
        for word in ("élan", "übel", "Étienne", "Übelacker")
    }
    assert alone == {"élan": False, "übel": False, "Étienne": True, "Übelacker": True}


NAMED = {
    "by name alone": "households:\n  - Zebedee Quillfeather\n",
    "by name and what to avoid": "households:\n  - Zebedee Quillfeather: no nuts\n",
    "each under the name": "households:\n  Zebedee Quillfeather: {basket: small}\n  Ada Thistle:\n",
    "in one line": "households: Ada Thistle; Zebedee Quillfeather\n",
    "in brackets": "households: [Ada Thistle, Zebedee Quillfeather]\n",
    "by another word": "friends:\n  - who: Zebedee Quillfeather\n",
    "in German": "haushalte:\n  - haushalt: Zebedee Quillfeather\n",
    "by the card's word": "people:\n  - Zeb: {dear: Zebedee Quillfeather}\n",
    "in capitals": "PEOPLE:\n  - WHO: Zebedee Quillfeather\n",
    "with a slip in the key": "housholds:\n  - Zebedee Quillfeather\n",
    "where they live": "households:\n  - Zeb: {lives at: 7 Rope Walk}\n",
    "on a log": "giving log:\n  - {day: 2027-06-01, gave: Zebedee Quillfeather}\n",
    "pinned on a log": "giving log:\n  - pinned: Zebedee Quillfeather\n    of: jam\n",
}


@pytest.mark.parametrize("how", NAMED)
@pytest.mark.parametrize("head", ["giving list: A\n", "Giving List: A\nWhen: 24 December\n"])
def test_a_name_is_sought_however_a_list_says_it(tmp_path, how, head):
    folder = small_book(tmp_path)
    text = NAMED[how] if "log" in how else head + NAMED[how]
    (folder / "who.txt").write_text(text, encoding="utf-8")
    page = folder / "pages" / "thanks.md"
    page.write_text("# Thanks\n\nZebedee Quillfeather, of 7 Rope Walk\n", encoding="utf-8")
    book = open_book(folder / "mkdocs.yml")
    (found,) = wall.find_private([book.docs_dir], wall.know_private_words(book))
    assert "who.txt" in str(found)


OWN_WORDS = {
    "German": "Geschenkliste: A\nTüten: {{klein: {{Essen: 1}}}}\nLeute:\n  - {{Name: {}}}\n",
    "French": "liste de cadeaux: A\npaniers: {{p: 1 à manger}}\nfoyers:\n  - {{nom: {}}}\n",
    "Spanish": "lista de regalos: A\ncestas: {{c: {{comer: 1}}}}\nhogares:\n  - {{nombre: {}}}\n",
    "Italian": "lista dei regali: A\ncesti: {{c: 1}}\nfamiglie:\n  - {{nome: {}}}\n",
    "Dutch": "cadeaulijst: A\nzakjes: {{z: {{eten: 1}}}}\nmensen:\n  - {{naam: {}}}\n",
    "Swedish": "presentlista: A\npåsar: {{p: {{äta: 1}}}}\nhushåll:\n  - {{namn: {}}}\n",
    "Danish": "gaveliste: A\nkurve: {{k: 1}}\nhusholdninger:\n  - {{navn: {}}}\n",
    "by its parts alone": "titel: A\nDatum: 1.5.2027\nTÜTEN: {{k: 1}}\nLEUTE:\n  - {}: Nüsse\n",
}


@pytest.mark.parametrize("language", OWN_WORDS)
def test_a_name_is_sought_whichever_language_its_list_is_in(tmp_path, language):
    """What the private side reads as a list is one to the wall: no word of it says "giving"."""
    folder = small_book(tmp_path)
    text = OWN_WORDS[language].format("Zebedee Quillfeather")
    (folder / "who.yml").write_text(text, encoding="utf-8")
    (folder / "pages" / "thanks.md").write_text(
        "# Thanks\n\nZebedee Quillfeather\n", encoding="utf-8"
    )
    book = open_book(folder / "mkdocs.yml")
    (found,) = wall.find_private([book.docs_dir], wall.know_private_words(book))
    assert "who.yml" in str(found)
    (folder / "pages" / "thanks.md").write_text(text, encoding="utf-8")
    (found,) = wall.find_private([book.docs_dir], wall.know_private_words(book))
    assert "giving list" in str(found)


def small_pack():
    from giving.lists import TODAY, demo_book, demo_recipes, read_dict, small_list

    read = read_dict(small_list())
    return work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.1))


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
    sought = [form for word in [*planted.words, *planted.names] for form in written_as(word)]
    kinds, leaks = set(), []
    for name, data in every_byte(planted.site):
        kinds.add(Path(name).suffix)
        leaks += [(name, form) for form in sought if form in data]
    assert leaks == []
    assert {".html", ".json", ".ics", ".xml", ".css", ".js"} <= kinds
    assert (planted.site / "search" / "search_index.json").is_file()


def test_the_words_would_have_been_found(planted):
    """The search is no use if it cannot find: each word of the list is in the pack."""
    whole = b"\n".join(planted.pack.values())
    absent = [word for word in planted.words if word.encode() not in whole]
    # what a pack has no use for: notes, unused stock, a log that came later, and other files
    unused = ("Stock", "Larder", "Priced", "Section", "Notes", "File", "Log")
    assert all(any(part in word for part in unused) for word in absent), absent
    assert len(planted.words) >= 15
    assert len(planted.names) >= 10


def test_nothing_of_a_pack_is_a_file_of_the_book(planted):
    built = {path.name for path in planted.site.rglob("*")}
    assert private_shapes.PACK_MARKER not in built
    telling = {"plan.json", "shopping.csv", "baskets.html", "costs.html"}
    assert telling <= set(planted.pack)
    assert not telling & built


@pytest.mark.parametrize("place", ["site_demo/pages/list.yml", "recipes/list.yml"])
def test_the_book_is_refused_with_a_list_in_it(planted, tmp_path, place):
    folder = planted.folder
    for name in ("recipes", "site_demo/pages"):
        shutil.copytree(folder / name, tmp_path / name)
    published = (tmp_path / "site_demo" / "pages", tmp_path / "recipes")
    assert wall.find_private(published) == ()
    shutil.copy(folder / "giving" / "list.yml", tmp_path / place)
    (found,) = wall.find_private(published)
    assert "private giving list" in str(found)
