"""What the terminal shows while documents are made: a bar, then a line a document."""

from __future__ import annotations

import sys
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from rich.progress import Progress as Bar

    from typeset.press.building import Result


def document_line(file: Path, result: Result) -> str:
    """'printed/…/monday-task-sheet.pdf  2 sides  12.5 pt  0.8 s'."""
    sides = result.made.sides
    took = "as before" if result.is_as_before else f"{result.seconds:.1f} s"
    return (
        f"{file}  {sides} {'side' if sides == 1 else 'sides'}  {result.type_size_pt:g} pt  {took}"
    )


class Progress:
    """A bar on the error stream, only where that is a terminal.

    A bar that `ticks` is kept moving by a thread, beside which no process may be forked.
    """

    def __init__(self, ticks: bool = True) -> None:
        self._bar = _bar(ticks) if sys.stderr.isatty() else None
        self._begun = 0

    def __enter__(self) -> Progress:
        if self._bar is not None:
            self._bar.start()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._bar is not None:
            self._bar.stop()

    def begin(self, file: str, count: int) -> None:
        """A file of `count` is begun."""
        if self._bar is not None:
            (task,) = self._bar.task_ids
            self._bar.update(
                task, description=file, total=count, completed=self._begun, refresh=True
            )
        self._begun += 1


def _bar(ticks: bool) -> Bar:
    """The bar with its one task. Only here is rich loaded, since most have no use for it."""
    from rich import progress
    from rich.console import Console

    columns = (
        progress.TextColumn("{task.description}"),
        progress.BarColumn(),
        progress.TimeElapsedColumn(),
    )
    console = Console(file=sys.stderr)
    bar = progress.Progress(*columns, console=console, transient=True, auto_refresh=ticks)
    bar.add_task("reading and solving", total=None)
    return bar
