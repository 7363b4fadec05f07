"""The words among which a teacher chooses, in content files and on the command line.

They stand apart from the content that they are part of, so that help comes at once.
"""

from __future__ import annotations

SUPPORT, CORE, STRETCH = "support", "core", "stretch"
VERSIONS = (SUPPORT, CORE, STRETCH)
# What can be made of a week, as typed after 'makes:' and after --only.
TASK_SHEET, ANSWER_BOOKLET = "task sheet", "answer booklet"
FOLDED_BOOKLET, MARKING_STRIPS = "folded booklet", "marking strips"
SORTING_CARDS, SORTING_KEY = "sorting cards", "sorting key"
OWN_PROBLEMS, HOME_PACK = "own problems", "home pack"
DOCUMENTS = (
    TASK_SHEET,
    ANSWER_BOOKLET,
    FOLDED_BOOKLET,
    MARKING_STRIPS,
    SORTING_CARDS,
    SORTING_KEY,
    OWN_PROBLEMS,
    HOME_PACK,
)
# Made from a class list, and only with one.
NAMED_SET, ANSWER_GRID = "named set", "answer grid"
# Made with everything else.
HOW_TO_PRINT = "how to print"
USUAL_DOCUMENTS = (TASK_SHEET, ANSWER_BOOKLET)

# Where the answers of a home pack are: at its end, in a file of their own, or nowhere.
END, SEPARATE, NONE = "end", "separate", "none"
ANSWERS = (END, SEPARATE, NONE)
