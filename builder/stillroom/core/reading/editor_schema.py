"""The JSON Schema of a recipe's front matter, for editors that complete and check as you type.

Made from the model, so that the two cannot say different things. What only the readers of plain
words know (is "3 cupp" an amount?) stays with `stillroom check`.
"""

from __future__ import annotations

from typing import Any

from stillroom.core.lines.ingredient import INGREDIENT_KEYS, SCALES
from stillroom.core.recipe.keeps import KEEPING_KEYS, MARKS
from stillroom.core.recipe.model import FrontMatter
from stillroom.core.when.stages import stage_words

_LISTS_OR_ONE = ("vessels", "containers", "season", "was")
_TEXT_OR_NUMBER = {"type": ["string", "number"]}


def front_matter_schema() -> dict[str, Any]:
    """Return the schema (JSON Schema 2020-12) with the words a cook may use for a key."""
    schema = FrontMatter.model_json_schema(by_alias=False)
    keys = schema["properties"]
    for key in _LISTS_OR_ONE:
        words = keys[key].pop("description", "")
        keys[key] = {"anyOf": [keys[key], keys[key]["items"]], "description": words}
    keys["ingredients"]["items"] = {"anyOf": [{"type": "string"}, _ingredient()]}
    keys["keeps"] = {
        "anyOf": [{"type": "string"}, _keeping()],
        "description": keys["keeps"].get("description", ""),
    }
    keys["timeline"]["items"] = {
        "type": "object",
        "minProperties": 1,
        "maxProperties": 1,
        "properties": {word: {"type": ["string", "null"]} for word in sorted(stage_words())},
    }
    for key in ("oven", "date"):  # "1932" is a number to an editor
        keys[key] = _TEXT_OR_NUMBER | {"description": keys[key].get("description", "")}
    keys["materials"] = keys["ingredients"]
    keys["vessel"] = keys["vessels"]
    schema["required"] = [key for key in schema["required"] if key != "ingredients"]
    schema["anyOf"] = [{"required": ["ingredients"]}, {"required": ["materials"]}]
    schema["title"] = "A recipe of a stillroom book"
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}


def _ingredient() -> dict[str, Any]:
    keys: dict[str, Any] = {key: {"type": "string"} for key in INGREDIENT_KEYS}
    keys |= {key: _TEXT_OR_NUMBER for key in ("amount", "strength", "tolerance")}
    keys["scales"] = {"enum": list(SCALES)}
    keys["optional"] = keys["left in"] = {"type": "boolean"}
    keys["parts"] = {"type": "array", "items": {"type": "string"}}
    return {
        "type": "object",
        "properties": keys,
        "required": ["item", "amount"],
        "additionalProperties": False,
    }


def _keeping() -> dict[str, Any]:
    keys: dict[str, Any] = {key: {"type": "string"} for key in KEEPING_KEYS}
    keys["mark"] = {"enum": list(MARKS)}
    return {"type": "object", "properties": keys, "additionalProperties": False}
