"""The stages of a lesson: recap, spot the mistake, sort, practise, extension."""

from __future__ import annotations

import re
from collections.abc import Callable

from typeset.errors import Complaint
from typeset.reading.complaints import likely, nearest, quoted, shown
from typeset.reading.content import (
    LAST_WEEK,
    Extension,
    Practise,
    PractiseSet,
    ProblemContent,
    Recap,
    Sort,
    SpotTheMistake,
    Stage,
)
from typeset.reading.keys import Keys, items_of, opened, plain_key
from typeset.reading.problems import MOST_LINES, Desk, read_problem, read_problems, read_space
from typeset.reading.tree import Node, Scalar

# A look back is a warm-up; more than this is a lesson.
MOST_AGAIN = 12
EXTENSION_FIELDS = ("quantities", "steps", "find")
_NAME_OF_PUPIL = re.compile(r"[^\W\d_][^\W\d_'’ -]{0,29}")


def read_stage(node: Node, desk: Desk) -> Stage | None:
    """One item of `stages`: a stage's name with what belongs to it; None where it is none."""
    item = opened(node, "a stage", desk.complaints)
    if item is None or _is_out_of_line(item):
        return None
    stages: list[Stage | None] = []
    for entry in item.node:
        reader = _READERS.get(plain_key(entry.key).lower())
        if reader is None:
            problem = f"unknown stage {shown(entry.key)}"
            remedy = nearest(entry.key, tuple(_READERS))
            desk.complaints.append(Complaint(entry.place, problem, remedy))
        else:
            stages.append(reader(entry.value, desk))
    if len(item.node.entries) > 1 and stages:
        remedy = "begin each with '- ' on a line of its own"
        desk.complaints.append(Complaint(item.node.place, "two stages in one item", remedy))
    return stages[0] if stages else None


def _is_out_of_line(item: Keys) -> bool:
    """Complain of a stage whose keys stand straight below its name instead of further in."""
    first, *others = item.node.entries or (None,)
    if first is None or not others or first.value != Scalar("", first.value.place):
        return False
    problem = f"what belongs to '{first.key}' stands in line with it"
    remedy = f"move the lines below '{first.key}:' further in"
    item.complaints.append(Complaint(others[0].place, problem, remedy))
    return True


def _read_recap(node: Node, desk: Desk) -> Recap | None:
    keys = opened(node, "'recap'", desk.complaints)
    if keys is None:
        return None
    if keys.node.get("count"):
        keys.expect(("from", "count"), ("problems",))
    else:
        keys.expect(("from", "problems"), ("count",))
    names = keys.texts("from")
    for name in names:
        _check_is_earlier(name, desk)
    looks_back_at = tuple(name.text for name in names)
    problems = read_problems(keys, desk) if keys.node.get("problems") else ()
    return Recap(looks_back_at, problems, keys.node.place, _read_count(keys, names))


def _read_count(keys: Keys, names: tuple[Scalar, ...]) -> int:
    """How many problems come again with new numbers; last week's cannot, for want of a file."""
    count = keys.whole_number("count", 1, MOST_AGAIN)
    if count is None:
        return 0
    if all(name.text == LAST_WEEK for name in names):
        problem = f"no problems can be drawn from '{LAST_WEEK}', which has no file here"
        remedy = "write them under 'problems:'"
        keys.complaints.append(Complaint(keys.place("count"), problem, remedy))
    return count


def _check_is_earlier(name: Scalar, desk: Desk) -> None:
    if desk.earlier is None or name.text in (*desk.earlier, LAST_WEEK):
        return
    problem = f"{shown(name.text)} is no earlier lesson of this week"
    if not desk.earlier:
        remedy = f"the first lesson can look back at '{LAST_WEEK}'"
    elif likely(name.text, desk.earlier):
        remedy = nearest(name.text, desk.earlier)
    else:
        remedy = f"before '{desk.lesson}' there is {quoted(desk.earlier)}"
    desk.complaints.append(Complaint(name.place, problem, remedy))


def _read_spot_the_mistake(node: Node, desk: Desk) -> SpotTheMistake | None:
    keys = opened(node, "'spot the mistake'", desk.complaints)
    if keys is None:
        return None
    keys.expect(("pupil", "mistake", "problem"))
    pupil = keys.text("pupil")
    if pupil and not _NAME_OF_PUPIL.fullmatch(pupil):
        problem = f"{shown(pupil)} cannot be a pupil's name"
        remedy = "write a first name of up to 30 letters"
        desk.complaints.append(Complaint(keys.place("pupil"), problem, remedy))
    problem_node = keys.node.get("problem")
    read = read_problem(problem_node, desk) if problem_node else None
    mistake, place = keys.text("mistake"), keys.place("mistake")
    return SpotTheMistake(read, mistake, place, pupil, keys.node.place) if read else None


def _read_sort(node: Node, desk: Desk) -> Sort | None:
    keys = opened(node, "'sort'", desk.complaints)
    if keys is None:
        return None
    keys.expect(("problems",))
    return Sort(read_problems(keys, desk), keys.node.place)


def _read_practise(node: Node, desk: Desk) -> Practise:
    items = items_of(node, "'practise'", desk.complaints)
    sets = [each for item in items if (each := _read_set(item, desk))]
    for number, each in enumerate(sets):
        if each.name in {other.name for other in sets[:number]}:
            problem = f"the set {shown(each.name)} stands twice"
            desk.complaints.append(Complaint(each.place, problem, "give one another letter"))
    return Practise(tuple(sets), node.place)


def _read_set(node: Node, desk: Desk) -> PractiseSet | None:
    keys = opened(node, "a set of 'practise'", desk.complaints)
    if keys is None:
        return None
    if keys.node.get("structure"):
        problem = "a problem stands where a set of problems is wanted"
        remedy = "write '- set: A' with 'problems:' and put the problem below that"
        desk.complaints.append(Complaint(keys.node.place, problem, remedy))
        return None
    keys.expect(("set", "problems"))
    return PractiseSet(keys.text("set"), read_problems(keys, desk), keys.node.place)


def _read_extension(node: Node, desk: Desk) -> Extension | None:
    keys = opened(node, "'extension'", desk.complaints)
    if keys is None:
        return None
    optional = ("hints", "look for", "space", "lines", "id", "cautions", *EXTENSION_FIELDS)
    keys.expect(("title", "story"), optional)
    return Extension(
        id=desk.take_id(keys, f"{desk.lesson}-extension"),
        title=keys.text("title"),
        story=keys.story("story"),
        fields=keys.node.only(EXTENSION_FIELDS),
        hints=keys.stories("hints"),
        look_for=keys.stories("look for"),
        nouns=desk.nouns,
        place=keys.node.place,
        space=read_space(keys),
        lines=keys.whole_number("lines", 1, MOST_LINES),
        cautions=read_cautions(keys),
    )


def read_cautions(keys: Keys) -> tuple[Scalar, ...]:
    """What care is needed with, one word or a list; which words there are the layout says."""
    return keys.texts("cautions") if keys.node.get("cautions") else ()


_READERS: dict[str, Callable[[Node, Desk], Stage | None]] = {
    "recap": _read_recap,
    "spot the mistake": _read_spot_the_mistake,
    "sort": _read_sort,
    "practise": _read_practise,
    "extension": _read_extension,
}


def problems_of(stage: Stage) -> tuple[ProblemContent, ...]:
    """The problems of a stage in the order of the page; an extension has none."""
    match stage:
        case Recap() | Sort():
            return stage.problems
        case SpotTheMistake():
            return (stage.problem,)
        case Practise():
            return tuple(problem for each in stage.sets for problem in each.problems)
        case Extension():
            return ()
