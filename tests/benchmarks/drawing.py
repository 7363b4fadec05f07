"""Equal sheets by every engine: warm in one process, and cold in a process each."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TypeAlias

from tests.benchmarks.engines.ours import composed
from tests.benchmarks.engines.table import ENGINES, FLOOR, Engine
from tests.benchmarks.one_file import read_material
from tests.benchmarks.processes import run_python
from tests.benchmarks.read_back import check_pages
from tests.benchmarks.report import Section, Settings, ratio, seconds, table
from tests.benchmarks.sheets import Material, make_sheets
from tests.benchmarks.timing import Clock, Took, in_alternation
from typeset.setting.pdf import write_pdf

Taken: TypeAlias = Mapping[str, Sequence[Took]]

_SHEETS, _FEW_SHEETS = 60, 12
_WARM_ROUNDS, _COLD_ROUNDS = 5, 3
# Every third page of each file is read back.
_CHECKED = 3
_READY, _READY_TAGGED = "our drawing alone", "our drawing alone, tagged"


def drawing(settings: Settings) -> Section:
    """Sixty sheets by every engine that is installed, set against the floor."""
    there = [engine for engine in ENGINES if engine.is_installed]
    count = _FEW_SHEETS if settings.is_quick else _SHEETS
    with TemporaryDirectory() as folder:
        bench = _Bench(count, Path(folder), there)
        # A round before the first: imports, fonts, the first use of everything.
        in_alternation(bench.warm_round, 1)
        bench.check()
        warm = in_alternation(bench.warm_round, settings.rounds(_WARM_ROUNDS))
        cold = in_alternation(bench.cold_round, settings.rounds(_COLD_ROUNDS))
    text = "\n".join((_about(count), _rows(settings.clock, warm, cold), *_missing()))
    return Section(f"Drawing {count} equal sheets", text)


class _Bench:
    """The engines at work. Every round has its own numbers, and the tagged and the untagged
    files of one engine too, so that nobody gains by what it remembers."""

    def __init__(self, count: int, folder: Path, engines: Sequence[Engine]) -> None:
        self.count = count
        self.folder = folder
        self.engines = engines
        self.seed = 0
        self.last: dict[str, tuple[bytes, Material]] = {}

    def warm_round(self, _number: int) -> dict[str, Callable[[], object]]:
        """What is measured in this process."""
        plain, tagged = read_material(self._material()), read_material(self._material())
        works: dict[str, Callable[[], object]] = {
            engine.name: partial(self._make, engine, tagged if engine.is_tagged else plain)
            for engine in self.engines
        }
        for name, is_tagged in ((_READY, False), (_READY_TAGGED, True)):
            document = replace(composed(make_sheets(self.count, self._next())), tagged=is_tagged)
            works[name] = partial(write_pdf, document)
        return works

    def cold_round(self, _number: int) -> dict[str, Callable[[], object]]:
        """What is measured from the start of a process to its end."""
        material, out = self._material(), self.folder / "out.pdf"
        start = ("-m", "tests.benchmarks.one_file")
        return {
            engine.name: partial(run_python, [*start, engine.name, str(material), str(out)])
            for engine in self.engines
        }

    def check(self) -> None:
        """The last file of every engine. Raises LeftOutError."""
        for name, (pdf, material) in self.last.items():
            check_pages(name, pdf, material.sheets, _CHECKED)

    def _make(self, engine: Engine, material: Material) -> None:
        self.last[engine.name] = engine.make()(material), material

    def _material(self) -> Path:
        """The next material, made in a process of its own."""
        seed = self._next()
        file = self.folder / f"material-{seed}"
        number = ("material", str(self.count), str(seed), str(file))
        run_python(["-m", "tests.benchmarks.one_file", *number])
        return file

    def _next(self) -> int:
        self.seed += 1
        return self.seed


def _about(count: int) -> str:
    return (
        f"{count} A4 pages, each with a heading, eight stories of two lines, eight answer boxes "
        "and two bar models; other numbers on each. Every third page of a file of every engine "
        "was read back: the same words, boxes, bars and braces. Our engine lays the bar models "
        "out; the others are given their shapes. The floor is given everything in its place. "
        "*Warm* is in one process, *cold* a process each, from its start to its end.\n"
    )


def _rows(clock: Clock, warm: Taken, cold: Taken) -> str:
    floor_warm, floor_cold = clock.median_s(warm[FLOOR.name]), clock.median_s(cold[FLOOR.name])
    rows: list[list[str]] = []
    for name, taken in warm.items():
        value = clock.median_s(taken)
        row = [name, seconds(value), ratio(value, floor_warm), "", ""]
        if name in cold:
            value = clock.median_s(cold[name])
            row[3:] = [seconds(value), ratio(value, floor_cold)]
        rows.append(row)
    return table(("engine", "warm", "to the floor", "cold", "to the floor"), rows)


def _missing() -> list[str]:
    names = [engine.name for engine in ENGINES if not engine.is_installed]
    return [f"Not installed and left out: {', '.join(names)}.\n"] if names else []
