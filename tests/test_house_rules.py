"""The rules of the house that code can break without any other test noticing."""

from __future__ import annotations

import ast
import os
import re
import subprocess
import sys
import tomllib
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import yaml

from list_licences import needed

ROOT = Path(__file__).resolve().parents[1]
PACKAGE = ROOT / "builder" / "stillroom"
MODULES = sorted(PACKAGE.rglob("*.py"))
OUTSIDE = {"requests", "urllib.request", "socket", "http.client", "jinja2"}
CORE_MODULES = sorted((PACKAGE / "core").rglob("*.py"))
TESTS = sorted((ROOT / "tests").rglob("*.py"))
README = (ROOT / "README.md").read_text(encoding="utf-8")

# every room, from the ground up: each imports only from rooms before it
CORE = (
    "words",
    "amounts",
    "paper",
    "when",
    "larder",
    "lines",
    "recipe",
    "batch",
    "size",
    "method",
    "allergens",
    "care",
    "label",
    "reading",
    "private",
    "",  # what stands in no room: the book, its check, its unknown foods
)
# floor -> the floors below it
FLOORS = {
    "core": set(),
    "saving": {"core"},
    "looks": {"core", "saving"},
    "beginning": {"core", "saving"},
    "bringing": {"core", "saving", "beginning"},
    "printing": {"core", "looks"},
    "publish": {"core", "looks", "printing", "saving", "beginning"},  # what is asked of a cook
    "giving": {"core", "looks", "printing", "saving"},
    "desk": {
        *("core", "looks", "saving", "beginning", "bringing", "printing", "publish", "giving"),
    },
    "commands": {
        *("core", "looks", "saving", "beginning", "bringing", "printing", "publish", "giving"),
        "desk",
    },
    "cli.py": {"core", "looks", "saving", "beginning", "printing", "publish", "giving", "commands"},
    "__init__.py": set(),
    "__main__.py": {"cli"},
}
# library -> the only folder that may know it
ONLY_IN = {"mkdocs": "publish", "material": "publish", "typst": "printing"}


@cache
def tree_of(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def imports_of(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(tree_of(path)):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: write imports in full"
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def floor_of(path: Path) -> str:
    return path.relative_to(PACKAGE).parts[0]


def room_of(parts: tuple[str, ...]) -> int:
    """Return which room of core a module lies in, counted from the ground."""
    return CORE.index(parts[1] if len(parts) > 2 or parts[1] in CORE else "")


def test_imports_only_go_down() -> None:
    for path in MODULES:
        floor = floor_of(path)
        for name in imports_of(path):
            parts = name.split(".")
            if parts[0] == "stillroom" and len(parts) > 1:
                assert parts[1] in FLOORS[floor] | {floor}, f"{floor} imports {name}"
            if parts[0] in ONLY_IN:
                assert floor == ONLY_IN[parts[0]], f"{path} imports {name}"


def test_a_room_of_core_imports_only_from_rooms_below() -> None:
    for path in CORE_MODULES:
        own = path.relative_to(PACKAGE).with_suffix("").parts
        modules = {name for name in imports_of(path) if name.startswith("stillroom.core.")}
        for name in sorted(modules):
            parts = tuple(name.split(".")[1:])
            if (PACKAGE / Path(*parts)).is_dir() or (PACKAGE / Path(*parts)).with_suffix(
                ".py"
            ).exists():
                assert room_of(parts) <= room_of(own), f"{'/'.join(own)} imports {name}"


def test_no_module_reaches_into_another_floor_by_path() -> None:
    """A file of another floor is asked for by a name which that floor gives it."""
    for path in MODULES:
        strings = {
            node.value
            for node in ast.walk(tree_of(path))
            if isinstance(node, ast.Constant) and isinstance(node.value, str)
        }
        others = set(FLOORS) - {floor_of(path), "core"}
        reached = strings & {f"stillroom.{other}" for other in others}
        climbs = re.search(
            r"__file__\)(?:\.resolve\(\))?\.(?:parent\.parent|parents)", path.read_text("utf-8")
        )
        assert (reached, climbs) == (set(), None)


def test_core_knows_no_clock_and_no_network() -> None:
    for path in CORE_MODULES:
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"\b(date\.today|datetime\.now|time\.time)\(", text), path
        assert not imports_of(path) & {
            "requests",
            "urllib.request",
            "socket",
            "http.client",
            "jinja2",
        }


def test_module_is_short_and_says_what_it_is_for() -> None:
    for path in MODULES:
        text = path.read_text(encoding="utf-8")
        assert len(text.splitlines()) <= 400, path
        assert ast.get_docstring(tree_of(path)), f"{path}: a module says what it is for"


def test_nothing_new_stands_at_the_top() -> None:
    listed = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True, encoding="utf-8"
    )
    top = {line.split("/")[0] for line in listed.stdout.splitlines()}
    files = {"README.md", "DEVELOPERS.md", "LICENSE", "mkdocs.yml", "pyproject.toml"}
    assert {name for name in top if not name.startswith(".")} == files | {
        "builder",
        "recipes",
        "site_demo",
        "tests",
    }


def calls_in(path: Path) -> list[tuple[str, ast.Call]]:
    tree = tree_of(path)
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call)]
    return [(getattr(call.func, "attr", getattr(call.func, "id", "")), call) for call in calls]


def left_to_the_system(path: Path) -> list[str]:
    bare = []
    for name, call in calls_in(path):
        given = {keyword.arg for keyword in call.keywords}
        texts = (name == "read_text" and not call.args) or name == "write_text"
        texts |= name == "open" and isinstance(call.func, ast.Name)
        texts |= name == "run" and "text" in given
        if texts and "encoding" not in given and len(call.args) < 2:
            bare.append(f"{path}:{call.lineno}: {name}")
    return bare


def test_text_is_read_and_written_as_utf8_on_every_system() -> None:
    # what is left to the system is another page on Windows
    assert [call for path in (*MODULES, *TESTS) for call in left_to_the_system(path)] == []


def test_a_check_waits_for_no_paper_and_no_plan() -> None:
    code = "import sys, stillroom.commands.check; print(*sorted(sys.modules))"
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, encoding="utf-8"
    )
    brought = {name.split(".")[0] for name in done.stdout.split()}
    assert brought & {"typst", "highspy", "numpy", "mkdocs", "jinja2", "icalendar"} == set()


def test_ci_runs_the_test_command_of_the_readme() -> None:
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    command = script.strip().splitlines()[-1]
    assert command in README


def test_the_three_systems_run_the_commands_of_the_readme() -> None:
    text = (ROOT / ".github" / "workflows" / "check.yml").read_text(encoding="utf-8")
    (job,) = yaml.safe_load(text)["jobs"].values()
    commands = [
        step["run"]
        for step in job["steps"]
        if "run" in step and not step["run"].startswith("sudo apt-get install")  # browsers
    ]
    assert len(commands) == 4
    assert [command for command in commands if command not in README] == []
    assert len(job["strategy"]["matrix"]["system"]) == 3


def test_each_python_that_is_promised_builds_the_same_bytes() -> None:
    text = (ROOT / ".github" / "workflows" / "same-bytes.yml").read_text(encoding="utf-8")
    (job,) = yaml.safe_load(text)["jobs"].values()
    command = job["steps"][-1]["run"]
    script, *pythons = command.split()
    assert os.access(ROOT / script, os.X_OK)
    assert command in (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    brought = job["steps"][1]["with"]["python-version"].split()
    assert pythons == [f"python{version}" for version in brought]
    least = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert least["requires-python"] == f">={brought[0]}"


def test_every_dependency_is_locked_by_its_sums() -> None:
    """`uv pip compile` makes .ci/locked.txt anew; DEVELOPERS.md says how."""
    locked = (ROOT / ".ci" / "locked.txt").read_text(encoding="utf-8")
    named = set(re.findall(r"^([a-z0-9-]+)==\S+", locked, re.MULTILINE))
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    more = project["optional-dependencies"].values()
    wanted = [*project["dependencies"], *(line for extra in more for line in extra)]
    names = {re.match(r"[\w-]+", line)[0].lower() for line in wanted}  # type: ignore[index]
    assert names - named - {"stillroom"} == set()
    assert locked.count("--hash=sha256:") > len(named)
    assert "://" not in locked, "the address of a registry is everybody's own"


def test_the_licence_of_everything_needed_is_listed() -> None:
    listed = (ROOT / "builder" / "LICENCES.md").read_text(encoding="utf-8")
    assert [name for name in sorted(needed()) if f"| {name} |" not in listed] == []
    assert "see its own files" not in listed
    for path in (PACKAGE / "looks" / "fonts" / "paper").glob("*.ttf"):
        family = re.sub(r"(?<=[a-z])(?=[A-Z])", " ", path.stem.split("-")[0])
        assert family in listed, path


def run_check(*arguments: str) -> str:
    done = subprocess.run(
        [sys.executable, "-m", *arguments],
        cwd=ROOT,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    return "" if done.returncode == 0 else done.stdout + done.stderr


def test_no_word_of_a_data_file_is_read_as_something_else() -> None:
    """YAML reads a bare "no" or "on" as true or false, and `{of: a, b}` has a key of nothing.

    Facts may be true or false ("edible: true"); words in lists and names never are.
    """
    wrong = []
    for path in sorted([*PACKAGE.rglob("*.yml"), *PACKAGE.rglob("*.yaml")]):
        open_ = [yaml.safe_load(path.read_text(encoding="utf-8"))]
        while open_:
            held = open_.pop()
            if isinstance(held, dict):
                wrong += [
                    (path.name, name) for name in held if not isinstance(name, str | int | float)
                ]
                wrong += [(path.name, name) for name in held if isinstance(name, bool)]
                wrong += [(path.name, name) for name, said in held.items() if said is None]
                open_ += held.values()
            elif isinstance(held, list):
                words = [one for one in held if isinstance(one, str)]
                spoken = any(re.search(r"[^\W\d]", word) for word in words)
                wrong += [
                    (path.name, one)
                    for one in held
                    if isinstance(one, bool)
                    or one is None
                    or (spoken and not isinstance(one, str | dict | list))
                ]
                open_ += held
    assert wrong == []


def _keys_written_twice(node: yaml.Node | None) -> Iterator[str]:
    """Yield the keys that stand twice in one mapping, with their lines: the last would win."""
    if isinstance(node, yaml.MappingNode):
        keys = [key for key, _ in node.value if isinstance(key, yaml.ScalarNode)]
        often = Counter(key.value for key in keys)
        yield from (
            f"{key.value}, line {key.start_mark.line + 1}" for key in keys if often[key.value] > 1
        )
        for _, held in node.value:
            yield from _keys_written_twice(held)
    elif isinstance(node, yaml.SequenceNode):
        for held in node.value:
            yield from _keys_written_twice(held)


def test_no_key_of_a_data_file_is_written_twice() -> None:
    wrong = [
        (path.name, key)
        for path in sorted([*PACKAGE.rglob("*.yml"), *PACKAGE.rglob("*.yaml")])
        for key in _keys_written_twice(
            yaml.compose(path.read_text(encoding="utf-8"), yaml.CSafeLoader)
        )
    ]
    assert wrong == []
    both = yaml.compose("a: {b: 1, b: 2}\nc: [{d: 1, d: 2}]\n")
    assert [*_keys_written_twice(both)] == ["b, line 1", "b, line 1", "d, line 2", "d, line 2"]


def test_code_is_in_shape() -> None:
    assert run_check("ruff", "check", "builder", "tests") == ""
    assert run_check("ruff", "format", "--check", "builder", "tests") == ""


def test_types_hold() -> None:
    assert run_check("mypy") == ""


def test_no_file_names_a_package_registry_or_another_host() -> None:
    hosts = ["py" + "pi.org", "pythonhosted" + ".org", "npm" + "js.org", "registry." + "npm"]
    listed = subprocess.run(
        ["git", "ls-files", "-z"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
    ).stdout.split("\0")
    for name in filter(None, listed):
        path = ROOT / name
        if path.suffix in {".woff2", ".ttf", ".otf", ".png", ".jpg", ".pdf"} or not path.is_file():
            continue
        text = path.read_text(encoding="utf-8")
        assert not [host for host in hosts if host in text], name
