"""What of an introduction and of notes may be none of the recipe's, and who is named in them.

Papers of judges showed the family: a site's menu, a heading, a club's next meeting, a name stayed
in the introduction or the notes with no question. The lines are written for this, each with one
beside it that must be asked about by nothing.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought
from stillroom.bringing.handed_on import somebody_in

BESIDE = "Does this belong to the recipe?"
NAMED = "Somebody is named beside the recipe"

# language of the book: title, list's head, two foods, method's head, two steps
PAPERS = {
    "en_GB": "Ingredients\n\n1 kg plums\n1 kg sugar\n\nMethod\n\n"
    "1. Boil the plums.\n2. Add the sugar.\n3. Fill the jars.\n",
    "de_DE": "Zutaten\n\n1 kg Pflaumen\n1 kg Zucker\n\nZubereitung\n\n"
    "1. Pflaumen kochen.\n2. Zucker zugeben.\n3. In Gläser füllen.\n",
    "fr_FR": "Ingrédients\n\n1 kg de prunes\n1 kg de sucre\n\nPréparation\n\n"
    "1. Cuire les prunes.\n2. Ajouter le sucre.\n3. Remplir les pots.\n",
    "es_ES": "Ingredientes\n\n1 kg de ciruelas\n1 kg de azúcar\n\nPreparación\n\n"
    "1. Cocer las ciruelas.\n2. Añadir el azúcar.\n3. Llenar los tarros.\n",
    "it_IT": "Ingredienti\n\n1 kg di prugne\n1 kg di zucchero\n\nPreparazione\n\n"
    "1. Cuocere le prugne.\n2. Aggiungere lo zucchero.\n3. Riempire i vasetti.\n",
    "nl_NL": "Ingrediënten\n\n1 kg pruimen\n1 kg suiker\n\nBereiding\n\n"
    "1. Kook de pruimen.\n2. Voeg de suiker toe.\n3. Vul de potten.\n",
    "sv_SE": "Ingredienser\n\n1 kg plommon\n1 kg socker\n\nGör så här\n\n"
    "1. Koka plommonen.\n2. Tillsätt sockret.\n3. Fyll burkarna.\n",
    "da_DK": "Ingredienser\n\n1 kg blommer\n1 kg sukker\n\nFremgangsmåde\n\n"
    "1. Kog blommerne.\n2. Tilsæt sukkeret.\n3. Fyld glassene.\n",
    "pt_PT": "Ingredientes\n\n1 kg de ameixas\n1 kg de açúcar\n\nPreparação\n\n"
    "1. Cozer as ameixas.\n2. Juntar o açúcar.\n3. Encher os frascos.\n",
    "pl_PL": "Składniki\n\n1 kg śliwek\n1 kg cukru\n\nPrzygotowanie\n\n"
    "1. Gotować śliwki.\n2. Dodać cukier.\n3. Napełnić słoiki.\n",
}
TITLES = {
    "en_GB": "Plum jam",
    "de_DE": "Pflaumenmarmelade",
    "fr_FR": "Confiture de prunes",
    "es_ES": "Mermelada de ciruelas",
    "it_IT": "Marmellata di prugne",
    "nl_NL": "Pruimenjam",
    "sv_SE": "Plommonmarmelad",
    "da_DK": "Blommemarmelade",
    "pt_PT": "Doce de ameixa",
    "pl_PL": "Dżem śliwkowy",
}


def of_draft(language: str, above: str, below: str = "") -> str:
    """Return what is asked of a draft with some lines below its title, and behind its steps."""
    behind = f"\n{below}\n" if below else ""
    paper = f"{TITLES[language]}\n\n{above}\n\n{PAPERS[language]}{behind}"
    (draft,) = brought(paper, language)
    return asked(draft)


@pytest.mark.parametrize(
    ("language", "line"),
    [
        ("en_GB", "Recipe Introduction"),
        ("en_GB", "Happy Friday! The weekend could not come soon enough."),
        ("en_GB", "Where did it all begin?"),
        ("en_GB", "Occasion: birthdays"),
        ("de_DE", "Über diesen Blog"),
        ("de_DE", "Anlass: Geburtstag"),
        ("fr_FR", "Bienvenue sur mon blog"),
        ("fr_FR", "C'est maintenant chose faite."),
        ("es_ES", "Bienvenidos a nuestra web"),
        ("it_IT", "Benvenuti nel mio blog"),
        ("nl_NL", "Welkom op mijn blog"),
        ("sv_SE", "Välkommen till min blogg"),
        ("da_DK", "Velkommen til min blog"),
        ("pt_PT", "Bem-vindos ao meu blogue"),
        ("pl_PL", "Witajcie na moim blogu"),
    ],
)
def test_an_introduction_that_is_none(language: str, line: str) -> None:
    told = of_draft(language, f"{line}\n")
    assert BESIDE in told, told
    assert line.rstrip(".")[:40] in told.partition(BESIDE)[2]


@pytest.mark.parametrize(
    ("language", "line"),
    [
        ("en_GB", "My favourite way with a glut of plums, and it is lovely on toast."),
        ("en_GB", "We eat this jam all winter and never tire of it."),
        ("en_GB", "Yummy with toast and butter"),
        ("de_DE", "Diese Marmelade schmeckt besonders gut auf frischem Brot."),
        ("fr_FR", "Une confiture toute simple, délicieuse sur du pain frais."),
        ("es_ES", "Una mermelada muy rica para el desayuno con pan tostado."),
        ("it_IT", "Una marmellata semplice, ottima con il formaggio."),
        ("nl_NL", "Deze jam is heerlijk op een verse boterham."),
        ("sv_SE", "En god marmelad som passar till ost."),
        ("da_DK", "En dejlig marmelade, der smager godt til ost."),
        ("pt_PT", "Um doce simples, delicioso com pão e queijo."),
        ("pl_PL", "Prosty dżem, pyszny na świeżym chlebie."),
    ],
)
def test_an_introduction_that_is_one(language: str, line: str) -> None:
    told = of_draft(language, f"{line}\n")
    assert BESIDE not in told
    assert NAMED not in told


@pytest.mark.parametrize(
    ("note", "is_asked"),
    [
        ("Next meeting: Thursday 14th, 7.30 pm in the hall. Please bring a cup.", True),
        ("It keeps a year. Have a great weekend!", True),
        ("Use ripe plums for the best flavour.", False),
        ("Damsons may be used instead of plums.", False),
    ],
)
def test_a_note(note: str, is_asked: bool) -> None:
    told = of_draft("en_GB", "A good jam for toast.", f"Notes\n\n{note}")
    assert (BESIDE in told) is is_asked, told


def test_a_story_within_a_paragraph() -> None:
    paper = (
        "Plum jam\n\nIngredients\n\n1 kg plums\n1 kg sugar\n\nMethod\n\n"
        "Boil the plums in a pan. My kids fight about who goes first, I never win."
        " Stir in the sugar and boil it. Fill the jars.\n"
    )
    (draft,) = brought(paper)
    assert '"My kids fight about who goes first, I never win"' in asked(draft)
    (plain,) = brought(paper.replace(" My kids fight about who goes first, I never win.", ""))
    assert BESIDE not in asked(plain)


# sentences that name from whom a recipe is, in the languages that papers come in
HANDED_ON = [
    "This is my grandmother's recipe.",
    "My neighbour Rosa gave me this.",
    "I learned about it from my upstairs neighbor, Krisztina, a few years ago.",
    "From Tannie Elsabe, she always brings it to the bazaar.",
    "This recipe came from Cheryl.",
    "Mrs Abernathy taught us how.",
    "Rosa's famous recipe won a prize.",
    "Recipe contributed by Laurie Fisher, who adds: use ripe plums.",
    "Das ist das Rezept meiner Oma.",
    "Meine Nachbarin Rosa hat mir das gegeben.",
    "Von Tante Else, die macht es jedes Jahr.",
    "Das Rezept habe ich von meiner Schwiegermutter bekommen.",
    "C'est la recette de ma grand-mère.",
    "Ma voisine Rosa m'a donné cette recette.",
    "Je la tiens de ma tante Jeanne.",
    "È la ricetta di mia nonna.",
    "La mia vicina Rosa mi ha dato questa ricetta.",
    "Es la receta de mi abuela.",
    "Mi vecina Rosa me dio esta receta.",
    "Dit is het recept van mijn oma.",
    "Mijn buurvrouw Roos gaf me dit recept.",
    "Receptet har jag fått av svärmor.",
    "Min granne Rosa gav mig receptet.",
    "Det er min mormors opskrift.",
    "Min nabo Rosa gav mig opskriften.",
    "Dette er oppskriften til bestemor.",
    "É a receita da minha avó.",
    "A minha vizinha Rosa deu-me esta receita.",
    "To przepis mojej babci.",
    "Sąsiadka Róża dała mi ten przepis.",
    "Je to recept mojí babičky.",
]
NOBODY = [
    "Give a jar to your neighbour.",
    "A hit with kids and friends alike.",
    "The recipe comes from an old book.",
    "From the pan, pour it into jars.",
    "Here's my recipe for the best jam.",
    "Christmas recipes are the best.",
    "Ein Rezept aus dem Burgenland.",
    "Das schmeckt auch Kindern.",
    "Une recette de Noël toute simple.",
    "Un regalo para los amigos.",
    "Ricetta di Natale facile.",
    "Een recept voor kerst.",
    "Ett recept för julen.",
    "Opskriften giver fire glas.",
    "Uma receita de Natal.",
    "Przepis na dżem.",
]


@pytest.mark.parametrize("sentence", HANDED_ON)
def test_somebody_is_named(sentence: str) -> None:
    assert somebody_in(sentence) is not None


@pytest.mark.parametrize("sentence", NOBODY)
def test_nobody_is_named(sentence: str) -> None:
    assert somebody_in(sentence) is None


def test_whose_it_is_said_to_be_is_not_asked_again() -> None:
    """A title or an author who is named already is no secret."""
    assert NAMED in of_draft("en_GB", "My neighbour Rosa gave me this jam, good on toast.")
    (draft,) = brought(f"Rosa's plum jam\n\nRosa gave me this jam.\n\n{PAPERS['en_GB']}")
    assert NAMED not in asked(draft)


def test_a_files_name_is_no_source() -> None:
    (draft,) = brought(f"Plum jam\n\n{PAPERS['en_GB']}", name="our-secret-jam.txt")
    assert "our-secret-jam" not in draft.text
    assert "## Source" not in draft.text
    (by,) = brought(f"Plum jam\n\nBy Ann Sedge\n\n{PAPERS['en_GB']}", name="jam.txt")
    assert "## Source" not in by.text, "a name is printed in one place, or in none"


def test_whether_a_name_may_be_printed_is_asked() -> None:
    """A recipe's page is read by everybody: whoever is named at its foot may not want to be."""
    (by,) = brought(f"Plum jam\n\nBy Ann Sedge\n\n{PAPERS['en_GB']}", name="jam.txt")
    assert by.text.count("author: Ann Sedge") == 1
    assert '"Ann Sedge" stands as whose recipe it is, and everybody will read' in asked(by)
    page = (
        "<html><head><meta name=author content='Ann Sedge'></head><body><h1>Plum jam</h1>"
        "<ul><li>1 kg plums<li>800 g sugar</ul><ol><li>Boil both until it sets.</ol></body></html>"
    )
    (published,) = brought(page, name="a.html")
    assert "by Ann Sedge" in published.text
    assert "everybody will read" not in asked(published), "its page has printed it already"


# lines that a page sets around a recipe, behind the last step; a judge's list, put anew
FEET = {
    "de_DE": ("Rezept drucken", "Lesen Sie auch: Quittengelee", "Kategorie: Einmachen"),
    "fr_FR": ("Imprimer", "À lire aussi : Gelée de coings", "Posté par Anne à 10:12"),
    "it_IT": ("Stampa", "Leggi anche: Gelatina di mele", "Pubblicato il 3 maggio 2020 da Anna"),
    "es_ES": ("Imprimir", "Lee también: Jalea", "Publicado el 3 de mayo de 2020 por Ana"),
    "nl_NL": ("Afdrukken", "Lees ook: Appelgelei", "Geplaatst op 3 mei 2020 door Anna"),
    "sv_SE": ("Skriv ut", "Läs också: Äppelgelé", "Publicerad den 3 maj 2020 av Anna"),
    "da_DK": ("Del opskriften", "Læs også: Æblegele", "Lagt op af Anna kl. 10:12"),
    "pt_PT": ("Imprimir receita", "Leia também: Geleia", "Publicado a 3 de maio de 2020 por Ana"),
    "pl_PL": ("Drukuj", "Czytaj także: Galaretka", "Opublikowano 3 maja 2020 przez Annę"),
    "en_GB": ("Share to Twitter", "Read also: Plum gin", "Posted on March 3, 2011 by bigladle"),
}


@pytest.mark.parametrize(
    ("language", "line"), [(one, line) for one, lines in FEET.items() for line in lines]
)
def test_what_a_page_sets_around_a_recipe(language: str, line: str) -> None:
    """It is in no step, no note and no question, above the list or behind the method."""
    bare, above, behind = (
        brought(f"{TITLES[language]}\n\n{one}{PAPERS[language]}{two}", language)
        for one, two in (("", ""), (f"{line}\n\n", ""), ("", f"\n{line}\n"))
    )
    assert above[0].text == bare[0].text
    assert behind[0].text == bare[0].text


def test_whoever_posted_a_page_by_her_whole_name_is_its_writer() -> None:
    for line, writer in (
        ("12 May 2018, by Anna Berg", "author: Anna Berg"),
        ("3. Mai 2020 von Anna Berg", "author: Anna Berg"),
        ("3. Mai 2020 von Redaktion", ""),
    ):
        (draft,) = brought(f"Plum jam\n\n{line}\n\n{PAPERS['en_GB']}")
        assert ("author:" in draft.text) is bool(writer), line
        assert writer in draft.text


def test_a_blogs_archive_is_no_recipe() -> None:
    behind = (
        "\nFollowers\n\nBlog Archive\n\n▼ 2009 (31)\n\n▼ September (4)\n\nGreen Tomato Chutney"
        "\n\n► August (6)\n"
    )
    drafts = brought(f"Plum jam\n\n{PAPERS['en_GB']}{behind}")
    assert len(drafts) == 1
    assert "August" not in drafts[0].text


def test_a_masthead_is_asked_about_with_what_stands_in_it() -> None:
    told = of_draft("en_GB", "The Big Ladle\n\nFood, family and a very big spoon")
    assert '"The Big Ladle" · "Food, family and a very big spoon"' in told


def test_a_letters_words_above_its_recipe_are_left_out() -> None:
    (draft,) = brought(
        "From: Ann <ann@shelf.example>\nTo: Jo <jo@shelf.example>\nSubject: the jam\n\n"
        "Jo, here you go - you have worked so hard, mix this up and take a long rest!\n\n"
        f"PLUM JAM\n\n{PAPERS['en_GB']}",
        name="a.eml",
    )
    assert "worked so hard" not in draft.text
    assert "left out" in asked(draft)


def test_a_source_behind_the_method_is_a_note_that_is_asked_about() -> None:
    told = of_draft("de_DE", "Eine gute Marmelade.", "Quelle: Landfrauenbuch")
    assert "Quelle: Landfrauenbuch" in told


# Pages found by a search of public pages, put anew: a family's fudge, a library's card, a blog
def test_a_story_below_a_head_is_asked_about() -> None:
    story = "Hope's Story:\n\nLee and I had been married a month. I started to cry over my jam."
    told = of_draft("en_GB", "A good jam for toast.", story)
    assert "Lee and I had been married a month" in told


def test_a_name_in_brackets_behind_the_title_is_asked_about() -> None:
    (draft,) = brought(f"Plum jam (Lina Pecchini)\n\n{PAPERS['en_GB']}")
    assert NAMED in asked(draft)
    (plain,) = brought(f"Plum jam (Easy)\n\n{PAPERS['en_GB']}")
    assert NAMED not in asked(plain)


@pytest.mark.parametrize(
    ("above", "behind"),
    [
        ("Cooking Method: bake\n\n", ""),
        ("2006-12-03 (Sunday)\n\n", ""),
        ("", "Plum jam\n"),
        ("", "\nPubblicato il\n"),
    ],
)
def test_a_label_a_day_and_the_title_again_are_no_step_and_no_food(above: str, behind: str) -> None:
    (bare,) = brought(f"Plum jam\n\n{PAPERS['en_GB']}")
    (draft,) = brought(f"Plum jam\n\n{above}{PAPERS['en_GB']}{behind}")
    assert draft.text == bare.text


def test_a_method_of_cooking_in_words_stays_one() -> None:
    paper = "Plum jam\n\n1 kg plums\n1 kg sugar\n\nCooking method: Boil the plums with sugar.\n"
    (draft,) = brought(paper)
    assert "1. Boil the plums with sugar." in draft.text


def test_keeping_said_where_others_introduce_it_is_asked() -> None:
    page = (
        '<html><body><div itemscope itemtype="http://schema.org/Recipe"><h1 itemprop="name">Rusks'
        '</h1><p itemprop="description">Good with coffee. They keep for two months in an airtight'
        ' tin.</p><ul><li itemprop="recipeIngredient">500 g flour</li><li itemprop='
        '"recipeIngredient">250 g butter</li></ul><p itemprop="recipeInstructions">Rub the butter'
        " into the flour and bake it for an hour.</p></div></body></html>"
    )
    (draft,) = brought(page, name="rusks.html")
    assert "They keep for two months" in asked(draft)
    assert "Good with coffee" not in draft.text


@pytest.mark.parametrize(
    ("language", "line"),
    [
        ("de_DE", "Bewertung: 4,5 von 5"),
        ("de_DE", "Alle Rezepte von Anna"),
        ("fr_FR", "Article suivant : Compote"),
        ("it_IT", "Torna alla lista"),
        ("es_ES", "Volver"),
        ("nl_NL", "Meld je aan voor de nieuwsbrief"),
        ("sv_SE", "Nästa inlägg: Äppelmos"),
        ("da_DK", "Gem opskriften"),
        ("pt_PT", "Avaliação: 4,5/5"),
        ("pl_PL", "Wszystkie przepisy Anny"),
        ("en_GB", "Fill in your details below or click an icon to log in:"),
        ("en_GB", "( Log Out /  Change )"),
    ],
)
def test_stars_forms_and_the_next_page_are_no_step(language: str, line: str) -> None:
    bare, behind = (
        brought(f"{TITLES[language]}\n\n{PAPERS[language]}{more}", language)[0].text
        for more in ("", f"\n{line}\n")
    )
    assert behind == bare


def test_what_is_done_next_stays_a_step() -> None:
    """A label's word before something that is done leads to no other page."""
    paper = (
        "Plum jam\n\n1 kg plums\n1 kg sugar\n\nMethod\n\nBoil the plums.\n\nNext: add the sugar\n"
    )
    (draft,) = brought(paper)
    assert "add the sugar" in draft.text


def test_whoever_keeps_a_page_is_no_author() -> None:
    (draft,) = brought(f"Plum jam\n\nBy Staff\n\n{PAPERS['en_GB']}")
    assert "Staff" not in draft.text


def test_praise_that_begins_with_an_article_measures_nothing() -> None:
    assert "outside the list" not in of_draft("en_GB", "A good jam for toast.")
    assert "outside the list" in of_draft("en_GB", "A pinch of salt")


@pytest.mark.parametrize(
    ("sentence", "is_named"),
    [
        ("Now Shirley (that's my Mom) I use a small broiler pan.", True),
        ("Carla (unsere Nachbarin) nimmt Rum.", True),
        ("Use Vanilla (my favourite) here.", False),
        ("Pour it into Jars (our own).", False),
    ],
)
def test_somebody_told_in_brackets_is_asked(sentence: str, is_named: bool) -> None:
    """A family's letter (30 November 2026), and the same in other words."""
    text = f"Fudge\n\nIngredients\n200 g sugar\n100 g butter\n\nMethod\nMelt both. {sentence}\n"
    (draft,) = brought(text)
    assert ("Somebody is named" in asked(draft)) is is_named
