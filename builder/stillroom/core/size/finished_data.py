"""What the browser needs to say what a batch comes to, as finished.py does: see scaling_data.py.

Fractions are text ("3/2"); what is reckoned in floats is written as such, to the last bit.
"""

from __future__ import annotations

from typing import Any

from stillroom.core.batch.bottling import Yield, estimate_yield
from stillroom.core.batch.drinks import measure_of
from stillroom.core.batch.extracts import LEAST_ABV, Fold, single_fold_g_per_l
from stillroom.core.batch.mixtures import Mixture
from stillroom.core.batch.spirit_density import COEFFICIENTS
from stillroom.core.batch.strength import (
    HIGH_SHARE,
    LEAST_DRINKS,
    LOW_SHARE,
    Strength,
    doubt_of,
    fold_of_recipe,
    fold_parts,
    servings_of,
    strength_of,
    strength_parts,
)
from stillroom.core.batch.syrups import SUGAR_ML_PER_G
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import fillable, how_strong, one_holds
from stillroom.core.words.plurals import plural


def finished_data(recipe: Recipe) -> dict[str, Any]:
    """Return yield, containers, strength and fold of one recipe, for the browser."""
    strength = strength_of(recipe)
    there = estimate_yield(recipe)
    fold = fold_of_recipe(recipe)
    return {
        "yield": _yield(there) if there else None,
        "containers": [[one.one, one.many, str(one.size_ml), one.size] for one in fillable(recipe)],
        "strength": _strength(recipe, strength) if strength else None,
        "fold": _fold(recipe, fold) if fold else None,
    }


def finished_tables(country: str) -> dict[str, Any]:
    """Return the figures and words that every recipe of a book shares."""
    measure = measure_of(country)
    return {
        "density": list(COEFFICIENTS),
        "sugar_ml_per_g": SUGAR_ML_PER_G,
        "low_share": LOW_SHARE,
        "high_share": HIGH_SHARE,
        "least_drinks": LEAST_DRINKS,
        "drink": {
            "many": measure.many,
            "ethanol_ml": measure.ethanol_ml,
            "how": one_holds(measure),
        },
        "per_litre": str(single_fold_g_per_l()),
        "least_abv": LEAST_ABV,
    }


def _yield(there: Yield) -> dict[str, Any]:
    """Return the parts that grow with the batch and, last, the tasting spoon, which does not."""
    return {
        "parts": [[part.name, str(part.volume_ml)] for part in there.parts],
        "spread": str(there.high_ml - there.volume_ml),
        "source": there.source,
    }


def _strength(recipe: Recipe, strength: Strength) -> dict[str, Any]:
    parts = strength_parts(recipe)
    found: dict[str, Any] = {
        "how": how_strong(recipe, strength),
        "pours": [
            [name, plural(name.removeprefix("a ")), str(volume)]
            for name, volume in servings_of(recipe)
        ],
    }
    if parts:
        found["proviso"] = strength.proviso
        found["doubt"] = doubt_of(recipe)
        found["parts"] = [[one.place, _brings(one.likely), _brings(one.least)] for one in parts]
    else:
        found |= {
            "abv": strength.abv_percent,
            "uncertainty": strength.uncertainty,
            "proviso": strength.proviso,
        }
    return found


def _brings(mixture: Mixture) -> list[float]:
    return [mixture.ethanol_g, mixture.water_g, mixture.sugar_g, mixture.rest_ml]


def _fold(recipe: Recipe, fold: Fold) -> dict[str, Any]:
    parts = fold_parts(recipe)
    brings = [] if parts is None else [parts.pods, parts.spirits]
    return {
        "brings": [[[place, str(own)] for place, own in rows] for rows in brings],
        "strong_enough": fold.strong_enough,
        "how": f"{fold.uncertainty} ({fold.source})",
    }
