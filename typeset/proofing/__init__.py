"""A finished PDF and the solved lessons in, a list of findings out: empty when all is right."""

from typeset.proofing.documents import (
    proof_booklet,
    proof_cards,
    proof_folded_booklet,
    proof_key,
    proof_lesson_booklet,
    proof_own_problems,
    proof_sheet,
    proof_strips,
)
from typeset.proofing.finding import Finding
from typeset.proofing.home_pack import proof_home_answers, proof_home_pack

__all__ = [
    "Finding",
    "proof_booklet",
    "proof_cards",
    "proof_folded_booklet",
    "proof_home_answers",
    "proof_home_pack",
    "proof_key",
    "proof_lesson_booklet",
    "proof_own_problems",
    "proof_sheet",
    "proof_strips",
]
