"""The kitchen sheet: one recipe at one scale, on one side of paper when it can, else on two."""

from __future__ import annotations

from pathlib import Path

from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.paper.sheets import Size
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scale_words import show_factor
from stillroom.core.size.scaling import ScaledBatch
from stillroom.core.size.what_stays import notes_on_scaling
from stillroom.core.when.timeline import Timeline
from stillroom.printing.card_data import said_data
from stillroom.printing.language import split_language
from stillroom.printing.recipe_data import recipe_data
from stillroom.printing.typesetting import typeset


def print_sheet(
    recipe: Recipe,
    batch: ScaledBatch,
    settings: BookSettings,
    timeline: Timeline | None,
    paper: Size,
    address: str = "",
    fonts: Path | None = None,
) -> bytes:
    """Return the sheet of a batch; with a timeline it has dates and boxes to tick."""
    language, region = split_language(settings.language)
    code = draw_qr(address) if address else None
    box = assess_safety(recipe, settings)
    shown = recipe_data(recipe, batch, box, settings.altitude_m, timeline)
    label = label_recipe(recipe, settings)
    shown |= {
        "allergen_words": said_data(label.allergen_words),
        "scale_warnings": [*batch.warnings, *notes_on_scaling(scalable_of(recipe), batch.factor)],
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
    }
    return typeset("sheet.typ", data, fonts=fonts).pdf
