"""The JSON Schema of a season's log, for text editors that help as one types."""

from __future__ import annotations

from typing import Any

from stillroom.core.private.shapes import GIVING_LOG_KEY
from stillroom.giving.log import Kind, log_kinds

_LINE = {"type": "string", "minLength": 1}
_SEVERAL = {"anyOf": [_LINE, {"type": "array", "items": _LINE, "minItems": 1}]}
_COUNT = {"type": "integer", "minimum": 0}
_FIELDS: dict[str, Any] = {
    "batches": {"type": "integer", "minimum": 1, "description": "How many times the recipe."},
    "number": {**_COUNT, "description": "How many were filled, used or spoiled."},
    "container": {**_LINE, "description": "In what: bottle, 100 ml."},
    "began": {**_LINE, "description": "When the batch was begun, where two are going."},
    "amount": {"type": ["string", "number"], "description": "How much was bought: 5 kg, or 12."},
    "paid": {"type": ["number", "string"], "description": "What was paid."},
    "things": {**_SEVERAL, "description": "What was in the basket."},
    "basket": {"type": "integer", "minimum": 1, "description": "Which of theirs."},
    "of": {**_SEVERAL, "description": "Of which recipe."},
    "words": {"type": ["string", "number"], "description": "Whatever else there is to say."},
}


def log_schema() -> dict[str, Any]:
    """Return the schema: one shape for each kind of line."""
    rows = {"type": "array", "items": {"anyOf": [_row(kind) for kind in log_kinds().values()]}}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "The log of a giving list",
        "type": "object",
        "properties": {GIVING_LOG_KEY: {"anyOf": [rows, {"type": "null"}]}},
        "required": [GIVING_LOG_KEY],
        "additionalProperties": False,
    }


def _row(kind: Kind) -> dict[str, Any]:
    named = {kind.kind: {**_LINE, "description": f"As in: {kind.example}"}}
    day = {"day": {**_LINE, "description": "2027-06-03"}}
    return {
        "type": "object",
        "properties": day | named | {name: _FIELDS[name] for name in (*kind.must, *kind.may)},
        "required": ["day", kind.kind, *kind.must],
        "additionalProperties": False,
    }
