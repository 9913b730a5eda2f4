"""Whole giving lists as people write them in other languages, with days and needs in their words.

Fixed on 30 November 2026 before they were tried: lists by several hands (a note, a table, key by
key), of which all were stopped at their first key. Needs are worded after news, forums and allergy
guidance (dhnet.be, koalisa.com, coupdepouce.com, foreldreportalen.no, maelkeallergi.dk, libelle.nl,
antena3.com, danielahalm.de). Let through then: the nuts of "nötter och ägg".
"""

from __future__ import annotations

from datetime import date

import pytest

from giving.lists import TODAY, demo_recipes, read_dict, small_list
from stillroom.core.private.shapes import find_giving_list
from stillroom.core.words.problems import ProblemsFound, Unreadable
from stillroom.giving.against_book import check_list
from stillroom.giving.asked_back import asked_about
from stillroom.giving.facts import facts_of
from stillroom.giving.list_words import near_key
from stillroom.giving.reading import read_giving_list
from stillroom.giving.rules import why_refused
from stillroom.giving.written import read_day
from stillroom.giving.written_time import read_days_off

BY_NAME = {recipe.slug: recipe for recipe in demo_recipes()}
LISTS = {
    "English note": """
list: Xmas jars
when: Friday 24th December 2027
baskets: {bag: 2 to eat}
makes: [vanilla-sugar, rosemary-salt]
people:
  - Maureen next door: can't do dairy since her op
""",
    "German": """
Geschenkliste: Weihnachten 2027
Gebetag: Fr., 24.12.2027
Sprache: de
Körbe: {klein: {Essen: 2}}
Rezepte: [vanilla-sugar, rosemary-salt]
Haushalte:
  - {Name: Maureen next door, Korb: klein, meidet: "verträgt keine Milch mehr"}
Preise:
  - {Name: Zucker, Preis: "1,29 € / 1 kg"}
Währung: EUR
""",
    "French": """
liste de cadeaux: Noël
date: vendredi 24 décembre 2027
langue: fr
monnaie: EUR
paniers: {petit: 2 à manger}
recettes: [vanilla-sugar, rosemary-salt]
foyers:
  - {nom: Maureen next door, panier: petit, évite: ne supporte plus les produits laitiers}
prix:
  - gousses de vanille: 3,90 € les 2
""",
    "Spanish": """
lista de regalos: Navidad
fecha: 24 de diciembre de 2027
idioma: es
moneda: EUR
cestas: {cesta: {comer: 2}}
recetas: [vanilla-sugar, rosemary-salt]
hogares:
  - {nombre: Maureen next door, alergias: es alérgica a la proteína de la leche}
precios:
  - azúcar: 1,15 € el kilo
""",
    "Italian": """
lista dei regali: Natale
data: 24 dicembre 2027
lingua: it
valuta: EUR
cesti: {cesto: {da mangiare: 2}}
ricette: [vanilla-sugar, rosemary-salt]
famiglie:
  - {nome: Maureen next door, allergie: mia suocera non tollera latte}
""",
    "Dutch": """
cadeaulijst: Kerst
datum: op vrijdag 24 december 2027
taal: nl
munt: EUR
manden: {zakje: {eten: 2}}
recepten: [vanilla-sugar, rosemary-salt]
huishoudens:
  - {naam: Maureen next door, allergieën: zoontje heeft koemelkallergie}
prijzen:
  - suiker: 1 kilo € 1,09
""",
    "Swedish": """
presentlista: Jul
ges bort: fredag 24 december 2027
språk: sv
valuta: SEK
korgar: {påse: {äta: 2}}
recept: [vanilla-sugar, rosemary-salt]
hushåll:
  - {namn: Maureen next door, undviker: tål inte mjölk, barn: [2 år, 6 år]}
priser:
  - smör: 500 g 54,90
""",
}


@pytest.mark.parametrize("text", LISTS.values(), ids=LISTS)
def test_a_list_in_ones_own_words_is_read_and_known_to_the_wall(text):
    read = read_giving_list(text, "list.yml")
    (household,) = read.giving.households
    assert (household.name, read.giving.giving_day) == ("Maureen next door", date(2027, 12, 24))
    assert read.giving.baskets[next(iter(household.basket))].eat == 2
    refused = {slug for slug, r in BY_NAME.items() if why_refused(household, facts_of(r), TODAY)}
    assert refused >= {"cocoa-marshmallow-mix", "almond-shortbread", "salted-honey-toffee"}
    assert refused.isdisjoint({"vanilla-sugar", "rosemary-salt", "bramble-jelly"})
    assert find_giving_list(text)


@pytest.mark.parametrize(
    "page",
    [
        "title: Summer fair\ndate: 2027-07-01\npeople: 40\nrecipes: [jam]\n",
        "Rezepte:\n  - Gelee\nPersonen: 4\nTüten: 3\n",
        "liste: courses\n- sucre\n- beurre\n",
        "The gift list: who brought what.\n",
        "people:\n  - 4\nboxes: 3\ndate: May\n",
    ],
)
def test_a_page_with_such_words_is_no_list(page):
    assert find_giving_list(page) == 0


def test_a_short_name_is_no_slip_of_a_key():
    assert not near_key("household", "Kurt", "name")  # beside "kurv"
    assert near_key("household", "alergies", "name")


@pytest.mark.parametrize(
    ("said", "day"),
    [
        ("Fr., 24.12.2027", date(2027, 12, 24)),
        ("Tues 21 Dec 2027", date(2027, 12, 21)),
        ("1. Advent 2027", date(2027, 11, 28)),  # the fourth Sunday before Christmas
        ("4:e advent 2027", date(2027, 12, 19)),
        ("julafton 2027", date(2027, 12, 24)),
        ("torsdag den 23. december 2027", date(2027, 12, 23)),
        ("Freitag, den 24. Dezember 2027", date(2027, 12, 24)),
        ("op zondag 5 december 2027", date(2027, 12, 5)),
        ("el viernes 24 de diciembre de 2027", date(2027, 12, 24)),
        ("le vendredi 24 décembre 2027", date(2027, 12, 24)),
        ("1.3.2028", date(2028, 3, 1)),
        ("6/6/2027", date(2027, 6, 6)),
        ("Sunday 12/5/2027", date(2027, 12, 5)),  # the twelfth of May is a Wednesday
        ("2nd Sunday of May 2027", date(2027, 5, 9)),
        ("Saturday before Christmas 2027", date(2027, 12, 18)),
        ("12/6/2027", 'Write "12 June 2027" or "6 December 2027".'),
        ("3-4-2028", 'Write "3 April 2028" or "4 March 2028".'),
        ("Mo 24.12.2027", "falls on a Friday"),
        ("31/13/2027", "is not a day of the calendar"),
        ("29.2.2027", "is not a day of the calendar"),
    ],
)
def test_a_day_is_read_or_both_its_meanings_are_told(said, day):
    if isinstance(day, date):
        assert read_day(said, "DE") == day
        return
    with pytest.raises(Unreadable) as asked:
        read_day(said, "DE")
    assert day in f"{asked.value.what} {asked.value.mend}"


def test_where_the_month_goes_first_dots_are_asked_about():
    with pytest.raises(Unreadable) as asked:
        read_day("1.3.2028", "US")
    assert asked.value.mend == 'Write "1 March 2028" or "3 January 2028".'


def test_several_days_are_several_lists():
    with pytest.raises(ProblemsFound) as found:
        read_dict(small_list(**{"giving day": ["1 May 2027", "24 December 2027"]}))
    assert "Where you give on several, make a list for each." in str(found.value)


@pytest.mark.parametrize(
    ("said", "first", "last"),
    [
        ("1.3.2028 bis 14.3.2028", date(2028, 3, 1), date(2028, 3, 14)),
        ("1.-14.3.2028", date(2028, 3, 1), date(2028, 3, 14)),
        ("1.3. - 14.3.2028", date(2028, 3, 1), date(2028, 3, 14)),
        ("del 2 al 15 de agosto de 2027", date(2027, 8, 2), date(2027, 8, 15)),
        ("2 t/m 15 augustus 2027", date(2027, 8, 2), date(2027, 8, 15)),
        ("20.12.2027-3.1.2028", date(2027, 12, 20), date(2028, 1, 3)),
        ("fra 2. til 15. august 2027", date(2027, 8, 2), date(2027, 8, 15)),
    ],
)
def test_days_away_are_read_in_five_languages(said, first, last):
    days = sorted(read_days_off([said], "DE"))
    assert (days[0], days[-1], len(days)) == (first, last, (last - first).days + 1)


ALCOHOL = "quince-ratafia heather-mead lemon-verbena-cut-spirit"
GLUTEN = "almond-shortbread oat-thyme-biscuits"
NUTS = "almond-shortbread quince-ratafia"
MILK = "almond-shortbread cocoa-marshmallow-mix sea-buckthorn-curd salted-honey-toffee"
VEGAN = f"{MILK} heather-mead"
MEAT = "cocoa-marshmallow-mix"  # beef gelatine
NEEDS = [
    ("dottern är allergisk mot nötter och ägg", f"{NUTS} sea-buckthorn-curd"),
    ("nötter och ägg", f"{NUTS} sea-buckthorn-curd"),
    ("tål inte gluten", GLUTEN),
    ("nykterist", ALCOHOL),
    ("laktosintolerant", MEAT),
    ("mjölkproteinallergi", MILK),
    ("vegan sedan 2015", VEGAN),
    ("har mælkeallergi", MILK),
    ("nøtteallergi", NUTS),
    ("gluten/melkefri", f"{GLUTEN} {MILK}"),
    ("drikker ikke alkohol", ALCOHOL),
    ("ne tolère plus le lactose", MEAT),
    ("végétalienne depuis toujours", VEGAN),
    ("n'a pas droit au gluten et aux produits laitiers", f"{GLUTEN} {MILK}"),
    ("ma belle-soeur ne boit pas d'alcool", ALCOHOL),
    ("ne mange plus de viande depuis 10 ans", MEAT),
    ("n'aime ni les poissons ni les fruits de mer", ""),
    ("grossesse", ALCOHOL),
    ("marido celíaco", GLUTEN),
    ("mi sobrino es alérgico a los frutos secos", NUTS),
    ("vegana desde hace 3 años", VEGAN),
    ("embarazo", ALCOHOL),
    ("Lukas reagiert auf Nüsse und Erdnüsse", NUTS),
    ("trinkt keinen Alkohol mehr", ALCOHOL),
    ("isst seit 2 Jahren kein Fleisch mehr", MEAT),
    ("bekommt von Mandeln Ausschlag", NUTS),
    ("schwanger im 5. Monat", ALCOHOL),
    ("einer ist Moslem, eine vegetarisch", ALCOHOL),
    ("mag alles", ""),
    ("mio nipote è allergico alla frutta a guscio", NUTS),
    ("non beve più alcol", ALCOHOL),
    ("zoontje heeft koemelkallergie", MILK),
    ("al 5 jaar veganist", VEGAN),
    ("schoonzus is zwanger", ALCOHOL),
    ("can't do dairy since her op", MILK),
    # a second sample, fixed before it was tried as well: 12 of 37 were asked about needlessly
    ("ne digère pas bien le lait", MILK),
    ("arrêté l'alcool en mars", ALCOHOL),
    ("wir essen halal", ALCOHOL),
    ("Walnüsse jucken im Mund", ""),
    ("no le sientan bien los lácteos", MILK),
    ("la zia è intollerante al glutine", GLUTEN),
    ("niente noci per il piccolo", NUTS),
    ("dochter kan niet tegen melk", MILK),
    ("moren min har cøliaki", GLUTEN),
    ("spiser ikke svin", ""),
    ("min sambo är vegan och allergisk mot soja", VEGAN),
    ("sønnen vores tåler ikke æg og nødder", f"{NUTS} sea-buckthorn-curd"),
    ("eet alles behalve vlees", MEAT),
]


@pytest.mark.parametrize(("said", "never"), NEEDS)
def test_a_need_is_understood_without_a_question(said, never):
    read = read_dict(small_list(households=[{"name": "A", "basket": "small", "avoid": said}]))
    check_list(read, BY_NAME)
    (household,) = read.giving.households
    refused = {slug for slug, r in BY_NAME.items() if why_refused(household, facts_of(r), TODAY)}
    assert refused >= set(never.split())
    assert refused.isdisjoint({"rosemary-salt", "vanilla-sugar", "lavender-sugar"})


@pytest.mark.parametrize(
    "said",
    [
        "zorple och ägg",
        "zorple eller mjölk",
        "kann zorple und Eier nicht",
        "nicht mehr allergisch gegen Nüsse",
        "inte längre allergisk mot nötter",
        "n'est plus allergique aux noix",
        "ya no es alérgico a las nueces",
        "non è più allergica alle noci",
        "niet meer allergisch voor noten",
        "reagiert auf Zorple",
        "kann wieder Nüsse essen",
        "peut manger du gluten",
        "kan melk drinken",
        "war schwanger",
        "non è più incinta",
    ],
)
def test_what_is_not_all_understood_or_turned_round_is_asked_about(said):
    assert asked_about(said)


def test_a_medicine_is_asked_about_with_foods_that_it_is_about():
    asked = asked_about("phenelzine (an MAOI)")
    assert asked
    assert "mature cheese" in asked.mend
    assert "strawberries" not in asked.mend


# heads, days and needs as six kitchens would say them; fixed before any was read
KITCHENS = {
    "de": """Geschenkliste: Weihnachten 2027
Schenktag: 24.12.2027
von: Lotte
Körbe: {klein: 1 zu essen}
wir machen: [rosemary-salt]
Haushalte:
  - {Name: Oma Trude, Korb: klein, verträgt nicht: Nüsse}
""",
    "fr": """liste de cadeaux: Étrennes
date: 24 décembre 2027
de: Josette
langue: fr
paniers: {panier: 1 à manger}
nous faisons: [{recette: almond-shortbread, par fournée: 3}, rosemary-salt]
pour qui:
  - {nom: Mamie Odette, panier: panier, éviter: noix}
""",
    "es": """lista de regalos: Reyes
día: 24 de diciembre de 2027
de: Abuela Carmen
cestas: {cesta: {comer: 1}}
hacemos: [{receta: almond-shortbread, por hornada: 3}, rosemary-salt]
para quién:
  - {nombre: Prima Inés, cesta: cesta, evitar: nueces}
""",
    "it": """lista dei regali: Natale
giorno: 24 dicembre 2027
da: Nonna Pia
cesti: {cestino: {mangiare: 1}}
facciamo: [{ricetta: almond-shortbread, per infornata: 3}, rosemary-salt]
per chi:
  - {nome: Zia Rosa, cesto: cestino, da evitare: noci}
""",
    "nl": """cadeaulijst: Kerst
datum: 24 december 2027
van: Truus
manden: {mandje: {eten: 1}}
wij maken: [{recept: almond-shortbread, per baksel: 3}, rosemary-salt]
voor wie:
  - {naam: Oma Riet, mand: mandje, vermijdt: noten}
""",
    "sv": """gåvolista: Jul
dag: 24 december 2027
från: Gull
korgar: {påse: {äta: 1}}
vi gör: [{recept: almond-shortbread, per sats: 3}, rosemary-salt]
till vem:
  - {namn: Farbror Nils, korg: påse, får inte: nötter}
""",
}


@pytest.mark.parametrize("language", KITCHENS)
def test_a_list_of_another_kitchen_is_read_and_keeps_what_it_must(language):
    read = read_giving_list(KITCHENS[language], "list.yml", language=language)
    giving = read.giving
    assert giving.giving_day == date(2027, 12, 24)
    assert giving.from_
    assert [kind.eat for kind in giving.baskets.values()] == [1]
    (household,) = giving.households
    book = {one.slug: one for one in demo_recipes()}
    check_list(read, book)
    kept = [n for n, one in book.items() if why_refused(household, facts_of(one), TODAY)]
    assert "almond-shortbread" in kept
    assert "rosemary-salt" not in kept


def test_a_comma_in_braces_parts_no_basket():
    text = "baskets: {small: 2 to eat, 1 to drink}\n"
    text += (
        "giving list: A\ngiving day: 24 December 2027\nmakes: [rosemary-salt]\nhouseholds: [Ann]\n"
    )
    (kind,) = read_giving_list(text, "list.yml").giving.baskets.values()
    assert (kind.eat, kind.drink) == (2, 1)


def test_what_sort_a_thing_is_may_be_said_as_its_basket_says_it():
    text = KITCHENS["de"].replace("[rosemary-salt]", "[{Rezept: rosemary-salt, Art: essen}]")
    assert read_giving_list(text, "list.yml", language="de").giving.makes[0].sort == "eat"
