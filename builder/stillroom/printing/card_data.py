"""A usage card's words, drawing and code as plain data for the templates."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from stillroom.core.allergens.laws import Said
from stillroom.core.label.labelling import UsageCard
from stillroom.core.paper.qr_code import MODULE_MM, QUIET_MODULES, draw_qr
from stillroom.core.recipe.cooks_word import spoken_of
from stillroom.core.recipe.model import Recipe
from stillroom.looks.card_pictures import CardPicture
from stillroom.looks.inked import emblem_of
from stillroom.looks.quotes import NO_BREAK
from stillroom.looks.set_words import MOST_TIED, set_card, tie_last


def card_data(
    card: UsageCard, recipe: Recipe, picture: CardPicture | None = None, language: str = "en_GB"
) -> dict[str, Any]:
    """Return what the card and tag templates read; raises Unreadable for an endless address."""
    card = set_card(card, language)
    code = draw_qr(card.url) if card.url else None
    shown = picture or CardPicture(emblem_of(recipe.kind.slug), is_emblem=True)
    return {
        "title": card.title,
        "kind_words": spoken_of(recipe),
        "what": card.what,
        "contents_head": recipe.kind.contents_heading,
        "contents": contents_data(card),
        "strength": card.strength_text,
        "use": card.use,
        "keep": tie_last(join_sentences(card.keep, card.once_opened)),
        "cautions": list(card.cautions),
        "allergens": list(card.allergens),
        "may_contain": list(card.may_contain),
        "allergen_words": said_data(card.allergen_words),
        "tag_words": said_data(card.tag_words),
        "made_on_text": card.made_on_text,
        "date_text": card.date_mark.text,
        "to": card.to,
        "sender": card.sender,
        "message": card.message,
        "url": card.url,
        "qr_svg": code.svg if code else "",
        "qr_mm": code.size_mm if code else 0,
        "qr_quiet_mm": QUIET_MODULES * MODULE_MM,
        "picture_svg": shown.svg,
        "picture_ratio": shown.ratio,
        "is_emblem": shown.is_emblem,
        "is_photograph": shown.is_photograph,
        "address": plain_address(card.url),
    }


def contents_data(card: UsageCard) -> list[dict[str, Any]]:
    """Return what is in it, each part with what stands before it.

    A short last part is tied to the word before it, and its own last words to one another, so that
    no word ends a list alone on a line.
    """
    found: list[dict[str, Any]] = []
    for place, entry in enumerate(card.contents):
        is_last = place == len(card.contents) - 1 and not card.strength_text
        word_before = f"{found[-1]['text']}{found[-1]['tail']}".split(" ")[-1] if found else ""
        ending = f"{word_before}, {entry.whole}." if found else ""
        tied = is_last and len(ending) <= MOST_TIED
        before = "" if not found else f",{NO_BREAK}" if tied else ", "
        text = entry.text
        if is_last and len(" ".join(f"{text}{entry.tail}".split(" ")[-2:])) < MOST_TIED:
            text = NO_BREAK.join(text.rsplit(" ", 1))
        said = {"text": text, "emphasised": entry.emphasised, "lead": entry.lead}
        found.append({**said, "tail": entry.tail, "before": before})
    return found


def plain_address(url: str) -> str:
    """Return an address as it is read out and typed.

    >>> plain_address("https://book.example/r/quince-ratafia/")
    'book.example/r/quince-ratafia'
    """
    return url.partition("://")[2].rstrip("/") or url


def said_data(words: Iterable[Said]) -> list[dict[str, Any]]:
    """Return the sentence of allergens as the templates set it, piece by piece."""
    pieces = [{"text": said.text, "strong": said.strong} for said in words]
    if pieces:
        last = str(pieces[-1]["text"])
        pieces[-1]["text"] = NO_BREAK.join(last.rsplit(" ", 1)) if len(last) <= MOST_TIED else last
    return pieces


def join_sentences(*parts: str) -> str:
    """Join sentences, each with its full stop.

    >>> join_sentences("Cool and dark", "Once opened: 6 months.")
    'Cool and dark. Once opened: 6 months.'
    """
    return " ".join(
        part if part.endswith((".", "!", "?")) else f"{part}." for part in parts if part
    )
