"""The JSON Schema of a giving list, for text editors that help as one types.

Made from the models, and widened by the shorter ways of writing that as_written.py reads.
"""

from __future__ import annotations

from typing import Any

from stillroom.giving.model import GivingList

_LINE = {"type": "string", "minLength": 1}
_SEVERAL = {"type": "array", "items": {"type": ["string", "number"]}}


def giving_list_schema() -> dict[str, Any]:
    """Return the schema; every list that it takes is read, or told what is wrong in words."""
    schema = GivingList.model_json_schema(by_alias=True)
    parts = schema["$defs"]
    for part in (schema, *parts.values()):
        for field in part.get("properties", {}).values():
            _widen(field)
    household = parts["Household"]["properties"]
    household["by post"] = {"type": ["boolean", "string"], "description": "yes, or no: by hand."}
    household["children"] = {"anyOf": [_LINE, {"type": "integer"}, _SEVERAL]}
    # one kind of basket needs no naming
    parts["Household"]["required"] = ["name"]
    top = schema["properties"]
    top["baskets"]["additionalProperties"] = _or_line({"$ref": "#/$defs/BasketKind"})
    top["makes"] = _listed("Make", "recipe")
    top["households"] = _listed("Household", "name")
    one = {"type": "object", "additionalProperties": _or_several()}
    top["prices"] = {
        "anyOf": [{"type": "array", "items": {"anyOf": [{"$ref": "#/$defs/Price"}, one]}}, one]
    }
    parts["Price"]["properties"]["packs"] = _or_several()
    top["hours"] = {"anyOf": [{"type": "number"}, top["hours"]]}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **schema,
        "title": "A giving list",
    }


def _or_line(schema: dict[str, Any]) -> dict[str, Any]:
    return {"anyOf": [schema, _LINE]}


def _or_several() -> dict[str, Any]:
    return {"anyOf": [_LINE, _SEVERAL]}


def _widen(field: dict[str, Any]) -> None:
    """Let a list of words stand on one line: "nuts, dairy"; and a day be said in words."""
    if field.get("type") == "array" and field.get("items", {}).get("type") == "string":
        field["anyOf"] = [_LINE, {"type": "array", "items": _LINE}]
        for key in ("type", "items"):
            del field[key]
    if field.get("format") == "date":
        del field["format"]


def _listed(part: str, name: str) -> dict[str, Any]:
    """Return a list of parts, each of which may be its name alone; or names with what is said."""
    alone = {"$ref": f"#/$defs/{part}"}
    return {
        "anyOf": [
            {"type": "array", "minItems": 1, "items": _or_line(alone)},
            {"type": "object", "description": f"{name}: what is said of it"},
            _LINE,
        ]
    }
