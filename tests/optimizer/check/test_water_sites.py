"""Later water and equipment by a barrier, measured again: what is so is borne out, and each distance is asked."""

from dataclasses import replace

import pytest

from optimizer.catalogue import distance_ft, future_kind
from optimizer.check import CheckCase
from optimizer.check.water_sites import equipment, held_for_later, later_water
from optimizer.derived import Derived, Fit
from optimizer.layout import Layout, Placement, placed_of
from optimizer.site import Door, KeepOut, Setbacks, Tree, UtilityLine, Wall, Window
from tests.optimizer.derived.futures.yard import HELD, derived, yard
from tests.yards import bathing, on_site, plain_yard, sized, stand

TABLE = Placement("table", "plain", 64.0, 70.0, 16.0, 20.0, "+y")


def fit_of(name, left, low, *, across=True):
    """A future with its lower left corner at a place, its water in the middle."""
    kind = future_kind(name)
    turn = 1 if across else -1
    (wide, deep), (along, over) = kind.needs_ft[::turn], kind.body_ft[::turn]
    x, y = left + (wide - along) / 2, low + (deep - over) / 2
    return Fit(ring(x, y, along, over), ring(left, low, wide, deep))


def ring(x, y, wide, deep):
    return ((x, y), (x + wide, y), (x + wide, y + deep), (x, y + deep))


def blamed(fit, name="pool", *, others=(), held=HELD, **site):
    """What is named beside the held ground."""
    scenario = on_site(yard(), **site)
    case = CheckCase(derived(scenario, *others, held=held))
    return [finding.rooms[-1] for finding in later_water(case, "water later", name, fit)]


@pytest.mark.parametrize("name", ["hot tub", "swim spa", "pool"])
def test_what_the_program_finds_is_borne_out(name):
    """Every future of the yard, each where it was fitted in."""
    found = derived(yard(), TABLE)
    (site,) = (site for site in found.futures if site.future == name)
    assert site.fit.is_kept
    assert list(later_water(CheckCase(found), "water later", name, site.fit)) == []


@pytest.mark.parametrize(
    ("fit", "name"),
    [
        (fit_of("pool", 21, 70), "pool"),
        (fit_of("pool", 20, 70, across=False), "pool"),
        (fit_of("hot tub", 19, 75), "hot tub"),
        (replace(fit_of("pool", 20, 70), water=ring(24, 74, 27, 14)), "pool"),
        (replace(fit_of("hot tub", 20, 70), water=ring(19, 72, 7, 7)), "hot tub"),
    ],
)
def test_water_lies_whole_on_its_ground(fit, name):
    """A foot out of it, turned where it is too narrow, water that is smaller or lies beside its deck."""
    assert blamed(fit, name) == ["water later"]


def test_a_future_of_a_room_that_is_not_there():
    case = CheckCase(derived(yard()))
    assert [finding.words for finding in later_water(case, "pond", "pool", fit_of("pool", 20, 70))] == [
        "no ground is held for the pool"
    ]


def house(**facts):
    """The yard's house with other doors or windows."""
    return {"buildings": (replace(yard().site.buildings[0], **facts),)}


OUT_OF_DOOR, AT_WINDOW = (distance_ft(yard().site, name) for name in ("ahead_of_door", "beside_window"))


@pytest.mark.parametrize(
    ("things", "name"),
    [
        (lambda off: {"trees": (Tree("oak", (36, 88 + 15 + off), 1.0, 5),)}, "oak"),
        (lambda off: {"walls": (Wall("fence", ((30, 92 + off), (50, 92 + off)), "fence"),)}, "fence"),
        (lambda off: {"utility_lines": (UtilityLine("pipe", "drain", ((0, 70 - off), (90, 70 - off)), 1.0),)}, "pipe"),
        (lambda off: {"utility_lines": (UtilityLine("pipe", "gas", ((0, 68 - off), (90, 68 - off)), 6.0),)}, "pipe"),
        (lambda off: house(windows=(Window("pane", (36, 74 - AT_WINDOW - off), 4.0, (0, 1)),)), "pane"),
        (lambda off: house(doors=(Door("side", (36, 74 - OUT_OF_DOOR - off), 3.0, (0, 1)),)), "side"),
        (lambda off: {"setbacks": (Setbacks(water=22 - off),) * 4}, "rear"),
        (lambda off: {"keep_outs": (KeepOut("soil", ring(60, 100 + off, 9, 9)),)}, ""),
    ],
)
def test_each_distance_is_asked_of_the_waters_edge(things, name):
    """Water from (24, 74) to (52, 88), with things just far enough off it, then a tenth of a foot nearer: an oak's outer
    ring of 15 trunks, the over-dig of 4 ft, the distances of the site; plain keep-outs ask for none.
    """
    fit = fit_of("pool", 20, 70)
    assert name not in blamed(fit, **things(0.0))
    assert [*blamed(fit, **things(-0.1))] == ([name] if name else [])


@pytest.mark.parametrize(("x_ft", "is_named"), [(56.0, False), (55.9, True)])
def test_nobody_digs_beside_a_terrace(x_ft, is_named):
    """4 ft off the water of a pool; a tub stands on a slab, and nobody digs for it."""
    beside = replace(TABLE, x_ft=x_ft)
    assert ("table" in blamed(fit_of("pool", 20, 70), others=(beside,))) == is_named
    assert blamed(fit_of("hot tub", 45, 75), "hot tub", others=(beside,)) == []


def test_equipment_keeps_off_the_barrier():
    """3 ft from the line itself: of a future as it is told, and of a pool that is built."""
    barrier = (((16.0, 70.0), (16.0, 92.0)),)
    for left, is_named in ((5.0, False), (5.1, True)):
        fit = replace(fit_of("pool", 20, 70), barrier=barrier, pad=ring(left, 80, 8, 4))
        assert ("pool" in blamed(fit)) == is_named
    scenario = on_site(plain_yard(ceiling=None), structures=(), trees=())
    scenario = replace(scenario, brief=replace(scenario.brief, trips=()))
    rooms = (sized("table", "gathering", 14, 12), bathing("pool"))
    built = Derived(scenario, placed_of(rooms, Layout((stand("pool", 24, 20, 16, 18, "-y"),))))
    (site,) = built.pools
    assert site.pad is not None
    assert list(equipment(CheckCase(built))) == []
    built.__dict__["pools"] = (replace(site, pad=site.barrier.envelope),)
    assert [finding.rooms for finding in equipment(CheckCase(built))] == [("pool",)]


@pytest.mark.parametrize(("width_ft", "over"), [(36.0, False), (39.0, True)])
def test_no_more_ground_is_held_than_the_largest_future_needs(width_ft, over):
    """36 x 22 ft, and what the grid adds; the tub alone would need less."""
    case = CheckCase(derived(yard(), held=replace(HELD, width_ft=width_ft)))
    assert bool(list(held_for_later(case))) == over
