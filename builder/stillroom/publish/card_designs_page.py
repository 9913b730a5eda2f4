"""The designs of cards and tags as the pages have them: a stylesheet, borders, pictures.

A design is a folder (looks/card_designs.py); the stylesheet is made of what it says, and no script
knows one by name. Leaves out the cards themselves (card_page.py).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import Design, border_side, type_steps
from stillroom.looks.card_pictures import CardPicture, card_picture
from stillroom.publish.library import Library
from stillroom.publish.templating import render

FOLDER: Final = "assets/stillroom"
CARD_PICTURES: Final = f"{FOLDER}/cards/"
STYLES: Final = f"{FOLDER}/css/designs.css"


def list_design_files(library: Library) -> Iterator[tuple[str, str]]:
    """Return the stylesheet of the designs, their borders, each recipe's picture for its card."""
    designs = library.designs
    yield (
        STYLES,
        render("designs.css", {"designs": designs, "steps": type_steps(), "side": border_side}),
    )
    for design in designs.values():
        if design.border_svg:
            yield f"{FOLDER}/designs/{design.slug}.svg", design.border_svg
    inky = [design for design in designs.values() if design.one_ink]
    plain = next(design for design in designs.values() if not design.one_ink)
    for recipe in library.recipes:
        for design in (plain, *inky):
            picture = card_picture(recipe, library.book, design)
            if picture.svg:
                yield _picture_path(recipe, design), picture.svg


def _picture_path(recipe: Recipe, design: Design) -> str:
    ink = f".{design.slug}" if design.one_ink else ""
    return f"{CARD_PICTURES}{recipe.slug}{ink}.svg"


def picture_paths(recipe: Recipe, library: Library) -> tuple[str, str]:
    """Return where a recipe's picture for its card lies, and where it does in the book's design."""
    design = library.designs[library.settings.design]
    if not card_picture(recipe, library.book, design).svg:
        return "", ""
    return f"{CARD_PICTURES}{recipe.slug}.svg", _picture_path(recipe, design)


def emblem_when(recipe: Recipe, library: Library) -> str:
    """Return when a card shows its kind's small drawing: "always", "inked" in one ink, or ""."""
    shown = {inked: picture.is_emblem for inked, picture in _pictures(recipe, library).items()}
    return "always" if shown.get(False) else "inked" if shown.get(True) else ""


def is_photograph(recipe: Recipe, library: Library) -> bool:
    """Return whether a recipe's card shows a photograph wherever there is more than one ink."""
    return any(picture.is_photograph for picture in _pictures(recipe, library).values())


def _pictures(recipe: Recipe, library: Library) -> Mapping[bool, CardPicture]:
    """Return what cards show in one ink and in more; which ink it is changes no more than that."""
    one_of_each = {design.one_ink: design for design in library.designs.values()}
    return {
        inked: card_picture(recipe, library.book, design) for inked, design in one_of_each.items()
    }


def designs_data(library: Library) -> list[dict[str, Any]]:
    """Return what the pages' scripts know of each design."""
    return [
        {
            "id": design.slug,
            "name": design.name,
            "about": design.about,
            "ink": design.one_ink,
            "large": design.large,
            "sides": design.sides,
            "portrait": design.picture.alone > 0,
            "beside": design.picture.tag > 0,
            "border": design.border is not None,
        }
        for design in library.designs.values()
    ]
