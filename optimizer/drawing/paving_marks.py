"""The marks of paving that is there already: what stays as it is, and what is lifted."""

from collections.abc import Iterator, Sequence
from typing import Final

from shapely import Polygon

from optimizer.drawing.marks import Mark
from optimizer.drawing.outlines import areas_of
from optimizer.fields.existing_paving import paving_to, standing_paving
from optimizer.site import Site

PAVING_WORDS: Final[dict[str, str]] = {
    "old_paving": "paving that stays",
    "lifted_paving": "paving to be lifted",
}
"""What the legends call them."""


def paving_marks(site: Site, rooms: Sequence[Polygon]) -> Iterator[Mark]:
    """Draw what stays, the rooms left out, and the outlines of what is lifted."""
    yield from areas_of("old_paving", standing_paving(site, rooms))
    for _, ground in paving_to(site, "lift"):
        yield from areas_of("lifted_paving", ground)
