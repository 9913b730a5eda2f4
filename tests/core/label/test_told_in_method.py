"""Foods told only in a method of several sentences, in the languages of the larder: two-sided.

Until 30 November 2026 cheese and oil of sesame were lost wherever a method was long enough to tell
its language, and a word of the list with another ending was a further food.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.shelves import Larder
from stillroom.core.lines.ingredient_food import food_of
from stillroom.core.method.foods_in_method import foods_in_method
from stillroom.core.reading.loading import read_recipe

_FIRST = {
    "en_GB": "Mix it all in a bowl and leave it to stand for an hour.",
    "de_DE": "Alles in einer Schüssel gut mischen und eine Stunde zugedeckt stehen lassen.",
    "fr_FR": "Mélanger le tout dans un saladier et laisser reposer pendant une heure.",
    "it_IT": "Mescolare il tutto in una ciotola e lasciare riposare con il coperchio.",
    "es_ES": "Mezclar todo en un cuenco y dejar reposar durante una hora con la tapa.",
    "nl_NL": "Meng alles in een kom en laat het een uur met het deksel op de kom staan.",
    "sv_SE": "Blanda allt i en skål och låt det stå i en timme under lock på bänken.",
    "da_DK": "Bland det hele i en skål og lad det stå i en time under låg på bordet.",
    "nb_NO": "Bland alt i en bolle og la det stå i en time under lokk på benken.",
    "pl_PL": "Wymieszać wszystko w misce i odstawić na godzinę, aż się połączy.",
}


def told(language: str, step: str, *lines: str, title: str = "A thing") -> set[str]:
    head = "".join(f'  - "{line}"\n' for line in lines or ("200 g quinoa",))
    text = (
        f"---\ntitle: {title}\nkind: bake\nmakes: 500 g\ningredients:\n{head}---\n\n"
        f"## Method\n\n1. {_FIRST[language]}\n2. {step}\n"
    )
    recipe = read_recipe(text, "a.md", "a", larder=Larder(language=language), language=language)
    foods = (food_of(one.ingredient).food for one in foods_in_method(recipe))
    return {food.name for food in foods if food}


@pytest.mark.parametrize(
    ("language", "step", "foods"),
    [
        ("en_GB", "Sprinkle with sugar and bake.", {"granulated sugar"}),
        ("en_GB", "Top with grated cheese and bake.", {"cheese"}),
        ("en_GB", "Add a glass of liqueur.", {"liqueur"}),
        ("en_GB", "Combine the soy sauce, sugar, and cornflour.", {"granulated sugar"}),
        ("en_GB", "Crush the biscuits and mix with melted butter.", {"biscuit", "butter"}),
        ("de_DE", "Mit geriebenem Käse bestreuen.", {"cheese"}),
        ("de_DE", "Mit Sesamöl beträufeln.", {"sesame oil"}),
        ("de_DE", "Mit Salz und Pfeffer würzen.", {"salt", "black pepper"}),
        ("fr_FR", "Parsemer de fromage râpé.", {"cheese"}),
        ("fr_FR", "Ajouter un filet d'huile de sésame.", {"sesame oil"}),
        ("it_IT", "Cospargere con formaggio grattugiato.", {"cheese"}),
        ("es_ES", "Regar con aceite de sésamo.", {"sesame oil"}),
        ("nl_NL", "Bestrooi met geraspte kaas en schep de room erdoor.", {"cheese", "cream"}),
        ("sv_SE", "Ringla över sesamolja och strö över riven ost.", {"sesame oil", "cheese"}),
        ("nb_NO", "Vend i strøkavring og hell over konjakk.", {"breadcrumbs", "cognac"}),
        ("pl_PL", "Posypać cukrem i tartym serem.", {"granulated sugar", "cheese"}),
    ],
)
def test_what_a_method_alone_puts_in_is_found(language: str, step: str, foods: set[str]) -> None:
    found = told(language, step)
    assert all(any(food in one for one in found) for food in foods), found


@pytest.mark.parametrize(
    ("language", "step", "lines"),
    [
        ("da_DK", "Smør en form og hæld dejen i.", ()),
        ("nb_NO", "Vend brødet ut og avkjøl på rist.", ()),
        ("it_IT", "Deve essere leggermente croccante.", ()),
        ("it_IT", "Formare palline grandi come delle noci.", ()),
        ("it_IT", "Versare la farina di noci.", ("150 g noci",)),
        ("fr_FR", "Mélanger jusqu'à obtenir une crème lisse.", ()),
        ("es_ES", "Batir hasta obtener una mayonesa.", ()),
        ("en_GB", "Beat the quinoa to a cream.", ()),
        ("de_DE", "Lauwarm servieren, z. B. mit Vanilleeis.", ()),
        ("sv_SE", "Lägg tillbaka kycklingen.", ("4 kycklingbröstfiléer",)),
        ("sv_SE", "Servera med riven parmesan och ris.", ()),
        ("en_GB", "Chop the red onion.", ("1 onion",)),
        ("sv_SE", "Blanda färsen.", ("500 g köttfärs",)),
        ("pl_PL", "Wyrabiać, aż nie przywiera do rąk.", ()),
        ("pl_PL", "Dodać śmietankę.", ("200 ml śmietanki kremówki",)),
    ],
)
def test_what_only_looks_like_it_is_not(language: str, step: str, lines: tuple[str, ...]) -> None:
    assert told(language, step, *lines) == set()


def test_a_herb_of_the_title_is_told() -> None:
    assert told("it_IT", "Spezzettare il basilico.", "4 carote", title="Carote e basilico") == {
        "basil"
    }


def test_cream_is_told_by_no_cheese() -> None:
    assert told("en_GB", "Stir in the cream.", "200 g feta") == {"cream"}
    assert told("en_GB", "Whip the cream.", "200 ml double cream") == set()


def test_a_meat_of_the_title_is_told() -> None:
    found = told(
        "it_IT", "Dividi a pezzi la pancetta.", "120 g fontina", title="Crostoni e pancetta"
    )
    assert found == {"pancetta"}
