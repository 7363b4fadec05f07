"""Mistakes in counting choices, orders and pairs."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "adding the choices instead of multiplying",
        "adds the numbers of choices instead of pairing each with each",
        "How many pairs begin with the first choice?",
    ),
    Misconception(
        "counting each choice once",
        "pairs the choices off one to one and stops when one kind runs out",
        "May a choice be used again with a different partner?",
    ),
    Misconception(
        "rows of the list cut short",
        "lets every new row of the list lose a partner, as if partners were used up",
        "Which partners can the second one have?",
    ),
    Misconception(
        "used more than once",
        "lets the same one stand in several places at once",
        "When one stands in the first place, which are left for the second?",
    ),
    Misconception(
        "each pair counted twice",
        "counts every pair from both sides",
        "Is this one with that one another pair than that one with this one?",
    ),
    Misconception(
        "paired with itself",
        "counts everybody among their own partners",
        "With how many others does the first one pair?",
    ),
)
