"""How long a book of 200 and of 1,000 recipes takes to build, and how large a page becomes.

Run: python tests/bench/bench_build.py [number ...]. Prints figures and asserts nothing: times
belong to a machine. The synthetic book repeats the demo's recipes under other names.
"""

from __future__ import annotations

import itertools
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import yaml

ROOT = Path(__file__).resolve().parents[2]


def write_book(folder: Path, count: int) -> None:
    """Write a book of `count` recipes without pictures into `folder`."""
    (folder / "pages").mkdir(parents=True)
    (folder / "recipes").mkdir()
    texts = [path.read_text(encoding="utf-8") for path in sorted((ROOT / "recipes").glob("*.md"))]
    for number, text in zip(range(count), itertools.cycle(texts), strict=False):
        lines = [
            f"{line} no. {number}" if line.startswith("title:") else line
            for line in text.splitlines()
            if not line.startswith(("picture", "was"))
        ]
        (folder / "recipes" / f"recipe-{number}.md").write_text("\n".join(lines), encoding="utf-8")
    config = {
        "site_name": "A long book",
        "site_url": "https://long.example/",
        "docs_dir": "pages",
        "theme": {"name": "material", "font": False},
        "plugins": ["search", "stillroom"],
    }
    (folder / "mkdocs.yml").write_text(yaml.safe_dump(config), encoding="utf-8")


def measure(count: int) -> str:
    """Build a book of `count` recipes; return the figures as one line."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write_book(folder, count)
        begun = time.perf_counter()
        subprocess.run([sys.executable, "-m", "mkdocs", "build", "--quiet"], cwd=folder, check=True)
        seconds = time.perf_counter() - begun
        sizes = [path.stat().st_size for path in (folder / "site" / "r").rglob("*.html")]
        index = (folder / "site" / "search" / "search_index.json").stat().st_size
    mean = sum(sizes) / len(sizes)
    return (
        f"{count:5d} recipes: {seconds:6.1f} s, {1000 * seconds / count:5.1f} ms each; "
        f"page {mean / 1000:.0f} kB, search {index / 1000:.0f} kB"
    )


if __name__ == "__main__":
    for wanted in [int(word) for word in sys.argv[1:]] or [50, 200, 1000]:
        print(measure(wanted), flush=True)
