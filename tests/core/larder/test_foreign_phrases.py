"""Phrases of foreign recipes: a food with harmless words beside it is known, and as no other food.

Each language's phrases were typed from knowledge of it, without looking into the tables: other
spellings, plurals and endings than stand there. On the right what must be read, "?" where the
phrase must stay unknown.
"""

from __future__ import annotations

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import load_index
from stillroom.core.larder.index_file import HOUSE
from stillroom.core.larder.shelves import Larder

PHRASES = {
    "es": """
cortezas de limón = lemon peel
astilla de canela = cinnamon stick
flores de azahar = orange blossom
cortezas = ?
ajo picado = garlic
2 dientes de ajo, picados = garlic
perejil fresco picado = parsley
cebollas pequeñas = onion
limones ecológicos = lemon
huevos grandes = eggs
huevo batido = eggs
mantequilla a temperatura ambiente = butter
manzanas peladas en rodajas = apple
ramitas de romero = rosemary
leche desnatada = skimmed milk
leche semidesnatada = semi-skimmed milk
almendras amargas = bitter almond
sandía = watermelon
coco = coconut
coco rallado = desiccated coconut
azúcar mascabado = muscovado sugar
mermelada de frambuesa = raspberry jam
mermelada de albaricoque = apricot jam
lentejas = lentil
trigo sarraceno = buckwheat
bacalao salado = salt cod
vermut = vermouth
sal de apio = celery salt
hojas de ruibarbo = rhubarb leaf
tomate en polvo = ?
anís = ?
nueces = ?
queso de luna = ?
salsa = ?
""",
    "fr": """
farine de blé = plain flour
œufs = eggs
gros œufs = eggs
gousses d'ail hachées = garlic
gousse d’ail écrasée = garlic
beurre demi-sel = butter
beurre fondu = butter
oignon émincé = onion
persil plat haché = parsley
citron non traité = lemon
citrons bio = lemon
zeste de citron bio = lemon peel
jus d'un citron = lemon juice
levure = yeast or baking powder
levure chimique = baking powder
crème fraîche = crème fraîche
lait d'amandes = almond milk
raisins secs = raisins
raisin = grape
prunes = plum
pruneaux = prunes
framboises = raspberry
gros sel = coarse salt
eau tiède = water
amandes amères = bitter almond
feuilles de rhubarbe = rhubarb leaf
piment = ?
farine de lune = ?
beurre de lune = ?
pommes d'amour = ?
""",
    "de": """
braunen Zucker = brown sugar
weißen Rum = white rum
griechischen Joghurt = greek yogurt
getrocknetem Thymian = dried thyme
kandierten Ingwer = candied ginger
schwarzen Zucker = ?
gehackte Petersilie = parsley
frische, gehackte Petersilie = parsley
große Zwiebeln = onion
Zwiebel, fein gehackt = onion
Bio-Zitronen = lemon
weiche Butter = butter
reife Bananen = banana
geriebener Käse = cheese
Mandeln, gehackt = almonds
Kümmel = caraway seeds
Mandelmehl = ground almonds
Zitronat = candied citron
Orangeat = candied orange peel
Kokosfett = coconut fat
Pampelmuse = pomelo
Nelken = cloves
Mispeln = medlar
Trüffel = truffle
Schmalz = lard
Quark = quark
Hefe = yeast
Weinstein = cream of tartar
Gelierzucker = jam sugar
Hafermehl = oat flour
Buchweizen = buckwheat
Bittermandeln = bitter almond
Wassermelone = watermelon
Muscovadozucker = muscovado sugar
rote Paprika, gewürfelt = red pepper
Paprika = ?
Rhabarberblätter = rhubarb leaf
Mondbutter = ?
vegane Butter aus Mondmilch = ?
""",
    "it": """
aglio tritato = garlic
spicchi d'aglio tritati = garlic
cipolla tritata finemente = onion
prezzemolo fresco = parsley
uova grandi = eggs
burro fuso = butter
limoni non trattati = lemon
mele sbucciate a fette = apple
foglie di basilico = basil
peperoni = sweet pepper
latte = milk
latte scremato = skimmed milk
farina 00 = plain flour
zucchero di canna = cane sugar
mandorle amare = bitter almond
cocomero = watermelon
grano saraceno = buckwheat
confettura di lamponi = raspberry jam
olive nere = black olive
pomodori pelati = tinned tomato
noci = walnuts
lievito = ?
salsa = ?
foglie di rabarbaro = rhubarb leaf
""",
    "nl": """
fijngesneden ui = onion
gehakte peterselie = parsley
verse gember, geraspt = root ginger
grote eieren = eggs
teentjes knoflook, fijngehakt = garlic
zachte boter = butter
biologische citroenen = lemon
appels, geschild en in blokjes = apple
verse dragon = tarragon
magere melk = skimmed milk
halfvolle melk = semi-skimmed milk
bittere amandelen = bitter almond
watermeloen = watermelon
kokosnoot = coconut
geraspte kokos = desiccated coconut
boekweit = buckwheat
frambozenjam = raspberry jam
linzen = lentil
vermout = vermouth
paprika = ?
gehakt = ?
noten = ?
maanboter = ?
rabarberbladeren = rhubarb leaf
""",
}
CASES = [
    (language, *(part.strip() for part in line.split("=")))
    for language, lines in PHRASES.items()
    for line in lines.strip().splitlines()
]


@pytest.mark.parametrize(
    ("language", "phrase", "food"), CASES, ids=[f"{c[0]}-{c[1]}" for c in CASES]
)
def test_a_foreign_phrase_is_its_food_and_no_other(language: str, phrase: str, food: str) -> None:
    reading = read_food(phrase, Larder(language=language))
    named = {one.name for one in reading.foods}
    assert (named if reading.known else "?") == ("?" if food == "?" else {food})


def test_in_an_english_book_an_english_name_goes_first() -> None:
    english = Larder(language="en")
    for word in ("citron", "prune", "raisin", "framboise", "farina", "dragon fruit"):
        food = read_food(word, english).food
        assert food is not None
        assert food.name == load_index()["names"][word]


@pytest.mark.parametrize("language", ["de", "fr", "es", "it", "nl"])
def test_six_hundred_foods_have_a_name_in_each_language(language: str) -> None:
    lines = (HOUSE / f"names_{language}.tsv").read_text(encoding="utf-8").splitlines()
    foods = {line.partition("\t")[0] for line in lines if not line.startswith("#")}
    assert len(foods & set(load_index()["rows"])) >= 600
