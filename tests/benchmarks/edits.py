"""Making again after an edit: what a teacher waits for who puts one number right."""

from __future__ import annotations

import shutil
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.processes import WEEK, run_python
from tests.benchmarks.proofing import make_command
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import Took, timed

# One number of one lesson; the mistakes and remarks of the week stay as they are.
_LESSON, _BEFORE, _AFTER = "monday.yaml", "each: 12 lamps", "each: 14 lamps"
_FULL, _EDITED, _SAME = "everything", "one number of one lesson changed", "nothing changed"
_BOUND = 0.3
_ROUNDS = 3


def edits(settings: Settings) -> Section:
    """The week made, made again after an edit, and made again after none; each cold."""
    taken: dict[str, list[Took]] = {}
    for _ in range(settings.rounds(_ROUNDS)):
        with TemporaryDirectory() as told:
            for name, took in _one_round(Path(told)).items():
                taken.setdefault(name, []).append(took)
    medians = {name: settings.clock.median_s(each) for name, each in taken.items()}
    full = medians[_FULL]
    rows = [[name, seconds(value), ratio(value, full)] for name, value in medians.items()]
    heads = ("`typeset make` of the demonstration week, cold", "time", "to everything")
    bound = Bound(
        "make after an edit to one lesson, to the full make", _BOUND, medians[_EDITED] / full
    )
    return Section("After an edit", table(heads, rows), (bound,))


def _one_round(folder: Path) -> dict[str, Took]:
    week = folder / "week"
    shutil.copytree(WEEK, week)
    command, kept = make_command(week, folder / "made"), folder / "kept"
    full = timed(lambda: run_python(command, kept))
    lesson = week / _LESSON
    text = lesson.read_text(encoding="utf-8")
    if text.count(_BEFORE) != 1:
        raise RuntimeError(f"{_LESSON} has not exactly one '{_BEFORE}' to change")
    lesson.write_text(text.replace(_BEFORE, _AFTER), encoding="utf-8")
    edited = timed(lambda: run_python(command, kept))
    same = timed(lambda: run_python(command, kept))
    return {_FULL: full, _EDITED: edited, _SAME: same}
