"""Whether a present is kept cold from the day it is given, by its label's own words."""

from __future__ import annotations

import re

_COLD = re.compile(
    r"(?<!not in the )(?<!out of the )(?<!never in the )\bfridge\b|\brefrigerat\w*"
    r"|\b(?:in the|into the) freezer\b|\b(?:keep|kept|stays?)(?: it)? (?:frozen|chilled)\b"
)
_FROZEN = re.compile(r"\b(?:in the|into the) freezer\b|\bfrozen\b")
# "the fridge or freezer once opened"
_ONLY_OPENED = re.compile(
    r"(?:,? (?:or|and) (?:in )?(?:the )?(?:fridge|freezer|larder|cellar))?"
    r"\W*(?:once|after|when|on) (?:it is )?open(?:ed|ing)?\b"
)


def is_kept_cold(keep: str) -> bool:
    """Say whether it goes into the fridge unopened; what does so once opened does not.

    >>> is_kept_cold("In the fridge."), is_kept_cold("Cool and dark. In the fridge once opened")
    (True, False)
    >>> is_kept_cold("Cool and dark; the fridge or freezer once opened.")
    False
    >>> is_kept_cold("In the fridge; once opened, eat it within a week")
    True
    >>> is_kept_cold("Dark until opened, then in the fridge"), is_kept_cold("Keep refrigerated")
    (False, True)
    >>> is_kept_cold("Not in the fridge: it goes stale there")
    False
    """
    for sentence in re.split(r"[.;]", keep.lower()):
        found = _COLD.search(sentence)
        if found is None or "opened" in sentence[: found.start()]:
            continue
        if not _ONLY_OPENED.match(sentence, found.end()):
            return True
    return False


def is_frozen(keep: str) -> bool:
    """Say whether it goes into the freezer unopened: its date is for there.

    >>> is_frozen("In the freezer."), is_frozen("In the fridge or freezer once opened")
    (True, False)
    >>> is_frozen("In the fridge."), is_frozen("Keep frozen")
    (False, True)
    """
    return is_kept_cold(keep) and bool(_FROZEN.search(keep.lower()))
