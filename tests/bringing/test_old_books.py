"""Old cookery books in paragraphs, lists in two columns, and what else a stranger's page holds.

The texts are short facts of: Isabella Beeton, The Book of Household Management (1861, Project
Gutenberg 10136); The Bordeaux Wine and Liquor Dealers' Guide and its like (ratafias, 1850s); a
family's candies in an open document (a public repository); a state's extension guide to pickle
relish (1997); pages on balms, candles and cordials. What must appear was written down before the
reader saw them.
"""

from __future__ import annotations

import io
import zipfile

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing import bring
from stillroom.bringing.columns import add_columns
from stillroom.bringing.found import Row
from stillroom.core.recipe.settings import BookSettings

TOFFEE = """TO MAKE EVERTON TOFFEE.

1597. INGREDIENTS.--1 lb. of powdered loaf sugar, 1 teacupful of water,
1/4 lb. of butter, 6 drops of essence of lemon.

_Mode_.--Put the water and sugar into a brass pan, and beat the butter
to a cream. When the sugar is dissolved, add the butter.

_Time_.--18 to 35 minutes.

_Average cost_, 10d.

_Sufficient_ to make 2 lbs. of toffee. _Seasonable_ at any time.
"""
ELDER_WINE = """ELDER WINE.

1818. INGREDIENTS.--To every 3 gallons of water allow 1 peck of
elderberries; to every gallon of juice allow 3 lbs. of sugar, 1/2 oz. of
ground ginger, 6 cloves; 1/2 pint of brandy to every gallon of wine.

_Mode_.--Pour the water, quite boiling, on the elderberries.
"""
MARMALADE = """ORANGE MARMALADE.

I.

1566. INGREDIENTS.--Equal weight of fine loaf sugar and Seville oranges;
to 12 oranges allow 1 pint of water.

_Mode_.--Let there be an equal weight of loaf sugar and oranges.

II.

1567. INGREDIENTS.--Equal weight of Seville oranges and sugar; to every
lb. of sugar allow 1/2 pint of water.

_Mode_.--Weigh the sugar and oranges.
"""
RATAFIAS = """442. Ratafia of Cherries.
Wild cherries, 10 lbs.; cinnamon, 2 drachms; brandy, 8 pints, and 4 ounces of sugar to every pint \
of juice. Crush the fruit, and infuse the whole in a jar.

443. Another Ratafia of Cherries.
Juice of Morello cherries, 15 pints; brandy, 14 pints; sugar, 8 lbs. Crush the pulp of the cherries.
"""


def test_an_old_books_paragraphs_are_its_list_its_method_and_notes() -> None:
    (toffee,) = brought(TOFFEE)
    assert (toffee.title, fact(toffee, "makes")) == ("Everton toffee", "2 lbs of toffee")
    assert listed(toffee) == [
        "1 lb. of powdered loaf sugar",
        "1 teacupful of water",
        "1/4 lb. of butter",
        "6 drops of essence of lemon",
    ]
    assert [step[:13] for step in steps(toffee)] == ["Put the water"]
    assert "18 to 35 minutes" in toffee.text.split("## Notes")[1]


def test_what_is_to_every_gallon_is_so_for_all_up_to_the_semicolon() -> None:
    (wine,) = brought(ELDER_WINE)
    assert listed(wine) == [
        "To every 3 gallons of water allow 1 peck of elderberries",
        "to every gallon of juice allow 3 lbs. of sugar",
        "to every gallon of juice 1/2 oz. of ground ginger",
        "to every gallon of juice 6 cloves",
        "1/2 pint of brandy to every gallon of wine",
    ]
    assert asked(wine).count("is so much to another thing") == 5


def test_two_recipes_under_one_title_are_two_with_its_number() -> None:
    first, second = brought(MARMALADE)
    assert (first.title, second.title) == ("Orange marmalade (I)", "Orange marmalade (II)")
    assert [len(listed(one)) for one in (first, second)] == [2, 2]


def test_a_list_with_semicolons_before_its_method_is_one() -> None:
    first, second = brought(RATAFIAS)
    assert (first.title, second.title) == ("Ratafia of Cherries", "Another Ratafia of Cherries")
    assert listed(first)[:2] == ["Wild cherries, 10 lbs.", "cinnamon, 2 drachms"]
    assert listed(first)[-1] == "4 ounces of sugar to every pint of juice"
    assert steps(second) == ["Crush the pulp of the cherries."]


def open_document(lines: list[str]) -> bytes:
    """Return an OpenDocument text of lines, a tab where they have one."""
    space = "urn:oasis:names:tc:opendocument:xmlns"
    body = "".join(f"<t:p>{line}</t:p>" for line in lines).replace("\t", "<t:tab/>")
    text = (
        f'<o:document-content xmlns:o="{space}:office:1.0" xmlns:t="{space}:text:1.0">'
        f"<o:body><o:text>{body}</o:text></o:body></o:document-content>"
    )
    held = io.BytesIO()
    with zipfile.ZipFile(held, "w") as packed:
        packed.writestr("content.xml", text)
    return held.getvalue()


def test_columns_that_tabs_part_are_things_of_their_own() -> None:
    lines = [
        "Chocolate Fudge",
        "",
        "1 cup semi-sweet chocolate pieces\t\t1/3 cup sweetened",
        "Pinch of salt\t\t\tcondensed milk",
        "½ teaspoon vanilla\t\t3 tablespoons ground nuts",
        "",
        "Melt the chocolate over hot water, and stir in the rest. Makes about ½ pound.",
    ]
    (fudge,) = bring("fudge.odt", open_document(lines), BookSettings()).recipes
    assert listed(fudge) == [
        "1 cup semi-sweet chocolate pieces",
        "1/3 cup sweetened condensed milk",
        "Pinch of salt",
        "½ teaspoon vanilla",
        "3 tablespoons ground nuts",
    ]
    rows: list[Row] = []
    assert not add_columns(rows, "Prep time:\t20 minutes", False)
    assert rows == []


@pytest.mark.parametrize(
    ("line", "things"),
    [
        ("2 cups sugar ½ cup butter", ["2 cups sugar", "½ cup butter"]),
        ("4 onions 4 cups sugar", ["4 onions", "4 cups sugar"]),
        (
            "1 large cucumber, thinly sliced 1 medium onion, thinly sliced",
            ["1 large cucumber, thinly sliced", "1 medium onion, thinly sliced"],
        ),
        ("2 cups flour type 405 sugar", ["2 cups flour type 405 sugar"]),
        ("1 tbsp fresh thyme or 1 tsp dried thyme", ["1 tbsp fresh thyme or 1 tsp dried thyme"]),
        ("1 tin tomatoes 400 g", ["1 tin tomatoes 400 g"]),
        ("1.13 oz lye (0.129 x 4 + 0.175 x 2)", ["1.13 oz lye (0.129 x 4 + 0.175 x 2)"]),
    ],
)
def test_two_columns_with_blanks_between_are_parted_where_that_is_sure(
    line: str, things: list[str]
) -> None:
    (draft,) = brought(f"Plum relish\n\n{line}\n1 kg plums\n\nBoil it all until it is thick.\n")
    assert listed(draft) == [*things, "1 kg plums"]
    assert ("things stood on one line" in asked(draft)) == (len(things) == 2)
    assert "Two things may stand" not in asked(draft)


FACTS = """Friendship Cookie Jar

| Course | Dessert, Gift |
| Prep Time | 20 minutes |
| Servings | 24 cookies |
| Author | Silas |
Ingredients
- 2 cups flour
- 1 tsp salt

Method
1. Layer it all in a jar, and close it.
"""


def test_a_pages_facts_in_a_table_are_no_ingredients() -> None:
    (jar,) = brought(FACTS)
    assert listed(jar) == ["2 cups flour", "1 tsp salt"]
    assert (fact(jar, "makes"), fact(jar, "author")) == ("24 cookies", "Silas")


# a line at the end of a list, and whether it is of the list or the first step
@pytest.mark.parametrize(
    ("line", "language", "is_step"),
    [
        ("Soak the flowers in the water", "en_GB", True),
        ("Heat the wax to 80 degrees", "en_GB", True),
        ("Laver les fruits", "fr_FR", True),
        ("Mettre le sucre dans une casserole", "fr_FR", True),
        ("Mint extract to taste (about 20 drops), optional", "en_GB", False),
        ("Essential oil or fragrance oil as desired", "en_GB", False),
        ("Dry mustard", "en_GB", False),
        ("salt and pepper", "en_GB", False),
    ],
)
def test_a_short_line_below_a_list_is_of_it_or_says_what_is_done(
    line: str, language: str, is_step: bool
) -> None:
    text = (
        f"Cordial\n\n500 g sugar\n2 lemons\n{line}\nStir the sugar and the lemons together well.\n"
    )
    (draft,) = brought(text, language)
    assert (line in listed(draft), line in steps(draft)) == (not is_step, is_step)


@pytest.mark.parametrize(
    ("head", "title"),
    [
        (
            "Go Back\n\nElderflower Liqueur\n\nGood for warm days, and for cold ones too.",
            "Elderflower Liqueur",
        ),
        ("1-Gallon Mead\n\nServings: 5 (750ml bottles)", "1-Gallon Mead"),
        ("How to make lip balm\nWords: Jane Wrigglesworth", "Lip balm"),
        ("RECEPT ADVOCAAT volgens oud familierecept:", "ADVOCAAT volgens oud familierecept"),
        (
            "Ach ja, hier das Rezept für die schnelle Ringelblumensalbe:",
            "Schnelle Ringelblumensalbe",
        ),
    ],
)
def test_what_a_page_puts_round_a_title_is_none(head: str, title: str) -> None:
    (draft,) = brought(
        f"{head}\n\n500 g honey\n1 l water\n\nStir it all together, and let it stand.\n"
    )
    assert draft.title == title


def test_a_guides_process_times_are_no_steps() -> None:
    text = (
        "PICKLE RELISH\n\n3 qt. chopped cucumbers\n6 cups white vinegar\n\nYIELD: About 9 pints\n\n"
        "PROCEDURE: Heat mixture to boil and fill hot clean jars, leaving\n1/2-inch headspace. "
        "Adjust lids and process.\n\nRECOMMENDED PROCESS TIMES FOR PICKLE\n"
        "RELISH IN A BOILING-WATER CANNER\n\nHot Half-pints 10 min. 15 min. 20 min.\n"
    )
    (relish,) = brought(text)
    assert steps(relish) == [
        "Heat mixture to boil and fill hot clean jars, leaving 1/2-inch headspace. "
        "Adjust lids and process."
    ]
    assert "10 min. 15 min." in relish.text.split("## Notes")[1]


def test_who_sent_a_letter_is_asked_whether_it_is_theirs() -> None:
    text = (
        "From: Ann Hollis <ann@hollis.example>\nTo: Ruth Vane <ruth@vane.example>\n"
        "Subject: Damson gin\n\nDear Ruth,\n\n1lb damsons\n8oz sugar\n1 bottle gin (70cl)\n\n"
        "Put it all in a large jar, and shake it every day for a week.\n\nLove,\nAnn\n"
    )
    (gin,) = brought(text, name="gin.eml")
    assert fact(gin, "author") == "Ann Hollis"
    assert '"Ann Hollis" sent it' in asked(gin)


def test_decimals_of_another_language_are_asked_about_once() -> None:
    text = "Plum jam\n\n1,5 kg plums\n0,5 l water\n1 lemon\n\nBoil it all until it sets well.\n"
    (jam,) = brought(text)
    assert listed(jam) == ["1.5 kg plums", "0.5 l water", "1 lemon"]
    assert (asked(jam).count("decimals"), "wrong sign" in asked(jam)) == (1, False)
    (one,) = brought(text.replace("0,5 l", "1 l"))  # alone it may be a slip
    assert (listed(one)[0], "wrong sign" in asked(one)) == ("1,5 kg plums", True)
    (thousands,) = brought(text.replace("0,5 l", "1,500 g"))
    assert listed(thousands)[0] == "1,5 kg plums"
    (french,) = brought("Confiture\n\n1.5 kg de prunes\n0.5 l d'eau\n\nCuire le tout.\n", "fr_FR")
    assert listed(french) == ["1,5 kg de prunes", "0,5 l d'eau"]


@pytest.mark.parametrize("made", ["24 bars Cooking oil spray", "24 bars. Cooking oil spray."])
def test_a_food_behind_how_much_is_made_is_not_lost(made: str) -> None:
    text = f"Granola bars\n\nYield: {made}\n2 cups oats\n1 cup honey\n\nBake them until golden.\n"
    (bars,) = brought(text)
    assert fact(bars, "makes") == "24 bars"
    assert {*listed(bars)} == {"2 cups oats", "1 cup honey", "Cooking oil spray"}


def test_400_kg_for_one_jar_is_asked() -> None:
    text = (
        "Tomato jam\nMakes 1 jar of 250 ml\n\n400 kg tomatoes\n200 g sugar\n\nBoil until it sets.\n"
    )
    (absurd,) = brought(text)
    assert "400 kg tomatoes can hardly be for 1 jar of 250 ml." in asked(absurd)
    (right,) = brought(text.replace("400 kg", "400 g"))
    assert "can hardly" not in asked(right)
