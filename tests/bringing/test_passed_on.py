"""A recipe that somebody passes on: what stands above it was for one person, and is on no page.

Heads as the mail programs of eight languages set them above what is passed on (from memory); notes
and recipes invented.
"""

from __future__ import annotations

from email.message import EmailMessage
from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.papers import bring
from stillroom.core.recipe.settings import BookSettings

RECIPE: Final = """Plum jam

Ingredients
1 kg plums
800 g sugar

Method
1. Boil them together for ten minutes.
2. Pour into jars.
"""
NOTE: Final = "Remember this one? Zoe said the doctor has news for me, so keep it to yourself :) Z."
LEFT: Final = "beside the letter that holds the recipe is left out"
MARK: Final = "-----Original Message-----"
HEADS: Final = {
    "outlook": f"{MARK}\nFrom: Nan Old\nSent: Saturday, July 3, 2021 6:02 PM\nSubject: FW: jam",
    "bare": "From: Nan Old\nSent: Saturday, July 3, 2021 6:02 PM\nTo: Zoe\nSubject: jam",
    "de": "Von: Nan Old\nGesendet: Samstag, 3. Juli 2021 18:02\nAn: Zoe\nBetreff: WG: Gelee",
    "fr": "De : Nan Old\nEnvoyé : samedi 3 juillet 2021 18:02\nÀ : Zoe\nObjet : TR: confiture",
    "it": "Da: Nan Old\nInviato: sabato 3 luglio 2021 18:02\nA: Zoe\nOggetto: I: marmellata",
    "nl": "Van: Nan Old\nVerzonden: zaterdag 3 juli 2021 18:02\nAan: Zoe\nOnderwerp: FW: jam",
    "pl": "Od: Nan Old\nWysłano: sobota, 3 lipca 2021 18:02\nDo: Zoe\nTemat: FW: powidła",
    "sv": "Från: Nan Old\nSkickat: den 3 juli 2021 18:02\nTill: Zoe\nÄmne: VB: sylt",
    "es": "De: Nan Old\nEnviado el: sábado, 3 de julio de 2021 18:02\nPara: Zoe\nAsunto: RV: x",
    "da": "Fra: Nan Old\nSendt: 3. juli 2021 18:02\nTil: Zoe\nEmne: VS: syltetøj",
    "mark": "---------- Forwarded message ---------\n",
    "wrote": "On 3 July 2021, Nan Old wrote:",
}


def of_mail(text: str, kind: str) -> bytes:
    mail = EmailMessage()
    mail["From"], mail["To"], mail["Subject"] = "Zoe <z@h.example>", "Ann <a@h.example>", "Fwd: jam"
    if kind == "eml":
        mail.set_content(text)
    else:
        rows = "".join(f"<div>{line or '<br>'}</div>" for line in text.split("\n"))
        mail.set_content(f"<html><body>{rows}</body></html>", subtype="html")
    return mail.as_bytes()


@pytest.mark.parametrize("kind", ["txt", "eml", "html"])
@pytest.mark.parametrize("head", HEADS)
def test_a_note_above_what_is_passed_on_is_on_no_page_and_told(head: str, kind: str) -> None:
    text = f"{NOTE}\n\n{HEADS[head]}\n\n{RECIPE}"
    data = text.encode() if kind == "txt" else of_mail(text, kind)
    name = "a.txt" if kind == "txt" else "a.eml"
    (found,) = bring(name, data, BookSettings()).recipes
    assert "doctor" not in found.text
    assert LEFT in asked(found)
    assert fact(found, "title") == "Plum jam"
    assert listed(found) == ["1 kg plums", "800 g sugar"]
    assert steps(found) == ["Boil them together for ten minutes.", "Pour into jars."]
    sender = "" if kind == "txt" else "Zoe"
    assert fact(found, "author") == (sender if head in ("mark", "wrote") else "Nan Old")


@pytest.mark.parametrize("head", ["outlook", "de", "pl"])
def test_notes_of_two_who_pass_it_on_and_what_was_asked_below_are_left_out(head: str) -> None:
    outer = "From: Zosia\nSent: Sunday, July 4, 2021 8:15 PM\nTo: Hania\nSubject: RE: FW: jam\n"
    text = f"{outer}\n{NOTE}\n\n{HEADS[head]}\n\nThe doctor asked for it too.\n\n{HEADS[head]}\n\n"
    below = f"\n{HEADS['bare']}\n\nThe doctor wants to know how you make it.\n"
    (found,) = brought(f"{text}{RECIPE}{below}")
    assert "doctor" not in found.text
    assert LEFT in asked(found)
    assert len(steps(found)) == 2
    assert fact(found, "author") == "Nan Old"


def test_a_note_above_a_recipe_told_in_sentences_is_left_out() -> None:
    told = "Boil 1 kg plums with 800 g sugar for ten minutes. Pour it into jars and seal them."
    (found,) = brought(f"{NOTE}\n\n{HEADS['bare']}\n\nPlum jam\n\n{told}\n")
    assert "doctor" not in found.text
    assert steps(found) == [told]


def test_two_recipes_passed_on_in_two_letters_are_both_kept() -> None:
    other = RECIPE.replace("Plum", "Pear").replace("plums", "pears")
    found = brought(f"{RECIPE}\n{HEADS['outlook']}\n\n{other}")
    assert [fact(one, "title") for one in found] == ["Plum jam", "Pear jam"]


@pytest.mark.parametrize(
    "text",
    [
        RECIPE,
        f"{HEADS['bare']}\n\n{RECIPE}",
        RECIPE.replace("Ingredients", "My aunt made it each year.\n\nIngredients"),
        RECIPE.replace("2. Pour", "2. From: the pan.\n3. Pour"),
    ],
)
def test_a_recipe_with_no_other_letter_beside_it_has_nothing_left_out(text: str) -> None:
    (found,) = brought(text)
    assert LEFT not in asked(found)
    assert ("My aunt" in text) is ("My aunt" in found.text)
    assert listed(found) == ["1 kg plums", "800 g sugar"]
    assert steps(found)[-1] == "Pour into jars."
