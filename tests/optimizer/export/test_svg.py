"""A drawing written as SVG."""

import re
import xml.etree.ElementTree as ET

import pytest

from optimizer.drawing import Area, Circle, Dimension, Drawing, Line, Text
from optimizer.export import plan_svg, thumbnail_svg

SVG = "{http://www.w3.org/2000/svg}"
WALL = Area("building", (((20, 30), (80, 30), (80, 56), (20, 56)),))


def drawing(name: str = "quiet nook", *, metric: bool = False) -> Drawing:
    """A house with a 60 ft wall and one room, and one of everything that a drawing is made of."""
    return Drawing(
        title=f"Concept of {name}",
        description=f"Rooms: {name}.",
        metric=metric,
        plan_box=(0, 0, 100, 96),
        sheet_box=(0, -20, 100, 96),
        marks=(
            Area("ground", (((0, 0), (100, 0), (100, 96), (0, 96)), ((5, 5), (6, 5), (6, 6)))),
            Area("room.nook", (((10, 70), (18, 70), (18, 77), (10, 77)),)),
            Area("furniture.an unknown piece", (((12, 72), (14, 72), (14, 74), (12, 74)),)),
            Line("leader", ((10, 70), (8, 66))),
            WALL,
            Circle("trunk", (50, 80), 0.6),
        ),
        key=(Circle("north_ring", (90, -8), 3.0),),
        texts=(
            Text("room_name", (14, 73), name, 1.3),
            Text("room_name_large", (14, 73), name, 3.0),
            Text("title", (2, -4), f"Concept of {name}", 2.0, anchor="start"),
        ),
        dimensions=(Dimension((10, 70), (10, 77), 1.3, "7'-0\"", 0.85),),
    )


def inches_to_a_foot(root: ET.Element) -> float:
    """Paper inches that a foot of the ground takes."""
    assert root.attrib["width"].endswith("in")
    return float(root.attrib["width"][:-2]) / float(root.attrib["viewBox"].split()[2])


def wall_length(root: ET.Element) -> float:
    """Length of the house's long wall in user units."""
    wall = next(element for element in root.iter(f"{SVG}path") if element.get("class") == "building")
    xs = [float(pair.split()[0]) for pair in wall.attrib["d"].strip("MZ").split("L")]
    return max(xs) - min(xs)


@pytest.mark.parametrize(("metric", "wall_in"), [(False, 7.5), (True, 7.2)])
def test_the_plan_is_true_to_scale(metric: bool, wall_in: float) -> None:
    """A wall of 60 ft is 7.5 in long at 1/8 in to the foot, and 7.2 in (18.288 m / 100) at 1:100."""
    root = ET.fromstring(plan_svg(drawing(metric=metric)))
    assert wall_length(root) * inches_to_a_foot(root) == pytest.approx(wall_in, abs=0.001)
    height = float(root.attrib["height"][:-2]) / float(root.attrib["viewBox"].split()[3])
    assert height == pytest.approx(inches_to_a_foot(root), rel=1e-4)


def test_another_scale_can_be_asked_for() -> None:
    """At 1/4 in to the foot the same wall is 15 in long."""
    root = ET.fromstring(plan_svg(drawing(), scale=0.25))
    assert wall_length(root) * inches_to_a_foot(root) == pytest.approx(15.0, abs=0.001)


def test_line_weights_do_not_change_with_the_scale() -> None:
    """The outline of the house is equally heavy on paper at both scales."""
    heavy = []
    for scale in (0.125, 0.25):
        root = ET.fromstring(plan_svg(drawing(), scale=scale))
        wall = next(element for element in root.iter(f"{SVG}path") if element.get("class") == "building")
        heavy.append(float(wall.attrib["stroke-width"]) * inches_to_a_foot(root) * 72)
    assert heavy == pytest.approx([2.4, 2.4], abs=0.01)


@pytest.mark.parametrize("write", [plan_svg, thumbnail_svg])
@pytest.mark.parametrize("name", ["<script>alert(1)</script>", "a\"b'c&d", "bell\x07 and \x00", "]]><x/>", "水 garden"])
def test_names_stay_text(write: object, name: str) -> None:
    """A name with markup is shown as it is written and adds no element; characters that XML forbids are dropped."""
    root = ET.fromstring(write(drawing(name)))
    plain = ET.fromstring(write(drawing()))
    shown = re.sub("[\x00-\x08]", "", name)
    assert [element.tag for element in root.iter()] == [element.tag for element in plain.iter()]
    assert shown in [element.text for element in root.iter(f"{SVG}text")]
    assert root.find(f"{SVG}title").text == f"Concept of {shown}"


@pytest.mark.parametrize("write", [plan_svg, thumbnail_svg])
def test_it_holds_no_script_and_no_outside_reference(write: object) -> None:
    """Only shapes, text, patterns and descriptions; every reference is to a pattern of the same file."""
    text = write(drawing())
    root = ET.fromstring(text)
    tags = {element.tag.removeprefix(SVG) for element in root.iter()}
    assert tags <= {"svg", "title", "desc", "defs", "pattern", "path", "rect", "circle", "text"}
    ids = {element.get("id") for element in root.iter(f"{SVG}pattern")}
    references = re.findall(r"url\(#([^)]+)\)", text)
    assert references
    assert set(references) == ids
    assert "href" not in text
    assert text.count("http") == 1


def test_two_pictures_on_one_page_share_no_ids() -> None:
    """Ids of the plan, of its small picture and of another plan differ."""
    pictures = (plan_svg(drawing()), thumbnail_svg(drawing()), plan_svg(drawing("fire")))
    ids = [set(re.findall(r'id="([^"]+)"', text)) for text in pictures]
    assert all(ids)
    assert not ids[0] & ids[1]
    assert not ids[0] & ids[2]


def test_it_can_be_read_aloud() -> None:
    """The picture is labelled by its title and its description."""
    root = ET.fromstring(plan_svg(drawing()))
    labels = root.attrib["aria-labelledby"].split()
    assert [root.find(f"{SVG}{tag}").get("id") for tag in ("title", "desc")] == labels
    assert root.find(f"{SVG}desc").text == "Rooms: quiet nook."


def test_the_small_picture_leaves_out_what_it_cannot_show() -> None:
    """No furniture, no dimensions, only the large name; the full sheet has all but the large name."""
    small, full = thumbnail_svg(drawing()), plan_svg(drawing())
    for part in ('class="furniture', 'class="dimension', 'class="title"', 'class="room_name"', 'class="north_ring"'):
        assert part not in small
        assert part in full
    assert 'class="room_name_large"' in small
    assert 'class="room_name_large"' not in full


def test_up_on_the_plan_is_up_on_the_sheet() -> None:
    """A tree farther along +y stands higher on the page."""
    root = ET.fromstring(plan_svg(drawing()))
    trunk = next(element for element in root.iter(f"{SVG}circle") if element.get("class") == "trunk")
    top = float(root.attrib["viewBox"].split()[1])
    assert float(trunk.attrib["cy"]) == -80.0
    assert top == -96.0


def test_the_same_drawing_gives_the_same_bytes() -> None:
    """Writing is a pure function."""
    assert plan_svg(drawing()) == plan_svg(drawing())


def test_an_upright_dimension_reads_from_the_right() -> None:
    """Its figure is turned by a quarter, so that it reads with the sheet turned clockwise."""
    root = ET.fromstring(plan_svg(drawing()))
    figure = next(element for element in root.iter(f"{SVG}text") if element.text == "7'-0\"")
    assert figure.attrib["transform"].startswith("rotate(-90 ")
