"""No clause is passed over that a poisonous plant's name stands in, however it is written."""

from __future__ import annotations

import re

from stillroom.core.care import toxic_words


def forms_of(name: str) -> set[str]:
    ends = {name, re.sub("y$", "ies", name), re.sub("leaf$", "leaves", name), f"{name}s"}
    written = {(end, form) for end in ends for form in (end, end.upper(), end.capitalize())}
    return {form for end, form in written if form.lower() == end.lower()}  # no "SS" for "ß"


def test_a_closer_look_is_taken_wherever_a_name_stands() -> None:
    names = toxic_words._toxic_names()
    passed_over = [
        form
        for name in names
        for form in forms_of(name)
        if name not in toxic_words._near_names(f"lay paper stars and {form} round it")
    ]
    assert passed_over == []
    assert len(names) > 500
    assert not toxic_words._near_names("stir in the butter and bake it")
