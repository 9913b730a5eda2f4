"""The same book gives the same bytes, wherever, in whatever zone and language it is built."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SURROUNDINGS = (
    {"TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONHASHSEED": "1", "PYTHONUTF8": "1"},
    {"TZ": "America/Los_Angeles", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "77"},
)


NOON = 1795867200


def build_in(folder: Path, surroundings: dict[str, str], when: int = NOON) -> dict[str, bytes]:
    for name in ("recipes", "site_demo"):
        shutil.copytree(ROOT / name, folder / name, dirs_exist_ok=True)
    shutil.copy(ROOT / "mkdocs.yml", folder)
    # noon of one day in Greenwich, which is no longer or not yet that day in the two zones
    environment = {**os.environ, **surroundings, "SOURCE_DATE_EPOCH": str(when)}
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-q", "--strict"],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stderr
    site = folder / "site"
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


def test_the_book_is_the_same_to_the_byte(tmp_path: Path) -> None:
    folders = (tmp_path / "a", tmp_path / "quite another" / "place")
    one, other = (
        build_in(folder, around) for folder, around in zip(folders, SURROUNDINGS, strict=True)
    )
    assert list(one) == list(other)
    assert [name for name in one if one[name] != other[name]] == []
    assert len(one) > 150
    mine = str(tmp_path).encode()
    assert [name for name, data in one.items() if mine in data] == []


def test_the_turn_of_the_day_changes_only_what_names_the_day(tmp_path: Path) -> None:
    around = SURROUNDINGS[1]
    one = build_in(tmp_path, around)
    other = build_in(tmp_path, around, NOON + 24 * 60 * 60)
    changed = [name for name in one if one[name] != other[name]]
    # a calendar says when it was last revised, a map of the site when each page was built
    beside = {name for name in changed if name.endswith(".ics")}
    assert set(changed) - beside == {"sitemap.xml", "sitemap.xml.gz"}
    assert len(beside) <= len(list((ROOT / "recipes").glob("*.md")))
