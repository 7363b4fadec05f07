"""Mistakes with fractions and percentages of a quantity."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "fraction of the wrong whole",
        "takes the fraction of the amount that is left or of the part, not of the whole",
        "What was there before: is that the number you took the fraction of?",
    ),
    Misconception(
        "numerator and denominator exchanged",
        "shares by the upper number of the fraction and takes as many as the lower one says",
        "Which number of the fraction says how many equal parts there are?",
    ),
    Misconception(
        "percentage taken as the amount",
        "reads the percentage as an amount of the same number",
        "Would it be as much for a whole that is twice as large?",
    ),
    Misconception(
        "part and rest exchanged",
        "answers with what is left, or with what is taken, where the other is asked for",
        "Which stretch of the bar does the question ask about?",
    ),
    Misconception(
        "part compared with the rest",
        "compares the part with what is left instead of with the whole",
        "How much is the whole?",
    ),
)
