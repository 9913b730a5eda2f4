"""The command line, one file a group of commands; cli.py gathers them."""
