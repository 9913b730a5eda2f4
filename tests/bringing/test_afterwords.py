"""What stands behind the last step and is none, and how long a brought recipe says that it keeps.

The classes are those of 40 papers fixed with what they should become before the code was looked at
(November 2026): a family's Word and OpenDocument files in two columns (HeyGarrison/RecipesFromLou),
pages of a network of fruit pickers (pmackay/abundance-network), weblogs on sloe gin and vanilla,
a family's JSON-LD (mliberty1/family_cookbook), sheets in eight languages. The words are ours.
"""

from __future__ import annotations

import json

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.columns import add_columns
from stillroom.bringing.found import Row
from stillroom.bringing.keeping import sentences_of_keeping
from stillroom.bringing.tools import is_tool

GIN = """Damson gin

500 g damsons
250 g sugar
70 cl gin

Prick the damsons and put them into a jar with the sugar.

Pour the gin over them, close the jar and shake it every day for a week.

Leave it in a dark cupboard for three months, then strain and bottle it.
"""


@pytest.mark.parametrize(
    "said",
    [
        "I halved the recipe and it still filled a bottle.",
        "Mine was gone in a day.",
        "I hope you try this recipe. I know you will love it. Enjoy!!!",
        "If you are not a gin fan, this recipe works equally well with vodka.",
        "Hic ~ I have just had a glass of it, some that I made in 1995.",
        "Before the above I got all the washing done and dried. Very windy today, a few showers.",
        "Enjoy your gin with a slice of fruit cake and good company!",
        "It makes a delicious present for winter.",
        "My aunt Nell won the show with this three times running!",
        "Good luck with it, and let me know how you get on.",
        "I made 12 bottles altogether, odd ones, which I save to keep costs down.",
        "Until next time, keep your kettle singing for me!",
        "Ik heb er maar een half glas van over, helaas.",
    ],
)
def test_what_a_writer_says_when_she_is_done_is_a_note(said: str) -> None:
    (found,) = brought(f"{GIN}\n{said}\n")
    assert len(steps(found)) == 3
    assert said in " ".join(found.text.partition("## Notes")[2].split())


@pytest.mark.parametrize(
    "said",
    [
        "I put it back into the cupboard for another month before I drink it.",
        "We add a handful of almonds to the bottle.",
        "Store it in the fridge once it is opened.",
        "Taste it, and add more sugar if you like it sweet.",
        "You will want to strain it twice through muslin.",
        "Enjoy within a year.",
    ],
)
def test_what_is_done_or_kept_stays_a_step_whoever_tells_it(said: str) -> None:
    (found,) = brought(f"{GIN}\n{said}\n")
    assert steps(found)[-1] == said


@pytest.mark.parametrize(
    "said",
    [
        "About the author: Pia Reed writes on food and travel from Hastings.",
        "Share this: Facebook Twitter Pinterest",
        "Partager cet article",
        "Deel dit recept",
        "Condividi questa ricetta",
        "Compartir esta receta",
        "Beitrag teilen",
        "Compartir en Facebook",
        "Auf Facebook teilen",
        "Did you make this? Tag me on the networks!",
        "Nutrition (per 25 ml): 68 kcal, 6 g sugars, 0 g fat",
        "Voedingswaarde per glas: 62 kcal, 3 g vet, 8 g koolhydraten",
        "Calories: 119; Dietary fiber, 1 g; Cholesterol, 15.4 g; Total fat 3.63 g.",
    ],
)
def test_a_pages_own_furniture_is_no_step(said: str) -> None:
    (found,) = brought(f"{GIN}\n{said}\n")
    assert len(steps(found)) == 3
    assert said not in found.text.partition("## Method")[2]


def test_a_name_behind_the_method_and_one_below_the_title_are_told() -> None:
    (found,) = brought(f"{GIN}\nEdith Marlow\n")
    assert len(steps(found)) == 3
    assert "Edith Marlow" not in found.text
    assert "Names that stood behind the method" in asked(found)
    (found,) = brought(GIN.replace("Damson gin\n", "Damson gin\nEdith Marlow\n"))
    assert fact(found, "author") == "Edith Marlow"
    assert "stands below the title" in asked(found)
    (found,) = brought(GIN.replace("Damson gin\n", "Damson gin\nFamily Favourite\n"))
    assert not fact(found, "author")


def test_one_word_below_what_somebody_tells_of_herself_is_her_name() -> None:
    (found,) = brought(f"{GIN}\nI made 12 bottles altogether.\n\nJanet\n")
    assert len(steps(found)) == 3
    assert "Janet" not in found.text
    (found,) = brought(f"{GIN}\nStrain\n")
    assert steps(found)[-1] == "Strain"


@pytest.mark.parametrize("head", ["Tipps und Hinweise", "Conservation et présentation", "Notes"])
def test_two_heads_joined_head_what_the_first_does(head: str) -> None:
    (found,) = brought(f"{GIN}\n{head}\n\nIt darkens in the light.\n")
    assert len(steps(found)) == 3
    assert "It darkens in the light." in found.text


@pytest.mark.parametrize("head", ["Commentaires", "Kommentare", "Voedingswaarde", "Nährwerte"])
def test_what_readers_say_and_what_it_feeds_is_left_out(head: str) -> None:
    (found,) = brought(f"# Gin\n{GIN}\n## {head}\n\nLucie: un régal !\n", name="a.md")
    assert len(steps(found)) == 3
    assert "Lucie" not in found.text


def test_what_a_sentence_says_of_a_thing_stays_in_the_list() -> None:
    text = "Relish\n\n6 lb mixed vegetables. Marrow, beans and onions are best.\n"
    text += "1 lb salt\n2 pints vinegar\n"
    (found,) = brought(f"{text}\nSalt the vegetables and pour the vinegar over them.\n")
    assert listed(found)[0] == "6 lb mixed vegetables (Marrow, beans and onions are best)"
    assert len(steps(found)) == 1


def test_a_title_with_nothing_below_it_is_told_and_no_step() -> None:
    (found,) = brought(f"{GIN}\nPLUM JELLY\n")
    assert len(steps(found)) == 3
    assert '"PLUM JELLY" stands at the end with nothing below it' in asked(found)


@pytest.mark.parametrize(
    ("said", "span"),
    [
        ("Leave to cool. Use within 2 years of making.", "2 years"),
        ("Seal while hot. It can be kept for 12-18 months overall.", "12-18 months"),
        ("Seal the jars. Will keep for 6 months.", "6 months"),
    ],
)
def test_a_plain_keeping_is_the_drafts_own_fact_with_its_words(said: str, span: str) -> None:
    text = "Pear chutney\n\n1 kg pears\n500 ml vinegar\n300 g sugar\n\nMethod\n\n1. Boil all.\n2. "
    (found,) = brought(f"{text}{said} Once open, use within 6 weeks.\n")
    kept = found.text.partition("keeps:\n")[2].split("\n")[:3]
    assert kept[:2] == [f"  unopened: {span}", "  opened: 6 weeks"]
    assert said.split(". ")[1] in kept[2]


@pytest.mark.parametrize(
    ("language", "said", "span"),
    [
        ("de_DE", "Hält sich 6 Monate.", "6 months"),
        ("de_DE", "Kühl gelagert ist es ca. 6 Monate haltbar.", "6 months"),
        ("fr_FR", "Se conserve 3 semaines dans une boîte.", "3 weeks"),
        ("it_IT", "Si conserva 6 mesi in luogo fresco.", "6 months"),
        ("es_ES", "La duración de la conserva puede ser de un año.", "1 year"),
        ("nl_NL", "In een trommel 4 weken houdbaar.", "4 weeks"),
        ("sv_SE", "Hållbarheten är 3 månader.", "3 months"),
    ],
)
def test_keeping_in_another_language_is_a_fact_or_a_question(
    language: str, said: str, span: str
) -> None:
    text = "Quitten\n\n1 kg Quitten\n1 kg Zucker\n\n1. Alles kochen.\n2. In Gläser füllen.\n3. "
    (found,) = brought(f"{text}{said}\n", language)
    assert f"unopened: {span}" in found.text or f"keeps: {span} unopened" in found.text
    assert "how long it keeps" in asked(found).lower()


@pytest.mark.parametrize(
    "said",
    [
        "Keep in a dark place for three months.",
        "Keep for a few months before opening.",
        "Leave it in the fridge for two days.",
        "3 Wochen ziehen lassen.",
        "Refrigerate for 2 hours.",
    ],
)
def test_a_wait_is_no_keeping(said: str) -> None:
    assert sentences_of_keeping([said]) == []


def test_columns_whose_left_has_no_amount_are_two_things_too() -> None:
    rows: list[Row] = []
    for line in (
        "1 chicken, cooked\t\t1 can soup",
        "Chicken broth, enough to moisten\t1 egg, chopped",
        "1 can peas\t\t1 tsp salt",
        "or 1 can green beans\t¾ cup rice",
    ):
        assert add_columns(rows, line, False)
    assert [row.text for row in rows] == [
        "1 chicken, cooked", "1 can soup", "Chicken broth, enough to moisten", "1 egg, chopped",
        "1 can peas or 1 can green beans", "1 tsp salt", "¾ cup rice",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "food", ["7 regular tea bags", "3 family-size teabags", "2 gelatine sheets"]
)
def test_food_that_comes_in_bags_and_sheets_is_no_tool(food: str) -> None:
    assert not is_tool(food)
    assert is_tool("2 jelly bags")


def test_a_line_of_a_list_that_ends_in_or_goes_on_in_the_next() -> None:
    text = "Sweets\n\n5 figs\n1 cup dates\nChocolate fondant or\nplain dark chocolate.\n"
    text += "\nChop and roll them.\n"
    (found,) = brought(text)
    assert listed(found)[-1] == "Chocolate fondant or plain dark chocolate."


def test_sentences_between_items_of_two_lists_are_steps() -> None:
    text = """# Marrow chutney
- 3 kg marrow
- 1 kg onions
Dice the marrow and mix it with a handful of salt. Leave it overnight. Press it out the next day.
- 1 kg sugar
- 1 l vinegar
Boil all of it for 30 minutes and pot it hot.
"""
    (found,) = brought(text)
    assert steps(found)[0].startswith("Dice the marrow")
    assert len(listed(found)) == 4
    assert "More amounts stand amid the method" in asked(found)


def test_a_letters_subject_goes_before_a_line_that_only_says_recipe() -> None:
    head = "From: Ann <ann@example.org>\nTo: me@example.org\nSubject: Sloe gin\n\n"
    body = "{}\n- 450 g sloes\n- 225 g sugar\n- 1 l gin\n\n"
    body += "Prick the sloes and steep them in the gin.\n"
    for said in ("The recipe", "You're going to need:", "Pour cette recette de base et facile"):
        (found,) = brought(head + body.format(said), name="a.eml")
        assert found.title == "Sloe gin"


def test_steps_below_facts_that_list_what_goes_in_are_kept() -> None:
    text = """---
title: Pepparkakor
ingredients:
  "":
    - [sirap, "1,5 dl"]
    - [vetemjöl, 750 g]
  glasyr:
    - {name: florsocker, amount: 2, unit: dl}
---

## Instruktioner

Smält sirapen.

Blanda i mjölet.

## Kommentarer

Testa en dag senare?
"""
    (found,) = brought(text, "sv_SE", "a.md")
    assert listed(found)[:2] == ["1,5 dl sirap", "750 g vetemjöl"]
    assert "2 dl florsocker" in found.text
    assert steps(found) == ["Smält sirapen.", "Blanda i mjölet."]
    assert "Testa en dag senare?" in found.text


def test_json_says_nothing_of_how_much_and_its_notes_are_no_steps() -> None:
    said = {
        "@type": "Recipe", "name": "Plum fudge", "recipeYield": "TODO",
        "recipeIngredient": ["200 g sugar", "100 g butter"],
        "recipeInstructions": [
            "Boil the sugar and the butter.", "🛈 From Mabel's kindergarten class.",
            "Calories: 119; Dietary fiber, 1 g; Total fat, 3 g.",
        ],
    }  # fmt: skip
    (found,) = brought(json.dumps(said), name="a.json")
    assert steps(found) == ["Boil the sugar and the butter."]
    assert not fact(found, "makes")
    assert '"TODO"' in asked(found)
    assert "Mabel" in found.text.partition("## Notes")[2]


def test_heads_in_polish_and_norwegian_are_heads() -> None:
    text = "Nalewka\n\nSkładniki:\n1 kg wiśni\n1 l wódki\n\nWykonanie:\nZalać wiśnie wódką.\n"
    (found,) = brought(text)
    assert listed(found) == ["1 kg wiśni", "1 l wódki"]
    assert steps(found) == ["Zalać wiśnie wódką."]
