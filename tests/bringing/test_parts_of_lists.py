"""What heads a part of a list: "Optional ingredients", "Spice blend", what steps stand under.

Heads and foods as they stand on pages read on 2026-11-29, their other words cut down.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

# head, language, a thing without an amount, two steps
FURTHER = {
    "en": ("Optional ingredients", "en_GB", "star anise", "Mix all of it.\n\nFill it into jars.\n"),
    "en, a colon": ("Optional:", "en_GB", "star anise", "Mix all of it.\n\nFill it into jars.\n"),
    "de": ("Zutaten nach Belieben", "de", "Sternanis", "Alles mischen.\n\nIn Gläser füllen.\n"),
    # a page on pacharán, y28/10 of 2026-11-29: "Ingredientes opcionales:"
    "es": ("Ingredientes opcionales:", "es", "Anís estrellado", "Mezclar.\n\nLlenar un tarro.\n"),
    "fr": ("Ingrédients facultatifs", "fr", "badiane", "Mélanger.\n\nMettre en bocal.\n"),
    "it": ("Ingredienti facoltativi", "it", "anice stellato", "Mescolare.\n\nMettere in vaso.\n"),
    "sv": ("Valfria ingredienser", "sv", "stjärnanis", "Blanda allt.\n\nFyll på burk.\n"),
}


@pytest.mark.parametrize("case", FURTHER)
@pytest.mark.parametrize("form", ["typed", "headings"])
def test_a_last_head_of_further_things_takes_no_step(case: str, form: str) -> None:
    head, language, thing, method = FURTHER[case]
    things = "2 cinnamon sticks\n10 cloves\n"
    if form == "typed":
        text, name = f"Spice jar\n\n{things}\n{head}\n{thing}\n\n{method}", "a.txt"
    else:
        top = "# Spice jar\n\n## Ingredients\n\n- 2 cinnamon sticks\n- 10 cloves\n"
        text, name = f"{top}\n### {head}\n\n{thing}\n\n{method}", "a.md"
    (one,) = brought(text, language, name)
    bare = head.rstrip(":")
    assert listed(one) == ["2 cinnamon sticks", "10 cloves", f"{bare}:", thing]
    assert steps(one) == [step for step in method.split("\n") if step]
    assert bare not in one.text.partition("## Method")[2]


def test_a_sentence_of_what_may_go_in_is_of_the_list_and_work_is_not() -> None:
    top = "Sloe gin\n\n500 g sloes\n250 g sugar\n70 cl gin\n\nOptional\n"
    (named,) = brought(f"{top}A vanilla pod, or some strips of dried orange peel.\n\nShake it.\n")
    assert listed(named)[3:] == [
        "Optional:",
        "A vanilla pod, or some strips of dried orange peel.",
    ]
    assert steps(named) == ["Shake it."]
    (done,) = brought(f"{top}Add a few almonds if you like.\nPut all in a jar.\n")
    assert listed(done) == ["500 g sloes", "250 g sugar", "70 cl gin"]
    assert steps(done)[0] == "Optional: Add a few almonds if you like."
    assert "###" not in done.text


def test_what_may_vary_above_the_head_of_the_method_is_a_note() -> None:
    # a page on pacharán, y28/10 of 2026-11-29
    text = (
        "# Pacharán\n\n- 1 litro de anís\n- 250 g de endrinas\n\n**Ingredientes opcionales:**\n\n"
        "Además de la canela podemos hacer variaciones con diferentes hierbas aromáticas.\n\n"
        "### Preparación\n\nLavar las endrinas y añadir el anís.\n"
    )
    (one,) = brought(text, "es", "a.md")
    assert steps(one) == ["Lavar las endrinas y añadir el anís."]
    assert "Ingredientes opcionales: Además" in one.text.partition("## Notes")[2]


@pytest.mark.parametrize(
    "line", ["Mix all ingredients", "Combine the dry ingredients", "Ingredients  Ounces"]
)
def test_work_and_heads_of_columns_head_no_part(line: str) -> None:
    (one,) = brought(f"Rub\n\n2 tbsp salt\n1 tbsp sugar\n\n{line}\nKeep in a jar.\n")
    assert not any(said.startswith(line) for said in listed(one))


def test_dry_and_wet_ingredients_are_two_parts() -> None:
    text = (
        "Biscuit mix\n\nDry ingredients\n200 g flour\n100 g sugar\n\n"
        "Wet ingredients\n1 egg\nmilk\n\n"
        "Stir the dry into the wet.\nBake for 20 minutes.\n"
    )
    (one,) = brought(text)
    assert listed(one)[0] == "Dry ingredients:"
    assert listed(one)[3:] == ["Wet ingredients:", "1 egg", "milk"]
    assert len(steps(one)) == 2


def test_heads_among_bullets_and_above_numbers_are_no_foods() -> None:
    # a mead of youtobrew.com, y28/13 of 2026-11-29: its heads and their lines
    text = (
        "Cyser\n\nIngredients\n- Apple cider - 1 gallon\n- Wildflower honey - 3 lbs\n"
        "- Yeast food - 9.4g, 3.7g per dose.\n- Potassium carbonate - 2g\nSpice Blend\n"
        "- Dried rosehips - 20g\n- Dried ginger - 5g\nMust Preparation\n"
        "1. Add the honey to the bucket.\n2. Mix until all of it is dissolved.\n"
        "Yeast Preparation\n3. Sprinkle the yeast on top.\n"
    )
    (one,) = brought(text)
    assert listed(one)[2].startswith("Yeast food - 9.4g")
    assert listed(one)[4:] == ["Spice Blend:", "Dried rosehips - 20g", "Dried ginger - 5g"]
    assert len(steps(one)) == 3
    assert "### Must Preparation" in one.text
    assert "Must Preparation" not in asked(one)


@pytest.mark.parametrize("first", ["Chocolate sauce", "Almond paste", "Hot chocolate mix"])
def test_a_food_without_a_bullet_above_bullets_is_a_head_and_asked_about(first: str) -> None:
    text = (
        f"# Jar\n\n## Ingredients\n\n{first}\n\n- 200 g cocoa\n- 100 g sugar\n\nIcing\n\n"
        "- 100 g icing sugar\n\n## Method\n\n1. Mix all.\n"
    )
    (one,) = brought(text, name="a.md")
    assert listed(one)[0] == f"{first}:"
    assert f'"{first}" was taken for a heading within the list.' in asked(one)


def test_a_food_without_an_amount_among_lines_stays_one() -> None:
    things = "200 g sugar\nsalt\n50 g cream\nVanilla extract\n1 egg\n"
    text = f"Fudge\n\nIngredients\n\n{things}\nMix all.\n"
    (one,) = brought(text)
    assert listed(one) == ["200 g sugar", "salt", "50 g cream", "Vanilla extract", "1 egg"]
    assert fact(one, "title") == "Fudge"
