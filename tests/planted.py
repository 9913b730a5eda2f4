"""The demo book built with private words all around it: the book that every test reads.

A giving list with a word in every place that takes one, packs made of it and private notes are laid
beside the book and among its folders. Nothing of them may reach the site, so the site is the demo
book's own, and `test_wall.py` seeks them in it.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import time
from dataclasses import dataclass
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[1]
LISTS = (
    "giving/list.yml",
    "list.yaml",
    "recipes.private/list.yml",
    "site_demo/giving/second.yml",
)
LOGS = ("giving/log.yml", "log.yml", "site_demo/giving/log.yml")
NOTES = ("notes/private.md", ".env", ".git-notes", "site_demo/giving/README.md")
PACKS = ("private", "private-before", "site_demo/private")
SAID = "said.json"
DAY = 24 * 60 * 60


@dataclass(frozen=True)
class Planted:
    """A folder with a book and what is private around it."""

    folder: Path
    words: list[str]
    """What was planted and stands nowhere else."""
    names: list[str]
    """Who is on the demo book's own list."""
    built_at: int
    """The moment that the build was told, noon of its day in Greenwich, in seconds."""

    @property
    def site(self) -> Path:
        return self.folder / "site"

    @property
    def pack(self) -> dict[str, bytes]:
        """Return the files of the pack by their path in it."""
        pack = self.folder / PACKS[0]
        files = [path for path in sorted(pack.rglob("*")) if path.is_file()]
        return {path.relative_to(pack).as_posix(): path.read_bytes() for path in files}


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


def planted_log(word: Words) -> dict:
    """Return a log with a private word in every place that takes one."""
    day = "2027-12-18"
    return {
        "giving log": [
            {"day": day, "given": word("log given"), "things": ["rosemary-salt"]},
            {"day": day, "pinned": word("log pinned"), "of": ["rosemary-salt"]},
            {"day": day, "gave back": word("log back"), "words": word("log words")},
            {"day": day, "bought": word("log bought"), "amount": "1 kg", "paid": 9.99},
            {"day": day, "change": word("log change")},
        ]
    }


def copy_demo(folder: Path) -> None:
    """Copy the demo book, and its private list with it, into a folder."""
    for name in ("recipes", "site_demo"):
        shutil.copytree(ROOT / name, folder / name, dirs_exist_ok=True)
    shutil.copy(ROOT / "mkdocs.yml", folder)


def lay_pack(folder: Path) -> None:
    """Make the pack of the planted list and lay it in several places."""
    # only who builds the book waits for the giving side to load
    from giving.lists import TODAY, demo_recipes
    from stillroom.core.book import open_book
    from stillroom.giving.pack import Effort, pack_files, work_out
    from stillroom.giving.reading import load_giving_list
    from stillroom.giving.swapping import swap_in

    settings = open_book(folder / "mkdocs.yml").settings
    read = load_giving_list(folder / LISTS[0])
    files = pack_files(work_out(read, demo_recipes(), settings, TODAY, Effort(5, 0.1)))
    for place in PACKS:
        swap_in(files, folder / place)


def demo_names(folder: Path) -> list[str]:
    demo = yaml.safe_load((folder / "site_demo/giving/christmas-2027.yml").read_text("utf-8"))
    names = [household["name"] for household in demo["households"]]
    return names + [household["to"] for household in demo["households"] if len(household["to"]) > 8]


def build_book(folder: Path, built_at: int, around: dict[str, str]) -> None:
    """Build a book in a process of its own, at a moment and with more in its surroundings."""
    done = subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "--strict"],
        cwd=folder,
        env={**os.environ, **around, "SOURCE_DATE_EPOCH": str(built_at)},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stderr


def build_planted(folder: Path) -> None:
    """Lay out the book with what is private around it, and build it as the README does."""
    copy_demo(folder)
    word = Words()
    text = yaml.safe_dump(planted_list(word), sort_keys=False)
    for place in LISTS:
        (folder / place).parent.mkdir(exist_ok=True)
        (folder / place).write_text(text, encoding="utf-8")
    for place in NOTES:
        (folder / place).parent.mkdir(exist_ok=True)
        (folder / place).write_text(f"secret: {word('file')}\n", encoding="utf-8")
    lay_pack(folder)  # of the list alone: what a log says belongs to no invented season
    log = yaml.safe_dump(planted_log(word), sort_keys=False)
    for place in LOGS:
        (folder / place).write_text(log, encoding="utf-8")
    built_at = int(time.time()) // DAY * DAY + DAY // 2
    said = {"words": word.given, "names": demo_names(folder), "built_at": built_at}
    (folder / SAID).write_text(json.dumps(said), encoding="utf-8")
    build_book(folder, built_at, {})


def read_planted(folder: Path) -> Planted:
    said = json.loads((folder / SAID).read_text(encoding="utf-8"))
    return Planted(folder, said["words"], said["names"], said["built_at"])
