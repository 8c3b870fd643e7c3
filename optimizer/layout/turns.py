"""Every choice and turn of a room at one place."""

from collections.abc import Iterable, Iterator

from optimizer.catalogue import SizedRoom
from optimizer.layout.placement import FRONT_VECTORS, Front, Placement
from optimizer.site import Point


def turns_at(room: SizedRoom, at_ft: Point, fronts: Iterable[Front] = FRONT_VECTORS) -> Iterator[Placement]:
    """The room with its lower left corner at a place [ft], in each choice as large as it is, opening to each side."""
    for choice in room.choices:
        for front in fronts:
            size = (choice.width_ft, choice.depth_ft)
            width_ft, depth_ft = size if front in {"+y", "-y"} else size[::-1]
            yield Placement(room.name, choice.label, *at_ft, width_ft, depth_ft, front, shape=choice.shape)
