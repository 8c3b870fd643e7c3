"""How each role looks: our own colours, line weights and hatches, and nothing else.

Weights and dashes are in points on paper (1/72 in) whatever the scale; hatches are in feet of the ground.
"""

from dataclasses import dataclass
from typing import Final

PAPER = "#f8f5ee"
INK = "#2b3036"
SOFT_INK = "#5d646b"
SANS = "'Helvetica Neue', Arial, 'Liberation Sans', 'DejaVu Sans', sans-serif"
SERIF = "Georgia, 'Liberation Serif', 'DejaVu Serif', serif"


@dataclass(frozen=True, slots=True)
class Look:
    """Fill, line and hatch of a role; None where it has none."""

    fill: str | None = None
    line: str | None = None
    weight_pt: float = 0.5
    dash_pt: tuple[float, ...] = ()
    hatch: str | None = None
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Hatch:
    """A tile of fine lines: size and path in feet of the ground (y down), and its line."""

    width_ft: float
    height_ft: float
    path: str
    line: str
    weight_pt: float = 0.3
    turn_deg: float = 0.0


@dataclass(frozen=True, slots=True)
class Letters:
    """Colour and style of a text role."""

    fill: str = INK
    family: str = SANS
    weight: int = 400
    italic: bool = False
    halo: str | None = None


LOOKS: Final[dict[str, Look]] = {
    "ground": Look(fill="#e9ecd9", hatch="grass"),
    "planting": Look(fill="#d3ddbb", hatch="leaves"),
    "keep_out": Look(line="#a08f78", weight_pt=0.4, dash_pt=(4, 2), hatch="keep_out"),
    "setback": Look(line="#8e8a80", weight_pt=0.45, dash_pt=(7, 2, 1, 2)),
    "boundary": Look(line=INK, weight_pt=1.3, dash_pt=(14, 3, 3, 3)),
    "neighbour": Look(fill="#e3dfd6", line="#a9a49a", weight_pt=0.5, hatch="poche_light"),
    "fence": Look(line="#8b7a63", weight_pt=0.9, dash_pt=(1, 2)),
    "eye": Look(fill="#a9a49a", line="#7c776d", weight_pt=0.4),
    "path": Look(fill="#e6dccb", line="#8a7d6b", weight_pt=0.55, hatch="path"),
    "way": Look(line="#8a7d6b", weight_pt=0.35, dash_pt=(2.5, 2.5)),
    "door_zone": Look(fill="#ddd6ca", line="#5f594f", weight_pt=0.6),
    "step": Look(line="#5f594f", weight_pt=0.5),
    "building": Look(fill="#c9c4bb", line="#1f2429", weight_pt=2.4, hatch="poche"),
    "door_gap": Look(line="#f8f5ee", weight_pt=3.0),
    "door": Look(line=INK, weight_pt=0.8),
    "swing": Look(line=SOFT_INK, weight_pt=0.3),
    "window_gap": Look(line="#f8f5ee", weight_pt=3.0),
    "window": Look(line="#4d7285", weight_pt=1.1),
    "entrance_gap": Look(line="#f8f5ee", weight_pt=2.4),
    "entrance": Look(fill="#3f4a52"),
    "roof": Look(line="#4a4038", weight_pt=0.9, dash_pt=(6, 3)),
    "new_roof": Look(line="#8a4b2d", weight_pt=1.3, dash_pt=(6, 3)),
    "riser": Look(line="#3f3a34", weight_pt=0.9),
    "screen": Look(line="#5b3a29", weight_pt=2.2),
    "post": Look(fill="#4a4038", line="#4a4038", weight_pt=0.3),
    "crown": Look(fill="#9fb57f", line="#5f7a49", weight_pt=0.7, opacity=0.30),
    "crown_inner": Look(line="#7f9867", weight_pt=0.35),
    "trunk": Look(fill="#6b5640", line="#4a3a2a", weight_pt=0.4),
    "root_zone": Look(line="#5f7a49", weight_pt=0.45, dash_pt=(2, 2)),
    "utility": Look(fill="#f8f5ee", line=SOFT_INK, weight_pt=0.6),
    "room": Look(fill="#e8dcc4", line="#3b3a36", weight_pt=1.1),
    "room.gathering": Look(fill="#ecdcb9", line="#4b4233", weight_pt=1.1, hatch="bond"),
    "room.kitchen": Look(fill="#dfc8ab", line="#4b3d2c", weight_pt=1.1, hatch="square"),
    "room.fire": Look(fill="#eacbb4", line="#573a2a", weight_pt=1.1, hatch="diagonal"),
    "room.nook": Look(fill="#dcdfc4", line="#424733", weight_pt=1.1, hatch="random"),
    "room.reserve": Look(fill="#cfe0e4", line="#33505a", weight_pt=1.1, dash_pt=(7, 3), hatch="water"),
    "room.arrival": Look(fill="#e2d6c6", line="#4b4540", weight_pt=1.1, hatch="square"),
    "room.lawn": Look(fill="#cfdfb2", line="#566b3d", weight_pt=0.9, hatch="grass"),
    "room.bed": Look(fill="#bccf9d", line="#4f6638", weight_pt=0.9, hatch="leaves"),
    "room.storage": Look(fill="#d6d0d6", line="#44404a", weight_pt=1.3, hatch="poche_light"),
    "room.play": Look(fill="#eee0ac", line="#5c5330", weight_pt=1.1, hatch="dots"),
    "side": Look(line="#4b4233", weight_pt=0.8),
    "side.bar": Look(line="#4b3d2c", weight_pt=0.5, dash_pt=(1.5, 1.5)),
    "side.counter": Look(line="#4b3d2c", weight_pt=0.5, dash_pt=(1.5, 1.5)),
    "side.seat": Look(line="#6d6453", weight_pt=1.2),
    "side.back": Look(line="#5f7a49", weight_pt=2.6),
    "furniture": Look(fill="#fbf8f1", line="#454039", weight_pt=0.45),
    "furniture.table": Look(fill="#f6ecd6", line="#454039", weight_pt=0.5),
    "furniture.sofa": Look(fill="#efe9dc", line="#454039", weight_pt=0.5),
    "furniture.lounge chair": Look(fill="#efe9dc", line="#454039", weight_pt=0.45),
    "furniture.seat wall": Look(fill="#b8ad99", line="#4b4233", weight_pt=0.7),
    "furniture.chair": Look(fill="#f4eee1", line="#454039", weight_pt=0.4),
    "furniture.stool": Look(fill="#f4eee1", line="#454039", weight_pt=0.4),
    "furniture.counter": Look(fill="#efe9dd", line="#3f362b", weight_pt=0.7),
    "furniture.bar": Look(fill="#e6d9c3", line="#3f362b", weight_pt=0.7),
    "furniture.grill": Look(fill="#8f9499", line="#2b3036", weight_pt=0.6),
    "furniture.sink": Look(fill="#d5e3e6", line="#33505a", weight_pt=0.5),
    "furniture.refrigerator": Look(fill="#d9dcde", line="#2b3036", weight_pt=0.5),
    "furniture.fire pit": Look(fill="#d98f63", line="#6a3418", weight_pt=0.9),
    "furniture.future": Look(line="#33505a", weight_pt=0.6, dash_pt=(4, 3)),
    "furniture.planting": Look(fill="#a9c088", line="#5f7a49", weight_pt=0.4, hatch="leaves"),
    "leader": Look(line=SOFT_INK, weight_pt=0.5),
    "label_plate": Look(fill="#f8f5ee", opacity=0.85),
    "dimension": Look(line="#8a3b2e", weight_pt=0.4),
    "dimension_tick": Look(line="#8a3b2e", weight_pt=0.9),
    "bare_ground": Look(fill="#f1efe4"),
    "room_outline": Look(line="#2b3036", weight_pt=1.0),
    "contour": Look(line="#9a6b3f", weight_pt=0.5),
    "contour_strong": Look(line="#7d4f27", weight_pt=1.1),
    "spot_level": Look(line="#1f4e5f", weight_pt=0.6),
    "sun.1": Look(fill="#5b6f8f"),
    "sun.2": Look(fill="#93a5b5"),
    "sun.3": Look(fill="#cfd0bf"),
    "sun.4": Look(fill="#f0d68c"),
    "sun.5": Look(fill="#f6b73c"),
    "seen": Look(fill="#e0a526", line="#a87410", weight_pt=0.5, opacity=0.38),
    "eye_here": Look(fill="#8a3b2e", line="#f8f5ee", weight_pt=1.0),
    "section_earth": Look(fill="#d9cdb8", line="#4a3a2a", weight_pt=1.2, hatch="poche_light"),
    "section_ground": Look(line="#7d4f27", weight_pt=0.7, dash_pt=(4, 2)),
    "section_building": Look(fill="#c9c4bb", line="#1f2429", weight_pt=1.6, hatch="poche"),
    "section_room": Look(fill="#c58f5c", line="#4b3d2c", weight_pt=0.9),
    "section_post": Look(fill="#4a4038"),
    "section_roof": Look(fill="#8d7f70", line="#4a4038", weight_pt=0.8),
    "section_crown": Look(fill="#9fb57f", line="#5f7a49", weight_pt=0.7, opacity=0.55),
    "section_trunk": Look(fill="#6b5640"),
    "section_fence": Look(line="#8b7a63", weight_pt=2.0),
    "section_boundary": Look(line=INK, weight_pt=1.0, dash_pt=(6, 2, 2, 2)),
    "section_person": Look(line="#8a3b2e", weight_pt=0.6, dash_pt=(2, 2)),
    "section_eye": Look(fill="#8a3b2e"),
    "sun_ray": Look(line="#c98512", weight_pt=1.6),
    "sun_head": Look(fill="#c98512"),
    "rule": Look(line=INK, weight_pt=0.8),
    "north_ring": Look(line=SOFT_INK, weight_pt=0.4),
    "north_light": Look(fill=PAPER, line=INK, weight_pt=0.5),
    "north_dark": Look(fill=INK, line=INK, weight_pt=0.5),
    "bar_dark": Look(fill=INK, line=INK, weight_pt=0.5),
    "bar_light": Look(fill=PAPER, line=INK, weight_pt=0.5),
}

HATCHES: Final[dict[str, Hatch]] = {
    "grass": Hatch(3.2, 2.6, "M.4 .9l.12-.35M.62 .9l.02-.4M2 2.1l.12-.35M2.22 2.1l.02-.4", "#b3bd94"),
    "leaves": Hatch(
        2.4, 2.2, "M.3 .8q.3-.5 .6 0q-.3 .4-.6 0M1.5 1.8q.3-.5 .6 0q-.3 .4-.6 0M1.7 .4h.05M.6 1.7h.05", "#8ba470", 0.4
    ),
    "keep_out": Hatch(2.4, 2.4, "M0 1.2h2.4", "#b39f83", 0.35, 45.0),
    "poche": Hatch(0.9, 0.9, "M0 .45h.9", "#9d978c", 0.45, 45.0),
    "poche_light": Hatch(1.3, 1.3, "M0 .65h1.3", "#c3bdb2", 0.35, 45.0),
    "path": Hatch(1.5, 1.5, "M0 0h1.5M.75 0v1.5", "#cdbfa8", 0.3),
    "bond": Hatch(2.0, 2.0, "M0 0h2M0 1h2M.5 0v1M1.5 1v1", "#cfbb90"),
    "square": Hatch(2.0, 2.0, "M0 0h2M0 0v2", "#c2a785"),
    "diagonal": Hatch(1.8, 1.8, "M0 0h1.8M0 0v1.8", "#d3a88a", 0.3, 45.0),
    "random": Hatch(3.0, 3.0, "M0 0h3M0 1.4h1.8M1.8 0v3M.8 1.4v1.6M1.8 2.1h1.2", "#b8bd9a"),
    "water": Hatch(4.0, 2.0, "M.4 .6q.5-.35 1 0t1 0M2.2 1.6q.4-.3 .8 0t.8 0", "#9dbec6", 0.4),
    "dots": Hatch(1.6, 1.6, "M.4 .4h.06M1.2 1.2h.06", "#a8975a", 0.7),
}

LETTERS: Final[dict[str, Letters]] = {
    "room_name": Letters(weight=700, halo="#f8f5ee"),
    "room_name_large": Letters(weight=700, halo="#f8f5ee"),
    "room_size": Letters(fill="#3f454b", halo="#f8f5ee"),
    "site_name": Letters(fill="#4a5057", italic=True, halo="#f8f5ee"),
    "spot_level": Letters(fill="#1f4e5f", halo="#f8f5ee"),
    "contour_level": Letters(fill="#7d4f27", halo="#f8f5ee"),
    "section_name": Letters(halo="#f8f5ee"),
    "section_sun": Letters(fill="#8a5a08", weight=700, halo="#f8f5ee"),
    "dimension": Letters(fill="#8a3b2e", halo="#f8f5ee"),
    "title": Letters(family=SERIF),
    "place": Letters(fill="#5d646b", family=SERIF, italic=True),
    "note": Letters(fill="#4a5057"),
    "legend": Letters(),
    "scale": Letters(fill=SOFT_INK),
    "north": Letters(weight=700),
    "utility": Letters(fill=SOFT_INK, weight=700),
}


def look_of(role: str) -> Look:
    """Look of a role, or of its first word where the whole has none of its own."""
    return LOOKS.get(role) or LOOKS[role.split(".", maxsplit=1)[0]]
