"""The desk: the book's own pages for whoever writes it, in a browser on the same computer.

* ``serving``, ``doorway``, ``only_one``: who may come in, and that one desk at a time
  has a book open.
* ``rooms``: which address leads to what; ``showing`` sets the pages (``templates``, ``assets``).
* ``place``: the book's folder, and what lies in it; ``keeping`` writes there and keeps what was.
* ``recipe_form``, ``recipe_rows``, ``recipe_writing``: a recipe's file as boxes to fill, and back
  with the smallest change.
* ``reading_back``, ``looking``: how each line was read, what is wrong, and the page as it will be.

Files stay the truth: the desk keeps nothing that is not in the book's folder. It runs on Starlette
and uvicorn, which the extra ``desk`` brings.
"""
