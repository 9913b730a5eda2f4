"""Lines of their own that say how much is made in their language, or are an amount of nothing.

From papers of strangers: "Jeg får ca. ½ L færdig gelé" (a Danish jelly), "ca 8 dl" (a Swedish
one), "Serve: 10 potes" (a Brazilian letter), "Per preparare una quantità di verdure necessarie a
riempire 4 vasetti da un litro serviranno:" (an Italian page), "Tid: ca. 25 min / til 2 små glas";
the rest of the family is written for this.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

THINGS = ["1 kg plums", "500 g sugar"]
STEPS = ["Boil the plums with the sugar.", "Fill into jars.", "Label the jars."]
METHOD = "## Method\n\n" + "".join(f"{at}. {one}\n" for at, one in enumerate(STEPS, 1))
LIST = "".join(f"- {one}\n" for one in THINGS)
PLACES = {
    "above": "Plum jam\n\n{0}\n\n" + LIST + "\n" + METHOD,
    "head": "Plum jam\n\n{0}\n" + LIST + "\n" + METHOD,
    "list": "Plum jam\n\n" + LIST + "{0}\n\n" + METHOD,
    "behind": "Plum jam\n\n" + LIST + "\n" + METHOD + "\n{0}\n",
}
TOLD = [
    ("These ingredients make about eight medium-sized jars.", "about eight medium-sized jars"),
    ("The above makes 4 jars.", "4 jars"),
    ("For 6 jars:", "6 jars"),
    ("Serve: 10 potes", "10 potes"),
    ("Para 10 potes:", "10 potes"),
    ("Per preparare verdure necessarie a riempire 4 vasetti da un litro serviranno:",
     "4 vasetti da un litro"),
    ("Räcker till 4 burkar", "4 burkar"),
    ("Tid: ca. 25 min / til 2 små glas", "2 små glas"),
    ("Til ca. 4 glas:", "ca. 4 glas"),
    ("Jeg får ca. ½ L færdig gelé", "ca. ½ L"),
    ("Det blir ca 4 glass", "ca 4 glass"),
    ("Ich habe 6 Gläser bekommen.", "6 Gläser"),
    ("J'ai obtenu 6 pots.", "6 pots"),
    ("A mí me salen 6 botes.", "6 botes"),
    ("Ne ottengo 6 vasetti.", "6 vasetti"),
    ("Ik krijg er 6 potjes van.", "6 potjes"),
    ("Dá para 6 frascos.", "6 frascos"),
    ("Na 6 słoików:", "6 słoików"),
]  # fmt: skip


@pytest.mark.parametrize("place", sorted(PLACES))
@pytest.mark.parametrize(("line", "makes"), TOLD)
def test_a_line_of_its_own_says_how_much_is_made(line: str, makes: str, place: str) -> None:
    (one,) = brought(PLACES[place].format(line))
    assert fact(one, "title") == "Plum jam"
    assert fact(one, "makes") == makes
    assert (listed(one), steps(one)) == (THINGS, STEPS)
    assert line not in one.text
    assert "how much it makes" not in asked(one)


@pytest.mark.parametrize("place", ["above", "head"])
@pytest.mark.parametrize(
    "line",
    ["ca 8 dl", "Ca. 1 liter", "About 1.2 litres", "6 Gläser", "20 stycken", "6 jars (250 ml)"],
)
def test_an_amount_of_nothing_below_a_title_is_the_yield(line: str, place: str) -> None:
    (one,) = brought(PLACES[place].format(line))
    assert fact(one, "makes").rstrip(".") == line
    assert listed(one) == THINGS


def test_an_amount_of_nothing_in_a_list_is_none() -> None:
    (one,) = brought(PLACES["list"].format("6 jars"))
    assert fact(one, "makes") == ""


def test_two_sizes_of_a_list_keep_their_heads() -> None:
    (one,) = brought(f"Plum jam\n\nFor 4 jars:\n{LIST}\nFor 8 jars:\n- 2 kg plums\n\n{METHOD}")
    assert listed(one) == ["For 4 jars:", *THINGS, "For 8 jars:", "2 kg plums"]


@pytest.mark.parametrize(
    "step",
    [
        "Pour 2 litres water in.",
        "Serve 2 glasses cold.",
        "I got 2 bottles of gin for it.",
        "For 1 hour leave it.",
        "Fill 6 jars.",
    ],
)
def test_what_is_done_with_jars_is_no_yield(step: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}\nMethod\n\nBoil it all.\n{step}\nLabel the jars.\n")
    assert fact(one, "makes") == ""


def test_a_yield_below_a_list_is_said_once() -> None:
    (one,) = brought(PLACES["list"].format("Makes 6 jars"))
    assert fact(one, "makes") == "6 jars"
    assert "Makes 6 jars" not in one.text
