"""The finish in a scenario file: what it gives, and what is refused where."""

import pytest

from optimizer.brief import Finish, FinishWish
from optimizer.concepts.case import Case
from optimizer.scenario import read_scenario
from tests.small_yard import changed, problems


def with_finish(keys):
    """The small yard with a finish, on a line of its own."""
    return changed("brief:\n", f"brief:\n  finish: {keys}\n")


def test_a_yard_need_not_say_anything():
    assert read_scenario(changed("units: ft", "units: ft"), "yard.yaml").brief.finish == FinishWish()


def test_materials_with_and_without_colors_are_read():
    keys = "{field: clay brick, cap: {material: natural flag, color: buff}, pattern: herringbone, by_room: {chairs: stacked}}"
    wish = read_scenario(with_finish(keys), "yard.yaml").brief.finish
    assert wish == FinishWish(
        field=Finish("clay brick"),
        cap=Finish("natural flag", "buff"),
        pattern="herringbone",
        by_room=(("chairs", "stacked"),),
    )


@pytest.mark.parametrize(("more", "border"), [("", "clay brick"), (", border: gravel", "gravel")])
def test_a_border_matches_what_it_is_to_be_like_unless_it_has_a_material(more, border):
    text = with_finish(f"{{like: house{more}}}").replace("name: house,", "name: house, material: clay brick,")
    wish = read_scenario(text, "yard.yaml").brief.finish
    assert (wish.border.material, wish.like) == (border, "house")


def test_the_price_book_of_a_run_is_at_the_price_of_the_field():
    """Everything that reads prices reads one book: 32 a square foot at 0.45."""
    books = [Case.of(read_scenario(with_finish(keys), "yard.yaml")).book for keys in ("{}", "{field: gravel}")]
    assert [str(book.of("unit paving").price) for book in books] == ["32", "14.40"]


FAULTS = [
    ("{field: marbel}", "16:19: expected concrete unit paver, clay brick, natural flag, exposed aggregate concrete, gravel, timber deck or composite deck, found 'marbel'"),
    ("{field: gravl}", "did you mean gravel?"),
    ("{field: {material: gravel, color: pink}}", "16:45: expected a color of gravel: sand, grey, found 'pink'; write one of these, or none"),
    ("{field: 3}", "16:19: expected a material, found 3; write it as gravel, or with its color"),
    ("{field: gravel, pattern: herringbone}", "16:36: expected a pattern that gravel is laid in: loose, found 'herringbone'"),
    ("{pattern: boards}", "expected a pattern that concrete unit paver is laid in: running bond, stacked, herringbone, found 'boards'"),
    ("{by_room: {stove: stacked}}", "16:22: expected the name of a room, found 'stove'; name a room of the brief"),
    ("{by_room: {chairs: loose}}", "16:30: expected a pattern that concrete unit paver is laid in"),
    ("{field: [gravel]}", "16:19: expected a material, found a list of 1; write it as gravel, or"),
    ("{cap: gravel}", "16:17: expected a material for the top of seat walls, found gravel, which lies loose"),
    ("{cap: {material: gravel, color: sand}}", "16:28: expected a material for the top of seat walls"),
    ("{pattern: [stacked]}", "found a list of 1; give one value, without brackets"),
    ("{like: barn}", "16:18: expected the name of a building or structure with a material, found 'barn'"),
    ("{like: house}", "found 'house' without a material; give that building or structure a `material`"),
    ("{fild: gravel}", "16:12: expected one of the keys field, border, accent, cap, pattern, by_room, like, levels, level, found 'fild'; did you mean field?"),
]  # fmt: skip


@pytest.mark.parametrize(("keys", "said"), FAULTS, ids=[keys for keys, _ in FAULTS])
def test_a_wrong_finish_is_one_problem_in_its_place(keys, said):
    (problem,) = problems(with_finish(keys))
    assert said in problem
