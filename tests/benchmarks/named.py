"""Named sets: thirty pupils with ten pages each, set against the week's time a page."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.long_weeks import write_class, write_week
from tests.benchmarks.one_make import OneMake, make_in_process
from tests.benchmarks.processes import WEEK
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table

_PUPILS, _FEW_PUPILS = 30, 3
# So many fill ten sides in the standard layout.
PROBLEMS_OF_TEN_SIDES = 40
_VARIED, _SAME = 1.2, 0.25
_ROUNDS = 3


def named(settings: Settings) -> Section:
    """A set with other numbers for every pupil, one with the same, and the week."""
    pupils = _FEW_PUPILS if settings.is_quick else _PUPILS
    made: dict[str, list[OneMake]] = {}
    for _ in range(settings.rounds(_ROUNDS)):
        with TemporaryDirectory() as folder:
            for name, each in _one_round(Path(folder), pupils).items():
                made.setdefault(name, []).append(each)
    pages = {name: each[0].pages for name, each in made.items()}
    whole = {
        name: settings.clock.median_s([one.took for one in each]) for name, each in made.items()
    }
    a_page = {name: whole[name] / pages[name] for name in made}
    usual, *others = a_page.values()
    rows = [
        [name, f"{pages[name]}", seconds(whole[name]), seconds(page), ratio(page, usual)]
        for name, page in a_page.items()
    ]
    heads = ("made and proofed, imports left out", "pages", "time", "a page", "to the week's")
    what = "a page of a named set, {} numbers, to the week's"
    bounds = (
        Bound(what.format("other"), _VARIED, others[0] / usual),
        Bound(what.format("the same"), _SAME, others[1] / usual),
    )
    return Section("Named sets", table(heads, rows), bounds)


def _one_round(folder: Path, pupils: int) -> dict[str, OneMake]:
    lesson = write_week(folder / "week", 1, PROBLEMS_OF_TEN_SIDES)
    names = str(write_class(folder / "class.csv", pupils))
    what = f"named set of {pupils}"
    return {
        "the demonstration week": make_in_process(WEEK, folder / "0"),
        f"{what}, other numbers for each": make_in_process(
            lesson, folder / "1", class_list=names, vary=True
        ),
        f"{what}, the same numbers": make_in_process(lesson, folder / "2", class_list=names),
    }
