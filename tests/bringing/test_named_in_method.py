"""What a method puts in with no amount, and no list has, is asked about: the butter, beaten egg.

Two-sided: only what somebody avoids, and neither what is greased, served, compared nor chosen. The
sentences are such as stand in methods of open recipe collections of eleven languages.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought

_TONGUES = {
    "en": ("en_GB", "Ingredients", "Method", "Mix it all in a bowl and leave it for an hour."),
    "de": ("de_DE", "Zutaten", "Zubereitung", "Alles in einer Schüssel mischen und stehen lassen."),
    "fr": ("fr_FR", "Ingrédients", "Préparation", "Mélanger le tout dans un saladier et laisser."),
    "it": ("it_IT", "Ingredienti", "Preparazione", "Mescolare il tutto in una ciotola."),
    "es": ("es_ES", "Ingredientes", "Preparación", "Mezclar todo en un cuenco y dejar reposar."),
    "nl": (
        "nl_NL",
        "Ingrediënten",
        "Bereiding",
        "Meng alles in een kom en laat het een uur staan.",
    ),
    "sv": (
        "sv_SE",
        "Ingredienser",
        "Gör så här",
        "Blanda allt i en skål och låt det stå en timme.",
    ),
    "da": ("da_DK", "Ingredienser", "Fremgangsmåde", "Bland det hele i en skål og lad det stå."),
    "nb": ("nb_NO", "Ingredienser", "Fremgangsmåte", "Bland alt i en bolle og la det stå en time."),
    "pt": ("pt_PT", "Ingredientes", "Modo de preparo", "Misture tudo numa taça e deixe repousar."),
    "pl": ("pl_PL", "Składniki", "Przygotowanie", "Wymieszać wszystko w misce i odstawić."),
}
_ASKS = "The method puts in what the list does not have: "

NAMED = [
    ("en", "Stir in the butter and bake.", ["butter"]),
    ("en", "Brush with beaten egg, roll in chopped nuts.", ["egg", "chopped nuts"]),
    ("en", "Top with grated cheese and breadcrumbs.", ["cheese", "breadcrumbs"]),
    ("en", "Add 1 x 397g can condensed milk and boil.", ["condensed milk"]),
    ("en", "Feed with brandy every week.", ["brandy"]),
    ("de", "Mit geriebenem Käse bestreuen, mit Ei bestreichen.", ["Käse", "Ei"]),
    ("fr", "Parsemer de fromage râpé, déglacer au vin blanc.", ["fromage", "vin blanc"]),
    ("it", "Cospargere con formaggio grattugiato, unire olio di sesamo.", ["formaggio", "sesamo"]),
    ("es", "Cubrir con queso rallado y regar con aceite de sésamo.", ["queso", "sésamo"]),
    ("nl", "Schep de room erdoor en bestrooi met gehakte noten.", ["room", "noten"]),
    ("sv", "Rör ner smöret och strö över hackade nötter.", ["smör", "nötter"]),
    ("da", "Rør smørret i og drys med hakkede nødder.", ["smør", "nødder"]),
    ("nb", "Rør inn smøret og vend i strøkavring.", ["smør", "strøkavring"]),
    ("pt", "Junte a manteiga e polvilhe com nozes picadas.", ["manteiga", "nozes"]),
    ("pl", "Posypać tartym serem i obtoczyć w bułce tartej.", ["serem", "bułce tartej"]),
]  # fmt: skip

NOT_NAMED = [
    ("en", "Season with salt and pepper, add a drizzle of oil."),
    ("en", "Spoon it into a butter dish, use an egg timer and a sugar thermometer."),
    ("en", "Roll into balls the size of a walnut; it is as thick as honey, the colour of coffee."),
    ("en", "Serve with cheese and biscuits."),
    ("en", "Do not add butter. You can use almonds instead."),
    ("en", "You can also add walnuts."),
    ("da", "Smør en form og hæld det i. Smør bundene med en ske."),
    ("nb", "Vend brødet ut og avkjøl på rist."),
    ("it", "Deve essere leggermente croccante."),
    ("fr", "Mettre un peu d'extrait de vanille."),
    ("sv", "Skala päronen, låt halva skaftet sitta kvar, det får stå."),
    ("fr", "Mélanger jusqu'à obtenir une crème lisse."),
    ("es", "Batir hasta obtener una mayonesa."),
]


def _questions(language: str, step: str, *listed: str) -> str:
    book, goes_in, method, first = _TONGUES[language]
    rows = "\n".join(listed or ("200 g quinoa",))
    return asked(
        brought(f"A dish\n\n{goes_in}\n{rows}\n\n{method}\n1. {first}\n2. {step}\n", book)[0]
    )


@pytest.mark.parametrize(("language", "step", "words"), NAMED)
def test_what_a_method_puts_in_is_asked_about(language: str, step: str, words: list[str]) -> None:
    said = _questions(language, step)
    assert _ASKS in said
    assert all(word in said.partition(_ASKS)[2] for word in words)


@pytest.mark.parametrize(("language", "step"), NOT_NAMED)
def test_what_is_not_put_in_is_not(language: str, step: str) -> None:
    assert _ASKS not in _questions(language, step)


@pytest.mark.parametrize(
    ("language", "step", "listed"),
    [
        ("en", "Stir in the nuts.", "100 g walnuts"),
        ("en", "Grease the tin with butter.", "100 ml milk"),
        ("sv", "Lägg tillbaka kycklingen.", "4 kycklingbröstfiléer"),
        ("nl", "Snijd de kip.", "300 g kipdijfilet"),
        ("de", "Die Sahne schlagen.", "200 ml Schlagsahne"),
    ],
)
def test_what_the_list_calls_otherwise_is_not(language: str, step: str, listed: str) -> None:
    assert _ASKS not in _questions(language, step, listed)
