"""A week of one small lesson to post."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from typeset.errors import Remark
from typeset.posting.message import Pack
from typeset.press import posting

MONDAY = """\
lesson: Floats
day: Monday
sides: 1
aim: I can multiply.
stages:
  - practise:
      - set: A
        problems:
          - structure: equal groups
            groups: 3..9 crates
            each: 12..48 step 6 floats
            space: lines
            lines: 12
            story: Leila packs {groups} with {each} each. How many floats is that?
          - structure: sharing
            total: 84 mackerel
            groups: 7 buckets
            lines: 8
            story: Rhys shares {total} out into {groups}. How many are in each?
"""
WEEK = """\
week: Ropes & floats
class: Gulls
layout: standard
sender: Gull class <gulls@harbour.example>
lessons: [monday]
"""


def write_week(folder: Path) -> Path:
    """The folder of a week of one small lesson, made in this one."""
    week = folder / "ropes"
    week.mkdir()
    (week / "week.yaml").write_text(WEEK, encoding="utf-8")
    (week / "monday.yaml").write_text(MONDAY, encoding="utf-8")
    return week


@pytest.fixture
def week(tmp_path: Path) -> Path:
    return write_week(tmp_path)


@pytest.fixture(scope="module")
def lasting_week(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The same for tests that only read what comes of it."""
    return write_week(tmp_path_factory.mktemp("lasting"))


_MADE: dict[tuple[object, ...], dict[tuple[str, str], Pack]] = {}


@pytest.fixture(scope="module", autouse=True)
def packs_made_once() -> Iterator[None]:
    """The same content in the same layout gives the same pack, so tests need it once."""
    make = posting._packs_in

    def made(
        order: posting.PostOrder,
        layout: str,
        versions: tuple[str, ...],
        remark: Callable[[Remark], None],
    ) -> dict[tuple[str, str], Pack]:
        content = tuple(file.read_bytes() for file in sorted(order.folder.glob("*.yaml")))
        key = (content, layout, versions, order.answers)
        if key not in _MADE:
            _MADE[key] = make(order, layout, versions, remark)
        return _MADE[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(posting, "_packs_in", made)
        yield
