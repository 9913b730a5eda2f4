"""Recipes that a page states for machines, by schema.org: as JSON, or within its own tags.

The open vocabulary's Recipe, whichever of its shapes a page uses. Leaves out the words a reader
sees: web_page.py.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any, Final

from stillroom.bringing.found import SERVES, Recipe
from stillroom.bringing.heads import plain, words
from stillroom.bringing.page_figures import is_nutrition
from stillroom.bringing.plain_text import tidy
from stillroom.bringing.published_at import public_address
from stillroom.bringing.sorting import number_of
from stillroom.bringing.tags import Tag, read_tags
from stillroom.bringing.typed_marks import bare

_DEEPEST: Final = 12
_MOST_PARTS: Final = 20_000
_LISTED: Final = ("recipeIngredient", "ingredients", "ingredient", "supply")
_DONE: Final = ("recipeInstructions", "instructions", "step")
_NOTE: Final = "🛈"
# a sign by which a page marks what is said beside the steps
_MARKED: Final = re.compile(r"\s*(?:[🛈ℹ💡📝ⓘ]\ufe0f?\s*)+")
# UN/CEFACT Recommendation 20, the codes a kitchen needs
_COMMA_BEHIND: Final = re.compile(r",(?=\s{0,80}[\]}])")
_UNIT_CODES: Final = {
    "G21": "cup", "G24": "tbsp", "G25": "tsp", "GRM": "g", "KGM": "kg", "MLT": "ml", "LTR": "l",
    "ONZ": "oz", "LBR": "lb", "OZA": "fl oz", "PTL": "pint", "QTL": "quart", "CLT": "cl",
    "DLT": "dl",
}  # fmt: skip


def _loaded(text: str) -> Any:
    """Return the data of a JSON text, commas behind its last things passed over; None for none."""
    try:
        return json.loads(text, strict=False, parse_int=_number)
    except RecursionError:
        return None
    except ValueError:
        bare_ends = _COMMA_BEHIND.sub("", text)
    try:
        return json.loads(bare_ends, strict=False, parse_int=_number)
    except (ValueError, RecursionError):
        return None


def recipes_in_json(text: str) -> list[Recipe]:
    """Return the recipes of a JSON text; none where it is no JSON at all."""
    data = _loaded(_without_wrapping(text))
    if data is None:
        return []
    named = _names(data)
    found = [_recipe(_with_writer(part, named)) for part in _recipe_parts(data)]
    return [one for one in found if one.ingredients or one.steps]


def _names(data: Any) -> dict[str, Any]:
    """Return the name of each part that has an "@id" of its own: {"#me": "Elin Berg"}."""
    named: dict[str, Any] = {}
    for one in _parts(data, into_recipes=True):
        if isinstance(one.get("@id"), str) and one.get("name"):
            named.setdefault(one["@id"], one["name"])
    return named


def _with_writer(part: dict[str, Any], named: dict[str, Any]) -> dict[str, Any]:
    """Return a recipe whose writer is told by an "@id" with that writer's name."""
    for key in ("author", "creator"):
        writer = part.get(key)
        writer = writer[0] if isinstance(writer, list) and len(writer) == 1 else writer
        if isinstance(writer, dict) and not writer.get("name"):
            ident = writer.get("@id")
            if isinstance(ident, str) and ident in named:
                part = part | {key: named[ident]}
    return part


def is_json(text: str) -> bool:
    """Whether a text is JSON, with recipes in it or not."""
    try:
        return isinstance(json.loads(text, strict=False, parse_int=_number), dict | list)
    except (ValueError, RecursionError):
        return text.lstrip()[:1] in ("{", "[") and text.rstrip()[-1:] in ("}", "]")


def recipes_in_tags(page: Tag) -> list[Recipe]:
    """Return the recipes that a page states in scripts and in its tags, each once."""
    found: list[Recipe] = []
    for tag in page.walk():
        if tag.name == "script" and "ld+json" in tag.said.get("type", "").lower():
            inner = "".join(one for one in tag.inner if isinstance(one, str))
            found += recipes_in_json(inner)
    if not found:
        found = [one for one in map(_recipe, _items(page)) if one.ingredients or one.steps]
    alike: dict[tuple[str, int], Recipe] = {}
    for one in found:
        alike.setdefault((one.title.lower(), len(one.ingredients)), one)
    return list(alike.values())


def _number(digits: str) -> int | str:
    # a number of thousands of figures is no amount, and is slow to read
    return int(digits) if len(digits) < 20 else digits


def _without_wrapping(text: str) -> str:
    """Return JSON without the comments that pages put round it."""
    return re.sub(r"^\s*(?://\s*<!\[CDATA\[|<!--)|(?://\s*\]\]>|-->)\s*$", "", text.strip())


def _recipe_parts(data: Any) -> Iterator[dict[str, Any]]:
    return (one for one in _parts(data, into_recipes=False) if _is_recipe(one.get("@type")))


def _parts(data: Any, into_recipes: bool) -> Iterator[dict[str, Any]]:
    """Yield the parts of a page's data, the outermost first; those of a recipe where asked."""
    waiting: list[tuple[Any, int]] = [(data, 0)]
    seen = 0
    while waiting and seen < _MOST_PARTS:
        one, depth = waiting.pop(0)
        seen += 1
        if isinstance(one, dict):
            yield one
            if not into_recipes and _is_recipe(one.get("@type")):
                continue
        if depth < _DEEPEST and isinstance(one, dict | list):
            inner = one.values() if isinstance(one, dict) else one
            waiting += [(part, depth + 1) for part in inner if isinstance(part, dict | list)]


def _is_recipe(said: Any) -> bool:
    kinds = said if isinstance(said, list) else [said]
    return any(isinstance(kind, str) and re.split("[/:#]", kind)[-1] == "Recipe" for kind in kinds)


def _recipe(data: dict[str, Any]) -> Recipe:
    recipe = Recipe(title=_said(data.get("name") or data.get("headline")))
    recipe.makes = _yield(data.get("recipeYield") or data.get("yield"))
    recipe.writer = _said(data.get("author") or data.get("creator"))
    recipe.address = _address(data)
    for key in _LISTED:
        group = ""
        for row in _listed(data.get(key)):
            if row.endswith(":") and not re.search(r"\d", row):  # "For the icing:"
                group = row.strip(" :")
            else:
                recipe.ingredients.append((group, row))
    for key in _DONE:
        if not recipe.steps:
            recipe.steps += _steps(data.get(key))
    steps, notes = [], []
    for head, step in recipe.steps:
        if head == _NOTE or plain(step.partition(":")[0]) in words("aside"):
            notes.append(step)
        elif not is_nutrition(step):
            steps.append((head, step))
    recipe.steps = steps
    if kept := [note for note in notes if not is_nutrition(note)]:
        recipe.notes.append(("Notes", kept))
    if described := _said(data.get("description")):
        recipe.intro.append(described)
    return recipe


def _address(data: dict[str, Any]) -> str:
    for key in ("url", "mainEntityOfPage", "@id"):
        value = data.get(key)
        value = value.get("@id") or value.get("url") if isinstance(value, dict) else value
        if address := public_address(value):
            return address
    return ""


def _said(value: Any, depth: int = 0) -> str:
    """Return a value as words: a text, a number, a person's name, the first of a list."""
    if isinstance(value, list):
        return (
            ", ".join(filter(None, (_said(one, depth + 1) for one in value[:4])))
            if depth < 3
            else ""
        )
    if isinstance(value, dict):
        return (
            _said(value.get("name") or value.get("@value") or value.get("text"), depth + 1)
            if depth < 3
            else ""
        )
    return (
        bare(tidy(str(value))) if isinstance(value, str | int | float) and value is not True else ""
    )


def _yield(value: Any) -> str:
    """Return how much it makes; of several, the one in words: "16 pieces" rather than "16"."""
    said = [_said(one) for one in (value if isinstance(value, list) else [value])]
    said = [
        re.sub(r"^(?:makes|yields?|serves)\s*:?\s*(?=\D*\d)", "", one, flags=re.I) for one in said
    ]
    said = [
        re.sub(r"^[^\W\d]+\s*:\s*(?=.*\d.*[^\W\d])", "", one) for one in said
    ]  # "Servings: 1 l"
    wordy = [one for one in said if re.search(r"[^\W\d_]", one)]
    things = [one for one in wordy if not SERVES.search(one)]
    return (things or wordy or [one for one in said if one] or [""])[0]


def _listed(value: Any) -> list[str]:
    rows = value if isinstance(value, list) else [value]
    found: list[str] = []
    for row in rows:
        if isinstance(row, dict):
            found.append(_measured(row))
        elif isinstance(row, str):
            found += [bare(line) for line in _lines(row)]
    return [row for row in found if row]


def _measured(row: dict[str, Any]) -> str:
    """Return what a part says with its measure apart: 3/4, cup, sugar."""
    unit = _said(row.get("unitText")) or _UNIT_CODES.get(_said(row.get("unitCode")), "")
    amount = _said(row.get("value") or row.get("requiredQuantity") or row.get("amount"))
    named = _said(row.get("name") or row.get("text"))
    return " ".join(filter(None, (amount, unit, named)))


def _lines(text: str) -> list[str]:
    """Return the lines of a value that may hold HTML."""
    if re.search(r"<\s*/?\s*(?:p|li|br|div|ol|ul|h\d)\b", text, re.IGNORECASE):
        text = read_tags(text).text()
    return [line.strip() for line in tidy(text).split("\n") if line.strip()]


def _steps(value: Any, group: str = "", depth: int = 0) -> list[tuple[str, str]]:
    if depth > _DEEPEST:
        return []
    if isinstance(value, list):
        return [step for one in value for step in _steps(one, group, depth + 1)]
    if isinstance(value, dict):
        inner = value.get("itemListElement") or value.get("steps")
        if inner:
            head = _said(value.get("name")) if "Section" in str(value.get("@type")) else ""
            return _steps(inner, head or group, depth + 1)
        return _steps(_said_whole(value), group, depth + 1)
    if not isinstance(value, str):
        return []
    found: list[tuple[str, str]] = []
    for line in _lines(value):
        head = _NOTE if _MARKED.match(line) else group
        said = bare(line)
        above = found[-1][1] if found else ""
        if said[:1].islower() and above and not re.search(r"[.!?:;]$", above):
            found[-1] = (head, f"{above} {said}")  # its writer's machine broke the sentence off
        elif re.search(r"[^\W\d_]", said):
            found.append((head, number_of(said) or said))
    return found


def _said_whole(step: dict[str, Any]) -> Any:
    item = step.get("item")
    return step.get("text") or step.get("name") or (item if isinstance(item, dict | str) else "")


def _items(page: Tag) -> Iterator[dict[str, Any]]:
    """Return the recipes that stand in a page's tags (microdata, RDFa) in the shape of JSON."""
    for tag in page.walk():
        if _is_recipe(tag.said.get("itemtype") or tag.said.get("typeof")):
            yield _facts(tag)


def _facts(item: Tag) -> dict[str, Any]:
    """Return what an element states of itself, by property."""
    facts: dict[str, Any] = {"@type": "Recipe"}
    waiting: list[Tag] = [one for one in reversed(item.inner) if isinstance(one, Tag)]
    while waiting:
        tag = waiting.pop()
        named = tag.said.get("itemprop") or tag.said.get("property") or ""
        inner = [one for one in reversed(tag.inner) if isinstance(one, Tag)]
        own = "itemscope" in tag.said or "typeof" in tag.said
        for name in named.split():
            name = re.split("[/:#]", name)[-1]
            facts.setdefault(name, []).append(_value(tag, name))
        if (not own and not named) or (
            named and not own and not any(key in named for key in (*_LISTED, *_DONE))
        ):
            waiting += inner
    return facts


def _value(tag: Tag, name: str) -> Any:
    if tag.name == "meta" or (tag.said.get("content") and not tag.inner):
        return tag.said.get("content", "")
    if tag.name in ("a", "link") and name in ("url", "mainEntityOfPage"):
        return tag.said.get("href", "")
    if name == "author":
        named = [one for one in tag.walk() if one is not tag and _named(one, "name")]
        return named[0].words() if named else tag.words()
    if name in _DONE:
        steps = [one for one in tag.walk() if one is not tag and _named(one, "text")]
        items = steps or [one for one in tag.walk() if one.name == "li"]
        if items:
            return [one.words() for one in items]
        whole = any(one.name in ("p", "br", "div") for one in tag.walk() if one is not tag)
        return tag.text() if whole else tag.words()
    return tag.words()


def _named(tag: Tag, name: str) -> bool:
    said = f"{tag.said.get('itemprop', '')} {tag.said.get('property', '')}".split()
    return any(re.split("[/:#]", one)[-1] == name for one in said)
