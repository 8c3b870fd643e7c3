"""The way that machines take from the street: whether it is wide enough, and the lawn that it wears."""

from functools import lru_cache

import shapely
from shapely.geometry.base import BaseGeometry

from optimizer.catalogue import smallest_machine
from optimizer.circulation.network import walked_line
from optimizer.derived import Derived
from optimizer.derived.futures.obstacles import on_site
from optimizer.derived.futures.reach import comes_to, reached_ground
from optimizer.fields import SITES, site_shapes
from optimizer.fields.existing_paving import standing_paving
from optimizer.layout import PlacedRoom
from optimizer.quantities.figures import value
from optimizer.site import Site, clear_width_ft


def hard_to_reach(derived: Derived) -> tuple[str, ...]:
    """Rooms with paving to which no way as wide as a machine leads from any entrance for machines; none where none is
    given.
    """
    site = derived.site
    if not site.machine_entrances:
        return ()
    reach, machine = _reach(site), smallest_machine(site.machine)
    built = [room for room in derived.placed.once if room.rules.built_as]
    return tuple(room.name for room in built if not comes_to(reach, machine, room))


def way_ft(site: Site) -> float:
    """Width of the way that a builder's smallest machine needs [ft]."""
    return smallest_machine(site.machine).width_ft


def is_closed_to_machines(site: Site) -> bool:
    """Whether no way so wide leads into the yard from any entrance for machines; not where none is given."""
    return bool(site.machine_entrances) and bool(_reach(site).is_empty)


@lru_cache(maxsize=SITES)
def _reach(site: Site) -> BaseGeometry:
    """Ground of the yard that the middle of a machine comes to before anything is built. Under an open roof there is
    room, unless the scenario gives the machine's height and the roof is too low for it.
    """
    height_ft = 0.0 if site.machine is None else site.machine.height_ft
    reach = reached_ground(site, [*on_site(site, height_ft)], smallest_machine(site.machine))
    return reach.intersection(site_shapes(site).boundary)


def worn_lawn_sqft(derived: Derived) -> float:
    """Open ground that machines wear on the shortest ways from their nearest entrance to the paved rooms [sq ft]."""
    rooms = [room for room in derived.placed.once if room.rules.paved]
    lines = [line for room in rooms if (line := _shortest(derived, room)) is not None]
    if not lines:
        return 0.0
    widest = max(clear_width_ft(derived.site, entrance) for entrance in derived.site.machine_entrances)
    track = shapely.union_all(lines).buffer(min(widest, value("track_ft")) / 2)
    shapes = site_shapes(derived.site)
    taken = [
        *derived.placed.shapes,
        *shapes.buildings,
        derived.paths,
        standing_paving(derived.site, derived.placed.shapes),
    ]
    return float(track.intersection(shapes.boundary).difference(shapely.union_all(taken)).area)


def _shortest(derived: Derived, room: PlacedRoom) -> BaseGeometry | None:
    """Shortest way on open ground from an entrance for machines to a room; None where there is none."""
    access = derived.network.access
    stop = access.stop(room.name)
    starts = [access.stop(entrance.name) for entrance in derived.site.machine_entrances]
    lines = [walked_line(derived.network, start, stop) for start in starts if start is not None and stop is not None]
    return min((line for line in lines if not line.is_empty), key=lambda line: line.length, default=None)
