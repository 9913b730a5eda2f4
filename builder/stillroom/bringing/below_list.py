"""What stands below a list of ingredients: the steps of its method, and notes beside them.

Leaves out which rows those are: dividing.py.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from stillroom.bringing.afterwords import WHOSE, is_name
from stillroom.bringing.credits import SENT_BY, is_credit, names_a_book
from stillroom.bringing.doubted import quoted
from stillroom.bringing.farewell import AFTERWORD
from stillroom.bringing.found import Recipe, Row
from stillroom.bringing.head_rows import heads_method, is_a_recipe_head, is_head, says_title
from stillroom.bringing.heads import heads_comments, heads_tools, plain, section_of, words
from stillroom.bringing.joining import COUNTED, joined, with_heads
from stillroom.bringing.known_work import is_plainly_work, is_work, tongues_of
from stillroom.bringing.labelled_spans import labelled_span, take_behind_label
from stillroom.bringing.list_parts import further_notes, takes_further, with_further_told
from stillroom.bringing.makes_said import is_only_makes, makes_of
from stillroom.bringing.makes_taken import take_makes
from stillroom.bringing.remarks import brings_food, without_names, without_remarks
from stillroom.bringing.rows import numbered_apart
from stillroom.bringing.sorting import LEADERS, is_passed, is_sentence, is_told, number_of
from stillroom.bringing.titles import writer_of
from stillroom.bringing.yields import yield_told
from stillroom.core.lines.staple_table import staples_named

_WISH: Final = re.compile(
    r"(?:(?:ich|wir) wünschen?\b|(?:i|we) wish you|wishing you"
    r"|je vous souhaite|vi auguro|os deseo|ik wens)\b",
    re.IGNORECASE,
)
# "For the syrup boil 300 g of sugar in water (makes 310 ml)"
_OF_A_PART: Final = re.compile(
    r"(?:^|(?<=[.!?]\s))(?:for\s+the|für\s+d(?:en|ie|as)|pour\s+l[ae]|per\s+(?:il|la|lo)|para\s+(?:el|la)|till)\s"
    r"[^.!?()]*\([^()]*\)",
    re.IGNORECASE,
)
# "Makes about 7 jars. If you want fewer, the recipe is easily halved.", before what is done
_MADE_FIRST: Final = re.compile(
    r"(?P<makes>makes\s+(?:about\s+|around\s+|approx\.?\s+)?\d(?:[^.!]|(?<=\d)\.(?=\d)){2,50})[.!]\s+(?P<rest>(?:if|you|the|this|i|it)\b.*)",
    re.IGNORECASE | re.DOTALL,
)
# "Figure 1: the jar", "Abb. 3: Gelierprobe": what is said of a picture
CAPTION: Final = re.compile(
    r"(?:fig(?:\.|ure|ura|uur)?|abb(?:\.|ildung)|afb(?:\.|eelding)|illustration|illustrazione|ilustración|bild|foto|photo|picture"
    r"|screenshot|bildschirmfoto|skärmbild|schermata|captura de pantalla"
    r"|capture d['’]écran)\s*(?:\d{1,2}\s*[.:–-]|:)"
    # "In the photo above, ...", "Auf dem Bild:"
    r"|(?:(?:in|on|na|nas|nesta|no|auf|im|sur|dans|nella|sulla|en|på|op|i)\s+(?:(?:the|this|dem|der|diesem|la|cette|le|foto|questa|esta|el|los|las|den|de|det)\s+)?)?"
    r"(?:photos?|pictures?|fotos?|foto(?:grafia|grafie)?|bild(?:ern?|en|et)?|billedet|bildet|image[mn]?|imagen|immagine|afbeelding|zdjęciu)\s+"
    r"(?:above|below|shown|on\s+the|oben|unten|ci-dessus|ci-dessous|in\s+alto|qui\s+sopra|acima|abaixo|de\s+(?:arriba|abajo)|ovan|nedan|over(?:st)?|under|hierboven|hieronder|powyżej|poniżej)\b"
    r"|pictured\s+(?:above|below|here|left|right)\b",
    re.IGNORECASE,
)
# "Tip van oma:", "Nans tip:"
_TIP_OF: Final = re.compile(
    r"(?:tipp?s?|hint|astuce|conseil|consiglio|consejo|truco|dica|rada|trick|wskazówka)"
    r" (?:van|von|of|from|de|di|da|av|från|fra) [^\W\d]+(?: [^\W\d]+)?"
    r"|(?:[^\W\d]+ )?[^\W\d]+s (?:top )?tipp?"
)
# "Important note 2:", "Nota importante 1": which of several, and how grave
_WHICH_TIP: Final = re.compile(
    r"\s(?:n[°ºo]\.?\s?)?\d{1,2}$|^(?:important|very important|wichtiger?"
    r"|extra|bonus|final|last|quick|viktigt?|belangrijke?|vigtigt?)\s"
    r"|\s(?:important(?:e|es|i)?|final(?:e|es)?|extra|pratique|pratico)(?=\s\d|$)",
    re.IGNORECASE,
)
_IF_LIKED: Final = re.compile(
    r"(?:optional(?:ly)?|nach\s+belieben|wer\s+mag|facultatif|en\s+option|facoltativ[oi]|opcional|optioneel|valfritt)\s*:\s*",
    re.IGNORECASE,
)
_LABEL: Final = re.compile(r"[A-ZÀ-Ý][^\W\d_]{2,20}(?: [^\W\d_]{1,20}){0,2}:\s+\S")
_SAYS_MADE: Final = re.compile(r"(?:this|it|we|i|the)\s", re.IGNORECASE)
_IN_CAPITALS: Final = re.compile(r"([A-ZÄÖÜÉ]{3,12})\s*[:.–—-]?\s+(?=\S)")
_IF_NAMED: Final = "If they may not be named, take it out."
_LABEL_AND_VALUE: Final = 2
_FEW: Final = 10
_LEAST_NUMBERED: Final = 3
_MOST_FACTS: Final = 6
_COMMENTED: Final = re.compile(r"(?:Reply\s?Delete|ReplyDelete)")
ADDRESS: Final = re.compile(r"(?:https?://|www\.)[^\s<>\"]+")


def read_below(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read the method and what follows it."""
    rows = [row for row in rows if not says_title(row, recipe.title)]
    rows = [row for row in with_further_told(rows) if not takes_further(recipe, row)]
    apart = further_notes(rows)
    part, name = "method", ""
    body: list[Row] = []
    parts: list[tuple[str, str, list[Row]]] = [(part, name, body)]
    for place, row in enumerate(rows):
        section = section_of(row.text) if is_head(row) else None
        if section is None and row.shape == "heading" and part == "aside" and row.level <= 2:
            section = (
                "method"
                if any(one.shape == "step" for one in rows[place + 1 : place + 3])
                else None
            )
        if _COMMENTED.match(row.text):  # a reader's words, below a page's own
            section = "aside"
            parts.append((section, "comments", body := []))
            part = section
            continue
        if section is None and place in apart:
            parts.append(("aside", "", [row]))
            continue
        if section in ("aside", "method"):
            part, name, body = section, row.text.strip(" :"), []
            parts.append((part, name, body))
        elif section == "ingredients":
            continue
        else:
            body.append(row)
    if not any(map(_is_done, (row for part, _, body in parts if part == "method" for row in body))):
        parts = [one for each in parts for one in _method_behind_tools(*each)]
    told_below = any(one[0] == "method" for one in parts[1:])
    if told_below and (_says_facts(parts[0][2]) or _does_nothing(parts[0][2])):
        parts[0] = ("aside", "Notes", parts[0][2])
        _ask_of_foods(recipe, [row.text for row in parts[0][2]])
    recipe.steps += [("", told) for told in recipe.first_steps]
    for part, name, body in parts:
        if part == "method" or _readies_tools(name, body):
            read_steps(recipe, body)
        elif plain(name) not in words("dropped") and not heads_comments(name):
            _read_notes(recipe, name, body)


def _says_facts(rows: Sequence[Row]) -> bool:
    """Whether a few rows between a list and the head of its method do nothing: "Target: 1.1 SG"."""
    few = 0 < len(rows) <= _MOST_FACTS and all(row.shape == "line" for row in rows)
    return few and not any(is_sentence(row.text) or is_told(row.text) for row in rows)


def _readies_tools(name: str, rows: Sequence[Row]) -> bool:
    """Whether below a head of tools they are made ready, and none is named alone."""
    return heads_tools(f"{name}:") and bool(rows) and all(is_plainly_work(row.text) for row in rows)


def _does_nothing(rows: Sequence[Row]) -> bool:
    """Whether nothing is done in sentences between a list and the head of its method."""
    tongues = tongues_of([row.text for row in rows])
    lines = bool(rows) and all(row.shape == "line" for row in rows)
    return lines and not any(is_work(row.text, tongues) for row in rows)


def _ask_of_foods(recipe: Recipe, texts: Sequence[str]) -> None:
    """Ask about what is told between a list and the head of its method, where foods are named."""
    foods = [one for one in texts if is_sentence(one) and brings_food(one, tongues_of((one,)))]
    if foods:
        what = f"Above the method, kept as a note: {' · '.join(map(quoted, foods[:_MOST_FACTS]))}"
        recipe.doubt("title", what, "If it is a step, write it into the method.")


def _is_done(row: Row) -> bool:
    """Whether a row below a list is of a method: a step, or what is done."""
    return row.shape == "step" or is_sentence(row.text) or is_plainly_work(row.text)


def _method_behind_tools(part: str, name: str, body: list[Row]) -> list[tuple[str, str, list[Row]]]:
    """Part the sentences that follow a list of tools from it: they are the method."""
    told = (
        at
        for at, row in enumerate(body)
        if at and (is_sentence(row.text) or (row.gap and is_plainly_work(row.text)))
    )
    first = next(told, 0)
    if not heads_tools(f"{name}:") or not first:
        return [(part, name, body)]
    return [(part, name, body[:first]), ("method", "", body[first:])]


def _read_notes(recipe: Recipe, name: str, rows: Sequence[Row]) -> None:
    kept: list[str] = []
    told = without_names(joined(rows))
    told.tell(recipe)
    for row in told.steps:
        if is_only_makes(row.text) and makes_of(row.text) and not _says_more(recipe, row.text):
            take_makes(recipe, row.text)
            continue
        if not is_passed(row.text) or labelled_span(row.text):
            kept.append(row.text)
            recipe.say_makes(makes_of(row.text) or yield_told(row.text))
        if found := ADDRESS.search(row.text):
            recipe.address = recipe.address or found[0].rstrip(".,)>")
    if kept:
        recipe.notes.append((name, kept))


def _says_more(recipe: Recipe, text: str) -> bool:
    """Whether a line says another quantity than the one that was told above it."""
    return bool(recipe.makes) and makes_of(text) != recipe.makes


def notes_above(recipe: Recipe, rows: Sequence[Row]) -> list[Row]:
    """Keep what stands above a list under a head of its own as notes; return the rows above it.

    Sentences below "About this jam" introduce it, and stay among those.
    """
    kept: list[Row] = []
    name, body = "", kept
    for row in [*rows, None]:
        if row is not None and not (is_head(row) and section_of(row.text) == "aside"):
            body.append(row)
            continue
        if name and (heads_tools(f"{name}:") or any(one.shape == "item" for one in body)):
            _read_notes(recipe, "Equipment" if heads_tools(f"{name}:") else name, body)
        elif name:
            kept += body
        name, body = row.text.strip(" :") if row else "", []
    return kept


def read_steps(recipe: Recipe, rows: Sequence[Row]) -> None:
    """Read the steps of a method, with the headings among them and what is said beside them."""
    group, labelled = "", False
    rows = [row for row in rows if row.shape == "step" or not take_behind_label(recipe, row.text)]
    method = without_remarks(numbered_apart(with_heads(rows)), recipe)
    method.tell(recipe)
    counted = sum(row.shape == "step" for row in method.steps) >= _LEAST_NUMBERED
    for row in method.steps:
        text = number_of(row.text) or (
            re.sub(r"^\d{1,2}\s*[.):]\s+", "", row.text) if row.shape == "step" else row.text
        )
        if row.shape in ("row", "sizes"):
            take_row(recipe, row)
        elif not recipe.steps and row.shape != "step" and _is_optional_food(row.text):
            recipe.ingredients.append(("", row.text))
        elif row.shape == "heading" and is_passed(row.text):
            continue
        elif row.shape == "heading":
            group = row.text.strip(" :")
        elif not recipe.steps and heads_method(row):
            continue
        elif is_only_makes(row.text):
            take_makes(recipe, row.text)
        elif not recipe.steps and (made := _MADE_FIRST.fullmatch(row.text)):
            recipe.say_makes(makes_of(made["makes"]))
            recipe.notes.append(("Notes", [made["rest"]]))
        elif row.shape == "line" and (named := WHOSE.fullmatch(row.text)) and is_name(named["who"]):
            recipe.writer = recipe.writer or named["who"]
        elif row.shape == "line" and SENT_BY.match(row.text) and (who := writer_of(row.text)):
            recipe.writer = recipe.writer or who
        elif recipe.steps and (so_much := _yield_alone(row.text)):
            if not recipe.makes:
                what = f'"{row.text}" stands among the steps, and is taken for how much it makes.'
                recipe.doubt("makes", what, "Look whether that is so.")
            recipe.say_makes(so_much)
        elif not is_passed(row.text) and not _is_furniture(row.text):
            aside = _said_aside(row.text) if row.shape != "step" else _note_numbered(text)
            # "Storage: …", "Picking: …": what stands below a label beside the steps is one too
            labelled = (
                row.shape == "line" and bool(_LABEL.match(row.text)) and bool(aside or labelled)
            )
            if aside := aside or (row.text if labelled else ""):
                recipe.notes.append(("Notes", [aside]))
                if found := ADDRESS.search(aside) if is_credit(aside) else None:
                    recipe.address = recipe.address or found[0].rstrip(".,)>")
            else:
                recipe.steps.append((group, text))
                recipe.numbered |= {text} if row.shape == "step" and counted else set()
            whole = _OF_A_PART.sub(" ", text)
            so_many = makes_of(whole) or yield_told(whole)
            recipe.say_makes("" if _is_of_a_head(so_many, group, recipe.title) else so_many)


def _is_of_a_head(made: str, head: str, title: str) -> bool:
    """Whether so much is of what a head among the steps names, and the title does not.

    >>> _is_of_a_head("30 meatballs", "Lamb meatballs", "Yule mustard")
    True
    >>> _is_of_a_head("30 biscuits", "For the biscuits", "Oat biscuits")
    False
    """
    last = plain(made).split()[-1:]
    return bool(last and head) and last[0] in plain(head) and last[0] not in plain(title)


def _yield_alone(text: str) -> str:
    """Return how much is made where a line among the steps says that alone; "" for any other.

    >>> _yield_alone("3 to 4 Pints"), _yield_alone("This recipe made six 1-pint jars (2 cups).")
    ('3 to 4 Pints', 'six 1-pint jars')
    >>> _yield_alone("Makes a mess."), _yield_alone("Fill 4 jars."), _yield_alone("2 cups sugar")
    ('', '', '')
    """
    if COUNTED.fullmatch(text.strip()):
        return text.strip(" .")
    told = yield_told(text) if _SAYS_MADE.match(text) and len(text.split()) <= _FEW else ""
    return told


def _is_optional_food(text: str) -> bool:
    """Whether a line below a list names what may go in: "Optional: a cinnamon stick".

    >>> _is_optional_food("Optional: a cinnamon stick"), _is_optional_food("Optional: stir in rum")
    (True, False)
    """
    head = _IF_LIKED.match(text)
    rest = text[head.end() :] if head else ""
    told = is_told(rest) or is_sentence(rest) or plain(rest).split(" ")[0] in words("told_first")
    return not told and bool(staples_named(rest))


def _note_numbered(text: str) -> str:
    """Return what a numbered step says that a word in capitals heads as a note, if nothing is done.

    >>> _note_numbered("NOTE This sets late."), _note_numbered("NOTE: add the almonds.")
    ('This sets late.', '')
    """
    found = _IN_CAPITALS.match(text)
    if found is None or plain(found[1]) not in words("tip_heads"):
        return ""
    said = text[found.end() :]
    return "" if is_plainly_work(said) else said


def _said_aside(text: str) -> str:
    """Return what a line among the steps says beside them: a tip, another way, a row of a table.

    >>> _said_aside("Top Tip – they freeze well."), _said_aside("Variante : ajouter du rhum.")
    ('They freeze well.', 'Variante : ajouter du rhum.')
    >>> _said_aside("For the icing: beat the sugar."), _said_aside("Hot | Pints | 5 min")
    ('', 'Hot | Pints | 5 min')
    >>> _said_aside("Figure 2: the jars"), _said_aside("Figure on an hour: it boils slowly.")
    ('Figure 2: the jars', '')
    >>> _said_aside("Chilli chutney tips: Chop them finely.")
    'Chilli chutney tips: Chop them finely.'
    """
    if (
        text.count("|") >= 2
        or text.startswith(("*", "\\*", "~"))
        or _WISH.match(text)
        or is_credit(text)
        or LEADERS.search(text)
        or CAPTION.match(text)
    ):
        return _bare_credit(text.lstrip("\\*~ "))
    if (below := AFTERWORD.match(text)) and text[below.end() :]:
        return f"{text[below.end() :][:1].upper()}{text[below.end() + 1 :]}"
    found = re.match(r"([^\W\d][^:–—.!]{1,30}?)\s*(?:[:–—!]|\.(?=\s+[A-ZÀ-Ý]))\s+(\S.*)", text)
    head = plain(_WHICH_TIP.sub("", found[1])) if found else ""
    if found and text[found.end(1) :].lstrip()[:1] in "!." and head not in words("tip_heads"):
        return ""  # "Enjoy! Keep it dark." begins no note, "Note. Keep it dark." does
    if found is None or heads_tools(found[1]):
        return ""
    if _TIP_OF.fullmatch(head):
        return text
    if head not in words("aside") | words("tip_heads") and section_of(f"{found[1]}:") != "aside":
        return ""
    tip = re.match(r"(?:top |my )?(?:tip|hint|tipp|notes?$)", head)
    bare = tip and not re.search(r"\d", found[1])  # another line may say "see note 1"
    return f"{found[2][:1].upper()}{found[2][1:]}" if bare else text


def _bare_credit(text: str) -> str:
    """Return a credit as a note says it: "From Ann Vane, Grow herbs", without its brackets."""
    bare = text.strip("()") if names_a_book(text) else text
    return f"{bare[:1].upper()}{bare[1:]}" if bare != text or names_a_book(text) else text


def take_row(recipe: Recipe, row: Row) -> None:
    """Keep a row of a table as words, and ask which of a table's sizes is meant."""
    if row.shape == "row":
        cells = [one.strip() for one in row.text.split("|")]
        if len(cells) == _LABEL_AND_VALUE and _takes_fact(recipe, *cells):
            return
        recipe.notes.append(("Notes", [row.text]))
        return
    said = f" for {row.text.replace(' | ', ' and ')}" if row.text else ""
    what = f"The table gives amounts{said}: those of the first stand here."
    recipe.doubt("ingredients", what, "Look whether that is the size you mean.")


def _takes_fact(recipe: Recipe, label: str, value: str) -> bool:
    """Take whose recipe a row of a table says it is; leave out for whom it was made."""
    if plain(label) in words("author_labels"):
        recipe.writer = recipe.writer or value
        recipe.doubt("author", f'"{value}" stands in a table as whose recipe it is.', _IF_NAMED)
        return True
    if plain(label) in words("made_for_labels") and not re.search(r"\d", value):
        what = "For whom it was made is left out: it is nobody else's to read."
        recipe.doubt("title", what, "Write it on the giving list, if you like.")
        return True
    return plain(value) in ("n a", "na", "none", "")


def _is_furniture(text: str) -> bool:
    """Whether a line in capitals without an end leads to other recipes: "MORE CANNING RECIPES"."""
    if is_a_recipe_head(text):
        return True
    return text.isupper() and "RECIPE" in text and len(text.split()) <= 6
