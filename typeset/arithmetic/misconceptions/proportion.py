"""Mistakes with ratios, proportion and amounts that go together."""

from __future__ import annotations

from typeset.arithmetic.misconceptions.misconception import Misconception

MISTAKES = (
    Misconception(
        "additive strategy",
        "adds the same amount to both instead of scaling both by the same number",
        "If one amount doubles, what happens to the other?",
    ),
    Misconception(
        "over-use of proportionality",
        "scales by a number although the two amounts do not grow in step",
        "If one amount were twice as large, would the other really be twice as large too?",
    ),
    Misconception(
        "over-use of inverse proportion",
        "lets the answer shrink as the other amount grows although it does not depend on it",
        "Would more of the first really mean less of the second?",
    ),
    Misconception(
        "difference taken as one part",
        "shares out the difference as if it were a single part",
        "How many more parts does the longer bar have?",
    ),
    Misconception(
        "difference taken as the whole",
        "shares the difference between all the parts as if it were the total",
        "Which stretch of the bars is the difference?",
    ),
    Misconception(
        "whole taken as one part",
        "takes the total to be the size of one part or of one side of the ratio",
        "Which parts of the bars make up the total?",
    ),
    Misconception(
        "part taken as the whole",
        "shares one side of the ratio between all the parts",
        "Which of the two amounts do we know: one side or both together?",
    ),
    Misconception(
        "ratio turned round",
        "gives the parts to the wrong sides",
        "Which are there more of?",
    ),
    Misconception(
        "incorrect build-up",
        "scales as far as a whole number goes and then adds the rest to both",
        "What goes with the part that is left over?",
    ),
    Misconception(
        "magical doubling",
        "doubles or halves although the amount is not twice or half as large",
        "Is the new amount really double, or half, of the old one?",
    ),
    Misconception(
        "constant sum",
        "takes from the one what the other gains, as if the total had to stay the same",
        "Does anything in the story keep the total the same?",
    ),
    Misconception(
        "same change to both",
        "changes both amounts by the same number although the story does not link them so",
        "When the first amount changes, what does the story say about the second?",
    ),
    Misconception(
        "reversal",
        "multiplies where the comparison has to be undone, or the other way round",
        "Which of the two is the larger one?",
    ),
    Misconception(
        "differences compared instead of ratios",
        "compares by how much the one amount is more than the other, not how many times as much",
        "If there were twice as much of both, would it taste or cost any different?",
    ),
    Misconception(
        "only one of the two amounts compared",
        "looks at one of the two numbers only, such as the price and not what it buys",
        "What would happen to your answer if the other number were ten times as large?",
    ),
    Misconception(
        "rate turned round",
        "divides the wrong way round and judges as if it were the right way",
        "Say in words what your quotient stands for: how much of what, for one of what?",
    ),
    Misconception(
        "larger numbers taken for the larger rate",
        "takes the one with the larger numbers to have the larger rate",
        "If both of its numbers were halved, would the rate be another?",
    ),
    Misconception(
        "ratio not in simplest form",
        "stops before the numbers of the ratio have no common factor left",
        "Is there still a number that goes into all of them?",
    ),
    Misconception(
        "part compared with the whole",
        "gives the ratio of one part to everything, not to the other part",
        "What does each number of your ratio stand for?",
    ),
    Misconception(
        "same amount taken from both",
        "makes the numbers of a ratio smaller by taking the same amount from each",
        "With those numbers, how many of the one go with one of the other? And before?",
    ),
    Misconception(
        "scale added",
        "adds the number of the scale instead of multiplying by it",
        "How much would two centimetres of the drawing stand for?",
    ),
    Misconception(
        "scale used the wrong way round",
        "multiplies where the scale makes it smaller, or divides where it makes it larger",
        "Which is the larger one, the drawing or the real thing?",
    ),
)
