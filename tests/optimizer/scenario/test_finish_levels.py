"""Finish levels in a scenario file: what they give, and what is refused where."""

from dataclasses import replace

import pytest

from optimizer.brief import Finish, FinishWish
from optimizer.catalogue import palette_of
from optimizer.concepts.case import Case
from optimizer.scenario import read_scenario, scenario_schema
from tests.small_yard import SMALL, changed, problems


def with_finish(keys):
    """The small yard with a finish, on a line of its own."""
    return changed("brief:\n", f"brief:\n  finish: {keys}\n")


def brief(keys):
    return read_scenario(with_finish(keys), "yard.yaml").brief


def test_a_yard_without_levels_is_as_it_was():
    found = read_scenario(SMALL, "yard.yaml").brief
    assert (found.finish_levels, found.finish_level, found.finish) == ((), None, FinishWish())


def test_usual_levels_by_their_names():
    """From less to more in price and worth; good is what a yard has that says nothing."""
    plain, good, fine = brief("{levels: [plain, good, fine]}").finish_levels
    assert palette_of(good.finish) == palette_of(FinishWish())
    assert [level.worth_factor for level in (plain, good, fine)] == [0.9, 1.0, 1.1]
    prices = [
        Case.of(read_scenario(with_finish(f"{{levels: [plain, good, fine], level: {name}}}"), "y")).book
        for name in ("plain", "good", "fine")
    ]
    assert [str(book.of("unit paving").price) for book in prices] == ["24.00", "32", "41.60"]


def test_levels_alone_change_nothing():
    """Offered and none chosen: concepts are made of what the file says, or of what is usual."""
    assert brief("{levels: [plain, fine]}").finish == FinishWish()
    assert brief("{levels: [plain, good], level: good, cap: clay brick}").finish.cap == Finish("clay brick")


def test_what_a_level_says_wins_over_what_is_said_for_all_and_that_over_what_is_usual():
    keys = "{border: gravel, by_room: {chairs: stacked}, pattern: stacked, level: own, levels: [{name: own, field: clay brick, worth_factor: 1.05}, {name: fine, border: clay brick}]}"
    found = brief(keys)
    own, fine = found.finish_levels
    assert found.finish == own.finish
    assert own.finish == FinishWish(
        Finish("clay brick"), Finish("gravel"), pattern="stacked", by_room=(("chairs", "stacked"),)
    )
    assert (fine.finish.border, fine.finish.field.material, fine.worth_factor) == (
        Finish("clay brick"),
        "natural flag",
        1.1,
    )


def test_a_border_like_the_house_stays_in_every_level():
    text = with_finish("{like: house, levels: [plain, {name: fine, border: gravel}]}")
    plain, fine = read_scenario(
        text.replace("name: house,", "name: house, material: clay brick,"), "y"
    ).brief.finish_levels
    assert (plain.finish.border, plain.finish.like) == (Finish("clay brick"), "house")
    assert (fine.finish.border, fine.finish.like) == (Finish("gravel"), None)


def test_another_level_is_another_finish_and_nothing_else():
    found = brief("{levels: [plain, fine], level: fine}")
    other = found.at_level("plain")
    assert (other.finish, other.finish_level) == (found.level("plain").finish, "plain")
    assert replace(other, finish=found.finish, finish_level="fine") == found
    assert found.at_level(None) is found


FAULTS = [
    ("{levels: [plain, good], level: fine}", "16:42: expected one of the levels plain, good, found 'fine'; write one of these, or add it to `levels`"),
    ("{level: fine}", "16:19: expected a level that `levels` offers, found 'fine' and no levels; write levels: [plain, good, fine] beside it"),
    ("{levels: [plain, good, plain]}", "16:34: expected each finish level once, found 'plain' twice"),
    ("{levels: [plane]}", "16:21: expected a usual level (plain, good, fine), or one with a field and a worth_factor of its own, found 'plane' without field and worth_factor"),
    ("{levels: [{name: own, field: gravel}]}", "found 'own' without worth_factor; write {name: own, field: clay brick, worth_factor: 1.05}"),
    ("{levels: [plain], field: gravel}", "16:36: expected no field beside levels, found gravel; write it into the level that it belongs to"),
    ("{levels: [{name: fine, field: {material: gravel, color: pink}}]}", "16:67: expected a color of gravel: sand, grey, found 'pink'"),
    ("{levels: [{name: fine, cap: gravel}]}", "expected a material for the top of seat walls, found gravel, which lies loose"),
    ("{levels: [good, {name: fine, pattern: boards}]}", "16:49: expected a pattern that natural flag, the field of fine, is laid in: random flag, stacked, running bond, found 'boards'"),
    ("{levels: [plain, good], level: good, by_room: {chairs: stacked}}", "16:66: expected a pattern that exposed aggregate concrete, the field of plain, is laid in: panels, found 'stacked'"),
    ("{levels: [3]}", "16:21: expected a finish level, found 3; write its name, such as plain, or {name: fine, field: natural flag}"),
    ("{levels: [{name: fine, worth_factor: 0}]}", "16:48: expected"),
    ("{levels: [{name: fine, worth: 2}]}", "found 'worth'"),
]  # fmt: skip


@pytest.mark.parametrize(("keys", "said"), FAULTS, ids=[keys for keys, _ in FAULTS])
def test_a_wrong_level_is_one_problem_in_its_place(keys, said):
    (problem,) = problems(with_finish(keys))
    assert said in problem


def test_the_json_schema_knows_the_keys():
    keys = scenario_schema()["$defs"]["FinishLevelPart"]["properties"]
    assert keys["worth_factor"]["description"].startswith("How many times its worth")
    assert {"level", "levels"} <= set(scenario_schema()["$defs"]["FinishPart"]["properties"])
