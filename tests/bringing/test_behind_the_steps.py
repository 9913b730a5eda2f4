"""What follows the steps, labels of steps, and lists that a page glued together or cut in two.

The classes are those of 40 papers fixed with what they should become before the code saw them (30
November 2026): damson chutneys of six British pages, Christmas biscuits of German weblogs, orange
marmalade and cordials in Italian and Swedish, mixes in jars, mead, salts, and files of repositories
(escowles/recipes, XonqNopp/recettes, kruchten/spoon); the last third those of 15 more: bath salts,
mincemeat, plum chutneys, pacharán, kruidnoten, apple syrup, cookies (MeYo80s/FamilyRecipeBook), and
those of 29 after them: piccalilli, mixes in jars, almond biscuits, quince paste, rhubarb jam,
herb salt, knäck, elderberry syrup, membrillo, mead.
The words are ours but for lines of lists.
"""

from __future__ import annotations

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.doubted import doubted_steps
from stillroom.bringing.found import Row
from stillroom.bringing.joining import with_heads
from stillroom.bringing.makes_said import makes_of
from stillroom.bringing.tails import tail_of
from stillroom.bringing.titles import writer_of
from stillroom.bringing.web_page import rows_of_page

STEPS = [Row("Stone the plums.", "step"), Row("Boil them.", "step"), Row("Pot it.", "step")]
JAM = """Plum jam

1 kg plums
1 kg sugar

1. Stone the plums.
2. Boil them with the sugar.
3. Pot the jam.
"""


@pytest.mark.parametrize(
    "said",
    [
        "Wir haben uns für kleine Sterne entschieden, die Form ist euch überlassen!",
        "Habt ihr dieses Jahr schon gebacken? Verratet uns euer Lieblingsrezept!",
        "Do you enjoy jam at this time of year? Let us hear of it in the comments section.",
        "Nästa år ska vi nog testa en annan sort! Det verkar smidigt.",
        "Honestly, nobody in our street buys a pot any more.",
    ],
)
def test_a_paragraph_behind_numbered_steps_in_which_nothing_is_done_is_asked(said: str) -> None:
    (found,) = brought(f"{JAM}\n{said}\n")
    assert len(steps(found)) == 3
    assert said in " ".join(found.text.partition("## Notes")[2].split())


@pytest.mark.parametrize(
    "said",
    [
        "Store it in a dark cupboard for up to a year.",
        "The flavours will mature when stored for a few months.",
        "Die Gläser kühl und dunkel aufbewahren.",
        "Lasciate riposare la marmellata per una settimana.",
        "Conservez les pots au frais.",
        "Ställ flaskorna mörkt och svalt, de håller i 6 månader.",
        "Bake at 180°C for 20 minutes.",
    ],
)
def test_a_paragraph_behind_numbered_steps_in_which_something_is_done_stays_a_step(
    said: str,
) -> None:
    assert tail_of([*STEPS, Row(said)]) == ()


def test_a_tip_with_its_head_and_a_yield_behind_the_steps_are_read_as_ever() -> None:
    rows = [*STEPS, Row("Tip: warm the sugar first."), Row("Makes 6 jars.")]
    assert tail_of(rows) == ()


def test_unnumbered_steps_without_a_gap_end_at_the_gap() -> None:
    told = """Damson chutney

900 g damsons
850 ml vinegar
450 g sugar
Stone the damsons and chop them.
Boil them with the vinegar until they are soft.
Add the sugar and simmer until it is thick.
Spoon it into warm jars and seal them.

I made some with what my neighbour left over, and the rest went to her.
BOY is it nice with cold meats........
"""
    (found,) = brought(told)
    assert len(steps(found)) == 4
    assert "BOY is it nice" in found.text.partition("## Notes")[2]


def test_a_first_thing_below_the_name_of_a_book_is_in_the_list() -> None:
    told = """Damson chutney
from an aunt's garden book (second edition)
675 g soft brown sugar
900 g damsons
850 ml vinegar

Boil all of it until it is thick, then pot it.
"""
    (found,) = brought(told)
    assert listed(found) == ["675 g soft brown sugar", "900 g damsons", "850 ml vinegar"]


@pytest.mark.parametrize("word", ["STEP", "Step", "Schritt", "Étape", "Paso", "Passo", "Stap"])
def test_labels_of_steps_that_copying_glued_to_sentences_part_them(word: str) -> None:
    told = f"""Plum jam

Ingredients
1 kg plums
1 kg sugar
Method
{word} 1
Stone the plums (see {word.lower()} 3 for the stones).{word} 2
Boil them with the sugar until the jam sets.{word} 3
Crack ten stones and put a kernel into each jar.
"""
    (found,) = brought(told)
    assert len(steps(found)) == 3
    assert steps(found)[1] == "Boil them with the sugar until the jam sets."


def test_a_table_that_only_lays_a_page_out_is_read_by_its_parts() -> None:
    page = (
        "<html><body><table><tr><td><h1>Oat biscuits</h1><ul><li>100 g oats</li>"
        "<li>50 g butter</li></ul><p>Mix them.<br>Bake them.</p></td></tr></table></body></html>"
    )
    shapes = [(row.text, row.shape) for row in rows_of_page(page)]
    assert shapes[:3] == [
        ("Oat biscuits", "heading"),
        ("100 g oats", "item"),
        ("50 g butter", "item"),
    ]


def test_a_table_of_amounts_and_foods_is_still_a_list() -> None:
    page = (
        "<table><tr><td>100 g</td><td>oats</td></tr><tr><td>50 g</td><td>butter</td></tr></table>"
    )
    assert [row.text for row in rows_of_page(page)] == ["100 g oats", "50 g butter"]


def test_the_words_below_a_picture_are_no_thing_of_the_list() -> None:
    told = "Damson chutney\n\n- 1 kg damsons\n- damson chutney\n- 500 g sugar\n\nBoil all of it.\n"
    (found,) = brought(told)
    assert listed(found) == ["1 kg damsons", "500 g sugar"]


def test_a_long_thing_between_others_stays_in_the_list_with_its_words() -> None:
    told = """Plum chutney

1 kg plums
Half lb-1lb of soft brown sugar, depending on how sweet your plums are. We would use half a pound
2 tsp salt

Boil all of it until it is thick.
"""
    (found,) = brought(told)
    assert len(listed(found)) == 3
    assert "depending on how sweet" in listed(found)[1]


def test_two_glued_things_are_two() -> None:
    (found,) = brought(
        "Soup mix\n\n- 2 teaspoons dried onion1 teaspoon dried parsley\n- 1 bay leaf\n\nMix it.\n"
    )
    assert listed(found) == ["2 teaspoons dried onion", "1 teaspoon dried parsley", "1 bay leaf"]


def test_a_title_with_how_much_it_makes_is_no_thing_of_the_list() -> None:
    told = (
        "BLACKCURRANT CORDIAL, ca 1 litre\n2 l blackcurrants\n6 dl water\n1 kg sugar\n1. Boil it.\n"
    )
    (found,) = brought(told)
    assert (fact(found, "title"), fact(found, "makes")) == ("Blackcurrant cordial", "ca 1 litre")
    assert len(listed(found)) == 3


def test_two_recipes_told_in_prose_below_the_same_title_are_two() -> None:
    told = """Liqueur de cassis
Prendre deux litres d'eau-de-vie et les verser sur une livre de cassis bien mûr dans une cruche.
Laisser le tout, puis ajouter 170 g de sucre par litre de jus et mettre en bouteilles.

Liqueur de cassis
Mettre 500 g de cassis et 60 g de framboises dans un bocal et le remplir d'eau-de-vie.
Filtrer au bout d'un mois, ajouter 500 g de sucre et mettre la liqueur en bouteilles.
"""
    assert len(brought(told, "fr_FR")) == 2


def test_what_a_sentence_says_is_made_is_no_ingredient() -> None:
    told = """Marmellata di arance

Per ottenere 4 barattoli di marmellata di arance occorrono circa 9-10 arance e 1 kg di zucchero.
Tagliate le arance e cuocetele con lo zucchero a fuoco basso per un'ora.
"""
    (found,) = brought(told, "it_IT")
    assert not any("barattoli" in line or line.endswith(" e") for line in listed(found))
    assert "list" in asked(found)


def test_a_second_recipe_whose_title_stands_above_a_starred_note_begins_anew() -> None:
    told = """Soup mix in a jar
1 cup lentils
1 cup rice
1. Layer them in a jar. Seal the jar.
Friendship soup
*Attach these words to the jar when you give it to someone.
1 jar soup mix
6 cups water
1. Boil the water and add the mix.
"""
    found = brought(told, "en_US")
    assert [one.title for one in found] == ["Soup mix in a jar", "Friendship soup"]


def test_a_letter_whose_first_line_says_nothing_of_it_is_named_by_its_subject() -> None:
    letter = (
        "From: Ann Sedge <ann@example.org>\nTo: me@example.org\nSubject: Sloe cordial\n\n"
        "Trial finished\n\nIt was better than I thought it was.\n\n1 kg sloes\n1 litre water\n\n"
        "Boil the sloes in the water, strain the cordial and bottle it while it is hot.\n"
    )
    (found,) = brought(letter, name="a.eml")
    assert found.title == "Sloe cordial"


def test_keeping_without_a_length_is_asked() -> None:
    (found,) = brought(f"{JAM}4. They can be kept refrigerated for weeks.\n")
    assert "said to keep, and not how long" in asked(found)
    assert "said to keep" not in asked(brought(f"{JAM}4. Leave it for a few weeks.\n")[0])


def test_a_method_above_its_list_is_whole_though_its_last_sentence_has_no_stop() -> None:
    page = (
        "<html><body><h1>Damson chutney</h1><p>Stone the plums and cut them into slices.</p>"
        "<p>Put all of it into a pan and boil it gently until it is thick.</p>"
        "<p>When ready pour into sterilised jars and cover with lined metal lids</p>"
        "<h3>– Ingredients –</h3><p>1 kg plums<br>500 g sugar</p>"
        "<h3>– Author –</h3><p>Somebody's website</p><p>Have you signed our petition?</p>"
        "</body></html>"
    )
    (found,) = brought(page, name="a.html")
    assert [one.split()[0] for one in steps(found)] == ["Stone", "Put", "When"]
    assert listed(found) == ["1 kg plums", "500 g sugar"]


def test_supplies_without_amounts_below_their_head_are_the_list() -> None:
    page = (
        "<html><body><h2>How to make bath salts</h2><p><b>Supplies needed</b></p>"
        "<p>Epsom salts<br>baking soda<br>borax (no detergent!) or table salt</p>"
        "<p>1. Mix two cups of the salts with a cup of soda in a bowl.</p>"
        "<p>2. Add the borax and put the lid on.</p></body></html>"
    )
    (found,) = brought(page, "en_US", "a.html")
    assert listed(found) == ["Epsom salts", "baking soda", "borax (no detergent!) or table salt"]
    assert len(steps(found)) == 2


@pytest.mark.parametrize("said", ["Close this window", "0 views", "2 min read", "3 comments"])
def test_a_window_s_words_are_no_title_and_no_step(said: str) -> None:
    (found,) = brought(f"{said}\n\n{JAM}\n{said}\n")
    assert found.title == "Plum jam"
    assert len(steps(found)) == 3


def test_whose_recipe_and_pictures_it_is_below_the_method_is_no_step() -> None:
    told = """Zwetschgen-Chutney

500 g Zwetschgen
50 g Zucker

Die Zwetschgen waschen und mit dem Zucker einkochen lassen.

Heiß in Gläser füllen und verschließen.

Das Chutney passt super zu Käseplatten. Wir wünschen guten Appetit!

Rezept: Petra Muster

Fotos: Anna Muster
"""
    (found,) = brought(told, "de_DE")
    assert len(steps(found)) == 2
    assert fact(found, "author") == "Petra Muster"


def test_two_ways_of_a_list_below_heads_of_their_own_stay_in_the_list() -> None:
    page = (
        "<html><body><p>13 de octubre, 2020</p><h1>Pacharán casero</h1><h3>Pacharán fuerte</h3>"
        "<ul><li>Llenar un quinto con endrinas</li><li>1/2 Anis</li><li>1/2 Orujo</li></ul>"
        "<h3>Pacharán suave</h3><ul><li>Anis</li><li>Canela en rama</li></ul>"
        "<h3>Preparación</h3><p>Dejar macerar las endrinas en la botella durante tres meses.</p>"
        "</body></html>"
    )
    (found,) = brought(page, "es_ES", "a.html")
    assert len([line for line in listed(found) if not line.endswith(":")]) == 5
    assert len(steps(found)) == 1
    assert not any("2020" in line for line in listed(found))


def test_what_is_also_needed_at_the_end_of_a_line_is_for_work() -> None:
    told = """Kruidkoek

Ingrediënten
300 g roggemeel, 100 g honing, 1 tl kaneel, snuf zout. Verder nodig: 1 cakeblik, bakpapier.
Bereiding
1. Meng alles en bak de koek in het cakeblik.
"""
    (found,) = brought(told, "nl_NL")
    assert listed(found) == ["300 g roggemeel", "100 g honing", "1 tl kaneel", "snuf zout"]
    assert "cakeblik" in found.text.partition("## Equipment")[2]


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("Serves/Yield: About 6 dozen cookies", "About 6 dozen cookies"),
        ("This makes a great gift.", ""),
        ("This recipe makes a lot of cookies and is flexible.", ""),
        ("Makes a dozen.", "a dozen"),
        ("Makes a large jar.", "a large jar"),
    ],
)
def test_what_a_line_says_is_made(said: str, makes: str) -> None:
    assert makes_of(said) == makes


def test_a_plus_within_brackets_parts_nothing() -> None:
    molasses = "2 cups molasses (or 1 cup molasses + 1 cup syrup; honey too)"
    (found,) = brought(f"Cookies\n\n- {molasses}\n- 4 eggs\n\nMix them.\n")
    assert len(listed(found)) == 2


def test_the_family_s_notes_are_no_steps() -> None:
    (found,) = brought(f"# {JAM}\n### Family Notes\n- Nan always had a pot of it.\n")
    assert len(steps(found)) == 3


def test_a_few_words_between_paragraphs_of_a_document_head_what_is_below() -> None:
    rows = [
        Row("Zubereitung des Ansatzes"),
        Row("Die Äpfel werden gewaschen, halbiert und in das Glas gelegt."),
        Row("Abfüllen"),
        Row("Der Likör wird in vorbereitete Flaschen abgefüllt und verschlossen."),
    ]
    assert [row.shape for row in with_heads(rows)] == ["heading", "line", "heading", "line"]
    told = [Row("Boil it for an hour, stirring."), Row("Serve"), Row("Eat it with a spoon, all.")]
    assert [row.shape for row in with_heads(told)] == ["line", "line", "line"]


def test_bottles_beside_one_food_are_to_work_with() -> None:
    (found,) = brought("Vanilla extract\n\n- 1 l vodka\n- 18 amber bottles\n\nFill them.\n")
    assert listed(found) == ["1 l vodka"]


def test_a_wait_before_use_is_not_asked_about_as_keeping() -> None:
    told = f"{JAM}\nTip: store it for at least 2 weeks to mature before using.\n"
    assert "How long it keeps" not in asked(brought(told)[0])


def test_lids_and_rings_are_to_work_with() -> None:
    told = (
        "Piccalilli\n\n- 7 green tomatoes\n- 2 cups sugar\n- Canning lids and rings\n\nBoil it.\n"
    )
    (found,) = brought(told, "en_US")
    assert listed(found) == ["7 green tomatoes", "2 cups sugar"]


@pytest.mark.parametrize(
    ("said", "makes"),
    [
        ("3 to 4 Pints", "3 to 4 Pints"),
        ("This recipe made six 1-pint jars (2 cups).", "six 1-pint jars"),
        ("24 cookies", "24 cookies"),
    ],
)
def test_a_yield_alone_below_the_steps_is_no_step(said: str, makes: str) -> None:
    (found,) = brought(f"{JAM.replace('1. ', '').replace('2. ', '').replace('3. ', '')}{said}\n")
    assert fact(found, "makes") == makes
    assert len(steps(found)) == 3


def test_how_the_spices_are_tied_is_said_of_them() -> None:
    told = """Piccalilli

12 onions, ground
1 pint vinegar
1 tablespoon pickling spices
tied into a bag
Grind the onions, boil them with the vinegar and pot them.
"""
    (found,) = brought(told)
    assert listed(found)[-1] == "1 tablespoon pickling spices, tied into a bag"
    assert len(steps(found)) == 1


def test_a_reader_s_thanks_are_no_step() -> None:
    said = "Karen, thanks for posting this. I lost my grandmother's over 30 years ago."
    (found,) = brought(f"{JAM.replace('1. ', '').replace('2. ', '').replace('3. ', '')}\n{said}\n")
    assert len(steps(found)) == 3


def test_what_dresses_a_jar_is_not_what_goes_into_it() -> None:
    page = (
        "<html><body><h1>Gingerbread in a jar</h1><p>To decorate the jar you will need:</p>"
        "<p>1 quart Mason jar</p><p>Fabric</p><p>Hole punch</p>"
        "<p>For jar contents you will need:</p>"
        "<p>2 cups flour</p><p>1-teaspoon baking soda</p><p>1 cup brown sugar</p>"
        "<ol><li>Mix the flour and the soda.</li><li>Layer them.</li><li>Add lid.</li></ol>"
        "</body></html>"
    )
    (found,) = brought(page, "en_US", "a.html")
    assert found.title == "Gingerbread in a jar"
    assert len(listed(found)) == 3
    assert "Fabric" in found.text.partition("## Equipment")[2]


def test_a_few_things_below_the_head_of_the_baking_are_no_other_recipe() -> None:
    page = (
        "<html><body><h1>Cookies in a jar</h1><p>3 cups flour<br>1 cup sugar</p>"
        "<p>Layer them in a jar and attach the directions to it.</p><h3>Baking directions</h3>"
        "<p>Cookie mix<br>1/2 cup butter<br>1 egg</p><p>Mix all and bake it for ten minutes.</p>"
        "</body></html>"
    )
    (found,) = brought(page, "en_US", "a.html")
    assert "More amounts stand amid the method" in asked(found)


def test_what_is_added_once_it_is_given_is_asked() -> None:
    told = """Cookie jars

Ingredients:
2 cups flour
1 cup sugar
Ingredients to be added to the jar once gifted:
125 g butter
1 egg
Method:
1. Layer the dry things in the jar.
"""
    (found,) = brought(told, "en_AU")
    assert "may be added by whoever is given it" in asked(found)


def test_the_lines_of_one_paragraph_of_a_page_stand_together() -> None:
    page = "<p>2 cups flour<br>a pinch of salt<br>An A4 sheet of plain paper</p><p>Sift them.</p>"
    assert [row.gap for row in rows_of_page(page)] == [True, False, False, True]


@pytest.mark.parametrize(
    ("said", "language"),
    [
        ("My neighbour has a tree of them, so I have my own free supply!", "en_GB"),
        ("¡Qué rico! Ahora puedes disfrutar de tu mermelada casera.", "es_ES"),
        ("Cette confiture est veloutée comme un sirop.", "fr_FR"),
    ],
)
def test_a_last_paragraph_in_which_nothing_is_plainly_done_is_asked(
    said: str, language: str
) -> None:
    told = f"Plum jam\n\n1 kg plums\n1 kg sugar\n\nBoil the plums.\n\nPot the jam.\n\n{said}\n"
    (found,) = brought(told, language)
    in_place = said in " ".join(steps(found))
    assert "part of the method?" in asked(found) or not in_place


@pytest.mark.parametrize(
    "said",
    [
        "Pot the jam.",
        "Do not rinse.",
        "Allineare i biscotti sulla teglia e cuocere in forno.",
        "A cottura ultimata, versate la marmellata nei vasetti e chiudete per bene.",
        "Luego se desmolda y se guarda en trozos.",
        "Ecraser les fruits et filtrer le tout.",
        "Mit einem Mörser zerkleinern Sie Salz und Kräuter weiter, bis sie fein sind.",
        "Häll upp på burkar och sätt på lock.",
    ],
)
def test_a_last_step_is_not_asked_about(said: str) -> None:
    # beside a step of its own language: one beside a doubted line is doubted with it
    assert not doubted_steps([said, said], ["1 kg plums"])


def test_a_caption_is_no_food_and_a_head_of_tips_no_step() -> None:
    page = (
        "<html><body><h1>Kräutersalz</h1><h2>Zutaten</h2><p>200 g Salz<br>50 g Kräuter</p>"
        "<figure><img src='a.jpg'><figcaption>ginger</figcaption></figure><h2>Zubereitung</h2>"
        "<p>Alles vermischen und trocknen lassen.</p>"
        "<h2>Tipps zum Sammeln und Verarbeiten der Kräuter</h2>"
        "<p>Achten Sie darauf, dass Sie nur essbare Blüten verwenden.</p></body></html>"
    )
    (found,) = brought(page, "de_DE", "a.html")
    assert listed(found) == ["200 g Salz", "50 g Kräuter"]
    assert len(steps(found)) == 1


def test_so_many_alone_below_a_title_is_how_much_it_makes() -> None:
    told = "Knäck\nca 100 st\n\n50 g smör\n3 dl sirap\n\n1. Koka allt.\n2. Häll upp det i formar.\n"
    (found,) = brought(told, "sv_SE")
    assert (fact(found, "makes"), len(listed(found))) == ("ca 100 st", 2)


def test_a_footnote_and_an_address_below_a_list_are_not_of_it() -> None:
    told = """Elderberry syrup

Ingredients:
- 1/2 cup dried elderberries*
- 2 cups water

* They are very hard to find in local stores, but here is a link to some.

https://www.example.com/berries

Directions:
- Boil the berries in the water.
- Strain and bottle it.
"""
    (found,) = brought(told, "en_US")
    assert len(listed(found)) == 2
    assert "hard to find" in found.text.partition("## Notes")[2]


def test_what_is_measured_above_the_title_of_a_list_is_asked_about() -> None:
    told = """Elderberry syrup

Put 1 cup of water and 1 cup of granulated sugar into a saucepan with the elderberries and boil it.

Elderberry honey syrup

3 cups water
1 cup honey

Boil the berries in the water and add the honey.
"""
    assert "measures things too" in asked(brought(told, "en_US")[-1])


def test_para_and_a_verb_say_no_yield() -> None:
    assert makes_of("Para elaborar este dulce se emplearon dos quilos de membrillos.") == ""
    assert makes_of("Para 4 tarros.") == "4 tarros"


def test_facts_between_a_list_and_the_head_of_its_method_are_no_steps() -> None:
    told = """Mead

1 gallon of water
3 pounds of honey

Target values:
Starting sugar: 1.1 SG

Instructions:
Put the honey into the water and stir it gently until it is dissolved.
"""
    (found,) = brought(told, "en_US")
    assert len(steps(found)) == 1


@pytest.mark.parametrize(
    ("said", "who"),
    [
        ("Recipe by Ann Sedge from Garden Weekly May 2015 issue", "Ann Sedge"),
        ("By Ann from the shop", "Ann from the shop"),
        ("From the kitchen of Ann", "Ann"),
        # the day that a page was posted on is nobody's name, and a month may be one
        ("Posted by the kitchen on 3 December", "the kitchen"),
        ("Posted by Ann Bell on December 3, 2019", "Ann Bell"),
        ("By Mary Lee, 12 May 2018", "Mary Lee"),
        ("By Claire on 5th May 2017", "Claire"),
        ("Recipe by Tom Reed on 14/02/2020", "Tom Reed"),
        ("By Ann \u2022 Jan 4, 2020", "Ann"),
        ("By Ann on the farm", "Ann on the farm"),
        ("By April May", "April May"),
    ],
)
def test_whose_recipe_a_line_says_it_is(said: str, who: str) -> None:
    assert writer_of(said) == who


def test_one_recipe_makes_so_much() -> None:
    assert makes_of("One recipe makes about 8 pints.") == "about 8 pints"
