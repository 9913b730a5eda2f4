"""Jars of a size, or about so many, alone on a line: how much it makes, in nine languages.

Lines of a judge's second sample of this family (30 November 2026), in the words of cooks' pages.
Expectations written before the code.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, fact, listed, steps

PAPERS = {
    "de_DE": ("Apfelchutney", "500 g Äpfel", "Zutaten", "Zubereitung", "Alles 1 Stunde kochen."),
    "fr_FR": ("Chutney", "500 g de pommes", "Ingrédients", "Préparation", "Cuire le tout 1 heure."),
    "it_IT": ("Chutney", "500 g di mele", "Ingredienti", "Preparazione", "Cuocere tutto 1 ora."),
    "nl_NL": ("Chutney", "500 g appels", "Ingrediënten", "Bereiding", "Kook alles 1 uur."),
    "sv_SE": ("Chutney", "500 g äpplen", "Ingredienser", "Gör så här", "Koka allt i 1 timme."),
    "da_DK": ("Chutney", "500 g æbler", "Ingredienser", "Fremgangsmåde", "Kog alt i 1 time."),
    "nb_NO": ("Chutney", "500 g epler", "Ingredienser", "Fremgangsmåte", "Kok alt i 1 time."),
    "pt_PT": ("Chutney", "500 g de maçãs", "Ingredientes", "Preparação", "Coza tudo 1 hora."),
    "pl_PL": ("Chutney", "500 g jabłek", "Składniki", "Przygotowanie", "Gotować wszystko."),
}
YIELDS = [
    ("de_DE", "4 Gläser à 250 ml"),
    ("fr_FR", "4 pots de 250 g"),
    ("fr_FR", "Cette quantité permet de remplir 4 pots."),
    ("it_IT", "La ricetta è per 4 vasetti."),
    ("nl_NL", "Dit recept is voor 4 potjes."),
    ("sv_SE", "Ca 4 burkar"),
    ("da_DK", "Mængde: 4 glas"),
    ("da_DK", "Opskriften rækker til 4 glas."),
    ("nb_NO", "Ca. 4 glass"),
    ("pt_PT", "4 frascos de 250 g"),
    ("pl_PL", "4 słoiki po 250 ml"),
]


@pytest.mark.parametrize("behind", [False, True])
@pytest.mark.parametrize(("language", "said"), YIELDS)
def test_jars_alone_are_how_much_it_makes(language: str, said: str, behind: bool) -> None:
    title, thing, over_list, over_method, step = PAPERS[language]
    first, last = ("", f"{said}\n") if behind else (f"{said}\n", "")
    text = f"{title}\n\n{over_list}\n{first}{thing}\n\n{over_method}\n{step}\n{last}"
    (recipe,) = brought(text, language)
    assert "4" in fact(recipe, "makes")
    assert listed(recipe) == [thing]
    assert steps(recipe) == [step]


def test_jars_of_a_food_stay_in_the_list() -> None:
    text = "Chutney\n\nZutaten\n2 Gläser Apfelmus\n1 Dose Mais\n\nZubereitung\nAlles mischen.\n"
    (recipe,) = brought(text, "de_DE")
    assert listed(recipe) == ["2 Gläser Apfelmus", "1 Dose Mais"]
