"""What an answer grid must say: heads, rows of answers, and who has which version."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, pairwise

from typeset.arithmetic.answers import AnswerValue, answer_text
from typeset.arithmetic.lessons import SolvedProblem
from typeset.documents.class_work import PupilsSheet
from typeset.documents.layout import Layout
from typeset.proofing.account import Account
from typeset.proofing.booklet_text import spans
from typeset.proofing.expected import Part, Passage, passage, said
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Word
from typeset.quantities.inline import Rich, join, words
from typeset.reading.content import VERSIONS

_SLACK_PT = 1.0


@dataclass(frozen=True, slots=True)
class Item:
    """Something that stands whole on one page: the title, a row, the heads over a band of rows,
    a line of names. `cells` are its passages from left to right; `heads` are those of its band."""

    cells: tuple[Passage, ...]
    heads: tuple[Passage, ...] = ()

    @property
    def count(self) -> int:
        """How many words it has."""
        return sum(len(each.words) for each in self.cells)


@dataclass(frozen=True, slots=True)
class Grid:
    """What the grid of a lesson's named set must say."""

    sheets: Sequence[PupilsSheet]
    layout: Layout
    varied: bool

    def say(self, key: str, **names: str) -> str:
        """A text of the layout's wording."""
        return said(self.layout, "class", key, **names)

    def items(self, ends: Sequence[int]) -> Iterator[Item]:
        """Everything in order, where the questions of a band are those up to each of `ends`."""
        lesson = self.sheets[0].lesson.lesson
        title = self.say("grid title", day=lesson.day, lesson=lesson.title)
        yield Item((passage("the title", Part.TITLE, title, lesson.place),))
        for first, end in pairwise((0, *ends)):
            heads = tuple(self.heads(first, end))
            yield Item(heads)
            for sheet in self.told():
                yield Item(tuple(self.row(sheet, first, end)), heads)
        if not self.varied and self.has_versions:
            yield from self.names()

    @property
    def has_versions(self) -> bool:
        """True where not all pupils get the same version."""
        return len({each.solved.version for each in self.sheets}) > 1

    def told(self) -> list[PupilsSheet]:
        """A sheet for each row: each pupil's, or one of each version."""
        if self.varied:
            return list(self.sheets)
        first: dict[str, PupilsSheet] = {}
        for each in self.sheets:
            first.setdefault(each.solved.version.value, each)
        return [first[version] for version in VERSIONS if version in first]

    def heads(self, first: int, end: int) -> Iterator[Passage]:
        """What the columns are called: names, versions, the numbers of the questions."""
        labels = ["name", "version"] if self.varied else ["version"]
        for key in labels if self.has_versions else ["name"]:
            yield passage("the heads of the columns", Part.TEXT, self.say(key))
        for problem in self.sheets[0].lesson.problems()[first:end]:
            yield passage("the heads of the columns", Part.TEXT, str(problem.number))

    def row(self, sheet: PupilsSheet, first: int, end: int) -> Iterator[Passage]:
        """Whose it is, then the answers of the band's questions."""
        version = said(self.layout, "versions", sheet.solved.version.value)
        if self.varied:
            labels = [sheet.pupil.name, *([version] if self.has_versions else [])]
        else:
            labels = [version if self.has_versions else self.say("everybody")]
        about = f"the row of {labels[0]}"
        for label in labels:
            yield passage(about, Part.TEXT, label, sheet.pupil.place)
        for problem in sheet.lesson.problems()[first:end]:
            yield _answer(problem, f"{about}, question {problem.number},")

    def names(self) -> Iterator[Item]:
        """Who has which version."""
        for one in self.told():
            own = [e.pupil.name for e in self.sheets if e.solved.version is one.solved.version]
            version = said(self.layout, "versions", one.solved.version.value)
            told = self.say("who", version=version, names=", ".join(own))
            yield Item((passage(f"the names under '{version}'", Part.TEXT, told),))

    def on_pages(self, pages: Sequence[Sequence[Word]]) -> list[Item]:
        """Everything as the pages show it: where a page begins amid a band, its heads stand
        there once more. `pages` are the words of each page without its foot."""
        waiting = list(self.items(self._ends([word for page in pages for word in page])))
        shown: list[Item] = []
        for page in pages:
            left = len(page)
            if shown and waiting and (heads := waiting[0].heads):
                shown.append(Item(heads))
                left -= shown[-1].count
            while waiting and left > waiting[0].count / 2:
                shown.append(waiting.pop(0))
                left -= shown[-1].count
        return [*shown, *waiting]

    def _ends(self, printed: Sequence[Word]) -> list[int]:
        """Where the bands end, by the first line of heads and the others like it: every line
        that begins with the label of the first column."""
        label = next(self.heads(0, 0)).words[0]
        numbers = [str(each.number) for each in self.sheets[0].lesson.problems()]
        ends: set[int] = set()
        for _, line in groupby(printed, key=lambda word: (word.page, round(word.baseline))):
            texts = [word.text for word in line]
            if texts[0] == label and texts[-1] in numbers:
                ends.add(numbers.index(texts[-1]) + 1)
        return sorted(ends | {len(numbers)})


def check_columns(account: Account, items: Sequence[Item], name: str) -> Iterator[Finding]:
    """Every answer stands under the number of its question."""
    at = 0
    heads: list[Word | None] = []
    for item in items:
        first = [_first(account, at + index) for index in range(len(item.cells))]
        at += len(item.cells)
        if not item.heads:
            heads = first
            continue
        for cell, own, head in zip(item.cells, first, heads, strict=True):
            if own and head and abs(own.box.left - head.box.left) > _SLACK_PT:
                what = f"{cell.about} does not stand under '{head.text}'"
                yield Finding(name, own.page, own.box.place_mm, what, "", cell.source, "order")


def _first(account: Account, index: int) -> Word | None:
    found = account.words_of(index)
    return found[0] if found else None


def _answer(problem: SolvedProblem, about: str) -> Passage:
    """The answers of a question with their values."""
    answers = problem.solution.answers
    items: list[tuple[Rich, AnswerValue | None]] = []
    for index, (name, answer) in enumerate(answers.items()):
        if len(answers) > 1:
            items.append((words(f"{'; ' if index else ''}{name}: "), None))
        items.append((answer_text(answer), answer))
    rich = join([each for each, _ in items])
    made = passage(about, Part.ANSWER, rich, problem.content.place)
    return replace(made, values=tuple(spans(items)))
