"""What differs on Windows and macOS, by simulation: names, encodings, files held open."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterable
from pathlib import Path

import pytest

from giving.lists import ROOT, TODAY, demo_book, demo_recipes
from stillroom.core.words.problems import ProblemsFound
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.reading import load_giving_list
from stillroom.saving import whole

# Windows: signs and names that no file may have, and how long a whole path may be (from memory)
FORBIDDEN = re.compile(r'[<>:"\\|?*\x00-\x1f]|[. ]$')
DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])(\..*)?", re.IGNORECASE)


def unfit(names: Iterable[str]) -> list[str]:
    """Return the names that Windows does not take, or that are one where case is no difference."""
    listed = list(names)
    folded = Counter(name.casefold() for name in listed)
    return [
        name
        for name in listed
        if folded[name.casefold()] > 1
        or len(name) > 150
        or any(FORBIDDEN.search(part) or DEVICES.fullmatch(part) for part in name.split("/"))
    ]


def test_names_that_do_not_fit_are_found() -> None:
    assert len(unfit(["a/con.md", "b?.md", "c.", "A.md", "a.md", "good.md"])) == 5


def test_every_file_of_the_site_has_a_name_for_every_system(built_book: Path) -> None:
    files = [path.relative_to(built_book).as_posix() for path in built_book.rglob("*")]
    assert len(files) > 150
    assert unfit(files) == []


def test_every_file_of_a_pack_has_a_name_for_every_system() -> None:
    read = load_giving_list(ROOT / "site_demo" / "giving" / "christmas-2027.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(60, 0.5))
    assert unfit(pack_files(pack)) == []


class Held(PermissionError):
    """What Windows raises for a file that another program holds; its number is Windows' own."""

    winerror = 32


def test_a_file_held_for_a_moment_is_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    tries: list[int] = []
    real = os.replace

    def held_twice(one: Path, other: Path) -> None:
        tries.append(1)
        if len(tries) < 3:
            raise Held(13, "held")
        real(one, other)

    monkeypatch.setattr(whole, "_WAIT_SECONDS", 0)
    monkeypatch.setattr(os, "replace", held_twice)
    whole.write_whole(tmp_path / "cards.pdf", b"new")
    assert (tmp_path / "cards.pdf").read_bytes() == b"new"


def test_a_file_held_for_good_is_told_and_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def held(one: Path, other: Path) -> None:
        raise Held(13, "held")

    out = tmp_path / "cards.pdf"
    out.write_bytes(b"old")
    monkeypatch.setattr(whole, "_WAIT_SECONDS", 0)
    monkeypatch.setattr(os, "replace", held)
    with pytest.raises(ProblemsFound, match="open in another program"):
        whole.write_whole(out, b"new")
    assert out.read_bytes() == b"old"
    assert [path.name for path in tmp_path.iterdir()] == ["cards.pdf"]


# an encoding taken from the system instead of named is another one on every computer
RUN = (
    "import sys, warnings; warnings.filterwarnings('error', category=EncodingWarning, "
    "module='stillroom'); from stillroom.cli import main; main(sys.argv[1:])"
)
COMMANDS = {
    "check": ["check"],
    "scale": ["scale", "recipes/quince-ratafia.md", "--makes", "3 l"],
    "dates": ["dates", "recipes/heather-mead.md", "--give", "2027-12-18"],
    "cards": ["print", "cards", "recipes/bramble-jelly.md", "--out"],
}


@pytest.mark.parametrize("command", COMMANDS)
def test_no_command_takes_its_encoding_from_the_system(command: str, tmp_path: Path) -> None:
    words = COMMANDS[command] + ([str(tmp_path / "é.pdf")] if command == "cards" else [])
    around = {**os.environ, "PYTHONIOENCODING": "cp437", "PYTHONUTF8": "0", "NO_COLOR": "1"}
    done = subprocess.run(
        [sys.executable, "-X", "warn_default_encoding", "-c", RUN, *words],
        cwd=ROOT, env=around, capture_output=True, check=False,
    )  # fmt: skip
    said = (done.stdout + done.stderr).decode("utf-8", "replace")
    assert done.returncode == 0, said
    assert "Traceback" not in said
