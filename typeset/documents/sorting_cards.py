"""Cards for 'sort the problems': a problem on each, groups to sort them under, and their key."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from typeset.arithmetic.lessons import SolvedLesson, SolvedProblem, SolvedSort, SolvedWeek
from typeset.documents.composer import Composer, stage_heading, week_names
from typeset.documents.grid import Grid, on_papers
from typeset.documents.layout import Layout
from typeset.errors import FitError
from typeset.quantities.inline import words
from typeset.setting.answer_spaces import AnswerSpace, Rows, SpaceKind, answer_space
from typeset.setting.blocks import Block, Column, Spacing, number_label, text_block
from typeset.setting.frames import Document, Duplex, Page, Role
from typeset.setting.pages import PageLayout, fill_sides, flow
from typeset.setting.paragraphs import natural_width_pt
from typeset.setting.pieces import Columns, Piece, hanging, stack, text
from typeset.setting.stretch import Stretch

# Eight to a paper where the problems are short enough, else fewer and larger.
GRIDS = ((2, 4), (2, 3), (2, 2))
GROUPS = ("multiply", "add", "both", "neither")
_LEADING = 1.35
_LETTER_SCALE = 1.5
_GROUP_SCALE = 1.3
_SPACING = Spacing(
    inner=Stretch(0.3, 0.6, 1.2),
    paragraph=Stretch(0.4, 0.7, 1.2),
)


@dataclass(frozen=True, slots=True)
class Card:
    """A problem with the letter that its key calls it."""

    letter: str
    problem: SolvedProblem


def cards_of(lesson: SolvedLesson) -> tuple[Card, ...]:
    """The problems that the lesson sorts, lettered in order."""
    problems = [
        problem
        for stage in lesson.stages
        if isinstance(stage, SolvedSort)
        for problem in stage.problems
    ]
    return tuple(Card(letter_of(index), problem) for index, problem in enumerate(problems))


def letter_of(index: int) -> str:
    """A, B … Z, then A2, B2 …"""
    round_, place = divmod(index, 26)
    return chr(ord("A") + place) + (str(round_ + 1) if round_ else "")


def compose_sorting_cards(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout
) -> tuple[Document, PageLayout]:
    """Fronts and backs of a lesson's cards, the groups' cards among them.

    Raises FitError for a problem too long for a quarter of the paper, GlyphError.
    """
    failed: FitError | None = None
    for columns, rows in GRIDS:
        grid = Grid(layout.upright, columns, rows)
        try:
            return _cards(solved, lesson, layout, grid)
        except FitError as error:
            failed = error
    raise FitError(f"{lesson.lesson.place.file}: on a card {failed}") from failed


def _cards(
    solved: SolvedWeek, lesson: SolvedLesson, layout: Layout, grid: Grid
) -> tuple[Document, PageLayout]:
    cards = cards_of(lesson)
    maker = _largest(Composer(layout.for_cell(grid.cell)), layout.type_size.sizes_pt(), cards)
    fronts: list[Page | None] = [maker.front(card) for card in cards]
    backs: list[Page | None] = [maker.back(card) for card in cards]
    groups = [maker.group(group) for group in GROUPS]
    # The groups stay together: they begin a paper of their own where this one has no room.
    free = room_left(len(cards), grid.count)
    filling = free if len(groups) > free else 0
    fronts += [*[None] * filling, *groups]
    backs += [None] * (filling + len(groups))
    papers: list[Page] = []
    for start in range(0, len(fronts), grid.count):
        (front,) = on_papers(fronts[start : start + grid.count], grid)
        mirrored = _mirrored(backs[start : start + grid.count], grid)
        (back,) = on_papers(mirrored, grid, cuts=False)
        papers += [front, replace(back, upside_down=layout.backs == "short edge")]
    long_edge = layout.backs == "long edge"
    document = Document(
        title=f"{lesson.lesson.title} – {maker.composer.say('cards', 'title').lower()}",
        subject=solved.week.title,
        pages=tuple(papers),
        type_size_pt=maker.size_pt,
        fingerprint=lesson.lesson.fingerprint,
        duplex=Duplex.LONG_EDGE if long_edge else Duplex.SHORT_EDGE,
    )
    return document, PageLayout(document.pages, maker.size_pt, (), ())


def _largest(composer: Composer, sizes_pt: Sequence[float], cards: Sequence[Card]) -> _Maker:
    """A maker at the largest size at which every card fits: all are set alike."""
    failed: FitError | None = None
    for size_pt in sizes_pt:
        maker = _Maker(composer, size_pt)
        try:
            for card in cards:
                maker.front(card)
                maker.back(card)
            return maker
        except FitError as error:
            failed = error
    raise failed or FitError("there is no type size to set a card in")


def room_left(cards: int, a_paper: int) -> int:
    """How many cells are free on the last paper of so many cards."""
    return -cards % a_paper


def _mirrored(pages: Sequence[Page | None], grid: Grid) -> list[Page | None]:
    """The backs as they have to lie to meet their fronts: every row from right to left."""
    filled = [*pages, *[None] * (grid.count - len(pages))]
    rows = (filled[i : i + grid.columns] for i in range(0, grid.count, grid.columns))
    return [page for row in rows for page in reversed(row)]


class _Maker:
    """Sets single cards at one size."""

    def __init__(self, composer: Composer, size_pt: float) -> None:
        self.composer = composer
        self.size_pt = size_pt

    def front(self, card: Card) -> Page:
        """Letter and number over the story."""
        problem, source = card.problem, card.problem.content.id

        def blocks(column: Column) -> list[Block]:
            story = text(problem.story, column.style, column.width_pt, Role.QUESTION, source)
            head = self._head(card, column)
            return [
                Block("the letter", head, keep_with_next=True),
                Block(f"card {card.letter}", story, column.gap(_SPACING.inner)),
            ]

        return self._page(blocks)

    def back(self, card: Card) -> Page:
        """The letter again, and lines for the reason."""
        source = card.problem.content.id

        def blocks(column: Column) -> list[Block]:
            spaces = self.composer.layout.answer_spaces
            because = self.composer.rich("sheet", "because")
            label = text(because, column.style, column.width_pt, Role.TEXT, source)
            room = AnswerSpace(SpaceKind.LINES, Rows(2, 3, 4), (), ruled_mm=spaces.ruled_mm)
            lines = answer_space(room, column.style, column.width_pt, source)
            body = stack((label, lines), column.gap(_SPACING.inner))
            return [
                Block("the letter", self._letter(card, column), keep_with_next=True),
                Block(f"the back of card {card.letter}", body, column.gap(_SPACING.inner)),
            ]

        return self._page(blocks)

    def group(self, group: str) -> Page:
        """What problems may need, to sort them under."""

        def blocks(column: Column) -> list[Block]:
            style = column.style.scaled(_GROUP_SCALE).bold()
            name = self.composer.rich("choices", group)
            heading = text(name, style, column.width_pt, Role.HEADING)
            needs = text_block("what it is for", self.composer.rich("cards", "group"), column)
            return [Block("the group", heading), needs]

        return self._page(blocks)

    def _letter(self, card: Card, column: Column) -> Piece:
        style = column.style.scaled(_LETTER_SCALE).bold()
        return text(words(card.letter), style, column.width_pt / 3, Role.TITLE)

    def _head(self, card: Card, column: Column) -> Piece:
        number = self.composer.say("cards", "number", number=str(card.problem.number))
        source = card.problem.content.id
        letter = self._letter(card, column)
        rich = words(number)
        wide = natural_width_pt(rich, column.style) + 0.1
        label = text(rich, column.style, wide, Role.TEXT, source)
        return Columns((letter, label), column.width_pt - letter.width_pt - label.width_pt)

    def _page(self, blocks: Callable[[Column], list[Block]]) -> Page:
        frame = self.composer.bare_frame()

        def compose(size_pt: float) -> list[Block]:
            return blocks(self.composer.column(size_pt, _LEADING, _SPACING))

        return fill_sides(compose, frame, 1, (self.size_pt,)).pages[0]


def compose_sorting_key(solved: SolvedWeek, layout: Layout) -> tuple[Document, PageLayout]:
    """For the adults: under each lesson the letters with their group, answer and reason.

    Raises FitError, GlyphError.
    """
    composer = Composer(layout.for_booklet())
    title = composer.say("cards", "key")
    size_pt = layout.booklet.size_pt
    frame = composer.frame(f"{title} · {solved.week.title}", size_pt)

    def blocks(size: float) -> list[Block]:
        column = composer.column(size, layout.booklet.leading)
        style = column.style.scaled(1.6).bold()
        heading = text(words(title), style, column.width_pt, Role.TITLE)
        return [
            Block("the title", heading, keep_with_next=True),
            *(
                block
                for lesson in solved.lessons
                for block in _key(composer, solved, lesson, column)
            ),
        ]

    pages = flow(blocks, frame, size_pt)
    document = Document(
        title=f"{solved.week.title} – {title.lower()}",
        subject=solved.week.title,
        pages=pages.pages,
        type_size_pt=size_pt,
        fingerprint=solved.week.fingerprint,
        tagged=True,
    )
    return document, pages


def _key(
    composer: Composer, solved: SolvedWeek, lesson: SolvedLesson, column: Column
) -> list[Block]:
    cards = cards_of(lesson)
    if not cards:
        return []
    names = week_names(solved, lesson)
    told = composer.rich("strip", "lesson", day=names["day"], lesson=names["lesson"])
    heading = stage_heading(f"the heading of {names['day']}", told, column)
    return [heading, *(_key_line(composer, card, column) for card in cards)]


def _key_line(composer: Composer, card: Card, column: Column) -> Block:
    """'A (question 4): multiply or divide. With twice as many …'."""
    problem, source = card.problem, card.problem.content.id
    label = number_label(card.letter, column.style, Role.QUESTION, source)
    indent = max(column.spacing.hang * column.style.size_pt, label.width_pt)
    decision = composer.say("choices", problem.solution.kind.decision.name.lower())
    number = composer.say("cards", "number", number=str(problem.number))
    told = (*words(f"{decision} ({number}). ", bold=True), *problem.solution.kind.reason)
    width = min(column.text_pt, column.width_pt - indent)
    body = text(told, column.style, width, Role.ANSWER, source)
    gap = column.gap(column.spacing.paragraph)
    return Block(f"card {card.letter}", hanging(label, body, indent), gap)
