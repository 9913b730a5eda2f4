"""How anything is written: whole, at once, and only where it may lie.

* ``whole``: a file or a folder is made aside and put in its place by one step of the system, so
  that a full disk, a fault or a kill leaves what was there.
* ``places``: where nothing may be written, because it would be published.

Imports only from ``core``; the public side, the private side and the commands all write by it.
"""
