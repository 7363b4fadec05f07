"""Faults in the fields of a sheet: what is filled in, lost, doubled, moved, or runs."""

from __future__ import annotations

import random
from typing import Any

from pypdf import PdfWriter
from pypdf.generic import (
    ArrayObject,
    DictionaryObject,
    FloatObject,
    NameObject,
    NumberObject,
    TextStringObject,
)

from tests.proofing.faults import Theme
from tests.proofing.originals import (
    COSTS,
    FILLED,
    PACK_END,
    PACK_NONE,
    PACK_SHEETS,
    TUESDAY,
    WEDNESDAY,
)
from tests.proofing.planting import stream_object

FIELDS = Theme("Fields to type in")
SHEET = (FILLED,)
WITH_FIELDS = (FILLED, PACK_END, PACK_SHEETS, PACK_NONE)


def fields(writer: PdfWriter, kind: str = "/Tx") -> list[Any]:
    """The fields of this kind in the order of the pages."""
    held = [each.get_object() for page in writer.pages for each in page.get("/Annots", ())]
    return [each for each in held if each.get("/FT") == kind]


def answer(writer: PdfWriter) -> Any:
    """The first answer on a rule."""
    return next(each for each in fields(writer) if each["/T"] == "answer")


def root(writer: PdfWriter) -> Any:
    """The catalogue. pypdf's types say little of what a file may hold."""
    return writer._root_object


def some_answer(writer: PdfWriter, rng: random.Random) -> Any:
    """One of the answers on a rule."""
    return rng.choice([each for each in fields(writer) if str(each["/T"]).startswith("answer")])


def lying_on(page: Any) -> Any:
    """What lies over a page."""
    return page.get("/Annots", ArrayObject())


def say(holder: Any, key: str, text: str) -> None:
    holder[NameObject(key)] = TextStringObject(text)


def moved(field: Any, right: float = 0.0, up: float = 0.0) -> None:
    x1, y1, x2, y2 = map(float, field["/Rect"])
    edges = (x1 + right, y1 + up, x2 + right, y2 + up)
    field[NameObject("/Rect")] = ArrayObject(FloatObject(each) for each in edges)


def action(writer: PdfWriter) -> Any:
    made: Any = {NameObject("/S"): NameObject("/JavaScript")}
    made[NameObject("/JS")] = TextStringObject("app.alert(1)")
    return writer._add_object(DictionaryObject(made))


@FIELDS.filed(WITH_FIELDS, told="holds /V")
def a_value_filled_in(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(fields(writer)), "/V", "60")


@FIELDS.filed(WITH_FIELDS, told="holds /DV")
def a_value_to_go_back_to(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(fields(writer)), "/DV", "60")


@FIELDS.filed(WITH_FIELDS, told=": 60'")
def an_answer_in_a_tooltip(writer: PdfWriter, rng: random.Random) -> None:
    field = some_answer(writer, rng)
    say(field, "/TU", f"{field['/TU']}: 60")


@FIELDS.filed(WITH_FIELDS, told="holds /TM")
def an_answer_in_a_name_for_export(writer: PdfWriter, rng: random.Random) -> None:
    say(some_answer(writer, rng), "/TM", "60")


@FIELDS.filed(WITH_FIELDS, told="holds /MK")
def an_answer_in_a_caption(writer: PdfWriter, rng: random.Random) -> None:
    caption = {NameObject("/CA"): TextStringObject("60")}
    some_answer(writer, rng)[NameObject("/MK")] = DictionaryObject(caption)


@FIELDS.filed(WITH_FIELDS, told="shows something already")
def an_answer_in_an_appearance(writer: PdfWriter, rng: random.Random) -> None:
    stream = some_answer(writer, rng)["/AP"].raw_get("/N").get_object()
    stream.set_data(b"/Tx BMC BT /Typed 12 Tf 2 4 Td (60) Tj ET EMC")


@FIELDS.filed(SHEET, told="shows something already")
def a_tick_that_shows_before_it_is_ticked(writer: PdfWriter, rng: random.Random) -> None:
    field = rng.choice(fields(writer, "/Btn"))
    field["/AP"]["/N"].raw_get("/Off").get_object().set_data(b"q 0 0 m 9 9 l S Q")


@FIELDS.filed(SHEET, told="is ticked already")
def a_box_ticked(writer: PdfWriter, rng: random.Random) -> None:
    field = rng.choice(fields(writer, "/Btn"))
    field[NameObject("/V")] = field[NameObject("/AS")] = NameObject("/Ticked")


@FIELDS.filed(WITH_FIELDS, told="shares its appearance")
def two_fields_of_one_appearance(writer: PdfWriter, rng: random.Random) -> None:
    one, other = rng.sample(fields(writer), 2)
    other["/AP"][NameObject("/N")] = one["/AP"].raw_get("/N")


@FIELDS.filed(WITH_FIELDS, told=" should be")
def a_field_lost(writer: PdfWriter, rng: random.Random) -> None:
    lost = rng.choice(fields(writer))
    _remove(lying_on_page_of(writer, lost), lost)
    _remove(lost["/Parent"]["/Kids"], lost)


def lying_on_page_of(writer: PdfWriter, field: Any) -> Any:
    """What lies on the page of a field."""
    every = (lying_on(page) for page in writer.pages)
    return next(each for each in every if any(a.get_object() is field for a in each))


def _remove(held: Any, field: Any) -> None:
    del held[next(index for index, each in enumerate(held) if each.get_object() is field)]


@FIELDS.filed(WITH_FIELDS, told="lies on no page")
def a_field_that_no_page_shows(writer: PdfWriter, rng: random.Random) -> None:
    lost = rng.choice(fields(writer))
    _remove(lying_on_page_of(writer, lost), lost)


@FIELDS.filed(WITH_FIELDS, told="where the field '")
def two_fields_of_one_name(writer: PdfWriter, rng: random.Random) -> None:
    say(fields(writer)[1], "/T", "name")


@FIELDS.filed(WITH_FIELDS, told="something on a page is no field of the form")
def a_field_outside_the_form(writer: PdfWriter, rng: random.Random) -> None:
    lost = rng.choice(fields(writer))
    _remove(lost["/Parent"]["/Kids"], lost)


@FIELDS.filed(WITH_FIELDS, "field", told="belongs to nothing")
def a_field_too_many(writer: PdfWriter, rng: random.Random) -> None:
    last = fields(writer)[-1]
    copy = DictionaryObject({NameObject(key): last.raw_get(key) for key in last})
    say(copy, "/T", "more")
    reference = writer._add_object(copy)
    last["/Parent"]["/Kids"].append(reference)
    lying_on(writer.pages[-1]).append(reference)


@FIELDS.filed(WITH_FIELDS, told="can run something (/JavaScript)")
def a_script_when_a_field_is_left(writer: PdfWriter, rng: random.Random) -> None:
    runs = DictionaryObject({NameObject("/Bl"): action(writer)})
    rng.choice(fields(writer))[NameObject("/AA")] = runs


@FIELDS.filed(SHEET, told="holds /A")
def a_script_when_a_box_is_ticked(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(fields(writer, "/Btn"))[NameObject("/A")] = action(writer)


@FIELDS.filed(WITH_FIELDS, told="the form holds /CO")
def an_order_of_calculation(writer: PdfWriter, rng: random.Random) -> None:
    form = root(writer)["/AcroForm"]
    form[NameObject("/CO")] = ArrayObject([rng.choice(fields(writer)).indirect_reference])


@FIELDS.filed(WITH_FIELDS, told="the form holds /XFA")
def a_second_form(writer: PdfWriter, rng: random.Random) -> None:
    root(writer)["/AcroForm"][NameObject("/XFA")] = writer._add_object(stream_object(b"<xdp/>"))


@FIELDS.filed(WITH_FIELDS, told="does not lie on a room of question")
def a_field_off_its_space(writer: PdfWriter, rng: random.Random) -> None:
    moved(some_answer(writer, rng), up=rng.choice([-1, 1]) * rng.uniform(6, 12))


@FIELDS.filed(WITH_FIELDS, told="lies over '")
def a_field_over_words(writer: PdfWriter, rng: random.Random) -> None:
    moved(some_answer(writer, rng), right=-rng.uniform(60, 80))


@FIELDS.filed(WITH_FIELDS, told="lies outside the page")
def a_field_off_the_page(writer: PdfWriter, rng: random.Random) -> None:
    moved(some_answer(writer, rng), right=rng.uniform(400, 600))


@FIELDS.filed(WITH_FIELDS, told="does not lie on a room of question")
def fields_of_two_questions_changed_about(writer: PdfWriter, rng: random.Random) -> None:
    own = [each for each in fields(writer) if each["/T"] in ("answer", "because")]
    one, other = rng.sample(own, 2)
    first, second = one["/Rect"], other["/Rect"]
    one[NameObject("/Rect")], other[NameObject("/Rect")] = second, first


@FIELDS.filed(WITH_FIELDS, told="is not printed as it is shown")
def a_field_that_is_hidden(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(fields(writer))[NameObject("/F")] = NumberObject(rng.choice([2, 32, 36]))


@FIELDS.filed(WITH_FIELDS, told="has the flags ")
def a_field_that_is_read_only(writer: PdfWriter, rng: random.Random) -> None:
    rng.choice(fields(writer))[NameObject("/Ff")] = NumberObject(1)


@FIELDS.filed(SHEET, told="of another kind than its room")
def room_for_a_single_line(writer: PdfWriter, rng: random.Random) -> None:
    field = next(each for each in fields(writer) if each["/T"] == "working")
    del field["/Ff"]


@FIELDS.filed(WITH_FIELDS, told="sets what is typed by '/Typed ")
def type_too_small_to_read(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(fields(writer)), "/DA", f"/Typed {rng.randrange(1, 8)} Tf 0 g")


@FIELDS.filed(WITH_FIELDS, told="sets what is typed by '/Helv 12 Tf 0 g'")
def a_face_that_is_not_in_the_file(writer: PdfWriter, rng: random.Random) -> None:
    say(rng.choice(fields(writer)), "/DA", "/Helv 12 Tf 0 g")


@FIELDS.filed(WITH_FIELDS, "field", "structure")
def fields_in_another_order(writer: PdfWriter, rng: random.Random) -> None:
    page: Any = next(each for each in writer.pages if fields_on(each) > 2)
    held = list(lying_on(page))
    at = rng.randrange(len(held) - 1)
    one, other = held[at].get_object(), held[at + 1].get_object()
    for key in ("/T", "/TU"):
        one[NameObject(key)], other[NameObject(key)] = other[key], one[key]
    page[NameObject("/Annots")] = ArrayObject([*held[:at], held[at + 1], held[at], *held[at + 2 :]])


def fields_on(page: Any) -> int:
    return sum(each.get_object().get("/Subtype") == "/Widget" for each in lying_on(page))


@FIELDS.filed((COSTS, TUESDAY, WEDNESDAY), told="the file holds form fields")
def a_form_where_none_is_wanted(writer: PdfWriter, rng: random.Random) -> None:
    form = DictionaryObject({NameObject("/Fields"): ArrayObject()})
    root(writer)[NameObject("/AcroForm")] = form
