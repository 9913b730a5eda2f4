"""Who stands behind a title, and what stands above a list and is no title.

In the shape of eleven saved pages (soup in a jar, dog biscuits, orange wine; read 1 December 2026):
"Soup in a Jar, by Lin H." had no title, "Die Zubereitung ist kinderleicht:" was one, and "55 Gramm
Leberwurst und" an unknown food.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed

_REST = "\n\n200 g lentils\n200 g barley\n5 g salt\n\nMix it and put it into jars.\n"


@pytest.mark.parametrize(
    ("head", "title", "author"),
    [
        ("Recipe of the Week: Soup in a Jar, by Wren H.", "Soup in a Jar", "Wren H"),
        ("Plum jam by Wren A.", "Plum jam", "Wren A"),
        ("Christmas Chutney by Aunt May", "Christmas Chutney", "Aunt May"),
        ("Barley mix – by Wren Alder", "Barley mix", "Wren Alder"),
        # nobody is named
        ("Fudge Step by Step", "Fudge", ""),
        ("Winter Jam by the Fire", "Winter Jam by the Fire", ""),
        ("Gelée de Coings", "Gelée de Coings", ""),
    ],
)
def test_a_name_behind_a_title_is_whose_it_is(head: str, title: str, author: str) -> None:
    (one,) = brought(head + _REST)
    assert (fact(one, "title"), fact(one, "author")) == (title, author)


def test_a_picture_is_nobodys_recipe() -> None:
    (one,) = brought("Photo by Wren Alder" + _REST)
    assert fact(one, "author") == ""


_ABOVE = {
    "de": "Für Hunde duftet es sehr, sagte man uns einst.\nDie Zubereitung ist kinderleicht:\n"
    "500 g Buchweizenmehl\n2 Eier\n2 EL Rapskernöl\n"
    "Den Teig kneten und ausrollen, und bei 160 °C backen.\n",
    "en_GB": "Our dogs can smell it from afar, and so can we.\nThis is how easy it is:\n"
    "500 g flour\n2 eggs\n2 tbsp oil\n"
    "Knead the dough, roll it out and bake it for half an hour.\n",
}


@pytest.mark.parametrize("language", _ABOVE)
def test_a_sentence_above_a_list_is_no_title(language: str) -> None:
    (one,) = brought(_ABOVE[language], language)
    assert fact(one, "title") == ""
    assert "No title" in asked(one)


def test_an_and_behind_a_thing_belongs_to_the_next_line() -> None:
    text = (
        "Hundekekse\n\n- 75 Gramm Butter,\n- 55 Gramm Leberwurst und\n- 2 EL Rapskernöl\n\n"
        "Alles verkneten und bei 180 °C zehn Minuten backen.\n"
    )
    (one,) = brought(text, "de")
    assert listed(one) == ["75 Gramm Butter,", "55 Gramm Leberwurst", "2 EL Rapskernöl"]
    assert "not a food" not in asked(one)


def test_a_paragraph_is_no_title_and_no_list() -> None:
    told = (
        "As I have just made a fresh batch of this spice for a fair that I am at this weekend, I "
        "thought I would share it with you, for it is such a handy mix to have.\n\n"
        "4 tablespoons hazelnuts\n2 tablespoons sesame seeds\n1 tablespoon cumin seeds\n\n"
        "Roast the hazelnuts in a dry pan. Crush them with the seeds, and put them into a jar.\n"
    )
    (one,) = brought(told)
    assert fact(one, "title") == ""
    assert "As I have just made" in one.text.partition("\n---\n")[2]
    prose = (
        "Czereśniówka\n\n1 kg (2 funty) owoców przebieramy, myjemy i osączamy na sicie lub "
        "rozkładamy na czystej ściereczce. Odkładamy na bok kilka owoców, z pozostałych usuwamy "
        "pestki. Zalewamy 1 litrem czystej wódki i dodajemy 3-4 goździki. Odstawiamy na 2 miesiące "
        "i filtrujemy.\n"
    )
    (one,) = brought(prose, "pl")
    assert listed(one)[:2] == ["1 kg (2 funty) owoców", "1 litrem czystej wódki"]
    assert not [line for line in listed(one) if "miesi" in line]
    (one,) = brought(prose.replace("Czereśniówka", "U cioci"), "pl")
    assert fact(one, "kind") == "infusion"
    assert 'makes it look like "infusion"' in asked(one)
