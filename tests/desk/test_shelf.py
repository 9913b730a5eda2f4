"""The list of recipes: every one with its picture, or the drawing of its kind."""

from __future__ import annotations

from pathlib import Path

import pytest

from desk.conftest import small_book
from stillroom.desk.desk import Desk
from stillroom.desk.place import Place
from stillroom.desk.shelf import list_spines


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    aside = tmp_path / "aside"
    aside.mkdir()
    return Desk(Place(small_book(tmp_path / "book")), aside, lambda: None)


@pytest.mark.parametrize(
    ("kind", "drawn"),
    [
        ("plum jam", "mark"),
        ("jam", "kind-preserve"),
        ("candied peel", "kind-confection"),
        ("", "mark"),
    ],
)
def test_a_draft_that_does_not_read_yet_has_the_drawing_of_its_kind(
    desk: Desk, kind: str, drawn: str
) -> None:
    draft = desk.place.draft_path("some-thing")
    draft.parent.mkdir(exist_ok=True)
    draft.write_text(
        f"---\ntitle: Some thing\nkind: {kind}\nmakes:\ningredients:\n  - 1 kg plums\n---\n",
        encoding="utf-8",
    )
    spine = next(one for one in list_spines(desk, seconds=60) if one.slug == "some-thing")
    assert spine.wrong
    assert spine.picture == f"/desk/drawings/{drawn}.svg"
