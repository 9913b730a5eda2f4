"""The demo book, built once for all tests that read it."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import settings

# no test asserts a time: a machine that pauses for a moment fails none
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def built_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Build the demo book as the README does, into a folder of its own."""
    site = tmp_path_factory.mktemp("book") / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(site)]
    built = subprocess.run(
        command, cwd=ROOT, capture_output=True, text=True, encoding="utf-8", check=False
    )
    assert built.returncode == 0, built.stderr
    return site
