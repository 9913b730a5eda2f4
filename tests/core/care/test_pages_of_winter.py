"""What some sixty saved pages showed that the box did not see, or saw where it is not.

Pages of a stored corpus, read 30 November 2026, each named beside its family; the sentences are in
our words, and each family has its other side. Expected before the code was asked.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from care_cases import recipe_of
from stillroom.core.book import BookSettings
from stillroom.core.care.safety import assess_safety
from stillroom.core.label.labelling import label_recipe, make_card
from stillroom.core.method.keeping_claims import plainly_claimed_in
from stillroom.core.method.keeping_said import kept_at
from stillroom.core.method.sentences import affirmed_clauses
from stillroom.core.size.scalable import scalable_of
from stillroom.core.size.what_stays import boiling_warnings, notes_on_scaling

BOOK = BookSettings()
STONE = ["1 kg {}", "300 g sugar", "1 l brandy"]


def rules_of(lines: list[str], steps: list[str], **more: Any) -> frozenset[str]:
    box = assess_safety(
        recipe_of({"title": "A thing", "ingredients": lines, "method": steps, **more}), BOOK
    )
    return frozenset(one.rule for one in (*box.refusals, *box.cautions))


# keyingredient.com, apricot liqueur: the pits are hit with a hammer, the inner nut goes in
@pytest.mark.parametrize(
    ("fruit", "steps", "refused"),
    [
        ("apricots", "Hit the pits with a hammer to open. Take the inner nut and crush it.", True),
        ("apricots", "Open the pits with a hammer. Combine the fruit and nuts in it.", True),
        ("cherries", "Pound the cherries, stones and all, and cover with the brandy.", True),
        ("peaches", "Crack six stones with a nutcracker and put the kernels in.", True),
        ("plums", "Put the plums into the jar, stones and all. Cover with brandy.", False),
        ("plums", "Cut the plums open and take out the stones. Cover with brandy.", False),
        ("apricots", "Remove the pits, taking care not to crack the stones.", False),
        ("cherries", "Take out the stones with a stoner. Open the brandy, pour it over.", False),
    ],
)
def test_kernels_that_the_method_takes_out(fruit: str, steps: str, refused: bool) -> None:
    lines = [one.format(fruit) for one in STONE]
    assert ("cyanide-kernels" in rules_of(lines, [steps], kind="infusion")) is refused


def test_nuts_of_a_list_are_no_kernels() -> None:
    told = rules_of(["100 g almonds", "1 kg apricots"], ["Crush the nuts."], kind="preserve")
    assert "cyanide-kernels" not in told


# coupongeek.net, firefly jars: "the flickering, flame-less, battery-operated kind"
@pytest.mark.parametrize(
    ("line", "battery", "candle"),
    [
        ("1 tealight, flickering, flameless, battery-operated", True, False),
        ("3 LED tealights", True, False),
        ("1 battery candle", True, False),
        ("1 set of fairy lights", True, False),
        ("1 LED Teelicht", True, False),
        ("1 light-up button", True, False),
        ("1 tealight", False, True),
        ("1 beeswax candle", False, True),
        ("1 solar light", False, False),
    ],
)
def test_a_light_without_a_flame_has_a_cell(line: str, battery: bool, candle: bool) -> None:
    told = rules_of(["1 glass jar", line], ["Put it into the jar."], kind="craft")
    assert ("button-battery" in told, "candle" in told) == (battery, candle)


# barmansjournal.com, raspberry shrub; allaboutbecoming.com, milk kefir; thewilddomestic, feta
@pytest.mark.parametrize(
    ("lines", "steps", "place"),
    [
        (
            ["500 g raspberries", "300 g sugar", "300 ml cider vinegar"],
            ["Crush all in a jar. Place it into the refrigerator. Shake it for 7 days. Strain."],
            "fridge",
        ),
        (
            ["500 g raspberries", "300 g sugar", "300 ml cider vinegar"],
            ["Refrigerate for 7 days.", "Strain, bottle and keep in a cool dark place."],
            "room",
        ),
        (
            ["500 g strawberries", "300 g sugar"],
            ["Put them in the refrigerator with the sugar for a day.", "Boil to a set. Pot."],
            "room",
        ),
        (
            ["1 kg apples", "1 lemon"],
            ["Put the slices in the fridge with the lemon for a day.", "Dry them at 60 C."],
            "room",
        ),
        (
            ["500 g feta", "500 ml olive oil"],
            ["Cover with oil. Let this marinate for a week or two in the refrigerator."],
            "fridge",
        ),
    ],
)
def test_what_the_cold_holds_and_nobody_takes_out(
    lines: list[str], steps: list[str], place: str
) -> None:
    made = {"title": "A thing", "kind": "preserve", "ingredients": lines, "method": steps}
    assert kept_at(recipe_of(made)) == place


def test_a_lid_that_is_not_to_seal_is_no_failed_seal() -> None:
    steps = ["Leave a day. Strain.", "Turn the lid so it does not seal, and place in fridge."]
    lines = ["1 l whole milk", "1 tbsp milk kefir grains"]
    made = {"title": "Milk kefir", "kind": "kefir", "ingredients": lines, "method": steps}
    assert label_recipe(recipe_of(made), BOOK).keep_how == "In the fridge."


@pytest.mark.parametrize(
    ("steps", "kept"),
    [
        ("Crush the berries with the vinegar and sugar. Leave a week. Strain and bottle.", None),
        ("Crush the berries, add vinegar and sugar, boil for 5 minutes and bottle.", "1 year"),
    ],
)
def test_raw_fruit_has_no_year_by_a_guide_to_canning(steps: str, kept: str | None) -> None:
    lines = ["500 g raspberries", "300 g sugar", "300 ml cider vinegar"]
    made = {"title": "A thing", "kind": "preserve", "ingredients": lines, "method": [steps]}
    told = label_recipe(recipe_of(made), BOOK).keeping.unopened
    assert (None if told is None else str(told)) == kept


# naysyummygoodness.blogspot.com, strawberry freezer jam, and its like
@pytest.mark.parametrize(
    ("said", "span"),
    [
        ("Store in freezer up to 6 months or in refrigerator up to 3 weeks.", "3 weeks"),
        ("Refrigerate up to one month or freeze up to one year.", "1 month"),
        ("It keeps 2 weeks in a tin and 3 months frozen.", "2 weeks"),
        ("They keep for up to 6 months frozen or 5 days in a tin.", "5 days"),
        ("Keeps in the freezer for 6 months.", "6 months"),
        ("Can be kept frozen for up to 3 months, or give it away at once.", "3 months"),
    ],
)
def test_of_two_places_not_the_freezer(said: str, span: str) -> None:
    assert str(plainly_claimed_in(said)) == span


# luculliandelights.com, crema di limoncello: a law that asks for no date says nothing of its milk
@pytest.mark.parametrize(
    ("lines", "text"),
    [
        (["500 ml alcohol 95% vol", "1 l milk", "400 g sugar"], "How long it keeps is not known"),
        (["700 ml whisky", "397 g condensed milk"], "How long it keeps is not known"),
        (["700 ml gin", "400 g sloes", "300 g sugar"], ""),
        (["700 ml rum", "100 g butter"], ""),
    ],
)
def test_strong_drinks_with_milk_have_no_leave_to_go_undated(lines: list[str], text: str) -> None:
    steps = ["Mix, strain and bottle. Keep in the freezer."]
    made = {"title": "A drink", "kind": "infusion", "ingredients": lines, "method": steps}
    assert label_recipe(recipe_of(made), BOOK).date_mark.text == text


# nishantedivinelove.com, spring wine; cocktail.fr, vin de pêche: bought wine works no more
@pytest.mark.parametrize(
    ("lines", "steps", "bursts"),
    [
        (["1 bottle white wine", "4 sprigs sweet woodruff"], "Steep overnight. Strain.", False),
        (["1 kg grapes", "1 l red wine", "100 g sugar"], "Steep for a month. Bottle.", False),
        (["2 kg plums", "1 kg sugar", "1 dl brandy"], "Leave until it bubbles. Bottle.", True),
        (["2 kg plums", "1 kg sugar", "4 l water", "1 dl brandy"], "Leave a week.", True),
    ],
)
def test_a_wine_of_bought_wine(lines: list[str], steps: str, bursts: bool) -> None:
    told = rules_of(lines, [steps], kind="wine")
    assert ("bottle-pressure" in told) is bursts


# dianabaurcreations.com, elderflower champagne: sealed in glass and left to work
@pytest.mark.parametrize(
    ("step", "shut"),
    [
        ("Seal and leave to ferment in the bottles for a further eight days.", True),
        ("Cork them and let it go on fermenting in the bottles for a week.", True),
        ("Seal and leave to ferment in the bottles. Release the pressure every day.", False),
        ("Seal plastic bottles and leave to ferment in the bottles.", False),
        ("Bottle and seal when the gravity has stood still.", False),
    ],
)
def test_sealed_and_left_to_ferment(step: str, shut: bool) -> None:
    lines = ["20 elderflower heads", "2 kg sugar", "6 l water", "1 pinch dried yeast"]
    told = rules_of(lines, ["Leave 6 days under muslin. Strain.", step], kind="wine")
    assert ("closed-ferment" in told) is shut


# hojtnd.blogspot.com, water kefir: "the pressure can build"
@pytest.mark.parametrize(
    ("step", "canner"),
    [
        ("Open it carefully, since the pressure can build.", False),
        ("Pressure can for 75 minutes.", True),
        ("Process the jars in a pressure canner.", True),
    ],
)
def test_pressure_that_builds_is_no_canner(step: str, canner: bool) -> None:
    assert ("pressure-canner" in rules_of(["1 kg beans"], [step], kind="preserve")) is canner


def test_what_waits_until_it_is_cool_is_no_hot_glass() -> None:
    steps = [
        "Warm the water with the sugar. Put the grains into a jar.",
        "When the water is at room temperature, add it to the jar. Leave two days.",
    ]
    lines = ["3 tbsp water kefir grains", "1 l water", "60 g sugar"]
    assert "hot-glass" not in rules_of(lines, steps, kind="ferment")


def test_hot_oil_is_poured_into_glass() -> None:
    steps = ["Put them into jars. Once the oil is hot, pour it over the tomatoes."]
    lines = ["500 g dried tomatoes", "1 l olive oil"]
    assert "hot-glass" in rules_of(lines, steps, kind="preserve")


# bamboodayspa.ca, a bath of cocoa and powdered milk
@pytest.mark.parametrize(
    ("line", "watery"),
    [("100 g powdered milk", False), ("100 g dried milk", False), ("1 dl goat milk", True)],
)
def test_what_is_dry_spoils_no_bath(line: str, watery: bool) -> None:
    told = rules_of(["100 g cocoa", line], ["Mix."], kind="craft", title="Milk bath")
    assert ("watery-cosmetic" in told) is watery


# cuisinecraft.co.th, beef jerky of "rump roast": a cut, and nothing that is cooked
@pytest.mark.parametrize(
    ("line", "raw"),
    [("2 kg chuck roast", True), ("2 kg pork roast", True), ("1 kg roast beef", False)],
)
def test_a_roast_is_a_cut_of_raw_meat(line: str, raw: bool) -> None:
    steps = ["Slice and marinate overnight.", "Dry at 60 C for 8 hours. Keep in the fridge."]
    told = rules_of([line, "100 ml soy sauce"], steps, kind="preserve")
    assert ("raw-meat-fish" in told) is raw
    assert "potted-cold" not in told  # which gives it four days beside the card's week


# likoere.bplaced.net, Tannenwipfellikör
@pytest.mark.parametrize("plant", ["Tannenzweige", "Fichtenzweige", "aghi di pino", "fir sprigs"])
def test_twigs_that_look_like_yew(plant: str) -> None:
    told = rules_of([f"200 g {plant}", "1 l vodka"], ["Steep 6 weeks."], kind="infusion")
    assert "conifer" in told


@pytest.mark.parametrize(
    ("sentence", "left"),
    [
        ("The eggs aren't cooked.", []),
        ("It mustn't boil and then leave it to cool.", ["leave it to cool"]),
        ("You shouldn’t use the leaves.", []),
        ("Cook until it isn't pink.", ["Cook"]),
        ("Heat it, so that it doesn't set.", ["Heat it"]),
        ("If you can't find limes, add lemons.", ["add lemons"]),
    ],
)
def test_denied_in_short(sentence: str, left: list[str]) -> None:
    assert affirmed_clauses(sentence) == left


# what stays on the jar when the card is lost: the smallest paper named neither spirit nor stones
@pytest.mark.parametrize(
    ("kind", "lines", "steps", "words"),
    [
        (
            "preserve",
            ["2 kg stoned apricots", "1 kg sugar", "200 ml brandy"],
            "Boil to a set, cool a little, stir in the brandy. Pot.",
            "With alcohol",
        ),
        (
            "preserve",
            ["1 kg damsons", "300 g sugar", "700 ml gin"],
            "Leave for 6 months.",
            "With alcohol; the stones are in it",
        ),
        (
            "bake",
            ["200 g flour", "100 g butter", "1 tbsp honey"],
            "Bake at 180 C for 20 minutes.",
            "Contains gluten (wheat), milk; honey, never for a baby",
        ),
        ("preserve", ["1 kg apples", "1 kg sugar"], "Boil to a set. Pot hot.", ""),
        ("bake", ["200 g flour", "1 tsp vanilla extract"], "Bake.", "Contains gluten (wheat)"),
    ],
)
def test_the_tag_says_what_must_not_be_lost(
    kind: str, lines: list[str], steps: str, words: str
) -> None:
    made = {"title": "A thing", "kind": kind, "ingredients": lines, "method": [steps]}
    card = make_card(recipe_of(made), BOOK)
    assert "".join(one.text for one in card.tag_words) == words
    assert "alcohol" not in "".join(one.text for one in card.allergen_words)


# a maker's pâté of "four or five days": the guide's four go on the card, and nobody is refused
@pytest.mark.parametrize(
    ("said", "refused", "kept"),
    [
        ("4-5 days", False, "4 days"),
        ("3-5 days", False, "4 days"),
        ("3-4 days", False, "3-4 days"),
        ("5 days", True, "4 days"),
        ("4-6 days", True, "4 days"),
        ("1 week", True, "4 days"),
    ],
)
def test_a_range_that_ends_a_day_behind_a_guide(said: str, refused: bool, kept: str) -> None:
    lines = ["400 g chicken livers", "200 g butter", "1 onion"]
    steps = [f"Fry until cooked through. Blend and pot. It keeps in the fridge for {said}."]
    made = {"title": "Pâté", "kind": "preserve", "ingredients": lines, "method": steps}
    recipe = recipe_of(made)
    box = assess_safety(recipe, BOOK)
    assert ("keeps-too-long" in {one.rule for one in box.refusals}) is refused
    assert str(label_recipe(recipe, BOOK).keeping.unopened) == kept


# a packet of which nobody knows the weight makes no fudge a bar of chocolate
@pytest.mark.parametrize(
    ("chocolate", "kept"), [("1 pkg chocolate chips", "4 weeks"), ("2 kg chocolate", "6 months")]
)
def test_what_is_not_weighed_keeps_nothing_longer(chocolate: str, kept: str) -> None:
    lines = ["500 g sugar", "170 g evaporated milk", chocolate]
    steps = ["Cook to a soft ball. Add the chocolate, beat, and cut."]
    made = {"title": "Fudge", "kind": "fudge", "ingredients": lines, "method": steps}
    assert str(label_recipe(recipe_of(made), BOOK).keeping.unopened) == kept


@pytest.mark.parametrize(
    ("steps", "boiled"),
    [
        ("Blend the basil, oil and nuts until they are smooth.", False),
        ("Die Blätter mit dem Öl fein pürieren und abfüllen.", False),
        ("Boil the basil with the oil for an hour and pot.", True),
        ("Das Basilikum mit dem Öl eine Stunde einkochen und abfüllen.", True),
        ("Do it.", True),
    ],
)
def test_what_is_never_heated_boils_neither_down_nor_to_a_set(steps: str, boiled: bool) -> None:
    lines = ["50 g basil", "200 ml olive oil"]
    made = {"title": "Pesto", "kind": "preserve", "ingredients": lines, "method": [steps]}
    scalable = scalable_of(recipe_of(made))
    notes = (*notes_on_scaling(scalable, Fraction(3)), *boiling_warnings(scalable, Fraction(3)))
    assert any("boil" in note.lower() for note in notes) is boiled


# Michigan State Univ. Extension 01600585, Pickling fish: 2.5 % acetic acid and more, 4 to 6 weeks
@pytest.mark.parametrize(
    ("lines", "said", "refused", "kept"),
    [
        (["500 g herring fillets", "250 ml vinegar", "250 ml water"], "", False, "4 weeks"),
        (["500 g salted herring", "250 ml vinegar", "250 ml water"], "2 weeks", False, "2 weeks"),
        (
            ["500 g herring", "1 dl vinegar essence, 12 %", "3 dl water"],
            "2 weeks",
            False,
            "2 weeks",
        ),
        (["500 g salted herring", "250 ml vinegar"], "3 months", True, "3 months"),
        (["500 g herring", "100 ml vinegar", "400 ml water"], "2 weeks", True, "4 days"),
        (["500 g herring", "50 ml vinegar"], "2 weeks", True, "4 days"),
        (["500 g herring", "250 ml vinegar, 4 %"], "2 weeks", True, "4 days"),
        (["500 g herring", "1 kg tomatoes", "800 ml vinegar"], "2 weeks", True, "4 days"),
        (["500 g chicken", "250 ml vinegar"], "2 weeks", True, "4 days"),
    ],
)
def test_fish_in_vinegar_keeps_by_how_sour_it_is(
    lines: list[str], said: str, refused: bool, kept: str
) -> None:
    keeps = f"It keeps in the fridge for {said}." if said else "Keep it in the fridge."
    steps = ["Boil the vinegar; let it get cold.", "Lay it in a jar, pour this over.", keeps]
    made = {"title": "A jar", "kind": "preserve", "ingredients": lines, "method": steps}
    recipe = recipe_of(made)
    rules = {one.rule for one in assess_safety(recipe, BOOK).refusals}
    assert ("keeps-too-long" in rules) is refused
    assert str(label_recipe(recipe, BOOK).keeping.unopened) == kept


@pytest.mark.parametrize(
    ("steps", "raw"),
    [
        (["Boil the vinegar and the water. Cool.", "Pour it over the herring."], True),
        (["Lay the herring in a pan.", "Add the vinegar, simmer for 20 minutes."], False),
    ],
)
def test_vinegar_that_boils_cooks_what_lies_in_its_pan(steps: list[str], raw: bool) -> None:
    told = rules_of(["1 kg herring", "500 ml vinegar", "400 ml water"], steps, kind="preserve")
    assert ("raw-meat-fish" in told) is raw


# the second sample: proverbsthirtyonewoman, pickled beets; comptonwine.com, duck breast
@pytest.mark.parametrize(
    ("lines", "step", "place"),
    [
        (
            ["1 kg beets", "500 ml vinegar", "500 ml water"],
            "Put into a canning jar, cover, put the lid on and refrigerate at least 24 hours.",
            "fridge",
        ),
        (
            ["1 kg beets", "500 ml vinegar", "500 ml water"],
            "Put into jars and refrigerate for 24 hours. Process in a boiling-water canner.",
            "room",
        ),
        (
            ["1 kg duck breast", "300 g salt"],
            "Place for at least 7 days in the refrigerator. Scrape off the salt. Slice thinly.",
            "fridge",
        ),
    ],
)
def test_days_in_the_cold_whatever_the_jar_is_called(
    lines: list[str], step: str, place: str
) -> None:
    steps = ["Boil the vinegar." if "vinegar" in lines[1] else "Rub with the salt.", step]
    made = {"title": "A thing", "kind": "preserve", "ingredients": lines, "method": steps}
    assert kept_at(recipe_of(made)) == place


def test_a_stopper_shuts_a_working_kefir() -> None:
    lines = ["3 tbsp water kefir grains", "1 l water", "60 g sugar"]
    steps = ["Leave 24 hours. Strain.", "Bottle, put on the stopper and leave 24 hours. {}"]
    shut = rules_of(lines, [one.format("Keep in the fridge.") for one in steps], kind="kefir")
    aired = rules_of(lines, [one.format("Open it every day.") for one in steps], kind="kefir")
    assert ("closed-ferment" in shut, "closed-ferment" in aired) == (True, False)


# a piccalilli of 2.5 kg with a spoon of mace: nobody eats half a kilo of what holds so little
@pytest.mark.parametrize(
    ("kind", "lines", "warned"),
    [
        ("preserve", ["2.5 kg cauliflower", "1.5 l vinegar", "1 tbsp ground mace"], False),
        ("bake", ["1 kg flour", "500 g butter", "2 tbsp ground nutmeg"], False),
        ("dry mix", ["50 g ground nutmeg", "50 g ground cinnamon"], True),
        ("preserve", ["300 g butter", "12 g ground nutmeg"], True),
        ("infusion", ["1 l vodka", "25 g ground nutmeg"], True),
    ],
)
def test_nutmeg_by_its_share_of_what_is_eaten(kind: str, lines: list[str], warned: bool) -> None:
    told = rules_of(lines, ["Mix, heat through and put up."], kind=kind)
    assert ("nutmeg" in told) is warned


@pytest.mark.parametrize(
    ("step", "raw"),
    [
        ("Process in a pressure canner for 75 minutes, by the USDA guide.", False),
        ("Pack into jars and close them.", True),
    ],
)
def test_a_pressure_canner_cooks_what_is_in_it(step: str, raw: bool) -> None:
    told = rules_of(["2 kg venison", "4 tsp salt"], [f"Cut up. {step}"], kind="preserve")
    assert ("raw-meat-fish" in told) is raw


@pytest.mark.parametrize(
    ("lines", "steps", "last"),
    [
        (
            ["1 kg cauliflower", "225 g sea salt", "1 l vinegar"],
            ["Mix with the salt and leave a day. Drain, rinse.", "Boil the vinegar. Pot hot."],
            "sea salt",
        ),
        (
            ["1 kg cabbage", "20 g sea salt", "5 g caraway"],
            ["Massage with the salt. Add the caraway. Pack under its brine for 3 weeks."],
            "caraway",
        ),
        (
            ["500 g cooked chickpeas", "30 g sea salt", "20 g sugar", "600 ml vinegar"],
            ["Drain the chickpeas.", "Boil the vinegar with sugar and salt. Pot."],
            "sugar",
        ),
    ],
)
def test_salt_that_is_rinsed_off_has_no_weight(
    lines: list[str], steps: list[str], last: str
) -> None:
    made = {"title": "A thing", "kind": "preserve", "ingredients": lines, "method": steps}
    assert label_recipe(recipe_of(made), BOOK).contents[-1].whole == last
