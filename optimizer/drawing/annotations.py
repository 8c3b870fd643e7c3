"""Everything that is written on the plan: labels of rooms, dimensions and names, none over another."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache

from shapely import LinearRing, LineString, Point, Polygon
from shapely.geometry.base import BaseGeometry

from optimizer.drawing.audience import Audience
from optimizer.drawing.dimensioning import Measured, dimensions
from optimizer.drawing.free_space import union_of
from optimizer.drawing.label_forms import large_name
from optimizer.drawing.level_marks import level_marks
from optimizer.drawing.marks import TYPE_FT, Area, Box, Circle, Dimension, Mark, Names, Text
from optimizer.drawing.opening_marks import entrance_marks
from optimizer.drawing.outlines import box_of, polygon_of
from optimizer.drawing.room_axes import furniture
from optimizer.drawing.room_labels import Ground, Label, label_rooms, name_rooms
from optimizer.drawing.room_marks import LATER_ROLE, later_items
from optimizer.drawing.sheet_size import screen_scale, text_scale
from optimizer.drawing.site_marks import UTILITY_RADIUS
from optimizer.drawing.site_names import site_names
from optimizer.drawing.words import Units
from optimizer.layout import Placed, PlacedRoom, Placement
from optimizer.site import Site

DASHED = ("furniture.future", LATER_ROLE)
OUTLINE_ONLY = (*DASHED, "furniture.water")
"""What may be built one day is a dashed outline, and water is empty: there is room for a label within."""


@dataclass(frozen=True, slots=True)
class Underfoot:
    """What a plan shows that texts keep off: labels beside a room leave `paved` free, ways and door zones, and cover
    `beds`, crowns and `banded`, the way in of a later machine, only where nothing else is free; nothing is written over
    `marked`. No figure of a dimension stands on beds, bands or `stepped`, landings and steps; none and no label beside
    a room crosses what is `barred`, a pool's barrier.
    """

    paved: BaseGeometry
    beds: BaseGeometry
    stepped: BaseGeometry
    banded: BaseGeometry
    barred: BaseGeometry
    marked: BaseGeometry


@dataclass(frozen=True, slots=True)
class Said:
    """What is written of rooms besides name and size: what ground is kept for, how high they lie [ft]; and to whom."""

    purposes: Mapping[str, Sequence[str]]
    levels: Mapping[str, float]
    audience: Audience


@dataclass(frozen=True, slots=True)
class Annotations:
    """Leaders and level marks, texts and dimensions of a plan; names for a screen, where an owner looks at it."""

    marks: tuple[Mark, ...]
    texts: tuple[Text, ...]
    dimensions: tuple[Dimension, ...]
    on_screen: Names = field(default_factory=Names)


def annotate(
    site: Site,
    placed: Placed,
    underfoot: Underfoot,
    said: Said,
    *,
    plan_box: Box,
    units: Units,
    scale: float,
) -> Annotations:
    """Write on a plan: sizes first, then rooms, which say what no dimension says, then names, that give way to all.

    Dimensions, levels and utilities are for a designer alone. `scale` enlarges all texts.
    """
    is_designers = said.audience == "designer"
    roofs = _roofs(site, placed)
    placements, furniture = _named(placed), [_fittings(room) for room in placed]
    fittings = [(union_of(standing, roofs), dashed) for standing, dashed in map(_parted, placed)]
    marked = underfoot.marked
    solid, edges = _solid(site), _edges(site)
    sizes = Measured((), frozenset())
    if is_designers:
        sizes = dimensions(
            site,
            placements,
            taken=(solid, marked, *furniture),
            unwritten=_unwritten(site, underfoot),
            plan_box=plan_box,
            units=units,
            scale=scale,
        )
    ground = Ground(
        taken=(solid, marked, underfoot.paved, underfoot.barred, edges),
        shunned=_shunned(site, underfoot, plan_box),
        measures=union_of(*(size.box for size in sizes.dimensions)),
        figures=union_of(*(size.label.box for size in sizes.dimensions)),
        solid=union_of(marked, *(Polygon(building.outline) for building in site.buildings), *_arrows(site)),
        banded=underfoot.banded,
        plan_box=plan_box,
    )
    labels = label_rooms(
        placements, fittings, ground, measured=sizes.rooms, purposes=said.purposes, units=units, scale=scale
    )
    floors = [box_of(placement) for placement in placements]
    leaders = tuple(leader for label in labels for leader in label.leaders)
    written = union_of(*(label.box for label in labels), *floors, *(LineString(line.points) for line in leaders))
    taken = (edges, marked, written, ground.measures)
    shunned = union_of(underfoot.beds, underfoot.banded)
    names = site_names(site, taken=taken, shunned=shunned, plan_box=plan_box, scale=scale)
    large = [text for placement in placements for text in large_name(placement)]
    texts = (*names, *(text for label in labels for text in label.texts), *large)
    if not is_designers:
        alone = name_rooms(placements, fittings, ground, scale=screen_scale(plan_box))
        return Annotations(leaders, texts, (), _names(alone))
    letters = [Text("utility", utility.at, utility.kind[0].upper(), TYPE_FT * scale) for utility in site.utilities]
    over = union_of(*(label.box for label in labels), *furniture, roofs, ground.measures, marked)
    beside = union_of(over, edges, solid, underfoot.paved, underfoot.beds, *(text.box for text in (*letters, *texts)))
    heights, figures = level_marks(placed, said.levels, taken=over, beside=beside, units=units, scale=scale)
    return Annotations((*leaders, *heights), (*letters, *texts, *figures), sizes.dimensions)


def _shunned(site: Site, underfoot: Underfoot, plan_box: Box) -> BaseGeometry:
    """Ground on which a label beside a room stands only where none other is free."""
    beyond = polygon_of(plan_box).difference(Polygon(site.boundary))
    crowns = (Point(tree.at).buffer(tree.canopy_radius_ft) for tree in site.trees)
    return union_of(underfoot.beds, underfoot.banded, beyond, *crowns)


def _names(labels: Sequence[Label]) -> Names:
    return Names(
        tuple(leader for label in labels for leader in label.leaders),
        tuple(text for label in labels for text in label.texts),
    )


def _named(placed: Placed) -> tuple[Placement, ...]:
    """Placements by the names that are written on them."""
    return tuple(replace(p, room=p.title) for p in placed.layout.placements)


def _fittings(room: PlacedRoom) -> BaseGeometry:
    return union_of(*_parted(room))


def _parted(room: PlacedRoom) -> tuple[BaseGeometry, BaseGeometry]:
    """What stands in a room, and what may come there one day, which is a dashed outline."""
    marks = furniture(room.placement, room.choice) if room.choice else ()
    drawn = later_items(room) if room.is_later else marks
    later = tuple(mark for mark in drawn if mark.role in DASHED)
    return union_of(*(_shape(mark) for mark in drawn if mark not in later)), union_of(*map(_shape, later))


def _roofs(site: Site, placed: Placed) -> BaseGeometry:
    """Outlines of roofs, old and new, that no text crosses."""
    old = (LinearRing(structure.outline) for structure in site.structures)
    new = (room.shape.exterior for room, choice in placed.chosen if choice.cover)
    return union_of(*old, *new)


def _shape(mark: Mark) -> BaseGeometry:
    if mark.role in OUTLINE_ONLY and isinstance(mark, Area):
        return LinearRing(mark.rings[0])
    if isinstance(mark, Circle):
        return Point(mark.centre).buffer(mark.radius_ft)
    return Polygon(mark.rings[0]) if isinstance(mark, Area) else LinearRing(mark.points)


@lru_cache(maxsize=8)
def _solid(site: Site) -> BaseGeometry:
    """Where no label beside a room and no dimension may lie."""
    return union_of(
        *(Polygon(building.outline) for building in site.buildings),
        *(Point(tree.at).buffer(1.0 + tree.trunk_diameter_ft) for tree in site.trees),
        LinearRing(site.boundary),
    )


def _unwritten(site: Site, underfoot: Underfoot) -> BaseGeometry:
    """Where no figure of a dimension stands."""
    return union_of(underfoot.beds, underfoot.stepped, underfoot.banded, underfoot.barred, *_utilities(site))


def _utilities(site: Site) -> Iterator[BaseGeometry]:
    return (Point(utility.at).buffer(UTILITY_RADIUS * text_scale(site)) for utility in site.utilities)


def _arrows(site: Site) -> Iterator[BaseGeometry]:
    """The arrowheads at entrances."""
    marks = (mark for entrance in site.entrances for mark in entrance_marks(entrance))
    return (_shape(mark) for mark in marks if isinstance(mark, Area))


@lru_cache(maxsize=8)
def _edges(site: Site) -> BaseGeometry:
    """Lines and marks that no label beside a room and no name of the site may cross."""
    return union_of(
        LinearRing(site.boundary),
        *(LinearRing(building.outline) for building in site.buildings),
        *(LinearRing(structure.outline) for structure in site.structures),
        *(Point(tree.at).buffer(0.5 + tree.trunk_diameter_ft) for tree in site.trees),
        *_arrows(site),
        *_utilities(site),
    )
