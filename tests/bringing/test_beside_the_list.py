"""What stands beside a list and is no part of it, and what stands below and is: each in its place.

The papers are invented, in the form of those on which a reading went wrong; words that head notes
and tools, and that begin an afterword, are common usage of each language, from memory.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing import bring
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.settings import BookSettings

FOODS = ["1 kg plums", "800 g sugar", "2 tbsp lemon juice"]
LIST = "\n".join(FOODS) + "\n"
KEPT = [
    "Cook the plums soft with the juice.",
    "Add the sugar and boil it until it sets.",
    "Fill jars boiling hot.",
]
METHOD = "\n".join(KEPT) + "\n"
# language: (head of notes, its two bullets, head of tools, a tool, head of the list, foods,
# head of the method, steps)
ABOVE = {
    "en_GB": (
        "Guidelines",
        "Use ripe plums",
        "4 jars of 250 ml should be ready",
        "Equipment",
        "A wide pan",
        "Ingredients",
        FOODS,
        "Method",
        KEPT,
    ),
    "de_DE": (
        "Hinweise",
        "2 Tage vorher ansetzen",
        "Reife Früchte nehmen",
        "Ausstattung",
        "1 großer Topf",
        "Zutaten",
        ["1 kg Pflaumen", "300 g Zucker"],
        "Zubereitung",
        ["Pflaumen entsteinen.", "Mit dem Zucker dick einkochen."],
    ),
    "fr_FR": (
        "Remarques",
        "Choisir des fruits mûrs",
        "2 jours de repos",
        "Matériel",
        "1 bassine",
        "Ingrédients",
        ["1 kg de prunes", "700 g de sucre"],
        "Préparation",
        ["Laver les prunes.", "Cuire avec le sucre."],
    ),
    "it_IT": (
        "Consigli",
        "Scegliere frutta matura",
        "2 giorni di riposo",
        "Attrezzatura",
        "1 pentola",
        "Ingredienti",
        ["1 kg di prugne", "400 g di zucchero"],
        "Preparazione",
        ["Lavare le prugne.", "Cuocere con lo zucchero."],
    ),
    "es_ES": (
        "Recomendaciones",
        "Elegir fruta madura",
        "2 días de reposo",
        "Utensilios",
        "1 olla",
        "Ingredientes",
        ["1 kg de ciruelas", "600 g de azúcar"],
        "Preparación",
        ["Lavar las ciruelas.", "Cocer con el azúcar."],
    ),
    "nl_NL": (
        "Opmerkingen",
        "Neem rijp fruit",
        "2 dagen laten staan",
        "Keukengerei",
        "1 pan",
        "Ingrediënten",
        ["1 kg pruimen", "500 g suiker"],
        "Bereiding",
        ["Was de pruimen.", "Kook ze met de suiker."],
    ),
    "sv_SE": (
        "Bra att veta",
        "Välj mogna plommon",
        "2 dagar i kylen",
        "Utrustning",
        "1 kastrull",
        "Ingredienser",
        ["1 kg plommon", "500 g socker"],
        "Gör så här",
        ["Skölj plommonen.", "Koka dem med sockret."],
    ),
}


@pytest.mark.parametrize("language", ABOVE)
def test_bullets_under_another_head_above_the_list_are_notes(language: str) -> None:
    notes, first, second, tools, tool, foods_head, foods, method, told = ABOVE[language]
    text = f"Pflümli\n\n{notes}\n- {first}\n- {second}\n\n{tools}\n- {tool}\n\n{foods_head}\n"
    text += "".join(f"- {one}\n" for one in foods) + f"\n{method}\n"
    text += "".join(f"{number}. {one}\n" for number, one in enumerate(told, 1))
    (one,) = brought(text, language)
    assert listed(one) == foods
    assert steps(one) == told
    below = one.text.split("## Method")[1]
    assert [word for word in (first, second, tool) if word not in below] == []


def test_bullets_under_a_head_of_nobodys_words_stay_out_of_the_list() -> None:
    above = "What I learned\n- Ripe ones set badly\n- Stir it often\n\n"
    (one,) = brought(f"Plum jam\n\n{above}Ingredients\n{LIST}\nMethod\n{METHOD}")
    assert (listed(one), steps(one)) == (FOODS, KEPT)
    assert "Ripe ones set badly" in one.text


def test_a_list_under_notes_with_a_recipe_behind_it_stays_a_list() -> None:
    text = f"Plum jam\n\nNotes\nMakes 4 jars\n{LIST}\n{METHOD}\nPlum cake\n\nIngredients\n"
    two = brought(f"{text}200 g flour\n3 eggs\n\nMethod\nBeat them.\nBake it for an hour.\n")
    assert listed(two[0]) == FOODS


@pytest.mark.parametrize(
    "line",
    ["Optional: a cinnamon stick", "Optional: 2 star anise, whole", "Optionally: ground ginger"],
)
@pytest.mark.parametrize("gap", ["", "\n"])
def test_what_may_go_in_below_a_list_is_of_it(line: str, gap: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}{gap}{line}\n\n{METHOD}")
    assert listed(one) == [*FOODS, line]
    assert steps(one) == KEPT


@pytest.mark.parametrize("line", ["Optional: stir in a spoonful of rum.", "Optional: skim the jam"])
def test_what_may_be_done_stays_a_step(line: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}\n{METHOD}{line}\n")
    assert (listed(one), steps(one)) == (FOODS, [*KEPT, line])


@pytest.mark.parametrize(
    "line", ["Figure: the set, screenshot", "Fig. 2: a jar", "Abb. 3: Gelierprobe", "Screenshot: x"]
)
def test_a_caption_is_no_step_and_is_kept(line: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}\n{line}\n\n{METHOD}")
    assert (listed(one), steps(one)) == (FOODS, KEPT)
    assert line in one.text


AFTER = ["P.S. ", "PS: ", "P.S.: ", "P. S. ", "ps - "]


@pytest.mark.parametrize("begins", AFTER)
@pytest.mark.parametrize("end", ["Love, Nan\n\n", "Lots of love,\nNan\n", ""])
@pytest.mark.parametrize("head", ["", "Dear Ann,\n\n", "From: Nan\nTo: Ann\nSubject: Jam\n\n"])
def test_a_tip_below_a_letters_end_is_kept(begins: str, end: str, head: str) -> None:
    tip = "A knob of butter stops the scum."
    (one,) = brought(f"{head}Plum jam\n\n{LIST}\n{METHOD}\n{end}{begins}{tip}\n")
    assert steps(one) == KEPT
    assert tip in one.text.split("## Method")[1]
    assert "kept as a note" in asked(one) or not end or head.startswith("From")


@pytest.mark.parametrize("said", ["P.S. Tom sends his love.", "PS: See you at Easter!"])
def test_news_below_a_letters_end_stays_private(said: str) -> None:
    (one,) = brought(f"Dear Ann,\n\nPlum jam\n\n{LIST}\n{METHOD}\nLove, Nan\n\n{said}\n")
    assert steps(one) == KEPT
    assert said[5:] not in one.text
    assert "farewell is left out" in asked(one)


HEAD = (
    "<div>---------- Forwarded message ---------<br>From: <b>Nan Old</b> &lt;n@home.example&gt;"
    "<br>Date: Mon, 3 May 2021<br>Subject: Plum jam<br>To: Ann &lt;a@home.example&gt;<br></div>"
)


@pytest.mark.parametrize(
    ("inner", "title", "writer"), [(HEAD, "Plum jam", "Nan Old"), ("", "For you", "Ann Other")]
)
def test_a_letter_as_a_page_is_called_as_what_it_passes_on(
    inner: str, title: str, writer: str
) -> None:
    rows = "<br>".join([*FOODS, "", *KEPT])
    page = f"<html><body><div>Look what came!</div>{inner}<br><div>{rows}</div></body></html>"
    mail = (
        "From: Ann Other <a@home.example>\nTo: me@home.example\nSubject: Fwd: for you\n"
        f"Content-Type: text/html; charset=utf-8\n\n{page}\n"
    )
    settings = BookSettings(language="en_GB")
    (one,) = bring("a.eml", mail.encode(), settings, Larder(language="en_GB")).recipes
    assert (fact(one, "title"), fact(one, "author")) == (title, writer)
    assert (listed(one), steps(one)) == (FOODS, KEPT)
    assert "home.example" not in one.text


@pytest.mark.parametrize("row", ["| | (unsalted) |", "| (unsalted) | |"])
def test_a_bracket_below_a_row_of_a_table_is_said_of_it(row: str) -> None:
    table = f"| Ingredient | Amount |\n|---|---|\n| sugar | 450 g |\n| butter | 100 g |\n{row}\n"
    (one,) = brought(f"Fudge\n\n{table}| milk | 150 ml |\n\n{METHOD}")
    assert listed(one) == ["450 g sugar", "100 g butter (unsalted)", "150 ml milk"]


def test_a_cell_beside_an_empty_name_is_kept() -> None:
    table = "| Ingredient | Amount |\n|---|---|\n| sugar | 450 g |\n| | sieved twice |\n"
    (one,) = brought(f"Fudge\n\n{table}| milk | 150 ml |\n\n{METHOD}")
    assert listed(one) == ["450 g sugar", "150 ml milk"]
    assert "sieved twice" in one.text
