"""The known mistakes as a whole: every name once, every one told in a teacher's words."""

from __future__ import annotations

from collections import Counter

from typeset.arithmetic import misconceptions
from typeset.arithmetic.misconceptions import MISCONCEPTIONS


def test_no_name_stands_for_two_mistakes() -> None:
    """Two themes that use one name would hide one of the two descriptions."""
    names = Counter(each.name for theme in misconceptions._THEMES for each in theme)
    assert [name for name, count in names.items() if count > 1] == []


def test_descriptions_and_questions_read_well() -> None:
    """'This pupil ...' goes before the description; the question is asked as it stands."""
    for each in MISCONCEPTIONS.values():
        assert each.shows[0].islower() and each.shows[-1] not in ".?", each.name
        assert each.prompt[0].isupper() and each.prompt[-1] in ".?", each.name
