"""Spanish, Italian and Dutch names of foods: what is known, and what must stay unknown.

The phrases were typed from knowledge of the languages, without looking into the tables.
"""

from __future__ import annotations

from collections import Counter

import pytest

from stillroom.core.larder.food_reading import read_food
from stillroom.core.larder.index import SEVERAL, load_index, split_list
from stillroom.core.larder.index_file import HOUSE
from stillroom.core.larder.shelves import Larder
from stillroom.core.larder.words import normal_form

LANGUAGES = ("es", "it", "nl")
FEWEST = 600

# a foreign phrase = our food; one to a line
SPANISH = """
manzanas=apple
Limones=lemon
naranjas amargas=seville orange
ciruelas=plum
ciruelas pasas=prunes
fresas=strawberry
frambuesas=raspberry
higos secos=dried fig
dátiles=dates
cerezas=cherry
melocotones=peach
uvas pasas=raisins
endrinas=sloe
flores de saúco=elderflower
zanahorias=carrot
cebollas=onion
dientes de ajo=garlic
calabacín=courgette
berenjenas=aubergine
espinacas=spinach
almendras=almonds
almendras amargas=bitter almond
avellanas=hazelnuts
piñones=pine nuts
anacardos=cashews
cacahuetes=peanuts
CASTAÑAS=chestnuts
semillas de sésamo=sesame seeds
lentejas=lentils
altramuces=lupin seed
perejil=parsley
romero=rosemary
tomillo=thyme
salvia=sage
albahaca=basil
eneldo=dill
azafrán=saffron
nuez moscada=nutmeg
anís estrellado=star anise
canela en rama=cinnamon stick
clavos de olor=cloves
pimienta negra=black pepper
cúrcuma=turmeric
vainas de vainilla=vanilla pod
sal=salt
azúcar=granulated sugar
azúcar glas=icing sugar
miel=honey
melaza=molasses
harina de trigo=plain flour
harina de centeno=rye flour
arroz=rice
levadura fresca=fresh yeast
bicarbonato de sodio=bicarbonate of soda
mantequilla=butter
manteca de cerdo=lard
aceite=oil
aceite de oliva=olive oil
leche entera=whole milk
yogur=yogurt
huevos=eggs
claras de huevo=egg white
salmón=salmon
mejillones=mussels
gambas=prawns
pulpo=octopus
anchoas=anchovy
pollo=chicken
carne de cerdo=pork
vinagre de manzana=cider vinegar
salsa de soja=soy sauce
mostaza=mustard
vino tinto=red wine
ginebra=gin
coñac=cognac
cerveza=beer
sidra=cider
chocolate negro=dark chocolate
chocolate con leche=milk chocolate
cacao en polvo=cocoa powder
ácido cítrico=citric acid
agua de rosas=rosewater
leche de coco=coconut milk
agua=water
"""
ITALIAN = """
mele=apple
pere=pear
limoni=lemon
arance=orange
arance amare=seville orange
albicocche=apricot
pesche=peach
prugne secche=prunes
fragole=strawberry
lamponi=raspberry
ciliegie=cherry
fichi=fig
datteri=dates
uvetta=raisins
prugnole=sloe
bacche di sambuco=elderberry
fiori di sambuco=elderflower
scorza d'arancia=orange zest
carote=carrot
cipolle=onion
aglio=garlic
pomodori=tomato
cetrioli=cucumber
melanzane=aubergine
zucca=pumpkin
mandorle=almonds
mandorle amare=bitter almond
nocciole=hazelnuts
pistacchi=pistachios
castagne=chestnuts
arachidi=peanuts
anacardi=cashews
semi di papavero=poppy seeds
ceci=chickpeas
lupino=lupin seed
prezzemolo=parsley
rosmarino=rosemary
timo=thyme
salvia=sage
basilico=basil
alloro=bay leaf
zafferano=saffron
noce moscata=nutmeg
chiodi di garofano=cloves
anice stellato=star anise
pepe nero=black pepper
zenzero in polvere=ground ginger
bacche di ginepro=juniper berries
sale=salt
zucchero=granulated sugar
zucchero a velo=icing sugar
miele=honey
farina integrale=wholemeal flour
amido di mais=cornflour
riso=rice
pangrattato=breadcrumbs
lievito di birra fresco=fresh yeast
lievito per dolci=baking powder
bicarbonato di sodio=bicarbonate of soda
burro=butter
strutto=lard
olio=oil
funghi=mushroom
olio d'oliva=olive oil
latte intero=whole milk
uova=eggs
tuorli=egg yolk
albumi=egg white
tonno=tuna
vongole=clam
cozze=mussels
acciughe=anchovy
gamberi=prawns
manzo=beef
vitello=veal
tacchino=turkey
aceto di vino=wine vinegar
aceto di mele=cider vinegar
salsa di soia=soy sauce
maionese=mayonnaise
senape=mustard
vino bianco=white wine
birra=beer
sidro=cider
cioccolato fondente=dark chocolate
cioccolato bianco=white chocolate
acido citrico=citric acid
acqua di rose=rosewater
latte di mandorla=almond milk
acqua=water
"""
DUTCH = """
appels=apple
peren=pear
citroenen=lemon
sinaasappels=orange
pruimen=plum
gedroogde pruimen=prunes
aardbeien=strawberry
frambozen=raspberry
bramen=blackberry
kersen=cherry
vijgen=fig
dadels=dates
rozijnen=raisins
krenten=currants
sleedoornbessen=sloe
vlierbessen=elderberry
vlierbloesem=elderflower
wortels=carrot
uien=onion
knoflook=garlic
aardappelen=potato
bloemkool=cauliflower
spinazie=spinach
rode bieten=beetroot
amandelen=almonds
bittere amandelen=bitter almond
hazelnoten=hazelnuts
walnoten=walnuts
cashewnoten=cashews
pinda's=peanuts
pindakaas=peanut butter
tamme kastanjes=chestnuts
maanzaad=poppy seeds
sesamzaad=sesame seeds
linzen=lentils
kikkererwten=chickpeas
peterselie=parsley
rozemarijn=rosemary
tijm=thyme
salie=sage
laurierblaadjes=bay leaf
saffraan=saffron
nootmuskaat=nutmeg
kruidnagels=cloves
foelie=mace
steranijs=star anise
kaneelstokjes=cinnamon stick
zwarte peper=black pepper
jeneverbessen=juniper berries
gemberpoeder=ground ginger
zout=salt
suiker=granulated sugar
poedersuiker=icing sugar
honing=honey
roggemeel=rye flour
volkorenmeel=wholemeal flour
zelfrijzend bakmeel=self-raising flour
griesmeel=semolina
havermout=rolled oats
rijst=rice
verse gist=fresh yeast
bakpoeder=baking powder
zuiveringszout=bicarbonate of soda
roomboter=butter
reuzel=lard
olie=oil
paddenstoelen=mushroom
olijfolie=olive oil
zonnebloemolie=sunflower oil
volle melk=whole milk
karnemelk=buttermilk
slagroom=whipping cream
yoghurt=yogurt
eieren=eggs
eidooiers=egg yolk
zalm=salmon
garnalen=prawns
mosselen=mussels
oesters=oyster
ansjovis=anchovy
rundvlees=beef
varkensvlees=pork
kip=chicken
wijnazijn=wine vinegar
appelazijn=cider vinegar
sojasaus=soy sauce
mosterd=mustard
rode wijn=red wine
wodka=vodka
brandewijn=brandy
bier=beer
pure chocolade=dark chocolate
melkchocolade=milk chocolate
cacaopoeder=cocoa powder
citroenzuur=citric acid
gelatineblaadjes=gelatine sheet
rozenwater=rosewater
kokosmelk=coconut milk
water=water
"""
# words that may mean two foods or none, and foods that hold another's name
UNKNOWN = {
    "es": (
        "nueces",
        "nuez",
        "levadura",
        "licor",
        "hierbas",
        "hongos",
        "setas silvestres",
        "neguilla",
        "polvo de luna",
        "chocolate con almendras",
        "galletas de mantequilla",
        "aceite esencial de luna",
        "castañas de Indias",
        "miel de rododendro",
        "esencia de ron",
    ),
    "it": (
        "noce",
        "lievito",
        "farina di luna",
        "liquore",
        "anice",
        "erbe",
        "aceto aromatico",
        "castagne d'India",
        "castagna d'India",
        "burro di luna",
        "olio essenziale di luna",
        "cioccolato alle nocciole",
        "biscotti al burro",
        "polvere di luna",
    ),
    "nl": (
        "noten",
        "gist",
        "meel",
        "likeur",
        "stroop",
        "kruiden",
        "paardenkastanjes",
        "wilde kastanjes",
        "maanpoeder",
        "chocolade met hazelnoten",
        "boterkoekjes",
        "etherische olie van maan",
        "rumessence",
        "melkvrije boter",
        "kunsthoning",
    ),
}

# words too open to be given to one food, though English itself may know one of them
ABSENT = {
    "es": ("manteca", "nueces", "nuez", "anís", "sémola", "levadura", "aguardiente", "laurel"),
    "it": ("noce", "lievito", "anice", "oca", "citronella", "panna vegetale"),
    "nl": ("noten", "gist", "stroop", "room", "paprika", "sukade", "lupine"),
}


def _rows(text: str) -> list[tuple[str, str]]:
    lines = (line.partition("=") for line in text.split("\n") if line)
    return [(phrase, food) for phrase, _, food in lines]


WRITTEN = {"es": _rows(SPANISH), "it": _rows(ITALIAN), "nl": _rows(DUTCH)}
KNOWN = [(language, *row) for language in LANGUAGES for row in WRITTEN[language]]
STRANGE = [(language, phrase) for language in LANGUAGES for phrase in UNKNOWN[language]]


def _table(language: str) -> list[tuple[str, list[str]]]:
    text = (HOUSE / f"names_{language}.tsv").read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith("#")]
    assert lines[0] == "food\tnames"
    rows = [line.split("\t") for line in lines[1:]]
    assert all(len(row) == 2 for row in rows)
    return [(food, split_list(names)) for food, names in rows]


@pytest.mark.parametrize(
    ("language", "phrase", "food"), KNOWN, ids=[f"{r[0]}-{r[1]}" for r in KNOWN]
)
def test_a_foreign_phrase_is_known_as_its_food(language: str, phrase: str, food: str) -> None:
    reading = read_food(phrase, Larder(language=language))
    assert reading.known
    meant = read_food(food).food
    assert meant is not None
    assert [staple.name for staple in reading.foods] == [meant.name]


@pytest.mark.parametrize(("language", "phrase"), STRANGE, ids=["-".join(row) for row in STRANGE])
def test_a_word_that_may_mean_two_foods_stays_unknown(language: str, phrase: str) -> None:
    assert not read_food(phrase, Larder(language=language)).known


POISONS = [
    *(
        ("es", one)
        for one in ("laurel cerezo", "hojas de ruibarbo", "dedalera", "lirio de los valles")
    ),
    *(("it", one) for one in ("lauroceraso", "foglie di rabarbaro", "semi di ricino", "colchico")),
    *(("nl", one) for one in ("laurierkers", "rabarberbladeren", "lelietjes-van-dalen", "hulst")),
]


@pytest.mark.parametrize(("language", "phrase"), POISONS, ids=["-".join(row) for row in POISONS])
def test_a_poisonous_plant_is_known_as_one(language: str, phrase: str) -> None:
    food = read_food(phrase, Larder(language=language)).food
    assert food is not None
    assert "toxic" in food.tags


@pytest.mark.parametrize("language", LANGUAGES)
def test_the_common_foods_of_a_kitchen_are_named(language: str) -> None:
    foods = [food for food, _ in _table(language)]
    assert len(set(foods)) == len(foods)
    assert len(foods) >= FEWEST
    assert len(WRITTEN[language]) >= 60


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_name_is_given_twice(language: str) -> None:
    rows = _table(language)
    assert all(names for _, names in rows)
    forms = Counter(normal_form(name) for _, names in rows for name in names)
    assert [form for form, times in forms.items() if times > 1] == []


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_named_food_is_in_the_larder(language: str) -> None:
    foods = load_index()["rows"]
    assert [food for food, _ in _table(language) if food not in foods and food != SEVERAL] == []


# a word of the language that is English for something else: in a book of that language it is meant,
# everywhere else the English food
OWN_FIRST = {
    "es": {"salsa", "manteca", "membrillo", "picada", "masa"},
    "it": {"farina", "latte", "orzo", "peperone", "peperoni", "salsa", "anice", "pimento"},
    "nl": {"dragon", "krab", "paprika"},
}


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_english_name_of_another_food_is_meant_only_in_its_own_language(language: str) -> None:
    english = load_index()["names"]
    other = {
        normal_form(name)
        for food, names in _table(language)
        for name in names
        if english.get(normal_form(name), food) != food
    }
    assert other <= {normal_form(word) for word in OWN_FIRST[language]}
    for word in other:
        assert Larder(language="en").named(word) == read_food(english[word]).food


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_open_word_is_given_to_no_food(language: str) -> None:
    forms = {
        normal_form(name) for food, names in _table(language) if food != SEVERAL for name in names
    }
    assert [word for word in ABSENT[language] if normal_form(word) in forms] == []
