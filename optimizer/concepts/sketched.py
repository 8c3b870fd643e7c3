"""Layouts of one's own beside the concepts: checked, measured and priced alike, broken rules and all."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from optimizer.brief import Sketch, SketchedRoom
from optimizer.catalogue import SizedChoice, SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.option import Option
from optimizer.layout import Layout, Placement

NOT_DRAWN: Final = "it is not drawn in this layout"
DRAWN_LATER: Final = "it is drawn as a pad with stubs; what stands on them is built later"
_DIGITS: Final = 6
"""Decimals of a foot: conversion from metres adds less, and plane geometry fails on lengths far below."""


def sketched_options(case: Case) -> tuple[Option, ...]:
    """Every sketch of the scenario as an option without rank and proof, in the file's order."""
    return tuple(sketched_option(case, sketch, number) for number, sketch in enumerate(case.scenario.sketches, 1))


def sketched_option(case: Case, sketch: Sketch, number: int) -> Option:
    """One sketch with all that is found, measured and priced of it."""
    layout = sketched_layout(case, sketch)
    verdict = case.in_full(layout)
    option = case.described(layout, verdict)
    reason = _reason(len(verdict.findings))
    left_out = tuple(replace(left, why=_why(layout, left.room)) for left in option.left_out)
    sketched = replace(option, id=f"sketch-{number:02d}", reason=reason, sketch=sketch.name, left_out=left_out)
    return case.advised(sketched)


def sketched_layout(case: Case, sketch: Sketch) -> Layout:
    """Where the sketch has its rooms, in the brief's order, each in the choice that it names or is nearest to."""
    drawn = {room.room: room for room in sketch.rooms}
    return Layout(tuple(_placement(room, drawn[room.name]) for room in case.rooms if room.name in drawn))


def _placement(room: SizedRoom, drawn: SketchedRoom) -> Placement:
    label = drawn.choice or min(room.sizes, key=lambda choice: _size_off_ft(room, choice, drawn)).label
    figures = (*drawn.at_ft, drawn.width_ft, drawn.depth_ft)
    x_ft, y_ft, width_ft, depth_ft = (round(figure, _DIGITS) + 0.0 for figure in figures)
    choice = room.choice(label) or room.choices[0]  # of a choice that it does not have the check speaks
    return Placement(room.name, label, x_ft, y_ft, width_ft, depth_ft, drawn.front, shape=choice.shape)


def _size_off_ft(room: SizedRoom, choice: SizedChoice, drawn: SketchedRoom) -> float:
    """How far the drawn size is off a choice's [ft]: by the front where the room has one, else in the better turn."""
    return min(
        abs(drawn.width_ft - width_ft) + abs(drawn.depth_ft - depth_ft)
        for width_ft, depth_ft in _turns(room, choice, upright=drawn.front in {"+y", "-y"})
    )


def _turns(room: SizedRoom, choice: SizedChoice, *, upright: bool) -> Iterator[tuple[float, float]]:
    if upright or not room.rules.has_front:
        yield choice.width_ft, choice.depth_ft
    if not upright or not room.rules.has_front:
        yield choice.depth_ft, choice.width_ft


def _why(layout: Layout, room: str) -> str:
    """Why a sketch does without a room: one that waits has its place in it."""
    return NOT_DRAWN if layout.of(room) is None else DRAWN_LATER


def _reason(broken: int) -> str:
    if not broken:
        return "A layout of your own; it keeps every rule."
    things = "1 thing in it breaks" if broken == 1 else f"{broken} things in it break"
    return f"A layout of your own; {things} a rule."
