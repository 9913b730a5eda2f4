"""Write core/larder/index.json anew: `python tests/data/make_larder_index.py`.

Every name of every food, so that a command looks them up and need not read the tables.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent.parent / "builder")]

from stillroom.core.larder.index import INDEX, build_index  # noqa: E402


def index_text() -> str:
    """Return the file as it ought to be: one food or name to a line, so that changes read well."""
    index = build_index()
    parts = [f'"of": {json.dumps(index["of"])}']
    for key in ("rows", "names"):
        lines = ",\n".join(f"{_line(name)}:{_line(row)}" for name, row in index[key].items())
        parts.append(f'"{key}": {{\n{lines}\n}}')
    for_each = ",\n".join(
        f"{_line(language)}:{_line(names)}" for language, names in index["foreign"].items()
    )
    parts.append(f'"foreign": {{\n{for_each}\n}}')
    parts.append(f'"harmless": {_line(index["harmless"])}')
    return "{" + ",\n".join(parts) + "}\n"


def _line(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


if __name__ == "__main__":
    INDEX.write_text(index_text(), encoding="utf-8")
