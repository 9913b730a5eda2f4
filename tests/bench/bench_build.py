"""How long books of 50 to 2,000 recipes take, beside MkDocs and Material alone with as many pages.

Run: python tests/bench/bench_build.py [number ...]. For each number one run of both sides: cold,
again with all kept, and after one recipe was changed; and the memory of each. It prints figures
and asserts nothing: times belong to a machine, ratios less so. Memory is that of the process that
builds, at its most.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

from long_book import write_book, write_plain

BUILDER = Path(__file__).resolve().parents[2] / "builder"
COUNTS = (50, 200, 1000, 2000)


@dataclass(frozen=True)
class Run:
    """One build: its time on the wall, the processors' time, and the memory at its most."""

    seconds: float
    worked: float
    megabytes: float


def build(folder: Path, kept: Path) -> Run:
    """Build a book in a new process; what it keeps for the next time goes into `kept`."""
    around = {**os.environ, "PYTHONPATH": str(BUILDER), "STILLROOM_CACHE": str(kept)}
    around["NO_MKDOCS_2_WARNING"] = "1"
    begun = time.perf_counter()
    asked = [sys.executable, "-m", "mkdocs", "build", "--quiet"]
    made = subprocess.Popen(asked, cwd=folder, env=around)
    _, status, used = os.wait4(made.pid, 0)
    seconds = time.perf_counter() - begun
    made.returncode = os.waitstatus_to_exitcode(status)
    if made.returncode:
        raise SystemExit(f"the build of {folder} failed")
    return Run(seconds, used.ru_utime + used.ru_stime, used.ru_maxrss / 1000)


def change_one(folder: Path) -> None:
    """Write a sentence more into one recipe."""
    recipe = folder / "recipes" / "recipe-7.md"
    recipe.write_text(recipe.read_text(encoding="utf-8") + " A line more.\n", encoding="utf-8")


def measure(count: int) -> tuple[float, float]:
    """Print the figures of one number of recipes; return the memory of both sides."""
    with tempfile.TemporaryDirectory() as name:
        book, plain, kept = (Path(name, part) for part in ("book", "plain", "kept"))
        write_book(book, count)
        write_plain(plain, count)
        stock = build(plain, kept)
        cold = build(book, kept)
        again = build(book, kept)
        change_one(book)
        changed = build(book, kept)
        pages = list((book / "site" / "r").rglob("*.html"))
        sizes = {
            "page": sum(path.stat().st_size for path in pages) / len(pages),
            "browse": (book / "site" / "browse" / "index.html").stat().st_size,
            "print room": (book / "site" / "print-room" / "index.html").stat().st_size,
            "search": (book / "site" / "search" / "search_index.json").stat().st_size,
        }
    print(f"{count:5d} recipes        stock   {stock.seconds:7.2f} s {stock.megabytes:6.0f} MB")
    for called, run in (("cold", cold), ("again", again), ("one changed", changed)):
        beside, of_cold = run.seconds / stock.seconds, run.seconds / cold.seconds
        print(
            f"      {called:14} {run.seconds:7.2f} s {run.megabytes:6.0f} MB, "
            f"{beside:5.2f} x stock, {of_cold:4.2f} x cold, "
            f"{run.worked:7.2f} s of processor ({run.worked / stock.worked:.2f} x)"
        )
    print("      " + ", ".join(f"{what} {size / 1000:.0f} kB" for what, size in sizes.items()))
    sys.stdout.flush()
    return stock.megabytes, cold.megabytes


def main() -> None:
    """Print every number's figures, and what one recipe more adds to the memory."""
    counts = sorted(int(word) for word in sys.argv[1:]) or COUNTS
    memory = {count: measure(count) for count in counts}
    if len(memory) > 1:
        least, most = min(memory), max(memory)
        ours, stock = (
            1000 * (memory[most][side] - memory[least][side]) / (most - least) for side in (1, 0)
        )
        print(f"memory a recipe: {ours:.0f} kB, a plain page {stock:.0f} kB")


if __name__ == "__main__":
    main()
