"""Clocks: one piece of work, works in alternation, and the median of what they took."""

from __future__ import annotations

import gc
import resource
import statistics
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from tests.benchmarks.processes import cpu_of_running_s


@dataclass(frozen=True, slots=True)
class Took:
    """What a piece of work took, in seconds: on the wall, and of all cores together."""

    wall_s: float
    cpu_s: float


@dataclass(frozen=True, slots=True)
class Clock:
    """Which of the two is shown and compared. The wall is what a teacher waits for; the time of
    the cores is steadier where others use the machine as well."""

    is_cpu: bool = False

    def of(self, took: Took) -> float:
        """The seconds by this clock."""
        return took.cpu_s if self.is_cpu else took.wall_s

    def median_s(self, taken: Sequence[Took]) -> float:
        """The median of several by this clock."""
        return statistics.median(self.of(each) for each in taken)


def timed(work: Callable[[], object]) -> Took:
    """What the work takes, processes that it starts and waits for included.

    Rubbish of earlier work is cleared away before, so that nobody pays for another.
    """
    gc.collect()
    cpu, wall = cpu_s(), time.perf_counter()
    work()
    return Took(time.perf_counter() - wall, cpu_s() - cpu)


def cpu_s() -> float:
    """Seconds of the cores so far, by this process and those that it started."""
    own = resource.getrusage(resource.RUSAGE_SELF)
    others = resource.getrusage(resource.RUSAGE_CHILDREN)
    ended = own.ru_utime + own.ru_stime + others.ru_utime + others.ru_stime
    return ended + cpu_of_running_s()


def in_alternation(
    works_of: Callable[[int], Mapping[str, Callable[[], object]]], rounds: int
) -> dict[str, list[Took]]:
    """All works in turn, so many times (A B C A B C …): what disturbs the machine for a while
    then falls on all of them.

    `works_of` gets them ready for the round of this number, which is not counted.
    """
    taken: dict[str, list[Took]] = {}
    for number in range(rounds):
        for name, work in works_of(number).items():
            taken.setdefault(name, []).append(timed(work))
    return taken
