"""The row of pictures of the opened concept."""

import base64
import re

import pytest

from tests.ui.on_the_page import search_ended, words
from ui.components.site_pictures import usual_moment

ROW = "picture"


def picture(tab):
    """The drawing in the sheet, as text."""
    return next(
        base64.b64decode(found.group(1)).decode()
        for part in tab.get("html")
        if (found := re.search(r'class="plan">.*?base64,([^"]+)"', part.proto.body))
    )


def chosen(tab, name):
    """The page once a picture is chosen."""
    tab.segmented_control(key=ROW).set_value(name).run()
    assert not tab.exception
    return tab


def test_the_plan_comes_first(searches, tab):
    """An opened concept shows its plan, and only that is made."""
    search_ended(tab.run())
    assert tab.segmented_control(key=ROW).value == "Plan"
    assert "Concept plan of Fernhollow Court" in picture(tab)


def test_the_plan_is_the_owners_until_the_designers_is_asked_for(searches, tab):
    """Clean at first; the switch for a designer shows the sheet that the command wrote, with dimensions and setbacks."""
    search_ended(tab.run())
    owners = picture(tab)
    tab.toggle(key="for_designer").set_value(True).run()
    assert not tab.exception
    designers = picture(tab)
    for mark in ('class="dimension"', 'class="setback"', 'class="utility"'):
        assert mark not in owners
        assert mark in designers


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("Ground", "Concept 1: ground"),
        ("Sun", "Concept 1: sun, a June day"),
        ("Sight", "Concept 1: seen from gathering area"),
        ("Section", "Concept 1: section through gathering area"),
    ],
)
def test_a_chosen_drawing_is_shown_with_its_words(searches, tab, name, said):
    """The drawing takes the plan's place and tells in words what it shows."""
    search_ended(tab.run())
    drawing = picture(chosen(tab, name))
    assert f"{said}</title>" in drawing
    assert f'alt="{said}' in words(tab)


@pytest.mark.parametrize(("latitude", "moment"), [(40.0, "21 June, 17:00"), (-37.0, "21 December, 17:00")])
def test_the_usual_moment_is_a_summer_afternoon(latitude, moment):
    """On 21 June at 17:00 the sun is down in the far south: summer is half a year apart there."""
    assert usual_moment(latitude) == moment


def test_what_a_drawing_shows_can_be_changed(searches, tab):
    """Another window of sun, other eyes and another moment each make another drawing."""
    search_ended(tab.run())
    chosen(tab, "Sun").selectbox(key="sun_of").set_value("quiet nook").run()
    assert "Concept 1: sun, quiet nook" in picture(tab)
    chosen(tab, "Sight").selectbox(key="seen_from").set_value("neighbour window").run()
    assert "Concept 1: seen from neighbour window" in picture(tab)
    chosen(tab, "Section").selectbox(key="moment").set_value("21 December, 09:00").run()
    assert "21 December, 09:00: sun" in picture(tab)


def test_the_yard_can_be_turned(searches, tab):
    """3-D shows one figure, without the button that would send it away."""
    search_ended(tab.run())
    (figure,) = chosen(tab, "3-D").get("plotly_chart")
    assert "sendChartToCloud" in figure.proto.config
    assert "in three dimensions" in str(figure.proto)
