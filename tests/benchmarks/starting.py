"""How soon the command answers: help, misuse and a check of the week, each in a new process."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable

from tests.benchmarks.processes import ROOT, WEEK
from tests.benchmarks.report import Bound, Section, Settings, seconds, table
from tests.benchmarks.timing import in_alternation

_BARE, _CHECK = "Python alone", "`typeset check` of the demonstration week"
# What is called, and the code that it ends with: 2 stands for misuse.
_CALLS = {
    _BARE: (["-c", "pass"], 0),
    "`typeset --help`": (["-m", "typeset", "--help"], 0),
    "`typeset make --help`": (["-m", "typeset", "make", "--help"], 0),
    "`typeset make` without a week": (["-m", "typeset", "make"], 2),
    "`typeset mkae`": (["-m", "typeset", "mkae"], 2),
    _CHECK: (["-m", "typeset", "check", str(WEEK)], 0),
}
_OVER_PYTHON_MS, _CHECK_S = 60.0, 0.35
_ROUNDS = 15


def start_up(settings: Settings) -> Section:
    """Every call in alternation with bare Python."""
    works = {name: _work(*call) for name, call in _CALLS.items()}
    in_alternation(lambda _: works, 1)
    taken = in_alternation(lambda _: works, settings.rounds(_ROUNDS))
    medians = {name: settings.clock.median_s(each) for name, each in taken.items()}
    bare = medians[_BARE]
    rows = [[name, seconds(value), seconds(value - bare)] for name, value in medians.items()]
    quick = {name: 1000 * (medians[name] - bare) for name in _CALLS if name not in (_BARE, _CHECK)}
    what = "{} over bare Python"
    bounds = [Bound(what.format(each), _OVER_PYTHON_MS, ms, " ms") for each, ms in quick.items()]
    bounds.append(Bound(f"{_CHECK}, cold", 1000 * _CHECK_S, 1000 * medians[_CHECK], " ms"))
    heads = ("call", "time", "over bare Python")
    return Section("Start-up", table(heads, rows), tuple(bounds))


def _work(arguments: list[str], code: int) -> Callable[[], object]:
    def run() -> None:
        done = subprocess.run(
            [sys.executable, *arguments], cwd=ROOT, capture_output=True, check=False
        )
        if done.returncode != code:
            raise RuntimeError(f"{arguments} ended with {done.returncode}: {done.stderr!r}")

    return run
