"""Honey in what is said to suit children under one is refused; a warning of it is none.

Honey is not for infants under a year: NHS, Foods to avoid giving babies and young children; CDC,
Foods and drinks to avoid or limit. The sentences are ours.
"""

from __future__ import annotations

import pytest

from care_cases import rules_of_text


def rules_of(said: str) -> frozenset[str]:
    return rules_of_text(
        "---\ntitle: Oat bars\nkind: bake\nmakes: 12 biscuits\ningredients:\n  - 200 g oats\n"
        f"  - 100 g honey\n---\n\n{said}\n\n## Method\n\n1. Mix and bake.\n"
    )


@pytest.mark.parametrize(
    "said",
    [
        "For children under one too.",
        "It is suitable for children under 12 months.",
        "Good for babies under one.",
        "Made for kids under 1 year.",
        "For children under one.",
        "Ab 8 Monaten.",
        "Dès 6 mois.",
        "À partir de huit mois.",
        "Dai 6 mesi.",
        "Desde los 6 meses.",
        "Vanaf 8 maanden.",
        "Från 6 månader.",
        "Fra 8 måneder.",
        "A partir dos 6 meses.",
        "Od 6 miesiąca.",
        "Suitable for under-ones.",
        "For under ones.",
        "A first treat for little ones under 12 months.",
        "Even the under-1s love them.",
        "Geeignet für Kinder unter einem Jahr.",
        "Auch für unter Einjährige.",
        "Pour les enfants de moins d'un an.",
        "Convient aux enfants de moins de 12 mois.",
        "Adatto ai bambini sotto l'anno.",
        "Per bambini sotto i 12 mesi.",
        "Apto para niños menores de un año.",
        "Geschikt voor kinderen onder het jaar.",
        "Ook voor kinderen onder één jaar.",
        "Passar barn under ett år.",
        "Velegnet til børn under et år.",
        "Egnet for barn under 1 år.",
        "Adequado para crianças com menos de um ano.",
        "Dla dzieci poniżej roku.",
        "Odpowiednie dla dzieci do 1 roku życia.",
    ],
)
def test_what_suits_them_is_refused(said: str) -> None:
    assert "honey-for-infants" in rules_of(said)


@pytest.mark.parametrize(
    "said",
    [
        "Not suitable for children under one.",
        "Unsuitable for children under one.",
        "Honey is dangerous for children under one.",
        "For children under one, leave out the honey.",
        "Keep away from children under one.",
        "Fine for children under 10.",
        "A treat for children under twelve.",
        "Not for under-ones.",
        "Good to know: children under one can fall ill from honey.",
        "Auch gut gekocht macht Honig Kinder unter einem Jahr krank.",
        "Reif ab 6 Monaten.",
        "Se conserve 6 mois, à partir de 8 mois prêt.",
        "Od 6 miesięcy dojrzewa.",
        "Ab 18 Monaten.",
        "Honey: never for children under one.",
        "Contains honey: for children under one use sugar.",
        "Suitable for children under one if you leave out the honey.",
        "Fine for the under-10s.",
        "Suitable for children over one.",
        "Nicht für Kinder unter einem Jahr geeignet.",
        "Für Kinder unter einem Jahr ungeeignet.",
        "Enthält Honig, gefährlich für Kinder unter einem Jahr.",
        "Ne convient pas aux enfants de moins d'un an.",
        "Déconseillé aux enfants de moins de 1 an.",
        "Non adatto ai bambini sotto l'anno.",
        "No apto para menores de un año.",
        "Niet geschikt voor kinderen onder het jaar.",
        "Passar inte barn under ett år.",
        "Ikke til børn under et år.",
        "Ikke egnet for barn under ett år.",
        "Não dar a crianças com menos de um ano.",
        "Nie dla dzieci poniżej roku.",
        "Miodu nie podawać dzieciom do 1 roku życia.",
    ],
)
def test_a_warning_and_older_children_are_only_cautioned(said: str) -> None:
    rules = rules_of(said)
    assert "honey-for-infants" not in rules
    assert "honey-infants" in rules
