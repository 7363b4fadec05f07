"""The families of problems by the name that a teacher types after `structure:`.

To add one: write its file here, and one line in `_FAMILIES`.
"""

from __future__ import annotations

from typeset.arithmetic.families.equal_groups import EqualGroups
from typeset.arithmetic.families.ratio import Ratio
from typeset.arithmetic.family import AnyFamily

_FAMILIES: tuple[AnyFamily, ...] = (
    Ratio(),
    EqualGroups(),
)

FAMILIES: dict[str, AnyFamily] = {family.name: family for family in _FAMILIES}
