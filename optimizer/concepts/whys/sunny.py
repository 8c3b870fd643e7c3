"""What keeps a room from its sun: what throws the shade where it stands, and which rules bar the places with sun."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any, Final

import numpy as np

from optimizer.brief import RULES, RuleId, SunWish
from optimizer.catalogue import SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.whys.words import sentence
from optimizer.concepts.words import listed
from optimizer.engine.grid.context import Context, context_of
from optimizer.engine.grid.lattice import Cells
from optimizer.engine.grid.sun_hours import mean_hours
from optimizer.engine.grid.variants import Variant
from optimizer.engine.problem import barred_places, sizes_of
from optimizer.fields import room_sun_hours
from optimizer.layout import Layout
from optimizer.site import Site

LEAST_TOLD_H: Final = 0.1
_TOLERANCE_H: Final = 0.05
_MOST_TOLD: Final = 4
_THINGS: Final = ("buildings", "structures", "trees", "walls", "surroundings")


def shade_words(case: Case, layout: Layout, name: str) -> str:
    """Hours that a room gets where it stands, and how much more it would get without each thing in the sun's way."""
    placed = case.placed(layout).of(name)
    wish = None if placed is None else placed.room.sun
    if placed is None or wish is None:
        return ""
    low, high = placed.shape.bounds[:2], placed.shape.bounds[2:]

    def hours(site: Site) -> float:
        return room_sun_hours(site, wish, low=low, high=high)

    site = case.scenario.site
    here = hours(site)
    told = f"Where it stands it gets {wish.given_h(here):.1f} of the {wish.wished_h:.1f} hours of {wish.want}."
    if wish.want == "shade":
        return told
    taken = sorted(((hours(less) - here, thing) for thing, less in _without_each(site)), reverse=True)
    shading = [f"the {thing} takes {more:.1f} h" for more, thing in taken[:_MOST_TOLD] if more >= LEAST_TOLD_H]
    return f"{told} {sentence(listed(shading))}" if shading else told


def places_words(case: Case, name: str) -> str:
    """How many places of the yard have the hours that are wished for, and which rules bar how many of them."""
    context = context_of(case.scenario, case.rooms)
    room = next(room for room in case.rooms if room.name == name)
    assert room.sun is not None
    sunny = free = 0
    barred: dict[RuleId, int] = {}
    for variant in sizes_of(context, _plain(room)):
        given, bars = _sunny(context, room, variant, room.sun), barred_places(context, room, variant)
        rows, columns = given.shape
        if (built := bars.pop("off_buildings", None)) is not None:
            given &= ~built[:rows, :columns]
        sunny += int(given.sum())
        left = given.copy()
        for rule, cells in bars.items():
            if rule != "sun_least":
                barred[rule] = barred.get(rule, 0) + int((given & cells[:rows, :columns]).sum())
                left &= ~cells[:rows, :columns]
        free += int(left.sum())
    return _told(room.sun, (sunny, free), barred)


def _told(sun: SunWish, counts: tuple[int, int], barred: dict[RuleId, int]) -> str:
    sunny, free = counts
    if not sunny:
        return f"No place in or round the yard gets the {sun.wished_h:g} hours of {sun.want} that are wished for."
    words = f"{sunny:,} places in and round the yard get the {sun.wished_h:g} hours of {sun.want} that are wished for"
    most = sorted(((count, rule) for rule, count in barred.items() if count), reverse=True)[:_MOST_TOLD]
    parts = [f"{RULES[rule].sentence.removesuffix('.')} ({count:,})" for count, rule in most]
    bars = f" What bars the others, some of them more than once: {'; '.join(parts)}." if parts else ""
    return f"{words}; on {free:,} of them the room may stand by itself.{bars}"


def _sunny(context: Context, room: SizedRoom, variant: Variant, sun: SunWish) -> Cells:
    hours = mean_hours(context, room, variant)
    assert hours is not None
    given = hours if sun.want == "sun" else sun.window_h - hours
    return np.asarray(given >= sun.wished_h - _TOLERANCE_H)


def _plain(room: SizedRoom) -> SizedRoom:
    """The room in its smallest choice."""
    least = min(room.choices, key=lambda choice: (choice.width_ft * choice.depth_ft, choice.cover is not None))
    return replace(room, choices=(least,))


def _without_each(site: Site) -> Iterator[tuple[str, Site]]:
    """The name of each thing that may throw shade, with the site that lacks it."""
    for part in _THINGS:
        things = getattr(site, part)
        for number, thing in enumerate(things):
            less: dict[str, Any] = {part: (*things[:number], *things[number + 1 :])}
            yield thing.name, replace(site, **less)
