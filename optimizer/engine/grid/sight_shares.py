"""Shares of sight at many positions of rooms at once; geometry on the plan, as the check has it.

They are counted on samples, nine of them and more where a share is near what is asked; the check works out the area
that is seen. So they differ by a few hundredths, and what the judge refuses is learned. Only the site's own screens and
the panel of a screened room are known here. Counters (3 ft), bars and seat walls of other rooms never hide from a
neighbour's window, and may hide between rooms: there the judge has the last word.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from optimizer.brief import Relation
from optimizer.catalogue.sides import side_kind
from optimizer.engine.grid.context import Context
from optimizer.engine.grid.variants import Variant
from optimizer.fields import ground_of
from optimizer.fields.sight import FEW, MANY, Numbers, blocked, sample_points
from optimizer.fields.sight_ends import Look, fixed_eye, look_of, screens_for, seen_thing

Rows = NDArray[np.int64]
Parts = Sequence[tuple[float, float]]
_EVEN: Final = 1e-9
_DOUBTFUL: Final = 1 / 3
"""Shares by nine samples are no farther off than this (measured on the demonstration yards: 0.29)."""


class Extent(NamedTuple):
    """Ground of a room: along x and y, posed [steps], and whether it is the disc in this square."""

    width: int
    depth: int
    is_round: bool = False


def extent_of(variant: Variant) -> Extent:
    """Ground of a variant."""
    return Extent(variant.width, variant.depth, variant.is_round)


@dataclass(frozen=True, slots=True, eq=False)
class Panel:
    """A bought panel: its top above the samples of its room [ft], and towards whom it stands.

    `lookers` (k, 2) [ft] on the plan are those of the site; with `towards_eye` it stands towards the eye as well.
    """

    above_ft: float
    lookers: Numbers
    towards_eye: bool


def look_in(context: Context, relation: Relation) -> Look:
    """Look that a relation of sight asks for, by the plan's names."""
    return look_of(context.scenario.site, relation, {room.name: room.rules.kind for room in context.rooms})


def shares_from_site(context: Context, look: Look, size: Extent, *, screened: bool) -> Numbers | None:
    """Share of sight between a thing of the site and a room at every lower left corner, shape (rows, columns).

    None where the thing has neither eye nor shape. `screened`: the room
    has a panel towards who must not see it.
    """
    key, shape = ("site", look, size, screened), (context.lattice.rows, context.lattice.columns)
    known = context.known_shares.get(key)
    if known is None:
        seen = _shares_from_site(context, look, size, screened=screened)
        if seen is None:
            return None
        known = context.known_shares[key] = seen.reshape(shape)
    return known


def _shares_from_site(context: Context, look: Look, size: Extent, *, screened: bool) -> Numbers | None:
    site, centres = context.scenario.site, _centres(context, size)
    if look.eye_ft is not None:
        return shares_of_thing(context, look, eyes(context, look, centres))
    eye = fixed_eye(site, look.looker)
    if eye is None:
        return None
    panel = panel_of(context, look) if screened else None
    return shares_of_room(context, look, np.array([[*eye.at, eye.z_ft]]), (centres, size), panel=panel)


def _centres(context: Context, size: Extent) -> Numbers:
    lattice = context.lattice
    columns, rows = np.meshgrid(np.arange(lattice.columns), np.arange(lattice.rows))
    return centres_at(context, size, columns.ravel(), rows.ravel())


def centres_at(context: Context, size: Extent, columns: NDArray[np.int64], rows: NDArray[np.int64]) -> Numbers:
    """Posed centres (n, 2) [ft] of a room of so many steps with these lower left corners."""
    lattice = context.lattice
    x = lattice.x0_ft + lattice.step_ft * (columns + size[0] / 2)
    y = lattice.y0_ft + lattice.step_ft * (rows + size[1] / 2)
    return np.column_stack([x, y])


def eyes(context: Context, look: Look, centres: Numbers) -> Numbers:
    """Eyes (n, 3) on the plan of who is in the looking room, its centres posed (n, 2) [ft]."""
    return _raised(context, centres, look.eye_ft or 0.0)


def shares_of_room(
    context: Context, look: Look, starts: Numbers, stands: tuple[Numbers, Extent], *, panel: Panel | None = None
) -> Numbers:
    """Share (n,) of a room that is seen from the eyes (n or 1, 3) on the plan.

    It `stands` at posed centres (n or 1, 2) [ft] on so much ground; the panel stands round it.
    """
    centres, size = stands

    def count(rows: Rows, parts: Parts) -> Numbers:
        looking, targets = _some(starts, rows), samples(context, look, (_some(centres, rows), size), parts)
        seen = _visible(context, look, looking, targets)
        if panel is not None:
            seen &= ~_behind_panel(panel, looking, targets, parts)
        return np.asarray(seen.mean(axis=1))

    number = max(len(starts), len(centres))
    worth_it = shapely.contains_xy(context.boundary, centres[:, 0], centres[:, 1])
    return _refined(look, np.broadcast_to(worth_it, number), count)


def shares_of_thing(context: Context, look: Look, starts: Numbers) -> Numbers | None:
    """Share (n,) of a thing of the site that is seen from the eyes (n, 3) on the plan; None where it has no shape."""
    thing = seen_thing(context.site, look.seen)
    if thing is None:
        return None

    def count(rows: Rows, parts: Parts) -> Numbers:
        # Samples are taken in the pose, so that a turned yard has the same.
        posed = sample_points(thing.shape, thing.z_ft, parts)
        x, y = context.pose.back((posed[:, 0], posed[:, 1]))  # type: ignore[arg-type]
        targets = np.column_stack([x, y, posed[:, 2]])[None]
        return np.asarray(_visible(context, look, _some(starts, rows), targets).mean(axis=1))

    return _refined(look, np.ones(len(starts), dtype=np.bool_), count)


def _refined(look: Look, worth_it: NDArray[np.bool_], count: Callable[[Rows, Parts], Numbers]) -> Numbers:
    """Shares by few samples, and where it is worth it by many, if they are partly seen and near what is asked."""
    share = count(np.arange(len(worth_it)), FEW)
    near = np.flatnonzero(worth_it & (share > 0) & (share < 1) & (np.abs(share - look.share) < _DOUBTFUL))
    if len(near):
        share[near] = count(near, MANY)
    return share


def _some(values: Numbers, rows: Rows) -> Numbers:
    return values if len(values) == 1 else values[rows]


def samples(context: Context, look: Look, stands: tuple[Numbers, Extent], parts: Parts) -> Numbers:
    """Samples (n, m, 3) on the plan of the room that is looked at: posed centres (n, 2) [ft]."""
    centres, size = stands
    middles, spots = _raised(context, centres, look.seen_ft or 0.0), np.array(parts)
    if size.is_round:
        spots = spots[np.hypot(*spots.T) <= 1 / 2]
    posed = centres[:, None, :] + spots * np.array(size[:2]) * context.lattice.step_ft
    x, y = context.pose.back((posed[:, :, 0], posed[:, :, 1]))
    return np.stack([x, y, np.broadcast_to(middles[:, 2:], np.shape(x))], axis=2)


def _visible(context: Context, look: Look, starts: Numbers, targets: Numbers) -> NDArray[np.bool_]:
    """Which samples (n or 1, m, 3) are seen from the eyes (n or 1, 3) past the site's screens, both on the plan."""
    shape = np.broadcast_shapes((len(starts), 1, 3), targets.shape)
    first = np.broadcast_to(starts[:, None, :], shape).reshape(-1, 3)
    last = np.broadcast_to(targets, shape).reshape(-1, 3)
    return np.asarray(~blocked(first, last, screens_for(context.scenario.site, look)).reshape(shape[:2]))


def panel_of(context: Context, look: Look) -> Panel:
    """Panel of the screened room that is looked at; towards other rooms than the one that looks it is not known."""
    looks = [look_in(context, relation) for relation in context.scenario.brief.relations if _hides(relation, look.seen)]
    found = [fixed_eye(context.scenario.site, other.looker) for other in looks if other.seen == look.seen]
    lookers = np.array([eye.at for eye in found if eye is not None], dtype=np.float64).reshape(-1, 2)
    above_ft = side_kind("screen").height_ft - (look.seen_ft or 0.0)
    return Panel(above_ft, lookers, towards_eye=not look.must_see)


def _hides(relation: Relation, name: str) -> bool:
    return relation.kind == "out_of_view" and name in relation.between


def _behind_panel(panel: Panel, starts: Numbers, targets: Numbers, parts: Parts) -> NDArray[np.bool_]:
    """Whether each line comes into its rectangle under the panel's top; the samples are `parts` of it."""
    low, high = targets[:, None, :, :2].min(axis=2), targets[:, None, :, :2].max(axis=2)
    rim = (high - low) * (1 / (4 * max(part[0] for part in parts)) - 1 / 2)
    low, high = low - rim, high + rim
    first, way = starts[:, None, :2], targets[:, :, :2] - starts[:, None, :2]
    with np.errstate(divide="ignore", invalid="ignore"):
        into = (np.where(way > 0, low, high) - first) / way
    into = np.where(((first < low) | (first > high)) & (way != 0), into, 0.0)
    axis = into.argmax(axis=2)[:, :, None]
    entered = np.take_along_axis(into, axis, axis=2)[:, :, 0]
    above = (1.0 - entered) * (starts[:, None, 2] - targets[:, :, 2])
    stands = np.take_along_axis(_panelled(panel, low, high, way), axis, axis=2)[:, :, 0]
    return np.asarray(stands & (entered > _EVEN) & (above < panel.above_ft - _EVEN))


def _panelled(panel: Panel, low: Numbers, high: Numbers, way: Numbers) -> NDArray[np.bool_]:
    """Whether the side by which each line comes in along each axis bears the panel, shape (n, m, 2)."""
    stands = np.full(way.shape, panel.towards_eye)
    for looker in panel.lookers:
        stands |= np.where(way > 0, looker < low, looker > high)
    return stands


def _raised(context: Context, centres: Numbers, height_ft: float) -> Numbers:
    x, y = context.pose.back((centres[:, 0], centres[:, 1]))  # type: ignore[arg-type]
    spots = np.column_stack([x, y])
    return np.column_stack([spots, ground_of(context.scenario.site).z_ft(spots) + height_ft])
