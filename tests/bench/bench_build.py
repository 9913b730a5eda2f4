"""How long books of 50 to 2,000 recipes take, beside MkDocs and Material alone with as many pages.

Run: python tests/bench/bench_build.py [number ...]. For each number one run of both sides: cold,
again with all kept, after one recipe was changed, after one was changed while the book is served,
and over the earlier site by another version of the program, for which nothing is kept; and the
memory of each. It prints figures and asserts nothing: times belong to a machine,
ratios less so, and of two figures the processors' time is the better one while others work.
Memory is that of the process that builds, at its most. Stillroom runs as it does where it is
installed, its modules compiled: a clone is compiled at each start where Python may write nothing.
"""

from __future__ import annotations

import compileall
import json
import os
import shutil
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


def installed(place: Path) -> dict[str, str]:
    """Copy the package into a folder, compiled; return the surroundings in which it is found."""
    shutil.copytree(BUILDER, place)
    compileall.compile_dir(place, quiet=1)
    return {**os.environ, "PYTHONPATH": str(place), "NO_MKDOCS_2_WARNING": "1"}


def build(folder: Path, around: dict[str, str]) -> Run:
    """Build a book in a new process; what it keeps for the next time goes where `around` says."""
    begun = time.perf_counter()
    asked = [sys.executable, "-m", "mkdocs", "build", "--quiet"]
    made = subprocess.Popen(asked, cwd=folder, env=around)
    _, status, used = os.wait4(made.pid, 0)
    seconds = time.perf_counter() - begun
    made.returncode = os.waitstatus_to_exitcode(status)
    if made.returncode:
        raise SystemExit(f"the build of {folder} failed")
    return Run(seconds, used.ru_utime + used.ru_stime, used.ru_maxrss / 1000)


# what `mkdocs serve` does at its start and at every change, without waiting for somebody to save
SERVING = """
import json, resource, sys, time
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config

site, changed = Path(sys.argv[1]), Path(sys.argv[2])


def build_it():
    build(load_config("mkdocs.yml", site_dir=str(site), site_url="http://127.0.0.1:8000/"))


class Server:  # what the book asks of that of MkDocs
    builder = staticmethod(build_it)
    _inject_js_into_html = None

    def watch(self, place):
        pass  # each change is told


def used():
    mine = [resource.getrusage(whose) for whose in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN)]
    return time.perf_counter(), sum(one.ru_utime + one.ru_stime for one in mine)


config = load_config("mkdocs.yml", site_dir=str(site), site_url="http://127.0.0.1:8000/")
config.plugins.on_startup(command="serve", dirty=False)
build_it()
server = Server()
config.plugins.on_serve(server, config=config, builder=build_it)
serve = server.builder
runs = []
for count in range(3):
    changed.write_text(changed.read_text(encoding="utf-8") + " And one.\\n", encoding="utf-8")
    begun = used()
    serve()
    runs.append([after - before for before, after in zip(begun, used())])
assert " And one. And one. And one." in " ".join(
    next(site.glob(f"r/{changed.stem}/index.html")).read_text(encoding="utf-8").split()
)
print(json.dumps(runs[1:]))  # the first change after the start sets all pages once more
"""


def change_one(folder: Path) -> Path:
    """Write a sentence more into one recipe."""
    recipe = folder / "recipes" / "recipe-7.md"
    recipe.write_text(recipe.read_text(encoding="utf-8") + " A line more.\n", encoding="utf-8")
    return recipe


def change_served(folder: Path, around: dict[str, str]) -> Run:
    """Change one recipe while its book is served; the better of two changes, memory left out."""
    asked = [sys.executable, "-c", SERVING, str(folder / "served"), str(change_one(folder))]
    said = subprocess.run(
        asked, cwd=folder, env=around, check=True, stdout=subprocess.PIPE, encoding="utf-8"
    )
    seconds, worked = min(json.loads(said.stdout.splitlines()[-1]), key=lambda run: run[1])
    return Run(seconds, worked, 0)


def become_another(place: Path) -> None:
    """Make the copied package another version, as all that is kept is told by."""
    with (place / "stillroom" / "__init__.py").open("a", encoding="utf-8") as file:
        file.write("# another\n")
    compileall.compile_dir(place, quiet=1)


def measure(count: int) -> tuple[float, float]:
    """Print the figures of one number of recipes; return the memory of both sides."""
    with tempfile.TemporaryDirectory() as name:
        book, plain, kept = (Path(name, part) for part in ("book", "plain", "kept"))
        write_book(book, count)
        write_plain(plain, count)
        around = installed(Path(name, "builder")) | {"STILLROOM_CACHE": str(kept)}
        stock = build(plain, around)
        cold = build(book, around)
        again = build(book, around)
        change_one(book)
        changed = build(book, around)
        served = change_served(book, around)
        become_another(Path(name, "builder"))
        updated = build(book, around)
        pages = list((book / "site" / "r").rglob("*.html"))
        sizes = {
            "page": sum(path.stat().st_size for path in pages) / len(pages),
            "browse": (book / "site" / "browse" / "index.html").stat().st_size,
            "print room": (book / "site" / "print-room" / "index.html").stat().st_size,
            "search": (book / "site" / "search" / "search_index.json").stat().st_size,
        }
    print(f"{count:5d} recipes        stock   {stock.seconds:7.2f} s {stock.megabytes:6.0f} MB")
    for called, run in (
        ("cold", cold),
        ("again", again),
        ("one changed", changed),
        ("served", served),
        ("other version", updated),
    ):
        beside, of_cold = run.seconds / stock.seconds, run.seconds / cold.seconds
        print(
            f"      {called:14} {run.seconds:7.2f} s {run.megabytes or float('nan'):6.0f} MB, "
            f"{beside:5.2f} x stock, {of_cold:4.2f} x cold, {run.worked:7.2f} s of processor "
            f"({run.worked / stock.worked:.2f} x stock, {run.worked / cold.worked:.2f} x cold)"
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
