"""Write core/larder/index.txt anew: `python tests/data/make_larder_index.py`.

Every name of every food, so that a command looks them up and need not read the tables.
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent.parent / "builder")]

from stillroom.core.larder.index import build_index  # noqa: E402
from stillroom.core.larder.index_file import INDEX, write_index  # noqa: E402

if __name__ == "__main__":
    INDEX.write_text(write_index(build_index()), encoding="utf-8")
