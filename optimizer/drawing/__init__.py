"""The plan of a layout as outlines, furniture, texts and dimensions with roles: drawn once, for every writer."""

from optimizer.drawing.audience import AUDIENCES, Audience
from optimizer.drawing.marks import Area, Box, Circle, Dimension, Drawing, Line, Mark, Text
from optimizer.drawing.notable_marks import Notable
from optimizer.drawing.plan import Paths, draw_plan
from optimizer.drawing.room_axes import furniture, to_plan

__all__ = [
    "AUDIENCES",
    "Area",
    "Audience",
    "Box",
    "Circle",
    "Dimension",
    "Drawing",
    "Line",
    "Mark",
    "Notable",
    "Paths",
    "Text",
    "draw_plan",
    "furniture",
    "to_plan",
]
