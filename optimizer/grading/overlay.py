"""Rooms that are laid on a slab that is there already: at which level, and which of them really lie on it."""

from collections.abc import Sequence
from typing import Final

from optimizer.catalogue import is_carried
from optimizer.catalogue.steps import step_rules
from optimizer.fields.existing_paving import slab_under
from optimizer.grading.paved import Paved

_EVEN: Final = 1e-7  # halves of a hundredth round up, whatever the datum
_ROUNDING_FT: Final = 0.0051  # levels are whole hundredths


def on_slab_ft(paved: Paved, room: int, ground_ft: float) -> float | None:
    """Level of a paved room whose overlay lies on a slab, in hundredths [ft]; None where no slab lies under all of it.

    `ground_ft` is the mean height of the ground under the room, which the slab has where the site says no more.
    """
    slab = slab_under(paved.site, paved.rooms[room].shape)
    if slab is None or not is_carried(paved.rooms[room].rules):
        return None
    middle_in = (step_rules().overlay_least_in + step_rules().overlay_most_in) / 2
    return round((ground_ft if slab.z_ft is None else slab.z_ft) + middle_in / 12 + _EVEN, 2)


def overlaid_rooms(paved: Paved, ground_ft: Sequence[float], levels_ft: Sequence[float]) -> tuple[str, ...]:
    """Names of the rooms that lie on a slab at a level at which an overlay is as thick as it may be.

    Where the levels of the ground are not known, every room that lies wholly on a slab.
    """
    rules = step_rules()
    slack_ft = (rules.overlay_most_in - rules.overlay_least_in) / 24 + _ROUNDING_FT
    found = []
    for number, room in enumerate(paved.rooms):
        wanted = on_slab_ft(paved, number, ground_ft[number])
        if wanted is not None and (not paved.ground.is_known or abs(levels_ft[number] - wanted) <= slack_ft):
            found.append(room.name)
    return tuple(found)
