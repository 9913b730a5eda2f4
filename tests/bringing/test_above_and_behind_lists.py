"""Foods taken above a list, amounts behind a comma, heads with an article, tables of facts.

Lines as papers of earlier measures have them (z28/34, y28/01, y28/15, j28/70 of 2026-11-29), and
the same in their languages.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

TAKEN = {
    # flädersaft, z28/34
    "sv": ("sv", "Plocka 30 klasar äkta fläder (obs! druvfläder är giftig)", "socker", "vatten"),
    "en": ("en_GB", "Take 4 lb of damsons and stew them till soft.", "sugar", "water"),
    "de": ("de", "Pflücke 30 Holunderblüten bei Sonnenschein.", "Zucker", "Wasser"),
    "fr": ("fr", "Cueillir 30 ombelles de sureau par temps sec.", "sucre", "eau"),
    "it": ("it", "Raccogliere 30 fiori di sambuco.", "zucchero", "acqua"),
    "nl": ("nl", "Pluk 30 bloemschermen van de vlier.", "suiker", "water"),
    "work": ("en_GB", "Stew a pound of damsons in a little water.", "sugar", "water"),
}
TAKES = "takes something that it does not have"


@pytest.mark.parametrize("case", TAKEN)
def test_a_food_that_is_taken_above_the_list_is_asked_about(case: str) -> None:
    language, said, first, second = TAKEN[case]
    text = f"Cordial\n\n{said}\n\n1 kg {first}\n1 l {second}\n\n1. Boil all.\n2. Bottle it.\n"
    (one,) = brought(text, language)
    assert TAKES in asked(one)
    assert said[:12] in asked(one)


@pytest.mark.parametrize(
    "said",
    [
        "We picked 30 heads on Sunday and the kitchen smelt of summer.",
        "Pick ripe damsons on a dry day.",
        "Take 30 minutes for it, and a good friend.",
        "Use an electric mixer if you have one.",
        "Get 6 clean jars ready.",
        "Pick 2 kg damsons on a dry day.",  # which the list has
    ],
)
def test_what_takes_nothing_more_is_not_asked_about(said: str) -> None:
    (one,) = brought(f"Damson jam\n\n{said}\n\n2 kg damsons\n1 kg sugar\n\nBoil all.\nPot it.\n")
    assert TAKES not in asked(one)


@pytest.mark.parametrize(
    "line",
    [
        "1 lemon for every 3 lb of fruit",
        "half a vanilla pod for every 3 lb of chestnuts",
        "1 limone per ogni 3 kg di castagne",
    ],
)
def test_so_much_to_another_thing_is_one_line_and_asked_about(line: str) -> None:
    (one,) = brought(f"Jam\n\nIngredients\n\n3 lb chestnuts\n{line}\n\n1. Boil all.\n")
    assert listed(one) == ["3 lb chestnuts", line]
    assert "things stood on one line" not in asked(one)
    assert any(line in q.what or q.what.startswith('"') for q in one.questions)


def test_an_old_list_with_its_amounts_last_is_a_list() -> None:
    # the nocino of an Italian cookery book of 1891, as j28/70 has it
    text = (
        "Nocino\n\nNoci, n. 30.\nSpirito, litri uno e mezzo.\nZucchero in polvere, grammi 750.\n"
        "Chiodi di garofano interi, n. 10.\n\n"
        "Tagliate le noci in quattro spicchi e mettetele in infusione con tutto il resto.\n"
    )
    (one,) = brought(text, "it")
    assert listed(one) == [
        "30 Noci",
        "1½ litri Spirito",
        "750 grammi Zucchero in polvere",
        "10 Chiodi di garofano interi",
    ]
    assert len(steps(one)) == 1


def test_two_such_lines_and_lines_of_a_story_stay_as_they_are() -> None:
    text = "Jam\n\n1 kg plums\n1 kg sugar\n\nBoil the plums, 30.\nNo. 5, house 7.\nStir it well.\n"
    (one,) = brought(text)
    assert listed(one) == ["1 kg plums", "1 kg sugar"]
    assert "30 Boil" not in one.text


HEADS = {
    "de": ("de", "Die Zutaten (für 60 Stück)", "Die Zubereitung:", "60 Stück"),
    "fr": ("fr", "Les ingrédients (pour 40 sablés) :", "La recette :", "40 sablés"),
    "it": ("it", "Gli ingredienti (per 40 biscotti):", "La preparazione:", "40 biscotti"),
    "nl": ("nl", "De ingrediënten (voor 40 koekjes):", "De bereiding:", "40 koekjes"),
    "pt": ("pt", "Os ingredientes (para 40 biscoitos):", "O preparo:", "40 biscoitos"),
    "en": ("en_GB", "The ingredients (for 40 biscuits):", "The method:", "40 biscuits"),
}


@pytest.mark.parametrize("case", HEADS)
def test_heads_with_an_article_are_heads(case: str) -> None:
    language, head, method, makes = HEADS[case]
    text = f"Biscuits\n\n{head}\n300 g flour\n100 g sugar\n\n{method}\nMix it all.\nBake it.\n"
    (one,) = brought(text, language)
    assert listed(one) == ["300 g flour", "100 g sugar"]
    assert steps(one) == ["Mix it all.", "Bake it."]
    assert "###" not in one.text
    assert makes.split()[0] in fact(one, "makes")


@pytest.mark.parametrize("number", ["", "1. "])
def test_for_each_jar_heads_the_steps_below_it(number: str) -> None:
    # a page on vanilla, y28/15
    text = (
        "Vanilla\n\n1 bottle vodka\n3 vanilla beans\n\n"
        "For each jar of extract you would like to make:\n\n"
        f"{number}Slice the vanilla beans and put them into the jar.\n"
    )
    (one,) = brought(text)
    assert steps(one) == ["Slice the vanilla beans and put them into the jar."]
    assert "### For each jar of extract you would like to make" in one.text


def test_portions_that_are_chilled_are_a_step() -> None:
    text = (
        "Truffles\n\n200 g chocolate\n100 ml cream\n\nMelt both.\nPortions: chill for 2 hours{}\n"
    )
    for end in ("", ", then roll into balls."):
        (one,) = brought(f"{text.format(end)}Dust with cocoa.\n")
        assert len(steps(one)) == 3
        assert steps(one)[1].startswith("Portions: chill for 2 hours")
        assert fact(one, "makes") == ""


def test_a_table_of_facts_behind_the_method_names_nobody_in_the_notes() -> None:
    # y28/01: a question said that names are left out, and the name stood in the notes
    text = (
        "# Cocoa in a jar\n\n- 200 g cocoa\n- 100 g sugar\n\n1. Layer the things.\n2. Close it.\n\n"
        "| | |\n|---|---|\n| Authors | Rosa Hart |\n| Made for | Aunt Betty |\n| Serve | 6 jars |\n"
        "| Special | |\n| Difficulty | N/A |\n"
    )
    (one,) = brought(text, name="a.md")
    assert "Betty" not in one.text
    assert "Rosa" not in one.text.partition("## Notes")[2]
    assert listed(one) == ["200 g cocoa", "100 g sugar"]
    assert "N/A" not in one.text
    assert "Special" not in one.text


def test_a_table_of_words_behind_the_method_stays_a_note() -> None:
    text = (
        "# Cocoa in a jar\n\n- 200 g cocoa\n- 100 g sugar\n\n1. Layer the things.\n2. Close it.\n\n"
        "| Jar | Cups |\n|---|---|\n| small | two of them |\n| large | four of them |\n"
    )
    assert "small | two of them" in brought(text, name="a.md")[0].text
