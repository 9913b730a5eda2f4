"""Nothing private is published: the plugin refuses, and no byte of the book holds such a word."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest
import yaml

from loaded import run_loaded
from stillroom.core.book import open_book
from stillroom.core.private.shapes import PACK_MARKER
from stillroom.publish.wall import find_private, know_private_words

ROOT = Path(__file__).resolve().parents[2]
LIST = "giving list: The choir\npeople:\n  - name: Zebedee Quillfeather\n"

PLANTED = [
    # where, what: each is a giving list or a pack by what it holds, whatever it is called
    ("pages/list.yml", LIST),
    ("pages/deep/er/notes.yaml", LIST),
    ("pages/notes.md", f"---\n{LIST}---\n\nWords.\n"),
    ("pages/.hidden/list.yml", LIST),
    ("recipes/people.yml", LIST),
    ("recipes/people.txt", '"giving list": The choir\n'),
    ("site/kept.yml", LIST),
    ("pages/private/" + PACK_MARKER, ""),
    ("site/private/" + PACK_MARKER, ""),
]


def small_book(folder: Path) -> Path:
    (folder / "pages").mkdir(parents=True)
    (folder / "recipes").mkdir()
    shutil.copy(ROOT / "recipes" / "lavender-sugar.md", folder / "recipes")
    recipe = folder / "recipes" / "lavender-sugar.md"
    kept = [
        line
        for line in recipe.read_text(encoding="utf-8").splitlines()
        if not line.startswith("picture")
    ]
    recipe.write_text("\n".join(kept) + "\n", encoding="utf-8")
    config = {
        "site_name": "A small book",
        "site_url": "https://small.example/",
        "docs_dir": "pages",
        "theme": {"name": "material", "font": False},
        "plugins": ["search", "stillroom"],
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    return folder


def build(folder: Path) -> subprocess.CompletedProcess[str]:
    words = ["mkdocs", "build", "--strict"]
    return run_loaded(words, folder, {**os.environ, "NO_COLOR": "1"})


def test_a_small_book_builds_with_nothing_but_a_recipe(tmp_path: Path) -> None:
    built = build(small_book(tmp_path))
    assert built.returncode == 0, built.stderr
    for page in ("index.html", "browse/index.html", "r/lavender-sugar/index.html"):
        assert (tmp_path / "site" / page).is_file()


@pytest.mark.parametrize(("where", "what"), PLANTED, ids=[where for where, _ in PLANTED])
def test_a_private_file_in_a_published_folder_is_found(
    tmp_path: Path, where: str, what: str
) -> None:
    folder = small_book(tmp_path)
    planted = folder / where
    planted.parent.mkdir(parents=True, exist_ok=True)
    planted.write_text(what, encoding="utf-8")
    problems = find_private((folder / "pages", folder / "recipes", folder / "site"))
    assert len(problems) == 1
    assert "private" in problems[0].what
    assert "Move it out" in problems[0].mend


def test_the_build_stops_and_deletes_nothing(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    kept = folder / "site" / "private" / PACK_MARKER
    kept.parent.mkdir(parents=True)
    kept.write_text("", encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "private pack" in built.stderr
    assert "1 problem" in built.stderr
    assert "Traceback" not in built.stderr
    assert kept.is_file()


def test_a_list_in_a_folder_of_the_book_stops_the_build_though_no_page_has_it(
    tmp_path: Path,
) -> None:
    folder = small_book(tmp_path)
    hidden = folder / "pages" / ".hidden"
    hidden.mkdir()
    (hidden / "people.txt").write_text(LIST, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "pages/.hidden/people.txt" in built.stderr
    assert "1 problem" in built.stderr
    assert not (folder / "site").exists()


def test_every_problem_of_every_recipe_is_told_in_one_run(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    good = (folder / "recipes" / "lavender-sugar.md").read_text(encoding="utf-8")
    for name, title in (("one", "One"), ("two", "Two")):
        broken = good.replace("title: Lavender sugar", f"titel: {title}")
        (folder / "recipes" / f"{name}.md").write_text(broken, encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "recipes/one.md:2:" in built.stderr
    assert "recipes/two.md:2:" in built.stderr
    assert 'Did you mean "title"?' in built.stderr
    assert "problems: see above" in built.stderr
    assert "Traceback" not in built.stderr


def test_a_wrong_setting_is_told_in_words(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    config = yaml.safe_load((folder / "mkdocs.yml").read_text(encoding="utf-8"))
    config["plugins"] = [{"stillroom": {"country": "Britain"}}]
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")
    built = build(folder)
    assert built.returncode == 1
    assert "country" in built.stderr
    assert "Traceback" not in built.stderr


def private_words() -> set[str]:
    """Every name of the demo's giving lists that no recipe or page says too."""
    words: set[str] = set()

    def gather(value: object) -> None:
        if isinstance(value, dict):
            for key, inner in value.items():
                if key in {"name", "address", "message"} and isinstance(inner, str):
                    words.add(inner)
                gather(inner)
        elif isinstance(value, list):
            for inner in value:
                gather(inner)

    for path in (ROOT / "site_demo" / "giving").rglob("*.y*ml"):
        gather(yaml.safe_load(path.read_text(encoding="utf-8")))
    public = "\n".join(
        path.read_text(encoding="utf-8")
        for folder in ("recipes", "site_demo/pages")
        for path in (ROOT / folder).rglob("*.md")
    ).lower()
    return {word for word in words if len(word) > 3 and word.lower() not in public}


def test_no_private_word_of_the_demo_is_in_any_byte_of_the_book(built_book: Path) -> None:
    words = private_words()
    assert len(words) >= 10
    for path in built_book.rglob("*"):
        if path.is_file():
            data = path.read_bytes().lower()
            found = [word for word in words if word.lower().encode() in data]
            assert found == [], path


def test_a_programs_own_database_is_no_list(tmp_path: Path) -> None:
    folder = small_book(tmp_path)
    text = "giving list: Winter\nhouseholds:\n  - name: Ysolde Fennimore\n"
    (folder / ".cache.db").write_bytes(b"SQLite format 3\0\x10\0\1" + text.encode() + b"\0\0")
    assert not know_private_words(open_book(folder / "mkdocs.yml")).known
    (folder / "kept.txt").write_text(text, encoding="utf-8")
    assert know_private_words(open_book(folder / "mkdocs.yml")).known
