"""The page as it is seen and handled at a desk and on a phone."""

import json
import re
from pathlib import Path

import pytest
from playwright.sync_api import expect

pytestmark = pytest.mark.browser


def searched(tab, address):
    """Open the page and search; the tab then shows the concepts."""
    tab.goto(address)
    tab.get_by_role("button", name="Find concepts").click()
    expect(tab.get_by_text("Concepts in order")).to_be_visible(timeout=20_000)
    still(tab)
    return tab


def still(tab):
    """Wait until the page has stopped changing.

    The run has ended, after which nothing of the one before is faded; and no widget's own code is still being fetched:
    until then an empty shape stands in its place, and a list that scrolls has nothing in it that takes the focus.
    """
    ended, fetched = "[data-test-script-state=notRunning]", ":not(:has([data-testid=stSkeleton]))"
    tab.wait_for_selector(f"[data-testid=stApp]{ended}{fetched}")


def scrolls_sideways(tab):
    """Whether anything is wider than the window."""
    return tab.evaluate(
        "[...document.querySelectorAll('html, body, [data-testid=stMain], .stMarkdown, .stHtml, table, img')]"
        ".some(part => part.getBoundingClientRect().right > innerWidth + 1) "
        "|| document.querySelector('[data-testid=stMain]').scrollWidth > innerWidth"
    )


def title_of(tab):
    """Title of the opened concept."""
    return tab.get_by_role("heading", name=re.compile(r"^Concept \d$"))


def test_start_fits_the_window(look, serve):
    """The start shows the yard as read and does not scroll sideways."""
    look.goto(serve("at_once"))
    expect(look.get_by_alt_text("The yard of Fernhollow Court as it is")).to_be_visible(timeout=20_000)
    still(look)
    assert not scrolls_sideways(look)


def test_press_anywhere_on_a_row_opens_its_concept(look, serve):
    """A press on the small plan opens that concept, the address names it, and its plan is large and whole."""
    tab = searched(look, serve("at_once"))
    box = tab.locator("[class*=st-key-row_] img").nth(2).bounding_box()
    tab.mouse.click(box["x"] + 30, box["y"] + 30)
    expect(title_of(tab)).to_have_text("Concept 3")
    assert re.search(r"concept=[\w-]+\.c3", tab.evaluate("location.href"))
    plan = tab.locator(".large-plan img:visible")
    expect(plan).to_be_visible()
    assert plan.evaluate("picture => picture.complete && picture.naturalWidth > 100")
    assert not scrolls_sideways(tab)


def test_keyboard_opens_a_concept(look, serve):
    """A row takes the focus and Enter opens it."""
    tab = searched(look, serve("at_once"))
    tab.get_by_role("button", name="Open Concept 4").focus()
    tab.keyboard.press("Enter")
    expect(title_of(tab)).to_have_text("Concept 4")


def test_address_opens_the_concept_in_another_tab(look, serve):
    """The address of an opened concept shows the same concept in another tab."""
    tab = searched(look, serve("at_once"))
    tab.get_by_role("button", name="Open Concept 2").click()
    expect(title_of(tab)).to_have_text("Concept 2")
    other = tab.context.new_page()
    other.goto(tab.evaluate("location.href"))
    expect(title_of(other)).to_have_text("Concept 2", timeout=20_000)


def test_phone_shows_the_list_or_the_concept(look, serve):
    """A phone shows one of the two and leads back; a desk shows both at once."""
    tab = searched(look, serve("at_once"))
    rows, plan = tab.locator(".line").first, tab.locator(".numbered img" if look.is_phone else ".plan img")
    expect(rows).to_be_visible()
    expect(plan).to_be_visible(visible=not look.is_phone)
    tab.get_by_role("button", name="Open Concept 2").click()
    expect(plan).to_be_visible()
    expect(rows).to_be_visible(visible=not look.is_phone)
    if look.is_phone:
        tab.get_by_role("button", name="All concepts", exact=True).click()
        expect(rows).to_be_visible()


def test_side_by_side_fits_the_window(look, serve):
    """Two concepts beside each other show both plans and what differs, without scrolling sideways; a note says it all."""
    tab = searched(look, serve("at_once"))
    tab.get_by_role("button", name="Open Concept 1").click()
    tab.wait_for_function("location.href.includes('.c1')")
    address = tab.evaluate("location.href")
    tab.goto(f"{address}&beside={re.search(r'search=([^&]+)', address).group(1)}.c3")
    expect(tab.get_by_text("What differs")).to_be_visible(timeout=20_000)
    expect(tab.locator(".large-plan img:visible")).to_have_count(2)
    still(tab)
    assert not scrolls_sideways(tab)
    with tab.expect_download() as note:
        tab.get_by_role("button", name="Revision note").click()
    assert "Concept 3 against Concept 1 before it" in Path(note.value.path()).read_text(encoding="utf-8")


def test_the_yard_in_3d_is_whole_in_its_window(look, serve):
    """The figure is wider than high at a desk and on a phone: its scene grows with its height and would be cut off."""
    tab = searched(look, serve("at_once"))
    tab.get_by_role("button", name="Open Concept 1", exact=True).click()
    tab.get_by_role("radio", name="3-D").click()
    frame = tab.locator(".js-plotly-plot")
    expect(frame).to_be_visible(timeout=20_000)
    still(tab)
    box = frame.bounding_box()
    assert box["width"] > 1.2 * box["height"]
    assert not scrolls_sideways(tab)


def step_to(tab, name):
    """Go to a step of the page."""
    tab.get_by_role("radio", name=name, exact=True).click()
    still(tab)


def test_downloads_are_what_the_search_wrote(look, serve):
    """The plan comes as SVG and the concepts as the result document."""
    tab = searched(look, serve("at_once"))
    step_to(tab, "Hand over")
    with tab.expect_download() as plan:
        tab.get_by_role("button", name="Designer's plan as SVG").nth(1).click()
    assert plan.value.suggested_filename == "concept-2-designer.svg"
    assert Path(plan.value.path()).read_text(encoding="utf-8").startswith("<svg")
    with tab.expect_download() as result:
        tab.get_by_role("button", name="All concepts (JSON)").click()
    assert len(json.loads(Path(result.value.path()).read_text(encoding="utf-8"))["options"]) == 4
    assert not scrolls_sideways(tab)


def test_concepts_appear_while_the_search_runs_and_stop_keeps_them(look, serve):
    """A running search shows its concepts by itself, and stopped it shows them, too."""
    look.goto(serve("until_stopped"))
    look.get_by_role("button", name="Find concepts").click()
    expect(look.get_by_text("3 concepts so far")).to_be_visible(timeout=20_000)
    expect(look.get_by_text("Concepts in order")).to_be_visible(timeout=20_000)
    look.get_by_role("button", name="Stop and keep the best so far").click()
    expect(look.get_by_text("4 concepts after")).to_be_visible(timeout=20_000)


def test_name_in_a_file_stays_text(look, serve, project, tmp_path):
    """A tag in the name of a scenario is shown as it is written, and makes no element of the page."""
    text = (project / "scenarios" / "fernhollow-court.yaml").read_text(encoding="utf-8")
    hostile = tmp_path / "mine.yaml"
    hostile.write_text(
        text.replace("Fernhollow Court", "<img id=evil src=x> ![x](http://192.0.2.1/x)"), encoding="utf-8"
    )
    look.goto(serve("at_once"))
    look.get_by_text("A file of mine").click()
    look.locator("input[type=file]").set_input_files(hostile)
    expect(look.get_by_text("<img id=evil src=x>").first).to_be_visible(timeout=20_000)
    assert look.locator("#evil").count() == 0


def test_what_each_budget_buys_fits_the_window(look, serve):
    """Asked for and chosen, a budget shows its words and its plan, without scrolling sideways."""
    tab = searched(look, serve("at_once"))
    step_to(tab, "What each budget buys")
    offer, step = tab.get_by_role("button", name="Find what each budget buys"), tab.get_by_role("radio", name="$64,000")
    expect(offer.or_(step)).to_be_visible(timeout=20_000)
    if offer.is_visible():  # else the other width has asked already, and the answer was kept
        offer.click()
    step.click(timeout=20_000)
    expect(tab.get_by_text("within $64,000")).to_be_visible()
    plan = tab.locator(".large-plan img:visible")
    expect(plan).to_be_visible()
    assert plan.evaluate("picture => picture.complete && picture.naturalWidth > 100")
    assert not scrolls_sideways(tab)
