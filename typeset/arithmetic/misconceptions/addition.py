"""Mistakes with addition, subtraction and comparison."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "smaller digit from larger",
        "takes the smaller digit from the larger in each column, whichever stands on top",
        "Add your answer to the number that was taken off: what do you get?",
    ),
    Misconception(
        "carried ten forgotten",
        "does not carry the ten into the next column",
        "What do the ones make together, and where does their ten go?",
    ),
    Misconception(
        "difference turned round",
        "puts the difference on the wrong one of the two amounts",
        "Which of the two is the larger one?",
    ),
    Misconception(
        "compared with the wrong one",
        "takes a difference from an amount that it does not belong to",
        "With whom does the story compare this one?",
    ),
    Misconception(
        "adding instead of subtracting",
        "adds where something has to be taken away",
        "Should there be more at the end, or less?",
    ),
    Misconception(
        "subtracting instead of adding",
        "takes away where something has to be added",
        "Should there be more at the end, or less?",
    ),
    Misconception(
        "whole difference on one half",
        "halves the total and then puts the whole difference on one half",
        "How far apart are the two amounts now?",
    ),
    Misconception(
        "difference ignored",
        "shares equally although one has more than the other",
        "Are the two bars equally long?",
    ),
    Misconception(
        "one part left out",
        "counts the parts of the longer bar only",
        "How many equal parts do both bars have together?",
    ),
    Misconception(
        "difference taken as the larger",
        "takes the difference for the whole of the longer bar",
        "Which stretch of the longer bar is the difference?",
    ),
)
