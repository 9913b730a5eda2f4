"""The private side: giving list, planning, shopping and the pack. Publishing never imports it.

How a list is written: tests/giving/data/small-list.yml shows every key with a word on each. The
map, in the order in which a list goes through it:

* ``model``, ``written``, ``reading``: the list's file to a frozen model, mistakes by line.
* ``against_book``: what only list and recipes together can show to be wrong.
* ``facts``, ``rules`` (rules.yml): what a recipe holds, and who must never be given it.
* ``starting``, ``shelf``, ``offering``: when batches may start, what is made already, the problem.
* ``plan_model``, ``planning``, ``mip``, ``objective``: the plan with the fewest points, by HiGHS.
* ``explaining``, ``checking``: why a place is empty; the plan looked over by other rules.
* ``batches``, ``shopping``, ``costs``: what is made when, bought where, and what it costs.
* ``pages``, ``papers``, ``calendar_file``, ``pack``: the pack's files; ``guard``, ``swapping``:
  where they may go, and how they get there whole.
* ``closing``: next year's list.
"""
