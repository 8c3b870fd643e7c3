"""Heights taken where a site gives none."""

from typing import Final

DEFAULT_HEIGHT_FT: Final = {
    "building": 20.0,
    "structure": 9.0,
    "tree": 25.0,
    "fence": 6.0,
    "wall": 6.0,
    "hedge": 5.0,
}
"""Common practice, no source."""
