"""Garden doors from which one does not step onto a terrace."""

from collections.abc import Sequence

import numpy as np

from optimizer.brief import Brief
from optimizer.catalogue import rates
from optimizer.fields.terraces import TERRACE_KINDS, garden_doors, meets_landing
from optimizer.layout import Placed, Placement
from optimizer.site import Door, Site


def bare_doors(site: Site, brief: Brief, placed: Placed) -> tuple[str, ...]:
    """Names of the doors that most trips lead through, two at most, at whose landing no terrace lies."""
    terraces = [room.placement for room in placed.of_kind(*TERRACE_KINDS)]
    doors = garden_doors(site, brief)[: len(rates().bare_doors)]
    return tuple(door.name for door in doors if not any(_meets(site, door, terrace) for terrace in terraces))


def bare_doors_loss(site: Site, brief: Brief, bare: Sequence[str]) -> float:
    """What they lose in money, before weighing: most for the door of most trips."""
    doors = garden_doors(site, brief)
    return sum(rate for door, rate in zip(doors, rates().bare_doors, strict=False) if door.name in bare)


def _meets(site: Site, door: Door, terrace: Placement) -> bool:
    at = np.array(terrace.x_ft), np.array(terrace.y_ft)
    return bool(meets_landing(site, door, *at, width_ft=terrace.width_ft, depth_ft=terrace.depth_ft))
