"""What a method says of time: waits of half a day and more, and nothing else.

The sentences are in the shape of published recipes, most written before the code that reads them.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stillroom.core.recipe.method_times import times_in_method
from stillroom.core.recipe.model import MethodStep

# sentence -> the lines of a timeline it is, each side told: nothing more, nothing less
WAITS = {
    "Leave to steep for 3 weeks, shaking daily.": ["shake: every day for 3 weeks"],
    "Seal the jar and leave in a cool, dark place for three months.": ["rest: 3 months"],
    "Cover and leave to infuse for 24 hours.": ["infuse: 24 hours"],
    "Leave overnight.": ["rest: 1 day"],
    "Seal the bucket and ferment for two weeks to one month.": ["ferment: 1 month"],
    "Let it sit for at least a month, but if you forget it for 6 months, no worries.": [
        "rest: 1 month",
    ],
    "Leave it for 3 weeks, or for 2 months if you can.": ["rest: 3 weeks"],
    # what is stored and then strained was waited for; what is stored is kept
    "Cover with lid and store on shelf for 3 months without disturbing, then strain.": [
        "rest: 3 months",
    ],
    "Pour in dark bottle and store for 3-4 months. Strain through dampened cheesecloth.": [
        "rest: 3-4 months",
    ],
    "It keeps on the shelf for a year. Strain before serving.": [],
    "Bottle it and store for up to a year.": [],
    "Store in refrigerator and use within one month.": [],
    "Cover with a cloth and leave to stand overnight.": ["stand: 1 day"],
    "Let it macerate for six weeks in a dark cupboard.": ["macerate: 6 weeks"],
    "Store in a cool dark place for at least 6 weeks before eating.": ["rest: 6 weeks"],
    "Put the lid on and leave it to mature for at least 2 months.": ["mature: 2 months"],
    "Allow to mature for 4 weeks before opening.": ["mature: 4 weeks"],
    "Shake the bottle every day for a week, then leave for 2 months.": [
        "shake: every day for 1 week", "rest: 2 months",
    ],
    "Stir every day for 10 days.": ["stir: every day for 10 days"],
    "Turn the jar weekly for 3 months.": ["turn: every week for 3 months"],
    "Ferment at room temperature for 5 to 7 days.": ["ferment: 5-7 days"],
    "Leave to ferment for about two weeks, burping the lid.": ["ferment: about 2 weeks"],
    "Dry in a warm airy place for 1–2 weeks.": ["dry: 1-2 weeks"],
    "Hang in bunches to dry for two weeks.": ["dry: 2 weeks"],
    "Chill overnight until firm.": ["chill: 1 day"],
    "Soak the beans overnight in plenty of water.": ["soak: 1 day"],
    "Drip through a jelly bag overnight.": ["drip: 1 day"],
    "Leave to drip through the bag for 12 hours or overnight.": ["drip: 12 hours"],
    "Cure for 4 to 6 weeks on a rack.": ["cure: 4-6 weeks"],
    "Leave the soap to cure for a month.": ["cure: 1 month"],
    "Let stand in the refrigerator for 2 days.": ["stand: 2 days"],
    "Set aside for a fortnight.": ["rest: 2 weeks"],
    "Refrigerate for 24 hours before slicing.": ["chill: 24 hours"],
    "Leave for half a year, if you can.": ["rest: 6 months"],
    "Age for a year in the bottle.": ["mature: 1 year"],
    "Return to the jar and leave for a further month.": ["rest: 1 month"],
    "Put in a dark cupboard for three months, turning the jar every few days.": ["rest: 3 months"],
    "Infuse 2 weeks.": ["infuse: 2 weeks"],
    "Allow 6 weeks for flavors to develop.": ["rest: 6 weeks"],
    "Store the jar in a cool, dark place for 3 months and turn regularly.": ["rest: 3 months"],
    "Shake daily for 1 week, then weekly for 3 months.": [
        "shake: every day for 1 week", "shake: every week for 3 months",
    ],
    # as a card shortens it
    "Shake dly 1 wk, then wkly 3 mths.": [
        "shake: every day for 1 week", "shake: every week for 3 months",
    ],
    "Lve abt 2 wks.": ["rest: about 2 weeks"],
    "Kps 2 yrs.": [],
    # as cooks of five other tongues write it, the verb before or behind
    "2 Wochen ziehen lassen.": ["steep: 2 weeks"],
    "Zugedeckt, mindestens 24 Stunden, im Kühlschrank ruhen lassen.": ["rest: 24 hours"],
    "Das Glas 6 bis 8 Wochen stehen lassen, dabei täglich schütteln.": [
        "shake: every day for 6-8 weeks",
    ],
    "Nach 4 Wochen abseihen und in Flaschen füllen.": ["rest: 4 weeks"],
    "Drei Monate im dunklen Schrank reifen lassen.": ["mature: 3 months"],
    "Laisser macérer 40 jours à l'abri de la lumière.": ["macerate: 40 days"],
    "Laissez infuser une nuit au frais.": ["steep: 1 day"],
    "Au bout de 3 semaines, filtrer.": ["rest: 3 weeks"],
    "Dejar macerar un mes en un lugar oscuro.": ["macerate: 1 month"],
    "Lasciate macerare le scorze nell'alcol per 7 giorni, poi filtrate.": ["macerate: 7 days"],
    "Dopo 40 giorni filtrare il liquore.": ["rest: 40 days"],
    "Laat 6 weken trekken.": ["steep: 6 weeks"],
    "Der Likör ist mindestens 1 Jahr haltbar.": [],
    "Im Kühlschrank aufbewahrt, hält er sich 3 Wochen.": [],
    "Lasciate riposare fino al giorno successivo.": ["rest: 1 day"],
    "Laisser macérer jusqu'au lendemain.": ["macerate: 1 day"],
    "Zet alles vervolgens 12 uur koel weg.": ["chill: 12 hours"],
    "Si conserva fino a 3 mesi.": [],
    "Leave to infuse for 24hours (do not leave longer or it will change!).": ["infuse: 24 hours"],
    "Do not leave it for 3 weeks.": [],
    "Il liquore dovrà riposare per almeno un paio di mesi.": ["rest: 2 months"],
    "Chiudere e riporre in un luogo buio per almeno 40 giorni.": ["rest: 40 days"],
    "Let them stand steeping Twenty Four Hours, then strain.": ["steep: 24 hours"],
    "Conserva il chutney al buio per almeno 2 mesi prima di consumarlo.": ["mature: 2 months"],
    "Vor dem Verzehr 4 Wochen aufbewahren.": ["mature: 4 weeks"],
    "Si conserva per 2 mesi in frigo.": [],
    "Put a lid on and leave it somewhere cool for 3 days.": ["rest: 3 days"],
    "Leave to cool for 24 hours.": ["cool: 24 hours"],
    "Secarlas y meterlas en una garrafa, dejándolo tapado unos 3 meses.": ["rest: 3 months"],
    "Am besten über Nacht im Kühlschrank lagern.": ["rest: 1 day"],
    "Se conserve 6 mois au frais.": [],
    "Conservation : 3 semaines au réfrigérateur.": [],
    "Se conserva hasta 3 meses en la nevera.": [],
    "Si conserva per 6 mesi.": [],
    "In de koelkast 2 weken houdbaar.": [],
    "10 Minuten ruhen lassen.": [],
    "Im Ofen 2 Stunden trocknen lassen.": [],
    # it names a wait that nothing else did
    "After 3 weeks, strain through muslin.": ["rest: 3 weeks"],
    "At the end of ten days, bottle it.": ["rest: 10 days"],
    "8 weeks later, filter.": ["rest: 8 weeks"],
    "Bung it down, and bottle it in six months.": ["rest: 6 months"],
    "In six months it will be fit to drink.": ["usable from: 6 months"],
    "After a month they are ready.": ["usable from: 1 month"],
    "It should be kept a twelvemonth before it is used.": ["rest: 1 year"],
    "It improves with keeping and is best at a year old.": ["best from: 1 year"],
    "Leave the fruit and sugar for 24-48 hours, stirring from time to time.": ["rest: 24-48 hours"],
    "Marinate for two days, turning twice a day.": ["turn: twice a day for 2 days"],
    "Let the dough rest for 12 hours in the fridge.": ["rest: 12 hours"],
    "Store for one month before using.": ["rest: 1 month"],
    "Keep in a warm place for a week, stirring daily.": ["stir: every day for 1 week"],
    "It will be ready to drink after three months.": ["usable from: 3 months"],
    "Ready in 2 weeks.": ["usable from: 2 weeks"],
    "It is best after a year.": ["best from: 1 year"],
    "The liqueur can be drunk after 4 weeks.": ["usable from: 4 weeks"],
    "Keep in a cool cupboard and shake every second day for a week.": [
        "shake: every second day for 1 week"
    ],
    "Then shake it once a week for no less than two months.": ["shake: once a week for 2 months"],
    "Seal it and let it macerate six months or more, shaking it now and then for three months.": [
        "macerate: 6 months"
    ],
    "Cool completely, then wrap in foil and store for 2 weeks before icing.": ["rest: 2 weeks"],
    "Allow the flavours to develop for at least 3 weeks.": ["mature: 3 weeks"],
    "After eight weeks strain the gin through muslin.": ["rest: 8 weeks"],
    "Leave it for 3 weeks. After three weeks, strain.": ["rest: 3 weeks"],
    "It is at its best when left for six months.": ["best from: 6 months"],
}  # fmt: skip
NONE = [
    "It keeps for a year before it spoils.",
    "After 2 hours, strain.",
    "Strain it in a sieve after use.",
    "It may be kept a year.",
    "Simmer for 20 minutes.",
    "Bake for 1 hour 15 minutes at 160 C.",
    "Boil hard for 10 minutes, then test for a set.",
    "Leave to stand for 15 minutes so the fruit does not rise.",
    "Rest the dough for half an hour.",
    "Chill for 2 hours.",
    "Leave to cool for an hour or two.",
    "Prove for 8 hours in a cool room.",
    "It keeps for up to a year in a cool, dark place.",
    "Will keep for 6 months unopened.",
    "Once opened, keep in the fridge and use within 4 weeks.",
    "Store in an airtight tin for up to 2 weeks.",
    "Store in an airtight container for up to a month.",
    "Use within 3 days.",
    "Eat within a week of opening.",
    "These freeze well for up to 3 months.",
    "Keeps well for 3 weeks in a tin.",
    "It lasts for months in the fridge.",
    "Can be made 2 days ahead.",
    "The dough can be made a day in advance.",
    "Use bread that is 2 days old.",
    "Take a teaspoon a day.",
    "Stir every 5 minutes for half an hour.",
    "Stir once a day.",
    "Whisk for 5 minutes until pale.",
    "Process in a boiling-water bath for 10 minutes.",
    "Sterilise the jars for 20 minutes at 130 C.",
    "Do not leave for more than 2 days.",
    "Never keep it longer than a week.",
    "It must not be left for 3 days.",
    "Give it within 2 months of making.",
    "Best before 12 months.",
    "Add 2 tablespoons of sugar and 1 egg.",
    "Cut into 24 squares.",
    "Fill four 200 ml jars, leaving 1 cm at the top.",
    "Shelf life: 6 months.",
    "Stored in the dark it is good for 2 years.",
    "Cook on low for 10 hours.",
]


def read(sentence: str) -> list[str]:
    return [said.as_written for said in times_in_method((MethodStep(sentence, "", 7),))]


@pytest.mark.parametrize("sentence", WAITS)
def test_a_wait_is_read(sentence: str) -> None:
    assert read(sentence) == WAITS[sentence]


@pytest.mark.parametrize("sentence", NONE)
def test_what_is_no_wait_is_passed_over(sentence: str) -> None:
    assert read(sentence) == []


@given(st.text(max_size=80))
def test_any_words_are_read(words: str) -> None:
    assert isinstance(read(words), list)


def test_a_quote_names_what_stands_in_braces() -> None:
    """A newcomer's gin: it was quoted as "Steep it and it in it for 2 weeks"."""
    text = "Steep {sloes} and {sugar} in {gin} for 2 weeks, strain and bottle."
    (said,) = times_in_method((MethodStep(text=text, line=1),))
    assert said.words == "Steep sloes and sugar in gin for 2 weeks, strain and bottle"
