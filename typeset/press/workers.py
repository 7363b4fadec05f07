"""Work shared among processes, one a core; or done here, one piece after another.

Processes are forked once everything is solved and planned, so that each of them knows all that
this one knows, and only small orders and results go between them. Where a process cannot be
forked, or not safely (on Windows; while threads are running), all is done in this one.
"""

from __future__ import annotations

import gc
import os
import signal
import sys
import threading
from collections import deque
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any, Generic, Protocol, TypeVar

from typeset.errors import OutputError

P = TypeVar("P")
R = TypeVar("R")
R_co = TypeVar("R_co", covariant=True)

# What a forked process does with a piece; set just before it is forked.
_work: Callable[[Any], Any] | None = None


class Crew(Protocol[P, R_co]):
    """Whoever does the work."""

    def add(self, piece: P) -> None:
        """A piece of work, to be done after those that were added before."""

    def done(self) -> Iterator[tuple[P, R_co]]:
        """Pieces with their results as they are ready, until none is left; more may be added
        meanwhile. Raises what a piece raised; the piece added first, where several did."""


@contextmanager
def crew(work: Callable[[P], R], count: int) -> Iterator[Crew[P, R]]:
    """So many workers, as far as there can be several. `work` does one piece."""
    if count < 2 or not can_fork():
        yield _Alone(work)
        return
    # Only where it is used: it costs as much time as a page.
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import active_children, get_context

    global _work
    before, _work = _work, work
    # What is there already is not looked over, and so not copied, by the children's collector.
    gc.freeze()
    context = get_context("fork")
    pool = ProcessPoolExecutor(count, mp_context=context, initializer=_begin)
    try:
        yield _Pool(pool)
    except BaseException:
        pool.shutdown(wait=False, cancel_futures=True)
        for child in active_children():
            child.terminate()
        raise
    finally:
        pool.shutdown()
        gc.unfreeze()
        _work = before


def can_fork() -> bool:
    """True where this process can be forked safely: another thread might hold a lock that
    nobody would ever let go of in the child."""
    return hasattr(os, "fork") and sys.platform != "darwin" and threading.active_count() == 1


def cores() -> int:
    """How many cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


class _Alone(Generic[P, R]):
    """Everything is done in this process, in the order in which it is added."""

    def __init__(self, work: Callable[[P], R]) -> None:
        self._work = work
        self._waiting: deque[P] = deque()

    def add(self, piece: P) -> None:
        self._waiting.append(piece)

    def done(self) -> Iterator[tuple[P, R]]:
        while self._waiting:
            piece = self._waiting.popleft()
            yield piece, self._work(piece)


class _Pool(Generic[P, R]):
    """Forked processes, each of which takes the next piece when it is free."""

    def __init__(self, pool: Any) -> None:
        self._pool = pool
        # By the future that stands for the result: which piece it is, and its turn.
        self._begun: dict[Any, tuple[int, P]] = {}
        self._turn = 0

    def add(self, piece: P) -> None:
        self._turn += 1
        self._begun[self._pool.submit(_do, piece)] = (self._turn, piece)

    def done(self) -> Iterator[tuple[P, R]]:
        from concurrent.futures import FIRST_COMPLETED, wait

        while self._begun:
            ready = wait(self._begun, return_when=FIRST_COMPLETED).done
            failed = [future for future in ready if future.exception() is not None]
            if failed:
                raise self._first_of(failed)
            for future in sorted(ready, key=lambda each: self._begun[each][0]):
                _turn, piece = self._begun.pop(future)
                yield piece, future.result()

    def _first_of(self, failed: list[Any]) -> BaseException:
        """What was raised by the piece added first; those that are begun are waited for."""
        from concurrent.futures import wait
        from concurrent.futures.process import BrokenProcessPool

        for future in self._begun:
            future.cancel()
        running = [future for future in self._begun if not future.cancelled()]
        wait(running)
        failed = [future for future in running if future.exception() is not None]
        first = min(failed, key=lambda each: self._begun[each][0])
        error: BaseException = first.exception()
        if isinstance(error, BrokenProcessPool):
            return OutputError(
                "a process that made pages was ended from outside, perhaps for want of memory; "
                "try again with '--workers 1'"
            )
        return error


def _begin() -> None:
    """Of a process just forked: only its parent decides about Ctrl-C, and may end it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)


def _do(piece: Any) -> Any:
    assert _work is not None, "the work is set before a process is forked"
    return _work(piece)
