"""Scenario files as a whole: what is read, and files that cannot be."""

from decimal import Decimal
from pathlib import Path

import pytest

from optimizer.brief import Equipment, SunWish
from optimizer.errors import ScenarioError
from optimizer.scenario import load_scenario, read_scenario, scenario_notes, scenario_schema
from tests.small_yard import SMALL, changed

YARDS = Path(__file__).parents[3] / "scenarios"
EXAMPLE = (YARDS / "fernhollow-court.yaml").read_text(encoding="utf-8")


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


def test_a_file_without_permission_is_one_clear_problem(tmp_path, monkeypatch):
    """No permission is said, not raised; root, who may read anything, is refused here all the same."""
    path = tmp_path / "closed.yaml"
    path.write_text(SMALL)

    def refused(*_args, **_options):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refused)
    with pytest.raises(ScenarioError, match="cannot be opened"):
        load_scenario(path)


def test_line_ends_and_byte_order_marks_of_other_systems_do_not_matter(tmp_path):
    """The same yard comes out of a file with a byte order mark and carriage returns."""
    path = tmp_path / "yard.yaml"
    path.write_bytes(b"\xef\xbb\xbf" + SMALL.replace("\n", "\r\n").encode())
    assert load_scenario(path).site == read_scenario(SMALL, "x").site


def test_how_much_a_room_may_grow():
    """Its own share where the file gives one, also none at all; else the catalogue knows what is usual."""
    for written, read in (("grow: 0.1", 0.1), ("grow: 0", 0.0), ("required: false", None)):
        brief = read_scenario(changed("seats: 2,", f"seats: 2, {written},"), "x").brief
        assert brief.room("chairs").grow == read


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
