"""Two rooms side by side: apart or touching on some side."""

from optimizer.engine.model.linear import Literal
from optimizer.engine.model.pair_model import OUTWARDS, PairModel
from optimizer.engine.problem.arrangement import ABOVE, BELOW, LEFT, RIGHT
from optimizer.layout.placement import FRONT_VECTORS

SIDES = (LEFT, RIGHT, BELOW, ABOVE)


def separate(view: PairModel) -> None:
    """Say that the rooms are apart or touch on some side, and keep the literals of each side with the pair."""
    contact, gaps = view.contact, view.gaps()
    if not contact.binds:
        return
    ways: list[Literal] = []
    for side in SIDES:
        view.by_side[side] = _ways(view, side)
        ways += view.by_side[side]
    if contact.may_overlap:
        inside = view.boolean()
        for gap in gaps.values():
            view.hold(gap <= -1, inside)
        ways.append(inside)
    if view.side is None and not contact.may_overlap:
        _exactly_one(view, ways)
    else:
        view.any_of([*ways, *view.absent()])
    _hold_side(view)


def _ways(view: PairModel, side: int) -> list[Literal]:
    """Literals of standing apart on a side, and of touching on it. Below and above are said of rooms whose x ranges
    overlap, so that of diagonal neighbours one side alone is true.
    """
    contact, ways = view.contact, []
    if not contact.must_touch:
        far = view.boolean()
        view.hold(view.gaps()[side] >= contact.gap, far)
        if side in (BELOW, ABOVE) and view.side is None and not contact.may_overlap:
            for across in (LEFT, RIGHT):
                view.hold(view.gaps()[across] <= contact.gap - 1, far)
        ways.append(far)
    if contact.must_touch or (contact.gap and contact.may_touch):
        ways.append(_touch(view, side))
    return ways


def _touch(view: PairModel, side: int) -> Literal:
    literal = view.boolean()
    view.touch(side, view.contact.shared, literal)
    for end in view.contact.shut:
        outwards = OUTWARDS[side] if end == 0 else (-OUTWARDS[side][0], -OUTWARDS[side][1])
        for variant, taken in view.variants(end):
            if variant.front is not None and FRONT_VECTORS[variant.front] == outwards:
                view.model.add_implication(literal, taken.negated())
    return literal


def _exactly_one(view: PairModel, ways: list[Literal]) -> None:
    """One way where both rooms are there, none where one is absent."""
    both = view.both
    if not both:
        view.model.add_exactly_one(ways)
        return
    lacking = both[0].negated() if len(both) == 1 else view.boolean()
    view.model.add_exactly_one([*ways, lacking])
    if len(both) > 1:
        view.any_of([lacking.negated(), *view.absent()])
        for there in both:
            view.any_of([lacking, there])


def _hold_side(view: PairModel) -> None:
    """Keep the canonical side of a fixed arrangement."""
    if view.side is None:
        return
    gaps, (a, b) = view.gaps(), view.rooms
    if view.side in (LEFT, RIGHT):
        view.hold(gaps[view.side] >= 0)
        return
    view.hold(gaps[LEFT] <= -1)
    view.hold(gaps[RIGHT] <= -1)
    middles = 2 * a.y + a.depth - 2 * b.y - b.depth
    view.hold(middles <= 0 if view.side == BELOW else middles >= 1)
