"""Clock faces, scales, counters, angles and joined points read back from their strokes.

Each is measured on the page and set against the figure's data: a hand that points elsewhere, a
counter too many, a pointer at another place is a finding, whatever the labels say.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from math import dist

from typeset.arithmetic.figures import (
    Angles,
    AngleSetting,
    ClockFaces,
    Figure,
    GroupedObjects,
    JoinedPoints,
    MeasuringScale,
    ScaleShape,
    Show,
)
from typeset.proofing.checks import Proof
from typeset.proofing.finding import Finding
from typeset.proofing.page_marks import Stroke
from typeset.proofing.regions import Region, question_regions
from typeset.proofing.scales_read import NoMarks, reading_of
from typeset.proofing.turns import Point, centre_of, is_closed, lines_from, rounds, turn_of

# Half of what the hour hand moves in a minute.
_TURN_SLACK = 0.25
# A share of a scale's length; a division of a hundred is far wider.
_READING_SLACK = 0.003
# A clock face is never smaller than 20 mm.
_LEAST_FACE_PT = 56.0
_LARGEST_DOT_PT = 24.0


def check_drawn_figures(proof: Proof) -> Iterator[Finding]:
    """A finding for everything that is not drawn as its data say."""
    passages = proof.account.passages
    for region in question_regions(proof.account, proof.document.pages):
        for index in region.passages:
            passage = passages[index]
            if passage.figure is None or passage.show is Show.FRAME:
                continue
            for what in faults_of(region.strokes, passage.figure, passage.show):
                yield _finding(proof, region, f"{passage.about} {what}", passage.source)


def _finding(proof: Proof, region: Region, what: str, source: str) -> Finding:
    page, place = region.page.number, region.box.place_mm
    return Finding(proof.document.name, page, place, f"the figure of {what}", "", source, "figure")


def faults_of(strokes: Sequence[Stroke], figure: Figure, show: Show) -> Iterator[str]:
    """What is wrong with the strokes of a figure, as the end of a sentence."""
    match figure:
        case ClockFaces():
            yield from _clocks(strokes, figure, show)
        case GroupedObjects():
            yield from _counters(strokes, figure, show)
        case MeasuringScale():
            yield from _scale(strokes, figure, show)
        case Angles():
            yield from _angles(strokes, figure)
        case JoinedPoints():
            yield from _joined(strokes, figure, show)
        case _:
            return


def _is_near(turn: float, wanted: float) -> bool:
    return abs((turn - wanted + 180) % 360 - 180) <= _TURN_SLACK


def dots(strokes: Sequence[Stroke]) -> list[Point]:
    """The middles of round black dots."""
    return [
        centre_of(s.box)
        for s in strokes
        if s.shape == "curve"
        and s.filled
        and s.stroked
        and s.box.width <= _LARGEST_DOT_PT
        and abs(s.box.width - s.box.height) < 0.1
        and len(s.points) == 5
    ]


def _clocks(strokes: Sequence[Stroke], figure: ClockFaces, show: Show) -> Iterator[str]:
    found = rounds(strokes, _LEAST_FACE_PT)
    if len(found) != len(figure.faces):
        yield f"shows {len(found)} clock faces, not {len(figure.faces)}"
        return
    for box, face in zip(found, figure.faces, strict=True):
        hands = sorted(lines_from(strokes, centre_of(box)), key=lambda hand: hand[1])
        if show is not Show.COMPLETE and not face.hands_given:
            if hands:
                yield "has hands on a clock face that should have none"
        elif len(hands) != 2:
            yield f"has {len(hands)} hands on a clock face, not 2"
        else:
            hour, minute = float(face.at / 2), float(face.at % 60 * 6)
            if not _is_near(hands[0][0], hour):
                yield f"has its hour hand at {hands[0][0]:.1f} degrees, not {hour:.1f}"
            if not _is_near(hands[1][0], minute):
                yield f"has its minute hand at {hands[1][0]:.1f} degrees, not {minute:.1f}"


def _counters(strokes: Sequence[Stroke], figure: GroupedObjects, show: Show) -> Iterator[str]:
    rings = [s.box for s in strokes if s.shape == "curve" and not s.filled and is_closed(s)]
    counters = dots(strokes)
    inside = [sum(ring.holds(*counter) for counter in counters) for ring in rings]
    loose = len(counters) - sum(inside)
    total = figure.groups * figure.each + figure.left_over
    wanted, wanted_loose = [figure.each] * figure.groups, figure.left_over
    if show is not Show.COMPLETE and not figure.each_mark.is_given:
        wanted, wanted_loose = ([0] * figure.groups, total)
        if not figure.groups_mark.is_given:
            wanted, wanted_loose = [figure.each], total - figure.each
    elif show is not Show.COMPLETE and not figure.groups_mark.is_given:
        wanted, wanted_loose = [figure.each], total - figure.each
    if inside != wanted:
        yield f"has {_listed(inside)} counters in its rings, not {_listed(wanted)}"
    if loose != wanted_loose:
        yield f"has {loose} counters outside its rings, not {wanted_loose}"


def _listed(counts: Sequence[int]) -> str:
    return " + ".join(map(str, counts)) or "no"


def _scale(strokes: Sequence[Stroke], scale: MeasuringScale, show: Show) -> Iterator[str]:
    start, end = scale.labels[0].at, scale.labels[-1].at
    count = (len(scale.labels) - 1) * scale.divisions + 1
    try:
        found = reading_of(strokes, scale.shape, count)
    except NoMarks:
        yield f"does not have the {count} marks of its scale"
        return
    if show is not Show.COMPLETE and not scale.pointer_given:
        if found is not None:
            yield "shows a reading that is asked for"
        return
    wanted = (scale.at - start) / (end - start)
    if found is None and wanted == 0 and scale.shape in (ScaleShape.JUG, ScaleShape.RULER):
        # An empty jug, a thing of no length: there is nothing to be seen.
        return
    if found is None:
        yield "shows no reading on its scale"
    elif abs(found - float(wanted)) > _READING_SLACK:
        shown = float(start) + found * float(end - start)
        yield f"reads {shown:.2f} on its scale, not {float(scale.at):.2f}"


def _angles(strokes: Sequence[Stroke], figure: Angles) -> Iterator[str]:
    sizes = [wedge.degrees for wedge in figure.wedges]
    found = _corners(strokes) if figure.setting is AngleSetting.TRIANGLE else _fan(strokes, figure)
    wanted = [float(size) for size in sizes]
    if figure.setting is AngleSetting.TRIANGLE:
        found, wanted = sorted(found), sorted(wanted)
    if len(found) != len(wanted) or any(
        abs(one - other) > _TURN_SLACK for one, other in zip(found, wanted, strict=True)
    ):
        told = ", ".join(f"{size:.0f}" for size in found) or "no"
        yield f"has angles of {told} degrees, not {', '.join(f'{w:.0f}' for w in wanted)}"


def _fan(strokes: Sequence[Stroke], figure: Angles) -> list[float]:
    """The angles between neighbouring rays from the dot that most lines start at."""
    rays = max((lines_from(strokes, at) for at in dots(strokes)), key=len, default=[])
    turns = [turn for turn, _ in rays]
    if figure.setting is AngleSetting.LINE:
        turns = sorted([(turn + 90) % 360 for turn in turns])
        return [b - a for a, b in zip([0.0, *turns], [*turns, 180.0], strict=True)]
    turns = sorted(0.0 if turn > 360 - _TURN_SLACK else turn for turn in turns)
    return [b - a for a, b in zip(turns, [*turns[1:], 360.0], strict=True)] if turns else []


def _corners(strokes: Sequence[Stroke]) -> list[float]:
    """The angles of the largest closed outline of three corners."""
    outlines = [
        s.points[:3]
        for s in strokes
        if s.shape == "curve" and not s.filled and len(s.points) == 4 and is_closed(s)
    ]
    if not outlines:
        return []
    a, b, c = max(outlines, key=lambda points: dist(points[0], points[1]))
    found = []
    for at, one, other in ((a, b, c), (b, c, a), (c, a, b)):
        size = abs(turn_of(at, one) - turn_of(at, other))
        found.append(min(size, 360 - size))
    return found


def _joined(strokes: Sequence[Stroke], figure: JoinedPoints, show: Show) -> Iterator[str]:
    points = dots(strokes)
    if len(points) != len(figure.labels):
        yield f"has {len(points)} points, not {len(figure.labels)}"
        return
    pairs = {
        frozenset(i for i, point in enumerate(points) for end in s.points if dist(end, point) < 1)
        for s in strokes
        if s.shape == "line"
    }
    joined = [pair for pair in pairs if len(pair) == 2]
    count = len(points)
    wanted = len(list(combinations(range(count), 2))) if show is Show.COMPLETE else count - 1
    if len(joined) != wanted:
        yield f"has {len(joined)} lines between its points, not {wanted}"
