"""What may begin another recipe inside a draft, and what may be no recipe, is asked by name."""

from __future__ import annotations

from bringing.drafts import brought
from stillroom.bringing.found import BroughtRecipe

LIQUEURS = """\
What we say here is only a rough guide, as everybody's taste must find the right measure in the end.
Orange liqueur
- 1 kg orange peel
- 5 litres vodka
- 3 litres syrup
Stir it all together and let it steep for a month in a dark place, and add water if it is strong.
Pear liqueur
For this one, as for those of pineapple and plum, essences can be bought, which is handy and quick.
- 5 kg pears
- 5 litres vodka
- 6 litres syrup
Crush the pears, pour the vodka over them and let it all steep for twelve days. Add the syrup.
"""

WINES = """\
Two receipts out of an old book

Cherry Brandy
Take six pounds of cherries, half red and half black, and wash them, and put to
them three gallons of brandy, and let them stand for a month, and bottle it out
To Make Cowslip Wine
To six gallons of water put fourteen pounds of sugar, stir it well together, and
beat the whites of twenty eggs and mix it with the liquor, and make it boil
"""

ONE = """\
Orange cake

A good cake for tea

Ingredients:
Sponge:
250 g flour
200 g sugar
3 eggs
Icing:
100 g icing sugar
1 tbsp orange juice

Method:
Beat the eggs with the sugar until they are pale, fold in the flour and bake it for forty minutes.

Icing

Stir the icing sugar with the orange juice and pour it over the cake when it is cold.
"""


def _asked(drafts: tuple[BroughtRecipe, ...]) -> list[str]:
    said = (question.what for draft in drafts for question in draft.questions)
    return [what for what in said if "More than one recipe" in what or "no recipe of its" in what]


def test_a_line_amid_a_recipe_that_names_what_is_made_may_begin_another() -> None:
    (what,) = _asked(brought(WINES))
    assert what.endswith('stand here: "To Make Cowslip Wine" may begin another.')


def test_heads_of_two_lists_are_parted_or_asked_about() -> None:
    drafts = brought(LIQUEURS)
    assert len(drafts) == 2 or '"Pear liqueur"' in "".join(_asked(drafts))


def test_parts_of_one_recipe_are_neither_parted_nor_asked_about() -> None:
    drafts = brought(ONE)
    assert (len(drafts), _asked(drafts)) == (1, [])


def test_numbered_heads_of_a_method_are_no_recipes() -> None:
    paper = (
        "Lebkuchen\n\nZutaten für etwa 25 Stück\n- 250 g Honig\n- 500 g Mehl\n- 1 Ei\n\n"
        "Zubereitung Schritt für Schritt\n1. Honigmasse vorbereiten\n"
        "Honig in einem Topf langsam erhitzen, bis sich alles aufgelöst hat. Kurz abkühlen.\n"
        "2. Teig anrühren\nDas Ei und die Honigmasse zum Mehl geben und alles zu einem Teig"
        " verarbeiten. Eine Stunde ruhen lassen.\n3. Formen und Backen\nDen Teig auf einer"
        " bemehlten Fläche ausrollen. Bei 180 °C etwa 12 Minuten backen.\n4. Verzieren\n"
        "Nach dem Abkühlen mit Schokolade überziehen oder mit Zuckerguss bestreichen.\n"
    )
    (one,) = brought(paper, language="de")
    assert "Teig anrühren" in one.text


def test_ways_to_vary_a_recipe_below_a_heading_are_no_recipes() -> None:
    page = (
        "<html><body><h2>Marzipan</h2><h3>Ingredients</h3><ul><li>250 g ground almonds</li>"
        "<li>200 g icing sugar</li></ul><h3>Method</h3><p>Stir the almonds with the sugar and"
        " knead it until it is smooth.</p><h3>Variations</h3><h4>Marzipan with chocolate</h4>"
        "<p>Cover the marzipan with a layer of dark chocolate, for something richer still.</p>"
        "<h4>Marzipan with rum</h4><p>Knead two spoons of rum into the marzipan before you form"
        " it into a loaf.</p></body></html>"
    )
    assert len(brought(page, name="a.html")) == 1
