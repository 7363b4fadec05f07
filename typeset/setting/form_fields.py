"""Fields to type in and boxes to tick, as objects of the PDF (ISO 32000-1, 12.7).

Names make a tree ('tuesday' over 'q4' over 'answer'). Each field has an appearance of its own:
programs that fill a shared one would show the same answer in all. What is typed is set in a
whole face of ours, since nobody knows which letters will be needed.
"""

from __future__ import annotations

from typing import Any

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.pdfdoc import (
    PDFArray,
    PDFDictionary,
    PDFName,
    PDFStream,
    PDFString,
    PDFZCompress,
)

from typeset.drawing.fonts import font_path
from typeset.drawing.shapes import Face
from typeset.setting.frames import Field, FieldKind
from typeset.setting.pdf_fonts import font_name

_PRINTED = 4
# ISO 32000-1, table 228: bit 13.
_SEVERAL_LINES = 1 << 12
_FONT = "Typed"
# Of windows-1252, which is what WinAnsiEncoding stands for (annex D).
_FIRST, _LAST = 32, 255
_NONSYMBOLIC = 32
_TICKED, _NOT = "Ticked", "Off"
# The two strokes of a tick, in parts of the box.
_TICK = ((0.2, 0.5), (0.42, 0.25), (0.82, 0.8))
_MOST_A_BLOCK = 100


class FormWriter:
    """Adds one field after the other to the page that is being drawn."""

    def __init__(self, canvas: Any) -> None:
        self.canvas = canvas
        self.document = canvas._doc
        # The nodes of the tree of names, with references to them, and what stands below each.
        self.nodes: dict[str, Any] = {}
        self.references: dict[str, Any] = {}
        self.below: dict[str, list[Any]] = {"": []}

    def add(self, field: Field, page_height_pt: float, key: int) -> None:
        """The field as an annotation of the page; `key` leads to its element of the structure."""
        foot = page_height_pt - field.y_pt - field.height_pt
        edges = (field.x_pt, foot, field.x_pt + field.width_pt, foot + field.height_pt)
        path, _, own = field.name.rpartition(".")
        entries: dict[str, Any] = {
            "Type": PDFName("Annot"),
            "Subtype": PDFName("Widget"),
            "T": PDFString(own),
            "TU": PDFString(field.tooltip),
            "Rect": PDFArray([round(edge, 2) for edge in edges]),
            "F": _PRINTED,
            "StructParent": key,
        }
        entries |= self._ticked(field) if field.kind is FieldKind.TICK else self._typed(field)
        if path:
            entries["Parent"] = self._node(path)
        self.canvas._addAnnotation(PDFDictionary(entries))
        self.below[path].append(self.canvas._annotationrefs[-1])

    def end(self) -> None:
        """The form as a whole: its fields, and the face of what is typed."""
        for path, node in self.nodes.items():
            node["Kids"] = PDFArray(self.below[path])
        fonts = PDFDictionary({_FONT: self._font()})
        form = PDFDictionary(
            {
                "Fields": PDFArray(self.below[""]),
                "DA": PDFString(f"/{_FONT} 12 Tf 0 g"),
                "DR": PDFDictionary({"Font": fonts}),
            }
        )
        self.document.Catalog.AcroForm = self.document.Reference(form)

    def _node(self, path: str) -> Any:
        """The node of a part of names, made when it is first asked for."""
        if path not in self.nodes:
            above, _, own = path.rpartition(".")
            node = PDFDictionary({"T": PDFString(own)})
            if above:
                node["Parent"] = self._node(above)
            self.nodes[path], self.below[path] = node, []
            self.references[path] = self.document.Reference(node)
            self.below[above].append(self.references[path])
        return self.references[path]

    def _typed(self, field: Field) -> dict[str, Any]:
        size = f"{field.size_pt:g}"
        entries: dict[str, Any] = {
            "FT": PDFName("Tx"),
            "DA": PDFString(f"/{_FONT} {size} Tf 0 g"),
            "AP": PDFDictionary({"N": self._appearance(field, "/Tx BMC\nEMC")}),
        }
        if field.several_lines:
            entries["Ff"] = _SEVERAL_LINES
        return entries

    def _ticked(self, field: Field) -> dict[str, Any]:
        points = [(x * field.width_pt, y * field.height_pt) for x, y in _TICK]
        way = " ".join(
            f"{x:.2f} {y:.2f} {'l' if index else 'm'}" for index, (x, y) in enumerate(points)
        )
        looks = {
            _TICKED: self._appearance(field, f"q 1.5 w {way} S Q"),
            _NOT: self._appearance(field, ""),
        }
        return {
            "FT": PDFName("Btn"),
            "V": PDFName(_NOT),
            "AS": PDFName(_NOT),
            "AP": PDFDictionary({"N": PDFDictionary(looks)}),
        }

    def _appearance(self, field: Field, drawn: str) -> Any:
        box = [0, 0, round(field.width_pt, 2), round(field.height_pt, 2)]
        entries = {
            "Type": PDFName("XObject"),
            "Subtype": PDFName("Form"),
            "BBox": PDFArray(box),
            "Resources": PDFDictionary({}),
        }
        return self.document.Reference(
            PDFStream(PDFDictionary(entries), drawn, filters=[PDFZCompress])
        )

    def _font(self) -> Any:
        """The whole regular face, as a simple font whose codes are those of windows-1252."""
        face = pdfmetrics.getFont(font_name(Face.REGULAR)).face
        name = face.name.decode() if isinstance(face.name, bytes) else str(face.name)
        codes = range(_FIRST, _LAST + 1)
        letters = {code: bytes([code]).decode("cp1252", "ignore") for code in codes}
        widths = [
            face.getCharWidth(ord(letters[code])) if letters[code] else face.defaultWidth
            for code in codes
        ]
        return self.document.Reference(
            PDFDictionary(
                {
                    "Type": PDFName("Font"),
                    "Subtype": PDFName("TrueType"),
                    "BaseFont": PDFName(name),
                    "FirstChar": _FIRST,
                    "LastChar": _LAST,
                    "Widths": PDFArray([round(width) for width in widths]),
                    "Encoding": PDFName("WinAnsiEncoding"),
                    "FontDescriptor": self._descriptor(face, name),
                    "ToUnicode": self._stream(_to_unicode(letters)),
                }
            )
        )

    def _descriptor(self, face: Any, name: str) -> Any:
        data = font_path(Face.REGULAR).read_bytes()
        return self.document.Reference(
            PDFDictionary(
                {
                    "Type": PDFName("FontDescriptor"),
                    "FontName": PDFName(name),
                    "Flags": _NONSYMBOLIC,
                    "FontBBox": PDFArray([round(edge) for edge in face.bbox]),
                    "ItalicAngle": face.italicAngle,
                    "Ascent": round(face.ascent),
                    "Descent": round(face.descent),
                    "CapHeight": round(face.capHeight),
                    "StemV": round(face.stemV),
                    "FontFile2": self._stream(data, Length1=len(data)),
                }
            )
        )

    def _stream(self, content: Any, **entries: Any) -> Any:
        stream = PDFStream(PDFDictionary(entries), content, filters=[PDFZCompress])
        return self.document.Reference(stream)


def _to_unicode(letters: dict[int, str]) -> str:
    """The map back to text, for readers that do not know the encoding."""
    rows = [f"<{code:02X}> <{ord(letter):04X}>" for code, letter in letters.items() if letter]
    blocks = [rows[i : i + _MOST_A_BLOCK] for i in range(0, len(rows), _MOST_A_BLOCK)]
    maps = "\n".join("\n".join((f"{len(b)} beginbfchar", *b, "endbfchar")) for b in blocks)
    return (
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CMapName /Typed def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<00> <FF>\nendcodespacerange\n"
        f"{maps}\nendcmap\nCMapName currentdict /CMap defineresource pop\nend\nend"
    )
