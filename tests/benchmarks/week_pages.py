"""The demonstration week's own pages, composed beforehand, drawn against their floor."""

from __future__ import annotations

from statistics import median

from tests.benchmarks.one_week import FLOOR, PLAIN, TAGGED, week_in_process
from tests.benchmarks.report import Bound, Section, Settings, seconds, table

_BOUNDS = {PLAIN: 1.3, TAGGED: 1.8}
_CALLED = {PLAIN: "without tags", TAGGED: "with tags"}
_ROUNDS = 5
_ABOUT = (
    "Lines and pages are broken before the clock runs; what is timed is drawing alone, the first "
    "time that a process draws these pages. The ratio is the median of those of each process.\n"
)


def week_pages(settings: Settings) -> Section:
    """A process a round and way, each with the floor beside it."""
    clock = settings.clock
    rows: list[list[str]] = []
    bounds: list[Bound] = []
    for way, bound in _BOUNDS.items():
        taken = [week_in_process(way) for _ in range(settings.rounds(_ROUNDS))]
        ours = [clock.of(each[way]) for each in taken]
        floors = [clock.of(each[FLOOR]) for each in taken]
        to_floor = median(own / floor for own, floor in zip(ours, floors, strict=True))
        rows.append(
            [_CALLED[way], seconds(median(ours)), seconds(median(floors)), f"{to_floor:.2f}"]
        )
        bounds.append(
            Bound(f"the week's pages drawn {_CALLED[way]}, to the floor", bound, to_floor)
        )
    heads = ("the demonstration week, composed already", "our drawing", "floor", "ratio")
    return Section("Drawing the week's pages", f"{_ABOUT}\n{table(heads, rows)}", tuple(bounds))
