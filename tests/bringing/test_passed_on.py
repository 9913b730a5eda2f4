"""A recipe that somebody passes on: what stands above it was for one person, and is on no page.

Heads as the mail programs of many languages set them above what is passed on, in the layouts in
which they are pasted (from memory); notes and recipes invented.
"""

from __future__ import annotations

import io
import zipfile
from email.message import EmailMessage
from typing import Final

import pytest

from bringing.drafts import asked, brought, fact, listed, steps
from stillroom.bringing.mail_heads import Heads, heads_within, passes_on, wrote
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
    "fi": "Lähettäjä: Nan Old\nLähetetty: lauantai 3. heinäkuuta 2021 18.02\nAihe: hillo",
    "hu": "Feladó: Nan Old\nElküldve: 2021. július 3. 18:02\nCímzett: Zoe\nTárgy: lekvár",
    "cs": "Od: Nan Old\nOdesláno: sobota 3. července 2021 18:02\nKomu: Zoe\nPředmět: FW: povidla",
    "pt": "De: Nan Old\nEnviada em: sábado, 3 de julho de 2021 18:02\nPara: Zoe\nAssunto: ENC: x",
    "apple": "Begin forwarded message:\n\nFrom: Nan Old <nan@h.example>\nSubject: jam\nTo: Zoe",
    "mark": "---------- Forwarded message ---------\n",
    "wrote": "On 3 July 2021, Nan Old wrote:",
    "wrote de": "Nan Old <nan@h.example> schrieb am Sa., 3. Juli 2021, 18:02:",
    "wrote pl": "W dniu 3.07.2021 o 18:02, Nan Old pisze:",
    "wrote pt": "Em sáb., 3 de jul. de 2021 às 18:02, Nan Old <nan@h.example> escreveu:",
    "wrote cs": "Dne so 3. 7. 2021 v 18:02 uživatel Nan Old <nan@h.example> napsal:",
    "wrote fi": "Nan Old kirjoitti 3.7.2021 klo 18.02:",
}
NO_SENDER: Final = ("mark", *(one for one in HEADS if one.startswith("wrote")))


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
    assert fact(found, "author") == (sender if head in NO_SENDER else "Nan Old")


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


def _stressed(head: str) -> str:
    parts = [line.partition(":") for line in head.split("\n")]
    return "\n".join(f"**{name}:**{said}" if sign else name for name, sign, said in parts)


def _below(head: str, between: str) -> str:
    return between.join(line.replace(": ", f":{between}", 1) for line in head.split("\n"))


LAYOUTS: Final = {
    "double": lambda head: head.replace("\n", "\n\n"),
    "triple": lambda head: head.replace("\n", "\n\n\n"),
    "words below": lambda head: _below(head, "\n"),
    "words below, double": lambda head: _below(head, "\n\n"),
    "one line": lambda head: head.replace("\n", " "),
    "stressed": _stressed,
    "tabs": lambda head: head.replace(": ", ":\t"),
    "table": lambda head: "\n".join(
        f"| {line.replace(': ', ': | ')} |" for line in head.split("\n")
    ),
    "to many": lambda head: head.replace("Zoe", "Zoe <z@h.example>; Ann <a@h.example>;\n Tom Long"),
    "address": lambda head: head.replace("Nan Old", "Nan Old [mailto:nan@h.example]"),
    "windows": lambda head: head.replace("\n", "\r\n\r\n"),
}


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize(
    "head", ["outlook", "bare", "de", "fr", "it", "nl", "pl", "sv", "es", "hu"]
)
def test_a_head_pasted_in_any_layout_keeps_the_note_above_it_private(
    head: str, layout: str
) -> None:
    (found,) = brought(f"{NOTE}\n\n{LAYOUTS[layout](HEADS[head])}\n\n{RECIPE}")
    assert "doctor" not in found.text
    assert "2021" not in found.text
    assert "Zoe" not in found.text
    assert "@" not in found.text
    assert LEFT in asked(found)
    assert fact(found, "title") == "Plum jam"
    assert listed(found) == ["1 kg plums", "800 g sugar"]
    assert steps(found) == ["Boil them together for ten minutes.", "Pour into jars."]
    assert fact(found, "author") == "Nan Old"


@pytest.mark.parametrize("layout", ["double", "triple", "words below", "one line"])
def test_all_of_a_letter_pasted_so_with_a_head_of_its_own_is_read_too(layout: str) -> None:
    own = "From: Zosia\nSent: Sunday, July 4, 2021 8:15 PM\nTo: Hania\nSubject: FW: jam"
    spaced = RECIPE.replace("\n", "\n\n")
    heads = [LAYOUTS[layout](one) for one in (own, HEADS["bare"])]
    (found,) = brought(f"{heads[0]}\n\n{NOTE}\n\n{heads[1]}\n\n{spaced}")
    assert not any(word in found.text for word in ("doctor", "2021", "Hania", "Zosia"))
    assert fact(found, "title") == "Plum jam"
    assert fact(found, "author") == "Nan Old"
    (alone,) = brought(f"{heads[1]}\n\n{spaced}")
    assert (fact(alone, "title"), fact(alone, "author")) == ("Plum jam", "Nan Old")
    assert steps(alone) == steps(found)


@pytest.mark.parametrize("head", ["outlook", "bare", "de", "wrote", "fi"])
def test_a_letter_put_into_a_word_processor_keeps_its_note_private(head: str) -> None:
    rows = f"{NOTE}\n\n{HEADS[head]}\n\n{RECIPE}".replace("<", "&lt;").split("\n")
    space = "http://schemas.openxmlformats.org/wordprocessingml/2006/main"
    body = "".join(f"<w:p><w:r><w:t>{row}</w:t></w:r></w:p>" for row in rows)
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w") as file:
        text = f'<w:document xmlns:w="{space}"><w:body>{body}</w:body></w:document>'
        file.writestr("word/document.xml", text)
    (found,) = bring("a.docx", packed.getvalue(), BookSettings()).recipes
    assert not any(word in found.text for word in ("doctor", "2021", "Zoe"))
    assert LEFT in asked(found)
    assert fact(found, "title") == "Plum jam"


@pytest.mark.parametrize(
    "text",
    [
        "From: my aunt\n\nTo: taste\n\nPara: 6 personas",
        "Von: Oma\nDatum: 1950",
        "De: la abuela\n\nPara: 6 personas\n\nPara: 4 tarros",
        "From the garden: plums\nTo the pan: sugar\nSubject to taste: salt",
        "Van: het land",
        "My aunt wrote: boil it for 12 minutes.",
        "Original message in a bottle",
        "Data: 3 luglio\n\nTemat: konfitury",
        "Prima: tagliare\nA: piacere\nDo: it",
    ],
)
def test_what_is_no_head_of_a_letter_is_none(text: str) -> None:
    lines = text.split("\n")
    assert heads_within(lines) == []
    assert not any(wrote(lines, at) or passes_on(line) for at, line in enumerate(lines))


@pytest.mark.parametrize(
    ("text", "end", "subject", "writer"),
    [
        (
            "From: Nan Old\nTo: Zoe <z@h.example>\nTom <t@h.example>\nSubject: jam",
            4,
            "jam",
            "Nan Old",
        ),
        ("From: Nan Old\nSubject: jam\nWrite to nan@h.example.", 2, "jam", "Nan Old"),
        ("Nan Old <nan@h.example>\n3 July 2021 at 18:02\nto me", 3, "", "Nan Old"),
        ("Nan Old <nan@h.example>\n3 July 2021 at 18:02\nTwo jars", 2, "", "Nan Old"),
        ("From: Nan Old\nSent: 3 July 2021\nTo: Zoe", 3, "", "Nan Old"),
        ("From: nan@h.example\nSubject: jam", 2, "jam", ""),
    ],
)
def test_a_head_ends_where_its_last_line_does(
    text: str, end: int, subject: str, writer: str
) -> None:
    lines = [*text.split("\n"), "Boil it."]
    assert heads_within(lines) == [Heads(0, end, subject, writer)]


def test_who_wrote_may_be_said_on_two_lines() -> None:
    assert wrote(["On 3 July 2021 at 18:02", "Nan Old <nan@h.example> wrote:"], 0) == 2
    assert wrote(["Beat 2 eggs as", "my nan wrote:"], 0) == 0


def test_an_address_that_stands_for_a_name_is_on_no_page() -> None:
    (found,) = brought(f"{NOTE}\n\nFrom: nan@h.example\nSubject: FW: jam\n\n{RECIPE}")
    assert "doctor" not in found.text
    assert "@" not in found.text
    assert fact(found, "author") == ""
    assert LEFT in asked(found)


@pytest.mark.parametrize("greeting", ["Hi Al,\n\n", ""])
@pytest.mark.parametrize(
    ("line", "makes", "kept"),
    [
        ("Makes 24. The doctor rang Tom.", "24", ""),
        ("Serves 4. How are you? The doctor rang Tom.", "4 servings", ""),
        ("Ergibt 24 Stück. Der Arzt hat Tom angerufen.", "24 Stück", ""),
        ("Makes 24. Keep them in a tin for 2 weeks.", "24", "in a tin for 2 weeks"),
    ],
)
def test_news_behind_a_yield_is_for_one_person(
    greeting: str, line: str, makes: str, kept: str
) -> None:
    head = "From: Jo <jo@x.example>\nTo: Al <al@x.example>\nSubject: Biscuits\n\n"
    body = "250 g flour\n100 g sugar\n\nMix the flour and the sugar.\nBake for 10 minutes.\n"
    found = bring("a.eml", f"{head}{greeting}{line}\n\n{body}".encode(), BookSettings())
    (one,) = found.recipes
    assert f"makes: {makes}" in one.text
    assert "Tom" not in one.text
    assert kept in one.text
