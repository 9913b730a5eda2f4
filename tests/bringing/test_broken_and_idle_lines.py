"""Lines that came broken or marked, and what does nothing behind, above or amid a recipe's own."""

from __future__ import annotations

import pytest
from tests.bringing.drafts import asked, brought, fact, listed, steps

LIST = "1 kg plums\n700 g sugar\n1 lemon\n"
TOLD = "Stone the plums.\nBoil the plums with the sugar for 20 minutes.\nPour it into hot jars.\n"
JAM = f"Plum jam\n\n{LIST}\n{TOLD}"


@pytest.mark.parametrize("sign", ["Ø ", "§ ", "o   ", "v\t", "➢ ", "☑ ", "▫"])
def test_letters_and_signs_that_stand_for_bullets_go(sign: str) -> None:
    rows = [f"{sign}{row}" for row in LIST.splitlines()]
    told = [f"{sign}{row}" for row in TOLD.splitlines()]
    (jam,) = brought("\n".join(["Plum jam", "", *rows, "", "Method", "", *told, ""]))
    assert listed(jam) == LIST.splitlines()
    assert steps(jam) == TOLD.splitlines()


def test_a_letter_before_a_word_in_small_letters_is_one() -> None:
    (jam,) = brought(f"{JAM}A spoon of it is enough for a slice.\n")
    assert "A spoon of it is enough" in jam.text


def test_brackets_that_run_over_lines_close_on_one() -> None:
    (jam,) = brought(
        "Plum jam\n\n1 kg plums (ripe ones, or half ripe\nand half green, as they come from\n"
        f"the tree)\n700 g sugar\n\n{TOLD}"
    )
    assert listed(jam) == [
        "1 kg plums (ripe ones, or half ripe and half green, as they come from the tree)",
        "700 g sugar",
    ]


def test_a_bracket_that_never_closes_takes_no_line_with_it() -> None:
    (jam,) = brought(f"Plum jam\n\n1 kg plums (ripe\n700 g sugar\n1 lemon\n\n{TOLD}")
    assert listed(jam)[1:] == ["700 g sugar", "1 lemon"]


def test_a_step_whose_number_stands_behind_another_is_one_of_its_own() -> None:
    numbered = "1. Stone the plums.\n2. Boil them.\n3. Fill the jars. 4. Label them.\n"
    (jam,) = brought(f"Plum jam\n\n{LIST}\nMethod\n\n{numbered}")
    assert steps(jam)[-2:] == ["Fill the jars.", "Label them."]


def test_numbers_within_a_step_do_not_part_it() -> None:
    numbered = "1. Stone the plums.\n2. Boil them (see page 3. It shows how).\n3. Fill the jars.\n"
    (jam,) = brought(f"Plum jam\n\n{LIST}\nMethod\n\n{numbered}")
    assert len(steps(jam)) == 3


@pytest.mark.parametrize(
    ("language", "line", "whole"),
    [
        ("en_GB", "optional (a stick of cinnamon)", "a stick of cinnamon (optional)"),
        ("fr_FR", "Facultatif : (un bâton de cannelle)", "un bâton de cannelle (facultatif)"),
        ("de_DE", "Nach Belieben (1 Zimtstange)", "1 Zimtstange (nach belieben)"),
    ],
)
def test_what_is_optional_stands_before_that_word(language: str, line: str, whole: str) -> None:
    (jam,) = brought(f"Plum jam\n\n{LIST}{line}\n\n{TOLD}", language)
    assert whole in listed(jam)


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en_GB", "A sight to behold on a winter morning."),
        ("en_GB", "The flavour improves with time."),
        ("de_DE", "Ein Gedicht, wie meine Nachbarin meint."),
        ("fr_FR", "Un vrai délice, tout simplement."),
    ],
)
def test_what_does_nothing_behind_the_steps_is_a_note_and_not_asked_as_a_step(
    language: str, said: str
) -> None:
    (jam,) = brought(f"{JAM}{said}\n", language)
    assert steps(jam) == TOLD.splitlines()
    assert said in jam.text.split("## Notes")[1]
    assert "Is this part of the method?" not in asked(jam)


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("en_GB", "I sometimes put almonds in."),
        ("de_DE", "Ich gebe manchmal eine Zimtstange dazu."),
        ("fr_FR", "J'ajoute parfois un bâton de cannelle."),
        ("sv_SE", "Jag brukar lägga i en kanelstång."),
        ("pl_PL", "Ja dodaję laskę cynamonu."),
    ],
)
def test_what_names_a_food_behind_the_steps_is_never_silent(language: str, said: str) -> None:
    (jam,) = brought(f"{JAM}{said}\n", language)
    assert said[:20] in asked(jam) or said in steps(jam)


def test_a_name_behind_the_steps_is_no_note() -> None:
    (jam,) = brought(f"{JAM}\nJanet\n")
    assert "\nJanet\n" not in jam.text.partition("## Notes")[2]


def test_other_ways_are_notes_with_all_that_is_below_them() -> None:
    ways = "There are many ways to vary it.\n\nMint\nCinnamon\nA little rum\n"
    (jam,) = brought(f"{JAM}\n{ways}")
    assert steps(jam) == TOLD.splitlines()
    assert "Mint" in jam.text.split("## Notes")[1]
    assert "kept as a note" in asked(jam)


@pytest.mark.parametrize(
    ("language", "said"),
    [
        ("fr_FR", "Il est possible d'ajouter de la vanille."),
        ("es_ES", "Para quienes prefieren menos azúcar, basta la mitad."),
        ("da_DK", "Man kan også bruge blommer fra frost."),
        ("pt_PT", "Também se pode usar mel."),
    ],
)
def test_another_way_is_a_note_and_asked(language: str, said: str) -> None:
    (jam,) = brought(f"{JAM}{said}\n", language)
    assert said not in steps(jam)
    assert said.rstrip(".")[:30] in asked(jam)


def test_a_story_between_a_list_and_the_head_of_its_method_is_none_of_its_steps() -> None:
    story = "Nothing tastes more of late summer.\nThe best of all my grandmother's.\n"
    (jam,) = brought(f"Plum jam\n\n{LIST}\n{story}\nMethod\n\n{TOLD}")
    assert steps(jam) == TOLD.splitlines()
    assert "late summer" in jam.text


def test_items_that_are_work_end_a_list_without_a_head_between() -> None:
    rows = [f"- {row}" for row in LIST.splitlines()]
    told = ["- Prick each plum with a fork and halve it", "- Boil the plums with the sugar"]
    (jam,) = brought("\n".join(["Plum jam", "", *rows, *told, ""]))
    assert listed(jam) == LIST.splitlines()
    assert len(steps(jam)) == 2


@pytest.mark.parametrize(
    ("language", "line", "makes"),
    [
        ("sv_SE", "Till 2,5 liter saft behöver du:", "2,5 liter"),
        ("nb_NO", "Til 3 glass trenger du:", "3 glass"),
        ("en_GB", "For 4 jars you need:", "4 jars"),
    ],
)
def test_how_much_is_made_stands_where_a_list_says_what_is_needed(
    language: str, line: str, makes: str
) -> None:
    (jam,) = brought(f"Plum cordial\n\n{line}\n\n{LIST}\n{TOLD}", language)
    assert fact(jam, "makes") == makes


@pytest.mark.parametrize("tool", ["Keukenkwast", "Mengkom", "große Rührschüssel", "En saftsil"])
def test_tools_of_languages_that_join_words_leave_a_list_of_foods(tool: str) -> None:
    (jam,) = brought(f"Plum jam\n\nIngredients\n\n{LIST}{tool}\n\nMethod\n\n{TOLD}")
    assert listed(jam) == LIST.splitlines()
    assert tool in jam.text.split("## Equipment")[1]


def test_a_spoon_and_a_large_spoon_are_told_apart_and_a_stroke_between_grams_is_a_range() -> None:
    (mix,) = brought(
        "Spice mix\n\n2 T salt\n1 t mace\n600/700 g sugar\n\nMix it all. Store it in a jar.\n",
        "en_US",
    )
    assert listed(mix) == ["2 tbsp salt", "1 tsp mace", "600-700 g sugar"]
    assert "could be" not in asked(mix)


def test_what_is_not_safe_is_asked_though_its_line_has_another_question() -> None:
    (cake,) = brought(
        "Quinoa loaf\n\nIngredients\n\n- 200 g quinoa\n- 2 lb flour\n\nMethod\n\n"
        "1. Grease a tin with a knob of butter. Bake 1 hour. Fill 2 jars, 1 pan.\n"
    )
    assert "Cake or bread sealed in a jar" in asked(cake)


def test_one_head_that_names_what_its_list_is_for_heads_that_list() -> None:
    (jam,) = brought(f"Zutaten Quittengelee:\n\n{LIST}\nZubereitung\n\n{TOLD}", "de_DE")
    assert listed(jam) == LIST.splitlines()
    assert fact(jam, "title") == "Quittengelee"


def test_a_note_that_is_numbered_among_the_steps_is_one() -> None:
    numbered = "1. Stone the plums.\n2. Boil them for an hour.\n3. NOTE This is lovely on toast.\n"
    (jam,) = brought(f"Plum jam\n\n{LIST}\nMethod\n\n{numbered}")
    assert len(steps(jam)) == 2
    assert "This is lovely on toast." in jam.text.split("## Notes")[1]


def test_the_same_told_again_in_another_language_is_no_further_step() -> None:
    again = "Śliwki umyć i włożyć do garnka, dodać trochę wody i gotować godzinę na małym ogniu."
    (jam,) = brought(f"{JAM}\n{again}\n")
    assert steps(jam) == TOLD.splitlines()
    assert "kept as a note" in asked(jam)


@pytest.mark.parametrize("head", ["Variantes gourmandes", "Variationen", "Variazioni di casa"])
def test_below_a_head_of_variations_stands_no_step(head: str) -> None:
    (jam,) = brought(
        f"Plum jam\n\n## Ingredients\n\n{LIST}\n## Method\n\n{TOLD}\n## {head}\n\nAdd mint.\n"
    )
    assert steps(jam) == TOLD.splitlines()
    assert "Add mint." in jam.text
