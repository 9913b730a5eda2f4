"""What is asked a sample of in every run, and all of it by `pytest --whole -m sampled`.

The sample is the beginning of the whole, so that what fails in the one fails in the other.
"""

from __future__ import annotations

import os

from hypothesis import settings

WHOLE = "STILLROOM_WHOLE"


def is_whole() -> bool:
    """Tell whether all is asked; conftest.py says so to every worker."""
    return os.environ.get(WHOLE) == "1"


def share(of_it: int, whole: int) -> int:
    """Return how many are asked: so many of it, or the whole."""
    return whole if is_whole() else of_it


def tries(of_it: int, whole: int) -> settings:
    """Return how many examples hypothesis tries: other ones in each run."""
    return settings(max_examples=share(of_it, whole))
