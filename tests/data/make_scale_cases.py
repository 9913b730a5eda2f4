"""Write scale_cases.json anew: `python tests/data/make_scale_cases.py` (review it as code).

Recipes of its own, so that mending a demo recipe changes nothing here, with every sort of line:
ratios, ranges, halves, tight classes, per container, per batch, "to taste", US and imperial.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parent), str(HERE.parent.parent / "builder")]

from scale_table import answer, questions  # noqa: E402
from stillroom.core.reading.loading import read_recipe  # noqa: E402

RECIPES = {
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
EVERY = 4  # every fourth question keeps the file readable and still above 200 cases


def main() -> None:
    """Ask every question of the table of the recipes above and write the answers down."""
    recipes = {slug: read_recipe(text, slug, slug) for slug, text in RECIPES.items()}
    asked = list(questions(list(recipes.values())))[::EVERY]
    cases = [{"asked": row, "answer": answer(recipes[row["recipe"]], row)} for row in asked]
    document = {"recipes": RECIPES, "cases": cases}
    text = json.dumps(document, ensure_ascii=False, separators=(",", ":"))
    (HERE / "scale_cases.json").write_text(text.replace('{"asked"', '\n{"asked"') + "\n", "utf-8")


if __name__ == "__main__":
    main()
