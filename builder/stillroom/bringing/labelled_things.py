"""Things of a list with a label before their amount: "For rolling: 150 g icing sugar".

The label is put behind, as other lines say what a thing is for. Leaves out labels that head several
lines: lists.py.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from stillroom.bringing.found import Row
from stillroom.bringing.heads import section_of
from stillroom.bringing.sorting import begins_with_amount, is_ingredient, is_sentence
from stillroom.core.lines.staple_table import staples_named
from stillroom.core.words.patterns import late_regex

_LABELLED: Final = late_regex(
    r"(?P<label>(?:(?i:for|für|zum|zur|pour|per|para|voor|om\s+te|till|för|til|do|na)\s)[^\W\d][^:.!?;\d]{1,40}):\s+(?P<thing>\S.*)"
)
# "Puderzucker, Zitronensaft und Perlen für die Verzierung"
_FOR_THE_END: Final = late_regex(
    r"(?i)\b(?:for\s+(?:decorati\w+|dusting|rolling|sprinkling|serving|coating)|to\s+(?:decorate|finish|dust|serve)"
    r"|(?:für\s+die|zur)\s+(?:Verzierung|Dekoration|Deko)|zum\s+(?:Bestäuben|Bestreuen|Verzieren|Wälzen|Garnieren|Dekorieren)"
    r"|pour\s+(?:la\s+)?(?:décor\w*|garnir|saupoudrer)|per\s+(?:la\s+)?(?:decora\w+|guarnire|spolverare)"
    r"|para\s+(?:decorar|espolvorear)|(?:ter|om\s+te)\s+(?:versier\w+|decoratie|garner\w+|bestrooien))$",
)
# "per 2 lt di alcool a 95°", right above the rest of what goes in
_TO_SO_MUCH: Final = late_regex(
    r"(?i)(?:per|for|to|auf|für|pour|para|voor|op|till|til|na)\s+(?:ogni\s+|each\s+|every\s+|je\s+|chaque\s+|cada\s+)?"
    r"(?P<thing>(?:[\d½¼¾][\d.,/½¼¾]*|an?|one|un[ao]?|une?|eine?[nm]?|um|en)\s*(?:l|lt|lit\w+|dl|cl|ml|bott\w+|flas[ck]\w+|botel\w+|garraf\w+|fles|bout\w+)\.?\s+[^:.!?]{3,50}?)\s*:?"
)
_IF_LIKED: Final = late_regex(
    r"(?i)(?:optional(?:ly|e)?|nach\s+belieben|facultatif|facoltativ\w|opcional|optioneel|evtl\.?)\b",
)
_IN_BRACKETS: Final = late_regex(r"\s*\([^()]*\)")
_MOST_OF_A_THING: Final = 12
_MOST_OF_A_LABEL: Final = 3
_PAIR: Final = 2
_BETWEEN: Final = late_regex(r"[,;]\s+(?=[\d½¼¾⅓⅔])|\s(?:and|und|et|e|y|en|och|og)\s+(?=[\d½¼¾⅓⅔])")
_ANOTHER: Final = late_regex(r"(?:\s(?:and|und|et|e|y|en|och|og|i)|[,;+&])\s+(?=[\d½¼¾⅓⅔])")


def with_labels_behind(rows: Sequence[Row]) -> list[Row]:
    """Return rows with "For rolling: 150 g icing sugar" turned round, below others of a list.

    >>> listed = [Row("100 g butter"), Row("For rolling: 150 g icing sugar")]
    >>> [row.text for row in with_labels_behind(listed)]
    ['100 g butter', '150 g icing sugar, for rolling']
    >>> told = [Row("100 g butter"), Row("For the icing: 150 g sugar stirred into the juice.")]
    >>> with_labels_behind(told) == told
    True
    """
    found: list[Row] = []
    for place, row in enumerate(rows):
        row = _as_thing(row, rows[place + 1 : place + 2])
        said = _LABELLED.fullmatch(row.text) if row.shape in ("line", "item") else None
        things = _things(said["thing"]) if said and found and is_ingredient(found[-1].text) else []
        if said and things:
            label = said["label"][:1].lower() + said["label"][1:]
            gaps = [row.gap, *(False for _ in things[1:])]
            turned = zip(things, gaps, strict=True)
            found += [replace(row, text=f"{one}, {label}", gap=gap) for one, gap in turned]
        else:
            found += _under_a_label(row, found) or [row]
    return found


def _as_thing(row: Row, below: Sequence[Row]) -> Row:
    """Return "per 2 lt di alcool a 95°", above other things, as the first of them: their spirit.

    >>> _as_thing(Row("For 1 litre of vodka:"), [Row("1 kg sloes")]).text
    '1 litre of vodka'
    >>> _as_thing(Row("For 2 litres of cordial:"), [Row("1 kg sloes")]).text
    'For 2 litres of cordial:'
    """
    said = _TO_SO_MUCH.fullmatch(row.text) if row.shape == "line" and below else None
    if said is None or not is_ingredient(below[0].text) or below[0].shape not in ("line", "item"):
        return row
    poured = {tag for food in staples_named(said["thing"]) for tag in food.tags}
    spirit = {"spirit", "high-proof"} & poured and "liqueur" not in poured
    return replace(row, text=said["thing"], shape=below[0].shape) if spirit else row


def _under_a_label(row: Row, above: Sequence[Row]) -> list[Row]:
    """Return the things of "Spices: 3 tbsp mustard seed, 1 tsp turmeric" below their label.

    Only between things of a list, where each of them has an amount.
    """
    label, colon, rest = row.text.partition(":")
    few = bool(colon) and len(label.split()) <= _MOST_OF_A_LABEL and label[:1].isupper()
    listed = few and row.shape in ("line", "item") and bool(above) and is_ingredient(above[-1].text)
    if not listed or section_of(label) is not None or any(map(str.isdigit, label)):
        return []
    things = [one.strip() for one in _BETWEEN.split(rest.strip(" ."))]
    whole = all(begins_with_amount(one) and is_ingredient(one) for one in things)
    if len(things) < _PAIR or not whole:
        return []
    head = replace(row, text=f"{label}:", shape="item")
    return [head, *(replace(head, text=one, gap=False, indent=row.indent + 4) for one in things)]


def is_for_the_end(text: str) -> bool:
    """Whether a line of a list names what goes on at last, or if liked, with or without an amount.

    >>> is_for_the_end("Icing sugar and an egg (for rolling!)"), is_for_the_end("Optional: rum")
    (True, True)
    >>> is_for_the_end("Roll them in the sugar that you have kept back for rolling.")
    False
    """
    loose = _FOR_THE_END.search(text.rstrip(" )!.")) or _IF_LIKED.match(text)
    return bool(loose) and not is_sentence(_IN_BRACKETS.sub("", text))


def _things(text: str) -> list[str]:
    """Return the things behind a label, each with its amount; [] where anything is done."""
    few = len(text.split()) <= _MOST_OF_A_THING and not text.endswith((".", "!", "?"))
    things = [one.strip(" ,;") for one in _ANOTHER.split(text)] if few else []
    listed = all(begins_with_amount(one) and is_ingredient(one) for one in things)
    return things if listed and not any(map(is_sentence, things)) else []
