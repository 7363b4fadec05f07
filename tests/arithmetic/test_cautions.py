"""Words that suggest care: told where an open task or a question has them, undeclared."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.arithmetic.building import solve_week
from typeset.arithmetic.remarks import remarks_on
from typeset.reading.week import read_lesson_alone

LESSON = """\
lesson: On the quay
day: Monday
sides: 1
aim: I can multiply.
LESSONstages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3 crates
            each: 7 floats
            story: 'STORY {groups} {each}?'
  - extension:
      title: Something to try
      OWNstory: TASK
"""


def remarks(
    folder: Path, story: str = "", task: str = "Why?", lesson: str = "", own: str = ""
) -> str:
    text = LESSON.replace("STORY", story).replace("TASK", task)
    text = text.replace("LESSON", lesson).replace("OWN", own)
    file = folder / "monday.yaml"
    file.write_text(text, encoding="utf-8")
    found = remarks_on(solve_week(read_lesson_alone(file)))
    return "\n".join(str(each).removeprefix(f"{folder}/") for each in found)


def test_a_task_that_speaks_of_cooking_is_remarked_on_once(tmp_path: Path) -> None:
    assert remarks(tmp_path, task="How much fish goes into the chowder?") == (
        "monday.yaml:14:7: remark: question 2 speaks of 'chowder'; if it may lead pupils to try "
        "it, write 'cautions: [kitchen, allergies]', so that the letter to the families says so"
    )


@pytest.mark.parametrize(
    ("task", "caution"),
    [
        ("Use scissors. What do you get?", "scissors"),
        ("Cut it out. What do you get?", "scissors"),
        ("When does the tide turn?", "outdoors"),
        ("Stand at the pier edge. What do you see?", "outdoors"),
        ("With a sharp knife, what then?", "kitchen"),
        ("Which would you taste first?", "allergies"),
    ],
)
def test_words_and_what_they_suggest(task: str, caution: str, tmp_path: Path) -> None:
    assert f"'cautions: [{caution}]'" in remarks(tmp_path, task=task)


@pytest.mark.parametrize("where", ["lesson", "own"])
def test_what_is_declared_is_not_remarked_on(where: str, tmp_path: Path) -> None:
    declared = "cautions: [kitchen, allergies]\n" + ("      " if where == "own" else "")
    assert remarks(tmp_path, task="What is in chowder?", **{where: declared}) == ""


def test_half_declared_is_remarked_on_for_the_rest(tmp_path: Path) -> None:
    found = remarks(tmp_path, task="What is in chowder?", own="cautions: kitchen\n      ")
    assert "'cautions: [allergies]'" in found


def test_a_problem_on_paper_may_be_about_chowder_but_not_tell_to_cut(tmp_path: Path) -> None:
    assert remarks(tmp_path, story="The chowder stall at high tide:") == ""
    assert "question 1 speaks of 'scissors'" in remarks(tmp_path, story="Take scissors.")


def test_words_within_words_suggest_nothing(tmp_path: Path) -> None:
    assert remarks(tmp_path, task="What do the bakers and hobby sailors in Tidewell need?") == ""
