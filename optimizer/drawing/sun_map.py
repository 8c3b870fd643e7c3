"""The plan with its hours of direct sun in five classes, and the hours of every room."""

from calendar import month_name
from collections.abc import Sequence
from typing import Final

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from optimizer.brief import SunWish
from optimizer.catalogue import SizedRoom
from optimizer.drawing.backdrop import Caption, plan_sheet, room_texts
from optimizer.drawing.marks import Drawing, Mark
from optimizer.drawing.outlines import areas_of, box_of
from optimizer.drawing.paving_marks import PAVING_WORDS
from optimizer.drawing.sheet_size import text_scale
from optimizer.drawing.wall_marks import WALL_WORDS
from optimizer.fields import Caster, cover_casters, open_yard, room_sun_hours, sun_class, sun_hours
from optimizer.layout import Placed, Placement
from optimizer.scenario import Scenario
from optimizer.site import Site

CELL_FT: Final = 2.0
CLASSES: Final = 5
DAY_EDGES_H: Final = (2.0, 4.0, 6.0, 8.0)
"""Edges between classes for a long day; from 6 h on gardeners speak of full sun (extension services)."""
LONG_DAY_H: Final = 10.0
WHOLE_DAYS: Final[dict[str, SunWish]] = {
    "a June day": SunWish("sun", 8.0, 20.0, (6,)),
    "a September day": SunWish("sun", 8.0, 20.0, (9,)),
    "a December day": SunWish("sun", 8.0, 20.0, (12,)),
}


def sun_windows(rooms: Sequence[SizedRoom]) -> dict[str, SunWish]:
    """Windows that a map can be made for, by name: each room's own wish, then whole days."""
    return {**{room.name: room.sun for room in rooms if room.sun is not None}, **WHOLE_DAYS}


def summer_day(site: Site) -> str:
    """Name of the window of a summer's day at the site: half a year apart south of the equator."""
    return "a June day" if site.place.latitude >= 0 else "a December day"


def window_text(wish: SunWish) -> str:
    """Write a window as `June to August, 16:00 to 19:00`."""
    months = sorted(wish.months)
    if len(months) > 1 and months == list(range(months[0], months[-1] + 1)):
        named = f"{month_name[months[0]]} to {month_name[months[-1]]}"
    else:
        named = ", ".join(month_name[month] for month in months)
    return f"{named}, {_clock(wish.from_h)} to {_clock(wish.to_h)}"


def _clock(hour: float) -> str:
    whole, minutes = divmod(round(hour * 60), 60)
    return f"{whole}:{minutes:02d}"


def class_edges_h(wish: SunWish) -> tuple[float, ...]:
    """Four hours that part the five classes: fixed for a long day, else fifths of the window."""
    if wish.window_h >= LONG_DAY_H:
        return DAY_EDGES_H
    return tuple(wish.window_h * step / CLASSES for step in range(1, CLASSES))


def draw_sun_map(scenario: Scenario, placed: Placed, wish: SunWish, *, title: str) -> Drawing:
    """Draw the mean hours of direct sun a day in a window, in cells of 2 ft, and each room's mean under its name."""
    site, layout, edges = scenario.site, placed.layout, class_edges_h(wish)
    roofs = cover_casters(site, placed)
    hours = {placement.room: _room_hours(site, wish, placement, roofs) for placement in layout.placements}
    texts = room_texts(layout, lambda p: f"{hours[p.room]:.1f} of {wish.window_h:g} h", text_scale(site))
    said = "; ".join(f"{room} {figure:.1f} h" for room, figure in hours.items())
    return plan_sheet(
        scenario,
        layout,
        _cell_marks(site, wish, edges, roofs),
        texts,
        Caption(
            title=title,
            description=f"Sun in the yard of {scenario.name}, {window_text(wish)}. Rooms: {said or 'none'}.",
            words={
                **_words(edges, wish.window_h),
                "crown": "kept tree, crown",
                "roof": "roof over",
                **WALL_WORDS,
                **PAVING_WORDS,
            },
            notes=(f"Mean hours of direct sun a day under a clear sky: {window_text(wish)}, the 21st of each month.",),
        ),
    )


def _words(edges: tuple[float, ...], window_h: float) -> dict[str, str]:
    """Words of the legend; for a long day what gardeners call so many hours."""
    bounds = (0.0, *edges, window_h)
    named = [f": {sun_class(low)}" if window_h >= LONG_DAY_H else "" for low in bounds]
    return {f"sun.{k + 1}": f"{bounds[k]:.3g} to {bounds[k + 1]:.3g} h{named[k] or ' of sun'}" for k in range(CLASSES)}


def _room_hours(site: Site, wish: SunWish, placement: Placement, roofs: tuple[Caster, ...]) -> float:
    x1, y1, x2, y2 = box_of(placement)
    return room_sun_hours(site, wish, low=(x1, y1), high=(x2, y2), shape=placement.shape, extra=roofs)


def _cell_marks(site: Site, wish: SunWish, edges: tuple[float, ...], roofs: tuple[Caster, ...]) -> tuple[Mark, ...]:
    """Cells of one class as one area each, cut to the open yard."""
    yard = open_yard(site)
    cells, middles = _cells(yard)
    classes = np.digitize(sun_hours(site, middles, wish, extra=roofs), np.array(edges) - 1e-9)
    merged = ((k + 1, shapely.union_all(cells[classes == k])) for k in range(CLASSES))
    return tuple(mark for k, area in merged for mark in areas_of(f"sun.{k}", area.intersection(yard)))


def _cells(yard: BaseGeometry) -> tuple[NDArray[np.object_], NDArray[np.float64]]:
    """Squares that meet the yard, and their middles (n, 2)."""
    x1, y1, x2, y2 = yard.bounds
    xs, ys = np.meshgrid(np.arange(x1, x2, CELL_FT), np.arange(y1, y2, CELL_FT))
    low = np.stack([xs.ravel(), ys.ravel()], axis=1)
    cells = shapely.box(low[:, 0], low[:, 1], low[:, 0] + CELL_FT, low[:, 1] + CELL_FT)
    meets = shapely.intersects(yard, cells)
    return cells[meets], low[meets] + CELL_FT / 2
