"""Several recipes typed on one sheet, lists on one line, and how many it gives told in a step.

The shapes are of e-mails, saved pages and typescripts of 29 papers (blogs, a society's cookery
pages, a text of Christmas biscuits, plain-text recipe files of repositories, four typescripts made
up in the shapes a newcomer met; 2026-11-29), fixed with what each must be before the first run.
Then 9 were right with what is doubtful asked, 6 lost a recipe or ran several into one in silence,
14 had a title, a line or a page's furniture in the wrong place; after it 22 were right, and what is
left are remarks of the writer's that stand as steps. Here stand short facts of them.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed
from stillroom.bringing.whole_list import things_of_line
from stillroom.bringing.yields import yield_told
from stillroom.core.words.frontmatter import read_yaml


def listed_of(draft: str) -> list[str]:
    data = read_yaml(draft.split("\n---\n", 1)[0].removeprefix("---\n"), "a.md").data
    found = data.get("ingredients") or []
    return [row if isinstance(row, str) else str(row["item"]) for row in found]


def steps(draft: str) -> str:
    return draft.partition("## Method")[2].partition("## Source")[0]


TYPED = """FUDGE (Dad's)

1 lb sugar, 1/4 lb butter, small tin evaporated milk, few drops vanilla

Melt it all slowly in the big pan. Boil to soft ball, take off and beat till it goes grainy.

SHORTBREAD (Auntie Nan)

6 oz plain flour
4 oz butter
2 oz caster sugar

Rub in, press into a sandwich tin, 300F for 40 mins. Cuts into 8 petticoat tails.

ELDERBERRY ROB

3 lb elderberries
1 lb sugar
muslin bag w/ 6 peppercorns + 4 cloves

Cook the berries till they burst, strain, boil 20 mins with the rest. It gives about 4 bottles.
"""
BISCUITS = """CHRISTMAS BUTTER COOKIES

1 cup soft butter 1/2 cup brown sugar, packed 2 cups flour, sifted

Cream butter and slowly add the sugar, beating well. Add flour gradually and bake it.

ALMOND MACAROONS

1 cup almond paste 1 cup sugar 3 egg whites

Rub paste until smooth, gradually work in the sugar until well mixed, and bake it.

HICKORY NUT KISSES

2 cups sugar 2 cups hickory nuts, chopped fine 6 egg whites 3 tablespoons flour

Beat egg whites lightly, add sugar, then nut kernels, lastly the flour.
"""
CHUTNEYS = """Chutneys & Pickles
Chutney
For a printable version of this recipe, click here.
Ingredients
1/2 c. raisins
1/2 c. chopped celery
Method
Bring all of the preceding to the boil, and simmer until it thickens.
Cover and cool.
Courtesy of member Lea Birch, House of Fern Cookery Book, 1986
Apricot Chutney
For a printable version of this recipe, click here.
Ingredients
2 lb. dried apricots
2 pt. wine vinegar
Method
Wash the apricots well; cover with boiling water and leave for 24 hours.
Pot and cover.
"""
TABLES = """# snack
## core
### Flapjack (Nick)
*Serves 32*
 - | - | -
----|----|----
porridge oats|1000|g
butter|500|g
golden syrup|500|g
Heat oven to 180C
Melt butter in a large saucepan over a gentle heat and stir in all the rest.
"""


def drafts(text: str, name: str = "old.txt") -> list[tuple[str, str]]:
    return [(one.title, one.text) for one in brought(text, name=name)]


@pytest.mark.parametrize(
    ("text", "titles", "counts"),
    [
        (TYPED, ["Fudge (Dad's)", "Shortbread (Auntie Nan)", "Elderberry rob"], [4, 3, 4]),
        (
            BISCUITS,
            ["Christmas butter cookies", "Almond macaroons", "Hickory nut kisses"],
            [3, 3, 4],
        ),
        (CHUTNEYS, ["Chutney", "Apricot Chutney"], [2, 2]),
    ],
    ids=["typed", "biscuits", "chutneys"],
)
def test_each_of_several_has_its_title_its_list_and_its_method(
    text: str, titles: list[str], counts: list[int]
) -> None:
    found = drafts(text)
    assert [title for title, _ in found] == titles
    assert [len(listed_of(draft)) for _, draft in found] == counts
    for _, draft in found:
        assert len(steps(draft).split()) > 5
        assert not any(line in steps(draft) for line in listed_of(draft))


def test_how_many_is_told_in_a_step_and_a_bag_of_spice_is_in_the_list() -> None:
    (_, fudge), (_, shortbread), (_, rob) = drafts(TYPED)
    assert "kind: fudge" in fudge
    assert "makes: 8 petticoat tails" in shortbread
    assert "makes: about 4 bottles" in rob
    assert "6 peppercorns, in a muslin bag" in rob
    assert "4 cloves, in a muslin bag" in rob
    assert "2 things stood on one line" in rob, "and it is asked"


def test_a_pages_furniture_is_no_step_and_whose_it_is_stays() -> None:
    first, second = drafts(CHUTNEYS)
    for _, draft in (first, second):
        assert "printable" not in draft
        assert "Courtesy" not in draft
    assert "author: Lea Birch" in first[1]
    assert "author" not in second[1]


def test_a_typed_table_without_strokes_outside_is_a_list_below_its_chapters() -> None:
    ((title, draft),) = drafts(TABLES, "book.md")
    assert title == "Flapjack (Nick)"
    assert listed_of(draft) == ["1000 g porridge oats", "500 g butter", "500 g golden syrup"]


LETTER = """Thanks for your note about the cordial, but here is the recipe:

Elderberries (still on stalks)
Cinnamon sticks (1 per each pint of liquid)

Pick the fruit on a dry day, and stew it with just enough water to cover it.

Original recipe is from an old page (
"""
STARRED = """Forty-four

Ingredients *44 sugar cubes *44 coffee beans *1 bottle of vodka *4-6 whole oranges

Pour the vodka into a large container with lid. Add the sugar, the coffee beans and the oranges.
"""
AMIDST = """# Saturday, September 20, 2008

## No fail fudge

4 1/2 Cups Sugar
2 Cups Chopped Nuts
Caramel colouring if desired.

Cook the sugar and stir it constantly until it boils, and pour it into a pan.
"""
APART = "# Blondies\n\n# Description\n\nA dense cake.\n\n# Ingredients\n\nFlour\t\t\t125 g\n"
APART += "Salt   \t\t\t0.75 tsp\nEgg\t\t\t1\n\n# Method\n\n1. Bake it all.\n"


@pytest.mark.parametrize(
    ("text", "title", "things"),
    [
        (LETTER, "", 2),
        (STARRED, "Forty-four", 4),
        (AMIDST, "No fail fudge", 3),
        (APART, "Blondies", 3),
    ],
    ids=["bare foods", "stars", "a date above", "tabs"],
)
def test_a_list_is_whole_and_stands_below_its_own_title(text: str, title: str, things: int) -> None:
    ((called, draft),) = drafts(text)
    assert called == title or not title
    assert len(listed_of(draft)) == things
    assert "Original recipe" not in steps(draft).partition("## Notes")[0]


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("Boil it. It gives about 4 bottles.", "about 4 bottles"),
        ("We got 7 jars out of this.", "7 jars"),
        ("Pour over. Leave 6 weeks. Enough for 3 big jars.", "3 big jars"),
        ("Yields one bottle, strange to say.", "one bottle"),
        ("That's it! Fills 1 jam jar.", "1 jam jar"),
        ("Gives 2 cups - just fits a pint jar!", "2 cups"),
        ("Press into a pan. Makes 2-3 dozen.", "2-3 dozen"),
        ("Cuts into 16 squares.", "16 squares"),
        ("You should get 30 biscuits from this.", "30 biscuits"),
        ("Filled six 8 oz jars.", "six 8 oz jars"),
        # what is done, what goes in, and sizes: no yield
        ("Fill 4 jars to the brim.", ""),
        ("Cut into 2 cm squares.", ""),
        ("Make 3 cuts in each loaf.", ""),
        ("This gives 2 cups of juice.", ""),
        ("Give it 4 hours.", ""),
        ("It gives 2 cups more each time.", ""),
        ("Get 6 jars ready.", ""),
        ("It made 4 people ill.", ""),
        ("Divide into 12 balls.", ""),
        ("It comes to the boil in 10 minutes.", ""),
    ],
)
def test_what_a_step_says_is_made(said: str, makes: str) -> None:
    assert yield_told(said) == makes


@pytest.mark.parametrize(
    ("line", "things"),
    [
        ("3lb green tomatoes, 1lb apples, 1/2lb sultanas, 1 pt vinegar, 1 tsp salt.", 5),
        ("1 bottle gin; rind of 2 seville oranges; 4 oz sugar candy", 3),
        ("2 lb shallots, 4oz salt, 1 pt malt vinegar, 1oz pickling spice tied in a cloth.", 4),
        ("1/2 lb butter, softened, 1/2 cup sugar and 2 cups flour", 3),
        # one thing, or no list
        ("500 g plums, stoned and halved", 0),
        ("2 weeks later strain it, and bottle it", 0),
        ("1 tin (400 g) tomatoes, drained", 0),
        ("4 jars, 4 lids, and a pan of boiling water to stand them in for 10 minutes", 0),
        ("Makes 4 jars, 2 small ones, 1 large", 0),
        ("2 or 3 days, 4 at most, and turn it", 0),
    ],
)
def test_a_line_is_a_whole_list_only_where_each_part_goes_in(line: str, things: int) -> None:
    assert len(things_of_line(line)) == things


def test_a_line_of_a_longer_list_stays_as_it_was() -> None:
    (found,) = brought(
        "Plum jam\n\n1 kg plums\n1 lemon, 2 cloves, 1 bay leaf\n800 g sugar\n\nBoil.\n"
    )
    assert fact(found, "title") == "Plum jam"
    assert len(listed(found)) == 5
    assert "things stood on one line" not in asked(found)  # commas part them, and each is measured


# eight more sheets, made up in other shapes and fixed before they were run: 5 were right then
MORE = {
    "underlined": (
        """Plum Jam
--------
3 lb plums, 3 lb sugar, juice of 1 lemon

Stew the plums till soft, add sugar, boil to a set. Makes about 6 jars.

Pear Chutney
------------
2 lb pears, 1 lb onions, 1 pt vinegar, 1 lb sugar, salt

Cook it all down till thick, about 2 hours. Pot while hot.
""",
        [("Plum Jam", 3), ("Pear Chutney", 5)],
    ),
    "bold": (
        """**Vanilla Fudge**

450g sugar, 100g butter, 1 tin condensed milk, vanilla

Melt, boil to soft ball, beat and pour out.

**Coconut Ice**

1 lb icing sugar, 6 oz coconut, 1 tin condensed milk

Mix to a stiff dough. Press into a tin and colour half of it pink.
""",
        [("Vanilla Fudge", 4), ("Coconut Ice", 3)],
    ),
    "colon run": (
        """Lemon curd: 4 lemons, 1 lb sugar, 4 oz butter, 4 eggs. Put all in a basin and stir it.

Mincemeat: 1 lb apples, 1 lb suet, 1 lb raisins, 1 lb sugar, 2 lemons. Mince it well. Fill jars.

Ginger beer: 2 oz ginger, 1 lb sugar, 1 lemon, 1 gallon water. Boil it for half an hour.
""",
        [("Lemon curd", 4), ("Mincemeat", 5), ("Ginger beer", 4)],
    ),
    "dashes": (
        """SLOE GIN (Uncle Pat)
1 lb sloes - 8 oz sugar - 1 bottle gin
Prick sloes, put in jar with the rest, shake weekly for 3 months. Strain.

-----

RUM BALLS (Deirdre)
8 oz cake crumbs - 2 oz cocoa - 3 tbsp rum - apricot jam to bind
Mix, roll into balls and coat with vermicelli.
""",
        [("Sloe gin", 3), ("Rum balls", 4)],
    ),
    "numbered": (
        """1. Plum jam
1 kg plums
1 kg sugar
Boil together till it sets.

2. Apple jelly
2 kg apples
800 g sugar
Boil the apples, strain overnight, boil the juice with the sugar.

3. Quince paste
1 kg quinces
700 g sugar
Cook soft, sieve, cook with the sugar until it leaves the pan.
""",
        [("Plum jam", 2), ("Apple jelly", 2), ("Quince paste", 2)],
    ),
    "ingr inline": (
        """Bath Salts
Ingredients: 2 cups Epsom salts, 1 cup baking soda, 20 drops lavender oil
Method: Mix the dry things, add the oil drop by drop, stir well and jar.

Sugar Scrub
Ingredients: 1 cup sugar, 1/2 cup coconut oil, 10 drops peppermint oil
Method: Stir it all together and spoon into small jars. Fills 2 small jars.
""",
        [("Bath Salts", 3), ("Sugar Scrub", 3)],
    ),
    "weights after": (
        """Shortbread

Flour 12 oz
Butter 8 oz
Sugar 4 oz

Rub in, knead, bake slowly for an hour. Gives 24 fingers.

Parkin

Oatmeal 8 oz
Treacle 8 oz
Flour 8 oz
Ginger 2 tsp

Melt the treacle, mix in the rest and bake for an hour and a half. Keep a week before cutting.
""",
        [("Shortbread", 3), ("Parkin", 4)],
    ),
    "story between": (
        """Here are the two recipes I promised for the fair.

Tablet

2 lb sugar, 4 oz butter, 1 large tin condensed milk, 1 cup water

Boil it all for 20 minutes, stirring all the time, then beat till it thickens. So we had it.

Treacle Toffee

1 lb demerara sugar, 3 oz butter, 1/2 lb black treacle, pinch cream of tartar

Boil to hard crack and pour in a greased tin. Break up with a hammer!
""",
        [("Tablet", 4), ("Treacle Toffee", 4)],
    ),
}


@pytest.mark.parametrize(("text", "expected"), MORE.values(), ids=MORE)
def test_sheets_in_other_shapes(text: str, expected: list[tuple[str, int]]) -> None:
    found = [(title.partition(" (")[0], len(listed_of(draft))) for title, draft in drafts(text)]
    assert [(title.lower(), count) for title, count in found] == [
        (title.lower(), count) for title, count in expected
    ]
    for _, draft in drafts(text):
        assert not any(line in steps(draft) for line in listed_of(draft) if len(line) > 8)
