"""The same book gives the same bytes, wherever, in whatever zone and language it is built.

The book that all tests read is one of the two compared, and private lists and packs lie around it;
the other is built without any, so that nothing of them shows even as a difference.
"""

from __future__ import annotations

import re
import shutil
from datetime import date
from pathlib import Path

from planted import DAY, Planted, build_book, copy_demo

ROOT = Path(__file__).resolve().parents[2]
# at noon in Greenwich it is the next day already in the one, early in the morning in the other
FAR_EAST = {"TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONHASHSEED": "1", "PYTHONUTF8": "1"}
FAR_WEST = {"TZ": "America/Los_Angeles", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "77"}
# what a calendar says of when it was made: the moment, and how often it was made anew
OF_THE_DAY = re.compile(rb"^(DTSTAMP|LAST-MODIFIED|SEQUENCE)[:;][^\r]*\r\n", re.MULTILINE)


def files_of(site: Path) -> dict[str, bytes]:
    files = (path for path in sorted(site.rglob("*")) if path.is_file())
    return {path.relative_to(site).as_posix(): path.read_bytes() for path in files}


def build_in(folder: Path, when: int, around: dict[str, str]) -> dict[str, bytes]:
    copy_demo(folder)
    shutil.rmtree(folder / "site_demo" / "giving")
    build_book(folder, when, around)
    return files_of(folder / "site")


def what_differs(one: bytes, other: bytes) -> str:
    """Find what stands in the one page and not in the other, either way."""
    lines = [set(text.decode("utf-8").splitlines()) for text in (one, other)]
    return "\n".join(sorted(lines[0] ^ lines[1]))


def days_around(planted: Planted) -> list[str]:
    """Name the two days of building, in a page's words."""
    days = (date.fromtimestamp(planted.built_at + ahead) for ahead in (0, next_day(planted)))
    # a recipe's page with its weekday, the year's page, which says when it was made, without
    return [f"{day.day} {day:%B %Y}" for day in days]


def next_day(planted: Planted) -> int:
    """Return the seconds to a day beside it: of the same month, whose end ends a season too."""
    now, then = (date.fromtimestamp(planted.built_at + ahead) for ahead in (0, DAY))
    return DAY if now.month == then.month else -DAY


def test_the_book_is_the_same_to_the_byte(planted: Planted, tmp_path: Path) -> None:
    one = files_of(planted.site)
    other = build_in(tmp_path / "quite another" / "place", planted.built_at, FAR_EAST)
    assert list(one) == list(other)
    assert [name for name in one if one[name] != other[name]] == []
    assert len(one) > 150
    for place in (planted.folder, tmp_path):
        mine = str(place).encode()
        assert [name for name, data in one.items() if mine in data] == []


def test_the_turn_of_the_day_changes_only_what_names_the_day(
    planted: Planted, tmp_path: Path
) -> None:
    one = files_of(planted.site)
    other = build_in(tmp_path, planted.built_at + next_day(planted), FAR_WEST)
    assert list(one) == list(other)
    changed = [name for name in one if one[name] != other[name]]
    # a calendar must say when it was last revised (RFC 5545, 3.8.7.2)
    beside = {name for name in changed if name.endswith(".ics")}
    # a page whose last day to begin is one of the two says so on that day ("Start today")
    for name in set(changed) - beside:
        assert any(day in what_differs(one[name], other[name]) for day in days_around(planted)), (
            name
        )
    assert len(beside) <= len(list((ROOT / "recipes").glob("*.md")))
    for name in beside:
        assert OF_THE_DAY.sub(b"", one[name]) == OF_THE_DAY.sub(b"", other[name]), name
