"""The English name of a country by its two letters."""

from __future__ import annotations

from babel import Locale


def country_name(code: str) -> str:
    """Return a country's name, or its letters where it has none.

    >>> country_name("FR"), country_name("XQ")
    ('France', 'XQ')
    """
    return str(Locale("en").territories.get(code, code))


def in_country(code: str) -> str:
    """Return "in" a country, as it is said within a sentence.

    >>> in_country("GB"), in_country("FR")
    ('in the United Kingdom', 'in France')
    """
    name = country_name(code)
    return f"in the {name}" if name.startswith(("United", "Netherlands")) else f"in {name}"
