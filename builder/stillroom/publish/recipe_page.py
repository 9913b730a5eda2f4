"""A recipe's page: every part of it worked out once, then set in templates/pages/recipe.html.

The parts come from their own modules (amounts_page.py, when_page.py, card_page.py);
this one brings them together and says what stands in the page's head.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from typing import Any, Final

from markupsafe import Markup

from stillroom.core.care.safety import assess_safety
from stillroom.core.label.keeping import keeping_words
from stillroom.core.label.labelling import Diet
from stillroom.core.label.sugar import sugar_in_one
from stillroom.core.paper.qr_code import draw_qr
from stillroom.core.recipe.ages import ages_of
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import heat_lines
from stillroom.core.size.scaling import ScaledBatch, ScaledLine, scale_recipe
from stillroom.core.size.scaling_data import scaling_data
from stillroom.core.when.timeline import Timeline, plan_forward
from stillroom.core.when.timeline_data import timeline_data
from stillroom.core.words.day_words import say_minutes
from stillroom.publish.amounts_page import show_amounts
from stillroom.publish.card_page import CardView, paper_data, place_card, view_card
from stillroom.publish.library import Library, Link, show_picture
from stillroom.publish.method_steps import StepGroup, show_method
from stillroom.publish.structured_data import RecipeFacts, describe_recipe
from stillroom.publish.templating import render, show_json
from stillroom.publish.when_page import make_when

_ANY_DAY: Final = date(2027, 1, 1)
"""Lengths are counted from one day, so that a page says the same on every day it is built."""


@dataclass(frozen=True)
class Fact:
    """One entry of the strip under a recipe's title."""

    name: str
    label: str
    text: str


@dataclass(frozen=True)
class Share:
    """What the last part of the page needs: the lasting address and its code, or neither yet."""

    url: str
    code: Markup


@dataclass(frozen=True)
class RecipeLeaf:
    """The page of one recipe, at r/<slug>/."""

    recipe: Recipe
    known_card: CardView | None = None
    """Its card, where it was worked out already."""

    @property
    def src_uri(self) -> str:
        """The Markdown file that this page stands for."""
        return f"r/{self.recipe.slug}.md"

    @property
    def in_nav(self) -> bool:
        """Recipes are reached through lists, search and links: navigation would swell each page."""
        return False

    @cached_property
    def batch(self) -> ScaledBatch:
        """One batch as written."""
        return scale_recipe(self.recipe)

    @cached_property
    def method(self) -> tuple[StepGroup, ...]:
        """The method with the amounts of that batch, for the page and for its head."""
        return show_method(self.recipe, self.batch)

    @cached_property
    def plan(self) -> Timeline:
        """Its dates counted from one day, for the lengths alone."""
        return plan_forward(self.recipe, _ANY_DAY)

    def card(self, library: Library, link: Link) -> CardView:
        """Return its card, with the addresses of its pictures."""
        card = self.known_card or view_card(self.recipe, library)
        return place_card(card, self.recipe, library, link)

    def head(self, library: Library, url: str) -> Mapping[str, Any]:
        """Return title, description and structured data."""
        recipe = self.recipe
        return {
            "title": recipe.title,
            "description": recipe.summary,
            "slug": recipe.slug,
            "structured_data": show_json(_structured_data(self, library)),
            "preview_picture": library.preview_of(recipe),
            "preview_size": library.size_of_preview(recipe),
            "preview_alt": recipe.picture_alt,
        }

    def body(self, library: Library, prose: str, link: Link, url: str) -> str:
        """Return the whole page below its header."""
        recipe = self.recipe
        address = library.lasting_address(recipe)
        return render(
            "pages/recipe.html",
            {
                "recipe": recipe,
                "settings": library.settings,
                "language": library.settings.language,
                "link": link,
                "picture": show_picture(library, recipe, link),
                "strip": make_strip(recipe, self.batch, self.plan),
                "amounts": show_amounts(recipe, library.settings, self.batch),
                "sugar": sugar_in_one(recipe),
                "method": self.method,
                "heats": heat_lines(recipe, library.settings.altitude_m),
                "care": assess_safety(recipe, library.settings),
                "label": library.label_of(recipe),
                "card": self.card(library, link),
                "paper_data": paper_data(library),
                "when": make_when(library, recipe, link),
                "share": Share(address, Markup(draw_qr(address).svg if address else "")),
                "recipe_data": {
                    "slug": recipe.slug,
                    "title": recipe.title,
                    "scaling": scaling_data(recipe),
                    "timeline": timeline_data(recipe),
                },
            },
        )


def make_strip(recipe: Recipe, batch: ScaledBatch, plan: Timeline) -> tuple[Fact, ...]:
    """Return hands-on time, when it is usable and best, how long it keeps, what it makes."""
    facts = (
        ("hands-on", "Hands-on time", say_minutes(plan.hands_on_minutes)),
        *ages_of(recipe),
        ("keeps", "Keeps", keeping_words(recipe)),
        ("makes", "Makes", batch.makes),
    )
    return tuple(Fact(*fact) for fact in facts if fact[2])


def _structured_data(leaf: RecipeLeaf, library: Library) -> dict[str, Any]:
    recipe, batch, plan = leaf.recipe, leaf.batch, leaf.plan
    steps = tuple(step.words for group in leaf.method for step in group.steps)
    facts = RecipeFacts(
        url=library.address_of(recipe),
        picture_url=library.absolute(library.picture_of(recipe)),
        yields=batch.makes,
        ingredients=tuple(_say_line(line) for line in batch.lines),
        steps=steps,
        hands_on_minutes=plan.hands_on_minutes,
        total_days=(plan.usable - plan.start).days,
        diets=_diets(library.label_of(recipe).diet),
    )
    return describe_recipe(recipe, facts)


def _diets(diet: Diet) -> tuple[str, ...]:
    """Name only the diets that every ingredient is known to suit."""
    known = {
        "vegan": diet.vegan == "yes",
        "vegetarian": diet.vegetarian == "yes",
        "gluten free": diet.gluten == "free",
    }
    return tuple(name for name, suits in known.items() if suits)


def _say_line(line: ScaledLine) -> str:
    said = f"{line.amount_text} {line.item_text}".strip()
    return f"{said}, {line.note}" if line.note else said
