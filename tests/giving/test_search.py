"""A search that is watched and ended: what is told of it, and that the best so far is kept."""

from __future__ import annotations

import io
import os
import signal
import threading
from fractions import Fraction

import pytest

from bench.bench_planning import large_problem
from stillroom.commands.progress import Bar, say_progress
from stillroom.giving.mip import Mip, Progress
from stillroom.giving.modelling import build_model
from stillroom.giving.planning import plan_gifts


def _hard():
    """Return a list that takes far longer than a test may."""
    return large_problem(60)


def test_whoever_watches_is_told_and_may_end_it():
    seen: list[Progress] = []

    def watch(progress: Progress) -> bool:
        seen.append(progress)
        return progress.gap is None or progress.seconds < 2

    plan = plan_gifts(_hard(), 3600, watch=watch)
    assert plan.proof == "stopped by time"
    assert 0 < plan.gap < 1
    assert plan.bound <= plan.points
    assert seen[-1].seconds >= seen[0].seconds


def test_ctrl_c_between_two_solvings_keeps_the_best_so_far(monkeypatch):
    def pressed(problem):
        raise KeyboardInterrupt

    monkeypatch.setattr("stillroom.giving.searching.build_model", pressed)
    plan = plan_gifts(_hard(), 3600)
    assert plan.proof == "stopped by time"
    assert plan.gifts


@pytest.fixture
def heeds_ctrl_c():
    """Let Ctrl-C be heard: what a shell begins in the background passes it over."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)


@pytest.mark.usefixtures("heeds_ctrl_c")
def test_ctrl_c_keeps_the_best_so_far():
    def end() -> None:
        os.kill(os.getpid(), signal.SIGINT)

    timer: list[threading.Timer] = []

    def watch(progress: Progress) -> bool:
        if progress.gap is not None and progress.gap < 0.5 and not timer:
            timer.append(threading.Timer(0.1, end))
            timer[0].start()
        return True

    plan = plan_gifts(_hard(), 3600, watch=watch)
    assert timer
    assert plan.proof == "stopped by time"
    assert sum(map(len, plan.gifts.values())) > 100


class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_bar_is_shown_on_a_terminal_alone_and_leaves_nothing():
    terminal, file = _Terminal(), io.StringIO()
    for out in (terminal, file):
        bar = Bar(out, 20)
        assert bar(Progress(10, 200, 190)) is True
        bar.clear()
    assert say_progress(Progress(10, 200, 190), 20) in terminal.getvalue()
    assert "##########.........." in terminal.getvalue()
    assert terminal.getvalue().endswith("\r\x1b[2K")
    assert file.getvalue() == ""


@pytest.mark.parametrize("cut", [1, 7])
def test_every_number_of_a_model_is_whole(cut):
    model = build_model(large_problem(12, cut)).mip
    assert model.exact
    assert all(number == round(number) for _, _, terms in model.rows for _, number in terms)


def test_a_number_too_long_is_cut_and_then_nothing_is_proven():

    mip = Mip()
    mip.row([(mip.yes_or_no(1), Fraction(1, 3**30)), (mip.yes_or_no(1), 1)], low=1)
    assert not mip.exact
    assert not mip.solve(5).exact
