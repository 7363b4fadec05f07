"""Faults in the fields of a sheet: what is filled in, lost, doubled, moved, or runs."""

from __future__ import annotations

from collections.abc import Callable
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

from tests.proofing.planting import rebuild, stream_object

# A spoilt file, and words that one of the findings must say.
FAULTS: dict[str, tuple[Callable[[bytes], bytes], str]] = {}


def fault(told: str) -> Callable[[Callable[[PdfWriter], None]], None]:
    """Registers a change to the objects of the file."""

    def register(change: Callable[[PdfWriter], None]) -> None:
        FAULTS[change.__name__.replace("_", " ")] = (lambda pdf: rebuild(pdf, change), told)

    return register


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


@fault("holds /V")
def a_value_filled_in(writer: PdfWriter) -> None:
    say(answer(writer), "/V", "60")


@fault("holds /DV")
def a_value_to_go_back_to(writer: PdfWriter) -> None:
    say(answer(writer), "/DV", "60")


@fault("is told as 'Question 1, answer in sails: 60'")
def an_answer_in_a_tooltip(writer: PdfWriter) -> None:
    field = answer(writer)
    say(field, "/TU", f"{field['/TU']}: 60")


@fault("holds /TM")
def an_answer_in_a_name_for_export(writer: PdfWriter) -> None:
    say(answer(writer), "/TM", "60")


@fault("holds /MK")
def an_answer_in_a_caption(writer: PdfWriter) -> None:
    caption = {NameObject("/CA"): TextStringObject("60")}
    answer(writer)[NameObject("/MK")] = DictionaryObject(caption)


@fault("shows something already")
def an_answer_in_an_appearance(writer: PdfWriter) -> None:
    stream = answer(writer)["/AP"].raw_get("/N").get_object()
    stream.set_data(b"/Tx BMC BT /Typed 12 Tf 2 4 Td (60) Tj ET EMC")


@fault("shows something already")
def a_tick_that_shows_before_it_is_ticked(writer: PdfWriter) -> None:
    field = fields(writer, "/Btn")[0]
    field["/AP"]["/N"].raw_get("/Off").get_object().set_data(b"q 0 0 m 9 9 l S Q")


@fault("is ticked already")
def a_box_ticked(writer: PdfWriter) -> None:
    field = fields(writer, "/Btn")[0]
    field[NameObject("/V")] = field[NameObject("/AS")] = NameObject("/Ticked")


@fault("shares its appearance")
def two_fields_of_one_appearance(writer: PdfWriter) -> None:
    one, other = fields(writer)[:2]
    other["/AP"][NameObject("/N")] = one["/AP"].raw_get("/N")


@fault("where the field 'wednesday.date' should be")
def a_field_lost(writer: PdfWriter) -> None:
    del lying_on(writer.pages[0])[1]
    del root(writer)["/AcroForm"]["/Fields"][0].get_object()["/Kids"][1]


@fault("lies on no page")
def a_field_that_no_page_shows(writer: PdfWriter) -> None:
    del lying_on(writer.pages[0])[1]


@fault("where the field 'wednesday.date' should be there is 'wednesday.name'")
def two_fields_of_one_name(writer: PdfWriter) -> None:
    say(fields(writer)[1], "/T", "name")


@fault("something on a page is no field of the form")
def a_field_outside_the_form(writer: PdfWriter) -> None:
    form = root(writer)["/AcroForm"]["/Fields"]
    del form[0].get_object()["/Kids"][0]


@fault("belongs to nothing")
def a_field_too_many(writer: PdfWriter) -> None:
    last = fields(writer)[-1]
    copy = DictionaryObject({NameObject(key): last.raw_get(key) for key in last})
    say(copy, "/T", "more")
    reference = writer._add_object(copy)
    last["/Parent"]["/Kids"].append(reference)
    lying_on(writer.pages[-1]).append(reference)


@fault("can run something (/JavaScript)")
def a_script_when_a_field_is_left(writer: PdfWriter) -> None:
    runs = DictionaryObject({NameObject("/Bl"): action(writer)})
    answer(writer)[NameObject("/AA")] = runs


@fault("holds /A")
def a_script_when_a_box_is_ticked(writer: PdfWriter) -> None:
    fields(writer, "/Btn")[0][NameObject("/A")] = action(writer)


@fault("the form holds /CO")
def an_order_of_calculation(writer: PdfWriter) -> None:
    form = root(writer)["/AcroForm"]
    form[NameObject("/CO")] = ArrayObject([lying_on(writer.pages[0])[0]])


@fault("the form holds /XFA")
def a_second_form(writer: PdfWriter) -> None:
    root(writer)["/AcroForm"][NameObject("/XFA")] = writer._add_object(stream_object(b"<xdp/>"))


@fault("does not lie on a room of question 1")
def a_field_off_its_space(writer: PdfWriter) -> None:
    moved(answer(writer), up=6.0)


@fault("lies over '")
def a_field_over_words(writer: PdfWriter) -> None:
    moved(answer(writer), right=-80.0)


@fault("lies outside the page")
def a_field_off_the_page(writer: PdfWriter) -> None:
    moved(answer(writer), right=400.0)


@fault("'wednesday.q1.answer' does not lie on a room of question 1")
def fields_of_two_questions_changed_about(writer: PdfWriter) -> None:
    own = [each for each in fields(writer) if each["/T"] in ("answer", "because")]
    one, other = own[0], own[1]
    first, second = one["/Rect"], other["/Rect"]
    one[NameObject("/Rect")], other[NameObject("/Rect")] = second, first


@fault("is not printed as it is shown")
def a_field_that_is_hidden(writer: PdfWriter) -> None:
    answer(writer)[NameObject("/F")] = NumberObject(2)


@fault("has the flags 1")
def a_field_that_is_read_only(writer: PdfWriter) -> None:
    answer(writer)[NameObject("/Ff")] = NumberObject(1)


@fault("of another kind than its room")
def room_for_a_single_line(writer: PdfWriter) -> None:
    field = next(each for each in fields(writer) if each["/T"] == "working")
    del field["/Ff"]


@fault("sets what is typed by '/Typed 3 Tf 0 g'")
def type_too_small_to_read(writer: PdfWriter) -> None:
    say(answer(writer), "/DA", "/Typed 3 Tf 0 g")


@fault("sets what is typed by '/Helv 12 Tf 0 g'")
def a_face_that_is_not_in_the_file(writer: PdfWriter) -> None:
    say(answer(writer), "/DA", "/Helv 12 Tf 0 g")


@fault("in another order than they lie")
def tabs_in_another_order(writer: PdfWriter) -> None:
    page = writer.pages[0]
    held = list(lying_on(page))
    say(held[0].get_object(), "/T", "date")
    say(held[1].get_object(), "/T", "name")
    page[NameObject("/Annots")] = ArrayObject([held[1], held[0], *held[2:]])


@fault("the file holds form fields")
def a_form_where_none_is_wanted(writer: PdfWriter) -> None:
    """Tried on a file without fields; see the test."""
    form = DictionaryObject({NameObject("/Fields"): ArrayObject()})
    root(writer)[NameObject("/AcroForm")] = form
