"""The method is found and its steps are told apart, however a cook writes them."""

from __future__ import annotations

import pytest

from stillroom.core.recipe.body import Body, read_body
from stillroom.core.words.problems import Problem

STEPS = ["Wash the jar.", "Put in the plums.", "Shake it daily."]
NUMBERED = "1. Wash the jar.\n2. Put in the plums.\n3. Shake it daily."


def read(text: str) -> tuple[Body, list[Problem]]:
    problems: list[Problem] = []
    return read_body(text.split("\n"), 10, "a.md", problems), problems


HEADINGS = [
    "## Method", "# Method", "### Method", "###### Method", "##Method", "## METHOD", "## method",
    "## Method:", "## Method ##", "## **Method**", "##  The method", "Method\n------",
    "METHOD\n======", "**Method**", "**Method:**", "__Method__", "Method:", "Directions:",
    "## Directions", "# Directions", "## Instructions", "# INSTRUCTIONS", "## How to make it",
    "## How to make them", "## How to", "## Steps", "## The steps", "## Preparation",
    "## To make", "## What to do", "## Step by step", "## Making", "## Let's make it",
    "## Process", "## Procedure",
]  # fmt: skip


@pytest.mark.parametrize("heading", HEADINGS)
def test_a_heading_by_any_of_its_names(heading: str) -> None:
    body, problems = read(f"Worth it.\n\n{heading}\n\n{NUMBERED}\n\n## Notes\n\nNone.")
    assert problems == []
    assert [step.text for step in body.method] == STEPS
    assert body.intro == "Worth it."
    assert [section.heading for section in body.sections] == ["Notes"]
    assert body.method[0].line == 10 + 4 + heading.count("\n")


SHAPES = {
    "1.": NUMBERED,
    "1)": "1) Wash the jar.\n2) Put in the plums.\n3) Shake it daily.",
    "(1)": "(1) Wash the jar.\n(2) Put in the plums.\n(3) Shake it daily.",
    "1 -": "1 - Wash the jar.\n2 - Put in the plums.\n3 - Shake it daily.",
    "1 –": "1 – Wash the jar.\n2 – Put in the plums.\n3 – Shake it daily.",
    "1:": "1: Wash the jar.\n2: Put in the plums.\n3: Shake it daily.",
    "glued": "1.Wash the jar.\n2.Put in the plums.\n3.Shake it daily.",
    "Step 1:": "Step 1: Wash the jar.\nStep 2: Put in the plums.\nStep 3: Shake it daily.",
    "STEP 1": "STEP 1 Wash the jar.\nSTEP 2 Put in the plums.\nSTEP 3 Shake it daily.",
    "Step 1 alone": "Step 1\nWash the jar.\n\nStep 2\nPut in the plums.\n\nStep 3\nShake it daily.",
    "bold number": "**1.** Wash the jar.\n**2.** Put in the plums.\n**3.** Shake it daily.",
    "bold step": "**Step 1: Wash the jar.**\n**Step 2:** Put in the plums.\n**3:** Shake it daily.",
    "circled": "① Wash the jar.\n② Put in the plums.\n③ Shake it daily.",
    "dashes": "- Wash the jar.\n- Put in the plums.\n- Shake it daily.",
    "stars": "* Wash the jar.\n* Put in the plums.\n* Shake it daily.",
    "round": "• Wash the jar.\n• Put in the plums.\n• Shake it daily.",
    "boxes": "- [ ] Wash the jar.\n- [x] Put in the plums.\n- [ ] Shake it daily.",
    "paragraphs": "Wash the jar.\n\nPut in the plums.\n\nShake it daily.",
    "all ones": "1. Wash the jar.\n1. Put in the plums.\n1. Shake it daily.",
    "blank lines": "1. Wash the jar.\n\n2. Put in the plums.\n\n3. Shake it daily.",
    "run on": "1. Wash\n   the jar.\n2. Put in\nthe plums.\n3. Shake it daily.",
    "indented": "  1. Wash the jar.\n  2. Put in the plums.\n  3. Shake it daily.",
    "a rule between": "1. Wash the jar.\n2. Put in the plums.\n3. Shake it daily.\n\n---",
    "words first": "Wash the jar.\n\n1. Put in the plums.\n2. Shake it daily.",
    "dashes that run on": "- Wash\n  the jar.\n- Put in the plums.\n- Shake it\n  daily.",
}


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("ends", ["\n", " \n"], ids=["plain", "blank at the end"])
def test_steps_of_any_shape(shape: str, ends: str) -> None:
    body, problems = read(f"## Method\n\n{SHAPES[shape]}\n".replace("\n", ends))
    assert problems == []
    assert [step.text for step in body.method] == STEPS


def test_a_number_inside_a_sentence_begins_no_step() -> None:
    body, _ = read("## Method\n\n1. Simmer for\n1.5 hours, then\n20 minutes more.\n2. Cool.")
    assert [step.text for step in body.method] == [
        "Simmer for 1.5 hours, then 20 minutes more.",
        "Cool.",
    ]


def test_headings_within_the_method_are_groups() -> None:
    text = "# Method\n\n## Syrup\n\n1. Boil.\n\n**To finish:**\n\n2. Cool.\n\n## Notes\n\nNone."
    body, problems = read(text)
    assert problems == []
    assert [(step.group, step.text) for step in body.method] == [
        ("Syrup", "Boil."),
        ("To finish", "Cool."),
    ]
    assert [section.heading for section in body.sections] == ["Notes"]


def test_numbered_steps_need_no_heading() -> None:
    body, problems = read(f"Worth it.\n\n{NUMBERED}\n\n## Notes\n\nNone.")
    assert problems == []
    assert body.intro == "Worth it."
    assert [(step.text, step.line) for step in body.method] == [
        (text, 12 + place) for place, text in enumerate(STEPS)
    ]


def test_the_only_numbered_part_is_the_method() -> None:
    body, problems = read(f"Worth it.\n\n## What I did\n\n{NUMBERED}\n\n## Notes\n\n1. None.")
    assert problems == []
    assert [step.text for step in body.method] == STEPS


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("Worth it.", 'The recipe has no "## Method".'),
        ("", 'The recipe has no "## Method".'),
        ("## Notes\n\n1. One.", 'The recipe has no "## Method".'),
        ("## Method\n\n", "The method has no steps."),
        (
            "## On Monday\n\n1. Boil.\n\n## On Friday\n\n1. Cool.",
            'It is not clear which is the method: "On Monday" or "On Friday".',
        ),
    ],
)
def test_a_method_that_cannot_be_found_is_told(text: str, what: str) -> None:
    _, problems = read(text)
    assert [problem.what for problem in problems] == [what]
    assert 10 <= problems[0].line <= 10 + text.count("\n") + 1


def test_a_method_by_another_heading_keeps_that_heading() -> None:
    body, problems = read(f"Worth it.\n\n## For 12 hours in the cold\n\n{NUMBERED}")
    assert problems == []
    assert {step.group for step in body.method} == {"For 12 hours in the cold"}
