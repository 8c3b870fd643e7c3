"""The page's decisions as they are seen and handled, at all widths; kept work; and a program's eye for barriers."""

import os
import re
import signal
import sqlite3

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import expect

from tests.browser.conftest import BETWEEN, SIZES, started
from tests.browser.test_page_in_browser import scrolls_sideways, searched, still

pytestmark = pytest.mark.browser

STEPS = ("yard", "budgets", "choose", "hold", "handover")
AXE_TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]


@pytest.fixture(scope="module")
def link(window, serve):
    """The address of a search that has ended, made once."""
    tab = window.new_page()
    address = searched(tab, serve("at_once")).evaluate("location.href")
    tab.close()
    return address


def linked(tab, address, step="choose", *, concept=None):
    """The page at a step of a link, with a concept opened."""
    search = re.search(r"search=([^&]+)", address).group(1)
    tab.goto(re.sub(r"step=\w+", f"step={step}", address) + (f"&concept={search}.{concept}" if concept else ""))
    tab.wait_for_selector(".caution >> nth=-1")  # drawn last
    still(tab)
    return tab


def in_sight(tab, selector):
    """Whether a thing is wholly within the window."""
    box = tab.locator(selector).first.bounding_box()
    size = tab.viewport_size
    return box["y"] >= 0 and box["y"] + box["height"] <= size["height"] and box["x"] + box["width"] <= size["width"]


def test_plan_and_verdict_fit_one_window(desk, link):
    """At 1440 x 900 plan, verdict, title and price are seen at once; scrolled down, name, limit and price stay."""
    tab = linked(desk, link)
    for part in (".large-plan .plan img", ".verdict", ".price", ".yard-name .limit", ".st-key-concept_rows"):
        assert in_sight(tab, part), part
    tab.evaluate("document.querySelector('[data-testid=stMain]').scrollBy(0, 1500)")
    tab.wait_for_timeout(200)
    for part in (".price", ".yard-name .limit", ".st-key-concept_rows"):
        assert in_sight(tab, part), part
    tab.evaluate("document.querySelector('[data-testid=stMain]').scrollTo(0, 0)")
    tab.get_by_role("button", name="Enlarge").click()
    large = tab.get_by_role("dialog").locator("img")
    expect(large).to_be_visible()
    assert large.bounding_box()["width"] > 1.2 * tab.locator(".large-plan .plan img").bounding_box()["width"]


def test_every_step_fits_at_every_width(desk, link):
    """From a desk to a phone, and at twice the size, no step scrolls sideways and the limit stays in sight."""
    for step in STEPS:
        linked(desk, link, step)
        for name, (width, height) in {**SIZES, **BETWEEN}.items():
            desk.set_viewport_size({"width": width, "height": height})
            desk.wait_for_timeout(150)
            assert not scrolls_sideways(desk), (step, name)
            desk.evaluate("document.querySelector('[data-testid=stMain]').scrollBy(0, 300)")
            assert in_sight(desk, ".yard-name .limit"), (step, name)


def test_a_phone_reads_the_plan_by_numbers(look, link):
    """On a phone rooms have numbers and a key; at a desk their names."""
    tab = linked(look, link, concept="c2")
    key = tab.locator(".numbered li").first
    expect(key).to_be_visible(visible=look.is_phone)
    expect(tab.locator(".large-plan .plan img")).to_be_visible(visible=not look.is_phone)
    if look.is_phone:
        assert key.inner_text().startswith("gathering area")


def test_wishes_are_changed_and_saved(look, link):
    """Another limit is typed, said back, saved, and in the strip."""
    tab = linked(look, link, "yard")
    limit = tab.get_by_role("spinbutton", name="All-in limit (USD)")
    limit.fill("140000")
    limit.press("Enter")
    expect(tab.get_by_text("Changed: All-in limit 140,000")).to_be_visible(timeout=10_000)
    assert not scrolls_sideways(tab)
    tab.get_by_role("button", name="Save without searching").click()
    expect(tab.locator(".limit")).to_have_text("All-in limit $140,000", timeout=10_000)


def test_a_room_is_held_from_the_opened_concept(look, link):
    """From a concept to its plan with a scale; held, it is said in words, and can be let go."""
    tab = linked(look, link, concept="c2")
    tab.get_by_role("button", name="Hold here", exact=True).click()
    expect(tab.get_by_text("Hold a room of Concept 2")).to_be_visible(timeout=10_000)
    assert not scrolls_sideways(tab)
    tab.get_by_text("shall not stand here").click()
    still(tab)
    tab.get_by_role("button", name="Hold", exact=True).click()
    expect(tab.locator(".held")).to_contain_text("not within 62 to 78 across", timeout=10_000)
    tab.get_by_role("button", name="Let go").click()
    expect(tab.get_by_text("Nothing yet")).to_be_visible(timeout=10_000)


def test_a_question_is_asked_and_answered(look, link):
    """From what a concept leaves out to the question, its answer, and a way out; no barrier for a program's eye."""
    tab = linked(look, link, concept="c2")
    tab.get_by_role("button", name="Ask why the water reserve is left out").click()
    tab.get_by_role("button", name="Ask", exact=True).click()
    expect(tab.get_by_role("heading", name="Why is the fire feature left out?")).to_be_visible(timeout=20_000)
    expect(tab.get_by_text("Raise the all-in limit to $140,000.")).to_be_visible()
    expect(tab.get_by_role("button", name="Do that, and search")).to_be_visible()
    assert not scrolls_sideways(tab)
    still(tab)  # what is of the run before is faded until it goes
    told = Axe().run(tab, options={"runOnly": {"type": "tag", "values": AXE_TAGS}}).response["violations"]
    assert not told, [(each["id"], node["html"][:120]) for each in told for node in each["nodes"]]


def test_a_finalist_is_kept_and_listed(look, link):
    """Kept with a name, it is there after a reload."""
    name = "The phone's choice" if look.is_phone else "The desk's choice"
    tab = linked(look, link, concept="c3" if look.is_phone else "c2")
    tab.get_by_role("button", name="Keep as finalist").click()
    tab.get_by_label("Name", exact=True).fill(name)
    tab.keyboard.press("Tab")
    still(tab)
    tab.get_by_role("button", name="Keep", exact=True).click()
    still(tab)
    tab.reload()
    if look.is_phone:
        tab.get_by_role("button", name="All concepts", exact=True).click()
    tab.get_by_role("radio", name=re.compile("^Finalists")).click()
    expect(tab.locator(".kept-name", has_text=name)).to_be_visible(timeout=10_000)


def test_work_outlives_the_server_and_a_killed_search(desk, project, ready, tmp_path):
    """The child is killed: the best so far is kept. The server is ended and started anew: the same link shows it."""
    server, address = started(project, ready, "until_stopped", tmp_path)
    try:
        desk.goto(address)
        desk.get_by_role("button", name="Find concepts").click()
        expect(desk.get_by_text("Concepts in order")).to_be_visible(timeout=20_000)
        with sqlite3.connect(tmp_path / "work.db") as kept:
            (child,) = kept.execute("SELECT process FROM searches").fetchone()
        os.kill(child, signal.SIGKILL)
        expect(desk.get_by_text("The best so far is kept")).to_be_visible(timeout=10_000)
        link = desk.evaluate("location.search")
    finally:
        server.terminate()
        server.wait(10)
    server, address = started(project, ready, "at_once", tmp_path)
    try:
        desk.goto(address + link)
        expect(desk.get_by_text("The best so far is kept")).to_be_visible(timeout=20_000)
        expect(desk.get_by_text("Concepts in order")).to_be_visible()
        desk.get_by_role("button", name="Search again").click()
        expect(desk.get_by_text("4 concepts after")).to_be_visible(timeout=20_000)
        expect(desk.get_by_text("The best so far is kept")).to_be_hidden()
    finally:
        server.terminate()
        server.wait(10)


def test_no_barrier_of_our_making(desk, link):
    """axe-core finds no violation of WCAG 2.2 A and AA at any step."""
    found = {}
    for step in STEPS:
        linked(desk, link, step)
        told = Axe().run(desk, options={"runOnly": {"type": "tag", "values": AXE_TAGS}}).response["violations"]
        found[step] = [(each["id"], node["html"][:120]) for each in told for node in each["nodes"]]
    assert not any(found.values()), found


def test_a_concept_is_short_and_a_link_opens_its_part(desk, link):
    """At 1440 x 900 no more than two windows, the parts within the first one; a link shows the part that it names."""
    tab = linked(desk, link, concept="c2")
    assert tab.evaluate("document.querySelector('[data-testid=stMain]').scrollHeight") <= 2 * 900
    tab.get_by_role("radio", name="Rules", exact=True).click()
    expect(tab.get_by_text("Checked again after the search: all kept.")).to_be_visible(timeout=10_000)
    other = tab.context.new_page()
    other.goto(tab.evaluate("location.href"))
    expect(other.get_by_text("Checked again after the search: all kept.")).to_be_visible(timeout=20_000)
    expect(other.get_by_text("Is that all in?")).to_be_hidden()
