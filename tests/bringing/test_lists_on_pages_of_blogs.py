"""Lists as blogs have them: titles over lists on one line, typed dashes, so much to a litre.

In the shape of pages that two judges of this house read on 30 November 2026: two spice mixes with
one method, an Italian walnut liqueur with typed dashes, another "per 2 lt di alcool", a Danish
syrup with a gap below each line, a page's buttons for other sizes. Expectations before the code.
"""

from __future__ import annotations

from bringing.drafts import asked, brought, fact, listed, steps

MIXES = """<html><body><h1>Make Your Own Spice Mixes</h1>
<h3>Taco Seasoning</h3><p>1 tbsp onion powder, 1 tbsp chili powder, 2 tsp cumin, 1 tsp salt</p>
<h3>Fajita Seasoning</h3><p>2 tbsp cumin, 1 tbsp salt, 4 tsp black pepper, 2 tsp paprika</p>
<p>Directions: For each, you mix the seasonings together and store them in a container.</p>
</body></html>"""


def test_two_mixes_on_one_page_are_two_recipes() -> None:
    recipes = brought(MIXES, name="mixes.html")
    assert [fact(one, "title") for one in recipes] == ["Taco Seasoning", "Fajita Seasoning"]
    assert [len(listed(one)) for one in recipes] == [4, 4]
    assert [len(steps(one)) for one in recipes] == [1, 1]
    assert "stands below several lists" in asked(recipes[0])


def test_so_much_to_two_litres_of_spirit_is_of_the_list() -> None:
    text = (
        "Nocino\n\nper 2 lt di alcool a 95°\n\n59 noci verdi\n10 chiodi di garofano\n\n"
        "Tagliare le noci e metterle nel contenitore con l'alcool.\n"
    )
    (recipe,) = brought(text, "it_IT")
    assert listed(recipe) == ["2 lt di alcool a 95°", "59 noci verdi", "10 chiodi di garofano"]


def test_so_much_of_what_is_made_is_no_thing() -> None:
    text = "Plum jam\n\nFor 2 litres of cordial:\n\n1 kg plums\n500 g sugar\n\nBoil the plums.\n"
    (recipe,) = brought(text)
    assert listed(recipe) == ["1 kg plums", "500 g sugar"]


def test_dashes_typed_on_a_page_are_marks() -> None:
    page = (
        "<html><body><h3>Nocino</h3><p>- noci verdi 1 kg<br>- alcool 95° 1 litro<br>"
        "- zucchero 850 gr.<br>- 1 pezzetto di cannella</p>"
        "<p>Tagliate le noci in quattro e mettetele in un vaso di vetro con l'alcool.</p>"
        "</body></html>"
    )
    (recipe,) = brought(page, "it_IT", "nocino.html")
    assert len(listed(recipe)) == 4
    assert len(steps(recipe)) == 1


def test_small_letters_below_gaps_are_things_up_to_the_first_sentence() -> None:
    text = (
        "Hyldebærsaft\n\nIngredienser\n\n40 klaser hyldebær\n\n2-3 sure æbler\n\n"
        "en lille strimmel skræl fra en økocitron\n\nvand\n\nsukker (500-800 g)\n\n\n"
        "Skyl klaserne i koldt vand. Lad dem dryppe godt af i en stor sigte.\n"
    )
    (recipe,) = brought(text, "da_DK")
    assert listed(recipe)[-2:] == ["vand", "sukker (500-800 g)"]
    assert len(listed(recipe)) == 5
    assert len(steps(recipe)) == 1


def test_the_buttons_for_another_size_head_nothing() -> None:
    text = (
        "Fudge\n\nIngredients\n\nScale 1x 2x 3x\n\n1 cup sugar\n1 tin milk\n\nMethod\n\nBoil it.\n"
    )
    (recipe,) = brought(text)
    assert listed(recipe) == ["1 cup sugar", "1 tin milk"]


def test_icing_sugar_of_spain_is_no_glass() -> None:
    text = (
        "Polvorones\n\nIngredientes\n\n250 gramos de azúcar glas (es la reducida a polvo)\n"
        "500 g de harina\n\nPreparación\n\nMezclar el azúcar con la harina y hornear.\n"
    )
    (recipe,) = brought(text, "es_ES")
    assert listed(recipe)[0].startswith("250 gramos de azúcar glas")
