"""What somebody avoids, in their own words, against what lies in a recipe: both ways."""

from pathlib import Path

import pytest

from care_cases import recipe_of
from stillroom.core.allergens.of_foods import answer_avoid
from stillroom.core.allergens.sentences import read_avoided
from stillroom.core.larder.food_reading import read_food
from stillroom.core.words.plain_yaml import read_plain
from stillroom.giving.facts import facts_of

ROWS = read_plain((Path(__file__).parents[2] / "golden" / "avoid" / "words.yml").read_text("utf-8"))
NEVER = [(row["avoid"], line) for row in ROWS for line in row["never"]]
TRACES = [(row["avoid"], line) for row in ROWS for line in row.get("traces", ())]
FREE = [(row["avoid"], line) for row in ROWS for line in row["free"]]


def _made(line: str):
    made = {"title": "A thing", "kind": "bake", "ingredients": [line, "100 ml water"]}
    return recipe_of({**made, "method": ["Mix and bake."]})


def _answers(word: str, line: str) -> set[str]:
    recipe = _made(line)
    return {answer_avoid(recipe, word), facts_of(recipe).answer(read_avoided(word))}


@pytest.mark.parametrize(("word", "line"), NEVER)
def test_what_holds_it_or_may_is_never_free(word, line):
    assert "free" not in _answers(word, line)


@pytest.mark.parametrize(
    ("word", "line"),
    [
        *((word, "50 ml vegetable oil") for word in ("nuts", "peanut", "soya", "coconut", "palm")),
        ("paprika", "2 drops food colouring paste"),
        ("grapefruit", "100 g fruit jellies"),
    ],
)
def test_what_only_its_packet_tells_is_not_known_by_its_label(word, line):
    assert answer_avoid(_made(line), word) != "free"


@pytest.mark.parametrize(("word", "line"), FREE)
def test_what_holds_nothing_of_it_is_free(word, line):
    assert _answers(word, line) == {"free"}


@pytest.mark.parametrize(("word", "line"), TRACES)
def test_what_is_packed_beside_it_may_contain_it(word, line):
    assert _answers(word, line) == {"may contain"}


@pytest.mark.parametrize("word", ["pregnant", "paleo", "allergies", "keto", "low FODMAP", "gout"])
def test_a_word_that_means_too_much_asks(word):
    assert read_avoided(word).ask


@pytest.mark.parametrize(
    ("said", "each"),
    [
        ("allergic to eggs and milk", ["eggs", "milk"]),
        ("nuts and gluten", ["nuts", "gluten"]),
        ("can't have celery or sulphites", ["celery", "sulphites"]),
        ("gluten/dairy free", ["gluten", "milk"]),
        ("coeliac + vegan", ["coeliac", "animal products"]),
    ],
)
def test_several_things_in_one_are_all_of_them(said, each):
    found = read_avoided(said)
    assert not found.ask
    assert [part.meant for part in found.of] == each


@pytest.mark.parametrize("said", ["chopped nuts", "mixed nuts", "nuts for Ann and milk for Bob"])
def test_nuts_of_no_sort_are_nuts_of_every_sort(said):
    found = read_avoided(said)
    held = {id_ for one in (found, *found.of) for id_ in one.allergens}
    assert held >= read_avoided("nuts").allergens


@pytest.mark.parametrize(
    ("said", "each"),
    [
        # each of these lost what stands behind before it was looked over for all that it names
        ("nuts for Ann and milk for Bob", {"nuts", "milk"}),
        ("no nuts in cake and milk", {"nuts", "milk"}),
        ("nuts in cakes or sesame", {"nuts", "sesame"}),
        ("vegan - please no nuts", {"animal products", "nuts"}),
        ("nuts, until Easter no milk", {"nuts", "milk"}),
        ("milk for the baby eggs for me", {"milk", "eggs"}),
        ("nuts sets off asthma and milk", {"nuts", "milk"}),
        ("egg for now milk for ever", {"eggs", "milk"}),
        ("nuts - confirmed by doctor and milk", {"nuts", "milk"}),
        ("can't have eggs in cakes and milk", {"eggs", "milk"}),
        ("no nuts but Ann is vegan", {"nuts", "animal products"}),
        ("nuts (Ann) milk (Bob)", {"nuts milk", "nuts", "milk"}),
        # where it hides is not left out
        ("sulphites in wine", {"sulphites"}),
        ("milk, even in chocolate", {"milk"}),
        ("no caffeine after her heart op", {"caffeine"}),
    ],
)
def test_nothing_that_a_sentence_names_is_lost(said, each):
    def meant(avoided):
        own = set() if avoided.of else {avoided.meant}
        return own.union(*(meant(one) for one in avoided.of))

    found = read_avoided(said)
    assert found is not None
    assert not found.ask
    assert meant(found) == each


@pytest.mark.parametrize(
    "said",
    ["nuts and bolts", "loves chocolate", "only halal meat", "gluten and some things",
     "anything but nuts", "vegan is fine", "can have reactions to kiwi", "nothing but rice",
     "kohlrabbi: no milk", "sultanna - no milk", "Nuts: none", "except nuts",
     "everything (except nuts)", "eats nothing but nuts", "doesn't eat anything but nuts",
     "hardly eats anything but rice", "wheat kills him oats are fine", "nuts and others",
     "no 🪁", "never outgrew his egg allergy but is fine",
     # what somebody was is one thing; behind it stands what they are
     "outgrew egg and now allergic to milk", "outgrew milk and got a nut allergy",
     "used to be vegetarian now vegan", "isn't allergic to wheat he is coeliac",
     # what is allowed goes on with a need
     "no egg but loves milk and is coeliac", "vegan but eats honey and is coeliac",
     "not vegan but coeliac", "not vegan but diabetic", "no egg but loves milk and hates nuts",
     "no egg, but loves milk and diabetic", "vegetarian except pescatarian",
     # how bad it is goes on with a food, or with more of somebody
     "no milk, hospitalised by peanuts", "no milk, step 2 of peanuts",
     "no milk, on the milk ladder step 3 for peanuts", "no milk, hospitalised for coeliac",
     "no milk, please as pregnant", "no nuts, even in pregnancy"],
)  # fmt: skip
def test_what_is_not_all_understood_is_not_taken_for_a_part_of_it(said):
    found = read_avoided(said)
    assert found is None or found.ask or (found.allowed and not found.of)


@pytest.mark.parametrize(
    ("said", "each", "allowed"),
    [
        ("eats anything except nuts", ["nuts"], 0),
        ("can have anything but nuts", ["nuts"], 0),
        ("milk; eats everything else, except nuts", ["milk", "nuts"], 0),
        ("gluten free is fine", ["gluten"], 1),
        ("vegan or so they say", ["animal products"], 0),
        ("no shellfish for Muslim", ["shellfish", "halal"], 0),
        ("he outgrew his egg allergy but is still allergic to peanuts", ["peanuts"], 1),
        ("tolerates baked milk, no cheese", ["milk", "cheese"], 1),
        ("milk brings her out in hives", ["milk"], 0),
        ("no 🐷 no 🍷", ["pork", "alcohol"], 0),
        # a picture says more than a word that only ends, or goes on, like its own
        ("shellfish 🐟", ["shellfish", "fish"], 0),
        ("pineapples 🍎", ["pineapples", "apples"], 0),
        ("steak 🍵", ["steak", "tea"], 0),
        ("coconut milk 🥛", ["coconut milk", "milk"], 0),
        ("no milk 🥛", ["milk"], 0),
        # what was, or is allowed, and no more than that; how bad it is, and nothing else
        ("outgrew his egg allergy, no nuts", ["nuts"], 1),
        ("used to be lactose intolerant, no nuts", ["nuts"], 1),
        ("vegan but eats honey", ["animal products"], 1),
        ("no nuts but almonds and coconut are fine", ["nuts"], 1),
        ("no pork but alcohol is fine", ["pork"], 1),
        ("milk, hospitalised twice", ["milk"], 0),
        ("milk, step 4 of the ladder", ["milk"], 0),
        ("no milk, on the milk ladder", ["milk"], 0),
        ("milk, not even in cakes", ["milk"], 0),
        ("low salt - doctor's orders after his stroke", ["salt"], 0),
        # what is allowed again is left out all the same, and kept to be told
        ("gluten but dairy is fine", ["gluten"], 1),
        ("nuts except almonds", ["nuts"], 1),
        ("no pork but beef ok", ["pork"], 1),
        ("egg unless cooked", ["eggs"], 1),
        ("nuts (except coconut)", ["nuts"], 1),
        ("no meat (fish is fine)", ["meat"], 1),
        ("cashew, but other nuts are ok", ["cashews"], 1),
        ("coeliac, but can have pure oats", ["coeliac"], 1),
        # one thing more behind "but", in brackets, behind "including"
        ("vegetarian but no eggs", ["meat and fish", "eggs"], 0),
        ("milk but not butter", ["milk", "butter"], 0),
        ("nuts (and soya)", ["nuts", "soya"], 0),
        ("gluten (no milk)", ["gluten", "milk"], 0),
        ("sesame (hummus, tahini, halva)", ["sesame", "hummus", "tahini", "halva"], 0),
        ("vegan (incl. no honey, beeswax or lanolin)",
         ["animal products", "honey", "beeswax", "wool"], 0),
        # a reason, and what is listed behind it
        ("EoE - no milk or wheat", ["milk", "wheat"], 0),
        ("hemiplegic migraine - cheese, citrus", ["cheese", "citrus"], 0),
        ("Word of Mouth: no tea, coffee or alcohol", ["tea", "coffee", "alcohol"], 0),
        ("Vegan: no honey", ["animal products", "honey"], 0),
        ("no beer: Coeliac", ["beer", "coeliac"], 0),
        ("no pork - Muslim", ["pork", "halal"], 0),
        ("Kids: no nuts", ["nuts"], 0),
        ("IgE milk allergy, reacts to ghee", ["milk", "ghee"], 0),
        ("egg, raw or cooked", ["eggs"], 0),
        ("milk because of her eczema", ["milk"], 0),
        ("no marzipan because of nuts", ["marzipan", "nuts"], 0),
    ],
)  # fmt: skip
def test_every_clause_of_a_sentence_is_left_out(said, each, allowed):
    def parts(avoided):
        each = () if avoided.meant else avoided.of
        return [one for part in each for one in parts(part)] or [avoided]

    found = read_avoided(said)
    assert found is not None
    assert not found.ask
    assert [one.meant for one in parts(found)] == each
    assert len(found.allowed) == allowed


@pytest.mark.parametrize(
    ("said", "asks"),
    [("Jain: no eggs", "vegetarian, onion"), ("Pregnant: no liver", "pregnant: yes"),
     ("PKU: no aspartame", "Protein"), ("FODMAP: no onion", "onion, garlic"),
     ("no eggs for Jain", "vegetarian, onion"), ("Histamine: banana", "Too many"),
     ("no beef as Hindu", "vegetarian, onion"), ("gestational diabetes", "pregnant: yes"),
     ("dairy (low FODMAP)", "fodmap"), ("no nuts in pregnancy", "pregnant: yes")],
)  # fmt: skip
def test_what_says_more_of_somebody_than_the_foods_beside_it_is_asked(said, asks):
    found = read_avoided(said)
    assert found is not None
    assert asks in found.ask


@pytest.mark.parametrize(
    "said",
    ["nuts (severe)", "diabetic (type 1)", "nuts (Idony carries a pen)", "milk (CMPA)",
     "G6PD (fava beans)"],
)  # fmt: skip
def test_what_stands_in_brackets_and_says_nothing_more_changes_nothing(said):
    assert not read_avoided(said).ask


@pytest.mark.parametrize(
    ("said", "held", "free"),
    [("butter", "50 g butter", "50 g peanut butter"),
     ("butter", "1 l buttermilk", "1 butternut squash"),
     ("vinegar", "1 tbsp wholegrain mustard", "1 tbsp mustard seeds"),
     ("blue cheese", "50 g Stilton", "50 g Cheddar"), ("soft cheese", "50 g brie", "50 g Cheddar")],
)  # fmt: skip
def test_a_food_is_what_is_called_so_and_no_more(said, held, free):
    assert "contains" in _answers(said, held)
    assert _answers(said, free) == {"free"}


@pytest.mark.parametrize("said", ["kidney diet", "liver diet", "banana diet"])
def test_a_diet_is_no_food_that_is_left_out(said):
    found = read_avoided(said)
    assert found is None or found.ask


@pytest.mark.parametrize("word", ["glutten", "quibberly", "dust", "cats", ""])
def test_a_word_that_means_no_food_is_not_read(word):
    assert read_avoided(word) is None


@pytest.mark.parametrize(
    "said",
    ["nuts", "Nuts", "no nuts", "nut allergy", "allergic to nuts", "nut-free", "any nuts",
     "nuts (severe)", "anything with nuts", "free from nuts", "NUTS", "nut allergies", "noix"],
)  # fmt: skip
def test_what_stands_round_the_word_changes_nothing(said):
    assert read_avoided(said).allergens == read_avoided("nuts").allergens


# illnesses, beliefs and wishes that name no food: taken for one, the rest of what they leave out
# would be let through
ASKED = [
    "kidney disease", "liver disease", "heart disease", "chronic kidney disease", "gout",
    "warfarin", "alpha-gal", "alpha-gal syndrome", "PKU", "histamine intolerance", "IBS",
    "fructose", "warfarin", "birch pollen", "Jain", "Rastafarian", "Mormon", "braces", "dentures",
    "breastfeeding", "nursing", "pepper", "EoE", "dialysis", "eczema", "migraine",
]  # fmt: skip


@pytest.mark.parametrize("word", ASKED)
def test_what_is_no_food_is_asked_and_never_taken_for_one(word):
    found = read_avoided(word)
    assert found is not None
    assert found.ask
    assert (found.foods, found.tags, found.allergens) == ((), frozenset(), frozenset())


# how people say it, by allergy charities' own wording, and the family that is meant
SAID = [
    ("anaphylaxis to brazil nuts", {"brazil-nut"}), ("carries an EpiPen for peanuts", {"peanut"}),
    ("has an EpiPen for peanuts", {"peanut"}), ("severely allergic to sesame", {"sesame"}),
    ("sulphite-sensitive", {"sulphites"}), ("sensitive to mustard", {"mustard"}),
    ("gluten sensitivity", {"wheat", "barley", "rye", "oats"}), ("milk anaphylaxis", {"milk"}),
    ("strict gluten-free", {"wheat", "barley", "rye", "oats"}),
]  # fmt: skip


@pytest.mark.parametrize(("said", "allergens"), SAID)
def test_a_reaction_is_read_as_what_it_is_to(said, allergens):
    found = read_avoided(said)
    assert found is not None
    assert found.allergens == allergens


@pytest.mark.parametrize(("said", "meant"), [
    ("in recovery", "alcohol"), ("alcohol even in cooking", "alcohol"), ("prediabetic", "sugar"),
    ("low sodium", "salt"), ("keeps kosher", "kosher"), ("type 1 diabetic", "sugar"),
])  # fmt: skip
def test_a_way_of_life_is_read_as_what_it_leaves_out(said, meant):
    found = read_avoided(said)
    assert found is not None
    assert found.meant == meant


@pytest.mark.parametrize(
    ("said", "means"),
    [
        ("Tom is allergic to nuts", "nuts"),
        ("Tom has a nut allergy", "nuts"),
        ("Tom: nuts", "nuts"),
        ("nuts for Tom", "nuts"),
        ("nut allergy: Tom", "nuts"),
        ("nuts, Tom has an allergy", "nuts"),
        ("nuts for the children", "nuts"),
        ("Tom & Ann can't have milk", "milk"),
        ("the little one can't have milk", "milk"),
        ("milk for my youngest son", "milk"),
        ("Anna (vegan)", "vegan"),
        ("Anna is vegan", "vegan"),
        ("Granny doesn't drink", "alcohol"),
        ("one of the boys has coeliac disease", "coeliac"),
        ("sugar for diabetics", "sugar"),
        ("Ben hates coconut", "coconut"),
        # what is a food as well as a name, and what allows a thing, is asked about
        ("Olive is allergic to nuts", ""),
        ("Rosemary: eggs", ""),
        ("Tom is fine with nuts", ""),
        ("Tom can have nuts", ""),
        ("Tom loves nuts", ""),
        ("Nuts are no problem", ""),
        ("Tom has no allergies", ""),
        ("Tom eats everything", ""),
    ],
)
def test_who_it_is_changes_nothing_of_what_they_must_not_have(said: str, means: str) -> None:
    found = read_avoided(said)
    if not means:
        assert found is None or found.ask or not (found.meant or found.of)
        return
    plain = read_avoided(means)
    assert found is not None
    assert plain is not None
    assert not found.ask
    assert (found.allergens, found.diet, found.of) == (plain.allergens, plain.diet, plain.of)
    # what the plain word finds, the whole phrase finds
    for food in ("granulated sugar", "dark treacle", "desiccated coconut", "honey"):
        assert plain.said_in(food) != "contains" or found.said_in(food) == "contains"


@pytest.mark.parametrize("diet", ["vegan", "vegetarian", "halal", "kosher"])
@pytest.mark.parametrize("sweets", ["sprinkles", "candy canes", "edible glitter"])
def test_of_coloured_sweets_only_the_packet_tells_whether_an_insect_coloured_them(diet, sweets):
    assert _answers(diet, f"50 g {sweets}") & {"not known", "contains"}
    assert "contains" not in _answers(diet, f"50 g vegan {sweets}")


@pytest.mark.parametrize("diet", ["vegetarian", "halal"])
@pytest.mark.parametrize("food", ["mixed peel", "glacé cherries", "icing sugar"])
def test_what_is_coloured_without_insects_as_a_rule_is_let_through(diet, food):
    assert _answers(diet, f"50 g {food}") == {"free"}


def test_a_page_of_text_is_no_need():
    assert read_avoided("no nuts, " * 100) is None


@pytest.mark.parametrize(
    ("word", "line", "held"),
    [
        ("beef", "100 g vegetable suet", "free"),
        ("pork", "100 g vegetable lard", "free"),
        ("pork", "100 g vegan bacon", "not known"),
        ("beef", "2 tofu steaks", "not known"),
        ("beef", "100 g suet", "contains"),
        ("pork", "100 g smoked bacon", "contains"),
        ("pork", "100 g marshmallows", "may contain"),
        # beside plants, and of no known make
        ("pork", "1 mushroom bacon quiche", "contains"),
        ("pork", "100 g mushroom bacon", "not known"),
        ("beef", "1 vegetable beef stew", "contains"),
        ("beef", "1 mushroom steak pie", "contains"),
        ("beef", "100 g soya mince", "free"),
        ("pork", "100 g vegetable shortening", "free"),
        ("pork", "100 g coconut meat", "free"),
        ("pork", "2 tofu sausages (water, soya)", "not known"),
    ],
)
def test_what_stands_for_meat_is_none(word: str, line: str, held: str) -> None:
    written = {"title": "It", "kind": "bake", "ingredients": [line], "method": ["Bake."]}
    assert answer_avoid(recipe_of(written), word) == held


@pytest.mark.parametrize(
    ("word", "food", "held"),
    [
        ("pork", "fried pork rind", "contains"),
        ("pork", "ham stock cube", "contains"),
        ("pork", "crispy bacon bits", "contains"),
        ("beef", "beef stew", "contains"),
        ("beef", "gravy granules", "may contain"),
        ("beef", "vegetable suet", "free"),
        ("pork", "vegetable lard", "free"),
        ("pork", "vegan bacon", "free"),
        ("beef", "stock powder", "free"),
    ],
)
def test_of_a_food_of_no_known_make_its_name_is_believed(word: str, food: str, held: str) -> None:
    staple = read_food(food).food
    assert staple is not None
    assert read_avoided(word).held_by(staple) == held
