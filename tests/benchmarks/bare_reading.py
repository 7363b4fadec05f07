"""Bare extraction with pdfplumber: the least that a proof has to read, by two processes.

    python -m tests.benchmarks.bare_reading FOLDER

reads all PDFs of the folder, and is what a cold run is measured by.
"""

from __future__ import annotations

import multiprocessing
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from multiprocessing.connection import Connection
from pathlib import Path

import pdfplumber

WORKERS = 2


def read_pages(files: Sequence[str], part: int, parts: int = WORKERS) -> int:
    """Words, letters and rectangles of every so manieth page; gives how many were found.

    What pdfplumber keeps of a page is let go, as its own advice is for many pages.
    """
    found = 0
    for file in files:
        with pdfplumber.open(file) as pdf:
            for page in pdf.pages[part::parts]:
                found += len(page.extract_words()) + len(page.chars) + len(page.rects)
                page.close()
    return found


class Readers:
    """Two processes that have begun, at the other ends of two pipes. There are no threads, as a
    pool would have: our own make only forks where there are none."""

    def __init__(self, pipes: Sequence[Connection]) -> None:
        self._pipes = pipes

    def read(self, folder: Path) -> int:
        """All PDFs of the folder, their pages in halves; gives how much was found."""
        files = sorted(str(file) for file in folder.glob("*.pdf"))
        for pipe in self._pipes:
            pipe.send(files)
        return sum(pipe.recv() for pipe in self._pipes)


@contextmanager
def two_readers() -> Iterator[Readers]:
    """The two, until the end of the block."""
    context = multiprocessing.get_context("fork")
    pipes, readers = [], []
    for part in range(WORKERS):
        ours, theirs = context.Pipe()
        reader = context.Process(target=_serve, args=(theirs, part), daemon=True)
        reader.start()
        pipes.append(ours)
        readers.append(reader)
    try:
        yield Readers(pipes)
    finally:
        for pipe in pipes:
            pipe.send(None)
        for reader in readers:
            reader.join()


def _serve(pipe: Connection, part: int) -> None:
    while (files := pipe.recv()) is not None:
        pipe.send(read_pages(files, part))


if __name__ == "__main__":
    with two_readers() as both:
        sys.stdout.write(f"{both.read(Path(sys.argv[1]))}\n")
