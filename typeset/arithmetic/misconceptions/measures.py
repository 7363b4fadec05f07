"""Mistakes with units and with rectangles."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "unit not converted",
        "reckons with the written numbers although their units differ",
        "Are both amounts in the same unit?",
    ),
    Misconception(
        "unit converted by the wrong number",
        "changes the unit with the wrong number, such as 100 grams for a kilogram",
        "How many of the small unit make one of the large unit?",
    ),
    Misconception(
        "area and perimeter exchanged",
        "works out the way round where the space inside is asked for, or the other way about",
        "Would you need string or tiles to show what is asked for?",
    ),
    Misconception(
        "only two sides counted",
        "counts one length and one width although a rectangle has two of each",
        "Trace the way round with a finger: how many sides do you pass?",
    ),
)
