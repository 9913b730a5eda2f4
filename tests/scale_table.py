"""The generated table of scaling questions, and Python's answers in the shape the browser gives.

Every demo recipe, and a few with every sort of line, x targets x unit systems. Answers stand
nowhere: Python and the browser are asked live, and published values are in core/size.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.finished import facts_of_batch
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.scaling import By, Measures, ScaledBatch, scale
from stillroom.core.size.targets import read_target
from stillroom.core.words.problems import Unreadable

# with ratios, ranges, halves, tight classes, per container, per batch, "to taste", US, imperial
OWN = {
    "ratio-spirit": """---
title: A spirit by ratio
kind: infusion
makes: about 900 ml
ingredients:
  - 1 l vodka, 40% vol
  - {item: cinnamon stick, amount: 1 per 250-400 ml of vodka}
  - {item: vanilla pods, amount: 4-5, tolerance: 10%}
  - 2 lemons
  - 100-150 g sugar
  - {item: piece of peel, amount: 1, scales: per container}
  - {item: square of muslin, amount: 1, scales: per batch}
  - honey, to taste
vessel: 1.5 l jar
containers: bottle, 50 ml
---

## Method

1. Pour {vodka} over {100 g sugar}.
""",
    "twice-sugared": """---
title: Biscuits sugared twice
kind: bake
makes: 24 biscuits
ingredients:
  - Dough:
      - 200 g caster sugar
      - 300 g plain flour
  - On top:
      - 2 tbsp caster sugar
      - caster sugar, to dust
---

## Method

1. Bake it.
""",
    "lye-soap": """---
title: A soap to the gram
kind: soap
makes: 24 bars
ingredients:
  - 26 ounces of olive oil
  - 1701 g lard
  - 312 g lye
  - 907 g water
---

## Method

1. Stir the lye into the water and both into the fats.
""",
    "us-mix": """---
title: A mix in cups
kind: dry mix
units: us
makes: 6 jars of 1 pint
ingredients:
  - 4 cups granulated sugar
  - 2 1/2 cups cocoa
  - 3 tbsp cornstarch
  - 1 tsp table salt
  - 48 tsp dry milk
  - {item: bay leaf, amount: 1 leaf, scales: per container}
containers: jar, 1 pint
---

## Method

1. Mix.
""",
    "us-packs": """---
title: A fudge of packs
kind: confection
units: us
makes: 24 pieces
ingredients:
  - 1 (5 oz) can evaporated milk
  - 2 x 400 g tins pears
  - 4 (8-oz) potatoes
  - 1 stick butter
  - 1-2 (14 oz) bags marshmallows
---

## Method

1. Boil {evaporated milk} with {1 stick butter}.
""",
    "imperial-bake": """---
title: A bake in ounces
kind: bake
units: imperial
makes: 24 biscuits
ingredients:
  - 8 oz plain flour
  - 4 oz butter
  - 2 eggs
  - 1/2 tsp bicarbonate of soda
  - 1/4 pint milk
  - about 12 almonds
---

## Method

1. Bake.
""",
}

MEASURES: tuple[tuple[System, By], ...] = tuple(
    (system, by)
    for system in ("metric", "us", "imperial")
    for by in ("written", "weight", "volume")
)
FACTORS = ("1/3", "½", "1", "1½", "2", "2.37", "3", "7", "12", "0.04", "0.019", "1/50", "⅔")
# as a cook types them: read by the same table in Python and in the browser
TYPED = {
    "times": ("double", "half", "a third", "3x", "x ½", "one and a half", "50 %"),
    "makes": (
        "half a litre", "a dozen jars", "12 jars of 125 ml", "two 250 ml jars", "3 half-pint jars",
        "2 jars (1 pint)", "one litre",
    ),
    "fill": (
        "four 200 ml jars", "4 jars (200 ml)", "12 half-pint jars", "2 pint jars", "3 jars 340g",
        "a dozen 50 ml bottles and 2 jars (1 pint)", "6 x 100-ml phials",
    ),
    "vessel": ("a 2 l jar", "one litre", "half a gallon"),
}  # fmt: skip
WANTED = ("200 ml", "750ml", "1½ pints", "2 1/2 cups", "450 g", "36", "7 jars", "1 gallon")
FILLS = (
    "12 x 50 ml",
    "12 x 50 ml + 6 x 100 ml",
    "1 bottle of 30 ml",
    "5 x 8 fl oz, 2 x 1 lb",
    "9 jars of 220 ml to the brim",
    "7 bottles of 190 ml",
    "7 x 190 ml bottles + 1 flask of 100 ml",
    "3 x 1 pint jars to the brim",
    "2 x 500 ml swing-top bottles",
    "4 phials of 20 ml and 2 x 50 ml",
)
VESSELS = ("1.5 l", "1 quart", "250 ml jar", "3 pints", "24 cm round", "9 x 13 inch tin")
# what cannot be had or read, said in Python and in the browser by the same words
NOT_TO_BE_HAD = {
    "times": (
        "0", "-1", "abc", "1,5", "1.500", "1,2,3", "0,5", "1/0", "1000000", "1/1000", "½½", "2 400",
        "1 000", "often", "3y", "9" * 61,
    ),
    "makes": (
        "cupp", "2,5 l", "0 ml", "750 mll", "5 dragons", "36 biscuits", "1 m", "2-1 l", "3 cupps",
        "750mlx", "750littre", "some litres", "1.500 l", "2 EL", "1 Pfund", "2 pounds of butter",
        "3 " + "very" * 40,
    ),
    "fill": (
        "12 bottles", "3 bottles of 1,5 l", "0 x 50 ml", "12 x 50", "12 x 0 ml", "12 x 50 m", "x",
        "12 x 50 ml to the brim", "9 jars of 5 ml to the brim", "3 x 2 eggs",
    ),
    "have": (
        "4 dragons", "500 g", "sugar", "0 g sugar", "17 of", "2 l vodka", "500 g of suger",
        "3 kg salt + 2 dragons", "1 orange peal", "4 orange", "2 vanila", "1 salt and 2 sugar",
    ),
    "vessel": ("big", "0 l", "1 kg", "24 cm round", "3", "1,5 l"),
}  # fmt: skip


def own_recipes() -> list[Recipe]:
    """Return the recipes of this table's own; mending a demo recipe changes nothing in them."""
    return [read_recipe(text, slug, slug) for slug, text in OWN.items()]


def questions(recipes: Sequence[Recipe]) -> Iterator[dict[str, str]]:
    """Yield every question: recipe, sort of target, its words, system and by."""
    for recipe in recipes:
        targets = [("times", text) for text in FACTORS]
        targets += [("makes", text) for text in WANTED]
        targets += [("fill", text) for text in FILLS]
        targets += [("vessel", text) for text in VESSELS]
        targets += [("have", text) for text in _haves(recipe)]
        targets += [(sort, text) for sort, texts in TYPED.items() for text in texts]
        asked = [(*target, *measures) for target in targets for measures in MEASURES]
        asked += [
            (sort, text, *MEASURES[0]) for sort, texts in NOT_TO_BE_HAD.items() for text in texts
        ]
        for sort, text, system, by in asked:
            yield {"recipe": recipe.slug, "sort": sort, "text": text, "system": system, "by": by}


def _haves(recipe: Recipe) -> list[str]:
    measured = [line for line in recipe.ingredients if isinstance(line.amount, Amount)][:3]
    found = []
    for line in measured:
        assert isinstance(line.amount, Amount)
        unit = line.amount.unit.replace("_", " ") if line.amount.unit in ("g", "ml", "l") else ""
        found.append(" ".join(word for word in ("17", unit, line.item) if word))
    if len(found) > 1:
        found.append(f"{found[0]} + {found[1]}")
    if found:
        amount, _, thing = found[0].partition(" ")
        unit = next((word for word in ("g", "ml", "l") if thing.startswith(f"{word} ")), "")
        found.append(f"{thing.removeprefix(f'{unit} ')} {amount} {unit}".strip())
    return found


def answer(recipe: Recipe, question: dict[str, str]) -> dict[str, Any]:
    """Return Python's answer, or {"refused": the words} where it cannot be had."""
    system: Any = question["system"]
    by: Any = question["by"]
    scalable = scalable_of(recipe)
    try:
        target = read_target({question["sort"]: question["text"]}, system)
        batch = scale(scalable, target, Measures(system, by))
    except Unreadable as refusal:
        return {"refused": str(refusal)}
    facts = [[one.name, one.text, one.how] for one in facts_of_batch(recipe, batch)]
    return {**_plain(batch), "facts": facts}


def _plain(batch: ScaledBatch) -> dict[str, Any]:
    return {
        "factor": str(batch.factor),
        "makes": batch.makes_in_full,
        "containers": batch.containers,
        "lines": [
            [
                line.amount_text,
                line.item_text,
                _text(line.exact),
                _text(line.low),
                _text(line.high),
                line.holds,
                str(line.off),
                line.why,
                line.aside,
                line.note,
            ]
            for line in batch.lines
        ],
        "warnings": list(batch.warnings),
        "notes": list(batch.notes),
        "scarcest": batch.scarcest,
        "left": [[left.item, str(left.amount), left.unit] for left in batch.left],
        "fit": str(batch.fit.factor) if batch.fit else None,
        "fit_makes": batch.fit_makes,
    }


def _text(value: Fraction | None) -> str | None:
    return None if value is None else str(value)


BROWSER_ANSWERS = """
async ({ base, shared, recipes, questions }) => {
  const { readTables } = await import(`${base}/amounts/amounts.js`);
  const { readRecipe, scale } = await import(`${base}/size/scale.js`);
  const { factsOfBatch } = await import(`${base}/size/finished.js`);
  const { parseTarget } = await import(`${base}/size/scale-targets.js`);
  const tables = readTables(shared);
  const known = Object.fromEntries(recipes.map((data) => [data.slug, readRecipe(data)]));
  const text = (value) => (value === null ? null : `${value}`);
  return questions.map(({ recipe, sort, text: words, system, by }) => {
    try {
      const target = parseTarget(sort, words, system, tables);
      const batch = scale(known[recipe], target, { system, by }, tables);
      return {
        factor: `${batch.factor}`,
        makes: batch.makes_in_full,
        containers: Number(batch.containers),
        lines: batch.lines.map((line) => [
          line.amount_text, line.item_text, text(line.exact), text(line.low), text(line.high),
          line.holds, `${line.off}`, line.why, line.aside, line.note,
        ]),
        warnings: batch.warnings,
        notes: batch.notes,
        scarcest: batch.scarcest,
        left: batch.left.map((left) => [left.item, `${left.amount}`, left.unit]),
        fit: batch.fit ? `${batch.fit}` : null,
        fit_makes: batch.fit_makes,
        facts: factsOfBatch(known[recipe], batch, { system, by }, tables).map(
          ({ name, text: shown, how }) => [name, shown, how],
        ),
      };
    } catch (error) {
      if (error.constructor.name !== "Unreadable") throw error;
      return { refused: error.message };
    }
  });
}
"""
