"""A finished PDF and the solved lessons in, a list of findings out: empty when all is right."""

from typeset.proofing.finding import Finding
from typeset.proofing.proof import (
    proof_booklet,
    proof_folded_booklet,
    proof_sheet,
    proof_strips,
)

__all__ = [
    "Finding",
    "proof_booklet",
    "proof_folded_booklet",
    "proof_sheet",
    "proof_strips",
]
