"""What a proof tells: one thing that is wrong in a finished document, for a teacher to act on."""

from __future__ import annotations

from dataclasses import dataclass

# Kinds whose `should` is what ought to stand in the place of `what`.
_IN_PLACE_OF = frozenset({"wording", "number", "size", "margin", "space", "figure", "page"})


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding.

    `page` counts from 1; 0 is the file as a whole. `place` is in millimetres from the left and
    from the top edge of the page, None where there is no one place. `what` is what is printed,
    `should` what should be (empty where nothing should), `source` the line of the content.
    Kinds: wording, number, answer, order, size, margin, overlap, space, figure, page, font,
    colour, hidden, action, link, file.
    """

    document: str
    page: int
    place: tuple[float, float] | None
    what: str
    should: str
    source: str
    kind: str

    @property
    def where(self) -> str:
        """'monday.pdf, page 2, 41 mm from the left and 120 mm down'."""
        text = self.document
        if self.page:
            text += f", page {self.page}"
        if self.place is not None:
            text += f", {self.place[0]:.0f} mm from the left and {self.place[1]:.0f} mm down"
        return text

    @property
    def message(self) -> str:
        """The finding alone: question 7 prints '63' where '36' should be."""
        if not self.should:
            return self.what
        if self.kind in _IN_PLACE_OF:
            return f"{self.what} where {self.should} should be"
        return f"{self.what}; {self.should}"

    def __str__(self) -> str:
        source = f" ({self.source})" if self.source else ""
        return f"{self.where}: {self.message}{source}"
