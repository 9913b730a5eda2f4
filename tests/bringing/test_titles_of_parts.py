"""A title of several parts is reduced to what names the recipe, or the parts are asked.

Titles as pages and blogs set them (names of sites invented); expectations were written before the
code was asked.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed
from stillroom.bringing.title_parts import alone

BELOW = """
Ingredients
2 lb damsons
1 lb sugar
1 pint water

Method
1. Boil the damsons with the water until they are soft.
2. Add the sugar and boil it until it sets.
"""


@pytest.mark.parametrize(
    ("title", "named"),
    [
        ("Home » Preserves » Damson jam", "Damson jam"),
        ("Recipes > Preserves > Damson jam", "Damson jam"),
        ("Damson jam | The Hedge Pantry", "Damson jam"),
        ("Damson jam – a tutorial", "Damson jam"),
        ("7th December: Damson jam", "Damson jam"),
        ("Türchen 12: Gebrannte Mandeln", "Gebrannte Mandeln"),
        ("Giardiniera: la ricetta", "Giardiniera"),
        ("Crema di limoncello: ricetta originale", "Crema di limoncello"),
        ("Vin de noix aux épices : recette traditionnelle et savoureuse", "Vin de noix aux épices"),
        ("Dżem ze śliwek - przepis", "Dżem ze śliwek"),
        ("Meatless Monday: Damson jam", "Damson jam"),
        ("Damson jam – The Hedge Kitchen Blog", "Damson jam"),
    ],
)
def test_a_part_that_names_no_recipe_is_taken_away_unasked(title: str, named: str) -> None:
    assert alone(title, "boil the damsons. mandeln. noix. śliwki.") == (named, ())


@pytest.mark.parametrize(
    "title",
    [
        "Sunday marmalade: the quick way",
        "Kombucha - second ferment",
        "Gelée de coings / Quince jelly",
        "Bethmännchen: Frankfurter Marzipangebäck",
        "Damson cheese - Gran's",
        "Plum-and-rum jam",
        "Lebkuchen: the ones of Nuremberg",
        "Limoncello: recipe from Aunt Rosa",
    ],
)
def test_a_title_whose_parts_say_more_of_it_stays_whole(title: str) -> None:
    said = "boil the coings with the quinces; bethmännchen; damsons; marzipan"
    assert alone(title, said) == (title, ())


@pytest.mark.parametrize(
    ("title", "named", "left"),
    [
        ("Grandma's Pantry: Damson jam", "Damson jam", "Grandma's Pantry"),
        ("Zum Verschenken: Pflaumenmarmelade", "Pflaumenmarmelade", "Zum Verschenken"),
    ],
)
def test_what_may_be_a_column_is_asked_with_its_parts(title: str, named: str, left: str) -> None:
    (one,) = brought(f"{title}\n{BELOW}")
    assert fact(one, "title") == named
    assert f'and not "{left}"' in asked(one)


def test_a_title_of_which_no_part_is_plainly_its_name_stands_whole_and_is_asked() -> None:
    (one,) = brought(f"Friday fun | The Pantry\n{BELOW}")
    assert fact(one, "title") == "Friday fun | The Pantry"
    assert "is a title of several parts, and stands whole" in asked(one)


def test_a_site_that_bears_the_name_of_its_address_is_no_part_of_a_title() -> None:
    page = (
        '<html><head><title>Damson jam - Hedge and Larder</title><link rel="canonical" '
        'href="https://hedgeandlarder.example/jam"></head><body><p>Ingredients</p><ul>'
        "<li>2 lb damsons</li><li>1 lb sugar</li></ul><p>Method</p>"
        "<ol><li>Boil the damsons.</li><li>Add the sugar.</li></ol></body></html>"
    )
    (one,) = brought(page, name="a.html")
    assert fact(one, "title") == "Damson jam"
    assert "several parts" not in asked(one)


@pytest.mark.parametrize(
    ("above", "language"),
    [
        ("Startseite\nRezepte\nÜber uns\nNewsletter\nSuche\n", "de_DE"),
        ("Forside\nOm mig\nOpskrifter A-Å", "da_DK"),
        ("Hopp til innhold\nOppskrifter\nLogg inn", "nb_NO"),
        ("Skip to content\nHome\nAbout\nContact\n", "en_GB"),
        ("Aller au contenu\nAccueil\nRecettes\nÀ propos\n", "fr_FR"),
        ("Przejdź do treści\nPrzepisy\nO mnie\n", "pl_PL"),
    ],
)
def test_the_words_of_a_menu_name_no_recipe_and_stand_nowhere(above: str, language: str) -> None:
    (one,) = brought(f"{above}\nDamson jam\n{BELOW}", language)
    assert fact(one, "title") == "Damson jam"
    assert not [row for row in above.split("\n") if row and row in one.text]


def test_a_lone_word_that_a_menu_may_hold_stays() -> None:
    (one,) = brought(f"Damson jam\n\nArchive\n{BELOW}")
    assert "Archive" in one.text


@pytest.mark.parametrize(
    "above",
    [
        "Around my stove\nA cook's notebook\nSunday 18 November 2012\n",
        "The Hedge Pantry\n",
        "Notes of a hedge\n\n",
    ],
)
def test_a_line_that_names_nothing_of_the_recipe_gives_way_to_one_that_does(above: str) -> None:
    (one,) = brought(f"{above}\nDamson jam\n\nWe make it each year.\n{BELOW}")
    assert fact(one, "title") == "Damson jam"


@pytest.mark.parametrize("title", ["Supper dish", "Aunt's secret", "Dolly's own"])
def test_a_title_that_names_no_food_stays_where_no_other_line_does(title: str) -> None:
    (one,) = brought(f"{title}\n\nButter for the tin\n{BELOW}")
    assert fact(one, "title") == title


def test_the_line_that_gave_way_is_named() -> None:
    (one,) = brought(f"Around my stove\nSunday 18 November 2012\nDamson jam\n{BELOW}")
    assert '"Damson jam" is taken for the title; "Around my stove" is left out.' in asked(one)


@pytest.mark.parametrize(
    "above",
    [
        "Home   Recipes   About   Contact\n\nSearch\n",
        "HOME BLOG BOOKS RECIPES EVENTS CONTACT\n",
        "Home | Recipe Index | About | Contact\n",
        "Accueil Recettes À propos Contact\n",
    ],
)
def test_a_menu_on_one_line_is_no_title_and_stands_nowhere(above: str) -> None:
    (one,) = brought(f"{above}\nDamson jam\n{BELOW}")
    assert fact(one, "title") == "Damson jam"
    assert not [word for word in ("About", "EVENTS", "propos") if word in one.text]


@pytest.mark.parametrize(
    ("line", "title"),
    [
        ("-Play Dough-", "Play Dough"),
        ("*** Fudge ***", "Fudge"),
        ("== Damson jam ==", "Damson jam"),
        ("~ Damson jam ~", "Damson jam"),
    ],
)
def test_a_title_between_signs_is_one_without_them(line: str, title: str) -> None:
    (one,) = brought(
        f"Recipes From The Heart\n\n{line}\n1 cup damsons\n1 cup flour\n\nMix it all.\n"
    )
    assert fact(one, "title") == title
    assert line not in one.text


def test_a_blogs_name_over_the_day_gives_way_to_the_line_below_it() -> None:
    told = (
        "Morning Broken\n\nMonday, 15 September 2008\n\nFete Fare\n\nIt is a staple of the fete.\n"
    )
    (one,) = brought(f"{told}{BELOW}")
    assert fact(one, "title") == "Fete Fare"
    assert '"Morning Broken" is left out' in asked(one)


def test_a_title_that_names_nothing_is_asked_where_another_line_may_be_it() -> None:
    (one,) = brought(f"Morning Broken\n\nFete Fare\n\nIt is a staple of the fete.\n{BELOW}")
    assert "names nothing that goes in" in asked(one)
    (alone,) = brought(f"Fete Fare\n\nIt is a staple of the fete.\n{BELOW}")
    assert "names nothing that goes in" not in asked(alone)


def test_a_sentence_in_bold_is_no_title() -> None:
    told = "Kent & Ann\n\nHomemade Vanilla Extract\n\nI love this one.\n\n"
    steps = "1) Cut the vanilla beans.\n2) Cover them with the vodka and store it in the dark.\n"
    (one,) = brought(f"{told}** The recipe is 3 vanilla beans per cup of vodka. **\n\n{steps}")
    assert fact(one, "title") == "Homemade Vanilla Extract"


@pytest.mark.parametrize(
    ("title", "listed_first"),
    [("2 Ingredient Lip Balm", "1 oz beeswax"), ("3-2-1 Shortbread", "3 oz butter")],
)
def test_a_title_that_begins_with_a_number_is_no_thing_of_its_list(
    title: str, listed_first: str
) -> None:
    (one,) = brought(f"{title}\n\n{listed_first}\n2 oz sugar\n\nMelt it all and pour it out.\n")
    assert fact(one, "title") == title
    assert listed(one)[0] == listed_first


def test_a_numbered_name_below_what_is_over_several_is_the_title() -> None:
    sweets = "\nIngredients\n- 1 cup besan\n- 1 cup sugar\n\nMethod\n- Roast the besan.\n"
    (one,) = brought(f"Diwali Sweets - Recipes\n\n1. BESAN LADOO\n\nA popular sweet.\n{sweets}")
    assert fact(one, "title") == "Besan ladoo"
    assert '"Diwali Sweets - Recipes" is left out' in asked(one)


@pytest.mark.parametrize(
    ("title", "named"),
    [("Kookboek/Appelchutney", "Appelchutney"), ("Pierniczki [PRZEPIS]", "Pierniczki")],
)
def test_a_common_books_name_and_the_word_recipe_are_no_part_of_it(title: str, named: str) -> None:
    (one,) = brought(f"{title}\n{BELOW}")
    assert fact(one, "title") == named


def test_a_name_with_a_kind_and_a_food_is_taken_before_a_blogs_own() -> None:
    told = "Media hora de fogones\n\nNuevo libro\n\nLicor de café casero\n\nEs muy fácil.\n"
    listed_too = "\nIngredientes\n1 l de orujo\n100 g de azúcar\n\nPreparación\n1. Mezclar todo.\n"
    (one,) = brought(f"{told}{listed_too}", "es_ES")
    assert fact(one, "title") == "Licor de café casero"
    assert '"Media hora de fogones" is left out' in asked(one)


@pytest.mark.parametrize("line", ["Allora ecco la ricetta", "Ok, here is the recipe"])
def test_what_says_that_a_recipe_follows_is_no_title(line: str) -> None:
    (one,) = brought(f"{line}\n{BELOW}")
    assert fact(one, "title") == ""
    assert "No title was found" in asked(one)


@pytest.mark.parametrize(
    ("title", "makes", "said"),
    [
        ("ANZAC biscuits", "Makes about 30.", "about 30 biscuits"),
        ("Shortbread", "Makes about 30.", "about 30"),
    ],
)
def test_a_number_of_nothing_is_of_what_the_title_counts(title: str, makes: str, said: str) -> None:
    (one,) = brought(f"{title}\n\n{makes}\n{BELOW}")
    assert fact(one, "makes") == said


def test_the_first_of_two_sizes_is_taken_and_the_other_asked() -> None:
    first = "for 24 pieces\n- 500 g flour\n- 250 g butter\n- 1 egg\n"
    second = "for 48 pieces\n- 1 kg flour\n- 500 g butter\n- 2 eggs\n"
    (one,) = brought(f"Rusks\n\nIngredients\n\n{first}\n{second}\nMethod\n\n1. Mix it all.\n")
    assert listed(one) == ["500 g flour", "250 g butter", "1 egg"]
    assert fact(one, "makes") == "24 pieces"
    assert 'not of "48 pieces"' in asked(one)


def test_two_parts_of_other_foods_are_no_sizes() -> None:
    first = "for 24 biscuits\n- 500 g flour\n- 250 g butter\n"
    second = "for 24 hearts\n- 1 kg icing sugar\n- 2 lemons\n"
    (one,) = brought(f"Rusks\n\nIngredients\n\n{first}\n{second}\nMethod\n\n1. Mix it all.\n")
    assert "1 kg icing sugar" in listed(one)
