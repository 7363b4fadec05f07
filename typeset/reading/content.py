"""The content of a week as the teacher typed it: checked in shape, not yet solved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from pathlib import Path
from typing import TypeAlias

from typeset.errors import Place

# Told on: whoever reads content chooses among these words.
from typeset.reading.choices import ANSWER_BOOKLET as ANSWER_BOOKLET
from typeset.reading.choices import ANSWER_GRID as ANSWER_GRID
from typeset.reading.choices import ANSWERS as ANSWERS
from typeset.reading.choices import CORE as CORE
from typeset.reading.choices import DOCUMENTS as DOCUMENTS
from typeset.reading.choices import END as END
from typeset.reading.choices import FOLDED_BOOKLET as FOLDED_BOOKLET
from typeset.reading.choices import HOME_PACK as HOME_PACK
from typeset.reading.choices import HOW_TO_PRINT as HOW_TO_PRINT
from typeset.reading.choices import MARKING_STRIPS as MARKING_STRIPS
from typeset.reading.choices import NAMED_SET as NAMED_SET
from typeset.reading.choices import NONE as NONE
from typeset.reading.choices import OWN_PROBLEMS as OWN_PROBLEMS
from typeset.reading.choices import SEPARATE as SEPARATE
from typeset.reading.choices import SORTING_CARDS as SORTING_CARDS
from typeset.reading.choices import SORTING_KEY as SORTING_KEY
from typeset.reading.choices import STRETCH as STRETCH
from typeset.reading.choices import SUPPORT as SUPPORT
from typeset.reading.choices import TASK_SHEET as TASK_SHEET
from typeset.reading.choices import USUAL_DOCUMENTS as USUAL_DOCUMENTS
from typeset.reading.choices import VERSIONS as VERSIONS
from typeset.reading.tree import Keyed, Scalar

# A recap may look back at this instead of an earlier lesson of its week.
LAST_WEEK = "last week"
# Begins the condition that numbers are not those of an earlier lesson ('different from monday').
DIFFERENT_FROM = "different from"

# Begins a pupil's sentence with the layout's own words.
LAYOUTS_STARTER = ""


class Space(Enum):
    """What a pupil is given to answer in."""

    # 'Answer ____ unit' alone.
    LINE = "line"
    # Room for a working, then the answer line.
    WORKING = "working"
    # Ruled lines for sentences.
    LINES = "lines"
    # Squared paper, then the answer line.
    SQUARES = "squares"
    # A frame to draw a bar model in, then the answer line.
    MODEL = "bar model"
    # A box, for one number.
    BOX = "box"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Story:
    """A text with `{names}` for quantities, and the place of its first character.

    A line end in the template is the end of a paragraph; other white space is single spaces.
    """

    template: str
    place: Place


@dataclass(frozen=True, slots=True)
class OtherNumbers:
    """What the support or stretch version of a problem changes: `fields` stand instead of the
    problem's own of the same names, wherever these stand in it."""

    fields: Keyed
    place: Place
    # Phrases that its numbers must fulfil; where there are none, the problem's own count.
    such_that: tuple[Scalar, ...] = ()
    story: Story | None = None
    hint: Story | None = None


@dataclass(frozen=True, slots=True)
class ProblemContent:
    """A problem as typed. `fields` holds the keys that belong to its structure."""

    id: str
    structure: str
    story: Story
    fields: Keyed
    place: Place
    # The author's own singulars and plurals, of the week.
    nouns: Mapping[str, str]
    space: Space | None = None
    # Least height of a working space or number of lines, in lines; None leaves it to the layout.
    lines: int | None = None
    # Draw the model of the problem with its first step on the pupils' sheet.
    show_model: bool = False
    hint: Story | None = None
    # What begins the pupil's first sentence, printed in the room to work in; None for nothing.
    starter: str | None = None
    # Where the structure's name stands, for complaints about it.
    structure_place: Place | None = None
    # Phrases that the drawn numbers must fulfil ('the answer is whole').
    such_that: tuple[Scalar, ...] = ()
    support: OtherNumbers | None = None
    stretch: OtherNumbers | None = None
    # True where the author typed the id, so that it stays when other problems come and go.
    has_own_id: bool = False
    # Numbers that were drawn for it, by name, as typed texts; for the author to see.
    drawn: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Recap:
    """A look back: problems of the same structures as an earlier lesson's."""

    # File stems of the lessons looked back at ('monday'), or LAST_WEEK.
    looks_back_at: tuple[str, ...]
    problems: tuple[ProblemContent, ...]
    place: Place
    # So many problems of those lessons come again after the typed ones, with new numbers.
    count: int = 0


@dataclass(frozen=True, slots=True)
class SpotTheMistake:
    """A worked solution with a mistake in it, by a named (invented) pupil."""

    problem: ProblemContent
    mistake: str
    mistake_place: Place
    pupil: str
    place: Place


@dataclass(frozen=True, slots=True)
class Sort:
    """Problems to sort by what they need; some of them then to be solved."""

    problems: tuple[ProblemContent, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class PractiseSet:
    """Problems of one demand, under a letter."""

    name: str
    problems: tuple[ProblemContent, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Practise:
    """Sets of growing demand."""

    sets: tuple[PractiseSet, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class Extension:
    """An open task. `fields` holds `quantities` and `steps`, whose names its texts may use."""

    id: str
    title: str
    story: Story
    fields: Keyed
    hints: tuple[Story, ...]
    # For the adults: what to look for, and examples of good answers.
    look_for: tuple[Story, ...]
    nouns: Mapping[str, str]
    place: Place
    space: Space | None = None
    lines: int | None = None
    # What the task needs care with ('kitchen'), as words that the layout has a text for.
    cautions: tuple[Scalar, ...] = ()


@dataclass(frozen=True, slots=True)
class OwnProblems:
    """What pupils make up problems of their own from: a story with amounts to choose among.

    `frames` are the problems that there is room for.
    """

    id: str
    title: str
    story: Story
    fields: Keyed
    frames: int
    nouns: Mapping[str, str]
    place: Place


Stage: TypeAlias = Recap | SpotTheMistake | Sort | Practise | Extension


@dataclass(frozen=True, slots=True)
class Lesson:
    """One day's lesson. `name` is its file's stem."""

    name: str
    title: str
    day: str
    aim: str
    sides: int
    stages: tuple[Stage, ...]
    place: Place
    # The year group, where the lesson has another than its week.
    year: int | None = None
    own_problems: OwnProblems | None = None
    # What the lesson needs care with; see Extension.
    cautions: tuple[Scalar, ...] = ()
    # A digest of all that its pages are made from, so that a PDF can tell whether it changed.
    fingerprint: str = ""


@dataclass(frozen=True, slots=True)
class Week:
    """A folder of lessons. `name` is the folder's name."""

    name: str
    title: str
    class_name: str
    lessons: tuple[Lesson, ...]
    layout: str
    folder: Path
    # A digest of every byte read, so that a PDF can tell what it was made from.
    fingerprint: str
    place: Place
    # Printed small where the content is invented ('All people and places are invented.').
    note: str = ""
    # The year group (3 to 6) whose curriculum content is held against; None for none.
    year: int | None = None
    # Varied numbers are drawn from this; another seed gives other numbers.
    seed: int = 1
    # Lessons that are only looked back at, where one lesson is read alone.
    background: tuple[Lesson, ...] = ()
    # Which versions of its sheets are made, easiest first, and which documents.
    versions: tuple[str, ...] = (CORE,)
    makes: tuple[str, ...] = USUAL_DOCUMENTS
    # Of messages to families: whom they are from, and what they are about.
    sender: Scalar | None = None
    subject: Scalar | None = None
