"""What stands among steps and is none, what stands over a list, and recipes told in prose.

The shapes are those of 47 pages fixed with what they should become before the code was looked at
(November 2026): harvest groups' chutneys in Markdown, weblogs' fudge, marshmallow and bath salts, a
database's mead, Swedish caramels, and E. Leslie's Directions for Cookery (Project Gutenberg 9624).
The words are ours.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

PEEL = """Candied orange peel

- 4 oranges
- 500 g sugar
- 300 ml water

Method

1. Peel the oranges and boil the peel for ten minutes.
2. Drain it.

I always use the thickest oranges for this.

3. Boil sugar and water.

{remark}

4. Dry the peel on a rack overnight.
"""


@pytest.mark.parametrize(
    "remark", ["You will love how these look in a jar.", "My sister makes it twice a winter."]
)
def test_a_remark_between_numbered_steps_is_a_note(remark: str) -> None:
    (peel,) = brought(PEEL.format(remark=remark))
    assert [one[:5] for one in steps(peel)] == ["Peel ", "Drain", "Boil ", "Dry t"]
    assert remark in peel.text.split("## Notes")[1]


@pytest.mark.parametrize(
    "said",
    [
        "I add a handful of almonds to the pan at this point.",  # a food that no line brings
        "You will want to keep it in the fridge for a month.",
        "Stir it all the while, or it burns on the bottom.",
    ],
)
def test_what_brings_a_food_or_says_how_it_keeps_stays_a_step(said: str) -> None:
    (peel,) = brought(PEEL.format(remark=said))
    assert said in steps(peel)


CHUTNEY = """# Hot chutney

You will need:
- 1 kg apples
- 300 g sultanas
- 500 ml cider vinegar

1. Chop the apples.
2. Boil all of it for an hour.
3. Put it into jars. Leave to mature for 2 months.

Chutney tips:
♥ Wash the jars in hot water first, and let them dry.
♥ Open the window while it boils.

With thanks to our neighbours for sharing the recipe
www.neighbours.example

Ann Miller
"""


def test_tips_thanks_addresses_and_names_behind_a_method_are_no_steps() -> None:
    (chutney,) = brought(CHUTNEY, name="a.md")
    assert [one[:4] for one in steps(chutney)] == ["Chop", "Boil", "Put "]
    assert "Open the window while it boils." in chutney.text
    assert "www.neighbours.example" in chutney.text.split("## Source")[1]
    assert "Ann Miller" not in chutney.text
    assert "Names that stood behind the method are left out." in asked(chutney)


def test_the_words_of_a_weblogs_readers_and_its_date_are_no_steps() -> None:
    text = "Fudge\n\n3 cups sugar\n1 cup butter\n\nBoil them for 5 minutes. Pour into a pan.\n"
    text += "ReplyDeleteI like that he kept it in his wallet.\nReplyDelete\n"
    (fudge,) = brought(text)
    assert steps(fudge) == ["Boil them for 5 minutes. Pour into a pan."]
    (salt,) = brought(
        "Salts\n\n4 cups salt\n1 cup soda\n\nMix it all well.\n\nApril 18, 2010 — Ann Miller\n"
    )
    assert steps(salt) == ["Mix it all well."]


def test_a_table_without_strokes_at_its_edge_is_a_list_and_empty_cells_are_empty() -> None:
    text = """Mead

Yield: 1 gallon
Measure | Ingredient |
---|---|
1 gallon | Water |
4 pounds | Honey |
6 \\N | Cloves |
\\N \\N | Juice & peel from one lemon |
1 teaspoon | Dried yeast |

Boil the first four for 30 minutes. Cool, and add the yeast.
"""
    (mead,) = brought(text)
    assert fact(mead, "makes") == "1 gallon"
    assert listed(mead) == [
        *("1 gallon Water", "4 pounds Honey", "6 Cloves"),
        *("Juice & peel from one lemon", "1 teaspoon Dried yeast"),
    ]


def test_what_stands_over_the_things_it_is_done_with_is_a_step() -> None:
    text = """Mom's fudge

It is the best:

Bring the following three ingredients to a boil.
Then boil 8 minutes, stirring constantly:

1 can evaporated milk
5 cups sugar
1/4 lb butter

Remove from heat and add:

3 packages chocolate chips
1 cup nuts

Pour into a buttered pan and cut into squares.
"""
    (fudge,) = brought(text, "en_US")
    assert steps(fudge) == [
        "Bring the following three ingredients to a boil.",
        "Then boil 8 minutes, stirring constantly.",
        "Remove from heat and add 3 packages chocolate chips, 1 cup nuts.",
        "Pour into a buttered pan and cut into squares.",
    ]
    assert "It is the best:" in fudge.text.split("## Method")[0]


def test_a_recipe_told_in_prose_has_what_its_sentences_measure_in_a_list() -> None:
    text = """CAYENNE VINEGAR. Take half a dozen ripe chillies; cut them small and infuse them for a
fortnight in a quart of the best vinegar, in two large bottles, shaking them every day.
"""
    (vinegar,) = brought(text)
    assert fact(vinegar, "title") == "Cayenne vinegar"
    assert listed(vinegar) == ["half a dozen ripe chillies", "a quart of the best vinegar"]
    assert "no list of ingredients: 2 things that its sentences measure" in asked(vinegar)
    (cordial,) = brought(
        "ORANGE CORDIAL\n\nTake the thin yellow rind of four oranges and put it into two quarts of"
        " brandy. Let it stand a week. Add a pound of loaf-sugar dissolved in a pint of water.\n"
    )
    assert listed(cordial) == [
        *("rind of four oranges", "two quarts of brandy"),
        *("a pound of loaf sugar", "a pint of water"),
    ]
    (nothing,) = brought("Plum sweets\n\nBoil the plums for two hours in a large pan, and cool.\n")
    assert listed(nothing) == []
    assert "No list of ingredients was found." in asked(nothing)


def test_an_old_books_recipes_each_below_a_title_with_a_stop_are_parted() -> None:
    text = """QUINCE CORDIAL.

Take the ripest quinces, and grate them into a large vessel. To six
quarts of the juice allow three pounds of loaf-sugar, (broken up,) and
a quart of white brandy.


ROSE CORDIAL.

Put a pound of fresh rose-leaves into a tureen, with a quart of lukewarm
water. Cover the vessel, and let them infuse for twenty-four hours.
"""
    quince, rose = brought(text)
    assert fact(quince, "title") == "Quince cordial"
    assert listed(quince) == ["three pounds of loaf sugar", "a quart of white brandy"]
    # what is not known whole is asked about whole: no pound of roses
    assert listed(rose) == ["a pound of fresh rose leaves", "a quart of lukewarm water"]


# pages on rhubarb gin (smallallotmentbucket, nicdempsey), piccalilli (hisforhomeblog) and
# Quittenlikör (kv-garten-paf), cut down to the fact, November 2026
def test_a_spirit_in_a_title_is_an_infusion_where_its_method_leaves_it() -> None:
    (gin,) = brought(
        "Rhubarb gin recipe\n\nTake 777g of washed, chopped rhubarb. Add 250 g of sugar and a litre"
        " of gin*. Store in a dark place for 6 weeks.\n\nBottles of rhubarb gin\n\nThat was all it"
        " took to make some of the nicest gin.\n"
    )
    assert fact(gin, "title") == "Rhubarb gin"
    assert fact(gin, "kind") == "infusion"
    assert listed(gin) == ["777g of washed, chopped rhubarb", "250 g of sugar", "a litre of gin"]
    assert 'no kind of its own; "Store in a dark place for 6 weeks"' in asked(gin)
    (ready,) = brought("Gin recipe!\n\n1 l gin\n2 lemons\n\nMethod\n\nMix and serve with ice.\n")
    assert fact(ready, "title") == "Gin"
    assert fact(ready, "kind") == ""


def test_what_was_used_stands_in_for_the_word_before_its_brackets() -> None:
    (pickle,) = brought(
        "Piccalilli\n\n- 3lbs vegetables (I used 800g cauliflower, 160g onions, 125g green beans)\n"
        "- 1l vinegar\n- 1 tbsp plain flour\n\n1. Boil the flour with the vinegar before pouring it"
        " into the jars of vegetables.\n"
    )
    assert listed(pickle)[:3] == ["800g cauliflower", "160g onions", "125g green beans"]
    assert "3 things stood on one line" in asked(pickle)
    assert "cannot be published as safe" not in asked(pickle)  # a spoon of flour bakes no cake


# a page on apricot biscotti (grubcarte) whose lists were broken at their commas, and one on licor
# de café (studylib) that gives its amounts behind, November 2026
def test_a_list_that_a_page_broke_at_its_commas_is_whole_again() -> None:
    text = """Biscotti

Ingredients
- For the limoncello
- 700ml fruit spirit
- 40-80 per cent proof
- or vodka
- 8 unwaxed lemons
- zest and juice
- For the biscotti
- 250g flour
- salt
- 50g dates
- stones removed
- chopped

Method

Mix it all and bake for an hour.
"""
    (biscotti,) = brought(text)
    assert listed(biscotti) == [
        "For the limoncello:",
        *("700ml fruit spirit, 40-80 per cent proof, or vodka", "8 unwaxed lemons, zest and juice"),
        "For the biscotti:",
        *("250g flour", "salt", "50g dates, stones removed, chopped"),
    ]


def test_amounts_behind_their_foods_are_a_list_in_spanish_too() -> None:
    text = """Licor café gallego

* Aguardiente, 3 litros.
* Café molido (nunca torrefacto), 600 gramos.
* Azúcar, 1.000 gramos.

Tapar y dejar macerar 20 días. Colar y embotellar.
"""
    (licor,) = brought(text, "es_ES")
    assert fact(licor, "kind") == "liqueur"
    assert len(listed(licor)) == 3


def test_how_much_a_part_makes_is_not_how_much_is_made() -> None:
    text = """Quittenlikör

500 g Quitten in einen Behälter geben. Die Schale von 1 Zitrone sowie ½ Zimtstange beifügen. 4-6
Wochen ruhen lassen. 300 ml Zuckersirup hinzugeben. Für den Sirup werden 300 g weißer Zucker sowie
120 ml Wasser benötigt (ergibt ca. 310 ml).
"""
    (liqueur,) = brought(text, "de_DE")
    assert fact(liqueur, "makes") == ""
    assert listed(liqueur)[1:] == [
        *("Die Schale von 1 Zitrone", "½ Zimtstange", "300 ml Zuckersirup", "300 g weißer Zucker"),
        "120 ml Wasser",
    ]


def test_servings_say_nothing_of_what_a_drink_fills() -> None:
    method = "10 lemons\n750 ml vodka\n\nLeave the peel in the vodka for 2 weeks. Strain.\n"
    (drink,) = brought(f"Limoncello\n\nServes 22\n\n{method}")
    assert '"22 servings" does not say how much of it there is to fill into bottles.' in asked(
        drink
    )
    (jam,) = brought("Plum jam\n\nServes 22\n\n1 kg plums\n1 kg sugar\n\nBoil them for an hour.\n")
    assert "to fill into bottles" not in asked(jam)


def test_a_swedish_page_is_parted_as_others_are() -> None:
    text = """Chokladkola

Du behöver
- 100 g smör
- 2 dl vispgrädde
- 3 dl strösocker
- 2 msk kakao

Gör så här
1
Blanda allt i en kastrull och koka i 20 minuter.
2
Häll smeten i en form. Låt stelna.

God jul!
"""
    (kola,) = brought(text, "sv_SE")
    assert listed(kola) == ["100 g smör", "2 dl vispgrädde", "3 dl strösocker", "2 msk kakao"]
    assert [one[:6] for one in steps(kola)] == ["Blanda", "Häll s"]
    assert "is not a food that this book knows" not in asked(kola)
