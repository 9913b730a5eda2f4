"""A paper's own numbers count its steps, whatever sign stands behind them.

Signs as pages use them: "1/" (a French blog's quince paste), "[1]" (a Scottish tablet), "1°", "1º",
and a bare number before sentences; the recipes are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, listed, steps
from stillroom.bringing.doubted import doubted_steps

HEAD = "Plum jam\n\nMakes 4 jars of 200 ml\n\nIngredients\n1 kg plums\n700 g sugar\n\nMethod\n"
TOLD = (
    "Stone the plums and put them in a pan.",
    "Boil them with the sugar for an hour.",
    "Fill it into hot jars and close them at once.",
)


@pytest.mark.parametrize(
    "signs",
    [
        ("1/ ", "2/ ", "3/ "),
        ("[1] ", "[2] ", "[3] "),
        ("1° ", "2° ", "3° "),
        ("1º- ", "2º- ", "3º- "),
        ("1 ", "2 ", "3 "),
        ("1. ", "2. ", "3. "),
        ("(1) ", "(2) ", "(3) "),
    ],
)
def test_a_number_with_any_sign_counts_a_step(signs: tuple[str, ...]) -> None:
    for between in ("\n", "\n\n"):
        rows = between.join(f"{sign}{one}" for sign, one in zip(signs, TOLD, strict=True))
        (draft,) = brought(f"{HEAD}{rows}\n")
        assert steps(draft) == list(TOLD)
        assert "part of the method" not in asked(draft)


def test_amounts_count_nothing() -> None:
    text = "Fruit salt\n\nMakes 1 jar\n\nIngredients\n1 Orange\n2 Lemons\n3 Limes\n200 g salt\n\n"
    (draft,) = brought(f"{text}Method\nGrate the peel of all into the salt.\nDry it.\n")
    assert listed(draft) == ["1 Orange", "2 Lemons", "3 Limes", "200 g salt"]


def test_what_stands_above_the_first_number_and_does_nothing_is_a_note() -> None:
    rows = "\n".join(f"{at}. {one}" for at, one in enumerate(TOLD, 1))
    (draft,) = brought(
        f"{HEAD}Any old pan, or whatever you have\nHeat the oven to 100 C.\n{rows}\n"
    )
    assert steps(draft) == ["Heat the oven to 100 C.", *TOLD]
    assert "Any old pan, or whatever you have" in draft.text.split("## Notes")[1]
    assert 'kept as a note: "Any old pan, or whatever you have"' in asked(draft)


def test_an_answer_that_somebody_got_is_asked_about() -> None:
    (draft,) = brought(
        f"{HEAD}{' '.join(TOLD)}\n\nHello Ann, it depends on how much of the sugar you use.\n"
    )
    assert "Hello Ann, it depends" in asked(draft)


@pytest.mark.parametrize(
    ("said", "is_asked"),
    [
        # invented, after what blogs of mead and sloe gin say beside their steps
        ("Any honey works very well but you can use almost any type of honey.", True),
        ("Just to ensure that what I tell you is true, I have had a glass of the plums.", True),
        ("These plums are easy to make into a gift.", True),
        ("Can't stop eating it!", True),
        ("Allow the plums to cool and thicken.", False),
        ("You will need to stir it all the time.", False),
        ("Once you add the sugar it boils over.", False),
    ],
)
def test_what_is_for_or_liked_bids_nothing(said: str, is_asked: bool) -> None:
    (draft,) = brought(f"{HEAD}{TOLD[0]}\n\n{said}\n\n{TOLD[1]}\n\n{TOLD[2]}\n")
    assert (f'"{said[:20]}' in asked(draft)) == is_asked


def test_a_few_words_behind_a_number_head_what_stands_below_them() -> None:
    # the layout of a Norwegian page of pickled cucumbers; the words are invented
    rows = (
        "1. Prepare the plums\nStone the plums and put them in a pan.\n"
        "2. Cook the jam\nBoil them with the sugar for an hour.\nStir now and then.\n"
        "3. Fill the jars\nFill it into hot jars and close them at once.\n"
    )
    (draft,) = brought(HEAD + rows)
    assert steps(draft) == [
        "Prepare the plums: Stone the plums and put them in a pan.",
        "Cook the jam: Boil them with the sugar for an hour. Stir now and then.",
        "Fill the jars: Fill it into hot jars and close them at once.",
    ]
    broken = "1. Stone the plums\nand boil them for an hour.\n2. Put the\nJam in jars.\n"
    (draft,) = brought(HEAD + broken)
    assert steps(draft) == ["Stone the plums and boil them for an hour.", "Put the Jam in jars."]


@pytest.mark.parametrize(
    ("head", "tongue"),
    [
        ("How to sterilise jars", "en"),
        ("So werden Gläser keimfrei", "de"),
        ("Comment stériliser les bocaux", "fr"),
        ("Come sterilizzare i vasetti", "it"),
        ("Cómo esterilizar los frascos", "es"),
        ("Hoe je potten steriliseert", "nl"),
        ("Hur man kokar burkar", "sv"),
    ],
)
def test_how_something_is_done_heads_what_tells_it(head: str, tongue: str) -> None:
    below = "Wash the jars thoroughly and put them into the oven for ten minutes."
    (draft,) = brought(f"{HEAD}{TOLD[0]} {TOLD[1]} {TOLD[2]}\n\n{head}\n{below}\n")
    assert f"### {head}" in draft.text, tongue
    assert steps(draft)[-1] == below


@pytest.mark.parametrize(
    "head",
    [
        # brazilian page of pumpkin jam; the others are its family, invented
        "DICAS DE QUEM JÁ FEZ",
        "Tipps vom Koch",
        "Consejos de la abuela",
        "Consigli della nonna",
        "Conseils de grand-mère",
        "Porady od babci",
        "Råd från mormor",
    ],
)
def test_a_head_of_tips_that_goes_on_heads_notes(head: str) -> None:
    rows = "\n".join(f"{at}. {one}" for at, one in enumerate(TOLD, 1))
    (draft,) = brought(f"{HEAD}{rows}\n\n{head}\n- Use ripe plums, they are sweeter.\n- Add rum.\n")
    assert steps(draft) == list(TOLD)
    assert "Use ripe plums, they are sweeter." in draft.text.split("## Method")[1]


def test_what_stands_below_a_heading_in_which_nothing_is_done_is_a_note_and_asked_about() -> None:
    # a German page asks where its biscuits come from, behind their steps; the words are invented
    rows = "".join(f"<li>{one}</li>" for one in TOLD)
    told = "Where do plums come from?", "There are many stories of it, and one leads to the east."
    page = (
        "<h1>Plum jam</h1><p>Makes 4 jars of 200 ml</p><h2>Ingredients</h2><ul><li>1 kg plums</li>"
        f"<li>700 g sugar</li></ul><h2>Method</h2><ol>{rows}</ol><h3>{told[0]}</h3><p>{told[1]}</p>"
    )
    (draft,) = brought(page, name="a.html")
    assert steps(draft) == list(TOLD)
    assert all(one in draft.text.split("## Notes")[1] for one in told)
    assert f'kept as a note: "{told[0]}"' in asked(draft)
    done = "<h3>How long?</h3><p>Boil them for two hours in a wide pan.</p>"
    (draft,) = brought(page.split("<h3>")[0] + done, name="a.html")
    assert steps(draft) == [*TOLD, "Boil them for two hours in a wide pan."]


@pytest.mark.parametrize(
    ("said", "is_asked"),
    [
        ("Das Mehl vom Markt ist das feinste, sagt der Müller.", True),
        ("Davon gibt es viele schöne Geschichten.", True),
        ("Das Mehl mit der Butter verkneten.", False),
        ("Zum Kochen bringen.", False),
        ("Mit Wasser verdünnen.", False),
    ],
)
def test_a_german_thing_in_capitals_bids_nothing(said: str, is_asked: bool) -> None:
    steps_of = ["Die Pflaumen waschen und mit dem Zucker kochen.", said, "In die Gläser füllen."]
    assert (said in doubted_steps(steps_of, ["1 kg Pflaumen"])) == is_asked
