"""Why a roof that stands already stays empty, in plain words."""

from collections.abc import Iterator, Sequence

from optimizer.appraisal import empty_roofs
from optimizer.catalogue import SizedRoom
from optimizer.concepts.whereabouts import whereabouts
from optimizer.concepts.words import listed
from optimizer.fields.roofs import may_use, roof_sqft
from optimizer.layout import Placed, Placement, footprint, outline
from optimizer.site import Site, Structure

_PARTLY = 0.1  # of a room or roof: less than this is not worth a word


def roof_cautions(site: Site, placed: Placed) -> Iterator[str]:
    """One sentence for each structure that no room with seats makes use of."""
    empty = empty_roofs(site, placed)
    for structure in site.structures:
        if structure.name in empty:
            users = [room for room in placed.wished if may_use(structure, room)]
            yield f"The {structure.name} stays empty: {_why(site, structure, users, placed)}."


def _why(site: Site, structure: Structure, users: Sequence[SizedRoom], placed: Placed) -> str:
    if not users:
        return "no room of the wish list with seats may stand under it"
    there = [place for room in users if (place := placed.layout.of(room.name)) is not None]
    if not there:
        return f"this concept does without the {listed([room.name for room in users])}"
    place = max(there, key=lambda own: _shared_sqft(structure, own))
    share = _shared_sqft(structure, place) / min(place.area_sqft, roof_sqft(structure))
    if share >= _PARTLY:
        return f"the {place.room} lies under it only in part"
    where = listed([f"the {own.room} lies {whereabouts(own, site)}" for own in there])
    return f"{where}, which costs less here than moving it under the roof"


def _shared_sqft(structure: Structure, place: Placement) -> float:
    return float(footprint(place).intersection(outline(structure.outline)).area)
