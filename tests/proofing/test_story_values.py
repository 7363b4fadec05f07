"""Which values the proof looks for in a story, also where a name stands for a whole text."""

from __future__ import annotations

from pathlib import Path

from typeset.arithmetic.answers import answer_exact
from typeset.arithmetic.building import solve_lesson
from typeset.proofing.expected import Passage
from typeset.proofing.story_values import story_passage
from typeset.reading.week import read_lesson_alone

LESSON = """\
lesson: On the quay
day: Monday
sides: 1
aim: I can solve it.
stages:
  - practise:
      - set: A
        problems:
          - structure: mean
            values: [12 boats, 15 boats, 9 boats]
            story: Asha counts {values}. What is the mean?
          - structure: missing number
            sentence: 7 × _ + 5 = 47
            story: Which number belongs in {sentence}?
          - structure: think of a number
            operations: [halve, add _, divide by 3]
            start: 15
            result: 4.5
            story: Take {start}, {operations}. That gives {result}. What was added?
"""


def passages(tmp_path: Path) -> list[Passage]:
    file = tmp_path / "lesson.yaml"
    file.write_text(LESSON, encoding="utf-8")
    problems = solve_lesson(read_lesson_alone(file).lessons[0]).problems()
    return [story_passage(problem, f"question {problem.number}") for problem in problems]


def found(passage: Passage) -> list[tuple[str, str]]:
    """The words in which each value is printed, and its exact value."""
    return [
        (" ".join(passage.words[each.first : each.last + 1]), answer_exact(each.answer))
        for each in passage.values
    ]


def test_every_value_of_a_list_is_looked_for(tmp_path: Path) -> None:
    assert found(passages(tmp_path)[0]) == [("12,", "12"), ("15", "15"), ("9 boats.", "9")]


def test_a_number_sentence_is_read_back_word_for_word(tmp_path: Path) -> None:
    passage = passages(tmp_path)[1]
    assert passage.words[-7:] == ("7", "×", "□", "+", "5", "=", "47?")
    assert passage.values == ()


def test_values_beside_a_box_are_looked_for(tmp_path: Path) -> None:
    passage = passages(tmp_path)[2]
    assert "□" in passage.words
    assert found(passage) == [("15,", "15"), ("3.", "3"), ("4.5.", "4.5")]
