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
    assert "3 things stood on one line" in asked(found)
