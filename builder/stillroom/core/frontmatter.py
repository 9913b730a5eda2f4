"""Front matter and giving lists are YAML: read it with the line of every key.

The plain data goes to the models; the lines go to the messages. Repeated keys are refused,
since YAML would silently keep the last one.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import yaml

from stillroom.core.problems import Problem, ProblemsFound


@dataclass(frozen=True)
class Located:
    """Plain data, and the line of each key or item by its path joined with "/"."""

    data: Any
    lines: dict[str, int]


class _Loader(yaml.SafeLoader):
    """YAML's safe types, without turning "yes" in a title or a date into something else."""


_Loader.yaml_implicit_resolvers = {
    sign: [(tag, pattern) for tag, pattern in resolvers if tag != "tag:yaml.org,2002:timestamp"]
    for sign, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def read_yaml(text: str, file: str, first_line: int = 1) -> Located:
    """Read YAML whose first line is `first_line` of the file; raises ProblemsFound."""
    loader = _Loader(text)
    lines: dict[str, int] = {}
    problems: list[Problem] = []
    try:
        node = loader.get_single_node()
        if node is None:
            return Located({}, {})
        _walk(node, (), lines, problems, file, first_line)
        data = loader.construct_document(node)
    except yaml.MarkedYAMLError as error:
        raise ProblemsFound([_yaml_problem(error, file, first_line)]) from None
    except (yaml.YAMLError, ValueError, RecursionError) as error:
        what = f"This is not readable as YAML: {error}."
        raise ProblemsFound([Problem(file, first_line, what)]) from None
    finally:
        loader.dispose()
    if problems:
        raise ProblemsFound(problems)
    return Located(data, lines)


def _walk(
    node: yaml.Node,
    path: tuple[str, ...],
    lines: dict[str, int],
    problems: list[Problem],
    file: str,
    first_line: int,
) -> None:
    lines["/".join(path)] = node.start_mark.line + first_line
    if isinstance(node, yaml.MappingNode):
        seen: set[str] = set()
        for key, value in node.value:
            name = str(key.value)
            line = key.start_mark.line + first_line
            if name in seen:
                problems.append(
                    Problem(file, line, f'"{name}" stands here twice.', "Keep one of them.")
                )
            seen.add(name)
            _walk(value, (*path, name), lines, problems, file, first_line)
            lines["/".join((*path, name))] = line
    elif isinstance(node, yaml.SequenceNode):
        for place, value in enumerate(node.value):
            _walk(value, (*path, str(place)), lines, problems, file, first_line)


def _yaml_problem(error: yaml.MarkedYAMLError, file: str, first_line: int) -> Problem:
    mark = error.problem_mark or error.context_mark
    line = (mark.line if mark else 0) + first_line
    what = f"This line does not read as YAML ({error.problem or 'it is broken'})."
    mend = 'A text with ": " or " #" in it wants "quotes" around it; lists are lined up.'
    return Problem(file, line, what, mend)
