"""The browser's scripts, linted and type-checked as they are written.

The checkers (oxlint and the TypeScript compiler with --checkJs) come from the npm registry by the
lock beside this file, into tests/javascript/node_modules, the first time they are wanted. Without
npm these tests are skipped on a reader's own machine, and say so; where CI is set they fail.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path
from typing import NoReturn

import pytest
from filelock import FileLock

from stillroom.publish.scripts import SCRIPTS, lay_scripts

HERE = Path(__file__).parent / "javascript"
INSTALLED = HERE / "node_modules"


def not_checked(why: str) -> NoReturn:
    """Say why the scripts were not checked: never in silence, and never at all in CI."""
    message = f"The scripts were not checked: {why} Install Node.js 20.19 or later with its npm."
    if os.environ.get("CI"):
        pytest.fail(message)
    pytest.skip(message)


def run(command: list[str], folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        command, cwd=folder, capture_output=True, text=True, encoding="utf-8", check=False
    )


def install(npm: str) -> str:
    """Install what the lock names, unless it is there; returns what npm said when it could not."""
    with FileLock(HERE / ".installing.lock"):
        noted = INSTALLED / "as-locked.json"
        locked = (HERE / "package-lock.json").read_text(encoding="utf-8")
        if noted.is_file() and noted.read_text(encoding="utf-8") == locked:
            return ""
        done = run([npm, "ci", "--no-audit", "--no-fund"], HERE)
        if done.returncode:
            return done.stderr.strip() or "npm ended with an error."
        noted.write_text(locked, encoding="utf-8")
    return ""


@pytest.fixture(scope="session")
def checkers() -> Path:
    """Return the folder of the checkers' programs."""
    npm = shutil.which("npm")
    if npm is None:
        not_checked("npm was not found.")
    said = install(npm)
    if said:
        not_checked(f"npm could not bring the checkers ({said[-300:]}).")
    return INSTALLED / ".bin"


@pytest.fixture
def written(tmp_path: Path) -> Path:
    """Lay the scripts out with their sentences, and the checkers' settings beside them."""
    lay_scripts(tmp_path)
    for name in ("tsconfig.json", "globals.d.ts", "data.d.ts", "oxlintrc.json"):
        shutil.copy(HERE / name, tmp_path)
    return tmp_path


def program(checkers: Path, name: str) -> str:
    found = shutil.which(name, path=str(checkers))
    assert found, f"{name} is not in {checkers}"
    return found


def lint(checkers: Path, folder: Path) -> subprocess.CompletedProcess[str]:
    return run([program(checkers, "oxlint"), "-c", "oxlintrc.json", "js"], folder)


def check_types(checkers: Path, folder: Path) -> subprocess.CompletedProcess[str]:
    return run([program(checkers, "tsc"), "-p", "tsconfig.json"], folder)


def test_the_linter_finds_nothing(checkers: Path, written: Path) -> None:
    done = lint(checkers, written)
    assert done.returncode == 0, done.stdout
    assert f"on {len(list(SCRIPTS.rglob('*.js')))} files" in done.stdout, "each script was read"


def test_the_types_hold(checkers: Path, written: Path) -> None:
    done = check_types(checkers, written)
    assert (done.returncode, done.stdout) == (0, "")


# a slip of each sort, and a word of what is said of it
SLIPS = {
    "a name that is nowhere": ("export const a = nowhere();", "nowhere", "nowhere"),
    "a number for a fraction's method": (
        'import { ONE } from "./amounts/fraction.js";\nexport const a = ONE.plsu(2);',
        None,
        "plsu",
    ),
    "a day that may be none": (
        'import { parseDay } from "./when/dates.js";\nexport const a = parseDay("").toFixed();',
        None,
        "possibly",
    ),
    "a value of which nothing is said": (
        "export const a = (b) => b.nowhere;",
        None,
        "implicitly has an 'any' type",
    ),
    "a name that no card has": (
        "/** @param {Design} design */\nexport const a = (design) => design.inks;",
        None,
        "inks",
    ),
    "what is never used": ("const a = 1;\nexport const b = 2;", "unused", "never read"),
    "a kind of value that is none": (
        'export const a = (b) => typeof b === "strin";',
        "strin",
        None,
    ),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_slips_are_found(checkers: Path, written: Path, slip: str) -> None:
    text, linted, typed = SLIPS[slip]
    (written / "js" / "slip.js").write_text(text, encoding="utf-8")
    if linted:
        done = lint(checkers, written)
        assert done.returncode
        assert linted in done.stdout
        assert "slip.js" in done.stdout
    if typed:
        done = check_types(checkers, written)
        assert done.returncode
        assert typed in done.stdout
        assert "slip.js" in done.stdout


def test_without_npm_it_is_said(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("CI", raising=False)
    with pytest.raises(pytest.skip.Exception, match="The scripts were not checked: npm"):
        not_checked("npm was not found.")
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match="The scripts were not checked: npm"):
        not_checked("npm was not found.")
