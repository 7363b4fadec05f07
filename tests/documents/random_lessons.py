"""Random lessons, written as a teacher types them: any problem, any room, any layout.

The problems are the examples of every family (tests/arithmetic/examples) and, for numbers of
up to nine digits and ratios up to 1 : 19, patterns of our own. Stories are lengthened to as
many as 120 words by words of a harbour, some of them of 40 letters, accented or in quotation
marks. A seed gives the same lesson every time.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from copy import deepcopy
from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, TypeAlias

import yaml

from typeset.arithmetic.figures import (
    ClockFace,
    ClockFaces,
    DotArray,
    Figure,
    Mark,
    MeasuringScale,
    Moment,
    ScaleLabel,
    ScaleShape,
    TimeLine,
    TimeRow,
)
from typeset.documents.layout_files import layout_names
from typeset.quantities.inline import words
from typeset.reading.content import VERSIONS

Typed: TypeAlias = dict[str, Any]
EXAMPLES = Path(__file__).parents[1] / "arithmetic" / "examples"
# The layouts that a sheet of ordinary content ought to fit.
ORDINARY = ("standard", "low-glare", "large-print-18", "large-print-24")
SPACES = ("line", "working", "lines", "squares", "bar model", "box", "none")
PUPILS = ("Asha", "Tomasz", "Imogen", "Kofi", "Leila", "Rhys", "Yuki", "Odette", "Femi", "Idris")
_PAPERS = ("A3", "A4", "A5", "A6", "B4", "B5", "B6")
# Numbers of up to nine digits: some keep the answers small, others do not.
_DIGITS = (1, 2, 2, 3, 4, 6, 9)
_WORDS = """
    the a I of in to quay wall gulls terns harbour wind rope ropes kite lantern lighthouse tide
    ferry ferries market stall chowder chandlery mackerel morning early before supper again and
    but so blows hauls mends waits far out beyond pier jetty on board slowly quietly then
"""
_PLAIN = _WORDS.split()
_ODD = (
    "‘Ahoy!’",
    "“Steady,”",
    "Zoë’s",
    "naïve",
    "façade",
    "Łódź",
    "ferrymen’s",
    "o’clock",
    "(at-the-breakwater)",
    "lighthouse-keeper’s",
    "– and",
    "mother-of-pearl",
)
_LONG = "harbourmastersropewalkfestivalcommittees"
# Characters that the typeface lacks.
_MISSING = ("船", "☃", "\U0001f6a2")


def written(folder: Path, seed: int) -> str:
    """A week of one lesson in the folder, and the version of it to make."""
    rng = random.Random(seed)
    files = {"week": _week(rng), "tuesday": _lesson(rng)}
    for name, typed in files.items():
        (folder / f"{name}.yaml").write_text(_as_yaml(typed), encoding="utf-8")
    if files["week"]["layout"] == "odd":
        (folder / "layouts").mkdir()
        odd = folder / "layouts" / "odd.yaml"
        odd.write_text(yaml.safe_dump(_layout(rng), sort_keys=False), encoding="utf-8")
    return rng.choices(VERSIONS, (1, 24, 1))[0]


def _as_yaml(typed: Mapping[str, Any]) -> str:
    """With every value in quotation marks: what was read as text is text again."""
    return yaml.dump(typed, default_style='"', width=10_000, sort_keys=False, allow_unicode=True)


def _week(rng: random.Random) -> Typed:
    # Every second week in our own layouts, of which the usual one is the most used.
    names = (*layout_names(), "standard", *("odd" for _ in range(6)))
    return {
        "week": "The gale at the quay",
        "class": "Tern class",
        "layout": rng.choice(names),
        "seed": str(rng.randrange(1, 9)),
        "lessons": ["tuesday"],
    }


def _lesson(rng: random.Random) -> Typed:
    kinds = [name for name in _STAGES if rng.random() < 0.6] or ["practise"]
    # Some stages twice; one open task is enough for anybody.
    kinds += [name for name in kinds if name != "extension" and rng.random() < 0.1]
    rng.shuffle(kinds)
    return {
        "lesson": " ".join(_padding(rng, rng.randrange(1, 9))),
        "day": "Tuesday",
        "sides": str(rng.choice([1, 2, 2, 2, 3, 3, 4, 8])),
        "aim": f"I can {' '.join(_padding(rng, rng.randrange(2, 25)))}.",
        "stages": [{kind: _STAGES[kind](rng)} for kind in kinds],
    }


def _recap(rng: random.Random) -> Typed:
    return {"from": "last week", "problems": _problems(rng, 1, 3)}


def _spot(rng: random.Random) -> Typed:
    """A ratio whose mistake shows with any numbers of this kind."""
    small = rng.randrange(1, 6)
    large = small + rng.randrange(2, 15)
    problem = _ratio(rng, small, large, "difference")
    mistake = "difference taken as one part"
    return {
        "pupil": rng.choice(PUPILS),
        "mistake": mistake,
        "problem": _furnished(rng, problem, sorts=False),
    }


def _sort(rng: random.Random) -> Typed:
    """A problem that multiplies and one that does not, then any others."""
    count = rng.randrange(2, 40)
    multiplies = {
        "structure": "equal groups",
        "groups": f"{count} boats",
        "each": f"{rng.randrange(2, 30)} ropes",
        "story": "{groups} carry {each} each. How many ropes are there?",
    }
    adds = {
        "structure": "change",
        "start": f"{count} terns",
        "increase": f"{rng.randrange(2, 60)} terns",
        "find": "end",
        "story": "{start} sit on the rail, and {increase} come. How many terns are there now?",
    }
    problems = [_furnished(rng, each, sorts=True) for each in (multiplies, adds)]
    problems += [_furnished(rng, _any_problem(rng), True) for _ in range(rng.randrange(3))]
    rng.shuffle(problems)
    return {"problems": problems}


def _practise(rng: random.Random) -> list[Typed]:
    return [{"set": letter, "problems": _problems(rng, 1, 4)} for letter in "ABC"[: _few(rng)]]


def _extension(rng: random.Random) -> Typed:
    typed: Typed = {
        "title": " ".join(_padding(rng, rng.randrange(1, 8))),
        "story": _lengthened(rng, "What could the harbour master do?"),
        "lines": str(rng.randrange(1, 13)),
    }
    if rng.random() < 0.5:
        typed["space"] = rng.choice([each for each in SPACES if each != "box"])
    return typed


_STAGES = {
    "recap": _recap,
    "spot the mistake": _spot,
    "sort": _sort,
    "practise": _practise,
    "extension": _extension,
}


def _few(rng: random.Random) -> int:
    return rng.choice([1, 1, 2, 3])


def _problems(rng: random.Random, least: int, most: int) -> list[Typed]:
    count = rng.randrange(least, most + 1)
    return [_furnished(rng, _any_problem(rng), sorts=False) for _ in range(count)]


def _any_problem(rng: random.Random) -> Typed:
    if rng.random() < 0.3:
        return _pattern(rng)
    return deepcopy(rng.choice(_examples()))


def _furnished(rng: random.Random, problem: Typed, sorts: bool) -> Typed:
    """The problem with room, model, hint or a sentence begun, and a longer story."""
    # A sorted problem is answered in tick boxes whatever it asks for.
    typed = problem | {"story": _lengthened(rng, problem["story"])}
    if not sorts and rng.random() < 0.6:
        typed["space"] = rng.choice(SPACES)
    if not sorts and rng.random() < 0.3:
        typed["lines"] = str(rng.randrange(1, 13))
    if rng.random() < 0.5:
        typed["model"] = "yes"
    if not sorts and rng.random() < 0.15:
        typed["starter"] = " ".join(_padding(rng, rng.randrange(1, 6)))
    return typed


@cache
def _examples() -> tuple[Typed, ...]:
    found: list[Typed] = []
    for file in sorted(EXAMPLES.glob("*.yaml")):
        read = yaml.load(file.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
        found.extend(read if isinstance(read, list) else [read])
    return tuple(found)


def _number(rng: random.Random) -> int:
    digits = rng.choice(_DIGITS)
    return rng.randrange(max(2, 10 ** (digits - 1)), 10**digits)


def _grouped(number: int) -> str:
    return f"{number:,}"


def _pattern(rng: random.Random) -> Typed:
    """A problem with numbers of any size."""
    unit = rng.choice(["floats", "gulls", "m", "kg", "litres", "lighthouse-keepers"])
    first, second = _number(rng), _number(rng)
    match rng.randrange(9):
        case 0:
            return {
                "structure": "equal groups",
                "groups": f"{_grouped(first)} crates",
                "each": f"{_grouped(second)} {unit}",
                "story": "{groups}, {each} each?",
            }
        case 1:
            return {
                "structure": "part whole",
                "parts": {"old": f"{_grouped(first)} {unit}", "new": f"{_grouped(second)} {unit}"},
                "story": "{old} and {new}: how much is that in all?",
            }
        case 2:
            return {
                "structure": "comparison",
                "smaller": f"{_grouped(first)} {unit}",
                "difference": f"{_grouped(second)} {unit}",
                "find": "larger",
                "story": "Nell has {smaller}. Rhys has {difference} more. How much has Rhys?",
            }
        case 3:
            return {
                "structure": "times as many",
                "smaller": f"{_grouped(first)} {unit}",
                "times": str(rng.randrange(2, 20)),
                "find": "larger",
                "story": "Marta hauls {smaller}, Kofi {times} times as much. How much is that?",
            }
        case 4:
            return {
                "structure": "sharing",
                "total": f"{_grouped(first * 7)} m",
                "groups": "7 boats",
                "story": "Share {total} of rope between {groups}.",
            }
        case 5:
            # A story of one word.
            return {
                "structure": "missing number",
                "sentence": f"{first} + _ = {first + second}",
                "story": "{sentence}",
            }
        case 6:
            return {
                "structure": "equal groups",
                "groups": f"{rng.randrange(2, 9)}..12 boats",
                "each": f"12..{rng.randrange(20, 99)} {unit}",
                "such that": "the answer is at least 60",
                "story": "{groups} haul {each} each. How much is that in all?",
            }
        case _:
            return _ratio(rng, 1, rng.randrange(2, 20), rng.choice(["whole", "difference"]))


def _ratio(rng: random.Random, small: int, large: int, known: str) -> Typed:
    parts = small + large if known == "whole" else large - small
    amount = _grouped(parts * rng.choice([1, 2, 7, 12, 40, 2_500_000]))
    told = "There are {whole} in all" if known == "whole" else "There are {difference} more kites"
    return {
        "structure": "ratio",
        "parts": {"ropes": str(small), "kites": str(large)},
        "known": {known: amount},
        "find": rng.choice(["kites", "ropes"]),
        "story": f"For every {{ropes}} ropes there are {{kites}} kites. {told}. What is asked?",
    }


def _lengthened(rng: random.Random, story: str) -> str:
    """The story after so many more words that it has up to 120."""
    share = rng.random()
    count = 0 if share < 0.5 else rng.randrange(1, 30) if share < 0.85 else rng.randrange(30, 120)
    count = min(count, 120 - len(story.split()))
    if count <= 0:
        return story
    more = " ".join(_padding(rng, count))
    return f"{more[:1].upper()}{more[1:]}. {story}"


def _padding(rng: random.Random, count: int) -> Iterator[str]:
    for _ in range(count):
        chance = rng.random()
        if chance < 0.0003:
            yield rng.choice(_MISSING)
        elif chance < 0.003:
            yield _LONG
        elif chance < 0.06:
            yield rng.choice(_ODD)
        else:
            yield rng.choice(_PLAIN)


def _layout(rng: random.Random) -> Typed:
    """A layout of a teacher's own, within what a layout may say."""
    largest = rng.choice([10, 12, 13, 14, 14, 16, 18, 24, 30])
    return {
        "layout": "odd",
        "like": "standard",
        "paper": rng.choice(_PAPERS),
        "orientation": rng.choice(["portrait", "landscape"]),
        "copies side by side": rng.choice([1, 1, 1, 2]),
        "margins": {
            side: f"{rng.randrange(10, 26)} mm" for side in ("top", "bottom", "left", "right")
        },
        "sides": rng.choice(["as asked", "as needed"]),
        "type size": {
            "largest": largest,
            "smallest": max(9, largest - rng.choice([0, 1, 2, 4, 8])),
            "step": rng.choice([0.5, 1, 2]),
        },
        "leading": rng.choice([1.15, 1.25, 1.35, 1.5, 1.65, 2.0]),
        "longest line": rng.choice(["none", "30 characters", "65 characters", "90 characters"]),
        "paper tint": rng.choice(["none", "none", [255, 245, 225], [240, 250, 255]]),
        "answer spaces": {
            "line": f"{rng.randrange(6, 16)} mm",
            "ruled": f"{rng.randrange(6, 16)} mm",
            "square": f"{rng.randrange(5, 16)} mm",
            "working lines": rng.randrange(1, 5),
            "bar model": f"{rng.randrange(12, 45)} mm",
        },
        "sheet": {part: rng.choice(["yes", "no"]) for part in ("name and date", "aim")},
    }


def unused_figure(rng: random.Random) -> Figure:
    """A figure of a kind that no family's first step shows as yet."""
    count = rng.randrange(1, 13)
    mark = Mark(words(f"{_grouped(_number(rng))} m"), rng.random() < 0.5)
    match rng.randrange(4):
        case 0:
            down, across = Mark(words(str(count))), Mark(words(str(count + 7)))
            return DotArray(count, count + 7, down, across, mark, "An array of dots")
        case 1:
            face = ClockFace(Fraction(rng.randrange(720)), mark, "start", rng.random() < 0.5)
            return ClockFaces((face,) if count < 6 else (face, face), mark, "A clock face")
        case 2:
            labels = tuple(ScaleLabel(Fraction(n), words(str(n))) for n in (0, 10, 20))
            shape = rng.choice(list(ScaleShape))
            at = Fraction(rng.randrange(21))
            return MeasuringScale(shape, labels, 5, at, mark, "kg", True, "A scale")
        case _:
            moments = (Moment("at first", Fraction(0)), Moment("later", Fraction(count)))
            rows = (TimeRow("Petrel", (mark, mark)), TimeRow("Gannet", (mark, None)))
            return TimeLine(moments, *rows, Mark(words("4 m")), "A time line")
