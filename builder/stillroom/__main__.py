"""The command by way of Python: `python -m stillroom check`."""

from stillroom.cli import main

main(prog_name="stillroom")
