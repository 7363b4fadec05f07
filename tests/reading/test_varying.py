"""The keys by which numbers vary: 'such that', 'support', 'stretch', 'count' and 'seed'."""

from __future__ import annotations

from pathlib import Path

import pytest

from typeset.errors import ContentError, Place
from typeset.reading.content import Practise, ProblemContent, Recap
from typeset.reading.tree import bare
from typeset.reading.week import read_lesson_alone, read_week

WEEK = "week: The harbour festival\nclass: Gull class\nlessons: [monday, tuesday]\n{seed}"
MONDAY = """\
lesson: On the quay
day: Monday
sides: 1
aim: I can multiply.
stages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            id: crates
            groups: 3..9 crates
            each: 12..48 step 6 floats
            such that:
              - the answer is whole
              - no carrying
            support:
              each: 2..5 floats
              such-that: the answer is at most 30
            stretch:
              story: "{groups} with {each} each, and one more."
              hint: One crate first.
            story: "{groups} with {each} each."
          - structure: sharing
            total: 12 nets
            groups: 3 men
            such that: no remainder
            story: "{total} and {groups}."
"""
TUESDAY = """\
lesson: Again
day: Tuesday
sides: 1
aim: I can multiply.
stages:
  - recap:
      from: monday
      count: 2
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return written(tmp_path / "harbour", "seed: 7\n", TUESDAY)


def written(folder: Path, seed: str, tuesday: str) -> Path:
    folder.mkdir(exist_ok=True)
    texts = {"week": WEEK.format(seed=seed), "monday": MONDAY, "tuesday": tuesday}
    for name, text in texts.items():
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def problems(folder: Path) -> tuple[ProblemContent, ...]:
    stage = read_week(folder).lessons[0].stages[0]
    assert isinstance(stage, Practise)
    return stage.sets[0].problems


def test_conditions(folder: Path) -> None:
    crates, nets = problems(folder)
    assert [each.text for each in crates.such_that] == ["the answer is whole", "no carrying"]
    assert crates.such_that[1].place == Place(folder / "monday.yaml", 15, 17)
    assert [each.text for each in nets.such_that] == ["no remainder"]
    # None of it belongs to the structure; ranges do.
    assert bare(crates.fields) == {"groups": "3..9 crates", "each": "12..48 step 6 floats"}


def test_own_numbers_of_versions(folder: Path) -> None:
    crates, nets = problems(folder)
    assert crates.support is not None
    assert bare(crates.support.fields) == {"each": "2..5 floats"}
    assert [each.text for each in crates.support.such_that] == ["the answer is at most 30"]
    assert (crates.support.story, crates.support.hint) == (None, None)
    assert crates.stretch is not None
    assert crates.stretch.story is not None
    assert crates.stretch.story.template.endswith("one more.")
    assert crates.stretch.hint is not None
    assert bare(crates.stretch.fields) == {}
    assert (nets.support, nets.stretch) == (None, None)


def test_ids_that_the_author_gave(folder: Path) -> None:
    assert [each.has_own_id for each in problems(folder)] == [True, False]


def test_a_recap_by_count(folder: Path) -> None:
    recap = read_week(folder).lessons[1].stages[0]
    assert isinstance(recap, Recap)
    assert (recap.count, recap.problems, recap.looks_back_at) == (2, (), ("monday",))


def test_the_seed(folder: Path) -> None:
    assert read_week(folder).seed == 7
    assert read_week(written(folder, "", TUESDAY)).seed == 1
    assert read_week(written(folder, "seed: 0\n", TUESDAY)).seed == 0


def test_a_lesson_alone_brings_those_that_it_looks_back_at(folder: Path) -> None:
    week = read_lesson_alone(folder / "tuesday.yaml")
    assert [each.name for each in week.background] == ["monday"]
    assert [each.name for each in week.lessons] == ["tuesday"]
    assert read_lesson_alone(folder / "monday.yaml").background == ()
    assert read_week(folder).background == ()


def test_what_is_only_looked_back_at_belongs_to_the_fingerprint(folder: Path) -> None:
    before = read_lesson_alone(folder / "tuesday.yaml").fingerprint
    monday = folder / "monday.yaml"
    monday.write_text(MONDAY.replace("3..9", "3..8"), encoding="utf-8")
    assert read_lesson_alone(folder / "tuesday.yaml").fingerprint != before


def test_too_many_conditions(folder: Path) -> None:
    many = "\n".join("              - no carrying" for _ in range(12))
    text = MONDAY.replace("              - no carrying", f"{many}\n")
    (folder / "monday.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(ContentError, match="'such that' has more than 12 conditions"):
        read_week(folder)
