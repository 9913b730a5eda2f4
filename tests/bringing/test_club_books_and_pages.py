"""Books of clubs and parishes, soups that are mixes, and what pages leave in a copied recipe.

Measured on 14 recipes of four old books (1919 and before), 5 soup mixes and 15 pages' leavings
(November 2026), fixed before the code; these are invented after them.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

METHOD = "Boil them for three hours and seal them while they are hot."
JAM = "1 kg plums\n800 g sugar\n\nBoil the plums with the sugar until it sets. Pour it into jars.\n"
CLUB = (
    "CHILI SAUCE\n{gap}Mrs. R. Vane\n{gap}Twenty-four ripe tomatoes; four white onions; four"
    " tablespoonfuls salt; one of cinnamon; one pint vinegar; boil three hours, seal hot.\n{gap}"
    "SPICED CURRANTS\n{gap}Belle Shaw\n{gap}Four pounds of currants; one and one-half pints of"
    " vinegar; one pound of brown sugar; one nutmeg. Boil slowly three hours.\n{gap}"
    "BEET RELISH\n{gap}Mrs. R. McNeil\n{gap}One quart cooked beets, chopped fine; one quart"
    " cabbage, chopped fine; one cup each of grated horseradish and sugar; one pint vinegar."
    " Heat vinegar, pour over all and seal.\n"
)


@pytest.mark.parametrize("gap", ["", "\n"], ids=["close", "apart"])
def test_the_names_below_titles_are_whose_they_are(gap: str) -> None:
    found = brought(CLUB.format(gap=gap), "en_US")
    assert [one.title for one in found] == ["Chili sauce", "Spiced currants", "Beet relish"]
    assert [fact(one, "author") for one in found] == [
        "Mrs. R. Vane",
        "Belle Shaw",
        "Mrs. R. McNeil",
    ]
    assert [len(listed(one)) for one in found] == [5, 4, 4]
    assert steps(found[0]) == ["Boil three hours, seal hot."]
    assert '"one of cinnamon"' in asked(found[0])


def test_the_head_of_a_printed_page_is_nothing() -> None:
    corn = f"Corn Relish.\n\nTake 12 ears of corn and 2 quarts vinegar. {METHOD}\n"
    pear = f"Pear Relish.\n\nTake 12 pears, 1 quart onions and 2 quarts vinegar. {METHOD}\n"
    found = brought(f"138\nPILGRIM COOK BOOK\n\n{corn}\n{pear}")
    assert [one.title for one in found] == ["Corn Relish", "Pear Relish"]
    assert "138" not in found[0].text


@pytest.mark.parametrize(
    ("title", "lines", "is_mix"),
    [
        ("Soup in a jar", "1 cup barley\n1 cup lentils\n1/2 cup rice\n1 tsp salt", True),
        (
            "Friendship Soup",
            "1 cup split peas\n1 cup lentils\n1/2 cup pasta\n1 tsp dried thyme",
            True,
        ),
        ("Leek soup in a jar", "1 kg leeks\n1 l stock\n200 ml cream\n1 tsp salt", False),
    ],
)
def test_a_soup_of_dry_things_is_a_mix(title: str, lines: str, is_mix: bool) -> None:
    (found,) = brought(f"{title}\n\n{lines}\n\nLayer it all in a jar and close it well.\n")
    assert (fact(found, "kind") == "soup mix") is is_mix
    assert ("soup" in asked(found)) is True


@pytest.mark.parametrize(
    "text",
    [
        f"Skip to content\nSkip to primary sidebar\nSkip to footer\n\nPlum jam\n\n{JAM}",
        f"Plum jam [edit]\n\nIngredients [edit]\n{JAM}",
        f"Plum jam\n\nScale 1x 2x 3x\n\n{JAM}",
    ],
    ids=["skips", "edits", "sizes"],
)
def test_a_page_s_own_words_are_no_part_of_it(text: str) -> None:
    (found,) = brought(text)
    assert found.title == "Plum jam"
    assert listed(found) == ["1 kg plums", "800 g sugar"]
    assert not any(word in found.text for word in ("Skip", "[edit]", "Scale"))


def test_a_page_s_number_before_a_title_is_taken_off_and_asked_about() -> None:
    (found,) = brought(f"142 Plum Jam\n\n{JAM}")
    assert found.title == "Plum Jam"
    assert '"142"' in asked(found)
    for title in ("21 Day Pickles", "3-2-1 Shortbread", "Plum jam 1842"):
        (other,) = brought(f"{title}\n\n{JAM}")
        assert other.title == title


def test_the_name_of_a_site_alone_is_asked_about() -> None:
    listed_things = "<ul><li>1 kg plums</li><li>800 g sugar</li></ul>"
    body = "<body><h1>{0}</h1><h2>Ingredients</h2>{1}</body>"
    page = f"<html><head><title>{{0}}</title></head>{body}</html>"
    (found,) = brought(page.format("The Vane Kitchen", listed_things), name="a.html")
    assert "names the whole page" in asked(found)
    (other,) = brought(page.format("Plum jam", listed_things), name="a.html")
    assert "names the whole page" not in asked(other)


def test_a_day_behind_a_name_is_no_part_of_it() -> None:
    text = "Confiture\nPar Jeanne Morel, le 3 septembre 2019\n\n1 kg de prunes\n800 g de sucre\n\n"
    (found,) = brought(f"{text}Cuire les prunes avec le sucre pendant une heure.\n", "fr_FR")
    assert fact(found, "author") == "Jeanne Morel"


def test_a_sentence_over_two_breaks_is_one() -> None:
    method = "<p>Boil the plums with the sugar until it<br><br>sets. Then pour it<br>into jars.</p>"
    things = "<ul><li>1 kg plums</li><li>800 g sugar</li></ul>"
    page = (
        f"<html><body><h1>Jam</h1><h2>Ingredients</h2>{things}<h2>Method</h2>{method}</body></html>"
    )
    (found,) = brought(page, name="a.html")
    assert steps(found) == ["Boil the plums with the sugar until it sets. Then pour it into jars."]


def test_a_paper_s_own_decimals_are_the_book_s_in_its_method_too() -> None:
    things = "Ingrédients\n1.5 kg de prunes\n1 citron"
    text = f"Confiture\n\n{things}\n\nPréparation\nCuire 1.5 kg de prunes.\n"
    (found,) = brought(text, "fr_FR")
    assert listed(found)[0] == "1,5 kg de prunes"
    assert steps(found) == ["Cuire 1,5 kg de prunes."]
    assert "wrong sign" not in asked(found)


def test_what_is_made_is_not_asked_for_in_the_list() -> None:
    text = "Mince pies\n\nMakes 10 medium-sized pies\n\n200 g flour\n300 g mincemeat\n\n"
    (found,) = brought(f"{text}Roll it out and cut 10 medium-sized pies. Bake them.\n")
    assert "measures what the list does not have" not in asked(found)
    (other,) = brought(f"{text}Roll it out with 50 g butter and bake the pies.\n")
    assert "50 g butter" in asked(other)
