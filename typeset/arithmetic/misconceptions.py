"""The known mistakes: what each is called, what it shows, and what an adult may ask.

Names follow the research where it has one: additive strategy, incorrect build-up, magical
doubling, constant sum (Misailidou & Williams 2003, abstract read); over-use of
proportionality (De Bock et al. 2007); reversal (Clement 1982, from memory). The others
are common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Misconception:
    """A mistake by name. `shows` completes 'This pupil …'; `prompt` is a question to ask."""

    name: str
    shows: str
    prompt: str


_ALL = (
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
        "remainder ignored",
        "drops what is left over although the story needs it",
        "What happens to the ones that are left over?",
    ),
    Misconception(
        "remainder rounded up",
        "counts an unfinished group although the story does not",
        "Is the last group a full one?",
    ),
    Misconception(
        "remainder given as the answer",
        "answers with what is left over, not with the number of groups",
        "What does each number in your division stand for?",
    ),
    Misconception(
        "quotient given as the remainder",
        "answers with the number of groups, not with what is left over",
        "What does each number in your division stand for?",
    ),
    Misconception(
        "adding instead of multiplying",
        "adds the two numbers of the story although the groups repeat",
        "What would the total be for one group, two groups, three groups?",
    ),
    Misconception(
        "multiplying instead of dividing",
        "multiplies although the total is known already",
        "Can one share be more than the whole?",
    ),
    Misconception(
        "subtracting instead of dividing",
        "takes one number from the other although equal shares are wanted",
        "Put the shares back together: do you get the total?",
    ),
    Misconception(
        "reversal",
        "multiplies where the comparison has to be undone, or the other way round",
        "Which of the two is the larger one?",
    ),
    Misconception(
        "times as many taken as more than",
        "reads 'times as many' as 'more than' and adds",
        "Draw both bars: how many of the short bar fit into the long one?",
    ),
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
        "step left out",
        "stops one step before the question is answered",
        "Read the question again: what does your number stand for?",
    ),
    Misconception(
        "operations in reading order",
        "works from left to right although a later step has to come first",
        "Which amount must you know before you can do that step?",
    ),
    # One operation: equal groups, sharing, adding and taking away.
    Misconception(
        "one group left out",
        "adds once for every plus sign instead of once for every group",
        "Point to each group as you count: has every one of them been added?",
    ),
    Misconception(
        "only one part multiplied",
        "splits a number to multiply it, but multiplies only one of its parts",
        "What do the ones stand for, and how many times are they there?",
    ),
    Misconception(
        "adjusting by too little",
        "rounds a number up to multiply, then takes off too little",
        "How much too much was there, counted over all the groups?",
    ),
    Misconception(
        "nought left out of the quotient",
        "leaves out the nought where a digit is too small to divide",
        "About how large must the answer be? Multiply yours back.",
    ),
    Misconception(
        "remainder written behind the point",
        "writes what is left over behind a decimal point as it is",
        "How much of one more does each get from what is left over?",
    ),
    Misconception(
        "remainder left as it is",
        "answers with a quotient and a remainder although the story asks for whole groups",
        "What would you do with the ones that are left over?",
    ),
    Misconception(
        "unit converted by the wrong number",
        "changes the unit with the wrong number, such as 100 grams for a kilogram",
        "How many of the small unit make one of the large unit?",
    ),
    Misconception(
        "left over and missing exchanged",
        "mixes up what is left over with what is missing for one more full group",
        "Draw the last group: how many are in it, and how many are not?",
    ),
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
        "area and perimeter exchanged",
        "works out the way round where the space inside is asked for, or the other way about",
        "Would you need string or tiles to show what is asked for?",
    ),
    Misconception(
        "only two sides counted",
        "counts one length and one width although a rectangle has two of each",
        "Trace the way round with a finger: how many sides do you pass?",
    ),
    # Counting.
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

# Of pairs of amounts, of chains of steps, of fixed charges, of two unknowns and of fractions.
_OF_PAIRS_AND_STEPS = (
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
        "over-use of inverse proportion",
        "lets the answer shrink as the other amount grows although it does not depend on it",
        "Would more of the first really mean less of the second?",
    ),
    Misconception(
        "difference turned round",
        "puts the difference on the wrong one of the two amounts",
        "Which of the two is the larger one?",
    ),
    Misconception(
        "unit not converted",
        "reckons with the written numbers although their units differ",
        "Are both amounts in the same unit?",
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
        "dividing instead of multiplying",
        "divides although the same amount repeats",
        "Is one of them all of them, or are there several?",
    ),
    Misconception(
        "quantity left out",
        "forgets one of the amounts that the question needs",
        "Which number of the story have you not used yet, and does it matter?",
    ),
    Misconception(
        "factor and multiple exchanged",
        "looks for a number that both go into where one that goes into both is wanted, "
        "or the other way round",
        "Will the answer be larger than the numbers of the story, or smaller?",
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

MISCONCEPTIONS: dict[str, Misconception] = {
    each.name: each for each in (*_ALL, *_OF_PAIRS_AND_STEPS)
}
