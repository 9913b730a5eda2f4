"""The kitchen sheet: one recipe at one scale, on one side of paper when it can, else on two.

Its large form is for old eyes and wet hands: read at arm's length without touching it, on as many
sides as that takes.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from stillroom.core.amounts.quantities import show_amount, show_decimal
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.paper.sheets import Size
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scale_words import say_left, show_factor
from stillroom.core.size.scaling import ScaledBatch
from stillroom.core.size.targets import ByTin, ByVessel, Target
from stillroom.core.size.what_stays import notes_on_vessels
from stillroom.core.when.timeline import Timeline
from stillroom.core.words.said import Said
from stillroom.looks.quotes import curl_all
from stillroom.printing.card_data import said_data
from stillroom.printing.language import split_language
from stillroom.printing.recipe_data import recipe_data
from stillroom.printing.typesetting import typeset

_say = Said("stillroom.core.size", "size")


def print_sheet(
    recipe: Recipe,
    batch: ScaledBatch,
    settings: BookSettings,
    timeline: Timeline | None,
    paper: Size,
    address: str = "",
    fonts: Path | None = None,
    *,
    asked: Target | None = None,
    large: bool = False,
) -> bytes:
    """Return the sheet of a batch; with a timeline it has dates and boxes to tick.

    `asked` is what the batch was scaled to, so that a cook's own vessel is named and not the
    recipe's.
    """
    language, region = split_language(settings.language)
    code = draw_qr(address) if address else None
    box = assess_safety(recipe, settings)
    shown = recipe_data(recipe, batch, box, settings.altitude_m, timeline)
    label = label_recipe(recipe, settings)
    shown |= _vessels(recipe, batch, asked)
    shown |= {
        "makes": batch.makes_in_full,
        "allergen_words": said_data(label.allergen_words),
        "scale_warnings": _told(recipe, batch),
        "scale_note": "" if batch.factor == 1 else f"The recipe {show_factor(batch.factor)}.",
        "url": address,
        "qr_svg": code.svg if code else "",
        "qr_mm": code.size_mm if code else 0,
    }
    data = {
        "title": f"{recipe.title}: kitchen sheet",
        "language": language,
        "region": region,
        "paper": {"width": float(paper.width_mm), "height": float(paper.height_mm)},
        "recipe": shown,
        "footer": settings.title,
        "large": large,
    }
    return typeset("sheet.typ", curl_all(data, settings.language), fonts=fonts).pdf


def _told(recipe: Recipe, batch: ScaledBatch) -> list[str]:
    """Return what is told of the size under the title; what is of a vessel stands beside it."""
    of_vessels = notes_on_vessels(scalable_of(recipe), batch.factor)
    short = [_say("runs_short", item=batch.scarcest)] if batch.scarcest else []
    left = [_say("left_over", left=say_left(one)) for one in batch.left]
    whole = []
    if batch.fit and batch.fit_makes:
        times = show_decimal(batch.fit.factor)
        whole = [_say("comes_out_whole", makes=batch.fit_makes, times=times)]
    notes = [note for note in batch.notes if note not in of_vessels]
    return [*batch.warnings, *short, *left, *whole, *notes]


def _vessels(recipe: Recipe, batch: ScaledBatch, asked: Target | None) -> dict[str, Any]:
    """Return what it is made in, and beside it what is wrong with that at this size."""
    written = "; ".join(vessel.words for vessel in recipe.vessels)
    if isinstance(asked, ByVessel):
        own = f"your own vessel of {show_amount(asked.capacity)}"
    elif isinstance(asked, ByTin):
        own = f"your own tin, {asked.tin.words}"
    else:
        own = ""
    if own:
        instead = f" (the recipe says {written})" if written else ""
        return {"vessels": f"{own}{instead}", "vessel_notes": []}
    of_vessels = notes_on_vessels(scalable_of(recipe), batch.factor)
    return {
        "vessels": written,
        "vessel_notes": [note for note in of_vessels if note in batch.notes],
    }
