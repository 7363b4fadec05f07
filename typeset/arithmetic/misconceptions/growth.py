"""Mistakes with what grows by the same factor again and again."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "same amount added each time",
        "adds the first number again each time instead of multiplying",
        "How much is added from the first to the second, and how much after that?",
    ),
    Misconception(
        "factor multiplied instead of repeated",
        "multiplies by the number of steps times the factor, not by the factor at every step",
        "What do you get when you do it step by step and write down every number?",
    ),
    Misconception(
        "one step too many",
        "counts the first number as if it had been multiplied already",
        "How many arrows lead from the first number to the last?",
    ),
    Misconception(
        "one step too few",
        "stops one step before the end",
        "How many arrows lead from the first number to the last?",
    ),
    Misconception(
        "last value given for the total",
        "gives what there is at the end where all together is asked for",
        "What came before the last one, and does it count?",
    ),
    Misconception(
        "first value left out of the total",
        "adds up everything but the first number",
        "Which of the numbers have you added up?",
    ),
)
