"""README's pictures made anew from a result: `python -m tests.browser.readme_pictures OUT`, after `options ... --out OUT`.

They go to ui/assets, all of the first concept: page and yard as they are seen at a desk, plan and ground as drawn.
"""

import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.browser.conftest import started

PROJECT = Path(__file__).parents[2]
ASSETS = PROJECT / "ui" / "assets"
SIZE = {"width": 1440, "height": 1000}
DRAWN_PX = {"plan": 1000, "ground": 900}
# Fine lines are smoother without a graphics driver; the yard in 3-D needs one, in software where there is no card.
FLAT = ("--no-sandbox", "--disable-gpu")
SOLID = ("--no-sandbox", "--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader")
CALM_MS = 5000


def main(ready: Path) -> None:
    """Make all four."""
    first = "concept-01"
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        ground = Path(folder) / "ground.svg"
        call = ("picture", str(ready / "options.json"), "--option", first, "--of", "ground", "--out", str(ground))
        subprocess.run((sys.executable, "-m", "optimizer", *call), cwd=PROJECT, check=True)
        chromium = shutil.which("chromium") or shutil.which("chromium-browser")
        flat, solid = (driver.chromium.launch(executable_path=chromium, args=[*how]) for how in (FLAT, SOLID))
        for name, svg in (("plan", ready / f"{first}.svg"), ("ground", ground)):
            drawn(flat, svg, ASSETS / f"{name}.png", DRAWN_PX[name])
        seen(ready, (("page", "Plan", flat), ("yard", "3-D", solid)))
        for browser in (flat, solid):
            browser.close()


def drawn(browser, svg: Path, out: Path, width_px: int) -> None:
    """A drawing as a picture of a width."""
    tab = browser.new_page(viewport={"width": width_px, "height": 800})
    tab.set_content(f"<body style='margin:0'>{svg.read_text(encoding='utf-8')}</body>")
    tab.add_style_tag(content=f"body > svg {{ width: {width_px}px; height: auto; display: block; }}")
    tab.locator("body > svg").screenshot(path=out)


def seen(ready: Path, views) -> None:
    """The page with a choice of picture of the first concept: name of the file, choice and browser of each."""
    work = tempfile.mkdtemp()
    process, address = started(PROJECT, ready, "at_once", work)
    try:
        for name, choice, browser in views:
            tab = browser.new_page(viewport=SIZE)
            tab.goto(address)
            tab.get_by_role("button", name="Find concepts").click(timeout=60_000)
            tab.get_by_role("button", name="Open Concept 1", exact=True).wait_for(timeout=60_000)
            tab.get_by_role("radio", name=choice, exact=True).click()
            tab.mouse.move(5, 5)
            tab.wait_for_timeout(CALM_MS)
            tab.screenshot(path=ASSETS / f"{name}.png")
    finally:
        process.terminate()
        process.wait(10)
        shutil.rmtree(work, ignore_errors=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
