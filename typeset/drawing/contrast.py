"""How well a colour stands out from its ground, by the formula of WCAG 2.2."""

from __future__ import annotations

from typeset.drawing.shapes import Colour

# WCAG 2.2, definition of relative luminance (sources.md section 4, read).
_WEIGHTS = (0.2126, 0.7152, 0.0722)
_LINEAR_TO = 0.04045


def contrast(ink: Colour, ground: Colour) -> float:
    """The contrast ratio of two colours, from 1 (alike) to 21 (black on white)."""
    darker, lighter = sorted((_luminance(ink), _luminance(ground)))
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: Colour) -> float:
    return sum(weight * _linear(level) for weight, level in zip(_WEIGHTS, colour, strict=True))


def _linear(level: float) -> float:
    return level / 12.92 if level <= _LINEAR_TO else ((level + 0.055) / 1.055) ** 2.4
