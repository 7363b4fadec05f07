"""Work shared among processes comes out as if one had done it."""

from __future__ import annotations

import subprocess
import sys
import threading
from pathlib import Path

import pytest

from typeset.press.workers import can_fork, crew

ROOT = Path(__file__).parents[2]
# As in `can_fork`; elsewhere all work is done in one process.
needs_fork = pytest.mark.skipif(
    sys.platform in ("win32", "darwin"), reason="nothing is forked on this system"
)


def _squares(numbers: list[int], workers: int) -> list[tuple[int, int]]:
    def square(number: int) -> int:
        return number * number

    with crew(square, workers) as hands:
        for number in numbers:
            hands.add(number)
        return sorted(hands.done())


def test_done_here() -> None:
    assert _squares([3, 1, 2], 1) == [(1, 1), (2, 4), (3, 9)]


def test_more_may_be_added_while_work_is_done() -> None:
    def halve(number: int) -> int:
        return number // 2

    with crew(halve, 1) as hands:
        hands.add(9)
        seen = []
        for _number, half in hands.done():
            seen.append(half)
            if half:
                hands.add(half)
    assert seen == [4, 2, 1, 0]


def test_nothing_is_forked_beside_a_thread() -> None:
    """A lock that the thread holds would be held in the child for ever."""
    stop = threading.Event()
    thread = threading.Thread(target=stop.wait)
    thread.start()
    try:
        assert not can_fork()
        assert _squares([2], 2) == [(2, 4)]
    finally:
        stop.set()
        thread.join()


def _in_a_process_of_its_own(script: str) -> str:
    """What the script says; the test run's own threads would keep it from forking."""
    command = [sys.executable, "-c", script]
    run = subprocess.run(command, capture_output=True, text=True, cwd=ROOT, timeout=60, check=False)
    assert not run.stderr, run.stderr
    return run.stdout.strip()


SHARED = """
import os
from typeset.press.workers import crew
table = {number: number * number for number in range(20)}
def look_up(number):
    return table[number], os.getpid()
with crew(look_up, 2) as hands:
    for number in range(20):
        hands.add(number)
    done = dict(hands.done())
print([done[number][0] for number in range(20)] == [n * n for n in range(20)])
print(os.getpid() not in {pid for _, pid in done.values()})
"""


@needs_fork
def test_shared_among_processes_that_know_all_that_this_one_knows() -> None:
    assert _in_a_process_of_its_own(SHARED).split() == ["True", "True"]


RAISING = """
import time
from pathlib import Path
from typeset.errors import Complaint, ContentError, Place
from typeset.press.workers import crew
def work(number):
    # The one that was added first is the last to fail.
    time.sleep(0.2 if number == 0 else 0.0)
    raise ContentError([Complaint(Place(Path('monday.yaml'), number + 1, 1), 'wrong', 'right')])
try:
    with crew(work, 2) as hands:
        for number in range(2):
            hands.add(number)
        list(hands.done())
except ContentError as error:
    print(error, len(error.complaints), sep='|')
"""


def test_the_error_told_is_that_of_the_piece_added_first() -> None:
    told = _in_a_process_of_its_own(RAISING)
    assert told == "monday.yaml:1:1: wrong; right|1"


ENDED = """
import os, signal
from typeset.errors import OutputError
from typeset.press.workers import crew
def work(number):
    os.kill(os.getpid(), signal.SIGKILL)
try:
    with crew(work, 2) as hands:
        hands.add(1)
        list(hands.done())
except OutputError as error:
    print(error)
"""


@needs_fork
def test_a_process_ended_from_outside_is_a_message() -> None:
    assert "try again with '--workers 1'" in _in_a_process_of_its_own(ENDED)
