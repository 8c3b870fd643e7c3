"""How wide a line of type is: letters differ too much for one mean where a name must fit between chairs."""

from typing import Final

_WIDTHS: Final[dict[str, float]] = {
    " ijlI.,:;'|!": 0.28,
    'ftr()-[]/"': 0.37,
    "mM%": 0.89,
    "wW@": 0.82,
    "bdghnopqu": 0.62,
    "aceksvxyz0123456789": 0.57,
}
"""Shares of the size, on the wide side of the bold of a plain sans serif; from memory of common fonts' tables."""
_OTHERS: Final = 0.74  # capitals and signs
_BEYOND: Final = 0x500  # from here on come scripts with letters as wide as high
_OF: Final = {letter: width for letters, width in _WIDTHS.items() for letter in letters}


def width_of(text: str) -> float:
    """Width of a line as a share of its size; a wide estimate, also for regular type."""
    return sum(_OF.get(letter, _OTHERS if ord(letter) < _BEYOND else 1.0) for letter in text)
