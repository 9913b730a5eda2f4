"""Whole recipes of strangers: what their words bring in, where they stand, how long they wait.

Lines and steps are short facts out of recipes read on 30 November 2026; each case names where it
was. `en` is github:dpapathanasiou/recipes (from allrecipes.com and epicurious.com), `fr`
github:XonqNopp/recettes, `spoon` github:kruchten/spoon.
"""

import pytest

from care_cases import recipe_of
from stillroom.core.allergens.of_foods import contains, know_recipe, law_of, may_contain
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.how_long import known_keeping
from stillroom.core.label.labelling import label_recipe
from stillroom.core.larder.nearest import nearest_foods
from stillroom.core.larder.shelves import common_larder
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.recipe.model import Recipe

BOOK = BookSettings()


def made(kind: str, ingredients: list[str], *method: str, title: str = "Thing") -> Recipe:
    return recipe_of(
        {"title": title, "kind": kind, "ingredients": ingredients, "method": list(method)}
    )


def rules_of(recipe: Recipe) -> set[str]:
    box = assess_safety(recipe, BOOK)
    return {one.rule for one in (*box.refusals, *box.cautions)}


@pytest.mark.parametrize(
    ("kind", "title", "list_", "method", "bring_in"),
    [
        # en index/n/nellies-favorite-eggnog, index/m/mushroom-hazelnut-pate: the thing itself
        ("infusion", "Nellie's Favorite Eggnog", ["200 ml rum", "200 g sugar"],
         "Pour eggnog into a punch bowl.", set()),
        ("preserve", "Mushroom Hazelnut Pate", ["450 g mushrooms", "140 g hazelnuts"],
         "Pulse until pate is fairly thick and brownish-gray in color.", set()),
        ("dry mix", "Light Nut Granola", ["200 g pecans"], "Spread the granola on a sheet.", set()),
        ("preserve", "Courgette pesto", ["450 g courgettes"], "Stir in the pesto.", {"milk"}),
        # en index/o/oatmeal-peanut-butter-cookies: a verb
        ("bake", "Cookies", ["100 g shortening", "100 g sugar"],
         "In a large bowl, cream together shortening and sugar.", set()),
        ("confection", "Fudge", ["100 g chocolate", "100 g sugar"],
         "Heat the sugar, then melt the chocolate and cream together.", {"milk"}),
        # spoon _posts/2014-06-22: a pot; blockchainfo.cz dulce de membrillo: "pass it"
        ("preserve", "Confiture", ["2 kg de framboises", "1.8 kg de sucre"],
         "Mettre les fruits et le sucre dans une très grande marmite.", set()),
        ("preserve", "Dulce", ["1 kg de membrillos", "800 g de azúcar"],
         "Pasa la mezcla por un tamiz y coloca el puré en una cacerola con el azúcar.", set()),
    ],
)  # fmt: skip
def test_a_method_brings_in_only_what_goes_in(
    kind: str, title: str, list_: list[str], method: str, bring_in: set[str]
) -> None:
    own = contains(know_recipe(made(kind, list_, "Mix.", title=title)), law_of("GB"))
    known = know_recipe(made(kind, list_, method, title=title))
    found = {one.name for one in contains(known, law_of("GB"))} - {one.name for one in own}
    assert found == bring_in
    assert not {one.name for one in may_contain(known, law_of("GB"))} & {"fish", "celery"}


@pytest.mark.parametrize(
    ("kind", "list_", "method", "never"),
    [
        # hoy.com.do, licor de manzana: "el alcohol" is the rum
        ("infusion", ["1 litro de ron", "500 g de azúcar"],
         "Échalo en un tarro con el alcohol y el azúcar. Deja macerar un mes.", "alcohol"),
        ("infusion", ["1 l vodka", "300 g sugar", "300 ml water"],
         "Add the sugar syrup to the vodka.", "syrup"),
        # thueringenschmeckt.de, Eierlikör: the seeds are the pod's
        ("infusion", ["250 ml Korn", "1 Vanilleschote", "250 g Puderzucker"],
         "Die Vanilleschote auskratzen und das Vanillemark mit dem Korn mischen.", "Vanillemark"),
        ("preserve", ["1 kg de membrillos", "500 g de azúcar", "1 limón"],
         "Agrega el jugo de limón y cocina todo 30 minutos.", "jugo"),
        # fr cuisine/biscuits_etoiles_a_la_cannelle
        ("bake", ["2 blancs d'oeufs", "300 g amandes moulues"],
         "Réserver 15 g pour le glaçage. Cuire 20 min au four à 140°C.", "pour le"),
    ],
)  # fmt: skip
def test_what_is_made_of_the_list_is_not_listed_again(
    kind: str, list_: list[str], method: str, never: str
) -> None:
    contents = [one.whole for one in label_recipe(made(kind, list_, method), BOOK).contents]
    assert not [text for text in contents if never in text]


@pytest.mark.parametrize(
    ("kind", "words", "place", "keeps"),
    [
        # en index/c/charred-spring-onion-…-butter, index/s/spiced-kumquat-chutney
        ("preserve", "Butter can be made 1 week ahead. Cover and chill. Bring to room temperature "
         "before using.", "fridge", "1 week"),
        ("preserve", "Cover and store in refrigerator. (Chutney can be prepared 2 weeks ahead.)",
         "fridge", "2 weeks"),
        ("bake", "Stollen can be prepared up to 1 day ahead. Wrap and store at room temperature.",
         "room", "1 day"),
        ("preserve", "The jam can be made in advance.", "room", "1 year"),
        # en index/l/lazy-housewife-pickles, index/o/oi-sobagi, index/r/rosemary-garlic
        ("preserve", "Cover with lids and refrigerate for 1 week before opening.", "fridge", ""),
        ("ferment", "Let sit 1 to 2 days; refrigerate until ready to serve.", "fridge", ""),
        ("infusion", "Refrigerate until flavors infuse, at least 1 week.", "fridge", ""),
        ("infusion", "Refrigerate for 2 weeks, then strain and bottle. Keep in a cupboard.",
         "room", ""),
        ("confection", "Refrigerate until set. Cut into squares.", "room", ""),
        ("infusion", "Strain and bottle. Chill before serving.", "room", ""),
        # sarajohanna.se knäck; blockchainfo.cz dulce de membrillo
        ("confection", "Låt stelna och förvara i kyl.", "fridge", ""),
        ("confection", "Ställ i kylen tills den stelnat. Skär i bitar.", "room", ""),
        ("preserve", "Deja que se enfríe antes de almacenarlo en la nevera.", "fridge", ""),
        ("preserve", "Deja en la nevera dos horas antes de servir.", "room", ""),
        ("infusion", "Gut gekühlt servieren.", "room", ""),
        ("preserve", "Keeps 6 months, 4 wk open in fridge.", "room", "6 months"),
    ],
)  # fmt: skip
def test_where_it_stands_and_how_long(kind: str, words: str, place: str, keeps: str) -> None:
    recipe = made(kind, ["500 g strawberries", "300 g sugar"], "Boil it.", words)
    assert kept_at(recipe) == place
    assert not keeps or str(known_keeping(recipe).unopened) == keeps


def test_a_length_beside_open_is_of_the_opened_thing() -> None:
    recipe = made(
        "preserve", ["500 g plums", "300 g sugar"], "Keeps 6 months, 4 wk open in fridge."
    )
    assert str(recipe.keeps.opened) == "4 weeks"


@pytest.mark.parametrize(
    ("kind", "list_", "method", "rule", "told"),
    [
        # beffilicious.de/rezept/166; atv-levenslust.nl; welovehandmade.at
        ("preserve", ["1 kg Zwetschken", "500 g Gelierzucker"],
         "Heiß in Gläser füllen und 8 Minuten auf den Deckel stellen.", "inverted-jars", True),
        ("preserve", ["900 g pruimen", "450 g suiker"],
         "Sluit de potjes meteen en zet ze een kwartiertje op z'n kop.", "inverted-jars", True),
        ("preserve", ["1 kg Zwetschken", "500 g Gelierzucker"],
         "Die Gläser zum Abtropfen auf den Kopf stellen. Dann füllen.", "inverted-jars", False),
        # the egg of a liqueur that thickens over hot water, and one that only foams
        ("infusion", ["8 Eigelb", "250 g Puderzucker", "250 ml Korn"],
         "Eigelb mit Puderzucker über dem heißen Wasserbad schlagen, bis die Masse dickt.",
         "raw-egg", False),
        ("infusion", ["8 Eigelb", "250 g Puderzucker", "250 ml Korn"],
         "Eigelb mit Puderzucker über dem Wasserbad schaumig schlagen.", "raw-egg", True),
        # sempreverde.net, liquore alla menta: "all'alcool" is no "all"
        ("infusion", ["1 l alcool a 90 gradi", "1 kg di zucchero", "1 l di acqua"],
         "Far bollire l'acqua con lo zucchero, lasciar raffreddare ed aggiungere all'alcool.",
         "spirit-heated", False),
        ("infusion", ["1 l Rum", "500 g Zucker", "500 ml Wasser"],
         "Zucker und Wasser aufkochen, abkühlen lassen, den Rum zugeben und nochmals erhitzen.",
         "spirit-heated", True),
        # fr cuisine/caramels_mous
        ("confection", ["800 g lait condensé sucré", "600 g sucre", "160 g beurre"],
         "Mélanger le tout et cuire à feu moyen en remuant continuellement pendant 30 minutes.",
         "boiling-sugar", True),
        # biolicious.org: bought chilli paste is on nobody's hands
        ("preserve", ["1 kg pruimen", "40 g sambal", "300 g suiker"], "Koken.", "chilli", False),
        # en index/l/light-fruit-and-nut-granola, index/v/venison-jerky
        ("preserve", ["1 kg ground venison", "2 tsp sugar-based curing mixture"], "Dry it.",
         "curing-salt", True),
    ],
)  # fmt: skip
def test_what_the_box_says(kind: str, list_: list[str], method: str, rule: str, told: bool) -> None:
    assert (rule in rules_of(made(kind, list_, method))) is told


def test_flour_in_a_baked_granola_is_not_raw() -> None:
    lines = ["200 g rolled oats", "60 g spelt flour", "50 ml oil"]
    steps = ("Toss it all together.", "Bake for 20 minutes, stir, then bake for another 15.")
    assert "raw-flour" not in rules_of(made("dry mix", lines, *steps, title="Nut Granola"))
    assert "raw-flour" in rules_of(made("dry mix", lines, "Layer it in a jar.", title="Oat mix"))


@pytest.mark.parametrize(
    ("kind", "method", "stages"),
    [
        # en index/r/raspberry-infused-vodka
        ("infusion", "Allow mixture to sit, stirring for 10 to 15 minutes each day, for 5 to 6 "
         "days. Strain.", "stir 5-6 days"),
        ("infusion", "Over the next 10 days shake it daily. Strain.", "shake 10 days"),
        # a cordial that stands for a day is no liqueur of two months
        ("infusion", "Add the lemons. Leave 24 hours, strain and bottle.", "rest 24 hours"),
        ("infusion", "Steep for two days.", "shake 2 weeks"),
        # atv-levenslust.nl; and kept before it is eaten
        ("preserve", "Na 6 weken is de chutney op volle smaak.", "best from 6 weeks"),
        ("preserve", "Nach 4 Wochen schmeckt das Chutney am besten.", "best from 4 weeks"),
        ("preserve", "Keep in the dark for 6 weeks, then eat.", "rest 6 weeks"),
        ("preserve", "Keep in the dark for 6 weeks.", "usable from 1 day"),
    ],
)  # fmt: skip
def test_waits(kind: str, method: str, stages: str) -> None:
    recipe = made(kind, ["1 l vodka", "500 g raspberries"], method)
    told = [f"{one.word} {one.lasts or one.age}" for one in recipe.stages]
    assert stages in told


@pytest.mark.parametrize(
    ("words", "place"),
    [
        # en index/p/pickled-watermelon-rinds, index/r/rhubarb-ginger-jam
        ("Let cool. Store in a cool, dark place. Refrigerate any unsealed jars.", "room"),
        ("If a jar has not sealed, refrigerate it and eat it within two weeks.", "room"),
        ("Seal and refrigerate.", "fridge"),
    ],
)
def test_a_jar_that_did_not_seal_is_not_what_is_given(words: str, place: str) -> None:
    recipe = made("preserve", ["1 kg plums", "1 kg sugar"], "Boil to a set and fill jars.", words)
    assert kept_at(recipe) == place
    assert str(known_keeping(recipe).unopened) == ("1 year" if place == "room" else "1 month")


def test_whose_make_it_is_brings_in_no_food() -> None:
    # en index/d/dark-beer-syrup: the brewery is called after an island of geese
    lines = ["350 ml dark beer (such as Goose Island® Oktoberfest)", "350 g sugar"]
    assert "animal-food-sealed" not in rules_of(made("preserve", lines, "Simmer it to a syrup."))


@pytest.mark.parametrize(
    ("kind", "lines", "steps", "rule", "told"),
    [
        ("preserve", ["1 kg tomatoes", "4 anchovies", "100 ml vinegar", "2 onions"],
         "Cook for an hour. Keep in the fridge for 4 weeks.", "keeps-too-long", False),
        ("preserve", ["500 g anchovies", "100 ml vinegar"],
         "Cook for an hour. Keep in the fridge for 4 weeks.", "keeps-too-long", True),
        ("infusion", ["500 g fresh elderberries or dried", "1 l vodka"], "Steep.", "foraged", True),
        ("infusion", ["100 g dried elderberries", "1 l vodka"], "Steep.", "foraged", False),
        # fr cuisine/biscuits_aux_epices: "au milieu du four" bakes
        ("bake", ["250 g farine", "2 oeufs", "150 g beurre"],
         "Ajouter les oeufs. Mettre au milieu du four à 160°C pendant 15 minutes.", "raw-egg",
         False),
    ],
)  # fmt: skip
def test_what_the_box_says_of_a_little(
    kind: str, lines: list[str], steps: str, rule: str, told: bool
) -> None:
    assert (rule in rules_of(made(kind, lines, steps))) is told


def test_what_is_not_known_is_named_once() -> None:
    looked = assess_safety(made("preserve", ["1 kg plums", "1 kg gurdles"], "Boil."), BOOK).looked
    found = [one.found for one in looked if one.answer == "could not be told"]
    assert sum("gurdles" in text for text in found) == 1
    assert set(found[1:]) == {"for the same reason"}


def test_a_word_of_three_letters_is_near_nothing() -> None:
    larder = common_larder()
    assert nearest_foods("bar", larder) == nearest_foods("tom", larder) == ()
    assert nearest_foods("honney", larder) == ("honey",)


def test_magnesia_has_no_milk() -> None:
    known = know_recipe(made("dry mix", ["500 g sugar", "2 tbsp milk of magnesia"], "Mix."))
    assert not contains(known, law_of("GB"))
    assert "fish" not in {
        one.name
        for one in may_contain(
            know_recipe(made("preserve", ["2 tbsp hoisin sauce"], "Mix.")), law_of("GB")
        )
    }


def test_consumiamo_entro_is_a_keeping() -> None:
    # cucinafunzionale.it, confettura di fichi e peperoncino
    words = "Quando saranno freddi riponiamo in dispensa e consumiamo entro 12 mesi."
    recipe = made("preserve", ["1 kg di fichi", "500 g di zucchero"], "Cuocere.", words)
    assert str(known_keeping(recipe).unopened) == "12 months"
