"""Papers of many cards: how many go to one run of Typst, and that they are set as in one run."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from giving.lists import demo_book, demo_recipes
from letters import open_letters
from stillroom.core.label.labelling import make_card
from stillroom.core.paper.tag_shapes import tag_shape
from stillroom.core.words.problems import Unreadable
from stillroom.printing import apart
from stillroom.printing.apart import Apart, Job, run_here
from stillroom.printing.cards import (
    CardJob,
    SheetOptions,
    print_cards,
    print_cards_in_parts,
    print_tags,
    print_tags_in_parts,
)

DAY = date(2027, 12, 18)
OPTIONS = SheetOptions(title="Cards")


def _jobs(count: int) -> list[CardJob]:
    recipes, settings = demo_recipes(), demo_book().settings
    jobs = []
    for n in range(count):
        recipe = recipes[n % len(recipes)]
        card = replace(make_card(recipe, settings, DAY), to=f"Number {n}", sender="Hob and Nan")
        jobs.append(CardJob(card, recipe))
    return jobs


class _Counting:
    def __init__(self) -> None:
        self.pieces: dict[str, list[int]] = {"fit": [], "set": []}

    def __call__(self, jobs):
        for job in jobs:
            self.pieces[job.what].append(job.pieces)
            assert len(job.data["cards"]) == job.pieces
        return run_here(jobs)


def _letters(pdf: bytes) -> list[list[tuple]]:
    with open_letters(pdf) as read:
        return [
            [
                (c["text"], c["fontname"][7:], *(round(c[of], 2) for of in ("size", "x0", "top")))
                for c in page.chars
            ]
            for page in read.pages
        ]


@pytest.mark.parametrize("what", ["cards", "tags"])
def test_parts_are_set_as_one_run_sets_them(what, monkeypatch):
    monkeypatch.setattr("stillroom.printing.cards._FITTED_AT_ONCE", 6)
    jobs = _jobs(16)  # two sheets of A4, eight cards each; the second half has the longer words
    parts, counting = [jobs[:8], jobs[8:]], _Counting()
    if what == "cards":
        one = print_cards(jobs, "90x65", OPTIONS)
        made = print_cards_in_parts(parts, "90x65", OPTIONS, counting)
    else:
        shape = tag_shape("rectangle")
        one = print_tags(jobs, shape, OPTIONS)
        made = print_tags_in_parts(parts, shape, OPTIONS, counting)
    assert counting.pieces["set"] == [8, 8]
    assert max(counting.pieces["fit"]) <= 6
    if what == "cards":
        assert [page for pdf in made for page in _letters(pdf)] == _letters(one)
    else:
        sizes = {(c[0], c[2]) for page in _letters(one) for c in page}
        assert {(c[0], c[2]) for pdf in made for page in _letters(pdf) for c in page} == sizes


def test_a_process_sets_no_more_than_so_much(monkeypatch):
    begun: list[int] = []

    class Pool:
        def __init__(self, count, context, begin) -> None:
            begun.append(0)

        def submit(self, work, job):
            begun[-1] += job.pieces
            return self

        def result(self):
            return b""

        def shutdown(self, cancel_futures) -> None:
            pass

    monkeypatch.setenv(apart.PROCESSES, "2")
    monkeypatch.setattr(apart, "ProcessPoolExecutor", Pool)
    few = [Job("set", "cards.typ", {}, 48) for _ in range(5)]
    with Apart() as run:
        run(few)
    assert begun == [96, 96, 48]


def test_what_goes_wrong_apart_is_told_as_here(monkeypatch):
    monkeypatch.setenv(apart.PROCESSES, "2")
    data = {"title": "漢", "foot": "", "sections": [], "language": "en"}
    root = Path(apart.__file__).parent.parent
    job = Job("set", str(Path("giving/templates/paper/papers.typ")), data, root=root)
    data["sections"] = [{"heading": "漢", "lead": [], "parts": [], "flipped": False}]
    said = []
    for run in (run_here, Apart()):
        with pytest.raises(Unreadable) as wrong:
            run([job])
        said.append((wrong.value.what, wrong.value.mend))
    assert said[0] == said[1]
    assert "漢" in said[0][0]
