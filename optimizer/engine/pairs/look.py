"""Sight between two rooms: asked of the few places that are worth asking, since each answer takes many rays."""

from dataclasses import dataclass

from optimizer.fields.sight_ends import Look


@dataclass(frozen=True, slots=True)
class View:
    """A look from one room of a pair at the other; `looks` is the end that looks, 0 the first, 1 the second."""

    look: Look
    looks: int


@dataclass(frozen=True, slots=True)
class Ask:
    """A look that a rule or wish asks for, and its loss where it is not kept [cents]. No part of it is in the model."""

    name: str
    view: View
    loss: int
