"""Fresh processes of this Python, and what they and those that they start take.

Memory, and the time of processes that still run, are read from /proc, which Linux has.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import threading
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

ROOT = Path(__file__).parents[2]
WEEK = ROOT / "content" / "harbour-festival"
_PROC = Path("/proc")
_TICKS_A_SECOND = os.sysconf("SC_CLK_TCK")
_LOOK_EVERY_S = 0.05
_PEAK = re.compile(r"^VmHWM:\s+(\d+) kB$", re.MULTILINE)
_NOW = re.compile(r"^VmRSS:\s+(\d+) kB$", re.MULTILINE)


def run_python(arguments: Sequence[str], kept: Path | None = None) -> str:
    """Runs this Python with the arguments from the repository's folder; gives what it printed.

    What a make keeps for the next one lies in the folder `kept`; without one it cannot keep
    anything. Raises RuntimeError with what it complained of where it fails.
    """
    return _run(arguments, kept)[0]


def watch_python(arguments: Sequence[str]) -> tuple[str, dict[int, float]]:
    """The same, and the peak memory in MiB of every process that it was made of.

    A process is looked at every 50 ms, and what it then knows of itself is its highest so far:
    only what it takes in the last of these is missed.
    """
    return _run(arguments, None, look=True)


def _run(
    arguments: Sequence[str], kept: Path | None, look: bool = False
) -> tuple[str, dict[int, float]]:
    # A folder of this name cannot be made, since the way to it leads through a file.
    cache = str(kept or os.devnull)
    running = subprocess.Popen(
        [sys.executable, *arguments],
        cwd=ROOT,
        env={**os.environ, "XDG_CACHE_HOME": cache},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    watch = _Watch(running.pid)
    if look:
        watch.start()
    said, complained = running.communicate()
    if look:
        watch.end()
    if running.returncode != 0:
        raise RuntimeError(f"{' '.join(map(str, arguments))}: {said}{complained}")
    return said, watch.peaks_mib


@dataclass
class _Watch:
    """Looks at a process and its descendants until it is told to end."""

    pid: int
    peaks_mib: dict[int, float] = field(default_factory=dict)
    _over: threading.Event = field(default_factory=threading.Event)
    _thread: threading.Thread | None = None

    def start(self) -> None:
        self._thread = threading.Thread(target=self._look, daemon=True)
        self._thread.start()

    def end(self) -> None:
        self._over.set()
        if self._thread is not None:
            self._thread.join()

    def _look(self) -> None:
        while not self._over.wait(_LOOK_EVERY_S):
            for pid in (self.pid, *descendants(self.pid)):
                peak = _memory_mib(pid, _PEAK)
                self.peaks_mib[pid] = max(peak, self.peaks_mib.get(pid, 0.0))


def memory_now_mib() -> float:
    """The memory of this process."""
    return _memory_mib(os.getpid(), _NOW)


def descendants(pid: int) -> Iterator[int]:
    """The processes that it started and that still run, and theirs."""
    for tasks in (_PROC / str(pid) / "task").glob("*/children"):
        try:
            children = [int(each) for each in tasks.read_text().split()]
        except OSError:  # it has ended meanwhile
            continue
        for child in children:
            yield child
            yield from descendants(child)


def cpu_of_running_s() -> float:
    """Seconds of the cores by the processes that this one started and that still run."""
    return sum(_cpu_s(pid) for pid in descendants(os.getpid()))


def _cpu_s(pid: int) -> float:
    try:
        told = (_PROC / str(pid) / "stat").read_text()
    except OSError:
        return 0.0
    # The name in brackets may hold spaces; user and system time, with that of its own children.
    return sum(map(int, told.rpartition(")")[2].split()[11:15])) / _TICKS_A_SECOND


def _memory_mib(pid: int, what: re.Pattern[str]) -> float:
    try:
        found = what.search((_PROC / str(pid) / "status").read_text())
    except OSError:
        return 0.0
    return int(found[1]) / 1024 if found else 0.0
