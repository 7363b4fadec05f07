"""Faults of a name on one sheet of a named set, planted in the drawing of its page."""

from __future__ import annotations

import re
from collections.abc import Callable

from tests.proofing.making_class import NAMES
from tests.proofing.planting import Lines, runs_of


def name_run(lines: Lines, name: str) -> int:
    return next(run.index for run in runs_of(lines) if run.text == name)


def on_sheet(number: int, change: Callable[[Lines, int], None]) -> Callable[[list[Lines]], None]:
    """The change on the first side of a sheet of one side; it gets the line of the name."""

    def plant(pages: list[Lines]) -> None:
        lines = pages[2 * (number - 1)]
        change(lines, name_run(lines, NAMES[number - 1]))

    return plant


def anothers(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen)", "(Marta)")


def white(lines: Lines, at: int) -> None:
    lines[at : at + 1] = ["1 g", lines[at], "0 g"]


def pale(lines: Lines, at: int) -> None:
    lines[at : at + 1] = [".8 g", lines[at], "0 g"]


def moved(lines: Lines, at: int) -> None:
    lines[at] = re.sub(r"Tm", "Tm 1 0 0 1 300 400 Tm", lines[at], count=1)


def over_the_label(lines: Lines, at: int) -> None:
    lines[at] = re.sub(r"1 0 0 1 \S+", "1 0 0 1 52", lines[at], count=1)


def tiny(lines: Lines, at: int) -> None:
    lines[at] = re.sub(r"(/F\S+) \S+ Tf", r"\1 3 Tf", lines[at])


def twice(lines: Lines, at: int) -> None:
    lines.insert(at, lines[at])


def twice_in_one(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen) Tj", "(Imogen) Tj (Imogen) Tj")


def in_two_pieces(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen) Tj", "(Imo) Tj 30 0 Td (gen) Tj")


def gone(lines: Lines, at: int) -> None:
    del lines[at]


def empty(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen)", "()")


def squeezed(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen) Tj", "-6 Tc (Imogen) Tj 0 Tc")


def invisible(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen) Tj", "3 Tr (Imogen) Tj 0 Tr")


def struck_through(lines: Lines, at: int) -> None:
    match = re.search(r"1 0 0 1 (\S+) (\S+) Tm", lines[at])
    assert match
    x, y = float(match[1]), float(match[2]) + 4
    lines.append(f"n {x} {y} m {x + 40} {y} l S")


def hidden_text(lines: Lines, at: int) -> None:
    lines.append("1 g\n" + lines[at].replace("(Imogen)", "(the answer is 42)"))


def with_a_surname(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("(Imogen)", "(Imogen Tern-Harbour of the Lighthouse Stairs)")


def a_digit(lines: Lines, _at: int) -> None:
    run = next(run for run in runs_of(lines) if "There are 36 more" in run.text)
    lines[run.index] = run.line(text=run.text.replace("36", "63"))


def turned_text(lines: Lines, at: int) -> None:
    lines[at] = lines[at].replace("1 0 0 1", "0.9 0.1 -0.1 0.9", 1)


FAULTS = [
    *(anothers, white, pale, moved, over_the_label, tiny, twice, twice_in_one),
    *(in_two_pieces, gone, empty, squeezed, invisible, struck_through, hidden_text),
    *(with_a_surname, a_digit, turned_text),
]
