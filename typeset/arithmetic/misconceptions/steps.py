"""Mistakes in chains of steps, and with a fixed charge and a rate."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "step left out",
        "stops one step before the question is answered",
        "Read the question again: what does your number stand for?",
    ),
    Misconception(
        "operations in reading order",
        "works from left to right although a later step has to come first",
        "Which amount must you know before you can do that step?",
    ),
    Misconception(
        "quantity left out",
        "forgets one of the amounts that the question needs",
        "Which number of the story have you not used yet, and does it matter?",
    ),
    Misconception(
        "rounded down always",
        "cuts a number off where it has to be rounded to the nearest",
        "Which of the two is nearer: the one below or the one above?",
    ),
    Misconception(
        "rounded too early",
        "rounds on the way and goes on with the rounded number",
        "What happens to the small bit that you rounded away when you multiply?",
    ),
    Misconception(
        "fixed charge forgotten",
        "reckons with the rate alone and forgets the part that counts once",
        "What would there be already before the first one?",
    ),
    Misconception(
        "fixed charge counted each time",
        "adds the fixed part to every single one",
        "How often does the fixed part come into the story?",
    ),
    Misconception(
        "fixed charge and rate exchanged",
        "multiplies what counts once and adds what counts for each",
        "Which of the two grows when there are more?",
    ),
    Misconception(
        "rate counted once",
        "takes the rate off once although it counts for each",
        "How many of them are in the total?",
    ),
)
