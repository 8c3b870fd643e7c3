"""Scenarios that are refused: each fault is one problem, in its place and in its words."""

import pytest

from optimizer.scenario import read_scenario
from tests.small_yard import SMALL, changed, problems

SCHEMA_FAULTS = [
    ("units: ft", "units: yards", "3:8: expected ft or m, found 'yards'; "),
    ("latitude: 40", "latitude: 91", "6:13: expected a number of at most 90, found 91; "),
    ("latitude: 40", "latitude: .nan", "6:13: expected a number, found '.nan'; "),
    ("latitude: 40", "latitude: forty", "6:13: expected a number, found 'forty'; "),
    ("latitude: 40", "latitude: true", "6:13: expected a number, found true; "),
    ("width: 3}", "width: -3}", "11:112: expected a length above 0, found -3; "),
    ("width: 3}", "width: wide}", "11:112: expected a length above 0, found 'wide'; write 12.5, 12'-6\", "),
    ("width: 3}", "width: NaN}", "11:112: expected a length above 0, found 'NaN'; "),
    ("width: 3}", "width: true}", "11:112: expected a length above 0, found true; "),
    ("width: 3}", "width: 1e400}", "11:112: expected a length above 0, found inf; "),
    ("width: 3}", "width: 1e9}", "11:112: expected a length above 0 under 1,000,000 ft, found 1000000000.0; "),
    ("width: 3}", "width: 3, slding: true}", "11:115: expected one of the keys name, at, width, sliding, found 'slding'; did you mean sliding?"),
    ("width: 3}", "width: }", "11:111: expected a length above 0, found nothing; "),
    ("kind: gathering", "kind: gathring", "found 'gathring'; did you mean gathering?"),
    ("name: table,", "name: '',", "expected a name, found ''; "),
    ("name: table,", 'name: "a\\nb",', "expected characters that can be printed, found 'a\\nb'; "),
    ("name: table,", f"name: {'x' * 201},", "expected at most 200 characters, found 'xxx"),
    ("name: table,", "name: 12,", "expected a name, found 12; write text"),
    ("seats: 2,", "seats: 2.5,", "expected a whole number, found 2.5; "),
    ("seats: 2,", "seats: -2,", "expected a number of at least 0, found -2; "),
    ("[0, 50]]}", "[0]]}", "expected two values, as in [a, b], found nothing; write both"),
    ("[0, 50]]}", "[0, 50, 3]]}", "expected a list of at most 2, found a list of 3; "),
    ("corners: [[0, 0], [60, 0], [60, 50], [0, 50]]", "corners: [[0, 0], [60, 0]]", "expected a list of at least 3, found a list of 2; "),
    ("corners: [[0, 0], [60, 0], [60, 50], [0, 50]]", "corners: 12", "expected a list, found 12; "),
    ("currency: USD", "currency: usd", "4:11: expected a currency of three capitals, found 'usd'; "),
    ("currency: USD", "currency: USD\ncolour: red", "5:1: expected one of the keys schema_version, name, units,"),
    ("  time_zone: America/New_York\n", "", "6:3: expected the key `time_zone`, found nothing; add it"),
    ("schema_version: 1\n", "", "1:1: expected the key `schema_version`, found nothing; add it"),
    ("schema_version: 1", "schema_version: 2", "1:17: expected schema_version 1, found 2; the file is made for a newer program"),
    ("schema_version: 1", "schema_version: true", "1:17: expected schema_version 1, found true; "),
    ("schema_version: 1", "schema_version: 1.0", "1:17: expected schema_version 1, found 1.0; "),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '10:00', months: [0]},", "expected a number of at least 1, found 0; "),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '10:00', months: [13]},", "expected a number of at most 12, found 13; "),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '18:00', to: '10:00', months: [3]},", "expected `from` earlier in the day than `to`, found from 18:00 to 10:00; swap the two"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '10:00', to: '12:00', hours: 3, months: [3]},", "found 3 h in a window of 2 h; ask for fewer"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: 8, to: '10:00', months: [3]},", 'expected a time of day from "00:00" to "24:00", found 8; '),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '24:01', months: [3]},", "expected a time of day"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '10:00', hours: 0, months: [3]},", "expected a number above 0, found 0; change it to fit"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '10:00', hours: 1, least: 2, months: [3]},", "expected `least` of at most the `hours` that are wished for, found least 2 with hours 1; swap"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '10:00', months: [4, 3, 4]},", "expected each month once, found 3, 4, 4; take out"),
    ("seats: 2,", "seats: [2],", "expected a whole number, found a list of 1; give one value, without brackets"),
    ("seats: 2,", "seats: 501,", "expected a number of at most 500, found 501"),
    ("kind: gathering", "kind: [gathering]", "found a list of 1; give one value, without brackets"),
    ("[table, chairs]", "[]", "expected two values, as in [a, b], found nothing; write both"),
    ("brief:", "brief:\n  guests: {everyday: 9, party: 8}", "expected a party of at least the everyday guests, found 8 at the party, 9 every day; swap"),
    ("brief:", "brief:\n  weights: {paving: 101}", "expected a number of at most 100, found 101; "),
    ("brief:", "brief:\n  weights: {smoke: nan}", "expected a number, found 'nan'; "),
    ("kind: nook, seats: 2", "kind: kitchen, equipment: [grill -36 in]", "found 'grill -36 in'; write its name first, then a width above 0"),
    ("kind: nook, seats: 2", "kind: kitchen, equipment: [36 in]", "expected equipment such as sink or grill 36 in, found '36 in'; write its name first"),
    ("brief:", "budget: {ceiling: 1e13}\nbrief:", "expected an amount of money of at most a million million, found 10000000000000.0; "),
    ("brief:", "budget: {ceiling: -1}\nbrief:", "expected an amount of money of at least 0, found -1; "),
    ("brief:", "budget: {ceiling: '1,000'}\nbrief:", "expected an amount of money of at least 0, found '1,000'; "),
    ("brief:", "budget: {contingency: 15}\nbrief:", "expected a share from 0 to 1, found 15; "),
    ("brief:", "options: {count: 0}\nbrief:", "expected a number of at least 1, found 0; "),
    ("brief:", "options: {grid_step: 0}\nbrief:", "expected a length above 0, found 0; "),
    ("  trees:", "  setbacks: {everywhere: {fire: -1}}\n  trees:", "expected a length of at least 0, found -1; "),
    ("  trees:", "  setbacks: 3\n  trees:", "expected keys with values, found 3; "),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), SCHEMA_FAULTS, ids=[new.strip()[:40] for _, new, _ in SCHEMA_FAULTS])
def test_a_wrong_value_is_one_problem_in_its_place(old, new, said):
    """Each wrong value gives one problem that says what was expected and found, and no more."""
    (problem,) = problems(changed(old, new))
    assert problem.startswith("yard.yaml:")
    assert said in problem
    assert "pydantic" not in problem
    assert "Input should" not in problem


CROSS_FAULTS = [
    ("currency: USD", "currency: XXX", "4:11: expected a currency with a price book: USD or AUD, found XXX; "),
    ("kind: nook, seats: 2", "kind: reserve, futures: [lake]", "18:46: expected futures among hot tub"),
    ("kind: nook, seats: 2", "kind: pool, water: [14]", "expected two values, as in [a, b]"),
    ("kind: nook, seats: 2", "kind: pool, water: [14, 2]", "expected water of at least 6 ft on each side, found 14 x 2 ft; check the digits"),
    ("kind: nook, seats: 2", "kind: pool, deck: 3", "expected a deck of at least 4 ft, found 3 ft; make it wider"),
    ("kind: nook, seats: 2", "kind: pool, cover: true", "expected no roof over a pool, found one over chairs; take it away"),
    ("kind: nook, seats: 2", "kind: nook, water: [14, 28]", "expected `water` in a pool only, found it in chairs, a nook"),
    ("kind: nook, seats: 2", "kind: nook, deck: 4", "expected `deck` in a pool only, found it in chairs, a nook"),
    ("kind: nook, seats: 2, worth: 3", "kind: pool, water: [14, 28], choices: [{label: a, width: 30, depth: 20, worth: 1}]", "expected at least 36 x 22 ft: the water and 4 ft of deck on each side, found 30 x 20 ft"),
    ("kind: nook, seats: 2, worth: 3", "kind: pool, water: [14, 28], choices: [{label: a, water: [10, 20], worth: 1}]", "expected `water` in the room or in its choices, found it in both of chairs"),
    ("kind: nook, seats: 2", "kind: reserve", "18:7: expected futures among hot tub"),
    ("[60, 50], [0, 50]]}", "[0, 50], [60, 50]]}", "9:23: expected an outline that goes round some ground once, found edges that cross or touch"),
    ("[[0, 45], [60, 45], [60, 50], [0, 50]]", "[[0, 45], [30, 45], [60, 45]]", "found an outline without area"),
    ("[10, 20]], doors", "[10, 20], [10, 20]], doors", "found the corner [10, 20] twice in a row"),
    ("[[10, 0], [50, 0],", "[[10, -0.6], [50, -0.6],", "expected a building inside the boundary, found house 0.60 ft outside"),
    ("at: [30, 20]", "at: [30, 20.2]", "11:95: expected a place on a wall of house, found door at [30, 20.2], 0.20 ft away"),
    ("at: [0, 30]", "at: [1, 30]", "12:32: expected an entrance on the boundary, found gate at [1, 30], 1.00 ft away"),
    ("name: gate", "name: elm", "expected a name of its own for everything, found 'elm' a second time"),
    ("[table, chairs]", "[table, chair]", "expected the name of a room or a thing, found 'chair'; did you mean chairs?"),
    ("[table, chairs]", "[table, table]", "expected two different names, found 'table' twice"),
    ("[table, chairs]", "[house, elm]", "expected one room at least"),
    ("to: table", "to: tabel", "expected the name of a room, door or entrance, found 'tabel'; did you mean table?"),
    ("to: table", "to: elm", "expected the name of a room, door or entrance, found 'elm', which is neither"),
    ("to: table", "to: door", "expected another place than `from`, found 'door'"),
    ("kind: near, within: 20", "kind: near", "expected `within` with kind: near, found nothing; add within: and a length"),
    ("kind: near, within: 20", "kind: apart", "expected `at_least` with kind: apart, found nothing"),
    ("kind: near, within: 20", "kind: apart, at_least: 3, within: 20", "expected `within` with kind: near only, found kind: apart"),
    ("kind: near, within: 20", "kind: in_view, by: walking", "expected `by` with kind: near or apart only"),
    ("kind: near, within: 20", "kind: near, within: 20, share: 0.4", "expected `share` with kind: in_view or out_of_view only, found kind: near"),
    ("kind: near, within: 20", "kind: faces, eye: seated", "expected `eye` with kind: in_view or out_of_view only"),
    ("[table, chairs], kind: near, within: 20", "[house, table], kind: faces", "expected a room that opens towards the second, found 'house'"),
    ("[table, chairs], kind: near, within: 20", "[table, elm], kind: touching", "expected two names with edges that can touch"),
    ("allow: [path, bed]", "allow: [path, bedd]", "found 'bedd'; did you mean bed?"),
    ("America/New_York", "America/New_Yrok", "8:14: expected a time zone that exists, found 'America/New_Yrok'; did you mean America/New_York"),
    ("America/New_York", "America", "expected a time zone that exists, found 'America'; "),
    ("America/New_York", "../../etc/passwd", "expected a time zone that exists"),
    ("longitude: -83", "longitude: 83", "expected a time zone within 3 h of the longitude, found America/New_York (UTC-5.0) at longitude 83"),
    ("  trees:", "  setbacks: {edge 5: {fire: 1}}\n  trees:", "13:14: expected `everywhere` or an edge's name, found 'edge 5'; did you mean edge"),
    ("[0, 50]]}", "[0, 50]], edges: [a, b, c]}", "expected 4 edge names, one a corner, found 3"),
    ("  trees:", "  structures: [{name: roof, outline: [[1, 21], [9, 21], [9, 29]], may_hold: [tabel]}]\n  trees:", "expected the name of a room, found 'tabel'; did you mean table?"),
    ("  trees:", "  surroundings: [{name: eye, height: 3}]\n  trees:", "expected one of outline, line and at, found none of them"),
    ("  trees:", "  surroundings: [{name: eye, at: [1, 2], line: [[1, 2], [3, 4]]}]\n  trees:", "found line and at"),
    ("kind: gathering,", "kind: gathering, worth: 3,", "expected a worth on each choice only"),
    ("seats: 2,", "seats: 2, grow: 1.5,", "found 1.5"),
    ("kind: nook, seats: 2", "kind: storage, grow: 0.1", "expected no `grow` in a storage, which keeps its size, found 0.1 in chairs, a storage; take it away"),
    ("seats: 2,", "seats: 2, shape: circle,", "expected `shape` in a fire only, found it in chairs, a nook; take it away"),
    ("seats: 2,", "seats: 2, shape: rectangle,", "expected `shape` in a fire only, found it in chairs, a nook"),
    ("kind: nook, seats: 2", "kind: fire, shape: round", "18:41: expected rectangle or circle, found 'round'"),
    ("kind: nook, seats: 2", "kind: fire, shape: circle, grow: 0.1", "18:55: expected no `grow` in a circle, found it in chairs; take it away: a circle has no edge"),
    ("kind: nook, seats: 2", "kind: fire, shape: circle, cover: true", "expected no `cover` in a circle, found it in chairs; take it away: no fire"),
    ("kind: nook, seats: 2", "kind: fire, shape: circle, screen: true", "expected no `screen` in a circle, found it in chairs; take it away: a screen stands"),
    ("kind: nook, seats: 2, worth: 3", "kind: fire, shape: circle, choices: [{label: a, width: 16, depth: 17, worth: 1}]", "18:88: expected a width and a depth that are equal in a circle, found 16 by 17 ft in 'a'; give the distance across"),
    ("seats: 2,", "seats: 2, fuel: gas,", "expected `fuel` in a fire only, found it in chairs, a nook"),
    ("seats: 6, worth: 5}", "seats: 6, worth: 5}, {label: six, width: 9, depth: 9, worth: 1}", "expected a label of its own for each choice, found 'six' again"),
    ("seats: 6, worth: 5}", "seats: 6, worth: 5}, {label: pad and stubs now, width: 9, depth: 9, worth: 1}", "expected a label of your own, found 'pad and stubs now', which says of a room that it comes later"),
    ("kind: nook, seats: 2", "kind: kitchen, bar_seats: 9", "18:48: expected at most 8 seats at a bar, found 9; seat the others at a table"),
    ("kind: nook, seats: 2, worth: 3", "kind: nook, choices: [{label: a, width: 8, worth: 3}]", "expected a width and a depth in each choice, found no depth in 'a'; add `depth`"),
    ("kind: nook, seats: 2, worth: 3", "kind: kitchen, choices: [{label: a, worth: 3}]", "expected a width and a depth in each choice, found no width in 'a'; add `width`"),
    ("kind: nook, seats: 2, worth: 3", "kind: kitchen, choices: [{label: a, equipment: [grill], depth: 8, worth: 3}]", "found no width in 'a'; add `width`"),
    ("kind: nook, seats: 2, worth: 3", "kind: nook, choices: [{label: a, width: 8, depth: 7, equipment: [grill], worth: 3}]", "expected `equipment` in a kitchen only, found it in chairs, a nook"),
    ("kind: nook, seats: 2, worth: 3", "kind: kitchen, bar_seats: 2, choices: [{label: a, equipment: [grill], worth: 3}]", "expected `bar_seats` in each choice only, found it in chairs too"),
    ("kind: nook, seats: 2, worth: 3", "kind: kitchen, choices: [{label: a, equipment: [grill], bar_seats: 9, worth: 3}]", "expected at most 8 seats at a bar, found 9"),
    ("kind: nook, seats: 2", "kind: kitchen, equipment: [grill 8 ft, griddle 8 ft]", "18:48: expected what two runs of counter of 16 ft hold, found more in chairs; leave a piece out"),
    ("seats: 6, worth", "seats: 43, worth", "17:90: expected at least 4 sq ft for each seat, found 43 seats on 168 sq ft; give fewer"),
    ("kind: nook, seats: 2, worth: 3", "kind: fire, shape: circle, choices: [{label: a, width: 8, depth: 8, seats: 13, worth: 1}]", "expected at least 4 sq ft for each seat, found 13 seats on 50.3 sq ft; give fewer"),
    ("width: 14, depth: 12", "width: 140, depth: 12", "expected a size that the yard can hold, found 140 ft in a yard of 78 ft from corner to corner; check"),
    ("width: 14, depth: 12", "width: 14, depth: 120", "expected a size that the yard can hold, found 120 ft"),
    ("trunk_diameter: 1,", "trunk_diameter: 17,", "13:53: expected a trunk thinner than its crown, found 17 ft under a crown of 16 ft; write it as 16 in"),
    ("width: 3}", "width: 42}", "11:112: expected an opening within the wall of house, found door, 42 ft wide, reaches 1.00 ft past it; make it narrower"),
    ("at: [30, 20], width: 3}", "at: [49, 20], width: 4}", "expected an opening within the wall of house, found door, 4 ft wide, reaches 1.00 ft past it"),
    ("at: [0, 30], width: 4", "at: [0, 30], width: 45", "expected an opening within the edge of the yard, found gate, 45 ft wide, reaches 2.50 ft past it"),
    ("brief:", "  levels: [{at: [0, 0], z: 1}, {at: [9, 9], z: 1}, {at: [0, 0], z: 3}]\nbrief:", "expected one level at a place, found a second at [0, 0], 2.00 ft from the first"),
    ("brief:", "  levels: [{at: [0, 0], z: 1}, {at: [9, 9], z: 1}, {at: [0, 9], z: 1e5}]\nbrief:", "expected levels of one ground, found 99999 ft from the middle one of them"),
    ("brief:", "options: {grid_step: 50}\nbrief:", "expected a grid_step of at most 10 ft, found 50 ft; rooms lie on the grid"),
    ("brief:", "options: {grid_step: 0.01}\nbrief:", "expected at most 2,000,000 grid cells, found 30,000,000"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "said"), CROSS_FAULTS, ids=[new.strip()[:40] for _, new, _ in CROSS_FAULTS])
def test_parts_that_do_not_fit_are_one_problem_in_its_place(old, new, said):
    """Each misfit between parts gives one problem that says what was expected and found."""
    (problem,) = problems(changed(old, new))
    assert problem.startswith("yard.yaml:")
    assert said in problem


PAIR = "- {between: [table, chairs], kind: near, within: 20}"


@pytest.mark.parametrize(
    "second",
    [
        "kind: apart, at_least: 21",
        "kind: apart, at_least: 20.5",
    ],
)
def test_near_and_farther_apart_contradict(second):
    """A pair cannot be within 20 ft and over 20 ft apart, whichever is named first."""
    (problem,) = problems(changed(PAIR, f"{PAIR}\n    - {{between: [chairs, table], {second}}}"))
    assert "expected relations of one pair that can hold together, found kind: apart after kind: near" in problem


def test_other_contradictions():
    """Touching with apart, and in view with out of view."""
    touching = changed(
        PAIR, "- {between: [table, chairs], kind: touching}\n    - {between: [table, chairs], kind: apart, at_least: 1}"
    )
    viewed = changed(
        PAIR, "- {between: [table, chairs], kind: in_view}\n    - {between: [chairs, table], kind: out_of_view}"
    )
    assert [len(problems(text)) for text in (touching, viewed)] == [1, 1]


@pytest.mark.parametrize(
    "second",
    [
        "kind: apart, at_least: 20",
        "kind: apart, at_least: 21, wish: 1",
        "kind: apart, at_least: 30, by: walking, wish: 2",
        "kind: touching",
        "kind: faces",
        "kind: in_view",
    ],
)
def test_what_can_hold_together_is_read(second):
    """Equal distances, wishes, touching with near, faces and views do not contradict."""
    text = changed(PAIR, f"{PAIR}\n    - {{between: [chairs, table], {second}}}")
    assert len(read_scenario(text, "x").brief.relations) == 2


def test_straight_near_allows_walking_farther():
    """A fence may make the way on foot longer than the straight line."""
    text = changed(
        PAIR,
        "- {between: [table, chairs], kind: near, within: 5, by: straight}\n    - {between: [table, chairs], kind: apart, at_least: 9, by: walking}",
    )
    assert len(read_scenario(text, "x").brief.relations) == 2


def test_all_problems_come_at_once_in_the_order_of_the_file():
    """Wrong values of all parts are told together, from the top down."""
    text = changed("units: ft", "units: yd")
    text = changed("latitude: 40", "latitude: 400", text)
    text = changed("width: 3}", "width: -3}", text)
    text = changed("seats: 2,", "seats: 2.5,", text)
    lines = [int(problem.split(":")[1]) for problem in problems(text + "budget: {ceiling: -4}\n")]
    assert lines == [3, 6, 11, 18, 23]


def test_misfits_are_told_beside_unknown_keys_and_keys_given_twice():
    """A key too many or given twice does not hide what is wrong elsewhere."""
    text = changed("width: 3}", "width: 3, colour: red}", changed("to: table", "to: tabel"))
    told = problems(changed("latitude: 40", "latitude: 40\n  latitude: 41", text))
    assert [("'latitude'" in told[0]), ("'colour'" in told[1]), ("'tabel'" in told[2])] == [True, True, True]


def test_a_newer_version_is_the_only_complaint():
    """What else a newer file holds may well be right there."""
    text = changed("schema_version: 1", "schema_version: 3", changed("units: ft", "units: ft\nnovelty: 1"))
    assert len(problems(text)) == 1


@pytest.mark.parametrize("text", ["", "# nothing\n", "- a\n- b\n", "just text", "12", "null"])
def test_what_is_no_mapping_is_one_problem(text):
    """An empty file, a list and bare text are no scenarios."""
    (problem,) = problems(text)
    assert "expected keys with values" in problem


@pytest.mark.parametrize(
    ("key", "item", "most"),
    [
        ("rooms", "{name: room %d, kind: nook, seats: 2, worth: 1}", 40),
        ("levels", "{at: [%d, 1], z: 0}", 5000),
    ],
)
def test_limits_have_their_message(key, item, most):
    """One more room or spot level than allowed is refused by number."""
    items = "\n".join(f"    - {item % number}" for number in range(most + 1))
    text = (
        changed("brief:", f"  levels:\n{items}\nbrief:")
        if key == "levels"
        else SMALL[: SMALL.index("  rooms:")] + f"  rooms:\n{items}\n"
    )
    (problem,) = problems(text)
    assert f"expected a list of at most {most:,}, found a list of {most + 1}" in problem


def test_a_boundary_of_more_than_500_corners_is_refused():
    """501 corners are one too many."""
    corners = ", ".join(f"[{number}, 0]" for number in range(499)) + ", [499, 50], [0, 50]"
    (problem,) = problems(changed("[0, 0], [60, 0], [60, 50], [0, 50]", corners))
    assert "expected a list of at most 500, found a list of 501" in problem


CIRCLE = changed("kind: nook, seats: 2", "kind: fire, shape: circle, seats: 6")


def test_a_circle_is_touched_by_nothing():
    """As a rule and as a wish: it has no edge to share."""
    for relation in ("kind: touching", "kind: touching, wish: 1"):
        (problem,) = problems(changed("kind: near, within: 20", relation, CIRCLE))
        assert "20:40: expected edges that can touch, found chairs, a circle, which has none; use kind: near" in problem


def test_a_sketched_circle_is_as_wide_as_deep():
    """In its place, and no word on one that is."""
    sketch = "sketches: [{name: s, rooms: [{room: chairs, at: [5, 25], width: 16, depth: 15, front: '+y'}]}]\n"
    (problem,) = problems(CIRCLE + sketch)
    assert (
        "23:76: expected a width and a depth that are equal in a circle, found 16 by 15 ft; give the distance"
        in problem
    )
    drawn = read_scenario(CIRCLE + sketch.replace("15", "16"), "yard.yaml")
    assert drawn.brief.room("chairs").shape == "circle"
