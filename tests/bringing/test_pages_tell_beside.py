"""What stands on pages and cards beside a recipe: who took the picture, whose it is, times, links.

From papers of strangers: "Foto: Lennart Weibull" above a Swedish list, "From Tannie Elsabe, she
always brings it to the church bazaar", "Cuisson 1 heure 15", "back to crafts | sign my guestbook",
"Check out our recipe below"; the rest of each family is written for this.
"""

from __future__ import annotations

from email.message import EmailMessage

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

THINGS = ["1 kg plums", "500 g sugar"]
STEPS = ["Boil the plums with the sugar.", "Fill into jars.", "Label the jars."]
METHOD = "## Method\n\n" + "".join(f"{at}. {one}\n" for at, one in enumerate(STEPS, 1))
LIST = "".join(f"- {one}\n" for one in THINGS)


def above_and_below(line: str) -> list[str]:
    """Return a recipe with a line above its list, and one with it below its method."""
    return [f"Plum jam\n\n{line}\n\n{LIST}\n{METHOD}", f"Plum jam\n\n{LIST}\n{METHOD}\n{line}\n"]


@pytest.mark.parametrize(
    "line",
    [
        "Foto: Lennart Weibull",
        "Photographs by Ann Berg",
        "Fotograf: Per Ek",
        "Text och foto: Per Ek",
        "Foto af Per Ek",
        "© Ann Berg",
        "back to crafts | sign my guestbook",
        "Retour au menu",
        "Inga kommentarer:",
        "Skicka en kommentar",
        "Kommentar veröffentlichen",
        "Geen opmerkingen",
        "Vi använder cookies för att förbättra funktionaliteten på våra sajter.",
        "We use cookies to give you the best experience.",
        "Publicado por Rosa Hart en 10:14",
        "Gepostet von Rosa Hart um 10:14",
        "Upplagd av Rosa Hart kl. 10:14",
        "Etiquetas: dulces, ciruelas",
        "Labels: jam, oranges",
        "Suscribirse a: Enviar comentarios (Atom)",
        'Sendung: hr-fernsehen, "hallo hessen", 19.10.2021, 16:00 Uhr',
    ],
)
def test_a_pages_own_words_are_nowhere(line: str) -> None:
    for text in above_and_below(line):
        (one,) = brought(text)
        assert line.strip(" :.") not in one.text
        assert (fact(one, "title"), listed(one), steps(one)) == ("Plum jam", THINGS, STEPS)


@pytest.mark.parametrize(
    "step",
    [
        "Bring it back to the boil.",
        "We use cookies for the base.",
        "Cook 20 minutes.",
        "Take a photo: it is pretty.",
    ],
)
def test_what_only_looks_like_them_stays(step: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}\nMethod\n\nBoil it all.\n{step}\nLabel the jars.\n")
    assert step in one.text


@pytest.mark.parametrize(
    ("line", "who"),
    [
        ("From Tannie Elsabe, she always brings it to the church bazaar", "Tannie Elsabe"),
        ("From Aunt Bea, who made it every year.", "Aunt Bea"),
        ("Von Tante Ilse, die es immer zum Fest mitbringt", "Tante Ilse"),
        ("De tante Yvonne, qui la faisait chaque été", "tante Yvonne"),
        ("Given to me by Mrs Hart", "Mrs Hart"),
        ("From windfalls and old plums, cooked slowly", ""),
        ("This is my grandmother's recipe.", ""),
    ],
)
def test_whose_it_is_is_the_name_alone(line: str, who: str) -> None:
    (one,) = brought(above_and_below(line)[0])
    assert fact(one, "author") == who
    assert (line in one.text) is not bool(who)


@pytest.mark.parametrize(
    "line",
    ["Préparation 20 minutes", "Cuisson 1 heure 15", "Prep 20 minutes", "Backzeit 1 Stunde",
     "Tempo di cottura 1 ora", "Koktid 20 min", "Cook 1 hr 15 min"],
)  # fmt: skip
def test_how_long_the_work_takes_is_no_introduction(line: str) -> None:
    (one,) = brought(above_and_below(line)[0])
    assert line not in one.text
    assert line not in asked(one)


@pytest.mark.parametrize("key", ["description", "summary"])
def test_a_description_above_a_page_introduces_it(key: str) -> None:
    text = f"---\ntitle: Plum jam\n{key}: Good on toast and with cheese\n---\n\n{LIST}\n{METHOD}"
    (one,) = brought(text, name="a.md")
    assert one.text.split("\n---\n")[1].strip().startswith("Good on toast and with cheese")


@pytest.mark.parametrize(
    ("head", "title"),
    [
        ("How do I make it?\n\nCheck out our recipe below\n\nIrish Cream Recipe", "Irish Cream"),
        ("See the recipe below\n\nPlum jam", "Plum jam"),
        (
            "fredag 4 december 2015\n\nsvärmors enkla pepparkakor\n\nVi bakar dem ihop, varje år.",
            "Svärmors enkla pepparkakor",
        ),
        ("plum jam for beginners\n\nWe make it every year, all of us together in one kitchen.",
         "Plum jam for beginners"),
    ],
)  # fmt: skip
def test_the_title_is_what_names_the_thing(head: str, title: str) -> None:
    (one,) = brought(f"{head}\n\n{LIST}\n{METHOD}")
    assert fact(one, "title") == title
    assert f"\n{title}\n" not in one.text.split("\n---\n")[1]


def test_a_subject_that_says_the_title_twice_leaves_no_question() -> None:
    mail = EmailMessage()
    mail["From"], mail["To"] = "a@example.org", "b@example.org"
    mail["Subject"] = "Sunday Beets (Söndagsbetor)"
    mail.set_content(
        "Beth - as promised!\n\nSöndagsbetor\n2 cups beets\n1/2 cup vinegar\n\n"
        "1) Put the beets in a jar.\n2) Boil the rest.\n3) Pour it over.\n\nK.\n"
    )
    (one,) = brought(mail.as_bytes().decode(), name="a.eml")
    assert fact(one, "title") == "Sunday Beets (Söndagsbetor)"
    assert "Söndagsbetor" not in one.text.split("\n---\n")[1]
    assert "begins the list now" not in asked(one)


def test_a_jam_whose_jars_are_warmed_in_the_oven_is_no_bake() -> None:
    method = (
        "Boil the rhubarb with the sugar. When the jam sets it is done. Warm jam jars in the oven. "
        "When the jam is ready, fill it in. Put a wax disc over the jam."
    )
    (one,) = brought(f"Ours\n\n- 1 kg rhubarb\n- 1 kg sugar\n\n## Method\n\n{method}\n")
    assert fact(one, "kind") == "jam"
    assert '"jam" is said of it again and again' in asked(one)


def test_a_table_says_whose_it_is_and_for_whom_is_left_out() -> None:
    table = "| Recipe by | Rosa Hart |\n|---|---|\n| Made for | Aunt Betty |\n| Keeps | a year |\n"
    (one,) = brought(f"Plum jam\n\n{LIST}\n{METHOD}\n{table}", name="a.md")
    assert fact(one, "author") == "Rosa Hart"
    assert "Aunt Betty" not in one.text
    assert "Keeps: a year" in one.text
    assert "how long it keeps" in asked(one).lower()
    assert steps(one) == STEPS


@pytest.mark.parametrize(
    ("line", "question"),
    [
        ("1.8 litres (3 pints) malt vinegar", ""),
        ("3 pints (1.7 l) malt vinegar", ""),
        ("1 fl oz (30 ml) rum", ""),
        ("2 quarts (1.9 l) water", "is read as American, as its litres say"),
        ("3 pints malt vinegar", "is read as this book reads it"),
        ("1.8 litres (3 pints) malt vinegar\n- 2 cups sugar", '"cups" is read as this book'),
    ],
)
def test_litres_beside_a_pint_say_whose_it_is(line: str, question: str) -> None:
    (one,) = brought(f"Plum jam\n\n- 1 kg plums\n- {line}\n\n{METHOD}")
    assert question in asked(one)
    assert bool(question) or "is read as" not in asked(one)
    assert ("units: us" in one.text.split("\n---\n")[0].split("\n")) is ("American, as" in question)


@pytest.mark.parametrize(
    ("title", "kind"),
    [
        ("Pear, Craisin & Ginger Chutney", "chutney"),
        ("Apple, pear and ginger jam", "jam"),
        ("Pear, ginger chutney", "chutney"),
        ("Fudge, plain and simple", "fudge"),
        ("Plum jam, with rum and honey", "jam"),
    ],
)
def test_a_title_that_lists_its_fruits_says_its_kind(title: str, kind: str) -> None:
    (one,) = brought(f"{title}\n\n{LIST}\n{METHOD}")
    assert fact(one, "kind") == kind
