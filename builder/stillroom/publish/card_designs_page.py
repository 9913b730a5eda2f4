"""The designs of cards and tags as the pages have them: a stylesheet, borders, pictures.

A design is a folder (looks/card_designs.py); the stylesheet is made of what it says, and no script
knows one by name. Leaves out the cards themselves (card_page.py).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Final

from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_designs import Design, border_side, type_steps
from stillroom.looks.card_pictures import CardPicture, card_picture
from stillroom.publish.library import Library
from stillroom.publish.templating import render

FOLDER: Final = "assets/stillroom"
CARD_PICTURES: Final = f"{FOLDER}/cards/"
_OF_KINDS: Final = "kinds/"
STYLES: Final = f"{FOLDER}/css/designs.css"


@dataclass(frozen=True)
class CardLook:
    """What a recipe's cards show in designs of more inks, and in those of one; looked for once."""

    slug: str
    kind_slug: str
    plain: CardPicture
    in_one_ink: CardPicture | None

    @classmethod
    def of(cls, recipe: Recipe, library: Library) -> CardLook:
        """Look for a recipe's pictures; which one ink it is changes no more than that."""
        one_of_each = {design.one_ink: design for design in library.designs.values()}
        shown = {
            inked: card_picture(recipe, library.book, design)
            for inked, design in one_of_each.items()
        }
        return cls(recipe.slug, recipe.kind.slug, shown[False], shown.get(True))

    @property
    def emblem(self) -> str:
        """When it is the small drawing of its kind: "always", "inked" in one ink, or ""."""
        if self.plain.is_emblem:
            return "always"
        return "inked" if self.in_one_ink and self.in_one_ink.is_emblem else ""

    @property
    def is_photograph(self) -> bool:
        """Whether it is a photograph wherever there is more than one ink."""
        return self.plain.is_photograph

    def path(self, design: Design | None = None) -> str:
        """Return where it lies in a design; without one, where scripts seek all of them from.

        Recipes that have no picture of their own share the drawing of their kind.
        """
        own = [one for one in (self.plain, self.in_one_ink) if one and not one.is_emblem]
        name = self.slug if own else f"{_OF_KINDS}{self.kind_slug}"
        ink = f".{design.slug}" if design and design.one_ink else ""
        return f"{CARD_PICTURES}{name}{ink}.svg"


def list_design_files(library: Library) -> Iterator[tuple[str, str]]:
    """Return the stylesheet of the designs, their borders, each picture of a card, once."""
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
    written: set[str] = set()
    for recipe in library.recipes:
        look = CardLook.of(recipe, library)
        for design in (plain, *inky):
            path = look.path(design)
            if path not in written and (svg := card_picture(recipe, library.book, design).svg):
                written.add(path)
                yield path, svg


def picture_paths(look: CardLook, library: Library) -> tuple[str, str]:
    """Return where a recipe's picture for its card lies, and where it does in the book's design."""
    design = library.designs[library.settings.design]
    shown = look.in_one_ink if design.one_ink else look.plain
    return (look.path(), look.path(design)) if shown and shown.svg else ("", "")


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
