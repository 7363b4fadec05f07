"""Faults planted in what good pages show: every one is found, and told as what it is."""

from __future__ import annotations

import os
import random

import pytest

from tests.proofing import faults_in_words, faults_on_pages
from tests.proofing.faults import FAULTS, Fault
from tests.proofing.making import BOOKLET, made_short_week, made_week
from tests.proofing.planting import redraw

# Each kind once at a random place; PROOF_SEEDS=20 in the environment asks for 20 places.
SEEDS = range(1, 1 + int(os.environ.get("PROOF_SEEDS", "1")))
# Importing the two modules fills the register.
MODULES = (faults_in_words, faults_on_pages)


@pytest.mark.parametrize("seed", SEEDS)
@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.name)
def test_the_fault_is_found(fault: Fault, seed: int) -> None:
    made = made_short_week() if fault.document == BOOKLET else made_week()
    rng = random.Random(f"{fault.name}/{seed}")
    spoilt = redraw(made.pdfs[fault.document], lambda pages: fault.plant(pages, rng))
    findings = made.proof(fault.document, spoilt)
    told = "\n".join(map(str, findings))
    assert findings, "nothing was found"
    assert fault.kinds & {finding.kind for finding in findings}, told
    assert "file" not in {finding.kind for finding in findings}, told


def test_redrawing_alone_is_no_fault() -> None:
    made = made_week()
    for name, pdf in made.pdfs.items():
        assert made.proof(name, redraw(pdf, lambda pages: None)) == []
