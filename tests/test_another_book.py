"""A book of somebody's own says nothing of the demo book: on paper, in the e-book, in its pack."""

from __future__ import annotations

import io
import re
import zipfile
from pathlib import Path

import pypdf
import pytest
from click.testing import CliRunner

from giving.lists import write_somebody
from stillroom.cli import main

# words of the demo book that stand nowhere else: its house, its makers, its address
DEMO = re.compile(rb"thistledown|morwen|ansgar|skerrow|penhallick|kerensa", re.IGNORECASE)


@pytest.fixture(scope="module")
def own(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("own") / "book"
    begun = CliRunner().invoke(main, ["start", str(root), "--name", "Fennimore’s cupboard"])
    assert begun.exit_code == 0, begun.output
    return root


def run(own: Path, *words: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(own)
        done = CliRunner().invoke(main, list(words))
    assert done.exit_code in (0, 1), done.output
    assert "Traceback" not in done.output


def said_in(path: Path) -> bytes:
    """Return all that a file says: a PDF's words and facts, an archive's files, else its bytes."""
    data = path.read_bytes()
    if data.startswith(b"%PDF"):
        reader = pypdf.PdfReader(io.BytesIO(data))
        pages = " ".join(page.extract_text() for page in reader.pages)
        return f"{pages} {dict(reader.metadata or {})}".encode()
    if data.startswith(b"PK"):
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            return b" ".join(archive.read(name) for name in archive.namelist())
    return data


def test_no_word_of_the_demo_stands_in_what_another_book_prints(own: Path) -> None:
    for what in ("book", "epub", "cards", "tags", "year"):
        ending = "epub" if what == "epub" else "pdf"
        out = own / "print" / f"{what}.{ending}"
        run(own, "print", what, "--out", str(out))
        said = said_in(out)
        assert b"Fennimore" in said, what
        assert DEMO.findall(said) == [], what


def test_no_word_of_the_demo_stands_in_another_book_s_pack(own: Path) -> None:
    (listed,) = (own / "giving").glob("*.yml")
    write_somebody(listed)
    run(own, "pack", str(listed), "--seconds", "3")
    pack = own / "private"
    files = [path for path in pack.rglob("*") if path.is_file() and path.suffix != ".ttf"]
    assert any(path.name == "cards.pdf" for path in files)
    for path in files:
        assert DEMO.findall(said_in(path)) == [], path.name
