"""What is asked of a room: why it is left out, not here, not larger, not in the sun; and what asking for it changes."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

from shapely import Point, Polygon

from optimizer.brief import Hold, SunWish
from optimizer.catalogue import SizedRoom
from optimizer.concepts.case import Case
from optimizer.concepts.option import Option
from optimizer.concepts.whys.changes import Change, required
from optimizer.concepts.whys.words import place
from optimizer.errors import InputError, Problem

Kind = Literal["left out", "here", "larger", "sun"]


@dataclass(frozen=True, slots=True)
class Question:
    """`at_ft` is the lower left corner on the plan [ft] that is asked about, `choice` the size."""

    kind: Kind
    room: str
    at_ft: tuple[float, float] | None = None
    choice: str | None = None

    def words(self, case: Case) -> str:
        """The question as a person would ask it."""
        match self.kind:
            case "here":
                return f"Why is the {self.room} not at {place(case.scenario, self._at)}?"
            case "larger":
                return f"Why is the {self.room} not larger, as {self.choice}?"
            case "sun":
                wanted = "shade" if (sun := self._wish(case)) is not None and sun.want == "shade" else "sun"
                return f"Why does the {self.room} not get all the {wanted} that is wished for?"
            case _:
                return f"Why is the {self.room} left out?"

    def asked(self, case: Case) -> Change:
        """The change that asks for it."""
        unit_ft, room = case.scenario.unit_ft, f"/brief/rooms/{self._index(case)}"
        match self.kind:
            case "here":
                at = [round(figure / unit_ft, 6) + 0.0 for figure in self._at]
                words = f"hold the {self.room} at {place(case.scenario, self._at)}"
                return Change(words, (hold_added(case, {"room": self.room, "at": at}),))
            case "larger":
                added = hold_added(case, {"room": self.room, "choice": self.choice})
                return Change(f"hold the {self.room} to {self.choice}", (added,))
            case "sun":
                sun = self._wish(case)
                assert sun is not None
                words = f"insist on {sun.wished_h:g} h of {sun.want} for the {self.room}"
                asked = (("add", f"{room}/sun/least", sun.wished_h), ("add", f"{room}/required", True))
                return Change(words, asked)
            case _:
                return required(case, self.room)

    def clashing(self, case: Case) -> tuple[Hold, ...]:
        """Holds of the room that say otherwise."""
        holds = case.scenario.brief.holds_of(self.room)
        if self.kind == "larger":
            return tuple(hold for hold in holds if hold.choice not in {None, self.choice})
        return tuple(hold for hold in holds if self._bars(hold)) if self.kind == "here" else ()

    def _bars(self, hold: Hold) -> bool:
        at = Point(self._at)
        return (
            hold.at_ft not in {None, self.at_ft}
            or (hold.within is not None and not Polygon(hold.within).covers(at))
            or (hold.not_in is not None and bool(Polygon(hold.not_in).contains(at)))
        )

    @property
    def _at(self) -> tuple[float, float]:
        assert self.at_ft is not None
        return self.at_ft

    def _index(self, case: Case) -> int:
        return [room.name for room in case.scenario.brief.rooms].index(self.room)

    def _wish(self, case: Case) -> SunWish | None:
        return case.scenario.brief.rooms[self._index(case)].sun


def hold_added(case: Case, hold: Mapping[str, object]) -> tuple[str, str, object]:
    """Operation that adds a hold to the brief."""
    holds = case.scenario.brief.holds
    return ("add", "/brief/holds/-", hold) if holds else ("add", "/brief/holds", [hold])


def refuse_unanswerable(case: Case, question: Question, option: Option | None) -> None:
    """Raise InputError, with what there is, where a question is about nothing that there is."""
    problems = tuple(_problems(case, question, option))
    if problems:
        raise InputError(problems)


def _problems(case: Case, question: Question, option: Option | None) -> Iterator[Problem]:
    names = [room.name for room in case.rooms]
    if question.room not in names:
        yield Problem("the name of a room", repr(question.room), f"there is {', '.join(names)}", "--room")
        return
    room = case.rooms[names.index(question.room)]
    if question.kind == "larger":
        yield from _no_larger(room, question.choice or "", option)
    if question.at_ft is not None and not Polygon(case.scenario.site.boundary).covers(Point(question.at_ft)):
        found = f"{place(case.scenario, question.at_ft)}, outside"
        yield Problem("a corner inside the boundary", found, "check the digits and the unit", "--at")
    if question.kind == "sun" and room.sun is None:
        wished = ", ".join(other.name for other in case.rooms if other.sun) or "none"
        yield Problem("a room with a wish for sun or shade", repr(room.name), f"there is {wished}", "--room")
    if question.kind == "left out" and option is not None and room.name not in option.left_out_rooms:
        lacking = ", ".join(option.left_out_rooms) or "no room"
        found = f"{option.id}, which has it"
        yield Problem(f"a concept without the {room.name}", found, f"it leaves out {lacking}", "--option")


def _no_larger(room: SizedRoom, asked: str, option: Option | None) -> Iterator[Problem]:
    """Refuse a choice that there is not, or that is no larger than the concept's, or than the smallest size.

    A roof or a screen to a size is more than the size without.
    """
    choice = room.choice(asked)
    if choice is None or choice.is_later:
        labels = ", ".join(other.label for other in room.choices if not other.is_later)
        yield Problem(f"a choice of the {room.name}", repr(asked), f"it has {labels}", "--choice")
        return
    placed = None if option is None else option.layout.of(room.name)
    there = None if placed is None else room.choice(placed.choice)
    there = there or min(room.sizes, key=lambda size: size.area_sqft)
    adds_roof = choice.cover is not None and there.cover is None
    adds_screen = choice.is_screened and not there.is_screened
    if not (adds_roof or adds_screen) and choice.area_sqft <= there.area_sqft:
        larger = ", ".join(size.label for size in room.sizes if size.area_sqft > there.area_sqft)
        advice = f"larger is {larger}" if larger else f"the {room.name} has no larger size"
        yield Problem(f"a choice of the {room.name} larger than {there.label}", repr(asked), advice, "--choice")
