"""YAML of our own data files, read in half the time of the general way.

What the reader of YAML tells, one event after another, is put together at once: no tree of nodes
with their places is made, and a word is asked only once whether it is a number. What the files
have no need of (tags, anchors, merged keys) is left to the general way. Leaves out what people
write, where every line is needed: frontmatter.py.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any, Final

import yaml

# the C reader where PyYAML brings it: it is many times quicker
_LOADER: Final[Any] = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_MAKER: Final = yaml.constructor.SafeConstructor()
_SIGNS: Final = yaml.resolver.Resolver.yaml_implicit_resolvers
"""By its first sign, what a word without quotes may be: a number, true, a date."""


class _Unusual(Exception):
    """What is left to the general way."""


def read_plain(text: str) -> Any:
    """Return what a text says, as `yaml.safe_load` does; raises yaml.YAMLError as it does.

    >>> read_plain("sugar: {density: 0.85, also: [caster, '12'], vegan: yes}")
    {'sugar': {'density': 0.85, 'also': ['caster', '12'], 'vegan': True}}
    """
    loader = _LOADER(text)
    next_event = loader.get_event
    try:
        next_event(), next_event()  # the stream and the document begin
        read = _build(next_event, next_event())
        next_event()  # the document ends
        if type(next_event()) is not yaml.StreamEndEvent:
            raise _Unusual
        return read
    except _Unusual:
        return yaml.load(text, Loader=_LOADER)
    finally:
        loader.dispose()


def _build(next_event: Callable[[], Any], event: Any) -> Any:
    kind = type(event)
    if not issubclass(kind, yaml.NodeEvent) or kind is yaml.AliasEvent or event.anchor or event.tag:
        raise _Unusual
    if kind is yaml.ScalarEvent:
        written: str = event.value
        return _word(written) if event.implicit[0] and written[:1] in _SIGNS else written
    if kind is yaml.SequenceStartEvent:
        items = []
        while type(event := next_event()) is not yaml.SequenceEndEvent:
            items.append(_build(next_event, event))
        return items
    named = {}
    while type(event := next_event()) is not yaml.MappingEndEvent:
        if type(event) is not yaml.ScalarEvent or event.value == "<<":
            raise _Unusual
        name = _build(next_event, event)
        named[name] = _build(next_event, next_event())
    return named


@cache
def _word(written: str) -> Any:
    """Return what a word without quotes stands for."""
    for tag, pattern in _SIGNS[written[:1]]:
        if pattern.match(written):
            return _MAKER.construct_object(yaml.ScalarNode(tag, written), deep=True)
    return written
