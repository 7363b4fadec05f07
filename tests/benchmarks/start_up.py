"""How long verbs take in a fresh process, over a Python that does nothing; prints a table.

    python -m tests.benchmarks.start_up        by the clock on the wall
    python -m tests.benchmarks.start_up cpu    by the time of all cores, on a machine in use

Every run is a process from its start to its end, in turn with all others, which are a bare
`python -c pass`, help and misuse, and a check and a make of the demonstration week. The compiled
modules of ours are there, as they are once a package is installed: the first round, not counted,
leaves them in a folder of the benchmark's own. Nothing is left of an earlier make.
"""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.processes import ROOT, WEEK
from tests.benchmarks.report import Bound, Section, Settings, ratio, seconds, table
from tests.benchmarks.timing import Clock, in_alternation
from typeset.command import VERBS

_BARE, _CHECK, _MAKE = "python -c pass", "typeset check WEEK", "typeset make WEEK"
_OVER_BARE_S, _CHECK_S = 0.060, 0.350
_ROUNDS = 9
_MISUSE = 2
# With its exit code each.
_SAYING: dict[str, tuple[Sequence[str], int]] = {
    "typeset --help": (["--help"], 0),
    "typeset --version": (["--version"], 0),
    **{f"typeset {verb} --help": ([verb, "--help"], 0) for verb in VERBS},
    "typeset frob": (["frob"], _MISUSE),
    "typeset make": (["make"], _MISUSE),
}


def start_up(settings: Settings) -> Section:
    """Help, misuse, a check and a make."""
    with TemporaryDirectory() as told:
        folder = Path(told)

        def works(number: int) -> Mapping[str, Callable[[], object]]:
            return _works(folder, number)

        for work in works(0).values():
            work()
        taken = in_alternation(lambda number: works(number + 1), settings.rounds(_ROUNDS))
    medians = {name: settings.clock.median_s(each) for name, each in taken.items()}
    bare = medians[_BARE]
    rows = [
        [f"`{name}`", seconds(each), seconds(max(0.0, each - bare)), ratio(each, bare)]
        for name, each in medians.items()
    ]
    bounds = [
        Bound(f"`{name}`, over Python", 1000 * _OVER_BARE_S, 1000 * (medians[name] - bare), " ms")
        for name in _SAYING
    ]
    bounds.append(Bound(f"`{_CHECK}`, cold", 1000 * _CHECK_S, 1000 * medians[_CHECK], " ms"))
    heads = ("a fresh process", "median", "over bare Python", "ratio")
    return Section("Starting", table(heads, rows), tuple(bounds))


def _works(folder: Path, number: int) -> Mapping[str, Callable[[], object]]:
    """Every run of one round; whatever it writes goes into the folder."""
    run = partial(_run, folder)
    made = folder / f"made-{number}"
    return {
        _BARE: partial(run, ["-c", "pass"], 0),
        **{
            name: partial(run, ["-m", "typeset", *arguments], code)
            for name, (arguments, code) in _SAYING.items()
        },
        _CHECK: partial(run, ["-m", "typeset", "check", str(WEEK)], 0),
        _MAKE: partial(run, ["-m", "typeset", "make", str(WEEK), "--to", str(made)], 0),
    }


def _run(folder: Path, arguments: Sequence[str], code: int) -> None:
    """A fresh Python; raises RuntimeError where it ends in another way than with the code."""
    environment = {
        **os.environ,
        "PYTHONPYCACHEPREFIX": str(folder / "compiled"),
        # A folder of this name cannot be made, so that a make keeps nothing for the next.
        "XDG_CACHE_HOME": os.devnull,
    }
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    ran = subprocess.run(
        [sys.executable, *arguments],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    if ran.returncode != code:
        raise RuntimeError(f"{' '.join(arguments)}: {ran.stdout}{ran.stderr}")


if __name__ == "__main__":
    section = start_up(Settings(Clock("cpu" in sys.argv[1:]), is_quick=False, is_long=False))
    sys.stdout.write(section.text)
    for bound in section.bounds:
        kept = "kept" if bound.is_met else "not kept"
        line = f"{bound.what}: {bound.measured:.0f}{bound.unit} of {bound.bound:.0f}{bound.unit}"
        sys.stdout.write(f"{line}, {kept}\n")
