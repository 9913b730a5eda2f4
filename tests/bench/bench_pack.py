"""How long a whole pack takes for 12, 60 and 500 households, and how much memory: figures only.

Run: python tests/bench/bench_pack.py [households ...]. Memory is that of the command and of all it
starts, together, looked at twenty times a second (Linux); time is the processor's and the clock's.
"""

from __future__ import annotations

import os
import random
import resource
import shutil
import subprocess
import sys
import tempfile
import time
from copy import deepcopy
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).resolve().parents[2]
NEEDS: list[dict[str, Any]] = [
    {}, {}, {}, {},
    {"avoid": ["gluten"]}, {"avoid": ["nuts"]}, {"avoid": ["milk"]}, {"avoid": ["alcohol"]},
    {"avoid": ["animal products"]}, {"children": [6, 9]}, {"children": [2]},
    {"children": ["8 months"]}, {"pregnant": True},
    {"basket": "parcel", "delivery": "by post"},
]  # fmt: skip


def large_list(households: int, seed: int = 1) -> dict[str, Any]:
    """Return the demo book's list with so many invented households, made as much of."""
    dice = random.Random(seed)
    demo = ROOT / "site_demo" / "giving" / "christmas-2027.yml"
    data: dict[str, Any] = yaml.safe_load(demo.read_text(encoding="utf-8"))
    times = max(1, -(-households // 12))
    for make in data["makes"]:
        make["batches"] = make["batches"] * times
    slugs = [make["recipe"] for make in data["makes"]]
    data["households"] = [
        {
            "name": f"Household {n}",
            "to": f"Number {n}",
            "basket": dice.choice(["small", "small", "large"]),
            "adults": 2,
            **deepcopy(dice.choice(NEEDS)),
            **({"likes": dice.sample(slugs, 2)} if dice.random() < 0.2 else {}),
            **({"had": {2026: dice.sample(slugs, 2)}} if dice.random() < 0.3 else {}),
        }
        for n in range(1, households + 1)
    ]
    stock = data["stock"]
    stock["vessels"] = {name: count * times for name, count in stock["vessels"].items()}
    data["hours"] = {"every month": 8 * times, "october": 14 * times, "december": 16 * times}
    return data


def _memory(root: int) -> int:
    """Return the bytes that a process and all below it hold (shared pages once, by parts)."""
    below: dict[int, list[int]] = {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdigit():
            try:
                parent = int(
                    (entry / "stat").read_text(encoding="utf-8").rpartition(")")[2].split()[1]
                )
            except (OSError, IndexError):
                continue
            below.setdefault(parent, []).append(int(entry.name))
    held, waiting = 0, [root]
    while waiting:
        one = waiting.pop()
        waiting += below.get(one, [])
        try:
            rows = Path(f"/proc/{one}/smaps_rollup").read_text(encoding="utf-8").splitlines()
        except OSError:
            continue
        held += sum(int(row.split()[1]) for row in rows if row.startswith("Pss:"))
    return held * 1024


def measure(households: int, *words: str) -> str:
    """Write a pack of so many households; return its figures as one line."""
    with tempfile.TemporaryDirectory() as folder:
        book = Path(folder) / "book"
        book.mkdir()
        for name in ("recipes", "site_demo"):
            shutil.copytree(ROOT / name, book / name)
        shutil.copy(ROOT / "mkdocs.yml", book / "mkdocs.yml")
        (book / "private").mkdir()
        listed = book / "private" / "list.yml"
        listed.write_text(yaml.safe_dump(large_list(households), sort_keys=False), encoding="utf-8")
        command = [
            sys.executable, "-m", "stillroom.cli", "pack", str(listed),
            "--today", "2027-01-10", *words,
        ]  # fmt: skip
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        begun, peak = time.monotonic(), 0
        with subprocess.Popen(
            command, cwd=book, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
            env=os.environ | {"COLUMNS": "200"},
        ) as running:  # fmt: skip
            while running.poll() is None:
                peak = max(peak, _memory(running.pid))
                time.sleep(0.05)
            assert running.stdout is not None
            told = running.stdout.read().splitlines()
        said = [row for row in told if "Planned in" in row] or told[-2:]
        took = time.monotonic() - begun
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        used = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
        written = sum(one.stat().st_size for one in book.rglob("private/**/*") if one.is_file())
    return (
        f"{households:4} households: {took:6.1f} s by the clock, {used:6.1f} s of processor, "
        f"{peak / 1e6:6.0f} MB, {written / 1e6:.1f} MB written. {' '.join(said)}"
    )


if __name__ == "__main__":
    for count in [int(word) for word in sys.argv[1:]] or [12, 60, 500]:
        print(measure(count), flush=True)
