"""The one place that reads the larder's own data files."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

import yaml


@cache
def read_larder_data(name: str) -> Any:
    """Return one of the YAML files of the larder, for example ``acidity.yml``."""
    text = (files("stillroom.core") / "larder" / name).read_text(encoding="utf-8")
    # the C reader where PyYAML brings it: it is many times quicker
    return yaml.load(text, Loader=getattr(yaml, "CSafeLoader", yaml.SafeLoader))
