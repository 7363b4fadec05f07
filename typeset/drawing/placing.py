"""Where labels go: a one-dimensional optimum for a row, and rows on rows when one is too full.

A row keeps the order of the things that it names and moves labels as little as possible
(least squares under order and clearance: isotonic regression by pooling neighbours,
Ayer et al. 1955). What does not fit in one row goes to several; a leader then runs
through the nearer rows in a slot of its own, so leaders never cross.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain, islice, pairwise, permutations

from typeset.drawing.boxes import Point
from typeset.drawing.labels import Label
from typeset.errors import FitError

# White between neighbouring labels, in points; in a row at least this share of their height,
# which is nearly two word spaces: '0' and '20 km' must not read as '0 20 km'.
CLEAR_PT = 4.0
_CLEAR_SHARE = 0.5
# The slot that a leader takes between labels.
_SLOT_PT = 1.0
_FAN_LEAST_PT = 4.0
_FAN_MOST_PT = 16.0
# A leader that moves aside by this much should go up by one: still read as a leader.
_FAN_SLOPE = 0.4
# A label moved by less than this is read as standing at its anchor.
_NEAR_PT = 1.0
# All orders of up to four spans are tried, and as many of more.
_MOST_ORDERS = 24


def one_row(
    wanted: Sequence[float],
    widths: Sequence[float],
    low_pt: float,
    high_pt: float,
    clear_pt: float = CLEAR_PT,
) -> list[float] | None:
    """Centres nearest to the wanted ones, in their order, clear of each other, in low to high.

    None where the widths do not fit.
    """
    if not wanted:
        return []
    offsets = [0.0]
    for before, after in pairwise(widths):
        offsets.append(offsets[-1] + (before + after) / 2 + clear_pt)
    least = low_pt + widths[0] / 2
    most = high_pt - widths[-1] / 2 - offsets[-1]
    if least > most + 1e-6:
        return None
    pooled = _pooled([want - offset for want, offset in zip(wanted, offsets, strict=True)])
    return [
        min(max(value, least), most) + offset for value, offset in zip(pooled, offsets, strict=True)
    ]


def _pooled(values: Sequence[float]) -> list[float]:
    """The nearest rising sequence: neighbours in the wrong order share their mean."""
    pools: list[tuple[float, int]] = []
    for value in values:
        total, count = value, 1
        while pools and pools[-1][0] * count > total * pools[-1][1]:
            other_total, other_count = pools.pop()
            total, count = total + other_total, count + other_count
        pools.append((total, count))
    return [total / count for total, count in pools for _ in range(count)]


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a label goes: its centre, its near edge away from the base, and its leader.

    Distances from the base grow away from the thing that is named, up or down.
    """

    label: Label
    centre_pt: float
    near_pt: float
    leader: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Rows:
    """Labels in one or more rows on one side of a base line."""

    spots: tuple[Spot, ...]
    height_pt: float


def place_rows(
    anchors: Sequence[float],
    labels: Sequence[Label],
    low_pt: float,
    high_pt: float,
    always_lead: bool = False,
) -> Rows:
    """The lowest arrangement of the labels beside their anchors (which must rise).

    Raises FitError where a label alone is wider than the room.
    """
    found = [
        rows
        for count in range(1, len(labels) + 1)
        if (rows := _in_rows(anchors, labels, (low_pt, high_pt), count, always_lead)) is not None
    ]
    if labels and not found:
        widest = max(labels, key=lambda label: label.width_pt)
        raise FitError(
            f"the label '{widest.text}' is {widest.width_pt:.0f} pt wide and has "
            f"{high_pt - low_pt:.0f} pt; smaller type or a wider column would help"
        )
    return min(found, key=lambda rows: rows.height_pt, default=Rows((), 0.0))


def _in_rows(
    anchors: Sequence[float],
    labels: Sequence[Label],
    room: tuple[float, float],
    count: int,
    always_lead: bool,
) -> Rows | None:
    """Label i in row i mod count, nearest row first; leaders of farther rows in slots."""
    at = list(anchors)
    paths: list[list[Point]] = [[(x, 0.0)] for x in at]
    spots: dict[int, Spot] = {}
    height = 0.0
    clear = _clear_pt(labels)
    for row in range(count):
        members = [i for i in range(len(labels)) if i % count >= row]
        here = [i for i in members if i % count == row]
        widths = [labels[i].width_pt if i in here else _SLOT_PT for i in members]
        centres = one_row([at[i] for i in members], widths, *room, clear)
        if centres is None:
            return None
        moved_by = max(abs(x - at[i]) for i, x in zip(members, centres, strict=True))
        fan = _fan(moved_by, always_lead or count > 1)
        near, height = height + fan, height + fan + max(labels[i].height_pt for i in here)
        for i, x in zip(members, centres, strict=True):
            paths[i].append((x, near))
            at[i] = x
            if i in here:
                bare = fan < _FAN_LEAST_PT
                spots[i] = Spot(labels[i], x, near, () if bare else tuple(paths[i]))
            else:
                paths[i].append((x, height))
    return Rows(tuple(spots[i] for i in range(len(labels))), height)


def _clear_pt(labels: Sequence[Label]) -> float:
    """The white between labels in a row."""
    return max([CLEAR_PT, *(_CLEAR_SHARE * label.height_pt for label in labels)])


def _fan(moved_pt: float, lead: bool) -> float:
    """The height of the strip in which leaders slant; 2 pt of white where there are none."""
    if moved_pt <= _NEAR_PT and not lead:
        return 2.0
    return min(max(moved_pt * _FAN_SLOPE, _FAN_LEAST_PT), _FAN_MOST_PT)


@dataclass(frozen=True, slots=True)
class Span:
    """Something over start to end (a brace, a jump) with a label at its middle.

    `legs` says that it reaches down to the base at both its ends.
    """

    start_pt: float
    end_pt: float
    label: Label | None
    legs: bool = False

    @property
    def tip_pt(self) -> float:
        """The x of its middle."""
        return (self.start_pt + self.end_pt) / 2


@dataclass(frozen=True, slots=True)
class Level:
    """The level of a span (0 is nearest to the base) and the centre of its label."""

    level: int
    centre_pt: float


def place_levels(spans: Sequence[Span], low_pt: float, high_pt: float) -> list[Level]:
    """The level of each span, short ones near the base, and where its label stands.

    A label covers its span's middle. Raises FitError where a label is wider than the room
    or would stand in the way of a farther span's legs in every order that was tried.
    """
    shortest_first = sorted(
        range(len(spans)), key=lambda i: (spans[i].end_pt - spans[i].start_pt, i)
    )
    orders = islice(permutations(shortest_first), _MOST_ORDERS)
    narrow_first = sorted(shortest_first, key=lambda i: _label_width(spans[i]))
    for order in chain(orders, [narrow_first]):
        levels = _stacked(spans, order, (low_pt, high_pt))
        if levels is not None:
            return levels
    texts = ", ".join(f"'{span.label.text}'" for span in spans if span.label)
    raise FitError(
        f"the labels {texts} do not fit over {high_pt - low_pt:.0f} pt without touching; "
        "smaller type or a wider column would help"
    )


def _label_width(span: Span) -> float:
    return span.label.width_pt if span.label else 0.0


def _stacked(
    spans: Sequence[Span], order: Sequence[int], room: tuple[float, float]
) -> list[Level] | None:
    levels: list[list[int]] = []
    centres: dict[int, float] = {}
    for index in order:
        for depth in range(len(levels) + 1):
            members = [*levels[depth], index] if depth < len(levels) else [index]
            placed = _one_level(spans, members, room)
            if placed is None:
                continue
            if depth == len(levels):
                levels.append([])
            levels[depth] = members
            centres.update(placed)
            break
        else:
            return None
    depths = {i: depth for depth, members in enumerate(levels) for i in members}
    result = [Level(depths[i], centres[i]) for i in range(len(spans))]
    return None if _any_leg_crosses(spans, result) else result


def _one_level(
    spans: Sequence[Span], members: Sequence[int], room: tuple[float, float]
) -> dict[int, float] | None:
    """Label centres for spans on one level; None where spans overlap or a label leaves its tip."""
    ordered = sorted(members, key=lambda i: spans[i].tip_pt)
    for before, after in pairwise(ordered):
        if spans[before].end_pt > spans[after].start_pt + 0.01:
            return None
    named = [i for i in ordered if spans[i].label is not None]
    widths = [_label_width(spans[i]) for i in named]
    clear = _clear_pt([label for i in named if (label := spans[i].label) is not None])
    centres = one_row([spans[i].tip_pt for i in named], widths, *room, clear)
    if centres is None:
        return None
    for i, centre, width in zip(named, centres, widths, strict=True):
        at_edge = centre - width / 2 <= room[0] + 0.01 or centre + width / 2 >= room[1] - 0.01
        reach = width / 2 + 0.5 if at_edge else max(width / 2 - 2.0, 0.5)
        if abs(centre - spans[i].tip_pt) > reach:
            return None
    return dict(zip(named, centres, strict=True)) | {
        i: spans[i].tip_pt for i in ordered if spans[i].label is None
    }


def _any_leg_crosses(spans: Sequence[Span], levels: Sequence[Level]) -> bool:
    return any(
        _cuts(far, near, levels[j].centre_pt)
        for i, far in enumerate(spans)
        for j, near in enumerate(spans)
        if far.legs and levels[i].level > levels[j].level
    )


def _cuts(far: Span, near: Span, centre_pt: float) -> bool:
    half = _label_width(near) / 2 + 1.5
    return near.label is not None and any(
        abs(x - centre_pt) < half for x in (far.start_pt, far.end_pt)
    )
