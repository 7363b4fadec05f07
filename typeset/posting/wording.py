"""What the messages say: two templates, sandboxed and checked before anything is written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from jinja2 import StrictUndefined, Template, TemplateError, TemplateSyntaxError, meta, nodes
from jinja2.sandbox import ImmutableSandboxedEnvironment

from typeset.errors import Complaint, ContentError, LayoutError, OutputError, Place
from typeset.reading.complaints import nearest
from typeset.reading.text_file import decoded, read_bytes
from typeset.reading.tree import Scalar

TEXT_FILE, HTML_FILE = "message.txt", "message.html"
# The names that the two templates can be given.
NAMES = ("pupil", "week", "class", "sender", "answers", "file")
# A subject is seen by whoever looks at a phone, so no child's name stands in it.
SUBJECT_NAMES = ("week", "class")
USUAL_SUBJECT = "Maths at home: {{ week }}"
# Longer subjects are cut off where they are shown (common practice, no source).
_LONGEST_SUBJECT = 120
_PLAIN = ImmutableSandboxedEnvironment(undefined=StrictUndefined, autoescape=False)
_HTML = ImmutableSandboxedEnvironment(undefined=StrictUndefined, autoescape=True)


@dataclass(frozen=True, slots=True)
class Wording:
    """The templates of a message."""

    subject: Template
    text: Template
    html: Template

    def said(self, template: Template, names: Mapping[str, str]) -> str:
        """The template with its names filled in. Raises LayoutError where it fails all the same."""
        try:
            return template.render(names)
        except (TemplateError, ArithmeticError, TypeError, ValueError) as error:
            raise LayoutError(f"the wording of the message fails: {error}") from error


def read_wording(folders: Sequence[Path], subject: Scalar | None, week_file: Path) -> Wording:
    """The templates, each from the first folder that has it, and the subject.

    Raises ContentError with every complaint about them.
    """
    complaints: list[Complaint] = []
    typed = subject or Scalar(USUAL_SUBJECT, Place(week_file, 1, 1))
    if len(typed.text) > _LONGEST_SUBJECT:
        problem = f"the subject has more than {_LONGEST_SUBJECT} characters"
        complaints.append(Complaint(typed.place, problem, "shorten it"))
    if not typed.text.isprintable():
        problem = "the subject holds a line break or another character that is not seen"
        complaints.append(Complaint(typed.place, problem, "type it anew on one line"))
    text, html = (_source(folders, name) for name in (TEXT_FILE, HTML_FILE))
    for source, names in ((typed, SUBJECT_NAMES), (text, NAMES), (html, NAMES)):
        complaints += _amiss(source, names)
    if complaints:
        raise ContentError(complaints)
    return Wording(
        _PLAIN.from_string(typed.text), _PLAIN.from_string(text.text), _HTML.from_string(html.text)
    )


def _source(folders: Sequence[Path], name: str) -> Scalar:
    file = next((folder / name for folder in folders if (folder / name).is_file()), None)
    if file is None:
        raise OutputError(f"there is no file {name} among the layouts")
    return Scalar(decoded(read_bytes(file), file), Place(file, 1, 1))


def _amiss(source: Scalar, names: Sequence[str]) -> list[Complaint]:
    """What is wrong with a template; lines count from where its text begins."""
    try:
        parsed = _PLAIN.parse(source.text)
    except TemplateSyntaxError as error:
        why = (error.message or "").split(". ")[0].rstrip(".").lower()
        place = _at(source, error.lineno)
        return [Complaint(place, f"this cannot be read ({why})", "write names as {{ name }}")]
    doing = next(parsed.find_all((nodes.Getattr, nodes.Getitem, nodes.Call)), None)
    if doing is not None:
        problem = "the wording does more than name things"
        return [Complaint(_at(source, doing.lineno), problem, "write names as {{ name }}")]
    unknown = sorted(meta.find_undeclared_variables(parsed) - set(names))
    return [
        Complaint(
            _at(source, _line_of(parsed, name)), f"unknown name '{name}'", nearest(name, names)
        )
        for name in unknown
    ]


def _line_of(parsed: nodes.Template, name: str) -> int:
    return next((n.lineno for n in parsed.find_all(nodes.Name) if n.name == name), 1)


def _at(source: Scalar, line: int) -> Place:
    return Place(source.place.file, source.place.line + line - 1, 1)
