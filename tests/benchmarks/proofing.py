"""The whole make of the demonstration week, proof included, against bare extraction; and what
of it is the proof."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.bare_reading import two_readers
from tests.benchmarks.one_make import make_in_process
from tests.benchmarks.one_week import PARTS, week_in_process
from tests.benchmarks.processes import WEEK, run_python
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import Clock, Took, in_alternation, timed

_MAKE, _BARE = "whole make, proof included", "bare pdfplumber, two workers"
_BOUND = 1.25
_ROUNDS = 3
_ABOUT = (
    "*Cold* is a process from its start to its end, *warm* a second make in one process; nothing "
    "is left of earlier makes. Extraction is words, letters and rectangles of the same files.\n"
)


def proofing(settings: Settings) -> Section:
    """Cold, warm, and in parts."""
    clock, rounds = settings.clock, settings.rounds(_ROUNDS)
    with TemporaryDirectory() as told:
        folders = _Folders(Path(told))
        made = folders.next()
        make_in_process(WEEK, made)
        ways = {"cold": _cold(folders, made, rounds), "warm": _warm(folders, made, rounds)}
    parts = week_in_process(PARTS)
    rows: list[list[str]] = []
    bounds: list[Bound] = []
    for how, taken in ways.items():
        whole, least = clock.median_s(taken[_MAKE]), clock.median_s(taken[_BARE])
        rows.append([how, seconds(whole), seconds(least), ratio(whole, least)])
        bounds.append(Bound(f"{_MAKE}, {how}, to {_BARE}", _BOUND, whole / least))
    heads = ("the demonstration week", _MAKE, _BARE, "ratio")
    text = "\n".join((_ABOUT, table(heads, rows), _parts_table(clock, parts)))
    return Section("Making and proofing", text, tuple(bounds))


def make_command(week: Path, to: Path) -> list[str]:
    """`typeset make` of the week into a folder."""
    return ["-m", "typeset", "make", str(week), "--to", str(to)]


class _Folders:
    """New folders, one after the other."""

    def __init__(self, within: Path) -> None:
        self.within = within
        self.numbers = count(1)

    def next(self) -> Path:
        """The next one, not there yet."""
        return self.within / f"made-{next(self.numbers)}"


def _cold(folders: _Folders, made: Path, rounds: int) -> dict[str, list[Took]]:
    bare = ["-m", "tests.benchmarks.bare_reading", str(made)]
    works: dict[str, Callable[[], object]] = {
        _MAKE: lambda: run_python(make_command(WEEK, folders.next()), folders.next()),
        _BARE: lambda: run_python(bare),
    }
    return in_alternation(lambda _: works, rounds)


def _warm(folders: _Folders, made: Path, rounds: int) -> dict[str, list[Took]]:
    """The makes are in processes of their own, which remember nothing of other sections."""
    taken: dict[str, list[Took]] = {_MAKE: [], _BARE: []}
    with two_readers() as readers:
        readers.read(made)
        for _ in range(rounds):
            taken[_MAKE].append(make_in_process(WEEK, folders.next(), makes=2).took)
            taken[_BARE].append(timed(lambda: readers.read(made)))
    return taken


def _parts_table(clock: Clock, parts: Mapping[str, Took]) -> str:
    making = clock.of(parts["setting and drawing"])
    rows = [[name, seconds(clock.of(t)), ratio(clock.of(t), making)] for name, t in parts.items()]
    return table(("in one process, one after the other", "time", "to setting and drawing"), rows)
