"""Letters pasted or passed on, their heads, greetings and farewells, and yields told in a sentence.

The letters are invented, in the form in which a reviewer's came. Heads of forwarded mail are those
that mail programs write in each language, as in the fixtures of yodjii/email-origin-chain (read
2026-11-30); what greets and takes leave is common usage, from memory.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

LIST = "1 kg plums\n800 g sugar\n2 tbsp lemon juice\n\n"
METHOD = (
    "Cook the plums soft with the juice.\nAdd the sugar and boil it until it sets.\n"
    "Fill jars boiling hot.\n"
)
KEPT = METHOD.strip().split("\n")
HEAD_TOLD, GREETING_TOLD = "The letter's head is left out", "What the letter says before"

# what stands above the greeting, the greeting with what leads to the recipe, and the farewell
LETTERS = {
    "en": ("Brook Cottage\n14th October", "Dear Tom,\n\nLovely to see you both.", "Love, Nan xx"),
    "en, my": ("14 Mill Lane\nLudlow\n3rd Nov. 1987", "My dear Ann,", "With love from\nJo"),
    "en, bare": ("Sunday evening", "Dearest Margaret\n\nI promised you this.", "Yours ever,\nJo"),
    "de": ("Lindenweg 4\n\nden 3. Dezember", "Liebe Oma,\n\nhier das Rezept.", "Liebe Grüße\nMia"),
    "de, all": ("", "Hallo zusammen,\n\ndanke für den Abend.", "Ganz liebe Grüße\nIna"),
    "fr": ("Lyon, le 12 novembre", "Chère Anne,\n\nMerci pour ta carte.", "Je t'embrasse,\nZoé"),
    "fr, bare": ("", "Coucou,\n\nVoilà la recette.", "Gros bisous,\nHélène"),
    "it": ("Torino, 8 gennaio 2022", "Cara Lucia,\n\nti mando la ricetta.", "Un abbraccio\nCarla"),
    "es": ("Granada, 2 de mayo", "Querida Pilar:\n\nGracias por tu carta.", "Un abrazo,\nCarmen"),
    "nl": ("", "Hoi Marijke,\n\nLeuk dat je belde!", "Groetjes,\nEls"),
    "sv": ("Lund den 3 december", "Kära Britta,\n\nTack för senast!", "Många kramar\nElsa"),
}


@pytest.mark.parametrize("case", LETTERS)
@pytest.mark.parametrize("title", ["Plum jam\n\n", ""])
def test_a_letters_head_and_end_are_neither_title_nor_step(case: str, title: str) -> None:
    head, greeting, end = LETTERS[case]
    (one,) = brought(f"{head}\n\n{greeting}\n\n{title}{LIST}{METHOD}\n{end}\n")
    assert fact(one, "title") == title.strip()
    assert listed(one) == LIST.strip().split("\n")
    assert steps(one) == KEPT
    assert (HEAD_TOLD in asked(one)) == bool(head)
    assert GREETING_TOLD in asked(one)
    said = f"{head}\n{greeting}\n{end}".split("\n")
    assert not [line for line in said if line and line in one.text]


GREETINGS = [
    "Liebe Karin, lieber Hans,",
    "Hallo Ihr Lieben,",
    "Salut les filles !",
    "Bonjour à tous,",
    "Ciao a tutti,",
    "Hola a todos:",
    "Hej på er!",
    "Hallo allemaal,",
    "Dear all",
    "Dear Mrs. Pell,",
    "Hi there,",
    "Guten Morgen Ina,",
    "Goedemorgen Els,",
    "Buongiorno Carla,",
    "Buenos días Pilar,",
    "Ma chère petite Anne,",
    "Beste Jan,",
    "Sehr geehrte Frau Vogt,",
    "Geachte mevrouw Bos,",
    "Lieve oma en opa,",
    "My darling Ruth,",
]


@pytest.mark.parametrize("greeting", GREETINGS)
def test_whoever_is_greeted_a_letters_head_is_left_out(greeting: str) -> None:
    (one,) = brought(f"4 Mill Lane\n3 May 1980\n\n{greeting}\n\nPlum jam\n\n{LIST}{METHOD}")
    assert fact(one, "title") == "Plum jam"
    assert (listed(one), steps(one)) == (LIST.strip().split("\n"), KEPT)


ENDS = [
    "Yours affectionately,\nMay",
    "God bless\nNan",
    "Sei lieb gegrüßt\nIna",
    "Bien affectueusement\nZoé",
    "À très vite !\nZoé",
    "Un besazo,\nPili",
    "Tot zaterdag!\nEls",
    "Dikke kus, Els",
    "Kram från Elsa",
    "Puss & kram",
    "Your loving Gran",
    "Till we meet again,\nMay",
    "Grosses bises de nous deux",
]


@pytest.mark.parametrize("end", ENDS)
def test_however_a_letter_takes_leave_it_is_no_step(end: str) -> None:
    (one,) = brought(f"Dear Ann,\n\nPlum jam\n\n{LIST}{METHOD}\n{end}\n")
    assert steps(one) == KEPT
    assert "farewell is left out" in asked(one)


@pytest.mark.parametrize("last", ["Leave to set", "Cool in the tin", "Serve on toast!", "Cap them"])
def test_a_short_last_step_above_a_name_stays(last: str) -> None:
    (one,) = brought(f"Dear Ann,\n\nPlum jam\n\n{LIST}{METHOD}{last}\n\nJoan\n")
    assert steps(one) == [*KEPT, last]


# letters that measure in their sentences: (letter, what is made, first step, number of steps)
TOLD = {
    "en": (
        "Brook Cottage\n14th October\n\nDear Tom,\n\nLovely to see you both at the weekend. You "
        "asked how he made his mead, so here it is.\n\nYou want three pounds of honey, a gallon of "
        "water and a sachet of wine yeast.\n\nWarm half the water and stir the honey into it. He "
        "got six bottles out of it.\n\nJean sends her love, and says don't forget the 21st.\n\n"
        "Yours ever,\nUncle Walter\n",
        "six bottles",
        "You want three pounds",
        2,
    ),
    "de": (
        "Hamburg, 4.11.2021\n\nLiebe Karin,\n\ndanke für Deinen Brief. Du wolltest wissen, wie ich "
        "das Gelee mache.\n\nNimm 2 kg Quitten und koche sie mit 1 l Wasser weich. Miss den Saft "
        "ab und koche ihn mit 1 kg Gelierzucker. Das ergibt ungefähr 6 Gläser.\n\nKommt Ihr im "
        "Dezember?\n\nHerzlichst\nDeine Ute\n",
        "ungefähr 6 Gläser",
        "Nimm 2 kg Quitten",
        1,
    ),
    "fr": (
        "Coucou,\n\nTu m'as demandé la recette du sirop. Pour une dizaine de bouteilles, tu "
        "prends 50 ombelles de sureau, 3 kg de sucre et 3 litres d'eau.\n\nTu fais macérer "
        "les fleurs dans l'eau pendant deux jours.\n\nGrosses bises,\nNathalie\n",
        "about 10 bouteilles",
        "Pour une dizaine",
        2,
    ),
}


@pytest.mark.parametrize("case", TOLD)
def test_a_letter_without_a_list_gives_only_what_is_done(case: str) -> None:
    text, makes, first, count = TOLD[case]
    (one,) = brought(text)
    assert fact(one, "makes").strip('"') == makes
    assert fact(one, "title") == ""
    assert steps(one)[0].startswith(first)
    assert len(steps(one)) == count
    assert GREETING_TOLD in asked(one)


def test_a_first_step_that_may_be_chat_is_asked() -> None:
    way = "Boil 2 lb of plums with 1 lb of sugar until it sets, and pot it.\n\nLove, May\n"
    (one,) = brought(f"Dear Jo,\n\nWe left Wales on Sunday. The weather was awful.\n\n{way}")
    assert "may still be of the letter" in asked(one)
    (two,) = brought(f"Dear Jo,\n\n{way}")
    assert "may still be" not in asked(two)


def test_a_title_above_a_greeting_stays_and_one_that_may_be_none_is_asked() -> None:
    body = f"Dear Ann,\n\nHere it is at last.\n\n{LIST}{METHOD}"
    (jam,) = brought(f"Plum jam\n\n{body}")
    assert (fact(jam, "title"), steps(jam)) == ("Plum jam", KEPT)
    (named,) = brought(f"Seaview\n\n{body}")
    assert '"Seaview" stands above the greeting' in asked(named)
    (both,) = brought(f"Plum jam\n3rd May 1980\n\n{body}")
    assert fact(both, "title") == "Plum jam"
    assert HEAD_TOLD in asked(both)


@pytest.mark.parametrize(
    "first",
    [
        "Warm the honey and stir it into the water.",
        "You want 2 lb of honey and a gallon of water.",
        "Keep it in the dark for three months.",
        "Thank you for the honey. Warm half of it in a pan.",
    ],
)
def test_what_is_done_behind_a_greeting_stays_a_step(first: str) -> None:
    (one,) = brought(f"Dear Tom,\n\n{first}\n\nStrain 1 lb of it into a jar and cork it.\n")
    assert first.split(". ")[-1] in steps(one)[0]


@pytest.mark.parametrize(
    "end",
    [
        "Keep it in a cool place for a month.",
        "Would you believe it keeps for 2 years in the dark?",
        "You can use 200 g of honey instead.",
        "Serve it with cheese.",
    ],
)
def test_a_letters_last_step_is_no_news(end: str) -> None:
    (one,) = brought(f"Dear Tom,\n\nPlum jam\n\n{LIST}{METHOD}\n{end}\n\nLove, Nan\n")
    assert end in one.text


@pytest.mark.parametrize("title", ["Dear Nan's plum jam", "Rocky road", "Christmas jam", "May jam"])
def test_a_paper_that_is_no_letter_is_read_as_before(title: str) -> None:
    (one,) = brought(f"{title}\n\n{LIST}{METHOD}")
    assert (fact(one, "title").strip('"'), steps(one)) == (title, KEPT)
    assert "letter" not in asked(one)


OWN = f"Hello Ina,\n\n{LIST}{METHOD}\nLove, Jo\n\n"
ASKED = "Dear Jo,\nmay I have it? I have 2 kg of plums\nand 500 g of sugar,\nand 3 jars.\nIna"
WROTE = {
    "en": "On 3 May 2024 at 10:04, Ina Moss <ina@x.example> wrote:",
    "en, broken": "On 3 May 2024 at 10:04, Ina Moss <ina@x.example>\nwrote:",
    "de": "Am 12.10.2023 um 19:03 schrieb Ina Moos <ina@x.example>:",
    "fr": "Le sam. 30 nov. 2024 à 10:04, Ina Moss <ina@x.example> a écrit :",
    "it": "Il giorno 3 maggio 2024 alle 10:04 Ina Moss <ina@x.example> ha scritto:",
    "es": "El 3 may 2024, a las 10:04, Ina Moss <ina@x.example> escribió:",
    "nl": "Op 3 mei 2024 om 10:04 schreef Ina Moss <ina@x.example>:",
    "sv": "Den 3 maj 2024 kl. 10:04 skrev Ina Moss <ina@x.example>:",
}


@pytest.mark.parametrize("mark", ["> ", ""])
@pytest.mark.parametrize("case", WROTE)
def test_the_letter_that_is_answered_is_no_step(case: str, mark: str) -> None:
    older = "\n".join(f"{mark}{line}" for line in ASKED.split("\n"))
    (one,) = brought(f"{OWN}{WROTE[case]}\n{older}\n")
    assert listed(one) == LIST.strip().split("\n")
    assert steps(one) == KEPT
    assert "500 g" not in one.text


@pytest.mark.parametrize("case", WROTE)
def test_a_recipe_that_is_passed_on_in_quoting_stays(case: str) -> None:
    quoted = "\n".join(f"> {line}" for line in f"Plum jam\n\n{LIST}{METHOD}".split("\n"))
    (one,) = brought(f"Hello Ina,\n\nthis is hers.\n\n{WROTE[case]}\n{quoted}\n")
    assert fact(one, "title") == "Plum jam"
    assert (listed(one), steps(one)) == (LIST.strip().split("\n"), KEPT)


# (line of the mail program, labels of writer, day, reader, subject, and what it sets before that)
PASSED_ON = {
    "en": ("Begin forwarded message:", "From", "Date", "To", "Subject", "Fwd: "),
    "de": ("Anfang der weitergeleiteten Nachricht:", "Von", "Datum", "An", "Betreff", "WG: "),
    "fr": ("---------- Message transféré ---------", "De", "Date", "À", "Objet", "TR: "),
    "it": ("---------- Messaggio inoltrato ---------", "Da", "Data", "A", "Oggetto", "I: "),
    "es": ("---------- Mensaje reenviado ---------", "De", "Fecha", "Para", "Asunto", "RV: "),
    "nl": ("Begin doorgestuurd bericht:", "Van", "Datum", "Aan", "Onderwerp", "Doorst: "),
    "sv": ("Vidarebefordrat brev:", "Från", "Datum", "Till", "Ämne", "VB: "),
}


@pytest.mark.parametrize("case", PASSED_ON)
@pytest.mark.parametrize("mark", ["> ", ""])
@pytest.mark.parametrize("above", ["Look what she sent.\n\n", ""])
def test_the_subject_of_a_letter_passed_on_is_the_title(case: str, mark: str, above: str) -> None:
    line, sender, day, reader, subject, before = PASSED_ON[case]
    head = (
        f"{sender}: Greet Bos <g@x.example>\n{day}: 7 10 2024 21:40\n{subject}: {before}Sloe gin\n"
    )
    letter = f"{head}{reader}: Ina <i@x.example>\n\nHello Ina,\n\n{LIST}{METHOD}\nGreet\n"
    marked = "\n".join(f"{mark}{one}" for one in letter.split("\n"))
    (one,) = brought(f"{above}{line}\n\n{marked}\n")
    assert fact(one, "title") == "Sloe gin"
    assert fact(one, "author") == "Greet Bos"
    assert (listed(one), steps(one)) == (LIST.strip().split("\n"), KEPT)
    assert "x.example" not in one.text


def test_two_lists_one_of_them_quoted_are_two_recipes() -> None:
    own, gin = brought(
        f"Dear Ann,\n\nPlum jam\n\n{LIST}{METHOD}\nLove, Jo\n\nOn 3 May, Ina <i@x.example> wrote:\n"
        "> Sloe gin\n>\n> 1 lb sloes\n> 1 pint gin\n>\n> Prick the sloes and cover them with gin.\n"
    )
    assert (fact(own, "title"), steps(own)) == ("Plum jam", KEPT)
    assert (fact(gin, "title"), len(listed(gin)), len(steps(gin))) == ("Sloe gin", 2, 1)


def test_the_head_of_an_answered_letter_without_marks_is_no_step() -> None:
    older = "Von: Ina\nGesendet: Montag, 3. Mai 2024 10:04\nAn: Jo\nBetreff: AW: Mus?\n\n"
    (one,) = brought(
        f"Hallo Ina,\n\nPlum jam\n\n{LIST}{METHOD}\nLG Jo\n\n{older}Ich habe 2 kg Pflaumen.\nIna\n"
    )
    assert (fact(one, "title"), steps(one)) == ("Plum jam", KEPT)
    assert "2 kg" not in one.text


def test_labels_of_a_recipe_card_are_no_head_of_a_letter() -> None:
    (one,) = brought(f"Plum jam\nDe: la abuela\nPara: 6 personas\n\n{LIST}{METHOD}")
    assert fact(one, "title") == "Plum jam"
    assert fact(one, "makes") == "6 personas"
    assert steps(one) == KEPT


# how much is made, told in a sentence or on a line: the reviewer's own lines and their like
YIELDS = {
    "Will serve 4 to 6 people": "4 to 6 people",
    "This should serve 8.": "8 servings",
    "Feeds 10 people.": "10 people",
    "Goed voor 3 kleine potjes.": "3 kleine potjes",
    "Genoeg voor ongeveer 4 flessen": "ongeveer 4 flessen",
    "Reicht für 5 Gläser.": "5 Gläser",
    "Pour une quarantaine de pièces": "about 40 pièces",
    "Per una ventina di biscotti": "about 20 biscotti",
    "Para una docena de galletas": "about 12 galletas",
    "Makes 12 rusks": "12 rusks",
    "Det blir ungefär 40 skorpor.": "ungefär 40 skorpor",
    "Ne vengono 2 bottiglie.": "2 bottiglie",
    "Salen unos 30 mantecados.": "unos 30 mantecados",
    "Makes 2 quarts": "2 quarts",
    "Pour 6 personnes": "6 personnes",
    "Ergibt:\n2 leute": "2 leute",
    "Makes:\n6 jars": "6 jars",
    "Opbrengst:\n\n4 potten": "4 potten",
}


@pytest.mark.parametrize("said", YIELDS)
@pytest.mark.parametrize("behind", [False, True])
def test_a_yield_is_taken_wherever_it_stands(said: str, behind: bool) -> None:
    above, below = ("", f"\n{said}\n") if behind else (f"{said}\n\n", "")
    (one,) = brought(f"Plum jam\n\n{above}{LIST}{METHOD}{below}")
    assert fact(one, "makes").strip('"') == YIELDS[said]
    assert (listed(one), steps(one)) == (LIST.strip().split("\n"), KEPT)


def test_a_list_is_headed_with_the_size_of_its_jars() -> None:
    (one,) = brought(f"Pflaumenmus\n\nZutaten für 4 Gläser (à 500 ml)\n{LIST}{METHOD}")
    assert fact(one, "makes") == "4 Gläser à 500 ml"
    assert listed(one) == LIST.strip().split("\n")


@pytest.mark.parametrize(
    "said",
    [
        "Laisser reposer pour une dizaine de minutes.",
        "Ajouter une dizaine de feuilles de menthe.",
        "Goed voor 3 weken in de koelkast.",
        "Das ergibt 500 ml Saft, der in den Topf kommt.",
        "Das ergibt etwa 500 Gramm.",
        "Det blir ungefär 90 grader.",
        "Dazu gibt man 6 Gläser Wasser.",
        "Serve 4 slices with cream on a plate.",
        "He got six cups of juice and boiled it.",
        "This will keep 4 to 6 months in the dark.",
    ],
)
def test_what_is_no_yield_is_not_taken_for_one(said: str) -> None:
    (one,) = brought(f"Plum jam\n\n{LIST}{METHOD}{said}\n")
    assert fact(one, "makes") == ""


def test_a_label_of_a_yield_above_a_list_takes_no_line_of_it() -> None:
    (one,) = brought(f"Plum jam\n\nYield:\n{LIST}{METHOD}")
    assert "1 kg plums" in listed(one)
    assert fact(one, "makes") == ""


def test_a_yield_behind_the_steps_leaves_their_numbers_told_apart() -> None:
    glued = "1Pflaumen waschen und weich kochen.\n2Zucker zugeben und kochen.\n3Heiß abfüllen.\n"
    (one,) = brought(
        "Pflaumenmus\n\nZutaten:\n- 1 kg Pflaumen\n- 800 g Zucker\n\n"
        f"Zubereitung:\n{glued}\nErgibt:\n2 leute\n"
    )
    assert steps(one) == [line[1:] for line in glued.strip().split("\n")]
    assert fact(one, "makes") == "2 leute"
