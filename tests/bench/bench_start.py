"""What the larder of foods adds to the start of a command, and to the first foods it looks up.

Run: python tests/bench/bench_start.py [times]. Each figure is the middle of so many fresh
processes, in milliseconds of the processor's own time, so that other work on the machine counts
little. It prints figures and asserts nothing: times belong to a machine.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
from pathlib import Path

BUILDER = Path(__file__).resolve().parents[2] / "builder"
PHRASES = ("butter", "unwaxed Seville oranges, thinly peeled", "2 split vanilla pods", "moon flour")
# the modules are there already: what is measured is the data, as a command would feel them
CODE = """
import time
from stillroom.core.larder import food_reading, index, index_file
begun = time.process_time()
if LARDER:
    index_file.fingerprint()
    checked = time.process_time()
    index.load_index()
    read = time.process_time()
    food_reading.read_food(FIRST)
    first = time.process_time()
    for phrase in MORE:
        food_reading.read_food(phrase)
else:
    checked = read = first = begun
times = (begun, checked, read, first, time.process_time())
print(*(1000 * (later - sooner) for sooner, later in zip(times, times[1:])), 1000 * times[-1])
"""


def one_start(larder: bool) -> list[float]:
    """Return the parts of one start: check, read, first food, three more; and the whole."""
    given = f"LARDER, FIRST, MORE = {larder}, {PHRASES[0]!r}, {PHRASES[1:]!r}"
    code = f"{given}\n{CODE}"
    paths = {**os.environ, "PYTHONPATH": str(BUILDER)}
    run = [sys.executable, "-c", code]
    return [float(word) for word in subprocess.check_output(run, env=paths, text=True).split()]


def middle(runs: list[list[float]]) -> list[float]:
    """Return the median of each figure."""
    return [statistics.median(figures) for figures in zip(*runs, strict=True)]


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 15
    check, read, first, more, whole = middle([one_start(larder=True) for _ in range(count)])
    *_, bare = middle([one_start(larder=False) for _ in range(count)])
    print(f"data unchanged since the index was made? {check:5.1f} ms")
    print(f"the index read                           {read:5.1f} ms")
    print(f"the first food found                     {first:5.1f} ms")
    print(f"three more (one of them unknown)         {more:5.1f} ms")
    print(f"a start with the larder {whole:.1f} ms, without {bare:.1f} ms")
    print(f"the larder adds {check + read + first + more:.1f} ms")
