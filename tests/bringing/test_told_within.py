"""A sentence within a step that only tells is asked about; one that does, or describes, is not.

Sentences that tell: one or two of a page each, named beside them, set behind a step of its
language; those that belong to their steps likewise. Where no page is named they are invented.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought
from bringing.test_known_work import BEGUN
from stillroom.bringing.doubted import doubted_steps
from stillroom.bringing.told_within import told_within

TELLS = {
    "en": (
        # hatbron.wixsite.com "Homemade rhubarb ginger gin", lodgehousebandbsomerset.wordpress.com
        "I discovered this little gem of a recipe off a blogger I follow.",
        "I did not put enough fresh ginger in mine.",
        "My mother was given it by a neighbour!",
        "Does yours look like this?",
    ),
    "de": (
        # elastyle.at "Strawberry jam", pflanzensprache.de "Das Marmeladeprojekt"
        "Meine Oma hat schon immer die beste Marmelade gemacht.",
        "Welche Marmelade mögt ihr am liebsten?",
        "Inzwischen machen die Augen meiner Mutter Probleme.",
        "Letztes Jahr haben wir mit den Nachbarn gekocht.",
    ),
    "fr": (
        # messergaster.over-blog.com "Faire ses confitures soi-même"
        "J'ai aidé ma grand-mère à cueillir les prunes sur son arbre.",
        "Quels sont les avantages de faire ses confitures soi-même ?",
    ),
    "es": ("Mi abuela era de un pueblo de la sierra.", "¿Os ha gustado esta idea?"),
    "it": ("Mia nonna era di un paese di montagna.", "Vi piace questa idea?"),
    "nl": ("Mijn oma woonde in een huis met een boomgaard.", "Hoe vind je dit idee?"),
    "sv": ("Förra veckan bakade vi med grannarna.", "Hur blev din sylt?"),
    "da": ("Min mormor boede i et hus med en have.", "Hvad synes du om den?"),
    "nb": ("Min bestemor bodde i et hus med hage.", "Hva synes du om den?"),
    "pt": ("Minha avó era de uma aldeia da serra.", "O que acham desta ideia?"),
    "pl": ("Moja babcia była z małej wsi.", "Jak wam się podoba ten pomysł?"),
}
BELONGS = {
    "en": (
        "They should look dull and feel heavy.",
        "The longer they sit the stronger it gets.",
        "Be careful, it will be very hot.",
        "I usually mash the plums by hand.",
    ),
    "de": ("Der Saft sieht trüb aus, wird aber klar.", "Die Pflaumen schneide ich in Scheiben."),
    "fr": ("Le sirop doit être bien lisse.", "Veillez à ce que les prunes restent entières."),
    "es": ("Tardará unos días en endurecerse.", "Lleva las ciruelas a ebullición."),
    "it": ("Lo sciroppo deve risultare morbido e lucido.", "Trasferisci le prugne nel vasetto."),
    "nl": ("De stroop moet dik en glanzend zijn.", "Dit kan zeker een paar uur duren."),
    "sv": ("Det kommer att bubbla över i början.", "Klart!"),
    "da": ("De sidste dråber er de bedste.", "Blommerne halverer jeg med en kniv."),
    "nb": ("Blandingen blir tykk og blank.", "Klart!"),
    "pt": ("A calda deve ficar lisa e brilhante.",),
    "pl": ("Syrop powinien być gęsty i lśniący.",),
}


@pytest.mark.parametrize("tongue", TELLS)
def test_what_only_tells_within_a_step_is_named(tongue: str) -> None:
    step, listed = BEGUN[tongue]
    for said in TELLS[tongue]:
        assert told_within([step, f"{step} {said} {step}"], [listed]) == [said], said
        assert doubted_steps([step, step, said], [listed]) == [said], said


@pytest.mark.parametrize("tongue", BELONGS)
def test_what_belongs_to_its_step_is_not_named(tongue: str) -> None:
    step, listed = BEGUN[tongue]
    for said in BELONGS[tongue]:
        assert told_within([step, f"{step} {said} {step}"], [listed]) == [], said


def test_what_leads_to_the_first_step_is_named_with_what_goes_on_with_it() -> None:
    lead = "At the bottom of the garden are two old trees."
    more = "The challenge each year is the glut."
    do = "Stone the plums and boil them with the sugar."
    assert told_within([f"{lead} {more} {do}", do], ["1 kg plums"]) == [lead, more]
    assert told_within([do, f"{do} {lead}"], ["1 kg plums"]) == []


def test_a_paper_s_own_numbering_wins() -> None:
    begun, listed = BEGUN["en"]
    steps = [f"{begun} My mother loved this!", "Low flame essential.", "A fine pen"]
    assert doubted_steps(steps, [listed]) == steps[1:]
    assert doubted_steps(steps, [listed], set(steps)) == steps[2:]
    assert told_within(steps, [listed]) == ["My mother loved this!"]
    assert told_within(steps, [listed], set(steps)) == []


def test_a_draft_asks_once_of_sentences() -> None:
    (draft,) = brought(
        "Plum jam\n\nMakes 4 jars\n\nIngredients\n1 kg plums\n700 g sugar\n\nMethod\n"
        "At the bottom of our garden is an old tree. Stone the plums and boil them with the sugar "
        "for an hour. My husband took the picture. Pot it hot.\n"
    )
    told = '"At the bottom of our garden is an old tree" · "My husband took the picture"'
    assert f"Does this belong to the recipe? {told}." in asked(draft)
    assert "Is this part of the method?" not in asked(draft)


@pytest.mark.parametrize(
    "steps",
    [
        # invented, as blogs tell it below "Fremgangsmåde"
        (
            "Jeg skærer abrikoserne i mindre stykker.",
            "Vaniljestangen flækker jeg og skraber kornene ud.",
            "Citronen halverer jeg, hvorefter jeg presser saften ud af den.",
        ),
        ("Die Aprikosen schneide ich klein.", "Mit der Zitrone koche ich sie weich."),
        ("Jag skär aprikoserna i bitar.", "Citronen pressar jag."),
        ("Je coupe les abricots en morceaux.", "Je presse le citron."),
    ],
)
def test_what_somebody_says_she_does_with_the_food_is_work(steps: tuple[str, ...]) -> None:
    foods = ["500 g abrikoser", "1 vaniljestang", "1 citron", "Aprikosen", "aprikoser", "abricots"]
    assert doubted_steps(steps, [*foods, "Zitrone"]) == []
