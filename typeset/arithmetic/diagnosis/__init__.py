"""A pupil's answer read as leniently as a marker would, and traced to the mistake behind it."""

from __future__ import annotations

from typeset.arithmetic.diagnosis.diagnosing import Diagnosis, Explanation, diagnose
from typeset.arithmetic.diagnosis.verdicts import Verdict

__all__ = ["Diagnosis", "Explanation", "Verdict", "diagnose"]
