"""`stillroom strength`: how strong a recipe is, how to cut a spirit, the fold of pods.

Exit 0 when answered, 1 when the recipe has problems, 2 for wrong usage.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import click

from stillroom.commands.terminal import read_one, told_plainly
from stillroom.commands.typed_words import RECIPE
from stillroom.core.batch.cutting import read_cut, read_pods
from stillroom.core.batch.strength_words import (
    cut_document,
    cut_text,
    pods_document,
    pods_text,
    strength_document,
    strength_text,
)
from stillroom.core.words.problems import Unreadable

_ONE = 'Name a recipe, or say --cut "500 ml at 96%" --to 40%, or --pods "150 g in 700 ml".'


@click.command()
@click.argument("file", type=RECIPE, required=False)
@click.option("--cut", metavar="SPIRIT", help='A spirit to cut: "500 ml at 96%".')
@click.option("--to", "wanted", metavar="STRENGTH", help='The strength it is to have: "40%".')
@click.option(
    "--syrup", metavar="SUGAR", help='Cut with a syrup of so much sugar by weight: "50%".'
)
@click.option("--pods", metavar="PODS", help='Vanilla in spirit: "150 g in 700 ml at 40%".')
@click.option("--moisture", metavar="SHARE", help='Of the pods, when above 25%: "33%".')
@click.option("--json", "as_json", is_flag=True, help="For another program to read (JSON).")
@told_plainly
def strength(
    file: Path | None,
    cut: str | None,
    wanted: str | None,
    syrup: str | None,
    pods: str | None,
    moisture: str | None,
    as_json: bool,
) -> None:
    """Tell how strong a recipe comes out, how to cut a spirit, or the fold of vanilla pods."""
    if sum(asked is not None for asked in (file, cut, pods)) != 1:
        raise click.UsageError(_ONE)
    if cut is None and (wanted or syrup):
        raise click.UsageError('"--to" and "--syrup" go with --cut "500 ml at 96%".')
    if cut is not None and not wanted:
        raise click.UsageError('Say to what strength: --to "40%".')
    if moisture and pods is None:
        raise click.UsageError('"--moisture" goes with --pods "150 g in 700 ml".')
    try:
        text, document = _answer(file, cut, wanted or "", syrup or "", pods or "", moisture or "")
    except Unreadable as error:
        raise click.UsageError(str(error)) from None
    click.echo(json.dumps(document, indent=2, ensure_ascii=False) if as_json else text)


def _answer(
    file: Path | None, cut: str | None, wanted: str, syrup: str, pods: str, moisture: str
) -> tuple[str, dict[str, Any]]:
    if file is not None:
        recipe, book = read_one(file)
        country = book.settings.country
        return strength_text(recipe, country), strength_document(recipe, country)
    if cut is not None:
        found = read_cut(cut, wanted, syrup)
        return cut_text(found), cut_document(found)
    told = read_pods(pods, moisture)
    return pods_text(told), pods_document(told)
