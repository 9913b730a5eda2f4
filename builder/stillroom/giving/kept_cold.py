"""Whether a present is kept in the fridge from the day it is given, by its label's own words."""

from __future__ import annotations

import re

_ONLY_OPENED = re.compile(r"\W*(?:once|after|when) (?:it is )?opened")


def is_kept_cold(keep: str) -> bool:
    """Say whether it goes into the fridge unopened; what does so once opened does not.

    >>> is_kept_cold("In the fridge."), is_kept_cold("Cool and dark. In the fridge once opened")
    (True, False)
    >>> is_kept_cold("In the fridge; once opened, eat it within a week")
    True
    >>> is_kept_cold("Dark until opened, then in the fridge")
    False
    """
    for sentence in re.split(r"[.;]", keep.lower()):
        before, fridge, after = sentence.partition("fridge")
        if fridge and "opened" not in before and not _ONLY_OPENED.match(after):
            return True
    return False
