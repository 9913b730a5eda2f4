"""`mkdocs serve` builds again in one run: a harmless save changes nothing and breaks nothing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from stillroom.core.loading import load_recipe

ROOT = Path(__file__).resolve().parents[2]
SAVES = {
    "a blank line at the end": lambda text: text + "\n",
    "more blank lines": lambda text: text + "\n\n\n",
    "blanks at the ends of lines": lambda text: text.replace("\n\n", "  \n \n"),
    "ends of lines of Windows": lambda text: text.replace("\n", "\r\n"),
    "a mark of UTF-8": lambda text: "\ufeff" + text,
}


@pytest.mark.parametrize("save", SAVES)
def test_a_recipe_saved_without_a_change_is_the_same_recipe(tmp_path: Path, save: str) -> None:
    for source in sorted((ROOT / "recipes").glob("*.md")):
        path = tmp_path / source.name
        shutil.copy(source, path)
        before = load_recipe(path, path.name)
        path.write_bytes(SAVES[save](source.read_text(encoding="utf-8")).encode())
        after = load_recipe(path, path.name)
        if after == before:
            assert after is before
            assert all(a is b for a, b in zip(after.ingredients, before.ingredients, strict=True))


def test_the_book_is_built_again_after_harmless_saves(tmp_path: Path) -> None:
    for name in ("recipes", "site_demo"):
        shutil.copytree(ROOT / name, tmp_path / name)
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)

    def built() -> dict[str, bytes]:
        site = tmp_path / "out"
        config = load_config(str(tmp_path / "mkdocs.yml"), site_dir=str(site))
        config.plugins.on_startup(command="serve", dirty=False)
        build(config)
        files = (path for path in site.rglob("*") if path.is_file() and path.suffix == ".html")
        return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}

    first = built()
    for save in SAVES:
        for path in sorted((tmp_path / "recipes").glob("*.md")):
            text = (ROOT / "recipes" / path.name).read_text(encoding="utf-8")
            path.write_bytes(SAVES[save](text).encode())
        again = built()
        assert set(again) == set(first)
        if "blanks" not in save:  # two blanks before a line's end are a break in Markdown
            assert again == first, save
