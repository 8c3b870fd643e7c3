"""Scenario files as a whole: what is read, and what is refused in which words."""

import os
from decimal import Decimal
from pathlib import Path

import pytest

from optimizer.brief import Equipment, SunWish
from optimizer.errors import ScenarioError
from optimizer.scenario import load_scenario, read_scenario, scenario_notes, scenario_schema

YARDS = Path(__file__).parents[3] / "scenarios"
EXAMPLE = (YARDS / "fernhollow-court.yaml").read_text(encoding="utf-8")

SMALL = """\
schema_version: 1
name: Small Yard
units: ft
currency: USD
site:
  latitude: 40
  longitude: -83
  time_zone: America/New_York
  boundary: {corners: [[0, 0], [60, 0], [60, 50], [0, 50]]}
  buildings:
    - {name: house, outline: [[10, 0], [50, 0], [50, 20], [10, 20]], doors: [{name: door, at: [30, 20], width: 3}]}
  entrances: [{name: gate, at: [0, 30], width: 4}]
  trees: [{name: elm, at: [50, 40], trunk_diameter: 1, canopy_radius: 8}]
  keep_outs: [{name: strip, outline: [[0, 45], [60, 45], [60, 50], [0, 50]], allow: [path, bed]}]
brief:
  rooms:
    - {name: table, kind: gathering, choices: [{label: six, width: 14, depth: 12, seats: 6, worth: 5}]}
    - {name: chairs, kind: nook, seats: 2, worth: 3}
  relations:
    - {between: [table, chairs], kind: near, within: 20}
  trips:
    - {from: door, to: table, count: 10}
"""


def changed(old, new, text=SMALL):
    """Text with one part replaced; the part must be there once."""
    assert text.count(old) == 1, old
    return text.replace(old, new)


def problems(text):
    """Problems that reading a text raises."""
    with pytest.raises(ScenarioError) as caught:
        read_scenario(text, "yard.yaml")
    return [str(problem) for problem in caught.value.problems]


@pytest.mark.parametrize("path", sorted(YARDS.glob("*.yaml")), ids=lambda path: path.stem)
def test_every_yard_of_ours_is_read(path):
    """Each demonstration yard has 4 to 7 rooms, says in its first lines that it is invented, and loads."""
    scenario = load_scenario(path)
    assert 4 <= len(scenario.brief.rooms) <= 7
    assert "nvented" in "".join(scenario.text.splitlines(keepends=True)[:4])


def test_there_are_five_yards():
    """The example and four more."""
    assert len(list(YARDS.glob("*.yaml"))) >= 5


def test_the_example_means_what_its_comments_say():
    """Every kind of value of the example arrives where the program looks for it."""
    scenario = read_scenario(EXAMPLE, "example")
    site, brief = scenario.site, scenario.brief
    assert site.place.plan_up_bearing_deg == 25
    assert site.edge_names == ("street", "east side", "corner cut", "rear", "west side")
    assert site.setbacks[0].paving == 28
    assert (site.setbacks[1].paving, site.setbacks[1].fire) == (2, 10)
    assert site.paved_share_limit == 0.45
    assert site.trees[0].trunk_diameter_ft == pytest.approx(16 / 12)
    assert site.doors[1].sliding
    assert site.windows[0].opens
    assert site.structures[0].may_hold == ("gathering area", "outdoor kitchen")
    assert site.surroundings[2].line == ((76, 120), (0, 120))
    assert site.levels[-1].z_ft == -2.2
    assert brief.guests.party == 24
    assert brief.rooms[0].sun == SunWish("shade", 16, 19, (6, 7, 8))
    assert brief.rooms[1].equipment == (
        Equipment("grill", 3), Equipment("preparation", 3), Equipment("sink"), Equipment("refrigerator", 2),
        Equipment("trash drawer", 1.5),
    )  # fmt: skip
    assert brief.rooms[2].fuel == "gas"
    assert brief.rooms[4].futures == ("hot tub", "swim spa", "plunge pool")
    assert brief.relations[0].shared_edge_ft == 8
    assert brief.relations[-1].wish == 2
    assert brief.trips[0].start == "kitchen door"
    assert brief.weights.sight == 0.5
    assert brief.budget.ceiling == Decimal(130000)
    assert brief.budget.contingency == Decimal("0.15")
    assert brief.options.count == 12


def test_near_walks_and_apart_goes_straight_unless_the_relation_says():
    """`by` has its usual value by kind, and the file's own where it gives one."""
    text = changed(
        "kind: near, within: 20}",
        "kind: near, within: 20}\n    - {between: [table, elm], kind: near, within: 9, by: straight}\n    - {between: [table, house], kind: apart, at_least: 4}\n    - {between: [table, gate], kind: apart, at_least: 4, by: walking}",
    )
    assert [relation.by for relation in read_scenario(text, "x").brief.relations] == [
        "walking", "straight", "straight", "walking",
    ]  # fmt: skip


def test_touching_shares_three_feet_unless_it_says():
    """The usual shared edge is 3 ft."""
    text = changed("kind: near, within: 20", "kind: touching")
    assert read_scenario(text, "x").brief.relations[0].shared_edge_ft == 3


def test_what_is_left_out_is_usual():
    """A small file gets the usual guests, money, options and setbacks."""
    scenario = read_scenario(SMALL, "x")
    assert (scenario.brief.guests.everyday, scenario.brief.guests.party) == (4, 12)
    assert scenario.brief.budget.ceiling is None
    assert scenario.brief.options.grid_step == 1
    assert scenario.site.edge_names == ("edge 1", "edge 2", "edge 3", "edge 4")
    assert scenario.site.setbacks[0].fire == 0


@pytest.mark.parametrize("kind", ["gathering", "kitchen", "fire", "nook", "arrival", "lawn", "bed", "storage", "play"])
def test_a_room_may_leave_its_sizes_to_the_catalogue(kind):
    """Every kind but the reserve has usual sizes."""
    text = changed("kind: nook, seats: 2, worth: 3", f"kind: {kind}")
    assert read_scenario(text, "x").brief.rooms[1].choices == ()


def test_doors_look_out_and_entrances_look_in():
    """The door in the upper wall looks up; the gate on the left looks right."""
    site = read_scenario(SMALL, "x").site
    assert site.doors[0].outward == (0, 1)
    assert site.entrances[0].inward == (1, 0)


def test_a_clockwise_boundary_is_turned_with_its_edges():
    """The edge from (0, 0) to (60, 0) is `front` and has its setback, whichever way round the corners are listed."""
    forth = "boundary: {corners: [[0, 0], [60, 0], [60, 50], [0, 50]], edges: [front, right, back, left]}\n  setbacks: {front: {fire: 7}, everywhere: {fire: 3, paving: 1}}"
    back = "boundary: {corners: [[0, 0], [0, 50], [60, 50], [60, 0]], edges: [left, back, right, front]}\n  setbacks: {front: {fire: 7}, everywhere: {fire: 3, paving: 1}}"
    plain = "boundary: {corners: [[0, 0], [60, 0], [60, 50], [0, 50]]}"
    sites = [read_scenario(changed(plain, text), "x").site for text in (forth, back)]
    assert sites[0].boundary == sites[1].boundary == ((0, 0), (60, 0), (60, 50), (0, 50))
    assert sites[0].edge_names == sites[1].edge_names == ("front", "right", "back", "left")
    assert sites[0].setbacks == sites[1].setbacks
    assert [setback.fire for setback in sites[1].setbacks] == [7, 3, 3, 3]
    assert [setback.paving for setback in sites[1].setbacks] == [1, 1, 1, 1]


def test_clockwise_buildings_and_keep_outs_are_turned():
    """A clockwise house has its doors look out, too."""
    text = changed("[[10, 0], [50, 0], [50, 20], [10, 20]]", "[[10, 0], [10, 20], [50, 20], [50, 0]]")
    assert read_scenario(text, "x").site == read_scenario(SMALL, "x").site


def test_a_metric_file_is_feet_inside():
    """Bare numbers are metres, text with a unit is what it says, and the grid step stays in metres."""
    text = changed("units: ft", "units: m")
    text = changed("trunk_diameter: 1,", "trunk_diameter: 12 in,", text)
    scenario = read_scenario(text, "x")
    assert scenario.site.boundary[1][0] == pytest.approx(196.8503937)
    assert scenario.site.trees[0].trunk_diameter_ft == 1
    assert scenario.brief.rooms[0].choices[0].width_ft == pytest.approx(45.93175853)
    assert scenario.brief.options.grid_step == 0.25
    assert scenario.grid_step_ft == pytest.approx(0.8202099738)


def test_a_grid_step_with_a_unit_comes_out_in_the_files_own():
    """6 in is half a foot; 50 cm is half a metre."""
    assert read_scenario(SMALL + "options: {grid_step: 6 in}\n", "x").brief.options.grid_step == 0.5
    metric = changed("units: ft", "units: m") + "options: {grid_step: 50 cm}\n"
    assert read_scenario(metric, "x").brief.options.grid_step == pytest.approx(0.5)


def test_the_digest_is_of_the_text():
    """The same text has the same digest, another has another; the text is kept as it is."""
    first, second = read_scenario(SMALL, "x"), read_scenario(SMALL + "# more\n", "y")
    assert first.text == SMALL
    assert first.digest == read_scenario(SMALL, "z").digest != second.digest


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
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '18:00', to: '10:00', months: [3]},", "expected `from` earlier in the day than `to`"),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: 8, to: '10:00', months: [3]},", 'expected a time of day from "00:00" to "24:00", found 8; '),
    ("seats: 2,", "seats: 2, sun: {want: sun, from: '08:00', to: '24:01', months: [3]},", "expected a time of day"),
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
    ("seats: 2,", "seats: 2, fuel: gas,", "expected `fuel` in a fire only, found it in chairs, a nook"),
    ("seats: 6, worth: 5}", "seats: 6, worth: 5}, {label: six, width: 9, depth: 9, worth: 1}", "expected a label of its own for each choice, found 'six' again"),
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


def test_a_file_that_cannot_be_read_is_one_clear_problem(tmp_path):
    """A folder, a missing file, another encoding and 2 MB are told apart."""
    latin, large = tmp_path / "latin.yaml", tmp_path / "large.yaml"
    latin.write_bytes("name: ok\nplace: Châlet".encode("latin-1"))
    large.write_bytes(b"# x\n" * 500_000)
    said = {
        tmp_path: "expected a scenario file, found a folder; name a file in it",
        tmp_path / "none.yaml": "expected a scenario file, found nothing of that name; check the path",
        latin: ":2:10: expected text in UTF-8, found the byte 0xE2; save the file as UTF-8",
        large: "expected a file of at most 1 MB, found a larger one",
        tmp_path / ("x" * 300): "expected a scenario file, found one that cannot be opened",
        tmp_path / "a\0b": "expected a scenario file, found one that cannot be opened",
    }
    for path, words in said.items():
        with pytest.raises(ScenarioError) as caught:
            load_scenario(path)
        assert words in str(caught.value)
        assert len(caught.value.problems) == 1


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read anything")
def test_a_file_without_permission_is_one_clear_problem(tmp_path):
    """No permission is said, not raised."""
    path = tmp_path / "closed.yaml"
    path.write_text(SMALL)
    path.chmod(0)
    with pytest.raises(ScenarioError, match="cannot be opened"):
        load_scenario(path)


def test_line_ends_and_byte_order_marks_of_other_systems_do_not_matter(tmp_path):
    """The same yard comes out of a file with a byte order mark and carriage returns."""
    path = tmp_path / "yard.yaml"
    path.write_bytes(b"\xef\xbb\xbf" + SMALL.replace("\n", "\r\n").encode())
    assert load_scenario(path).site == read_scenario(SMALL, "x").site


def test_a_small_overhang_is_a_note():
    """0.4 ft over the boundary is read, and mentioned."""
    scenario = read_scenario(changed("[[10, 0], [50, 0],", "[[10, -0.4], [50, -0.4],"), "x")
    (note,) = scenario_notes(scenario)
    assert note.startswith("house reaches 0'-4 3/4\" over the boundary")


def test_a_yard_with_nothing_to_say_has_no_notes():
    """Notes are for what needs saying."""
    assert scenario_notes(read_scenario(SMALL, "x")) == ()


def test_the_json_schema_says_what_every_key_means():
    """Editors get a description for each key, `from` under its own name, and lengths as number or text."""
    schema = scenario_schema()
    definitions = schema["$defs"]
    assert set(definitions["TripPart"]["properties"]) == {"from", "to", "count"}
    assert definitions["DoorPart"]["properties"]["width"]["anyOf"] == [{"type": "number"}, {"type": "string"}]
    parts = [schema, *(part for name, part in definitions.items() if name.endswith("Part"))]
    lacking = [
        key
        for part in parts
        for key, field in part["properties"].items()
        if field.keys().isdisjoint({"description", "$ref"})
    ]
    assert lacking == []
    assert not any(part.get("additionalProperties", True) for part in parts)
