"""The book's settings as boxes, and back into mkdocs.yml with the smallest change.

What is wrong is told before anything is written: the settings are read as the build reads them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, Final

from stillroom.core.recipe.settings import read_settings
from stillroom.core.words.problems import ProblemsFound
from stillroom.desk.colours import STYLE
from stillroom.desk.looking import plainly
from stillroom.saving.yaml_files import change_yaml, in_quotes, put, read_yaml_file

PLUGIN: Final = "stillroom"
TOP: Final = {"site_name": "title", "site_url": "site_url"}
OWN: Final = (
    *("country", "altitude_m", "language", "units", "currency"),
    *("design", "family_mark", "printer_feed"),
)
USUAL: Final[Mapping[str, str]] = {"design": "plain"}
"""What a box says of a setting that the file leaves out."""
BOUND: Final = ("dedication", "handwriting", "says")
"""What the printed book bears beside its recipes, in one line each."""
FILE_ONLY: Final[Mapping[str, str]] = {
    "recipes": "the folder in which the recipes lie: the desk writes them there",
    "larder": "the file of your own foods: the desk has its words in a box",
    "pictures": "the folder into which pictures are taken in",
}
"""Settings without a box, and why."""
LABELS: Final[Mapping[str, str]] = {
    "site_name": "What it is called",
    "site_url": "Its address, once it is published",
    "country": "Country of the kitchen",
    "altitude_m": "How high above the sea, in metres",
    "units": "The book’s measures",
    "language": "Language",
    "currency": "What things cost, in",
    "giving_days": "When you give",
    "design": "How cards and tags look",
    "family_mark": "Your family’s mark on the backs of cards",
    "labels": "Bought sheets of labels",
    "printer_feed": "By how much your printer misses, to the right and down",
}
"""What the box of a setting is called; what the printed book bears has several."""
PLACED: Final[Mapping[str, str]] = {
    "foot": "Whose it is",
    "bound_dedication": "Whom the printed book is for",
    "bound_handwriting": "A page in your own hand, among the pictures",
    "bound_says": "What that page reads",
    "bound_photographs": "Photographs in the printed book",
}
"""What the boxes are called whose words stand elsewhere in the file."""
_SETTING: Final = re.compile(r'The setting "(\w+)" is not right: ')
_HOST: Final = re.compile(r"(?:[\w-]+\.)+[a-z]{2,24}(?:/\S*)?", re.IGNORECASE)
SEND: Final = "send_us"
KEPT_BY: Final = re.compile(r"Kept by (.*)\.")


def settings_form(text: str, name: str) -> dict[str, str]:
    """Return what stands in the boxes for a book's settings; raises ProblemsFound."""
    said = read_yaml_file(text, name)
    own = _own(said)
    form = {key: str(said.get(key) or "") for key in TOP}
    form |= {key: "" if own.get(key) is None else str(own[key]) for key in OWN}
    form[SEND] = "no" if str(own.get(SEND)).lower() in ("false", "no") else "yes"
    foot = str(said.get("copyright") or "")
    found = KEPT_BY.fullmatch(foot)
    form["foot"] = found[1] if found else foot
    form["giving_days"] = "\n".join(
        f"{one.get('name', '')}: {one.get('day', '')}" for one in own.get("giving_days") or []
    )
    form["labels"] = _pairs_shown(own.get("labels"), "name", "measures")
    bound = own.get("family_book") if isinstance(own.get("family_book"), dict) else {}
    form |= {f"bound_{key}": str((bound or {}).get(key) or "") for key in BOUND}
    photographs = (bound or {}).get("photographs")
    form["bound_photographs"] = _pairs_shown(photographs, "picture", "shows")
    return form


def _pairs_shown(rows: Any, first: str, second: str) -> str:
    listed = rows if isinstance(rows, list) else [rows] if rows else []
    return "\n".join(
        f"{one.get(first, '')}: {one.get(second, '')}" if isinstance(one, dict) else str(one)
        for one in listed
    )


def _pairs(text: str, first: str, second: str) -> list[dict[str, str]]:
    rows = (line.partition(":") for line in text.splitlines() if line.strip())
    return [{first: name.strip(), second: said.strip()} for name, _, said in rows]


def _own(said: Any) -> Any:
    """Return what stands under the plugin's name, in whichever way it is written."""
    plugins = said.get("plugins")
    rows = [plugins] if isinstance(plugins, dict) else plugins or []
    for row in rows:
        if isinstance(row, dict) and PLUGIN in row:
            return row[PLUGIN] or {}
    return {}


def giving_days(text: str) -> list[dict[str, str]]:
    r"""Return the days that a box names, one to a line: "Christmas: 24 December".

    >>> giving_days("Christmas: 24 December\n1 May")
    [{'name': 'Christmas', 'day': '24 December'}, {'name': '1 May', 'day': '1 May'}]
    """
    found = []
    for line in text.splitlines():
        name, sign, day = (part.strip() for part in line.partition(":"))
        if name:
            found.append({"name": name, "day": day if sign else name})
    return found


def wrong_settings(form: Mapping[str, str]) -> tuple[str, ...]:
    """Return what is wrong with the boxes, in words; nothing where all is right."""
    stated: dict[str, Any] = {TOP[key]: form.get(key, "").strip() for key in TOP}
    stated |= {key: form[key].strip() for key in OWN if form.get(key, "").strip()}
    stated["giving_days"] = giving_days(form.get("giving_days", ""))
    stated["labels"] = _pairs(form.get("labels", ""), "name", "measures")
    if bound := _bound(form):
        stated["family_book"] = bound
    try:
        read_settings(stated, "settings")
    except ProblemsFound as found:
        return tuple(_at_box(plainly(f"{one.what} {one.mend}")) for one in found.problems)
    return ()


def _at_box(text: str) -> str:
    found = _SETTING.match(text)
    label = LABELS.get(found[1]) if found else None
    return f"“{label}”: {text[found.end() :]}" if found and label else text


def whole_address(typed: str) -> str:
    """Return an address as it was typed; one that begins with its host is taken as safe to reach.

    >>> whole_address("book.example.org/ours"), whole_address("ours")
    ('https://book.example.org/ours', 'ours')
    """
    return f"https://{typed}" if _HOST.fullmatch(typed) else typed


def _bound(form: Mapping[str, str]) -> dict[str, Any]:
    """Return what the printed book bears, as its boxes say."""
    found: dict[str, Any] = {
        key: " ".join(form[f"bound_{key}"].split())
        for key in BOUND
        if form.get(f"bound_{key}", "").strip()
    }
    if photographs := _pairs(form.get("bound_photographs", ""), "picture", "shows"):
        found["photographs"] = photographs
    return found


def write_settings(text: str, name: str, form: Mapping[str, str], colours: bool | None) -> str:
    """Return mkdocs.yml with what the boxes say; `colours` puts the stylesheet in or takes it out.

    Raises ProblemsFound where the file cannot be changed.
    """

    def change(said: Any) -> None:
        for key in TOP:
            put(said, [key], form.get(key, "").strip())
        keeper = form.get("foot", "").strip()
        had = KEPT_BY.fullmatch(str(said.get("copyright") or ""))
        words = f"Kept by {keeper}." if keeper and (had or "copyright" not in said) else keeper
        put(said, ["copyright"], words or None)
        own = _own(said)
        for key in OWN:
            _put_own(own, key, form.get(key, "").strip())
        if form.get(SEND) and form[SEND] != settings_form(text, name)[SEND]:
            put(own, [SEND], False if form[SEND] == "no" else None)
        days = giving_days(form.get("giving_days", ""))
        if days != [dict(one) for one in own.get("giving_days") or []]:
            own["giving_days"] = days
        _put_rows(own, form, settings_form(text, name))
        if colours is not None:
            _put_style(said, colours)

    return change_yaml(text, name, change)


def _put_rows(own: Any, form: Mapping[str, str], had: Mapping[str, str]) -> None:
    """Put in the sheets of labels, and what the printed book bears, where the boxes say another."""
    if "labels" in form and form["labels"].split() != had["labels"].split():
        put(own, ["labels"], _pairs(form["labels"], "name", "measures") or None)
    for key in (*BOUND, "photographs"):
        box = f"bound_{key}"
        if box in form and form[box].split() != had[box].split():
            put(own, ["family_book", key], _bound(form).get(key))


def _put_own(own: Any, key: str, words: str) -> None:
    had = own.get(key)
    if had is None and words == USUAL.get(key):
        return
    if words == ("" if had is None else str(had)):
        return
    value: Any = int(words) if key == "altitude_m" and re.fullmatch(r"-?\d+", words) else words
    if key == "country":
        value = in_quotes(words)
    put(own, [key], value if words else None)


def _put_style(said: Any, wanted: bool) -> None:
    styles = said.get("extra_css") or []
    if wanted and STYLE not in styles:
        said["extra_css"] = [*styles, STYLE]
    elif not wanted and STYLE in styles:
        styles.remove(STYLE)
        if not styles:
            said.pop("extra_css")
