"""The rows of hazards.yml, read strictly: no rule falls silent by a slip of the pen.

Leaves out what a condition means: safety_rules.py.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args

from stillroom.core.care.safety_rules import CHECKS, NARROWING
from stillroom.core.care.told import TOLD
from stillroom.core.recipe.kinds import Kind
from stillroom.core.words.data_files import read_data
from stillroom.core.words.made_patterns import make_pattern
from stillroom.core.words.nearest import did_you_mean

Gravity = Literal["refuse", "danger", "caution", "notice"]
GRAVITIES: tuple[Gravity, ...] = get_args(Gravity)
Read = Literal["read", "restated", "reference.md", "memory"]
RULE_KEYS = frozenset(
    {"id", "gravity", "override", "title", "when", "because", "to_maker", "to_receiver"}
    | {"source", "read", "checked", "beside_refusal", "receiver_when", "on_tag"}
)


@dataclass(frozen=True)
class Rule:
    """One row of hazards.yml. `may_be_overridden` is False on the gravest."""

    name: str
    gravity: Gravity
    title: str
    when: Mapping[str, Any]
    because: str
    to_maker: str
    to_receiver: str
    source: str
    read: Read
    checked: str
    may_be_overridden: bool
    silent_beside_refusal: bool = False
    receiver_when: Mapping[str, Any] | None = None
    on_tag: str = ""


@cache
def all_rules() -> dict[str, Rule]:
    """Return every rule by id, in the order of the table; raises ValueError for a faulty row."""
    rules: dict[str, Rule] = {}
    for row in read_data("hazards.yml"):
        rule = read_rule(row)
        if rule.name in rules:
            raise ValueError(f"hazards.yml: {rule.name} stands there twice.")
        rules[rule.name] = rule
    return rules


def rules_for(kind: Kind) -> tuple[Rule, ...]:
    """Return the rules that may hold of a kind of thing: those that name others need no asking."""
    return _rules_for(kind.name, kind.eaten_by, kind.edible)


@cache
def _rules_for(name: str, eaten_by: str, edible: bool) -> tuple[Rule, ...]:
    return tuple(
        rule
        for rule in all_rules().values()
        if name in rule.when.get("kind", (name,))
        and eaten_by in rule.when.get("eaten_by", (eaten_by,))
        and rule.when.get("edible", edible) == edible
    )


def read_rule(row: Mapping[str, Any]) -> Rule:
    """Read one row strictly; raises ValueError naming the rule and the word that is wrong."""
    name = str(row.get("id", "a rule without id"))
    for key in row:
        if key not in RULE_KEYS:
            raise ValueError(f'hazards.yml: {name}: "{key}". {did_you_mean(key, RULE_KEYS)}')
    for key in ("gravity", "title", "when", "because", "source", "read", "checked"):
        if not row.get(key):
            raise ValueError(f"hazards.yml: {name} does not say its {key}.")
    if row["gravity"] not in GRAVITIES or row["read"] not in get_args(Read):
        raise ValueError(f"hazards.yml: {name}: gravity or read is none of the words allowed.")
    if not row.get("to_maker") and not row.get("to_receiver"):
        raise ValueError(f"hazards.yml: {name} says nothing to anybody.")
    check_condition(name, row["when"])
    if "receiver_when" in row:
        check_condition(name, row["receiver_when"])
    return Rule(
        name=name,
        gravity=row["gravity"],
        title=row["title"],
        when=row["when"],
        because=row["because"],
        to_maker=row.get("to_maker", ""),
        to_receiver=row.get("to_receiver", ""),
        source=row["source"],
        read=row["read"],
        checked=str(row["checked"]),
        may_be_overridden=row.get("override") != "never",
        silent_beside_refusal=row.get("beside_refusal") == "silent",
        receiver_when=row.get("receiver_when"),
        on_tag=row.get("on_tag", ""),
    )


def check_condition(name: str, when: Any) -> None:
    """Raise ValueError, naming the row, for a condition that asks what nothing answers."""
    if not isinstance(when, dict) or not when:
        raise ValueError(f"hazards.yml: {name} has an empty condition.")
    known = {*CHECKS, *NARROWING}
    for word, value in when.items():
        if word not in known:
            raise ValueError(f'hazards.yml: {name}: "{word}". {did_you_mean(word, known)}')
        if word in NARROWING and NARROWING[word] not in when:
            raise ValueError(f'hazards.yml: {name}: "{word}" stands without what it narrows.')
        if word in ("clause", "sugar_boils", "said", "vessel", "item", "not_item", "only_item"):
            make_pattern(value, re.IGNORECASE)  # as it is made when it is asked
        if word == "told" and value not in TOLD:
            raise ValueError(f'hazards.yml: {name}: "{value}". {did_you_mean(value, TOLD)}')
        if word in ("any", "none"):
            for condition in value:
                check_condition(name, condition)
