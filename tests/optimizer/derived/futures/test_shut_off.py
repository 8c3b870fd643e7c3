"""Whether surely nothing drives in what comes later, and what that counts. Widths of vehicles: layout rules, sizes by
common practice (`catalogue/data/access.yaml`): a cart 4.5 ft, a small digger 6, a digger 8, a swim spa 9.5.
"""

import pytest

from optimizer.appraisal import outlooks
from optimizer.catalogue import book_for
from optimizer.concepts.case import Case
from optimizer.concepts.future_cautions import future_cautions
from optimizer.layout import Layout, Placement
from tests.optimizer.derived.futures.yard import HELD, derived, yard

ENTRANCE = "{name: drive, at: [80, 0], width: 12}"
SHED_FOR_COOKER = (
    "{name: cooker, kind: kitchen, choices: [{label: plain, width: 20, depth: 10, worth: 5}]}",
    "{name: shed, kind: storage, choices: [{label: plain, width: 15, depth: 10, worth: 5}]}",
)
CARRIED = ("seats: 4, worth: 5}]}\n", "seats: 4, worth: 5}]}\n  trips: [{from: drive, to: shed, count: 150}]\n")
A_POOL_ALONE = ("futures: [hot tub, swim spa, pool]", "futures: [pool]")


def cooker(x: float) -> Placement:
    """A kitchen of 20 x 10 ft in the passage, which runs from x = 70 to 90 beside the house."""
    return Placement("cooker", "plain", x, 35.0, 20.0, 10.0, "+y")


@pytest.mark.parametrize(
    ("x", "shut"),
    [(60.0, []), (63.0, ["swim spa"]), (65.5, ["swim spa", "pool"]), (67.0, ["hot tub", "swim spa", "pool"])],
)
def test_the_width_that_is_left_beside_a_kitchen(x: float, shut: list[str]) -> None:
    """It leaves 10, 7, 4.5 and 3 ft of the passage; 7 ft are enough for a pool's small digger. Where something is shut
    off the search for a drive finds none either.
    """
    there = derived(yard(), cooker(x))
    assert [future for _, future in there.shut_off] == shut
    found = {site.future for site in there.futures if site.access.is_found}
    assert not found & set(shut)


def test_held_ground_reached_only_over_the_fence_is_shut_off() -> None:
    """It lies at the street, with a gate of 4 ft: a front that reaches over the boundary brings nothing in."""
    narrow = yard((ENTRANCE, ENTRANCE.replace("12", "4")))
    at_street = Placement("water later", "one size", 40.0, 2.0, 36.0, 22.0, "+y")
    assert len(derived(narrow, held=at_street).shut_off) == 3
    assert derived(yard(), held=at_street).shut_off == ()


def test_nothing_is_said_where_no_entrance_for_machines_is_named() -> None:
    """Nobody knows what comes in there."""
    assert derived(yard((ENTRANCE, ENTRANCE.replace("12", "12, used_by: [guests]")))).shut_off == ()


def test_the_price_of_a_crane_turns_the_order_of_two_layouts() -> None:
    """A shed of 15 ft in a passage of 20 leaves 5, too narrow for a digger of 6: somebody who goes there 150 times likes
    it 30 ft nearer to the street, but the crane of 2,800 is more than that. Behind the house it bars nothing.
    """
    case = Case.of(yard(A_POOL_ALONE, SHED_FOR_COOKER, CARRIED))
    places = [(70.0, y) for y in (30.0, 60.0, 70.0, 80.0)] + [(57.0, 53.0), (60.0, 60.0)]
    layouts = [Layout((HELD, Placement("shed", "plain", x, y, 15.0, 10.0, "+y"))) for x, y in places]
    verdicts = [case.judged(layout) for layout in layouts]
    assert all(verdict.holds for verdict in verdicts)
    counted = [dict(verdict.losses)["access"] for verdict in verdicts]
    assert counted == [2800, 0, 0, 0, 0, 0]
    scores = [verdict.score for verdict in verdicts]
    without = [score - access for score, access in zip(scores, counted, strict=True)]
    assert (places[without.index(min(without))], places[scores.index(min(scores))]) == ((70, 30), (70, 60))


def test_each_future_has_its_share_of_the_crane() -> None:
    """Of three futures two are shut off: two thirds of 2,800; and the caution of each of the two says that it counts."""
    scenario = yard()
    verdict = Case.of(scenario).in_full(Layout((HELD, cooker(65.5))))
    assert dict(verdict.losses)["access"] == pytest.approx(2800 * 2 / 3)
    said = [*future_cautions(scenario, outlooks(derived(scenario, cooker(65.5)), book_for("USD")))]
    counted = [words for words in said if words.endswith("counts a share of the crane's price for it.")]
    assert [words.split(":")[0] for words in counted] == ["Later swim spa", "Later pool"]
