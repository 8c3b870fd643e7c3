"""Every finish has a look, and every pattern lies at true scale without a seam."""

import re
from itertools import product
from typing import get_args

import pytest

from optimizer.brief import Material, Pattern
from optimizer.catalogue import material_facts
from optimizer.export.finish_looks import FINISH_HATCHES, finish_look
from optimizer.export.palette import HATCHES, look_of


@pytest.mark.parametrize("material", get_args(Material))
def test_every_finish_has_its_tone_and_hatch(material: Material) -> None:
    """Field and accent in every pattern that the material can be laid in, in every direction; border and cap plain."""
    facts = material_facts(material)
    for (color, tone), pattern, turn in product(facts.colors, facts.patterns, (0, 45, 90)):
        start = f"{material}.{color}".replace(" ", "_")
        for what in ("field", "accent"):
            look = look_of(f"{what}.{start}.{pattern.replace(' ', '_')}.{turn}")
            assert look.fill == tone
            assert look.hatch in HATCHES
        assert {look_of(f"{what}.{start}").fill for what in ("border_course", "cap")} == {tone}


def test_no_two_colors_of_a_material_share_a_tone() -> None:
    """A tone is a color as #rrggbb, other colors of the material have others."""
    for material in get_args(Material):
        tones = [tone for _, tone in material_facts(material).colors]
        assert len(set(tones)) == len(tones)
        assert all(re.fullmatch("#[0-9a-f]{6}", tone) for tone in tones)


def test_every_pattern_lies_straight_turned_and_upright() -> None:
    """Three directions of each."""
    assert len(FINISH_HATCHES) == 3 * len(get_args(Pattern))
    assert {hatch.turn_deg for hatch in FINISH_HATCHES.values()} == {0, 45, 90}


def test_a_herringbone_tile_holds_eight_units() -> None:
    """Sixteen cells less the joints: each unit of two cells keeps one inner line free, so 32 sides less 8 are drawn."""
    hatch = FINISH_HATCHES["herringbone-0"]
    drawn = set(re.findall(r"M[\d.]+ [\d.]+[hv][\d.]+", hatch.path))
    assert hatch.width_ft == hatch.height_ft == 2.0
    assert len(drawn) == 2 * 16 - 8


def test_other_roles_are_no_finish() -> None:
    """A role that is not of a finish has no look here."""
    assert finish_look("room.kitchen") is None
    assert finish_look("field") is None
