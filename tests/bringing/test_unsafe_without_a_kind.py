"""A danger is told of a draft before anybody has said what sort of thing it is.

The rules and their sources are those of the safety box (core/staples/hazards.yml); titles here say
no kind. What is baked, eaten at once or harmless on a shelf is asked nothing more.
"""

from __future__ import annotations

import pytest

from bringing.drafts import brought, fact

_UNSAFE = {
    "garlic": "Drizzle\n\n500 ml olive oil\n6 cloves garlic\n\n"
    "Put the garlic into the oil and leave it in the cupboard for 2 weeks.\n",
    "chillies, and jars in an oven": "Fire\n\n500 ml olive oil\n6 fresh chillies\n\nSterilise the "
    "bottle in the oven at 120 C. Cover the chillies with the oil and leave for 2 weeks.\n",
    "egg yolks": "Christmas in a glass\n\n6 egg yolks\n250 g sugar\n500 ml cream\n200 ml rum\n\n"
    "Whisk the yolks with the sugar, stir in cream and rum, and bottle it.\n",
    "green beans": "From the garden\n\n1 kg green beans\n1 l water\n10 g salt\n\n"
    "Pack the beans in jars, cover with the salted water and boil for an hour.\n",
}
_UNSAFE_ELSEWHERE = {
    "de": "Aus dem Garten\n\n500 ml Olivenöl\n6 Knoblauchzehen\n\n"
    "Den Knoblauch mit dem Öl übergießen und 2 Wochen im Schrank ziehen lassen.\n",
    "fr": "Du jardin\n\n500 ml d'huile d'olive\n6 gousses d'ail\n\n"
    "Couvrir l'ail avec l'huile et laisser reposer 2 semaines dans un placard.\n",
    "it": "Dall'orto\n\n500 ml di olio d'oliva\n6 spicchi d'aglio\n\n"
    "Coprire l'aglio con l'olio e lasciare riposare per 2 settimane in dispensa.\n",
}
_ASKED_NO_MORE = {
    "baked": "Our best\n\n200 g flour\n200 g butter\n4 eggs\n200 g sugar\n1 clove garlic\n\n"
    "Mix all of it and cook in a hot oven for 40 minutes.\n",
    "eaten at once": "Green bowl\n\n1 lettuce\n2 tomatoes\n3 tbsp olive oil\n1 clove garlic\n\n"
    "Toss it and serve.\n",
    "sweet": "Dust\n\n500 g sugar\n2 vanilla pods\n\nBury the pods and leave for a month.\n",
    "dry": "Red\n\n50 g paprika\n20 g dried oregano\n10 g salt\n\nMix it and fill it into jars.\n",
    "sour": "Green\n\n500 ml vinegar, 6% acidity\n20 g dill, dried\n\nLeave for a week; bottle.\n",
}


def _refused(text: str, language: str = "en_GB") -> list[str]:
    (one,) = brought(text, language)
    assert fact(one, "kind") in ("", "bake")
    return [q.what for q in one.questions if q.what.startswith("It cannot be published as safe.")]


@pytest.mark.parametrize("food", _UNSAFE)
def test_a_danger_is_told_before_a_kind_is_chosen(food: str) -> None:
    (one,) = brought(_UNSAFE[food])
    assert fact(one, "kind") == ""
    told = [q for q in one.questions if q.what.startswith("It cannot be published as safe.")]
    assert told
    assert any(food.partition(",")[0] in q.what for q in told)
    for q in told:
        assert "kept at room temperature" in q.what
        assert "months" not in q.what.partition("(")[0]  # which no one has said
        assert q.mend.endswith("It may be otherwise once it says what sort of thing it is.")
        assert "sets this rule aside" not in q.mend


@pytest.mark.parametrize("language", _UNSAFE_ELSEWHERE)
def test_it_is_told_in_other_languages(language: str) -> None:
    assert _refused(_UNSAFE_ELSEWHERE[language], language)


@pytest.mark.parametrize("what", _ASKED_NO_MORE)
def test_what_no_kind_refuses_is_asked_nothing_more(what: str) -> None:
    assert _refused(_ASKED_NO_MORE[what]) == []


def test_once_the_kind_is_said_its_own_rules_hold_alone() -> None:
    text = _UNSAFE["garlic"].replace("Drizzle", "Garlic infusion")
    (one,) = brought(text)
    told = [q for q in one.questions if q.what.startswith("It cannot be published as safe.")]
    assert len(told) == 1
    assert "It may be otherwise" not in told[0].mend


def test_what_is_not_known_of_a_thing_that_nobody_eats_is_its_cautions() -> None:
    text = "Tea cup candles\n\n200 g soy wax\n2 blue gramaryes\n\nMelt the wax and pour it.\n"
    (one,) = brought(text)
    told = [q.what for q in one.questions if "gramarye" in q.what]
    assert told == [
        '"blue gramaryes" is not a food that this book knows: no caution can come of it.'
    ]
