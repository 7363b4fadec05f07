"""Published problems as data: how the files beside this one are read and solved.

A file holds items of one source; `test_published.py` says which keys.
The frame is read without any interpretation of values, and the text of each problem is cut
out as it stands, so that the program's own reader meets it exactly as typed.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from textwrap import dedent, indent

import yaml

from typeset.arithmetic.answers import AnswerValue, answer_exact, answer_unit
from typeset.arithmetic.building import solve_lesson
from typeset.arithmetic.solving import Solution
from typeset.reading.week import read_lesson_alone

HERE = Path(__file__).parent
SURE = ("read", "read in part", "from memory", "computed")
FILE_KEYS = {"source", "sure", "note", "items"}
ITEM_KEYS = {"name", "source", "sure", "note", "problem", "answer", "unit", "kind", "wrong"}

_LESSON = """\
lesson: Published
day: Monday
sides: 1
aim: I can solve it.
stages:
  - practise:
      - set: A
        problems:
          -
"""


@dataclass(frozen=True, slots=True)
class Item:
    """One published problem. `answer` and `wrong` are exact texts, by name where several."""

    file: str
    name: str
    source: str
    sure: str
    problem: str
    answer: Mapping[str, str]
    unit: str
    kind: str
    wrong: Mapping[str, Mapping[str, str]]

    @property
    def title(self) -> str:
        """What a test run says: how sure we are first, so that it can be selected by -k."""
        return f"[{self.sure}] {self.file}: {self.name}"


def items_of(file: Path) -> Iterator[Item]:
    """The items of a data file. Raises ValueError for one that is not as it should be."""
    text = file.read_text(encoding="utf-8")
    top = _children(yaml.compose(text, Loader=yaml.BaseLoader))
    _only(top, FILE_KEYS, file.name)
    shared = {key: node.value for key, node in top.items() if key in {"source", "sure"}}
    for node in top["items"].value:
        yield _item(file, text, node, shared)


def _item(file: Path, text: str, node: yaml.Node, shared: dict[str, str]) -> Item:
    keys = _children(node)
    name = keys["name"].value
    _only(keys, ITEM_KEYS, f"{file.name}, {name}")
    told = shared | {key: keys[key].value for key in ("source", "sure") if key in keys}
    if told["sure"] not in SURE:
        raise ValueError(f"{file.name}, {name}: nobody is {told['sure']!r} sure")
    wrong = _children(keys["wrong"]) if "wrong" in keys else {}
    return Item(
        file=file.stem,
        name=name,
        source=told["source"],
        sure=told["sure"],
        problem=_as_typed(text, keys["problem"]),
        answer=_by_name(keys["answer"]),
        unit=keys["unit"].value if "unit" in keys else "",
        kind=keys["kind"].value if "kind" in keys else "",
        wrong={mistake: _by_name(each) for mistake, each in wrong.items()},
    )


def _children(node: yaml.Node | None) -> dict[str, yaml.Node]:
    if not isinstance(node, yaml.MappingNode):
        raise ValueError(f"keys are wanted where there is {node}")
    return {key.value: value for key, value in node.value}


def _only(keys: Mapping[str, yaml.Node], known: set[str], where: str) -> None:
    if unknown := set(keys) - known:
        raise ValueError(f"{where}: unknown {sorted(unknown)}")


def _by_name(node: yaml.Node) -> dict[str, str]:
    """One answer goes by no name, several by theirs."""
    if isinstance(node, yaml.ScalarNode):
        return {"": node.value}
    return {name: value.value for name, value in _children(node).items()}


def _as_typed(text: str, node: yaml.Node) -> str:
    """The lines of the node as they stand in the file, moved to the left."""
    start, end = node.start_mark, node.end_mark
    return dedent(" " * start.column + text[start.index : end.index]).rstrip() + "\n"


def solved(problem: str, folder: Path) -> Solution:
    """The problem written into a lesson file, read by the real reader and solved."""
    file = folder / "published.yaml"
    file.write_text(_LESSON + indent(problem, " " * 12), encoding="utf-8")
    week = read_lesson_alone(file)
    (only,) = solve_lesson(week.lessons[0]).problems()
    return only.solution


def exact_answers(
    answers: Mapping[str, AnswerValue], expected: Mapping[str, str]
) -> dict[str, str]:
    """The answers as exact texts; a single one that is expected without a name goes by none."""
    exact = {name: answer_exact(value) for name, value in answers.items()}
    return {"": next(iter(exact.values()))} if set(expected) == {""} else exact


def units_of(answers: Mapping[str, AnswerValue]) -> set[str]:
    """The units of all answers, as words or symbols."""
    return {answer_unit(value) for value in answers.values()}
