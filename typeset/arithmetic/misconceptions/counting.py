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
    Misconception(
        "as many steps as terms",
        "takes as many steps as there are terms, although the first term needs none",
        "How many steps are there from the first to the second?",
    ),
    Misconception(
        "steps counted instead of terms",
        "gives the number of steps as the place, without counting the first term",
        "After one step, at which place are you?",
    ),
    Misconception(
        "starting number forgotten",
        "takes the place times the step, as if the sequence began at the step itself",
        "Does your rule give the first term?",
    ),
    Misconception(
        "same step kept",
        "goes on with the last step although the steps change",
        "Are the steps that you can see all the same?",
    ),
    Misconception(
        "step given as the term",
        "answers with the step that leads to the term, not with the term",
        "Is your number larger than the term before it?",
    ),
    Misconception(
        "factor counted instead of repeated",
        "multiplies by the number of steps, as if doubling three times made six times as much",
        "Double, and double again: how many times as much is that?",
    ),
    Misconception(
        "nought forgotten",
        "does not think of a part that is empty",
        "Could all of them be in the one, and none in the other?",
    ),
    Misconception(
        "turned pairs counted once",
        "takes 1 and 4 for the same way as 4 and 1, although it matters which is which",
        "Would you see a difference if the two parts were exchanged?",
    ),
    Misconception(
        "turned pairs counted twice",
        "counts 1 and 4 beside 4 and 1, although nobody can tell the two parts apart",
        "Is there any difference between these two ways?",
    ),
)
