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
    Misconception(
        "wrong total of the angles",
        "uses the total of another figure, such as 360° for a straight line",
        "How much is a full turn, and how much of it is this?",
    ),
    Misconception(
        "one angle left out",
        "takes off one of the known angles and forgets another",
        "Touch each angle as you use it: is there one that you have not touched?",
    ),
    Misconception(
        "angles subtracted from one another",
        "takes one known angle from the other instead of both from the total",
        "Put all the angles together with yours: what do they make?",
    ),
    Misconception(
        "opposite and next angle exchanged",
        "mixes up the angle opposite with the one beside it",
        "Which of the two lies on one straight line with the angle that you know?",
    ),
    Misconception(
        "bounding rectangle taken for the shape",
        "works out the whole rectangle around the shape, with the corner that is missing",
        "Shade the shape: is everything inside your rectangle shaded?",
    ),
    Misconception(
        "overlapping part counted twice",
        "cuts the shape into two rectangles that lie over one another in a corner",
        "Draw both of your rectangles: is there a place that lies in both?",
    ),
    Misconception(
        "missing side not found",
        "reckons with the sides that have a number on them and leaves out the others",
        "Trace the way round with a finger: which sides have no number yet?",
    ),
    Misconception(
        "inner side counted",
        "adds the perimeters of the two pieces, with the line where they touch",
        "Could an ant that walks round the outside walk along that line?",
    ),
    Misconception(
        "level and upright sides mixed up",
        "uses sides that run the other way to find a missing one",
        "Which sides run the same way as the one without a number?",
    ),
    Misconception(
        "remainder taken as the smaller unit",
        "writes the rest of the large unit as so many of the small one",
        "How many of the small unit is one of the large unit that is left?",
    ),
    Misconception(
        "conversion turned round",
        "multiplies to change the unit where it has to divide, or the other way round",
        "Will there be more of this unit, or fewer?",
    ),
    Misconception(
        "units put side by side",
        "writes the numbers of two units next to each other as one number",
        "How many of the small unit is the large part alone?",
    ),
)
