"""A register of faults: each plants one at a random place, and says what must be told."""

from __future__ import annotations

import random
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from tests.proofing.planting import Lines, Run, pick, runs_of

Planter = Callable[[list[Lines], random.Random], None]
TUESDAY, WEDNESDAY, BOOKLET = "tuesday", "wednesday", "booklet"


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault for one of the documents; one finding must be of one of the `kinds`."""

    name: str
    document: str
    kinds: frozenset[str]
    plant: Planter


FAULTS: list[Fault] = []


def fault(document: str, *kinds: str) -> Callable[[Planter], Planter]:
    """Registers a planter under its own name."""

    def register(planter: Planter) -> Planter:
        name = planter.__name__.replace("_", " ")
        FAULTS.append(Fault(f"{document}: {name}", document, frozenset(kinds), planter))
        return planter

    return register


def text_run(pages: list[Lines], rng: random.Random, wanted: str, least: float = 0) -> Any:
    """A page and one of its runs whose text matches; feet are left out."""
    found = [
        (page, run)
        for page in pages
        for run in runs_of(page)
        if re.search(wanted, run.text) and run.y > 60 and run.size >= least
    ]
    return pick(rng, found)


def retype(page: Lines, run: Run, text: str) -> None:
    assert text != run.text
    page[run.index] = run.line(text=text)
