"""Half sentences of letters, labels before amounts, heads amid a method: papers of strangers.

The lines are short ones of papers that nobody here wrote, each beside its source, or made up.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps

_LETTER = "From: Fran <f@mail.example>\nTo: Sue <s@mail.example>\nSubject: {}\n\n{}\n"
_GIN = (
    "\n\nYou will need:\n450g sloes\n225g caster sugar\n1 litre gin\n\n"
    "Prick the sloes and put them into a jar.\n\nPour in the sugar and gin and shake well."
)


# the first two as letters of a mead and of a sloe gin were wrapped (lighthacker.org,
# breakfastbythesea.blogspot.com); the others made up
@pytest.mark.parametrize(
    ("subject", "above", "title", "nowhere"),
    [
        ("Re: what you asked", "Hi Sue,\n\nglad you both liked it! Here's what I do, straight off "
         "the page I\nprinted years ago.\n\nNan's hedge gin", "Nan's hedge gin", "printed"),
        ("Sloe gin", "I made my batch in late September, and although I'm not usually known for "
         "my\npatience, I managed to resist temptation until now.", "Sloe gin", "temptation"),
        ("That gin", "Hi Sue,\n\nso here it is, as I promised you when we met at the\nstation in "
         "May:\n\nHedge gin", "Hedge gin", "station"),
    ],
)  # fmt: skip
def test_no_half_of_a_sentence_for_one_person_stays(
    subject: str, above: str, title: str, nowhere: str
) -> None:
    (recipe,) = brought(_LETTER.format(subject, above + _GIN), name="a.eml")
    assert fact(recipe, "title") == title
    assert nowhere not in recipe.text.split("\n---\n")[1]
    assert listed(recipe) == ["450g sloes", "225g caster sugar", "1 litre gin"]
    assert len(steps(recipe)) == 2


def test_what_a_letter_tells_of_the_thing_stays() -> None:
    said = "It is best made after the first frost, when the skins of the berries have gone\nsoft."
    (recipe,) = brought(_LETTER.format("Sloe gin", f"Sloe gin\n\n{said}{_GIN}"), name="a.eml")
    assert "the berries have gone soft." in recipe.text


def test_greetings_to_others_at_the_foot_are_left_out() -> None:
    note = f"Hi Sue,\n\nHedge gin{_GIN}\n\nSay hi to Jo. See you at Easter!\n\nFran"
    (recipe,) = brought(_LETTER.format("Gin", note), name="a.eml")
    assert "Easter" not in recipe.text
    assert "farewell is left out" in asked(recipe)


# regionalheute.de ("Zum Wälzen: 150 g Puderzucker"); the others made up
@pytest.mark.parametrize(
    ("last", "expected"),
    [
        ("Zum Wälzen: 150 g Puderzucker", ["150 g Puderzucker, zum Wälzen"]),
        ("Für den Guss: 50 g Zucker und 2 EL Zitronensaft",
         ["50 g Zucker, für den Guss", "2 EL Zitronensaft, für den Guss"]),
    ],
)  # fmt: skip
@pytest.mark.parametrize("heads", [("", ""), ("Zutaten\n", "Zubereitung\n")])
def test_labels_before_an_amount_stand_behind_it(
    last: str, expected: list[str], heads: tuple[str, str]
) -> None:
    told = "Die Butter mit dem Mehl verkneten. 10 Minuten backen."
    text = f"Kipferl\n\n{heads[0]}200 g Mehl\n100 g Butter\n\n{last}\n\n{heads[1]}{told}\n"
    (recipe,) = brought(text, "de_DE")
    assert listed(recipe) == ["200 g Mehl", "100 g Butter", *expected]
    assert steps(recipe) == [told]


def test_a_step_with_a_label_stays_one() -> None:
    told = "For the icing: 150 g icing sugar stirred into the lemon juice."
    (recipe,) = brought(f"Biscuits\n\n200 g flour\n100 g butter\n\n{told}\n\nBake for 10 min.\n")
    assert listed(recipe) == ["200 g flour", "100 g butter"]
    assert steps(recipe)[0] == told


# a page of biscuits in Markdown: "zum Wälzen!" in brackets, and
# "außerdem:" above the paper to bake on
def test_a_method_behind_tools_is_none_of_them() -> None:
    text = (
        "## Kipferl\n\n*Die Zutaten:*\n\n560 g Mehl\n420 g Butter\n2 Päckchen Vanillezucker\n"
        "Staubzucker und nochmal 2 Päckchen Vanillezucker (zum Wälzen!)\n\n*außerdem:*\nBackpapier"
        "\n\nZunächst heize ich das Backrohr vor. Dann knete ich einen Teig.\n"
    )
    (recipe,) = brought(text, "de_DE", "a.md")
    assert listed(recipe)[-1] == "Staubzucker und nochmal 2 Päckchen Vanillezucker (zum Wälzen!)"
    assert steps(recipe) == ["Zunächst heize ich das Backrohr vor. Dann knete ich einen Teig."]
    assert "Backpapier" in recipe.text.split("## Method")[1]


# a page of dandelion jelly whose bullets were typed as two stops
def test_two_stops_before_each_thing_are_marks() -> None:
    text = (
        "Dandelion Jelly\n..3 cups of boiling water\n..4 cups sugar\n..yellow food coloring\n"
        "Put the flowers in a jar, while you visit with a kid. Boil it with the sugar.\n"
    )
    (recipe,) = brought(text)
    assert listed(recipe) == ["3 cups of boiling water", "4 cups sugar", "yellow food coloring"]
    assert "meat" not in asked(recipe).lower()


def test_a_kid_that_helps_is_no_goat() -> None:
    told = "Visit with a kid while you put 2 lb of plums and 1 lb of sugar in a pan and boil it."
    (recipe,) = brought(f"Plum jam\n\n{told}\n")
    assert listed(recipe) == ["2 lb of plums", "1 lb of sugar"]


# a Swedish page of gingerbread: bold lines amid its method
def test_heads_amid_a_method_are_heads() -> None:
    page = (
        "<h1>Pepparkakor</h1><b>Ingredienser: ca 150 stycken</b><br>150 g smör<br>"
        "2 dl socker<br>ca 8 dl vetemjöl<br><br>Smält smör, socker och sirap i en gryta.<br>"
        "Ta av plattan och fortsätt röra<br>Tillsätt mjölet<br>"
        "Arbeta samman degen och låt vila över natten<br><br>"
        "<b>När det är dags att grädda:</b><br>Sätt ugnen på 200 grader<br>"
        "Grädda i 8 minuter<br><br><b>Ingredienser till glasyr:</b><br>"
        "2 dl florsocker<br>1 tsk olja<br><br>Rör samman allt.</p>"
    )
    (recipe,) = brought(page, "sv_SE", "a.html")
    assert listed(recipe)[3:] == ["Glasyr:", "2 dl florsocker", "1 tsk olja"]
    assert "\n### När det är dags att grädda\n" in recipe.text
    assert not [one for one in steps(recipe) if one.endswith(":")]


# 600 Miscellaneous Valuable Receipts (1860): "No. 150. Gooseberry Vinegar."
@pytest.mark.parametrize(
    ("line", "title"),
    [
        ("No. 150. Gooseberry Vinegar", "Gooseberry Vinegar"),
        ("Nr. 12: Hagebuttenmus", "Hagebuttenmus"),
        ("No bake cookies", "No bake cookies"),
        ("No-sugar plum jam", "No-sugar plum jam"),
    ],
)
def test_the_number_of_a_recipe_is_none_of_its_title(line: str, title: str) -> None:
    (recipe,) = brought(f"{line}\n\n1 kg plums\n500 g sugar\n\nBoil them for an hour.\n")
    assert fact(recipe, "title") == title


_JAM = (
    "Plum jam\n\n1 kg plums\n500 g sugar\n\nStone the plums. Boil them with the sugar for 20 min."
    "\n\nPot it hot into jars.\n\n"
)


# beside the steps of a Danish page of crab-apple jelly ("Tip!"), one of mostarda ("Nota importante
# 2:") and others of the judge's papers; the last five made up
@pytest.mark.parametrize(
    ("line", "note"),
    [
        ("Tip! You can test it on a plate.", "You can test it on a plate."),
        ("Nota importante 2: solo susine mature.", "Nota importante 2: solo susine mature."),
        ("A note on salt: Some leave it out.", "A note on salt: Some leave it out."),
        ("Verdict: Easy, but uses a lot of sugar!!", "Verdict: Easy, but uses a lot of sugar!!"),
        ("The cost of this present is easily under $1. Salt is cheap in the grocery store.",
         "The cost of this present is easily under $1. Salt is cheap in the grocery store."),
        ("Important note: wear gloves for this.", "Wear gloves for this."),
        ("Enjoy! Keep it in a dark place.", ""),
        ("Careful! Boil it for 5 minutes more if it runs.", ""),
        ("Tip the plums into the pan: boil them again.", ""),
        ("Price the jars at $2 and store them in the fridge.", ""),
    ],
)  # fmt: skip
def test_a_tip_or_a_remark_is_no_step(line: str, note: str) -> None:
    (recipe,) = brought(f"{_JAM}{line}\n")
    assert steps(recipe)[2:] == ([] if note else [line])
    assert (f"\n## Notes\n\n{note}\n" in recipe.text) == bool(note)


_CURD = (
    "# Lemon curd\n\n### Ingredients\n* 150 ml lemon juice\n* 150 g caster sugar\n"
    "* 100 g unsalted butter\n* 3 large eggs, beaten\n\n### Method\n"
    "1. Put all of it into a bowl over simmering water and stir until it coats a spoon.\n"
    "2. Pour into warm, sterilised jars and seal immediately.\n\n"
)


# a page of sea buckthorn curd: bold labels below its steps
def test_what_is_kept_in_the_fridge_by_a_note_is_kept_there() -> None:
    (recipe,) = brought(
        f"{_CURD}**Storage:** Keeps in the fridge for up to 4 weeks.\n", name="a.md"
    )
    assert "keeps:\n  unopened: 4 weeks\n  where: in the fridge\n" in recipe.text
    assert "is taken for how long it keeps unopened" in asked(recipe)
    assert "room temperature" not in asked(recipe)
    assert "may stand here" not in asked(recipe)


@pytest.mark.parametrize(
    "note",
    [
        "Keeps for up to 4 weeks.",
        "Once opened, keep it in the fridge and use within 4 weeks.",
        "Keeps 6 months in the pantry or 4 weeks in the fridge.",
    ],
)
def test_what_a_note_does_not_say_of_the_fridge_alone_is_not_taken(note: str) -> None:
    (recipe,) = brought(f"{_CURD}**Storage:** {note}\n", name="a.md")
    assert "\nkeeps:" not in recipe.text
    assert "room temperature" in asked(recipe)
