"""A method told in the story or the letter above its list, and nothing below: it is no lost one.

Measured on eight stories of strangers with their lists set below them (pages on sloe gin, apple
butter, elder syrup, marmalade and jam, November 2026), and two that tell nothing done; chosen
before the code. These are invented after them.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, steps
from stillroom.bringing import BroughtRecipe, bring
from stillroom.core.larder.shelves import Larder
from stillroom.core.recipe.settings import BookSettings

TAKEN = "No method stands below this list"
LIST = "\n\nIngredients\n2 kg apples\n800 g sugar\n1 tsp cinnamon\n"
WORK = "Peel the apples and stew them until they are soft. Add the sugar and boil it. Pot it hot."


def brought_page(story: str) -> BroughtRecipe:
    """Return the draft of somebody's page with a story above its list."""
    rows = "".join(f"<p>{one}</p>" for one in story.split("\n\n"))
    listed = "".join(f"<li>{one}</li>" for one in ("2 kg apples", "800 g sugar"))
    text = f"<h1>Apple butter</h1>{rows}<h2>Ingredients</h2><ul>{listed}</ul>"
    data = f"<html><body><main>{text}</main></body></html>".encode()
    (found,) = bring("a.html", data, BookSettings(), Larder()).recipes
    return found


@pytest.mark.parametrize(
    "above",
    [
        WORK,
        f"It was such a good autumn for the trees behind our house.\n\n{WORK}",
        f"My aunt has a great old tree. {WORK} Came out great!",
        f"{WORK}\n\nIt came out better than ever before, and they all liked it.",
    ],
    ids=["alone", "behind a story", "within one", "above one"],
)
def test_what_is_done_above_a_list_becomes_steps_and_the_story_stays(above: str) -> None:
    (found,) = brought(f"Apple butter\n\n{above}{LIST}")
    assert steps(found) == [WORK]
    assert TAKEN in asked(found)
    for said in ("aunt", "autumn", "better than ever"):
        assert (said in found.text.split("## Method")[0]) is (said in above)


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("Apfelmus\n\nBei uns gab es viele. Die Äpfel schälen, in den Topf geben und mit dem Zucker"
         " 20 Minuten kochen.\n\nZutaten\n1 kg Äpfel\n200 g Zucker\n", "de_DE"),
        ("Compote\n\nÉplucher les pommes et les faire cuire 20 minutes avec le sucre."
         "\n\nIngrédients\n1 kg de pommes\n200 g de sucre\n", "fr_FR"),
        ("Composta\n\nSbucciare le mele e cuocerle 20 minuti con lo zucchero."
         "\n\nIngredienti\n1 kg di mele\n200 g di zucchero\n", "it_IT"),
        ("Appelmoes\n\nSchil de appels en kook ze 20 minuten met de suiker."
         "\n\nIngrediënten\n1 kg appels\n200 g suiker\n", "nl_NL"),
    ],
    ids=["de", "fr", "it", "nl"],
)  # fmt: skip
def test_one_sentence_of_work_in_other_languages_is_the_method(text: str, language: str) -> None:
    (found,) = brought(text, language)
    assert len(steps(found)) == 1
    assert TAKEN in asked(found)


@pytest.mark.parametrize(
    "story",
    [
        "Friends once planted an apple tree for my father, who loved them. I was so glad to see it"
        " bear this year, and the neighbours were too.",
        "The summer is nearly over and the trees are full.\n\nThere is a secret behind it all.",
        "Everybody asks me for it, so here it is at last, after all those years.",
    ],
)
def test_a_story_without_work_is_no_method_and_its_words_are_kept(story: str) -> None:
    (found,) = brought(f"Apple butter\n\n{story}{LIST}")
    assert steps(found) == []
    assert "may tell how it is made" in asked(found)
    assert story.split("\n")[0] in found.text
    other = brought_page(story)
    assert steps(other) == []
    assert story.split("\n")[0] in other.text.split("## Notes")[1]


def test_a_page_s_method_above_its_list_is_taken_and_its_story_is_not() -> None:
    found = brought_page(f"We came home late that day with all of them.\n\n{WORK}")
    assert steps(found) == [WORK]
    assert "came home" not in found.text


def test_a_remark_below_the_list_is_no_method() -> None:
    (found,) = brought(f"Apple butter\n\n{WORK}{LIST}\nIt came out great, as it always did.\n")
    assert steps(found) == [WORK]
    assert "It came out great" in found.text.split("## Notes")[1]


def test_a_letter_tells_what_is_done_and_keeps_its_news_to_itself() -> None:
    letter = "Dear Ann,\n\nit was lovely to see you on Sunday. You asked how I do the apples. "
    (found,) = brought(f"{letter}{WORK}{LIST}\nMuch love, Joan\n")
    assert steps(found) == [WORK]
    for private in ("Sunday", "Ann", "Joan", "You asked"):
        assert private not in found.text


def test_a_method_that_goes_on_below_the_list_begins_above_it() -> None:
    above = "Wash the plums. Drain them well. Cover them with hot water and leave them for a week."
    text = f"Pickles\n\n{above}\n\n1 qt vinegar\n6 lb sugar\n\nBoil the vinegar and pour it on.\n"
    (found,) = brought(text)
    assert steps(found) == [above, "Boil the vinegar and pour it on."]
    assert "it begins the method now" in asked(found)


@pytest.mark.parametrize(
    ("text", "language"),
    [
        ("Szilvalekvár\n\nMinden évben ezt főzzük a nagymamával. Nagyon finom és egyszerű recept"
         " ez mindenkinek.\n\nA szilvát a piacon vettük. Szép volt és érett volt minden szem.\n\n"
         "Hozzávalók\n2 kg szilva\n500 g cukor\n\nA szilvát lassú tűzön sűrűre főzzük.\n", "hu_HU"),
        ("Plum jam\n\nWe boil these every autumn in the big pan.\n\nIngredients\n2 kg plums\n"
         "1 kg sugar\n\nProceed as for the last one, in the big pan.\n", "en_GB"),
    ],
    ids=["unknown language", "no plain work"],
)  # fmt: skip
def test_what_stands_below_the_list_stays_its_method(text: str, language: str) -> None:
    (found,) = brought(text, language)
    assert steps(found) == [text.strip().rsplit("\n", 1)[1]]
