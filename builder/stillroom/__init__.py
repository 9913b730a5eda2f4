"""Stillroom: a household's book of homemade presents, computed from recipe files.

The map of this tree, floor by floor; each imports only from below:

* ``cli`` and ``publish.plugin``: the terminal and MkDocs.
* ``publish``: the public book. ``giving``: the private side. Neither knows the other.
* ``printing``: cards, tags, sheets and the family book through Typst.
* ``core``: one recipe and its numbers; no files written, no clock, no network.
"""
