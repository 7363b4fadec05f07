"""Plants many faults, and writes how many of each kind were found.

`FAULTS=2000 python -m tests.proofing.fault_table` plants so many, spread evenly over kinds and
documents, in two processes. With `--write` the table is put between its marks in DEVELOPERS.md.
Ends with an error where a fault was not found.
"""

from __future__ import annotations

import os
import sys
from collections import defaultdict
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import TextIO

from tests.proofing.faults import Kind, kind_named, kinds

DEVELOPERS = Path(__file__).parents[2] / "DEVELOPERS.md"
BEGIN, END = "<!-- faults: begin -->", "<!-- faults: end -->"
WORKERS = 2
# Names of kinds that share a row.
_A_ROW = 6


@dataclass(frozen=True, slots=True)
class Planted:
    """A fault that was planted, and whether it was found."""

    kind: str
    document: str
    seed: int
    found: bool


def plan(count: int) -> Iterator[tuple[str, str, int]]:
    """So many faults as kind, document, seed: each kind in turn, in its documents in turn."""

    def endless() -> Iterator[tuple[str, str, int]]:
        seed = 0
        while True:
            for kind in kinds():
                yield kind.name, kind.document(seed), seed
            seed += 1

    return islice(endless(), count)


def plant(fault: tuple[str, str, int]) -> Planted:
    """Plants one fault and proofs the document."""
    name, document, seed = fault
    kind = kind_named(name)
    return Planted(name, document, seed, kind.is_found(kind.findings(document, seed)))


def _say(text: str, file: TextIO = sys.stdout) -> None:
    file.write(f"{text}\n")
    file.flush()


def run(count: int) -> list[Planted]:
    """Plants so many faults, and says how far it is and what was not found."""
    done: list[Planted] = []
    with ProcessPoolExecutor(WORKERS) as workers:
        for each in workers.map(plant, plan(count), chunksize=20):
            done.append(each)
            if not each.found:
                _say(f"not found: {each.kind} in {each.document}, place {each.seed}")
            if len(done) % 100 == 0:
                _say(f"{len(done)} of {count} planted", sys.stderr)
    return done


def table(planted: Sequence[Planted]) -> str:
    """What was planted and found: theme, kinds with their numbers, documents."""
    found = sum(each.found for each in planted)
    documents = {each.document for each in planted}
    names = {each.kind for each in planted}
    lines = [
        f"{len(planted):,} faults of {len(names)} kinds were planted in {len(documents)} kinds of "
        f"document at random places, and {found:,} of them were found "
        "(`FAULTS=2000 python -m tests.proofing.fault_table --write`).",
        "Behind each kind stands how many were planted; where not all were found, how many were.",
        "",
        "| Theme | Kinds | Documents | Planted | Found |",
        "|---|---|---|---:|---:|",
    ]
    for theme, own in _by_theme().items():
        for start in range(0, len(own), _A_ROW):
            lines.append(_row(theme, own[start : start + _A_ROW], planted))
    return "\n".join(lines)


def _by_theme() -> dict[str, list[Kind]]:
    themes: dict[str, list[Kind]] = defaultdict(list)
    for kind in kinds():
        themes[kind.theme].append(kind)
    return dict(themes)


def _row(theme: str, own: Sequence[Kind], planted: Sequence[Planted]) -> str:
    told, documents, every = [], set(), []
    for kind in own:
        of_kind = [each for each in planted if each.kind == kind.name]
        found = sum(each.found for each in of_kind)
        count = f"{len(of_kind)}" if found == len(of_kind) else f"{found} of {len(of_kind)}"
        told.append(f"{kind.name} {count}")
        documents |= {each.document for each in of_kind}
        every += of_kind
    found = sum(each.found for each in every)
    where = next(iter(documents)) if len(documents) == 1 else f"{len(documents)} kinds"
    return f"| {theme} | {'; '.join(told)} | {where} | {len(every)} | {found} |"


def write(text: str) -> None:
    """Puts the table between its marks."""
    before, _, rest = DEVELOPERS.read_text(encoding="utf-8").partition(BEGIN)
    _, _, after = rest.partition(END)
    assert rest and after, f"DEVELOPERS.md has no {BEGIN} … {END}"
    DEVELOPERS.write_text(f"{before}{BEGIN}\n{text}\n{END}{after}", encoding="utf-8")


def main() -> int:
    """Plants, prints, writes; 1 where a fault was not found."""
    planted = run(int(os.environ.get("FAULTS", "2000")))
    text = table(planted)
    _say(text)
    if "--write" in sys.argv[1:]:
        write(text)
    return int(not all(each.found for each in planted))


if __name__ == "__main__":
    sys.exit(main())
