"""What stands in a contents list and in which order: water of a syrup, either of two foods, counts.

Reg. (EU) No 1169/2011 Annex VII A 1 for added water. The syrups, liqueurs and lines are those of a
newcomer's trial and of martinanardi.com (nocino), 30 November 2026.
"""

import pytest

from care_cases import recipe_of
from stillroom.core.batch.preserves import solids_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe
from stillroom.core.recipe.model import Recipe
from stillroom.core.size.ovens import heat_lines


def made(kind: str, title: str, list_: list[str], method: str, makes: str = "1 kg") -> Recipe:
    return recipe_of(
        {"title": title, "kind": kind, "ingredients": list_, "method": [method], "makes": makes}
    )


def contents_of(recipe: Recipe) -> list[str]:
    return [one.whole for one in label_recipe(recipe, BookSettings()).contents]


@pytest.mark.parametrize(
    ("title", "list_", "method", "makes", "contents"),
    [
        ("Elderberry cordial", ["1 kg elderberries", "1 l water", "600 g sugar"],
         "Simmer the berries, strain through muslin, add the sugar, boil and bottle.", "1.2 l",
         ["elderberries", "sugar", "water"]),
        ("Blackcurrant cordial", ["1 kg blackcurrants", "600 ml water", "500 g sugar"],
         "Simmer, strain, add the sugar, boil and bottle.", "1.2 l",
         ["blackcurrants", "sugar", "water"]),
        # never boiled: nothing went off as steam
        ("Lemon squash", ["1 kg sugar", "1 l cold water", "6 lemons"],
         "Stir the sugar into the cold water. Add the lemons. Leave a day and strain.", "1.5 l",
         ["sugar", "water", "lemons"]),
        # what was boiled away of a jam is not named, nor of what is only pushed through a sieve
        ("Plum jam", ["1 kg plums", "300 ml water", "1 kg sugar"], "Boil to a set and pot.",
         "1.7 kg", ["plums", "sugar"]),
        ("Damson cheese", ["1.4 kg damsons", "300 ml water", "1.4 kg sugar"],
         "Boil, push through a sieve, boil to a set and pot.", "2 kg", ["damsons", "sugar"]),
    ],
)  # fmt: skip
def test_water_that_is_still_in_it(
    title: str, list_: list[str], method: str, makes: str, contents: list[str]
) -> None:
    assert contents_of(made("preserve", title, list_, method, makes)) == contents


@pytest.mark.parametrize(
    ("kind", "list_", "contents"),
    [
        ("infusion", ["1 l Korn", "300 g Zucker", "3 Nelken", "20 grüne Walnüsse"],
         ["Korn", "Zucker", "infused with grüne Walnüsse (walnut)", "Nelken"]),
        ("preserve", ["3 cloves", "1 bunch dill", "500 ml vinegar", "10 onions", "2 heads cabbage"],
         ["cabbage", "onions", "vinegar", "dill", "cloves"]),
    ],
)  # fmt: skip
def test_what_is_counted_has_about_its_place(
    kind: str, list_: list[str], contents: list[str]
) -> None:
    assert contents_of(made(kind, "Thing", list_, "Mix it.")) == contents


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("500 ml milk (or oat milk)", "milk or oat milk"),
        ("100 g Butter (oder Margarine)", "Butter oder Margarine (milk)"),
        ("3 apples (or pears if you have them)", "apples or pears"),
        ("500 ml cider vinegar (or 2 tbsp fish sauce)", "cider vinegar or fish sauce"),
        ("100 g sugar (or to taste)", "sugar"),
        ("2 eggs (or 3 small)", "eggs"),
        # what no book knows is either of the two as well; what says how much or how is neither
        ("100 g butter (or vegan block)", "butter or vegan block (milk)"),
        ("100 g butter, softened (or vegan block)", "butter or vegan block (milk)"),
        ("300 ml milk, warmed (or oat milk)", "milk or oat milk"),
        ("100 g Butter (oder vegane Alternative)", "Butter oder vegane Alternative (milk)"),
        ("100 g beurre (ou margarine végétale)", "beurre ou margarine végétale (milk)"),
        ("2 eggs (or flax eggs)", "eggs or flax eggs"),
        ("100 g butter (or more)", "butter (milk)"),
        ("100 g butter (or salted)", "butter (milk)"),
        ("100 g butter (or one block)", "butter (milk)"),
        ("100 g raisins, chopped, or whole", "raisins"),
        ("100 g frooble (or more)", "frooble"),
        ("200 g nuts, toasted or not (or seeds)", "nuts or seeds"),
    ],
)
def test_either_of_two_foods_is_said(line: str, said: str) -> None:
    assert contents_of(made("bake", "Thing", [line], "Mix and bake."))[0] == said


@pytest.mark.parametrize(
    ("title", "list_", "judged"),
    [
        ("Plum jam", ["1 kg plums", "1 kg sugar"], True),
        ("Zwetschkenmarmelade", ["1 kg Zwetschken", "500 g Zucker"], True),
        ("Pickled gherkins", ["2 kg cucumbers", "200 g sugar"], False),
        ("Blackcurrant cordial", ["1 kg blackcurrants", "500 g sugar"], False),
        ("Milk jam", ["1 l milk", "300 g sugar"], False),
    ],
)
def test_a_jam_alone_is_held_against_the_sugar_of_a_jam(
    title: str, list_: list[str], judged: bool
) -> None:
    assert (solids_of(made("preserve", title, list_, "Boil it.")) is not None) is judged


def test_a_milk_jam_is_no_cream_cheese() -> None:
    def rules(title: str) -> set[str]:
        steps = (
            "Boil for 2 hours, until thick and brown. Pot it and keep in the fridge for 3 weeks."
        )
        recipe = made("preserve", title, ["1 l whole milk", "300 g sugar"], steps, "450 g")
        box = assess_safety(recipe, BookSettings())
        return {one.rule for one in (*box.refusals, *box.cautions)}

    assert "keeps-beyond-default" in rules("Dulce de leche")
    assert "keeps-too-long" not in rules("Dulce de leche")
    assert "keeps-too-long" in rules("Milk pudding")


@pytest.mark.parametrize(
    ("method", "names"),
    [
        ("Boil to 300 °F (hard crack), then pour onto a baking sheet.", ["Other temperatures"]),
        ("Heat the oven to 180 °C. Boil the sugar to 120 °C. Bake.",
         ["Oven", "Other temperatures"]),
        ("Bake at 325°F until the inside reaches 71 °C.", ["Oven", "Other temperatures"]),
        ("Bake at 180 °C for 10 minutes. Lower to 150 °C for another 10.", ["Oven"]),
        ("Bake at Gas Mk 4.", ["Oven"]),
        ("Bake at gas-mark 6-7.", ["Oven"]),
        ("Bake for an hour at Regulo Mark 4.", ["Oven"]),
    ],
)  # fmt: skip
def test_a_sugars_heat_is_no_oven(method: str, names: list[str]) -> None:
    recipe = made("confection", "Toffee", ["300 g sugar", "100 g syrup"], method)
    assert [one.name for one in heat_lines(recipe)] == names


@pytest.mark.parametrize(
    ("kind", "title", "list_", "method", "contents"),
    [
        # what only soaked it is poured off, and its salt with it: how much stays nobody can say
        ("ferment", "Kimchi", ["1 kg napa cabbage", "2 l water", "100 g salt", "20 g garlic"],
         "Soak the cabbage in the water and salt overnight. Drain, rinse, mix, pack and ferment.",
         ["napa cabbage", "garlic", "salt"]),
        ("preserve", "Pickled onions", ["1 kg onions", "100 g salt", "1 l water", "500 ml vinegar"],
         "Soak the onions in water and salt overnight. Drain and rinse. Pack, pour over vinegar.",
         ["onions", "vinegar", "salt"]),
        # a brine that is still in the jar, and the water of a syrup
        ("ferment", "Gherkins", ["1 kg gherkins", "1 l water", "50 g salt"],
         "Soak the gherkins in cold water, drain. Cover with the brine of salt and water; ferment.",
         ["gherkins", "water", "salt"]),
        ("ferment", "Sauerkraut", ["1 kg cabbage", "25 g salt"], "Shred, salt and pack.",
         ["cabbage", "salt"]),
        ("preserve", "Rosehip syrup", ["1 kg rosehips", "2 l water", "500 g sugar"],
         "Boil in the water, drain in a jelly bag. Add the sugar. Boil, bottle.",
         ["water", "rosehips", "sugar"]),
    ],
)  # fmt: skip
def test_brine_that_is_poured_off_is_in_no_jar(
    kind: str, title: str, list_: list[str], method: str, contents: list[str]
) -> None:
    makes = "2 l" if "syrup" in title else "2 kg"
    assert contents_of(made(kind, title, list_, method, makes)) == contents


@pytest.mark.parametrize(
    ("title", "method", "stays"),
    [
        ("Rumtopf", "Früchte mit Zucker und Rum schichten. 3 Monate ziehen lassen.", True),
        ("Rum pot", "Layer, cover with rum. Leave 3 months. Serve the fruit with ice.", True),
        ("Plums in brandy", "Cover with rum. Leave 2 months.", True),
        ("Brandied plums", "Leave 3 months.", True),
        ("Pflaumen in Rum", "3 Monate ziehen lassen.", True),
        ("Confiture de vieux garçon", "Laisser macérer 3 mois.", True),
        ("Prugne sotto spirito", "Lasciare due mesi.", True),
        ("Ciruelas en aguardiente", "Dejar 2 meses.", True),
        ("Pruimen op brandewijn", "Zet 2 maanden weg.", True),
        ("Plommon i konjak", "Låt stå 2 månader.", True),
        ("Rumtopf", "Leave 3 months. Strain and bottle.", False),
        ("Rumtopf", "Leave 3 months. Discard the fruit.", False),
        ("Rumtopf liqueur", "Leave 3 months.", False),
        ("Plum gin", "Leave 3 months.", False),
        ("Plum rum", "Leave 3 months.", False),
    ],
)
def test_the_fruit_of_a_rum_pot_stays_in_it(title: str, method: str, stays: bool) -> None:
    recipe = made("infusion", title, ["1 kg plums", "500 g sugar", "1 l rum, 54% vol"], method)
    assert ("plums" in contents_of(recipe)) is stays
    assert ("infused with plums" in contents_of(recipe)) is not stays
