"""The private pack on a telephone and at a desk: nothing wider than the screen, nothing unnamed."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from giving.lists import ROOT, TODAY, demo_book, demo_recipes
from sampling import is_whole
from stillroom.giving.pack import Effort, pack_files, work_out
from stillroom.giving.reading import load_giving_list

from .looking import WAYS, Looker


@pytest.fixture(scope="module")
def pack_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("pack")
    read = load_giving_list(ROOT / "site_demo" / "giving" / "christmas-2027.yml")
    pack = work_out(read, demo_recipes(), demo_book().settings, TODAY, Effort(5, 0.1))
    for name, data in pack_files(pack).items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)
    return folder


@pytest.mark.sampled
@pytest.mark.parametrize(
    ("called", "first", "each"), [("chromium_ways", 0, 1), ("firefox_ways", 1, 2)]
)
def test_every_page_of_the_pack(
    called: str, first: int, each: int, request: pytest.FixtureRequest, pack_folder: Path
) -> None:
    ways: Callable[[str, int], Looker] = request.getfixturevalue(called)
    found = {}
    for turn, (scheme, width) in enumerate(WAYS):
        looker = ways(scheme, width)
        paths = sorted(pack_folder.glob("*.html"))[:: 1 if is_whole() else each]
        for path in paths if is_whole() else paths[(turn + first) % 4 :: 4]:
            looker.go(path.as_uri())
            if wrong := looker.faults():
                found[f"{path.name} {scheme} {width}"] = wrong
    assert found == {}
