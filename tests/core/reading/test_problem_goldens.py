"""Every kind of mistake a cook can make in a recipe file, with the message it must get.

One file a case under tests/golden/problems: `file` is what was written (named `slug`.md),
`says` every line that comes out. `python tests/core/test_problem_goldens.py --rewrite` writes
what comes out now into them; read the difference as you would read code.
"""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
import yaml

from stillroom.core.reading.loading import load_recipes
from stillroom.core.words.problems import ProblemsFound

CASES = sorted((Path(__file__).parents[2] / "golden" / "problems").glob("*.yml"))


def what_is_said(case: dict, folder: Path) -> list[str]:
    folder.mkdir(parents=True, exist_ok=True)
    pictures = folder / "pictures"
    pictures.mkdir()
    (pictures / "quince.svg").write_text("<svg/>", encoding="utf-8")
    files = case.get("files") or {case.get("slug", "quince"): case["file"]}
    for slug, text in files.items():
        (folder / f"{slug}.md").write_bytes(
            text.encode("latin-1" if case.get("latin") else "utf-8")
        )
    try:
        load_recipes(folder.glob("*.md"), folder, "metric", pictures)
    except ProblemsFound as found:
        return [str(problem) for problem in found.problems]
    return []


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_mistake_gets_its_message(path: Path, tmp_path: Path) -> None:
    case = yaml.safe_load(path.read_text(encoding="utf-8"))
    assert what_is_said(case, tmp_path / "book") == case["says"]


def test_there_are_mistakes_to_try() -> None:
    assert len(CASES) >= 40


def _rewrite() -> None:
    import tempfile

    for path in CASES:
        case = yaml.safe_load(path.read_text(encoding="utf-8"))
        with tempfile.TemporaryDirectory() as folder:
            case["says"] = what_is_said(case, Path(folder) / "book")
        path.write_text(
            yaml.safe_dump(case, sort_keys=False, allow_unicode=True, width=100), encoding="utf-8"
        )


if __name__ == "__main__" and "--rewrite" in sys.argv:
    _rewrite()
