"""Text and numbers as an SVG may carry them."""

import re
from xml.sax.saxutils import escape

# What XML 1.0 forbids even when escaped; a name from a file may hold it.
_FORBIDDEN = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def safe_text(text: str) -> str:
    """Text that stays text, in an element or a quoted attribute: escaped, without characters that XML forbids."""
    return escape(_FORBIDDEN.sub("", text), {'"': "&quot;", "'": "&#39;"})


def number(value: float) -> str:
    """Write a coordinate to a thousandth of a foot, without a sign on zero."""
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
