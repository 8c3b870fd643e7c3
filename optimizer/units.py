"""Lengths as people write them, read into feet and written back in feet and inches."""

import math
import re
import unicodedata
from fractions import Fraction
from typing import Final

FT_PER_M: Final = 1.0 / 0.3048
"""Feet in a metre, exact by the international foot of 1959."""

LENGTH_EXAMPLES: Final = "12.5, 12'-6\", 12 ft 6 in, 150 in, 3.8 m or 45 cm"
"""Spellings of a length, for messages."""

_LONGEST_TEXT: Final = 40
_ENDLESS: Final = 1e300
_NUMBER: Final = r"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)"
_FEET: Final = rf"(?P<feet>{_NUMBER})\s*(?:'|(?:feet|foot|ft)(?![a-z])\.?)"
_INCHES: Final = (
    rf"(?:(?:(?P<whole>[0-9]+)(?:\s+|\s*-\s*))?(?P<over>[0-9]+)\s*/\s*(?P<under>[0-9]+)|(?P<inches>{_NUMBER}))"
    r"\s*(?:\"|(?:inches|inch|in)(?![a-z])\.?)"
)
_IMPERIAL: Final = re.compile(rf"(?=.)(?:{_FEET})?\s*-?\s*(?:{_INCHES})?", re.IGNORECASE)
_METRIC: Final = re.compile(rf"(?P<amount>{_NUMBER})\s*(?P<unit>mm|cm|metres|meters|metre|meter|m)", re.IGNORECASE)
_BARE: Final = re.compile(_NUMBER)
_MARKS: Final = str.maketrans(
    {
        "′": "'", "’": "'", "‘": "'", "ʹ": "'", "″": '"', "”": '"', "“": '"', "ʺ": '"',
        "−": "-", "–": "-", "‐": "-", "‑": "-", "⁄": "/", "\u00a0": " ", "\u202f": " ",
    }
)  # fmt: skip


def feet_from_metres(length_m: float) -> float:
    """Length in feet of a length in metres."""
    return length_m * FT_PER_M


def metres_from_feet(length_ft: float) -> float:
    """Length in metres of a length in feet."""
    return length_ft * 0.3048


def read_length_ft(value: object, *, unit_ft: float = 1.0) -> float:
    """Length [ft] of a number, or of text such as 12'-6"; what has no unit counts in units of `unit_ft`.

    Raises ValueError for anything else: NaN, infinity, a truth value, empty text, text with something left over.
    """
    if isinstance(value, str):
        return _from_text(value, unit_ft)
    # A bound, because isfinite overflows on whole numbers of hundreds of digits.
    if isinstance(value, bool) or not isinstance(value, int | float) or not abs(value) < _ENDLESS:
        raise ValueError("not a length")
    return value * unit_ft


def feet_inches(length_ft: float, denominator: int = 8) -> str:
    """Feet and inches of a length, rounded to the nearest 1/`denominator` in: 12.54 -> 12'-6 1/2"."""
    if not math.isfinite(length_ft):
        raise ValueError("not a length")
    parts = math.floor(abs(length_ft) * 12 * denominator + 0.5)
    feet, rest = divmod(parts, 12 * denominator)
    inches, over = divmod(rest, denominator)
    fraction = f" {Fraction(over, denominator)}" if over else ""
    sign = "-" if length_ft < 0 and parts else ""
    return f"{sign}{feet}'-{inches}{fraction}\""


def _from_text(text: str, unit_ft: float) -> float:
    """Length [ft] of written text; ValueError where it is not one."""
    plain = _plain(text) if len(text) <= _LONGEST_TEXT else ""
    sign = -1.0 if plain.startswith("-") else 1.0
    body = plain[1:].lstrip() if plain[:1] in ("-", "+") else plain
    if _BARE.fullmatch(body):
        return sign * float(body) * unit_ft
    if metric := _METRIC.fullmatch(body):
        metres = {"mm": 0.001, "cm": 0.01}.get(metric["unit"].lower(), 1.0)
        return sign * feet_from_metres(float(metric["amount"]) * metres)
    if (imperial := _IMPERIAL.fullmatch(body)) and any(imperial.groups()):
        return sign * _imperial_ft(imperial)
    raise ValueError("not a length")


def _plain(text: str) -> str:
    """Text with typographic marks, dashes and fractions (such as the one-glyph half) in plain characters."""
    spread = "".join(
        f" {unicodedata.normalize('NFKC', glyph)}"
        if unicodedata.decomposition(glyph).startswith("<fraction>")
        else glyph
        for glyph in text
    )
    return spread.translate(_MARKS).replace("''", '"').strip()


def _spread(glyph: str) -> str:
    """Spell a fraction in one glyph out behind a space, so that 12½ does not become 121/2; the rest as it is."""
    is_fraction = unicodedata.decomposition(glyph).startswith("<fraction>")
    return f" {unicodedata.normalize('NFKC', glyph)}" if is_fraction else glyph


def _imperial_ft(match: re.Match[str]) -> float:
    """Length [ft] of matched feet and inches; ValueError for 12.5' 6", 12' 14" and a zero under the stroke."""
    inches = _inches(match)
    feet = match["feet"]
    # Next to feet, inches past a foot or feet with decimals are slips of the pen, not lengths.
    if feet and inches and (inches >= 12 or "." in feet):
        raise ValueError("not a length")
    return float(Fraction(feet or 0) + inches / 12)


def _inches(match: re.Match[str]) -> Fraction:
    """Inches of a match, whole and fraction together."""
    if not match["under"]:
        return Fraction(match["inches"] or 0)
    if int(match["under"]) == 0:
        raise ValueError("not a length")
    return Fraction(match["whole"] or 0) + Fraction(int(match["over"]), int(match["under"]))
