"""A finished PDF and the solved lessons in, a list of findings out: empty when all is right.

What reads a PDF is loaded when a proof is first asked for, so that a build in which there is
nothing to proof can speak of findings without it.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
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

# In which module of this folder each is, where that is not the one of most documents.
_PLACES = {
    "Finding": "finding",
    "proof_home_answers": "home_pack",
    "proof_home_pack": "home_pack",
}


def __getattr__(name: str) -> Any:
    """Of a name in `__all__`: loads it (PEP 562)."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(f"{__name__}.{_PLACES.get(name, 'documents')}"), name)
    globals()[name] = found
    return found
