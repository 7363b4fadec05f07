"""What a home pack must say beside its sheets: letter, contents, and the answers told shortly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from typeset.arithmetic.lessons import SolvedExtension, SolvedLesson, SolvedWeek
from typeset.documents.layout import Layout
from typeset.proofing.booklet_text import lesson_passages
from typeset.proofing.expected import Expected, Part, Passage, passage, said
from typeset.proofing.sheet_text import mark_of, secrets_of
from typeset.reading.content import END


def home_title(solved: SolvedWeek, layout: Layout) -> str:
    """What the pack calls itself."""
    title, mark = said(layout, "home", "title", week=solved.week.title), mark_of(solved, layout)
    return f"{title} ({mark})" if mark else title


def lesson_line(lesson: SolvedLesson, layout: Layout) -> str:
    """What a lesson is called in contents and bookmarks."""
    names = {"day": lesson.lesson.day, "lesson": lesson.lesson.title}
    return said(layout, "home", "contents line", **names)


def contents_lines(
    solved: SolvedWeek, layout: Layout, pages: Sequence[int], answers: str
) -> tuple[str, ...]:
    """The lines of the contents with the numbers of these pages, that of the answers last."""
    lines = [lesson_line(each, layout) for each in solved.lessons]
    lines += [said(layout, "home", "answers")] if answers == END else []
    return tuple(
        f"{said(layout, 'home', 'contents page', page=str(page))} {line}"
        for page, line in zip(pages, lines, strict=False)
    )


def expect_front(
    solved: SolvedWeek, layout: Layout, pages: Sequence[int], answers: str
) -> Expected:
    """Letter and contents; the parts named there begin on these pages."""
    title = said(layout, "home", "title", week=solved.week.title)
    passages = [passage("the title", Part.TITLE, title), *_letter(solved, layout, answers)]
    passages.append(passage("the contents", Part.HEADING, said(layout, "home", "contents")))
    for line in contents_lines(solved, layout, pages, answers):
        passages.append(passage(f"the contents' line '{line}'", Part.TEXT, line))
    secrets = [each for lesson in solved.lessons for each in secrets_of(lesson)]
    return Expected(tuple(passages), _foot(solved, layout, "foot"), tuple(secrets))


def expect_home_answers(solved: SolvedWeek, layout: Layout) -> Expected:
    """The answers part, lesson after lesson."""
    passages = [
        passage("the title", Part.TITLE, said(layout, "home", "answers")),
        passage("the introduction", Part.TEXT, said(layout, "home", "answers about")),
    ]
    for lesson in solved.lessons:
        passages += lesson_passages(lesson, layout)
    return Expected(tuple(passages), _foot(solved, layout, "answers foot"))


def _foot(solved: SolvedWeek, layout: Layout, key: str) -> str:
    names = {"week": solved.week.title, "class": solved.week.class_name}
    return said(layout, "home", key, **names, version=mark_of(solved, layout))


def _letter(solved: SolvedWeek, layout: Layout, answers: str) -> Iterator[Passage]:
    """The letter's parts, marks of lists among their words."""
    names = {"week": solved.week.title, "class": solved.week.class_name, "answers": answers}
    names["aims"] = "\n".join(_aims(solved, layout))
    names["cautions"] = "\n".join(_cautions(solved, layout))
    text = said(layout, "home", "letter", **names)
    place, gathered = solved.week.place, ""
    for line in [*(each.strip() for each in text.split("\n")), ""]:
        if gathered and (not line or line.startswith(("# ", "- "))):
            yield passage(f"the letter at '{gathered[:30]}'", Part.TEXT, gathered, place)
            gathered = ""
        if line.startswith("# "):
            yield passage(f"the heading '{line[2:]}'", Part.HEADING, line[2:], place)
        elif line.startswith("- "):
            gathered = f"• {line[2:]}"
        else:
            gathered = f"{gathered} {line}".strip()


def _aims(solved: SolvedWeek, layout: Layout) -> Iterator[str]:
    for each in solved.lessons:
        names = {"day": each.lesson.day, "lesson": each.lesson.title, "aim": each.lesson.aim}
        yield said(layout, "home", "aim line", **names)


def _cautions(solved: SolvedWeek, layout: Layout) -> Iterator[str]:
    """Every caution that a lesson or an open task names, with where."""
    needed: dict[str, list[str]] = {}
    for each in solved.lessons:
        day = each.lesson.day
        throughout = {word.text for word in each.lesson.cautions}
        for word in throughout:
            told = said(layout, "home", "caution place", day=day, number="")
            needed.setdefault(word, []).append(told)
        for stage in each.stages:
            if isinstance(stage, SolvedExtension):
                for word in {word.text for word in stage.content.cautions} - throughout:
                    number = str(stage.number)
                    told = said(layout, "home", "caution place", day=day, number=number)
                    needed.setdefault(word, []).append(told)
    for word in layout.wording["cautions"]:
        if where := needed.get(word):
            several = f"{', '.join(where[:-1])} and {where[-1]}" if where[1:] else where[0]
            caution = said(layout, "cautions", word)
            yield said(layout, "home", "caution line", where=several, caution=caution)
