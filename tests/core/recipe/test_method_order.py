"""What a method says between its waits stands between them: strained after the first, kept after.

The forty were written before the code was tried, on 29 November 2026, in the words of cards and
of people who type from the head. Each is told whole: what stands there, in which order, no more.
"""

from __future__ import annotations

from datetime import date

import pytest

from stillroom.core.reading.loading import read_recipe
from stillroom.core.recipe.kind_dates import dates_of_kind
from stillroom.core.recipe.model import Recipe
from stillroom.core.when.stage_dates import lay_out

RECIPE = """---
title: {title}
kind: {kind}
makes: 800 ml
ingredients:
  - 700 ml gin, 40% vol
  - 350 g sloes
---

## Method

1. {method}
"""
KIND: str = "the kind's own"


def recipe(kind: str, title: str, method: str) -> Recipe:
    text = RECIPE.format(kind=kind, title=title, method=method)
    return read_recipe(text, "recipes/it.md", "it")


def in_order(found: Recipe) -> str:
    """Return the stages after the preparing, work by its word and waits with their length."""
    if not found.waits_of_method:
        return KIND
    stages = [one for one in found.stages if one.role not in ("prepare", "finish", "give")]
    works = ("strain", "bottle")
    return "; ".join(one.word if one.role in works else f"{one.word}: {one.text}" for one in stages)


GIN, BEER = ("infusion", "Sloe gin"), ("ferment", "Ginger beer")
WINE, JAM = ("ferment", "Elderberry wine"), ("preserve", "Pickled shallots")
ORDER = [
    (GIN, "Steep for 3 months. Strain and bottle. Leave for a year.",
     "steep: 3 months; strain and bottle; rest: 1 year"),
    (GIN, "Steep for 3 months. Strain and bottle. Keep for a year before drinking.",
     "steep: 3 months; strain and bottle; rest: 1 year"),
    (GIN, "Steep for 3 months. Strain and bottle. Keep for a year if you can.",
     "steep: 3 months; strain and bottle; best from: 1 year after bottling"),
    # bare keeping is how long it keeps
    (GIN, "Steep for 3 months. Strain and bottle. Keeps for a year.",
     "steep: 3 months; strain and bottle"),
    (GIN, "Steep for 3 months. Strain and bottle. Keep for a year.",
     "steep: 3 months; strain and bottle"),
    (GIN, "Steep for 3 months, strain into clean bottles and leave another 3 months.",
     "steep: 3 months; strain and bottle; rest: 3 months"),
    (GIN, "Leave for 6 months. Filter. Leave to clear for 2 weeks. Decant into bottles.",
     "rest: 6 months; strain; clear: 2 weeks; bottle"),
    (GIN, "Leave for 4 months, then strain through muslin and bottle. Mature for 6 months.",
     "rest: 4 months; strain and bottle; mature: 6 months"),
    (GIN, "After ten days, strain. Add syrup. Bottle and leave for a month.",
     "rest: 10 days; strain and bottle; rest: 1 month"),
    (GIN, "Steep 10 days. Strain off the peel, stir in the syrup, leave 2 weeks, then bottle.",
     "steep: 10 days; strain; rest: 2 weeks; bottle"),
    (GIN, "Leave for 9 months. Strain. Bottle.", "rest: 9 months; strain and bottle"),
    (GIN, "Leave for 9 months.", "rest: 9 months; strain and bottle"),
    (GIN, "Infuse for 5 days, strain, bottle. Best after a month.",
     "infuse: 5 days; strain and bottle; best from: 1 month after bottling"),
    (GIN, "Infuse for 5 days, strain, bottle. Ready in a week.",
     "infuse: 5 days; strain and bottle; rest: 1 week"),
    # a bottle that it steeps in is no bottling
    (GIN, "Put all in a big bottle and leave for 3 weeks. Strain and pour back into the bottle.",
     "rest: 3 weeks; strain and bottle"),
    (GIN, "Pour the gin into a bottle with the sloes. Leave 3 weeks.",
     "rest: 3 weeks; strain and bottle"),
    (GIN, "Strain the juice into a jar with the gin and leave for 3 weeks.",
     "rest: 3 weeks; strain and bottle"),
    (GIN, "Shake daily for 3 weeks. Do not strain. Leave 3 months.",
     "shake: every day for 3 weeks; rest: 3 months; strain and bottle"),
    (GIN, "Leave 3 weeks. Wash the bottles and the strainer. Leave a further 3 weeks.",
     "rest: 3 weeks; rest: 3 weeks; strain and bottle"),
    (GIN, "Leave 3 weeks in the bottle.", "rest: 3 weeks; strain and bottle"),
    (BEER, "Mix and leave 24 hours. Strain, bottle, leave 3 days.",
     "rest: 24 hours; strain and bottle; rest: 3 days"),
    (BEER, "Feed daily for 7 days. Strain, add sugar and bottle. Ready in a week.",
     "feed: every day for 7 days; strain and bottle; rest: 1 week"),
    (BEER, "Feed the plant every day for a week. Bottle. Drink after 7 days.",
     "feed: every day for 1 week; bottle; rest: 7 days"),
    (BEER, "Feed it sugar daily for a week. Pour into bottles. It will be ready in 10 days.",
     "feed: every day for 1 week; bottle; rest: 10 days"),
    (BEER, "Leave for 2 days, strain and pour into screw-top bottles. Ready to drink after 3 days.",
     "rest: 2 days; strain and bottle; rest: 3 days"),
    (BEER, "Leave the bucket for 4 days. Bottle.", "rest: 4 days; bottle"),
    (BEER, "Leave for 4 days. It is ready after a week.",
     "rest: 4 days; usable from: 1 week; bottle"),
    (BEER, "Siphon into bottles after 5 days. Leave for a week.",
     "rest: 5 days; bottle; rest: 1 week"),
    (BEER, "Strain and bottle. Leave for 3 days.", "strain and bottle; rest: 3 days"),
    (BEER, "Bottle it and leave somewhere warm for 3 days.", "bottle; rest: 3 days"),
    (WINE, "Ferment for 2 weeks. Rack. Leave for 6 months, then bottle and leave a year.",
     "ferment: 2 weeks; rack; rest: 6 months; bottle; rest: 1 year"),
    (WINE, "Stir daily for 5 days. Strain into a demijohn. Leave for 8 months. Bottle.",
     "stir: every day for 5 days; strain; rest: 8 months; bottle"),
    (WINE, "Ferment for 3 weeks. Siphon into a clean jar and leave 1 year.",
     "ferment: 3 weeks; rack; rest: 1 year; bottle"),
    (WINE, "Leave 1 year in a cask. Drain the cask into bottles.", "rest: 1 year; bottle"),
    (JAM, "Leave in brine overnight. Drain and pack into jars. Leave for 6 weeks before eating.",
     "rest: 1 day; strain and bottle; rest: 6 weeks"),
    (JAM, "Fill the jars. Leave for 6 weeks before eating.", "bottle; rest: 6 weeks"),
    (JAM, "Leave in salt for 24 hours. Rinse, pack into jars and mature for 2 months.",
     "rest: 24 hours; bottle; mature: 2 months"),
    (JAM, "Simmer till thick and pot. Mature for 3 months.", "bottle; mature: 3 months"),
    (JAM, "Mature for 3 months.", "bottle; mature: 3 months"),
    (JAM, "Boil and bottle while hot. Leave 2 months. Strain when you use it.",
     "bottle; rest: 2 months"),
    # a second sample, of 27
    (GIN, "Leave 4 weeks then strain. Drink straight away.", "rest: 4 weeks; strain and bottle"),
    (GIN, "Leave for 3 months. Strain into bottles and keep for 6 months before drinking.",
     "rest: 3 months; strain and bottle; rest: 6 months"),
    (GIN, "Steep for 5 days and strain. Sweeten. Leave for another 2 weeks before bottling.",
     "steep: 5 days; strain; rest: 2 weeks; bottle"),
    (BEER, "Leave for 10 days. Take out the scoby. Bottle with fruit and leave for 3 days.",
     "rest: 10 days; strain and bottle; rest: 3 days"),
]  # fmt: skip


@pytest.mark.parametrize(("what", "method", "order"), ORDER, ids=[row[1] for row in ORDER])
def test_work_stands_where_the_method_says(what: tuple[str, str], method: str, order: str) -> None:
    assert in_order(recipe(*what, method)) == order


def test_sloes_are_out_of_the_spirit_after_three_months() -> None:
    found = recipe(*GIN, "Steep for 3 months. Strain and bottle. Leave for a year.")
    laid = lay_out(found.stages, date(2027, 3, 1))
    assert laid.made == date(2027, 6, 1)
    assert laid.usable == date(2028, 6, 1)


def test_a_ginger_beer_plant_takes_its_fortnight() -> None:
    found = recipe(*BEER, "Feed daily for 7 days. Strain, add sugar and bottle. Ready in a week.")
    laid = lay_out(found.stages, date(2027, 3, 1))
    assert (laid.made, laid.usable, laid.best) == (
        date(2027, 3, 8), date(2027, 3, 15), date(2027, 3, 15),
    )  # fmt: skip


# how people say a wait that no one can count, and what only looks like one; written first
UNCOUNTED = [
    "Leave til xmas.", "Leave until Christmas.", "Put away till spring.",
    "Leave it in the cupboard till about Easter.", "Steep for a few weeks.",
    "Leave for some months.", "Let it stand several days.", "Mature for months.",
    "Keep until December.", "Hide it and leave it by the boiler til bonfire night.",
]  # fmt: skip
NOTHING_TO_COUNT = [
    "Strain and bottle.", "Leave to cool.", "Leave for 10 weeks.", "It keeps for some months.",
    "Pick the sloes before Christmas.", "Stir every few days.", "Leave for 20 minutes.",
    "Store for months.", "Keeps until Christmas.", "Serve at Christmas.",
    "If you leave it for years it darkens.", "Turn the jar by hand.",
]  # fmt: skip


@pytest.mark.parametrize("method", UNCOUNTED)
def test_a_wait_that_cannot_be_counted_is_said(method: str) -> None:
    told = dates_of_kind(recipe(*GIN, method))
    assert told is not None
    assert f"“{method.rstrip('.')}”" in told.text
    assert "states none" not in told.text


@pytest.mark.parametrize("method", NOTHING_TO_COUNT)
def test_nothing_else_is_said_to_be_uncounted(method: str) -> None:
    told = dates_of_kind(recipe(*GIN, method))
    assert told is not None
    assert "cannot be counted" not in told.text


def test_a_method_that_agrees_with_its_kind_is_not_said_to_state_nothing() -> None:
    told = dates_of_kind(recipe("ferment", "Plum wine", "Leave for 3 months. Bottle."))
    assert told is not None
    assert "states none" not in told.text
    assert "read from its method (step 1): “Leave for 3 months" in told.text


def test_what_is_steeped_goes_by_its_method_even_near_its_kind() -> None:
    method = "Shake every day for a week, then once a week for two months. Strain and bottle."
    told = dates_of_kind(recipe(*GIN, method))
    assert told is not None
    assert "read from its method (step 1): “Shake every day for a week" in told.text


# a wait of which nothing but its length is said; what only looks so waits for nothing
BARE_WAITS = {
    "Steep 2 months. Strain. Add the syrup. Another month.": ["steep: 2 months", "rest: 1 month"],
    "Steep 6 weeks. Strain. Two more weeks.": ["steep: 6 weeks", "rest: 2 weeks"],
    "Steep 2 months. Strain. A further 3 weeks, then bottle.": ["steep: 2 months", "rest: 3 weeks"],
    "2 months in the dark. Strain.": ["rest: 2 months"],
    "Six weeks in a dark cupboard, then strain.": ["rest: 6 weeks"],
    "Steep 2 weeks. Strain and bottle. A year unopened.": ["steep: 2 weeks"],
    "Steep 2 weeks. 10 minutes in the oven. Strain.": ["steep: 2 weeks"],
    "Steep 2 weeks. Strain. 6 months in a cool cupboard.": ["steep: 2 weeks"],
}


@pytest.mark.parametrize("method", BARE_WAITS)
def test_a_length_alone_is_a_wait_where_more_is_said_or_it_is_strained_after(method: str) -> None:
    stages = recipe(*GIN, method).stages
    waits = [f"{stage.word}: {stage.text}" for stage in stages if stage.role in ("rest", "tend")]
    assert waits == BARE_WAITS[method]


# In other languages and of what is cured, brined and fermented: written on 30 November 2026 before
# the code was tried, after the sources named; the waits by their length, "; " between what follows.
CURED, SYRUP = ("preserve", "Gravlax"), ("preserve", "Elderflower syrup")
ELSEWHERE = [
    # a family's, as the others without a name
    (GIN, "Dejar macerar 40 días, agitando cada dos días. Colar y embotellar. Dejar reposar un mes"
     " más.", "shake: every 2 days for 40 days; strain and bottle; rest: 1 month"),
    # asiloharemos.blogspot.com.es, 2012
    (GIN, "Dos meses de maceración llevará. Filtrar. Embotella y espera unos 15 días más antes de"
     " consumir.", "macerate: 2 months; strain and bottle; mature: 15 days"),
    # hoy.com.do
    (GIN, "Agita y deja macerar un mes. Tamiza y pásalo a las botellas.",
     "macerate: 1 month; strain and bottle"),
    # paperblog.fr, 2010
    (GIN, "Secouer chaque jour le mélange pendant environ 60 jours. Au bout de ce temps, filtrer "
     "et verser dans des bouteilles, et les laisser reposer quatre mois avant de déguster.",
     "shake: every day for 60 days; strain and bottle; mature: 4 months"),
    # suite101.fr
    (GIN, "Laissez macérer 1 mois. Versez l'infusion dedans en la filtrant. Laissez reposer 8 jours"
     " puis mettez en bouteille.", "macerate: 1 month; strain; rest: 8 days; bottle"),
    # ilcuoreinpentola.it
    (GIN, "Lasciate i malli a macerare per 30 giorni. Filtrate l'alcol. Versate il liquore nelle "
     "bottiglie e riponetelo per 1 mese prima di gustarlo.",
     "macerate: 30 days; strain and bottle; mature: 1 month"),
    # checucino.it: three days are all that it steeps
    (GIN, "Lasciatele a macerare nell'alcool per 3 giorni. Aggiungete l'alcool ben filtrato e "
     "imbottigliate.", "macerate: 3 days; strain and bottle"),
    (GIN, "Laat 6 weken trekken. Zeven en bottelen. Laat nog 2 maanden rijpen.",
     "steep: 6 weeks; strain and bottle; mature: 2 months"),
    (GIN, "Låt stå i 6 veckor. Sila och häll upp på flaskor. Låt mogna i 2 månader.",
     "rest: 6 weeks; strain and bottle; mature: 2 months"),
    (GIN, "6 Wochen ziehen lassen. Nicht filtern. 4 Wochen reifen lassen.",
     "steep: 6 weeks; mature: 4 weeks; strain and bottle"),
    (GIN, "Beeren in Flaschen füllen, mit Gin übergießen und 3 Monate ziehen lassen.",
     "steep: 3 months; strain and bottle"),
    # griasdi.info
    (SYRUP, "2 bis 4 Tage ziehen lassen. Anschließend durch ein Tuch seihen, aufkochen und in "
     "Flaschen abfüllen.", "steep: 2-4 days; strain and bottle"),
    # gartenmeinung.de: "ca." ends no sentence
    (SYRUP, "Nach ca. 5 Tagen durch ein feines Sieb geben. Dann sofort in Flaschen füllen.",
     "rest: 5 days; strain and bottle"),
    (SYRUP, "Laisser macérer 48 heures au frais. Filtrer. Mettre en bouteilles.",
     "macerate: 48 hours; strain and bottle"),
    # kochhut.de
    (JAM, "Mit Salz 24 Stunden stehen lassen. In Gläser schichten. Nach etwa 4 Wochen kann man die "
     "Gurken verwenden.", "rest: 24 hours; bottle; rest: 4 weeks"),
    # the BBC's, as bybilalr.com prints it
    (SYRUP, "Leave in a cool place for 24 hours. Strain through some muslin and transfer to "
     "sterilised bottles.", "rest: 24 hours; strain and bottle"),
    # warrenmanselst.co.uk: "up to boiling" is no length
    (SYRUP, "Heat up to boiling point, cover and let infuse overnight. Strain. Bottle up.",
     "infuse: 1 day; strain and bottle"),
    (CURED, "Rub the cure in, wrap tightly, in the fridge for 48 hours. Wipe off, slice thin.",
     "cure: 48 hours; pack: 30 minutes"),
    (CURED, "Rub with salt. 24 hours in the fridge. Hang up in the airing cupboard for 5 days.",
     "rest: 24 hours; dry: 5 days; pack: 30 minutes"),
    # a length that is the last word is how long it keeps
    (CURED, "Cure for 2 days. Wipe and slice. 3 weeks in the fridge.",
     "cure: 2 days; pack: 30 minutes"),
    (WINE, "Ferment 4-6 weeks til it stops. Rack off. Leave 3 months. Rack again & bottle. Best "
     "after a year.",
     "ferment: 4-6 weeks; rack; rest: 3 months; rack and bottle; best from: 1 year after bottling"),
    # a must that was bottled after two months is as young as any ferment
    (WINE, "Leave for 30 days to ferment. Rack. Leave for another 30 days before racking into "
     "clean, sterilised bottles.",
     "rest: 30 days; rack; rest: 30 days; bottle; usable from: 3 months; best from: 9 months"),
    # a second sample, of 22, written before the code was tried on it: viagallica.com
    (GIN, "Laisser macérer 45 jours. Égoutter les fruits. Conserver en bouteilles bien bouchées et "
     "ne consommer qu'au bout de 2 mois.",
     "macerate: 45 days; strain and bottle; mature: 2 months"),
    # growfruitandveg.co.uk
    (BEER, "Everyday add 1 tsp ginger and 1 tsp sugar for seven days. Strain. Fill bottles. Leave "
     "for seven days before drinking.",
     "feed: every day for 7 days; strain and bottle; rest: 7 days"),
    # marksfermentingbin.blogspot.com, 2011: an age counts from the beginning
    (WINE, "After about 3 months, the wine will have finished fermenting. It can then be bottled. "
     "It will be ready to drink when 9 months old.",
     "rest: 3 months; bottle; usable from: 9 months"),
    # invacanzaallargentario.it, buttalapasta.it
    (GIN, "Lasciate a macerare per 50 giorni. Passate il tutto al colino. Filtrate e aspettate "
     "almeno 2 mesi prima di berlo.", "macerate: 50 days; strain; mature: 2 months; bottle"),
    # thetelegraphandargus.co.uk, daytodaythoughtsonfood.com
    (CURED, "Put in the fridge for 24 hours. Remove and rinse. Wrap in muslin and hang from a shelf"
     " in your fridge. Leave for around two weeks, weighing it.",
     "rest: 24 hours; rest: about 2 weeks; pack: 30 minutes"),
    (CURED, "Pack in salt within a container and leave in the fridge for 5-7 days. Rinse. Hang "
     "outside for 2-3 weeks.", "rest: 5-7 days; dry: 2-3 weeks; pack: 30 minutes"),
    # lisasmat.blogspot.com, 2010
    (JAM, "Lägg gurkorna i saltlag i kylen över natten. Stuva gurkorna i glasburkar. Kan avnjutas "
     "efter tidigast 3 veckor.", "rest: 1 day; bottle; rest: 3 weeks"),
    # what is not told is filled when it is over, and not on the eve of giving
    (GIN, "Steep for 6 weeks. Best after a year.",
     "steep: 6 weeks; strain and bottle; best from: 1 year"),
]  # fmt: skip


@pytest.mark.parametrize(("what", "method", "order"), ELSEWHERE, ids=[row[1] for row in ELSEWHERE])
def test_what_is_cured_steeped_or_racked_is_filled_after_it(
    what: tuple[str, str], method: str, order: str
) -> None:
    stages = [one for one in recipe(*what, method).stages if one.role not in ("prepare", "give")]
    works = ("strain", "rack", "bottle", "strain and bottle", "rack and bottle")
    told = [one.word if one.word in works else f"{one.word}: {one.text}" for one in stages]
    assert "; ".join(told) == order


def test_coffee_stays_in_the_spirit_as_long_as_told() -> None:
    found = recipe(*GIN, ELSEWHERE[0][1])
    laid = lay_out(found.stages, date(2027, 3, 1))
    assert (laid.made, laid.usable) == (date(2027, 4, 10), date(2027, 5, 10))


def test_days_without_their_number_are_said_in_other_languages_too() -> None:
    told = dates_of_kind(recipe(*GIN, "Zeef de likeur. Laat de likeur een paar dagen staan."))
    assert told is not None
    assert "cannot be counted (step 1): “Laat de likeur een paar dagen staan”" in told.text
