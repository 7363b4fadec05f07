"""Text, inline maths, figures, answer spaces in; finished pages out. Knows no lessons.

What a document needs, in the order it needs it (all lengths in points, `1 mm = MM`):

1. A column to set in: `Column(TextStyle(size_pt, leading), width_pt, Spacing())` from blocks.
2. Blocks, made for a type size by a function `compose(size_pt) -> list[Block]`:
   `text_block(name, rich, column, role, source)`         a paragraph
   `question_block(Question(...), column)`                number, story, figure, answer space
   `Block(name, piece, before=Stretch(...), keep_with_next=..., optional=..., ...)` for the rest,
        with pieces from pieces.py: `text`, `stack`, `hanging`, `Columns` (of cells made for
        `cell_width_pt(count, column)`), `Indented`, `DrawingPiece`, `RulePiece`, `Room`.
3. Answer spaces: `AnswerSpace(SpaceKind.WORKING, Rows(2, 3, 7), (AnswerLine(after=unit),))`.
   Kinds LINE, WORKING, LINES, SQUARES, BAR_MODEL, TICKS; `AnswerLine(boxed=True)` is a box for
   one number, `before` its '£', `after` its unit.
4. Workings: `working([WorkingStep(sentence, equals), ...], style, width_pt, role, source)`.
5. Pages: `fill_sides(compose, frame, sides, sizes)` or `flow(compose, frame, size_pt)`, both
   giving a `PageLayout` (pages, type_size_pt, fills, looseness, notes). `frame` is a
   `PageFrame` with the paper, the area for blocks, a tint, and `furniture(index, count)`
   for running head and foot.
6. `write_pdf(Document(...)) -> bytes`.

Errors: FitError (does not fit; says what would help), GlyphError (a character the font lacks).

How it works: a text is cut into unbreakable boxes (boxes), broken into lines by an optimum
(lines), set as a paragraph (paragraphs), put into pieces (pieces), these into blocks (blocks);
blocks are parted into pages by an optimum (breaking) and placed (pages); a page is drawn by a
plain loop (pdf). Heights that give way are `Stretch`es (stretch).
"""
