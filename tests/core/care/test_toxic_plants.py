"""Poisonous plants are known by the names people type, and nothing innocent is taken for one."""

from __future__ import annotations

from hashlib import sha256

import pytest

from stillroom.core.care.safety_facts import SafetyFacts, gather_facts
from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.model import Recipe

POISONOUS = [
    name
    for line in (
        "rue|dried rue|herb of grace|Rosskastanien|Narzissen|Tollkirschen|Christrosen|Fliegenpilze",
        "lily of the valley|convallaria|Maiglöckchen|muguet|foxglove flowers|digitalis purpurea",
        "Fingerhutblüten|digitale pourpre|yew berries|taxus baccata|Eibe|oleander flowers",
        "laurier-rose|monkshood|aconitum napellus|Eisenhut|aconit|delphinium|larkspur|Rittersporn",
        "deadly nightshade|Tollkirsche|belladone|bella donna|black nightshade|morelle noire",
        "woody nightshade|henbane|Bilsenkraut|jusquiame|hemlock|conium maculatum|Schierling|ciguë",
        "cowbane|Wasserschierling|water dropwort|giant hogweed|Riesenbärenklau|meadow saffron",
        "colchicum autumnale|Herbstzeitlose|colchique|false hellebore|vératre|castor beans",
        "ricinus communis|Goldregen|cytise|angel's trumpet|Engelstrompete|datura|Stechapfel",
        "azalea flowers|rhododendron|cherry laurel|Kirschlorbeer|daffodils|jonquille|Narzisse",
        "snowdrop|Schneeglöckchen|perce-neige|bluebells|tulip bulbs|Tulpenzwiebel|christmas rose",
        "Christrose|cuckoo-pint|Aronstab|Pfaffenhütchen|privet berries|troène|holly berries",
        "Stechpalme|baies de houx|mistletoe|viscum album|ivy leaves|Efeu|poinsettia|rhubarb leaves",
        "feuilles de rhubarbe|Rhabarberblätter|tomato leaves|green potatoes|elder bark",
        "Holunderblätter|pennyroyal|menthe pouliot|tansy|Rainfarn|ruta graveolens|wormwood oil",
        "Japanese star anise|sweet pea flowers|Duftwicke|lupin flowers|wisteria|Blauregen",
        "hydrangea flowers|Hortensie|lantana|buttercup flowers|Akelei|pokeberries|Seidelbast",
        "Faulbaumrinde|conkers|marrons d'inde|death cap|amanita phalloides|Knollenblätterpilz",
        "amanite phalloïde|Fliegenpilz|false morel|deadly webcap",
    )
    for name in line.split("|")
]

EDIBLE = [
    name
    for line in (
        "peas|elderflowers|elderflower cordial|cherries|rhubarb|rhubarb stalks|tomatoes|potatoes",
        "sweet potatoes|borage flowers|pansies|violets|nasturtium flowers|rose petals",
        "lavender|star anise|bay leaves|jam sugar|castor sugar|saffron|garlic|wild garlic|carrots",
        "parsnips|parsley|button mushrooms|morels|hibiscus flowers|chamomile|dried apricots",
        "blackberries|bilberries|juniper berries|sea buckthorn|brown sugar|Holunderblüten|Kirschen",
        "fraises|marrons|vine leaves|buttercup squash|lupin flour|poppy seeds|kidney beans|ginger",
        "mint",
    )
    for name in line.split("|")
]

HARMLESS_WORDS = [
    "Cut the dough with a holly leaf cutter.",
    "Stir with a yew spoon.",
    "Sweeten it with ivy honey.",
    "Use a thimble, ein Fingerhut, of rum.",
    "Roll it out with a broom handle.",
    "Pour it into a tulip glass.",
    "Dust the stars, Weihnachtsstern und Mond.",
    "Stir on the balance digitale.",
    "Add the lemon rue de la paix style.",
    "Scatter elderflowers over it.",
    "Fold in the frozen peas.",
    "Stew the rhubarb and cherries.",
]


def facts_of(item: str, step: str = "Mix.") -> SafetyFacts:
    return gather_facts(_recipe(item, step), None, ())


def _recipe(item: str, step: str) -> Recipe:
    text = (
        "---\ntitle: Something to give\nmakes: 1 kg\nkind: bake\n"
        f'ingredients:\n  - "20 g {item}"\n---\n\n## Method\n\n1. {step}\n'
    )
    # a name of its own: recipes are found again by their names, and to compare them takes long
    name = f"case-{sha256(text.encode()).hexdigest()[:12]}"
    return read_recipe(text, f"recipes/{name}.md", name)


@pytest.mark.parametrize("name", POISONOUS)
def test_a_poison_is_known_by_the_name_that_is_typed(name: str) -> None:
    assert facts_of(name).tagged(["toxic"])


@pytest.mark.parametrize("name", POISONOUS)
def test_a_poison_that_only_the_method_names_is_seen(name: str) -> None:
    assert facts_of("flour", f"Lay {name} beside it.").toxic_in_method()


@pytest.mark.parametrize("name", EDIBLE)
def test_a_food_is_no_poison(name: str) -> None:
    assert not facts_of(name).tagged(["toxic"])
    assert not facts_of("flour", f"Strew {name} on it.").toxic_in_method()


@pytest.mark.parametrize("step", HARMLESS_WORDS)
def test_an_innocent_sentence_names_no_poison(step: str) -> None:
    assert facts_of("flour", step).toxic_in_method() == ()
