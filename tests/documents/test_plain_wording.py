"""What is taken as right at a glance, Jinja finds right too."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from jinja2 import Environment, TemplateSyntaxError, meta, nodes

from typeset.documents.layout_files import layout_names, layouts_folder, read_layout
from typeset.documents.plain_wording import only_names
from typeset.documents.wording import KNOWN

NAMES = ("day", "version", "week")
PIECES = [
    *("{{ day }}", "{{ week }}", "{{ other }}", "{{day}}", "{{ day.x }}", "{{ day | upper }}"),
    *("{% if day %}", "{% if version == 'core' %}", '{% if week == "1" %}', "{% if other %}"),
    *("{% elif day %}", "{% elif day == '2' %}", "{% else %}", "{% endif %}", "{% endif %}"),
    *(
        "{% for day in week %}",
        "{# day #}",
        "{",
        "}",
        "{{",
        "}}",
        "%}",
        "{%",
        "text",
        " ",
        "'",
        "\n",
    ),
]


def is_right(text: str) -> bool:
    """Whether Jinja reads the text, in which only known names are named, and nothing more."""
    try:
        parsed = Environment().parse(text)
    except TemplateSyntaxError:
        return False
    more = any(parsed.find_all((nodes.Getattr, nodes.Getitem, nodes.Call)))
    return not more and meta.find_undeclared_variables(parsed) <= set(NAMES)


@settings(max_examples=1000)
@given(st.lists(st.sampled_from(PIECES), max_size=9).map("".join))
def test_what_is_right_at_a_glance_is_right_for_jinja(text: str) -> None:
    assert is_right(text) or not only_names(text, NAMES)


@pytest.mark.parametrize("name", layout_names())
def test_our_own_layouts_are_right_at_a_glance(name: str) -> None:
    wording = read_layout(layouts_folder() / f"{name}.yaml").wording
    for group, texts in wording.items():
        for key, text in texts.items():
            assert only_names(text, KNOWN[group].get(key, frozenset())), f"{group}: {key}"


@pytest.mark.parametrize(
    "text",
    [
        *("{{ other }}", "{{{ day }}", "{{ day }}}", "{% if day %}", "{% endif %}", "{% else %}"),
        "{% if day %}{% else %}{% else %}{% endif %}",
        "{% if day %}{% else %}{% elif week %}{% endif %}",
        "{% if day == 'it\\'s' %}{% endif %}",
    ],
)
def test_what_is_in_doubt_is_left_to_jinja(text: str) -> None:
    assert not only_names(text, NAMES)


def test_no_known_name_is_a_word_of_jinja() -> None:
    words = {"and", "or", "not", "in", "is", "if", "else", "true", "false", "none"}
    known = {name for group in KNOWN.values() for names in group.values() for name in names}
    assert not known & words
