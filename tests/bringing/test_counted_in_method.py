"""What a method counts and no list has is asked about: an egg, the juice of a lemon, a handful.

Two-sided. The sentences of the first table are cut from methods of open recipe collections
(family books of ten languages) and of letters; the lists are made.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought

_TONGUES = {
    "en": ("en_GB", "Ingredients", "Method", "200 g quinoa"),
    "de": ("de_DE", "Zutaten", "Zubereitung", "200 g Quinoa"),
    "fr": ("fr_FR", "Ingrédients", "Préparation", "200 g quinoa"),
    "it": ("it_IT", "Ingredienti", "Preparazione", "200 g quinoa"),
    "es": ("es_ES", "Ingredientes", "Preparación", "200 g quinoa"),
    "nl": ("nl_NL", "Ingrediënten", "Bereiding", "200 g quinoa"),
    "sv": ("sv_SE", "Ingredienser", "Gör så här", "200 g quinoa"),
    "da": ("da_DK", "Ingredienser", "Fremgangsmåde", "200 g quinoa"),
    "nb": ("nb_NO", "Ingredienser", "Fremgangsmåte", "200 g quinoa"),
    "pt": ("pt_PT", "Ingredientes", "Modo de preparo", "200 g quinoa"),
}
_ASKS = "The method measures what the list does not have: "

COUNTED = [
    ("en", "Add 1 egg, 1 egg yolk and mix.", ["1 egg", "1 egg yolk"]),
    ("en", "Beat in an egg and 3 egg whites.", ["an egg", "3 egg whites"]),
    ("en", "Crack an egg into each indentation and season.", ["an egg"]),
    ("en", "Whisk 3 egg yolks in a large bowl.", ["3 egg yolks"]),
    ("en", "Stir in a handful of almonds and the juice of a lemon.",
     ["a handful of almonds", "the juice of a lemon"]),
    ("en", "Squeeze the juice from one lemon over the cubes.",
     ["Squeeze the juice from one lemon"]),
    ("en", "Add a handful of tarragon and stir.", ["a handful of tarragon"]),
    ("en", "Fold in half a cup of walnuts, a stick of butter and three anchovies.",
     ["half a cup of walnuts", "a stick of butter", "three anchovies"]),
    ("en", "Melt a knob of butter in a pan and stir it in.", ["a knob of butter"]),
    ("de", "2 EL Öl, 1 Ei und eine Handvoll Mandeln unterrühren.",
     ["2 EL Öl", "1 Ei", "eine Handvoll Mandeln"]),
    ("de", "Mit zwei Lorbeerblättern und vier Pimentkörnern in einen Topf geben.",
     ["zwei Lorbeerblätter", "vier Pimentkörner"]),
    ("fr", "Ajouter progressivement 2 oeufs et les 4 jaunes d'oeuf.",
     ["2 oeufs", "4 jaunes d'oeuf"]),
    ("fr", "Ajouter un œuf et une poignée d'amandes.", ["un œuf", "une poignée d'amandes"]),
    ("it", "Unire un uovo, due tuorli e il succo di un limone.",
     ["un uovo", "due tuorli", "il succo di un limone"]),
    ("es", "Disuelve la levadura y una cucharada de azúcar con un huevo.",
     ["una cucharada de azúcar", "un huevo"]),
    ("nl", "Pel en snij 2 uien fijn, verhit een klontje roomboter.",
     ["2 uien", "een klontje roomboter"]),
    ("sv", "Rör ner ett ägg och 0,5 tsk salt.", ["ett ägg", "0,5 tsk salt"]),
    ("da", "Slå 1 æg ud i skålen, og giv det et fed hvidløg.", ["1 æg", "et fed hvidløg"]),
    ("nb", "Tilsett et egg og en håndfull mandler.", ["et egg", "en håndfull mandler"]),
    ("pt", "Coloque uma pitada de canela e bata 2 ovos ligeiramente.",
     ["uma pitada de canela", "2 ovos"]),
]  # fmt: skip

OF_THE_LIST = [
    ("en", ["3 eggs"], "Whisk 2 egg yolks, beat 3 egg whites stiff. Add an egg at a time."),
    ("en", ["2 lemons"], "Add the juice of a lemon and the zest of 1 lemon."),
    ("en", ["200 ml lemon juice"], "Squeeze in the juice of 1 lemon."),
    ("en", ["2 lb flour"], "Grease a tin with a knob of butter. Bake 1 hour. Fill 2 jars, 1 pan."),
    ("en", ["500 g plums"], "Pour into 3 honey jars with a spoon. Cook 1 hour to a thick syrup."),
    ("en", ["500 g plums"], "Roll into balls the size of a walnut. Use an apple corer."),
    ("en", ["500 g plums"], "Stand a sugar thermometer in it. Shape 20 almond-sized pieces."),
    ("en", ["200 g salt"], "Make a brine strong enough to float an egg. A fresh egg should float."),
    ("en", ["1 kg beetroot"], "Serve with a boiled egg, a slice of bread or a spoonful of cream."),
    ("en", ["1 kg onions"], "Peel 1 onion at a time. If too thick, add a splash of water."),
    ("en", ["1 vanilla pod", "500 ml vodka"], "Split 1 vanilla bean. Add a splash of vodka."),
    ("de", ["3 Eier"], "2 Eigelb schlagen. Ein Ei nach dem anderen zugeben."),
    ("de", ["2 Zitronen"], "Den Saft einer Zitrone und die Schale einer Zitrone zugeben."),
    ("de", ["1 kg Pflaumen"], "In 6 Gläser füllen. Eine Stunde in einem Topf mit 1 Löffel rühren."),
    ("fr", ["3 œufs"], "Battre 2 jaunes d'œufs. Ajouter un œuf à la fois dans 4 pots à confiture."),
    ("it", ["3 uova"], "Sbattere 2 tuorli. Unire un uovo alla volta. Formare una crema."),
    ("es", ["3 huevos"], "Batir 2 yemas. Añadir un huevo cada vez. Llenar 3 botes de miel."),
    ("nl", ["3 eieren"], "Klop 2 eierdooiers. Voeg een ei per keer toe."),
    ("sv", ["3 ägg"], "Vispa 2 äggulor. Tillsätt ett ägg i taget i en kastrull."),
    ("da", ["3 æg"], "Pisk 2 æggeblommer. Tilsæt et æg ad gangen i en gryde."),
    ("nb", ["3 egg"], "Pisk 2 eggeplommer. Tilsett ett egg om gangen i en kjele."),
    ("pt", ["3 ovos"], "Bater 2 gemas. Juntar um ovo de cada vez."),
]  # fmt: skip


def _asked_of(tongue: str, listed: list[str], said: str) -> str:
    language, foods, method, first = _TONGUES[tongue]
    rows = "\n".join(f"- {row}" for row in (first, *listed))
    (recipe,) = brought(f"Quinoa\n\n{foods}\n\n{rows}\n\n{method}\n\n1. {said}\n", language)
    told = asked(recipe)
    return told.split(_ASKS)[1].split(". ")[0].rstrip(".") if _ASKS in told else ""


@pytest.mark.parametrize(("tongue", "said", "named"), COUNTED, ids=[one[1] for one in COUNTED])
def test_what_is_counted_and_not_listed_is_named(tongue: str, said: str, named: list[str]) -> None:
    assert set(_asked_of(tongue, [], said).strip('"').split('", "')) == set(named)


@pytest.mark.parametrize(
    ("tongue", "listed", "said"), OF_THE_LIST, ids=[one[2] for one in OF_THE_LIST]
)
def test_what_the_list_has_or_is_no_food_is_not(tongue: str, listed: list[str], said: str) -> None:
    assert _asked_of(tongue, listed, said) == ""


def test_of_a_dry_mix_the_egg_of_whoever_bakes_it_is_named() -> None:
    # saved page of a biscuit mix in a jar: the butter and the water were named, the eggs were not
    text = (
        "Biscuits in a Jar\n\nIngredients\n\n2 cups plain flour\n1 tsp baking powder\n"
        "1/2 cup white sugar\n\nMethod\n\n1. Layer it all in the jar. To the label add the "
        "following.\n2. Beat 175g butter until light, add 1 egg, 1 egg yolk, the contents of the "
        "jar and 2 tbsp hot water.\n"
    )
    (recipe,) = brought(text)
    told = asked(recipe)
    for food in ('"175g butter"', '"2 tbsp hot water"', '"1 egg"', '"1 egg yolk"'):
        assert food in told
