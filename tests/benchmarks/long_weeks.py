"""Weeks of any length, written as YAML into a folder: for long booklets and long named sets.

The harbour town is invented, and so is everybody in it.
"""

from __future__ import annotations

from pathlib import Path
from textwrap import indent

_LAYOUT = """\
layout: as-needed
like: standard

sides: as needed
"""
_WEEK = """\
week: Harbour festival, a long one
class: Tern class
layout: as-needed
note: All people, places and numbers are invented.
lessons: [{lessons}]
"""
_LESSON = """\
lesson: Round the harbour {number}
day: {day}
sides: 1
aim: I can say what a story asks for before I work it out.

stages:
  - practise:
      - set: A
        problems:
"""
_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_NAMES = ("Asha", "Tomasz", "Imogen", "Kofi", "Leila", "Rhys", "Yuki", "Odette", "Femi", "Nell")
# Numbers stand as ranges, so that every pupil can get others; `more` moves them from one
# problem to the next.
_PROBLEMS = (
    """\
- structure: equal groups
  groups: 3..9 crates
  each: {more_12}..{more_40} floats
  story: {who} packs {{groups}} with {{each}} in every one. How many floats are packed?
  space: working
""",
    """\
- structure: change
  start: 4{more_10}..4{more_40} mackerel
  decrease: 1{more_10}..1{more_40} mackerel
  find: end
  story: >-
    At sunrise {{start}} lie on the market stall of {who}. By noon, {{decrease}} have been sold.
    How many mackerel are left?
  space: squares
""",
    """\
- structure: ratio
  parts: {{gulls: 3, terns: 7}}
  known: {{difference: {more_12}..{more_40} more terns}}
  find: terns
  such that:
    - the answer is whole
  model: yes
  story: >-
    For every {{gulls}} gulls on the harbour wall {who} counts {{terns}} terns. There are
    {{difference}} than gulls. How many terns are there?
""",
    """\
- structure: grouping
  total: 1{more_10}..1{more_40} people
  each: 6..9 people
  find: groups
  remainder: round up
  answer in: benches
  story: >-
    To see the kites of {who}, {{total}} would like to sit down. A bench has room for {{each}}.
    How many benches are needed?
  space: working
""",
    """\
- structure: sharing
  total: {more_40}..2{more_40} oysters
  groups: 3..8 baskets
  such that:
    - no remainder
  story: >-
    {who} shares {{total}} equally between {{groups}}. How many oysters go into each basket?
  space: squares
""",
)


def write_week(folder: Path, lessons: int, problems: int) -> Path:
    """A week of so many lessons with so many problems each; gives its folder."""
    (folder / "layouts").mkdir(parents=True)
    (folder / "layouts" / "as-needed.yaml").write_text(_LAYOUT, encoding="utf-8")
    names = [f"lesson-{number}" for number in range(1, lessons + 1)]
    (folder / "week.yaml").write_text(_WEEK.format(lessons=", ".join(names)), encoding="utf-8")
    for number, name in enumerate(names, 1):
        told = "".join(_problem(number * 7 + index, index) for index in range(problems))
        day = _DAYS[(number - 1) % len(_DAYS)]
        text = _LESSON.format(number=number, day=day) + indent(told, " " * 10)
        (folder / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def write_class(file: Path, pupils: int) -> Path:
    """A list of so many pupils, all with the core and the week's layout."""
    lines = [
        f"{_NAMES[index % len(_NAMES)]} {_letters(index // len(_NAMES))},core,"
        for index in range(pupils)
    ]
    file.write_text("\n".join(("name,version,layout", *lines)) + "\n", encoding="utf-8")
    return file


def _problem(turn: int, index: int) -> str:
    more = turn % 11
    numbers = {f"more_{base}": base + more for base in (10, 12, 40)}
    return _PROBLEMS[index % len(_PROBLEMS)].format(who=_NAMES[turn % len(_NAMES)], **numbers)


def _letters(number: int) -> str:
    """A, B … Z, BA, BB …: initials that tell pupils of one name apart."""
    letter = chr(ord("A") + number % 26)
    return letter if number < 26 else _letters(number // 26) + letter
