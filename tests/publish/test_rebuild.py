"""`mkdocs serve` builds again in one run: a harmless save changes nothing and breaks nothing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from planted import copy_demo
from stillroom.core.reading.loading import load_recipe

ROOT = Path(__file__).resolve().parents[2]
RECIPES = sorted((ROOT / "recipes").glob("*.md"))
SAVES = {
    "a blank line at the end": lambda text: text + "\n",
    "more blank lines": lambda text: text + "\n\n\n",
    "blanks at the ends of lines": lambda text: text.replace("\n\n", "  \n \n"),
    "ends of lines of Windows": lambda text: text.replace("\n", "\r\n"),
    "a mark of UTF-8": lambda text: "\ufeff" + text,
}


# two blanks before a line's end are a break in Markdown: such a save changes the words
BREAKS = "blanks at the ends of lines"
HARMLESS = [name for name in SAVES if name != BREAKS]


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
@pytest.mark.parametrize("save", HARMLESS)
def test_a_recipe_saved_without_a_change_is_the_same_recipe(
    tmp_path: Path, save: str, path: Path
) -> None:
    saved = tmp_path / path.name
    shutil.copy(path, saved)
    before = load_recipe(saved, saved.name)
    saved.write_bytes(SAVES[save](path.read_text(encoding="utf-8")).encode())
    after = load_recipe(saved, saved.name)
    assert after == before
    assert after is before
    assert all(a is b for a, b in zip(after.ingredients, before.ingredients, strict=True))


def test_the_book_is_built_again_after_harmless_saves(tmp_path: Path) -> None:
    """Each recipe is saved in another way, so that one build tries them all."""
    copy_demo(tmp_path)

    def built() -> dict[str, bytes]:
        site = tmp_path / "out"
        config = load_config(str(tmp_path / "mkdocs.yml"), site_dir=str(site))
        config.plugins.on_startup(command="serve", dirty=False)
        build(config)
        files = (path for path in site.rglob("*") if path.is_file() and path.suffix == ".html")
        return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}

    def save_all(saves: list[str]) -> None:
        for turn, path in enumerate(RECIPES):
            saved = SAVES[saves[turn % len(saves)]](path.read_text(encoding="utf-8"))
            (tmp_path / "recipes" / path.name).write_bytes(saved.encode())

    first = built()
    save_all(HARMLESS)
    assert built() == first
    save_all([BREAKS])
    assert set(built()) == set(first)
