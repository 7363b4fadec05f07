"""Problems that were just drawn, with what the search knows of them: each has been solved whole
to see that it fits, and need not be solved once more for the page.
"""

from __future__ import annotations

from typeset.arithmetic.variation.trial import Trial
from typeset.reading.content import ProblemContent

# More problems than are drawn before somebody solves them: those of a week.
_MOST_KEPT = 160

_kept: dict[int, Trial] = {}


def kept_for_solving(trial: Trial) -> ProblemContent:
    """The problem of the trial, which is kept until it is asked for."""
    if len(_kept) >= _MOST_KEPT:
        _kept.pop(next(iter(_kept)), None)
    # The trial holds the problem, so no other object can come to have its identity.
    _kept[id(trial.content)] = trial
    return trial.content


def trial_of(content: ProblemContent) -> Trial | None:
    """The trial that found this very object; None where there is none, or it was asked for."""
    return _kept.pop(id(content), None)
