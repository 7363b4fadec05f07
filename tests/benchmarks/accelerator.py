"""The demonstration week with and without reportlab's accelerator, where it is installed."""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.one_make import make_in_process
from tests.benchmarks.processes import WEEK
from tests.benchmarks.report import Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import Took

_WAYS = {"reportlab in Python alone": True, "with its accelerator": False}
_ROUNDS = 3
_TITLE = "reportlab's accelerator"


def accelerator(settings: Settings) -> Section:
    """Makes in fresh processes, imports left out; tells whether the files are the same."""
    if find_spec("_rl_accel") is None:
        return Section(_TITLE, "Not installed (`pip install '.[accel]'`), so not measured.\n")
    taken: dict[str, list[Took]] = {name: [] for name in _WAYS}
    with TemporaryDirectory() as told:
        for number in range(settings.rounds(_ROUNDS)):
            for name, without in _WAYS.items():
                to = Path(told) / f"{number}" / name
                taken[name].append(make_in_process(WEEK, to, without).took)
        one, other = (_bytes(Path(told) / "0" / name) for name in _WAYS)
    medians = {name: settings.clock.median_s(each) for name, each in taken.items()}
    usual = medians[next(iter(_WAYS))]
    rows = [[name, seconds(value), ratio(value, usual)] for name, value in medians.items()]
    same = "The same" if one == other else "**Other**"
    told_same = f"{same} bytes in every file with it as without.\n"
    heads = ("the demonstration week, imports left out", "time", "ratio")
    return Section(_TITLE, "\n".join((table(heads, rows), told_same)))


def _bytes(folder: Path) -> dict[str, bytes]:
    return {file.name: file.read_bytes() for file in sorted(folder.glob("*.pdf"))}
