"""A layout: all that a teacher may set without Python.

Paper, margins, type sizes, answer spaces and fixed wording.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from pathlib import Path
from typing import Annotated, Any, Literal, TypeAlias

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationInfo,
    model_validator,
)

from typeset.arithmetic.fields import Read, YesNo, refuse
from typeset.documents.paper import Paper, half_of, paper_named, paper_names
from typeset.drawing.contrast import contrast
from typeset.drawing.fonts import TypeFamily, load_family
from typeset.drawing.pens import GUIDE_COLOUR
from typeset.drawing.shapes import BLACK, Colour
from typeset.errors import AmountError, TypesetError
from typeset.quantities.parsing import parse_amount
from typeset.quantities.units import UNITS, Dimension

# Printers leave an edge of up to 6.7 mm white (HP Officejet 7210 manual); 10 mm is safe.
_LEAST_MARGIN_MM = 10
# Clear print starts at 12 pt for pupils (UKAAF MS03); an adults' booklet may be smaller.
_LEAST_BOOKLET_PT = 9
_LARGEST_PT = 48
# WCAG 2.2: 7 : 1 for text (success criterion 1.4.6), 3 : 1 for lines that are needed (1.4.11).
_LEAST_TEXT_CONTRAST = 7.0
_LEAST_LINE_CONTRAST = 3.0
# Ruled lines of 8 mm are common practice; wider ones may take this part of a page at least.
_USUAL_RULED_MM = 8.0
_PART_OF_PAGE = 0.28
OUR_OWN_FONTS = "our own"
# Below a narrow newspaper column every second line would break badly (common practice).
_LEAST_CHARACTERS = 30


def _millimetres(value: Any) -> Any:
    if not isinstance(value, str):
        return value
    try:
        amount = parse_amount(value)
    except AmountError as error:
        raise refuse(error.problem, "write a length such as 14 mm") from None
    if amount.unit.dimension is not Dimension.LENGTH:
        raise refuse(f"'{value}' is not a length", "write one such as 14 mm")
    return float(amount.to(UNITS["mm"]).value)


def _number(value: Any) -> Any:
    try:
        return float(Fraction(value)) if isinstance(value, str) else value
    except (ValueError, ZeroDivisionError):
        raise refuse(f"'{value}' is not a number", "write one such as 12 or 12.5") from None


def _paper(value: Any) -> Any:
    if isinstance(value, str):
        if value not in paper_names():
            raise refuse(f"unknown paper '{value}'", f"write one of {', '.join(paper_names())}")
        return paper_named(value)
    return value


def _tint(value: Any) -> Any:
    if value == "none":
        return None
    if isinstance(value, list) and len(value) == 3:
        levels = [_number(level) for level in value]
        if all(0 <= level <= 255 for level in levels):
            red, green, blue = (level / 255 for level in levels)
            return _bright_enough((red, green, blue))
    raise refuse(
        "the tint is three numbers from 0 to 255", "write none, or such as [255, 250, 235]"
    )


def _bright_enough(tint: Colour) -> Colour:
    """The tint, refused where text or the lines to write on would not stand out from it."""
    for what, ink, least in (
        ("text", BLACK, _LEAST_TEXT_CONTRAST),
        ("the lines to write on", GUIDE_COLOUR, _LEAST_LINE_CONTRAST),
    ):
        ratio = contrast(ink, tint)
        if ratio < least:
            # Cut off, never rounded up: 2.996 is not 3.
            shown = int(ratio * 100) / 100
            raise refuse(
                f"on this tint {what} would have a contrast of {shown:.2f} : 1, "
                f"and WCAG 2.2 asks for {least:g} : 1",
                "choose a paler tint",
            )
    return tint


def _characters(value: Any) -> Any:
    """'70 characters', or none."""
    if value == "none":
        return None
    count = str(value).removesuffix("characters").strip()
    if count.isdecimal() and int(count) >= _LEAST_CHARACTERS:
        return int(count)
    raise refuse(
        f"'{value}' is no length of a line",
        f"write none, or such as 70 characters ({_LEAST_CHARACTERS} at least)",
    )


def _fonts(value: Any, info: ValidationInfo) -> Any:
    """'our own', or the two TrueType files of another family."""
    if value == OUR_OWN_FONTS or not isinstance(value, str | dict | list):
        return None if value == OUR_OWN_FONTS else value
    if not isinstance(value, dict) or set(value) != {"regular", "bold"}:
        remedy = f"write {OUR_OWN_FONTS}, or {{regular: NAME.ttf, bold: NAME.ttf}}"
        raise refuse("the fonts are two TrueType files", remedy)
    folder = Path((info.context or {}).get("fonts in", "."))
    try:
        return load_family(folder / str(value["regular"]), folder / str(value["bold"]))
    except TypesetError as error:
        raise refuse(str(error)) from None


Millimetres: TypeAlias = Annotated[float, BeforeValidator(_millimetres)]
Number: TypeAlias = Annotated[float, BeforeValidator(_number)]


class _Part(BaseModel):
    model_config = ConfigDict(
        extra="forbid",
        frozen=True,
        populate_by_name=True,
        arbitrary_types_allowed=True,
        # Built with the whole layout, since a part of it is never read alone.
        defer_build=True,
    )

    @classmethod
    def keys(cls) -> tuple[str, ...]:
        """The keys as a teacher types them."""
        return tuple(field.alias or name for name, field in cls.model_fields.items())


class Margins(_Part):
    """The white edges of every side."""

    top: Annotated[Millimetres, Field(ge=_LEAST_MARGIN_MM)]
    bottom: Annotated[Millimetres, Field(ge=_LEAST_MARGIN_MM)]
    left: Annotated[Millimetres, Field(ge=_LEAST_MARGIN_MM)]
    right: Annotated[Millimetres, Field(ge=_LEAST_MARGIN_MM)]


class TypeSize(_Part):
    """The range of type sizes in points, from which the largest that fits is taken."""

    largest: Annotated[Number, Field(le=_LARGEST_PT)]
    smallest: Annotated[Number, Field(ge=_LEAST_BOOKLET_PT)]
    step: Annotated[Number, Field(gt=0)] = 0.5

    @model_validator(mode="after")
    def _in_order(self) -> TypeSize:
        if self.smallest > self.largest:
            raise refuse(
                f"the smallest size, {self.smallest:g}, is above the largest, {self.largest:g}",
                "exchange them",
            )
        return self

    def sizes_pt(self) -> tuple[float, ...]:
        """Largest first, down to the smallest, which is always among them."""
        count = int((self.largest - self.smallest) / self.step + 1e-9)
        sizes = [self.largest - index * self.step for index in range(count + 1)]
        return tuple(sizes if sizes[-1] <= self.smallest + 1e-9 else [*sizes, self.smallest])


class AnswerSpaces(_Part):
    """The least room that an answer gets."""

    line_mm: Annotated[Millimetres, Field(ge=6)] = Field(alias="line")
    ruled_mm: Annotated[Millimetres, Field(ge=6)] = Field(alias="ruled")
    square_mm: Annotated[Millimetres, Field(ge=5)] = Field(alias="square")
    working_lines: Annotated[Number, Field(ge=1)] = Field(alias="working lines")
    bar_model_mm: Annotated[Millimetres, Field(ge=12)] = Field(alias="bar model")

    def least_lines(self, asked: int | None, page_mm: float) -> int:
        """The lines that an author asks for, or the least of the layout.

        Where lines are higher than usual, no more of them than fill a good part of a page.
        """
        if asked is None:
            return int(self.working_lines)
        if self.ruled_mm <= _USUAL_RULED_MM:
            return asked
        return max(
            int(self.working_lines), min(asked, int(_PART_OF_PAGE * page_mm / self.ruled_mm))
        )


class SheetShows(_Part):
    """What stands on a pupils' sheet besides its questions."""

    name_and_date: YesNo = Field(default=True, alias="name and date")
    aim: YesNo = True


class Booklet(_Part):
    """How the adults' booklet is set, and how much it tells of each problem."""

    size_pt: Annotated[Number, Field(ge=_LEAST_BOOKLET_PT, le=_LARGEST_PT)] = Field(
        alias="type size"
    )
    leading: Annotated[Number, Field(ge=1.15, le=2.0)] = 1.3
    # The easiest way first, then others.
    ways: Annotated[int, Field(ge=1, le=3)] = 2
    mistakes: Annotated[int, Field(ge=0, le=4)] = 2
    models: YesNo = True
    # Whether the question is told again before its answer.
    stories: YesNo = True
    # The model and the mistakes of a problem may stand on the page after its answer.
    may_part: YesNo = Field(default=False, alias="entries may part")


class Layout(_Part):
    """Everything that a layout file says. Lengths in millimetres, type sizes in points."""

    name: str = Field(alias="layout")
    upright: Annotated[Paper, Read, BeforeValidator(_paper)] = Field(alias="paper")
    orientation: Literal["portrait", "landscape"]
    # So many copies of a task sheet stand side by side on the paper, to be cut apart.
    copies: Annotated[int, Field(ge=1, le=2)] = Field(default=1, alias="copies side by side")
    margins: Margins
    # The edge over which the printer turns the paper to print its back.
    backs: Literal["long edge", "short edge"] = Field(default="long edge", alias="turned over")
    sides: Literal["as asked", "as needed"] = "as asked"
    fonts: Annotated[Annotated[TypeFamily, Read] | None, BeforeValidator(_fonts)] = None
    type_size: TypeSize = Field(alias="type size")
    longest_line: Annotated[int | None, BeforeValidator(_characters)] = Field(
        default=None, alias="longest line"
    )
    leading: Annotated[Number, Field(ge=1.15, le=2.0)]
    tint: Annotated[Colour | None, BeforeValidator(_tint)] = Field(alias="paper tint")
    answer_spaces: AnswerSpaces = Field(alias="answer spaces")
    sheet: SheetShows = SheetShows()
    booklet: Booklet
    wording: Mapping[str, Mapping[str, str]]

    @property
    def paper(self) -> Paper:
        """The paper as it lies."""
        return self.upright if self.orientation == "portrait" else self.upright.turned()

    @property
    def page(self) -> Paper:
        """One copy's share of the paper."""
        paper = self.paper
        return Paper(paper.name, paper.width_mm / self.copies, paper.height_mm)

    def for_booklet(self) -> Layout:
        """The same for the booklet, which stands on the whole paper: upright, one copy."""
        if self.copies == 1:
            return self
        return self.model_copy(update={"copies": 1, "orientation": "portrait"})

    def for_home(self) -> Layout:
        """The same for families: one copy on the paper, and answers told in one way, without
        the questions and the mistakes that teachers listen for."""
        booklet = self.booklet.model_copy(update={"ways": 1, "mistakes": 0, "stories": False})
        return self.for_booklet().model_copy(update={"booklet": booklet})

    def for_cell(self, cell: Paper) -> Layout:
        """The same on a small page that shares its paper with others."""
        update = {"copies": 1, "orientation": "portrait", "upright": cell}
        return self.model_copy(update=update)

    def for_folding(self) -> Layout:
        """The same on half the paper, for a booklet two pages to a side.

        Type a little smaller, though never under the least; margins as narrow as is safe.
        """
        margins = dict.fromkeys(("top", "bottom", "left", "right"), _LEAST_MARGIN_MM + 1.0)
        size = max(_LEAST_BOOKLET_PT, self.booklet.size_pt - 0.5)
        update = {
            "copies": 1,
            "orientation": "portrait",
            "upright": half_of(self.upright),
            "margins": self.margins.model_copy(update=margins),
            "booklet": self.booklet.model_copy(update={"size_pt": size, "may_part": True}),
        }
        return self.model_copy(update=update)
