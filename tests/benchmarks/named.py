"""Named sets: thirty pupils with ten pages each, set against the week's time a page."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.long_weeks import write_class, write_week
from tests.benchmarks.one_make import make_in_process
from tests.benchmarks.processes import WEEK
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table

_PUPILS, _FEW_PUPILS = 30, 3
# So many fill ten sides in the standard layout.
PROBLEMS_OF_TEN_SIDES = 40
_VARIED, _SAME = 1.2, 0.25


def named(settings: Settings) -> Section:
    """A set with other numbers for every pupil, one with the same, and the week."""
    pupils = _FEW_PUPILS if settings.is_quick else _PUPILS
    with TemporaryDirectory() as told:
        folder = Path(told)
        lesson = write_week(folder / "week", 1, PROBLEMS_OF_TEN_SIDES)
        names = str(write_class(folder / "class.csv", pupils))
        week = make_in_process(WEEK, folder / "0")
        varied = make_in_process(lesson, folder / "1", class_list=names, vary=True)
        same = make_in_process(lesson, folder / "2", class_list=names)
    made = {
        "the demonstration week": week,
        f"named set of {pupils}, other numbers for each": varied,
        f"named set of {pupils}, the same numbers": same,
    }
    clock = settings.clock
    whole = {name: clock.of(each.took) for name, each in made.items()}
    a_page = {name: whole[name] / each.pages for name, each in made.items()}
    usual, *others = a_page.values()
    rows = [
        [name, f"{each.pages}", seconds(whole[name]), seconds(page), ratio(page, usual)]
        for (name, each), page in zip(made.items(), a_page.values(), strict=True)
    ]
    heads = ("made and proofed, imports left out", "pages", "time", "a page", "to the week's")
    what = "a page of a named set, {} numbers, to the week's"
    bounds = (
        Bound(what.format("other"), _VARIED, others[0] / usual),
        Bound(what.format("the same"), _SAME, others[1] / usual),
    )
    return Section("Named sets", table(heads, rows), bounds)
