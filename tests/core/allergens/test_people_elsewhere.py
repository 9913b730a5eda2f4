"""What somebody is or has is read in eleven languages, as a cook writes it of one in her list.

Each row: what it means, the language, the sentences. Their words are those of the languages' own
dictionaries (a patient by her illness, man and woman); invented sentences around them.
"""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from stillroom.core.allergens.avoided import Avoided
from stillroom.core.allergens.sentences import read_avoided
from stillroom.giving.needs_written import needs_said

SAID = """
coeliac | en | coeliac; a coeliac; Ann is a coeliac; ann has coeliac disease; diagnosed coeliac
coeliac | de | ann ist Zöliakin; Ann ist Zöliakerin; Ann hat Zöliakie; Zöliaker; Zöliakiepatientin
coeliac | de | Zöliakie-Patient; Ann leidet an Zöliakie; Ann ist an Zöliakie erkrankt
coeliac | fr | Ann est cœliaque; Ann a la maladie cœliaque; Ann est coeliaque
coeliac | fr | Ann souffre de la maladie cœliaque; Ann est atteinte de la maladie cœliaque
coeliac | fr | malade cœliaque
coeliac | es | Ann es celíaca; Ann es celiaco; Ann tiene celiaquía; Ann padece celiaquía
coeliac | es | Ann sufre de celiaquía
coeliac | it | Ann è celiaca; Ann soffre di celiachia; Ann ha la celiachia
coeliac | it | Ann è affetta da celiachia
coeliac | nl | Ann heeft coeliakie; Ann is coeliakiepatiënt; Ann is coeliaak
coeliac | nl | Ann lijdt aan coeliakie; coeliakie-patiënt
coeliac | sv | Ann har celiaki; Ann är celiakiker; Ann är glutenintolerant; Ann lider av celiaki
coeliac | da | Ann har cøliaki; Ann er cøliaker; Ann lider af cøliaki; cøliakipatient
coeliac | nb | Ann har cøliaki; Ann er cøliaker; Ann lider av cøliaki
coeliac | pt | Ann é celíaca; Ann tem doença celíaca; Ann sofre de doença celíaca; Ann é celíaco
coeliac | pl | Ann ma celiakię; Ann choruje na celiakię; celiakia; Ann jest chora na celiakię
coeliac | pl | celiak
sugar | en | Ann is diabetic; Ann has diabetes; a type 1 diabetic
sugar | de | Ann ist Diabetikerin; Ann hat Diabetes; Ann ist zuckerkrank; Ann hat Zucker
sugar | de | Typ-1-Diabetikerin; Ann ist Diabetiker Typ 2
sugar | fr | Ann est diabétique; Ann a du diabète; Ann fait du diabète; Ann souffre de diabète
sugar | es | Ann es diabética; Ann tiene diabetes; Ann padece diabetes
sugar | it | Ann è diabetica; Ann ha il diabete; Ann soffre di diabete
sugar | nl | Ann heeft diabetes; Ann is diabeet; Ann heeft suikerziekte; Ann is suikerpatiënt
sugar | nl | Ann is diabetespatiënt
sugar | sv | Ann har diabetes; Ann är diabetiker; Ann är sockersjuk
sugar | da | Ann har sukkersyge; Ann er diabetiker; Ann har diabetes
sugar | nb | Ann har diabetes; Ann er diabetiker; Ann har sukkersyke
sugar | pt | Ann é diabética; Ann tem diabetes; Ann sofre de diabetes
sugar | pl | Ann ma cukrzycę; Ann jest diabetyczką; Ann choruje na cukrzycę; cukrzyca; diabetyk
lactose | en | Ann is lactose intolerant; lactose-intolerant
lactose | de | Ann ist laktoseintolerant; Ann hat Laktoseintoleranz; Ann verträgt keine Laktose
lactose | de | Ann verträgt keine Milch
lactose | fr | Ann est intolérante au lactose; Ann ne supporte pas le lactose
lactose | fr | Ann ne digère pas le lactose
lactose | es | Ann es intolerante a la lactosa; Ann no tolera la lactosa
lactose | es | Ann tiene intolerancia a la lactosa
lactose | it | Ann è intollerante al lattosio; Ann non tollera il lattosio
lactose | nl | Ann is lactose-intolerant; Ann heeft lactose-intolerantie
lactose | nl | Ann kan niet tegen lactose; Ann verdraagt geen lactose
lactose | sv | Ann är laktosintolerant; Ann tål inte laktos; Ann har laktosintolerans
lactose | da | Ann er laktoseintolerant; Ann tåler ikke laktose
lactose | nb | Ann er laktoseintolerant; Ann tåler ikke laktose
lactose | pt | Ann é intolerante à lactose; Ann tem intolerância à lactose; Ann não tolera lactose
lactose | pl | Ann nie toleruje laktozy; Ann ma nietolerancję laktozy
nuts | en | Ann is a nut allergy sufferer; Ann has a nut allergy
nuts | de | Ann ist Nussallergikerin; Ann ist Nussallergiker; Ann ist allergisch gegen Nüsse
nuts | de | Ann hat eine Nussallergie; Ann reagiert allergisch auf Nüsse; Erdnussallergikerin
nuts | fr | Ann est allergique aux noix; Ann a une allergie aux noix
nuts | fr | Ann fait une allergie aux fruits à coque
nuts | es | Ann es alérgica a las nueces; Ann tiene alergia a los frutos secos
nuts | it | Ann è allergica alle noci; Ann ha un'allergia alle noci
nuts | nl | Ann is allergisch voor noten; Ann heeft een notenallergie
nuts | sv | Ann är allergisk mot nötter; Ann är nötallergiker; Ann har nötallergi
nuts | da | Ann er allergisk over for nødder; Ann har nøddeallergi; Ann er nøddeallergiker
nuts | nb | Ann er allergisk mot nøtter; Ann har nøtteallergi; Ann er nøtteallergiker
nuts | pt | Ann é alérgica a nozes; Ann é alérgica a frutos secos; Ann tem alergia a nozes
nuts | pl | Ann jest uczulona na orzechy; Ann ma alergię na orzechy; Ann ma uczulenie na orzechy
vegan | de | Ann ist Veganerin; Ann ist vegan; Ann lebt vegan; Ann ernährt sich vegan
vegan | de | Ann ist Vegetarierin
vegan | fr | Ann est végane; Ann est végétalienne; Ann est végétarienne
vegan | es | Ann es vegana; Ann es vegetariana
vegan | it | Ann è vegana; Ann è vegetariana
vegan | nl | Ann is veganist; Ann is veganiste; Ann is vegetariër; Ann eet vegetarisch
vegan | sv | Ann är vegan; Ann är vegetarian; Ann äter veganskt
vegan | da | Ann er veganer; Ann er vegetar; Ann spiser vegansk
vegan | nb | Ann er veganer; Ann er vegetarianer
vegan | pt | Ann é vegana; Ann é vegetariana; Ann é vegan
vegan | pl | Ann jest weganką; Ann jest wegetarianką; weganka
alcohol | en | Ann is a recovering alcoholic; Ann is teetotal; Ann is sober
alcohol | de | Ann ist trockene Alkoholikerin; Ann ist trocken; Ann ist Antialkoholikerin
alcohol | de | Ann trinkt keinen Alkohol; Ann ist abstinent
alcohol | fr | Ann ne boit pas d'alcool; Ann est abstinente; Ann est alcoolique abstinente
alcohol | fr | Ann ne boit pas
alcohol | es | Ann no bebe alcohol; Ann es abstemia; Ann es alcohólica en recuperación
alcohol | it | Ann non beve alcolici; Ann è astemia; Ann è un'ex alcolista
alcohol | nl | Ann drinkt geen alcohol; Ann is geheelonthouder; Ann is geheelonthoudster
alcohol | sv | Ann dricker inte alkohol; Ann är nykterist; Ann är nykter alkoholist
alcohol | da | Ann drikker ikke alkohol; Ann er afholdskvinde; Ann er tørlagt
alcohol | nb | Ann drikker ikke alkohol; Ann er avholds; Ann er avholdskvinne
alcohol | pt | Ann não bebe álcool; Ann é abstémia; Ann é abstêmia
alcohol | pl | Ann nie pije alkoholu; Ann jest abstynentką; abstynent
pregnant | de | Ann ist schwanger; Ann erwartet ein Kind; Ann ist in Erwartung
pregnant | fr | Ann est enceinte; Ann attend un enfant; Ann allaite
pregnant | es | Ann está embarazada; Ann espera un bebé
pregnant | it | Ann è incinta; Ann aspetta un bambino
pregnant | nl | Ann is zwanger; Ann is in verwachting
pregnant | sv | Ann är gravid; Ann väntar barn
pregnant | da | Ann er gravid; Ann venter sig
pregnant | nb | Ann er gravid; Ann venter barn
pregnant | pt | Ann está grávida; Ann espera um bebé
pregnant | pl | Ann jest w ciąży; Ann spodziewa się dziecka
salt | de | Ann hat Bluthochdruck; Ann ist Hochdruckpatientin
salt | fr | Ann fait de l'hypertension; Ann est hypertendue
salt | es | Ann es hipertensa; Ann tiene la tensión alta
salt | it | Ann è ipertesa; Ann ha la pressione alta
salt | nl | Ann heeft een hoge bloeddruk
salt | sv | Ann har högt blodtryck
salt | da | Ann har forhøjet blodtryk
salt | nb | Ann har høyt blodtrykk
salt | pt | Ann é hipertensa; Ann tem tensão alta
salt | pl | Ann ma nadciśnienie
"""
ROWS = [
    (meant, language, said.strip())
    for row in SAID.strip().split("\n")
    for meant, language, all_said in [row.split(" | ")]
    for said in all_said.split(";")
]
MEANS = {
    "vegan": {"animal products", "meat and fish"},  # the vegetarians stand among them
    "coeliac": {"coeliac", "gluten"},
    "nuts": {"nuts", "peanuts"},
    "lactose": {"lactose", "milk"},
}
"""What a row may mean, where it is not the row of avoided.yml that is called so."""


def every(found: Avoided) -> Iterator[Avoided]:
    yield found
    for one in found.of:
        yield from every(one)


@pytest.mark.parametrize(
    ("meant", "language", "said"), [one for one in ROWS if one[0] not in ("pregnant", "salt")]
)
def test_what_somebody_is_or_has_is_understood(meant: str, language: str, said: str) -> None:
    found = read_avoided(said.replace("ann ", "Ann "))
    assert found is not None, language
    assert not found.ask
    assert MEANS.get(meant, {meant}) & {one.meant for one in every(found)}


@pytest.mark.parametrize("said", [said for meant, _, said in ROWS if meant == "pregnant"])
def test_who_is_pregnant_is_known_to_be(said: str) -> None:
    assert needs_said(said, [said])["pregnant"]


@pytest.mark.parametrize("said", [said for meant, _, said in ROWS if meant == "salt"])
def test_high_blood_pressure_is_understood(said: str) -> None:
    """By salt or by liquorice: what the table's row says of it."""
    found = read_avoided(said)
    assert found is not None


@pytest.mark.parametrize(
    "said",
    [
        "Ann isst Fleisch",
        "Ann trinkt Wein",
        "Ann ma kota",
        "Ann ma 5 lat",
        "Ann tem 5 anos",
        "Ma mangia pesce",
        "vegana, ma mangia pesce",
        "Ann nie ma celiakii",
        "ann ist nicht Diabetikerin",
        "Ann n'est pas cœliaque",
        "Ann não é vegana",
    ],
)
def test_what_says_something_else_is_asked(said: str) -> None:
    assert read_avoided(said) is None
