"""Sugar in a preserve against the published minimum, by the weight of what is finished.

Sources: at least 60 % soluble dry matter, Jam and Similar Products (England) Regulations 2003;
Codex CXS 296-2009, section 3.2: 60 to 65 % (from memory). These are rules for what is sold as jam;
for a cook they say whether it keeps. Chutneys and curds keep by other means and are left out.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from stillroom.core.amounts.units import convert, size_of
from stillroom.core.batch.bottling import makes_ml
from stillroom.core.batch.contents import Content, contents_of, figure
from stillroom.core.recipe.model import Recipe
from stillroom.core.words.joining import join_and

SOURCE = "Jam and Similar Products (England) Regulations 2003"
LEAST_PERCENT = 60
_SWEET = frozenset({"beverage", "syrup", "sugar", "fruit", "dried-fruit", "confectionery", "jam"})
_SWEET_FROM = 5  # g in 100 g
_LITTLE = Fraction(2, 100)  # of what is finished


@dataclass(frozen=True)
class SolubleSolids:
    """Sugar in 100 g of what is finished, and whether it reaches the published least."""

    percent: float
    reaches: bool
    text: str
    source: str = SOURCE
    uncertainty: str = (
        "Reckoned from the sugars of the ingredients and the stated yield, so as good as that "
        "yield; a refractometer at 20 °C measures it."
    )


def solids_of(recipe: Recipe) -> SolubleSolids | None:
    """Return the soluble solids of a preserve, or None for other kinds and unknown yields.

    What is strained out of a jelly is taken to leave its sugar behind in the juice.
    """
    if not recipe.kind.is_("put up"):
        return None
    held = contents_of(recipe)
    finished = finished_g(recipe)
    if any(_keeps_otherwise(content) for content in held):
        return None
    sugar = sum((content.grams_of("sugar") for content in held), Fraction(0))
    if not finished or not sugar:
        return None
    percent = min(float(100 * sugar / finished), 100.0)
    hidden = [content.ingredient.item for content in held if _hides_sugar(content, finished)]
    if hidden and percent < LEAST_PERCENT:
        named = join_and(list(dict.fromkeys(hidden)))
        text = f"at least {percent:.0f} % sugar; how much more is in the {named} is not known"
        return SolubleSolids(percent, reaches=False, text=text)
    reaches = percent >= LEAST_PERCENT
    how = "reaches" if reaches else "stays below"
    text = (
        f"about {percent:.0f} % sugar, which {how} the {LEAST_PERCENT} % asked of jam that is sold"
    )
    return SolubleSolids(percent, reaches, text)


def _hides_sugar(content: Content, finished: Fraction) -> bool:
    """Tell whether so much of it goes in, and nobody knows how sweet it is or how much that is."""
    staple = content.staple
    if staple and not content.liquid and content.grams is None and not staple.composition:
        return bool(staple.tags & _SWEET)
    sugary = staple and staple.composition and (staple.composition.sugar or 0) > _SWEET_FROM
    if content.grams is None and not content.volume_ml:
        return bool(sugary)
    known = staple is not None and staple.composition is not None
    weight = content.grams or content.volume_ml
    sweet = staple is None or bool(staple.tags & _SWEET)
    return not known and sweet and weight > finished * _LITTLE


def _keeps_otherwise(content: Content) -> bool:
    """Whether vinegar or eggs make it a pickle or a curd, to which the rule does not speak."""
    animal = content.staple.animal if content.staple else ()
    return "vinegar" in content.ingredient.item.lower() or "egg" in animal


def finished_g(recipe: Recipe) -> Fraction | None:
    """Return the grams one batch of a preserve comes to, or None when nobody says."""
    total = recipe.makes.total
    if size_of(total.unit) == "mass":
        return convert(total.middle, total.unit, "g")
    volume = makes_ml(recipe)
    return volume * figure("finished_density", recipe.kind.name) if volume else None
