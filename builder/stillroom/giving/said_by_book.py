"""What a giving list says in the ways of its book: money, packs, stock and postage.

The currency, the language and the units stand in the validation's context.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from pydantic import ValidationInfo

from stillroom.core.amounts.money import parse_money
from stillroom.core.amounts.packs import parse_pack
from stillroom.core.amounts.quantities import Amount
from stillroom.core.amounts.units import System
from stillroom.giving.written import read_stock_line
from stillroom.giving.written_time import read_bands


def money_said(value: Any, info: ValidationInfo) -> Fraction:
    """Return a sum as its list writes money."""
    return parse_money(value, *_as_said(info))


def pack_said(value: Any, info: ValidationInfo) -> tuple[Amount, Fraction, int]:
    """Return a pack: its amount, its price, from how many on."""
    currency, language = _as_said(info)
    return parse_pack(value, currency, _units(info), language)


def stock_line_said(value: Any, info: ValidationInfo) -> tuple[Amount, str]:
    """Return the amount and the thing of a line of stock."""
    return read_stock_line(value, _units(info))


def _units(info: ValidationInfo) -> System:
    found: System = (info.context or {}).get("units", "metric")
    return found


def _as_said(info: ValidationInfo) -> tuple[str, str]:
    said = info.context or {}
    return said.get("currency", "GBP"), said.get("language", "en_GB")


def bands_said(value: Any, info: ValidationInfo) -> tuple[tuple[Fraction, Fraction], ...]:
    """Return what postage costs up to each weight."""
    return read_bands(value, *_as_said(info))
