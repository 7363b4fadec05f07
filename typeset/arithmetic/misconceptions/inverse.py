"""Mistakes in undoing operations and in reading number sentences."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "operations done forwards on the result",
        "does to the result what the story did to the start",
        "Is this number the first of the story or the last?",
    ),
    Misconception(
        "undone in the wrong order",
        "undoes the first operation first instead of the last",
        "What was done last, and so has to be undone first?",
    ),
    Misconception(
        "operation repeated instead of inverted",
        "undoes one of the operations by doing it again",
        "What brings you back after adding? And after multiplying?",
    ),
    Misconception(
        "operations undone instead of done",
        "works backwards although the start is known",
        "Which number of the story do you know, the first or the last?",
    ),
    Misconception(
        "operations in another order",
        "does the operations in an order of their own",
        "What does the story do first, and what to the number that comes of it?",
    ),
    Misconception(
        "other operations ignored",
        "compares the first number with the last as if nothing else had happened",
        "What was the number just before the missing one came in?",
    ),
    Misconception(
        "equals taken as do it now",
        "reads the equals sign as 'and the answer comes next'",
        "What does each side come to when your number stands in the box?",
    ),
    Misconception(
        "all numbers added",
        "adds up every number in sight, on both sides of the equals sign",
        "Which numbers stand on the left of the equals sign, and which on the right?",
    ),
    Misconception(
        "subtraction or division turned round",
        "takes the box for the first number of the subtraction or division",
        "What is being taken away, or divided by, in this sentence?",
    ),
)
