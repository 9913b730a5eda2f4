"""What a method puts in, and what it only names: tools, comparisons, what is taken out again.

The sentences are such as cooks write, put down before they were tried: a food that is put in beside
something that is taken out must be found, and a tool that is called after a food is none.
"""

from __future__ import annotations

from time import process_time

import pytest
from tests.care_cases import recipe_of

from stillroom.core.care.filling import filled_hot
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.method.sentences import affirmed_clauses
from stillroom.core.reading.recipe_file import read_recipe

_HEAD = (
    "---\ntitle: Plum spread\nkind: preserve\nmakes: 2 jars of 200 ml\ningredients:\n"
    "  - 500 g plums\n  - 300 g jam sugar\n---\n\n## Method\n\n"
)
_TOOLS = """
potato peeler; potato ricer; potato masher; garlic press; apple corer; apple peeler; cherry
stoner; olive pitter; nutmeg grater; cheese grater; lemon squeezer; lemon zester; orange juicer;
egg cup; egg slicer; egg timer; egg separator; butter knife; butter muslin; bread knife; cake
tin; cake tester; biscuit cutter; cookie scoop; coffee grinder; coffee mug; coffee filter; tea
towel; tea strainer; milk pan; milk carton; wine bottle; wine siphon; beer crate; vodka bottle;
sugar thermometer; salt shaker; pepper mill; spice grinder; honey dipper; jam funnel; jelly bag;
pickle tongs; melon baller; mushroom brush; vegetable peeler; rice cooker; pizza stone; fish
kettle; meat mallet; oyster knife; nut milk bag; pie dish; pastry brush; flour sieve; flour
sifter; herb scissors; onion goggles; soup ladle; ice cream scoop; ice cream tub; asparagus
kettle; strawberry huller; pineapple corer; chicken wire; grape scissors; almond blancher;
peanut butter jar; mustard jar; cheese wire
"""
_COMPARED = """
Cut it to the size of a walnut.
Stir until it is like wet sand and smells of toffee.
Cook till thick as double cream.
Whisk to the texture of mayonnaise.
Rub until it resembles oatmeal.
Chop it smaller than a pea, no bigger than a peppercorn.
It turns mustard yellow, then chestnut brown.
Cut into strips as thin as spaghetti.
Whisk until pale as butter.
Rolled out as thin as a wafer.
Reduce it to a glaze, like treacle.
""".strip().splitlines()
_PUT_IN = """
Remove from the heat and stir in the almonds. | almond
Remove from the oven and sprinkle with sesame seeds. | sesame
Take out the vanilla pod and add the walnuts. | walnut
Lift out the muslin bag and beat in the eggs. | egg
Remove the bay leaf and whisk in the mustard. | mustard
Discard the peel, then stir in the cream. | cream
Bind with beaten egg. | egg
Throw in two handfuls of almonds. | almond
Throw the almonds in. | almond
Throw it all together with the cream. | cream
Take out of the tin and brush with egg. | egg
Strip off the leaves and mix with the pistachios. | pistachio
Pick out the stalks and add the hazelnuts. | hazelnut
Once the scum is removed add the almonds. | almond
Skim, discard the scum and stir in the tahini. | tahini
With the stones removed, mix the fruit with the ground almonds. | almond
Blanch the almonds and discard the skins. | almond
Crack the eggs and throw away the shells. | egg
Wash the jars and fill with walnuts and honey. | walnut
Clean the pan and melt the butter in it. | butter
Rinse the bottles and put a walnut in each. | walnut
Pack the plums into sterilised jars with a few almonds. | almond
Fill clean jars with plums and brandy. | brandy
Mix cream and eggs in a clean pan. | cream
Pour the brandy over and wipe the jar rims. | brandy
Stir in the almonds and peel off the film. | almond
Add almonds with skins removed. | almond
Do not forget the almonds. | almond
Never leave out the egg. | egg
No need to peel the apples, put them straight in. | apple
Instead of lard I use butter. | butter
In go the walnuts. | walnut
The butter should be left out to soften overnight. | butter
The eggs are left out of the fridge. | egg
Stir in almonds, cream, vanilla and the mixture should not boil. | cream
Stir in almonds, vanilla, cream and the syrup must not catch. | cream
""".strip().splitlines()
_LEFT_OUT = """
Throw the walnuts away. | walnut
Strain out the almonds and throw them out. | almond
Lift out the almonds and discard. | almond
The almonds are thrown away. | almond
Remove the almonds and the walnuts. | almond
Remove the egg shells. | egg
Trim the celery off. | celery
Use the egg whites for another recipe. | egg
Wash the jars with vodka. | vodka
The jars are rinsed with vodka. | vodka
Do not add milk. | milk
Keep it away from milk. | milk
Serve with cheese. | cheese
The walnuts should be left out. | walnut
Grapes, walnuts and raisins should be avoided. | walnut
Grapes, walnuts and raisins must not be added. | walnut
""".strip().splitlines()


def _named(words: str) -> list[str]:
    name = "in-and-out-" + "".join(filter(str.isalnum, words.lower()))[:60]
    recipe = read_recipe(f"{_HEAD}{words}\n", f"recipes/{name}.md", name)
    return [one.ingredient.item for one in foods_in_method(recipe)]


@pytest.mark.parametrize("tool", [one.strip() for one in _TOOLS.split(";")])
def test_a_tool_is_no_food(tool: str) -> None:
    for words in (f"Peel them with the {tool}.", f"Wash the {tool} first, and set it aside."):
        assert _named(words) == [], words


@pytest.mark.parametrize("words", _COMPARED)
def test_a_comparison_brings_nothing_in(words: str) -> None:
    assert _named(words) == []


@pytest.mark.parametrize("row", _PUT_IN)
def test_what_is_put_in_is_found_beside_what_is_taken_out(row: str) -> None:
    words, food = row.split(" | ")
    assert [one for one in _named(words) if food in one], _named(words)


@pytest.mark.parametrize("row", _LEFT_OUT)
def test_what_is_taken_out_is_not_in_it(row: str) -> None:
    words, food = row.split(" | ")
    assert [one for one in _named(words) if food in one] == []


@pytest.mark.parametrize("end", ["", "b or "])
def test_a_long_word_behind_a_denial_takes_no_time(end: str) -> None:
    begun = process_time()
    assert affirmed_clauses(f"Never add x, {end}{'a' * 3000}!") == ([] if end else ["a" * 3000])
    assert process_time() - begun < 1


def _of(title: str, foods: list[str], steps: list[str]) -> list[str]:
    front = {"title": title, "kind": "preserve", "ingredients": foods, "method": steps}
    recipe = recipe_of(front)
    return [one.ingredient.item for one in foods_in_method(recipe)]


CHILLIES = ["3 habanero peppers", "2 cloves of garlic", "1 tbsp salt"]


# the first is rootedsoulapothecary.com's, the others from memory of how recipes end
@pytest.mark.parametrize(
    ("title", "foods", "step"),
    [
        ("Fermented habanero hot sauce", CHILLIES, "Pour the hot sauce into a jar or bottle."),
        ("Grandma's hot sauce", CHILLIES, "Store the hot sauce in the fridge."),
        ("Hot sauce (red)", CHILLIES, "Your hot sauce is ready in a week."),
        ("Plum barbecue sauce", ["500 g plums"], "Ladle the barbecue sauce into bottles."),
        ("Lemon curd", ["2 eggs", "60 g butter", "2 lemons"], "Pour the lemon curd into jars."),
    ],
)
def test_what_a_title_ends_with_is_no_part_of_itself(
    title: str, foods: list[str], step: str
) -> None:
    assert _of(title, foods, ["Blend it all.", step]) == []


@pytest.mark.parametrize(
    ("title", "foods", "step", "found"),
    [
        ("Spiced sloe gin", ["10 cloves"], "Pour the sloe gin into a bottle.", "sloe gin"),
        ("Chocolate peanut butter", ["90 g sugar"], "Spoon the peanut butter into jars.",
         "peanut butter"),
        ("Lemon curd", ["2 lemons"], "Pour the lemon curd into jars.", "lemon curd"),
        ("Herb raspberry vinegar", ["20 g thyme"], "Pour the raspberry vinegar into a jar.",
         "raspberry vinegar"),
        ("Ribs in barbecue sauce", ["500 g plums"], "Pour the barbecue sauce over it.",
         "barbecue sauce"),
    ],
)  # fmt: skip
def test_what_brings_more_than_its_list_is_put_in(
    title: str, foods: list[str], step: str, found: str
) -> None:
    assert _of(title, foods, ["Blend it all.", step]) == [found]


def test_hot_is_a_sauces_name_and_no_heat() -> None:
    assert filled_hot(["Pour the hot sauce into a jar"], sure_of_glass=False) == ""
    assert filled_hot(["Simmer it", "Pour the hot sauce into a jar"], sure_of_glass=False)
    assert filled_hot(["Pour it hot into a jar"], sure_of_glass=False)
