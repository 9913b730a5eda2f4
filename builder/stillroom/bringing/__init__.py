"""Recipes that stood elsewhere, brought into the book's own form as drafts.

A file goes through three rooms:

* what it is and what it says, line by line: ``papers``, and below it ``plain_text`` (with
  ``typed_marks`` and ``tables``), ``web_page`` (with ``tags`` and ``stated``), ``word``,
  ``letter`` (with ``quoting`` and ``mail_heads``), ``chat``;
* which of its lines are which recipe's what: ``heads``, ``head_rows``, ``sorting``, ``titles`` and
  ``credits`` (lines told apart), ``rows`` (with ``broken_lines``), ``leaders``, ``joining``,
  ``columns``, ``cells_on_lines``, ``whole_list``, ``worked_lists`` and ``old_books`` (lines put
  together and parted), ``lists``, ``list_lines`` and ``list_titles``, ``stages`` and
  ``later_lists``, ``shared_method``, ``series`` (with ``series_heads``), ``one_line``, ``tools``,
  ``outside``, ``outside_recipe`` (with ``page_foot``), ``makes_said`` (with ``makes_taken``,
  ``yields`` and ``yield_labels``), ``prose``, ``told_above``, ``greetings`` (with ``callings`` and
  ``said_to_one``), ``farewell``, ``dividing``, ``below_list``;
* a draft of each in the book's form, with a question at whatever was not understood: ``drafting``,
  ``naming`` (with ``kinds_by_work``), ``decimals``, ``doubted``, ``told_within``, ``told_beside``
  (with ``handed_on``) and ``known_work`` (what is plainly done, by ``work_words`` of work.yml);
  ``writing`` puts drafts into a folder, never over what is there.

What each line of a paper became is told afterwards, from the draft's own words: ``line_by_line``
(with ``overlap``), of the lines that ``in_draft`` finds to belong beside a draft.

Nothing is fetched, nothing is made up, and nothing raises on any bytes but what is told. Imports
only from ``core``, ``saving`` and ``beginning``.
"""

from stillroom.bringing.found import Brought, BroughtRecipe, Question
from stillroom.bringing.papers import bring
from stillroom.bringing.writing import DRAFTS, write_brought

__all__ = ["DRAFTS", "Brought", "BroughtRecipe", "Question", "bring", "write_brought"]
