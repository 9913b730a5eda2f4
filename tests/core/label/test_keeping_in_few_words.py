"""How long and where it keeps, in the few words in which cooks write it at the end of a method.

The sentences are of the kinds that hand-written cards and recipe pages bear, put down before they
were tried. A keeping that is not read leaves the book's own on the card, which may be longer.
"""

from __future__ import annotations

import pytest

from stillroom.core.book import BookSettings
from stillroom.core.label.labelling import label_recipe
from stillroom.core.reading.recipe_file import read_recipe

_MADE = {
    "mustard": (
        "preserve",
        "4 jars of 125 ml",
        ["75 g yellow mustard seeds", "150 ml cider vinegar", "2 tbsp honey", "1 tsp salt"],
        "Soak the seeds overnight. Blitz, jar.",
    ),
    "chutney": (
        "preserve",
        "4 jars of 200 ml",
        ["1 kg apples", "300 ml malt vinegar", "250 g sugar", "1 tsp salt"],
        "Simmer an hour, jar hot.",
    ),
    "biscuits": (
        "bake",
        "40 biscuits",
        ["250 g plain flour", "125 g butter", "80 g sugar"],
        "Mix, roll, bake at 180 C for 12 minutes. Cool.",
    ),
    "dog biscuits": (
        "pet treat",
        "40 biscuits",
        ["250 g plain flour", "1 egg", "80 ml water"],
        "Mix, roll, bake at 180 C for 40 minutes. Cool.",
    ),
    "truffles": (
        "confection",
        "30 pieces",
        ["200 g dark chocolate", "100 ml double cream", "20 g butter"],
        "Heat the cream, pour over the chocolate, add the butter, set, cut.",
    ),
    "sloe gin": (
        "infusion",
        "700 ml",
        ["700 ml vodka, 40% vol", "300 g sloes", "150 g sugar"],
        "Put all in a jar.",
    ),
    "sauerkraut": (
        "ferment",
        "2 l",
        ["1 kg white cabbage", "25 g salt"],
        "Shred, salt, pack under brine.",
    ),
}
_COLD = "In the fridge."
# what is made, its last words, how long it keeps by its card, and where where that is the fridge
_TOLD = """
mustard | Fridge 3 months. | 3 months | cold
mustard | Store in the fridge; 3 months. | 3 months | cold
mustard | Refrigerated it lasts 3 months. | 3 months | cold
mustard | Good in the fridge for 3 months. | 3 months | cold
mustard | In the fridge: 3 months. | 3 months | cold
mustard | Shelf life: 3 months in the fridge. | 3 months | cold
mustard | Keep cold and use up within 3 months. | 3 months | cold
mustard | Will be good for 3 months kept cold. | 3 months | cold
mustard | Consume within three months, refrigerated. | 3 months | cold
mustard | Store chilled. Use by 3 months. | 3 months | cold
mustard | Better after 2 weeks. Fridge 3 months. | 3 months | cold
mustard | Fridge (3 months). | 3 months | cold
mustard | Store in fridge 3 months. | 3 months | cold
mustard | It holds for 3 months in the refrigerator. | 3 months | cold
mustard | Max 3 months in the fridge. | 3 months | cold
mustard | Best before 3 months. | 3 months |
mustard | Storage: 3 months in a cool place. | 3 months |
mustard | Stored in a cool dark place it should be fine for 3 months. | 3 months |
mustard | Eat up in 3 months. | 3 months |
mustard | Should be eaten inside 3 months. | 3 months |
mustard | Throw out anything left after 3 months. | 3 months |
mustard | Keep cold. | 1 month | cold
mustard | Store in a cold, dry place. | 1 year |
mustard | Keep in a cold dark place. | 1 year |
chutney | It is fine to leave it to mature for 6 months. | 1 year |
chutney | Mature for max 3 months. | 1 year |
chutney | Turn the jars daily for the last 2 weeks. | 1 year |
mustard | Let stand 2 weeks before opening. | 1 year |
mustard | Leave in the fridge 2 weeks to mellow, then store in the cupboard. | 1 year |
chutney | Store in a cool dark place for 4 weeks before opening. | 1 year |
chutney | Cool dark cupboard for a month to mellow. | 1 year |
chutney | Store in the cupboard for 2 months, it gets better. | 1 year |
biscuits | Tin 2 weeks. | 2 weeks |
biscuits | 2 weeks in a tin. | 2 weeks |
biscuits | In an airtight tin these will be fine for 2 weeks. | 2 weeks |
biscuits | Airtight, 2 weeks. | 2 weeks |
biscuits | Bake 2 weeks before Christmas. | 3 weeks |
biscuits | The dough freezes for 3 months. | 3 weeks |
dog biscuits | Keeps 2 weeks in a tin. | 2 weeks |
dog biscuits | Fridge 1 week, freezer 3 months. | 1 week | cold
dog biscuits | Keep in the fridge for a week. | 1 week | cold
truffles | Fridge 1 week. | 1 week | cold
truffles | Keeps a week in the fridge or a month in the freezer. | 1 week | cold
truffles | Chill in the fridge for 2 days, then cut. | 1 day |
sloe gin | 3 months in a dark cupboard. | 2 years |
sloe gin | Keep it in a cool dark place for 3 months. | 2 years |
sloe gin | Discard the sloes after 3 months. | 2 years |
sauerkraut | Leave 3 weeks. Then to the fridge. | 6 months | cold
sauerkraut | 2 weeks in a cool place, then the fridge. | 6 months | cold
sauerkraut | 3 weeks at room temperature. | None |
"""  # fmt: skip
_ROWS = [tuple(cell.strip() for cell in row.split("|")) for row in _TOLD.strip().splitlines()]


@pytest.mark.parametrize(("made", "words", "keeps", "where"), _ROWS)
def test_the_card_says_no_longer_than_the_method(
    made: str, words: str, keeps: str, where: str
) -> None:
    kind, makes, ingredients, method = _MADE[made]
    listed = "".join(f"  - {one}\n" for one in ingredients)
    head = f"---\ntitle: {made.title()}\nkind: {kind}\nmakes: {makes}\ningredients:\n{listed}---\n"
    name = f"few-words-{_ROWS.index((made, words, keeps, where))}"
    recipe = read_recipe(f"{head}\n## Method\n\n{method} {words}\n", f"recipes/{name}.md", name)
    label = label_recipe(recipe, BookSettings())
    assert str(label.keeping.unopened) == keeps
    assert (label.keep_how == _COLD) == (where == "cold")
