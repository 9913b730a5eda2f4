"""Lines within and below a list that ended it, or were read as what they are not.

Lines as they stand in papers that were read on 2026-11-30 (a30, its numbers beside the cases),
their other words cut down.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps

PEPPER = (
    "ground pepper to taste (Please use fresh pepper. That gray stuff in jars is a shadow of it)"
)
MIX = "Mix all in a bowl, and store it in a jar with a lid.\n"


@pytest.mark.parametrize("bullet", ["- ", ""])
@pytest.mark.parametrize("head", ["Ingredients\n", ""])
@pytest.mark.parametrize("below", [f"\nMethod\n\n{MIX}", f"\n{MIX}"])
def test_what_is_said_in_brackets_of_a_thing_ends_no_list(
    bullet: str, head: str, below: str
) -> None:
    """34.txt: pepper was step 1, and the sugar below it went with it."""
    things = ["2 tbsp paprika", "1 tsp salt", PEPPER, "50 g brown sugar"]
    listing = "".join(f"{bullet}{line}\n" for line in things)
    (one,) = brought(f"Rub\n\n{head}{listing}{below}")
    assert listed(one) == things
    assert steps(one) == [MIX.strip()]


def test_work_with_a_long_bracket_is_a_step() -> None:
    text = (
        "Rub\n\n- 2 tbsp paprika\n- 1 tsp salt\n- Mix them (use a small whisk. A fork will do.)\n"
    )
    (one,) = brought(f"{text}- Keep it in a jar.\n")
    assert listed(one) == ["2 tbsp paprika", "1 tsp salt"]
    assert len(steps(one)) == 2


def test_a_table_of_measures_is_nothing_of_a_list() -> None:
    """03.txt."""
    text = (
        "Herb salt\n\nIngredients\n\n1 lb sea salt\n3/4 cup thyme\n\n3 tsp = 1 TBSP\n1 cup = 8 oz\n"
        "1 cup = 1/2 pint\n16 cups – 1 gallon\n\nMethod\n\n1. Mix them.\n"
    )
    (one,) = brought(text)
    assert listed(one) == ["1 lb sea salt", "3/4 cup thyme"]
    assert steps(one) == ["Mix them."]
    assert "does not say what it is" not in asked(one)


@pytest.mark.parametrize(
    ("first", "second", "language"),
    [
        ("Rind and juice of", "1 lemon", "en_GB"),  # 19.docx
        ("Saft von", "2 Zitronen", "de"),
        ("Le zeste de", "1 citron", "fr"),
        ("Il succo di", "3 limoni", "it"),
    ],
)
def test_a_line_that_ends_in_of_goes_on_in_the_next(first: str, second: str, language: str) -> None:
    things = ["500 g sugar", f"{first}\n\n{second}", "2 kg plums"]
    text = "# Jam\n\n## Ingredients\n\n" + "\n\n".join(things) + "\n\n## Method\n\n1. Boil all.\n"
    (one,) = brought(text, language, "a.md")
    assert listed(one)[1] == f"{first} {second}"


def test_steps_that_end_in_a_semicolon_are_a_step_each() -> None:
    """08.txt: six lines from a page on limoncello were one step."""
    lines = [
        "Lavare i limoni e rimuovere la scorza, senza intaccare la parte bianca che è amara;",
        "Mettete le scorze in 750 ml di alcol e lasciate a macerare per un mese in un contenitore;",
        "Fate bollire l'acqua unita allo zucchero, mescolando fino a quando non si sarà sciolto;",
        "Chiudete il tutto ermeticamente, e lasciate riposare in luogo fresco per altri 40 giorni.",
    ]
    things = "10 limoni\n1 litro di alcol\n1 kg di zucchero\n"
    (one,) = brought(f"Limoncello\n\nIngredienti\n{things}\n" + "\n".join(lines) + "\n", "it")
    assert steps(one) == lines


def test_a_wrapped_line_that_breaks_behind_a_semicolon_goes_on() -> None:
    text = (
        "Jam\n\nIngredients\n1 kg plums\n1 kg sugar\n\n"
        "Stone the plums and put them into a wide pan with the water and the lemon;\n"
        "bring them to the boil and let them simmer until they are soft and the water\n"
        "is nearly gone, then add the sugar.\n"
    )
    assert len(steps(brought(text)[0])) == 1


def test_steps_of_two_parts_keep_their_things_and_heads() -> None:
    """05.txt: the spirit of the second part was a step, and its head another."""
    text = (
        "Blackberry Liqueur\n\nStep One Ingredients:\n\n200 g blackberries\n200 g sugar\n"
        "300 ml brandy\n\nStep One Directions:\n\nPut berries and sugar in a jar, and crush them.\n"
        "\nAfter one hour add the brandy.\n\nStep Two Ingredients:\n\n100-proof vodka\n\n"
        "Step Two Directions:\n\nStrain and filter.\nBlend with vodka to taste.\n"
    )
    (one,) = brought(text)
    assert listed(one) == [
        "Step One Ingredients:",
        "200 g blackberries",
        "200 g sugar",
        "300 ml brandy",
        "Step Two Ingredients:",
        "100-proof vodka",
    ]
    assert '"100-proof vodka" stood amid the method' in asked(one)
    assert len(steps(one)) == 4
    assert "### Step Two Directions" in one.text


@pytest.mark.parametrize(
    ("lead", "language", "is_step"),
    [
        # 07.txt
        ("Ce délicieux condiment est parfait pour accompagner de la viande.", "fr", False),
        ("This chutney is a great favourite of ours with a good old cheese.", "en_GB", False),
        ("Préchauffez le four, et lavez bien tous les bocaux à l'eau chaude.", "fr", True),
        ("Heat the oven, and wash all of the jars in hot and soapy water.", "en_GB", True),
    ],
)
def test_what_only_tells_above_the_first_number_shifts_none(
    lead: str, language: str, is_step: bool
) -> None:
    text = "Chutney\n\n- 1 kg plums\n- 500 g sugar\n- 1 citron\n\n"
    told = "1. Laver le tout.\n2. Faire cuire une heure.\n3. Verser dans des pots.\n"
    if language == "en_GB":
        told = "1. Wash all of it.\n2. Boil it for one hour.\n3. Fill it into jars.\n"
    (one,) = brought(f"{text}{lead}\n\n{told}", language)
    assert (steps(one)[0] == lead) == is_step
    assert len(steps(one)) == 3 + is_step
    assert ("Above the first numbered step, kept as a note" in asked(one)) != is_step
    assert lead in one.text


# pasted blog pages, l30 of 2026-11-30
def test_what_somebody_used_within_one_amount_parts_no_line() -> None:
    """03: four foods without the 350 g."""
    nuts = "350g mixed unsalted nuts (I use pecans, cashews, hazelnuts and almonds)"
    apples = "1.5 kg apples (I used 750 g cookers, 500 g cox, 250 g windfalls)"
    (one,) = brought(f"Nuts\n\nIngredients\n\n{nuts}\n40g butter\n{apples}\n\n1. Mix all.\n")
    assert listed(one)[0] == nuts
    assert "750 g cookers" in listed(one)


def test_jars_of_a_size_at_the_end_of_a_list_are_no_foods() -> None:
    """02: three foods, and a refusal."""
    text = (
        "Rhubarb Jam\n\n4 lb Rhubarb\n\n4 lb sugar\n\n"
        "8 x 12oz jars washed and sterlized in an 80c oven. Boil lids in water to sterlise.\n\n"
        "Put all ingredients in a wide saucepan and simmer for 30 minutes.\n"
    )
    (one,) = brought(text)
    assert listed(one) == ["4 lb Rhubarb", "4 lb sugar"]
    assert steps(one)[0].startswith("8 x 12oz jars washed and sterlized in an 80c oven.")
    assert "cannot be published" not in asked(one)
    washed = "sterlized in an 80c oven. Boil lids in water to sterlise."
    (short,) = brought(text.replace(washed, "dried"))
    assert listed(short) == ["4 lb Rhubarb", "4 lb sugar"]
    assert "8 x 12oz jars washed" in short.text.partition("## Equipment")[2]


def test_basic_ingredients_for_it_and_how_to_make_it_are_heads() -> None:
    """14: the whole list was in the method."""
    text = (
        "Rhubarb and ginger jam\nThis jam is really easy to make and is perfect for toast.\n"
        "Basic ingredients for rhubarb and ginger jam\n- Rhubarb, 450g\n- Grated ginger\n"
        "- 1 tablespoon lemon juice (do not add if sugar has pectin added)\n"
        "How to make rhubarb and ginger jam\n- Clean the rhubarb.\n- Mix it with the ginger.\n"
    )
    (one,) = brought(text)
    assert len(listed(one)) == 3
    assert steps(one) == ["Clean the rhubarb.", "Mix it with the ginger."]


@pytest.mark.parametrize(
    "head", ["Hauptzutaten", "Ingrédients de base", "Basic ingredients for it"]
)
def test_basic_ingredients_head_the_list(head: str) -> None:
    (one,) = brought(f"Jam\n\n{head}\n1 kg plums\nlemon\n\nBoil all of it.\nPot it.\n")
    assert listed(one) == ["1 kg plums", "lemon"]


def test_a_step_that_its_paper_numbers_is_one_and_another_is_asked_about() -> None:
    """02.md, 09.txt of a30: "Store until done fermenting (~21 days)" had a number."""
    told = "1. Add honey and water. Mix.\n2. Back sweeten for taste or ABV.\n3. Seal the jar.\n"
    (one,) = brought(f"Mead\n\nIngredients\n\n2 lb honey\n1 l water\n\nMethod\n\n{told}")
    assert len(steps(one)) == 3
    assert "Is this part of the method?" not in asked(one)
    bare_told = "Add honey and water.\nBack sweeten for taste or ABV.\nSeal the jar.\n"
    (bare,) = brought(f"Mead\n\nIngredients\n2 lb honey\n1 l water\n\nMethod\n{bare_told}")
    assert "Is this part of the method?" in asked(bare)
