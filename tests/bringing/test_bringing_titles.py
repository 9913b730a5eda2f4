"""What brought recipes are called, of what kind they are, whose they are and how much they make."""

from __future__ import annotations

import pytest

from bringing import papers
from bringing.drafts import list_of, one_of


@pytest.mark.parametrize(
    ("said", "writer", "makes"),
    [
        ("From the Sunday paper. Makes 3 or 4 jars.", "the Sunday paper", "3 or 4 jars"),
        ("By Aunt May. Serves 4.", "Aunt May", "4 servings"),
        ("From Gran, makes 6 jars", "Gran", "6 jars"),
        ("Submitted by Ann! Makes 6 jars.", "Ann", "6 jars"),
        ("From my neighbour - makes 6 jars", "my neighbour", "6 jars"),
        ("By Mrs. J. Smith", "Mrs. J. Smith", ""),
        ("From the kitchen of May Finch", "May Finch", ""),
    ],
)
def test_whose_it_is_and_how_much_may_stand_on_one_line(said: str, writer: str, makes: str) -> None:
    text = (
        f"Beetroot relish\n\n{said}\n\n1 kg beetroot\n300 ml malt vinegar\n\nBoil it. Fill jars.\n"
    )
    draft = one_of("note.txt", text.encode()).text
    assert ("\nauthor:" in draft) == bool(writer)
    assert f"\nauthor: {writer}\n" in draft or not writer
    assert f"\nmakes: {makes}".rstrip(" ") + "\n" in draft
    assert said in draft or writer


@pytest.mark.parametrize(
    ("title", "kind"),
    [
        ("Dark chocolate fudge with nuts", "kind: chocolate fudge\n"),
        ("Jam doughnuts", "kind: doughnut\n"),
        ("How to make marmalade of quinces", "kind: marmalade\n"),
        ("Gherkin pickle", "kind:\n"),
        ("Cookie mix in a jar", "kind: cookie mix\n"),
        ("Grandmother's best", None),
        ("Quick and easy marmalade", "kind: marmalade\n"),
        ("Rhubarb and ginger jam", "kind: jam\n"),
    ],
)
def test_a_kind_is_taken_from_the_title_or_asked(title: str, kind: str | None) -> None:
    brought = one_of("note.txt", papers.TEXT.replace(papers.TITLE, title).encode())
    asked = [one for one in brought.questions if "kind" in one.what]
    if kind is None or kind == "kind:\n":
        assert asked
    if kind and "fudge" not in kind:
        assert kind in brought.text


def test_american_measures_are_asked_about() -> None:
    text = papers.TEXT.replace("1 kg damsons", "4 cups damsons")
    (asked,) = one_of("note.txt", text.encode()).questions
    assert asked.what.startswith('"cups" is read as')


@pytest.mark.parametrize(
    ("first", "title"),
    [
        ("My recipe for sloe gin:", "Sloe gin"),
        ("For sloe gin you will need:", "Sloe gin"),
        ("To make sloe gin, you'll need", "Sloe gin"),
        ("Rezept für Schlehenlikör", "Schlehenlikör"),
    ],
)
def test_a_sentence_may_name_what_is_made(first: str, title: str) -> None:
    found = one_of("a.txt", f"{first}\n\n450 g sloes\n1 litre gin\n\nPrick and steep.\n".encode())
    assert found.title == title
    assert "- 450 g sloes\n  - 1 litre gin\n---" in found.text


@pytest.mark.parametrize(
    ("line", "makes", "kept"),
    [
        ("Makes 4 pots. Keeps 2 weeks in a tin.", "4 pots", "Keeps 2 weeks in a tin."),
        ("Makes 4 pots, which keep for a year", "4 pots", "Keep for a year."),
        ("Makes 4 pots. Keep in the fridge!", "4 pots", "Keep in the fridge."),
        ("Makes 4 pots | Prep time 10 min | Cook time 1 h", "4 pots", ""),
        ("Makes 4 (8 ounce) jars", "4 (8 ounce) jars", ""),
    ],
)
@pytest.mark.parametrize("below", [False, True])
def test_what_is_said_beside_how_much_it_makes_is_kept(
    line: str, makes: str, kept: str, below: bool
) -> None:
    above, behind = ("", f"\n{line}\n") if below else (f"{line}\n", "")
    text = f"Plum jam\n{above}\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n{behind}"
    found = one_of("a.txt", text.encode())
    assert f"makes: {makes}\n" in found.text.replace('"', "")
    beside = found.text.replace("1. Boil them.", "").partition("\n---\n\n")[2]
    words = [row for row in beside.splitlines() if row and not row.startswith(("#", "Brought"))]
    assert words == ([kept] if kept else [])
    asked = any("How long it keeps may stand here" in one.what for one in found.questions)
    assert asked == ("week" in kept or "year" in kept)


@pytest.mark.parametrize(
    ("above", "title", "makes"),
    [
        ("Zutaten für Quittengelee:", "Quittengelee", ""),
        ("Ingredients for the icing:", "", ""),
        ("Per 5 vasetti da 320 g circa", "", "5 vasetti da 320 g circa"),
        ("Pour environs 5 pots de 500g :", "", "about 5 pots de 500g"),
        ("Wat hebben we nodig? (voor 2 flessen van 700 ml)", "", "2 flessen van 700 ml"),
        ("November 18, 2020 | 10:28am", "", ""),
    ],
)
def test_a_day_or_a_quantity_is_no_title(above: str, title: str, makes: str) -> None:
    text = f"{above}\n- 1 kg Quitten\n- 1 kg Zucker\n- 1 Zitrone\n\nAlles kochen und abfüllen.\n"
    found = one_of("a.txt", text.encode())
    assert (f"title: {title}" if title else "title:") in found.text.splitlines()
    assert (f"makes: {makes}" if makes else "makes:") in found.text.splitlines()


@pytest.mark.parametrize(
    ("line", "makes"),
    [
        ("Makes 1.75 litres ( 3pints)", "1.75 litres ( 3pints)"),
        ("{Serves 1}", ""),
        ("{Serves 2}", "2 servings"),
        ("Pour : 3 litres", "3 litres"),
        ("PORZIONI: 8-10 PERSONE", "8-10 PERSONE"),
        ("4 personnes", "4 personnes"),
        ("Für ca. 30 Stück", "about 30 Stück"),
        ("5.0/5", ""),
    ],
)
def test_how_much_it_makes_is_read_to_its_end(line: str, makes: str) -> None:
    text = f"Plum jam\n\n{line}\n\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    found = one_of("a.txt", text.encode())
    assert (f"makes: {makes}" if makes else "makes:") in found.text.replace('"', "").splitlines()
    assert "## Notes" not in found.text


@pytest.mark.parametrize(
    ("written", "title"),
    [
        ("Rezept Vanillekipferl", "Vanillekipferl"),
        ("Recette de confiture de figues", "Confiture de figues"),
        ("How to make sloe gin – a step by step guide", "Sloe gin"),
        ("How to make your own elderflower cordial", "Elderflower cordial"),
        ("Rezeptbuchkekse", "Rezeptbuchkekse"),
        ("Guide biscuits", "Guide biscuits"),
    ],
)
def test_a_title_is_what_is_made_and_no_more(written: str, title: str) -> None:
    text = f"{written}\n\n1 kg plums\n1 kg sugar\n\nMethod\n1. Boil them.\n"
    assert one_of("a.txt", text.encode()).title == title


@pytest.mark.parametrize(
    ("words", "american"),
    [
        ("250 g granulated sugar", False),
        ("250 g caster sugar and kosher salt", False),
        ("1 stick of butter", True),
    ],
)
def test_whose_pints_they_are_is_not_told_by_what_both_countries_say(
    words: str, american: bool
) -> None:
    text = f"Plum jam\n\n1 pint plum juice\n{words}\n\nBoil it.\n"
    assert ("\nunits: us\n" in one_of("a.txt", text.encode()).text) is american


@pytest.mark.parametrize(
    ("title", "kind"),
    [
        ("Standard mead recipe for 1 gallon", "mead"),
        ("Cocoa mint lip balm DIY", "lip balm"),
        ("Liquore alla ciliegia", "liqueur"),
    ],
)
def test_a_kind_is_found_behind_words_that_say_nothing(title: str, kind: str) -> None:
    text = f"{title}\n\n1 kg plums\n2 l water\n\nBoil it.\n"
    assert f"\nkind: {kind}\n" in one_of("a.txt", text.encode()).text


def test_how_much_is_made_in_a_sentence_and_in_two_measures() -> None:
    text = (
        "Chutney\nGreat for windfalls, makes about 2.5 kg (5-6 lbs in old money)\n"
        "2 kg apples\n1 kg sugar\nBoil it.\n"
    )
    assert "makes: about 2.5 kg\n" in one_of("a.txt", text.encode()).text


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("Servings\t16 (yields 1 cup)", "1 cup"),
        ("Makes 3 lbs (Sorry to mix up the two but the jars say 1lb and I filled 3!)", "3 lbs"),
        ("Here is a recipe which makes around 500ml of it.", "around 500ml of it"),
    ],
)
def test_how_much_is_told_among_other_words(said: str, makes: str) -> None:
    text = f"Plum jam\n\n{said}\n\n1 kg plums\n800 g sugar\n\nBoil it.\n"
    assert f"\nmakes: {makes}\n" in one_of("a.txt", text.encode()).text


def test_some_of_a_thing_in_another_language_is_no_title() -> None:
    text = (
        "Aubergines au vinaigre\n\nQuelques aubergines bio\n\n1 petit piment\n\n"
        "250 ml de vinaigre\n\nLaver les aubergines et les couper.\n"
    )
    assert one_of("a.txt", text.encode()).title == "Aubergines au vinaigre"
    assert list_of(text)[0] == "Quelques aubergines bio"


@pytest.mark.parametrize(
    ("text", "title", "makes"),
    [
        ("RASPBERRY VINEGAR.\n\nPour it over and wait a day.\nStrain it.", "Raspberry vinegar", ""),
        ("damson wine.\nto every gallon of water, put two pounds of sugar.", "Damson wine", ""),
        ("Boil it hard.\nStrain it, and leave it until the next day, in the cold.", "", ""),
        (
            "Mincemeat\n\nTo make 1.5 kg (3 lb) mincemeat, you will need 125 g raisins, 125 g "
            "suet, 50 g peel and 175 g demerara sugar.\n\nMix all of it well, and cover it.",
            "Mincemeat",
            "1.5 kg (3 lb) mincemeat",
        ),
    ],
)  # fmt: skip
def test_old_books_say_their_titles_with_a_stop(text: str, title: str, makes: str) -> None:
    draft = one_of("pasted.txt", text.encode())
    assert draft.title == title or (not title and "title:\n" in draft.text)
    assert f"makes: {makes}".rstrip() in draft.text
    assert "## Source" not in draft.text, "nobody said whence"
