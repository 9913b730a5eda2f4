"""What printed pages and old web pages set round a recipe: running heads, menus, numbers, wishes.

The lines are short ones of papers that nobody here wrote, each beside its source, or made up.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

_OLD = (
    "{head}\n\nNo. 150. Gooseberry Vinegar.\n\nBruise the gooseberries when ripe, and to every "
    "quart put 3 quarts of water. To every gallon add 1 pound brown sugar.\n\n"
    "No. 151. Currant Vinegar.\n\nThis is made in the same way as that from gooseberry: "
    "only pick off the currants.\n\n"
    "No. 152. Primrose Vinegar.\n\nTo 15 quarts of water put 6 pounds of brown sugar; let it boil "
    "10 minutes, and take off the scum.\n"
)


# 600 Miscellaneous Valuable Receipts (1860), page 80
@pytest.mark.parametrize(
    "head", ["80          600 MISCELLANEOUS VALUABLE RECEIPTS.", "VALUABLE RECEIPTS     81"]
)
def test_a_running_head_is_no_recipe_and_a_number_begins_one(head: str) -> None:
    found = brought(_OLD.format(head=head))
    titles = [fact(one, "title") for one in found]
    assert titles == ["Gooseberry Vinegar", "Currant Vinegar", "Primrose Vinegar"]
    assert "RECEIPTS" not in "".join(one.text for one in found)


def test_capitals_with_an_amount_stay_a_thing() -> None:
    (recipe,) = brought("Plum jam\n\nPLUMS      2 lb\nBROWN SUGAR      1 lb\n\nBoil them.\n")
    assert [one.split()[0] for one in listed(recipe)] == ["PLUMS", "BROWN"]


# a leaflet of a county's service: "Food Preservation Series 12" far behind the service's name
def test_the_head_of_a_leaflet_is_where_it_is_from() -> None:
    text = (
        "COUNTY EXTENSION SERVICE              Food Preservation Series 12\n\n"
        "               Dandelion Jelly\n\n4 cups dandelion petals\n7 cups sugar\n\n"
        "Boil them for an hour.\n"
    )
    (recipe,) = brought(text)
    assert fact(recipe, "title") == "Dandelion Jelly"
    assert fact(recipe, "author") == ""
    assert "COUNTY EXTENSION SERVICE, Food Preservation Series 12" in recipe.text


@pytest.mark.parametrize(
    ("first", "title"),
    [
        ("Pickled Beets          Polly Birt", "Pickled Beets"),
        ("Plum jam          for the hampers", "Plum jam for the hampers"),
    ],
)
def test_a_title_with_something_far_behind_it_stays_the_title(first: str, title: str) -> None:
    (recipe,) = brought(f"{first}\n\nBest of all\n\n1 kg plums\n1 kg sugar\n\nBoil them well.\n")
    assert fact(recipe, "title") == title


_CARD = (
    "<html><title>Plum jam - Recipe</title><table><tr><td colspan=2>{menu}</td></tr>"
    "<tr><td>{beside}</td><td><p><b>Plum jam</b></p><p>4 lb plums<br>3 lb sugar</p>"
    "<p>Wipe the plums and boil them with the sugar for an hour.</p>"
    "<p>Add review or comment</p></td></tr></table>"
)


# an old page of rhubarb jam, laid out by a table
@pytest.mark.parametrize(
    ("menu", "beside"),
    [
        ("<b>COOKS</b> | <a href=/>Home</a> | <a href=/r>Recent Recipes</a> | <a href=/b>Box</a>",
         "Special Features<br><a href=/x>Thanksgiving</a><br><a href=/y>Christmas</a>"),
        ("<a href=/>Home</a> <a href=/r>Recipes</a>", "<a href=/x>One</a> <a href=/y>Two</a>"),
    ],
)  # fmt: skip
def test_a_pages_menu_is_neither_title_nor_author(menu: str, beside: str) -> None:
    (recipe,) = brought(_CARD.format(menu=menu, beside=beside), name="a.html")
    assert fact(recipe, "title") == "Plum jam"
    assert fact(recipe, "author") == ""
    assert listed(recipe) == ["4 lb plums", "3 lb sugar"]
    assert steps(recipe) == ["Wipe the plums and boil them with the sugar for an hour."]


def test_foods_that_are_links_stay_things() -> None:
    page = (
        "<html><body><h1>Plum jam</h1><table><tr><td>1 kg <a href=/p>plums</a><br>"
        "1 kg <a href=/s>sugar</a></td></tr></table>"
        "<p>Boil the plums with the sugar for an hour.</p>"
    )
    (recipe,) = brought(page, name="a.html")
    assert listed(recipe) == ["1 kg plums", "1 kg sugar"]


# pages of Vanillekipferl and of quince jelly
@pytest.mark.parametrize(
    ("line", "language", "stays"),
    [
        ("Wir wünschen euch viel Spaß beim Backen und Frohe Weihnachten!", "de_DE", False),
        ("Je vous souhaite un joyeux Noël !", "fr_FR", False),
        ("We wish you all a merry Christmas!", "en_GB", False),
        ("RETOUR ACCUEIL", "fr_FR", False),
        ("Mehr News aus der Region", "de_DE", False),
        ("Download File", "en_GB", False),
        ("Wir wünschen uns mehr Zucker darin.", "de_DE", True),
        ("Return it to the pan and boil it again.", "en_GB", True),
    ],
)
def test_wishes_and_buttons_are_nothing_of_a_recipe(line: str, language: str, stays: bool) -> None:
    jam = "Plum jam\n\n1 kg plums\n1 kg sugar\n\nBoil the plums with the sugar for an hour."
    (recipe,) = brought(f"{jam}\n\n{line}\n", language)
    assert (line.rstrip(" !.") in recipe.text) == stays
    assert stays or "Names that stood" not in asked(recipe)


# a Spanish letter of polvorones: a list run together by its stops
def test_a_list_run_together_is_parted_also_where_no_figure_follows() -> None:
    text = (
        "Polvorones\n\n75 gr. de almendra molida.75 gr. de azúcar.200 gr. de harina.100 gr. de "
        "manteca.Una cucharadita de canela.El zumo de medio limón. 1 Huevo.\n\nMezclar todo bien.\n"
    )
    (recipe,) = brought(text, "es_ES")
    assert listed(recipe)[3:] == [
        "100 gr. de manteca", "Una cucharadita de canela", "El zumo de medio limón", "1 Huevo",
    ]  # fmt: skip


def test_a_piece_of_a_page_is_read_as_one_by_the_name_of_its_file() -> None:
    page = "<table><tr><td>1 kg plums<br>1 kg sugar</td></tr></table><p>Boil the plums well.</p>"
    (recipe,) = brought(page, name="a.html")
    assert listed(recipe) == ["1 kg plums", "1 kg sugar"]
    assert steps(recipe) == ["Boil the plums well."]
