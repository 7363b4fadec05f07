"""Documents of 60, 600 and 6,000 pages: time a page, and memory."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.long_weeks import write_class, write_week
from tests.benchmarks.named import PROBLEMS_OF_TEN_SIDES
from tests.benchmarks.one_make import OneMake, make_in_process
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table

_USUAL, _LONG, _QUICK = (60, 600), (60, 600, 6000), (20, 60)
_GROWTH, _MEMORY_MIB = 1.10, 60.0
# Lessons as long as those of the demonstration week, and as many as it takes.
_SIDES_A_LESSON, _PROBLEMS_A_SIDE = 8, 2
_SIDES_A_PUPIL = 10
_SHORT, _ROUNDS_OF_SHORT = 60, 3


def growth(settings: Settings) -> Section:
    """Each kind of document in each size, in a process of its own."""
    clock = settings.clock
    sizes = _QUICK if settings.is_quick else _LONG if settings.is_long else _USUAL
    rows: list[list[str]] = []
    bounds: list[Bound] = []
    for name, make in _KINDS.items():
        made = [_made(settings, make, size) for size in sizes]
        a_page = [clock.of(each.took) / each.pages for each in made]
        rows += [
            [name, f"{each.pages:,}", seconds(clock.of(each.took)), seconds(page),
             ratio(page, a_page[0]), f"{each.memory_mib:.0f} MiB"]
            for each, page in zip(made, a_page, strict=True)
        ]  # fmt: skip
        what = f"{name}, {made[-1].pages:,} pages"
        grown = Bound(f"{what}: a page, to {made[0].pages}", _GROWTH, a_page[-1] / a_page[0])
        memory = max(each.memory_mib for each in made)
        held = Bound(f"{what}: a process above its imports", _MEMORY_MIB, memory, " MiB")
        bounds += [grown, held]
    heads = ("made and proofed", "pages", "time", "a page", "to the first", "memory")
    return Section("Growth", table(heads, rows), tuple(bounds))


def _made(settings: Settings, make: Callable[[Path, int], OneMake], pages: int) -> OneMake:
    """The document made; a short one several times, of which the middle one counts."""
    several: list[OneMake] = []
    for _ in range(settings.rounds(_ROUNDS_OF_SHORT) if pages <= _SHORT else 1):
        with TemporaryDirectory() as folder:
            several.append(make(Path(folder), pages))
    return sorted(several, key=lambda each: settings.clock.of(each.took))[len(several) // 2]


def _booklet(folder: Path, pages: int) -> OneMake:
    lessons = max(1, round(pages / _SIDES_A_LESSON))
    week = write_week(folder / "week", lessons, _SIDES_A_LESSON * _PROBLEMS_A_SIDE)
    return make_in_process(week, folder / "made", only="answer booklet")


def _named_set(folder: Path, pages: int, vary: bool) -> OneMake:
    week = write_week(folder / "week", 1, PROBLEMS_OF_TEN_SIDES)
    names = write_class(folder / "class.csv", pages // _SIDES_A_PUPIL)
    return make_in_process(week, folder / "made", class_list=str(names), vary=vary)


_KINDS: dict[str, Callable[[Path, int], OneMake]] = {
    "answer booklet": _booklet,
    "named set, the same numbers": partial(_named_set, vary=False),
    "named set, other numbers for each": partial(_named_set, vary=True),
}
