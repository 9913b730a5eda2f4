"""One ingredient line: what it says of how much and of what, and what it leaves in doubt."""
