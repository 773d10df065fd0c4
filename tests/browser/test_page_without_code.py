"""A notebook as a page without code, as README.md starts it: it works with the network off."""

import re
from pathlib import Path

import pytest

lab = pytest.importorskip("lab", reason="playwright is not installed")
from test_notebooks_live import seen, started_chromium, wait_for_change  # noqa: E402

pytestmark = pytest.mark.browser


def test_an_address_of_another_host_is_told_from_one_of_this_machine():
    own = ["http://127.0.0.1:8888/lab", "ws://localhost:8888/api", "data:text/css,a{}", "blob:http://x"]
    other = ["https://content.example/font.css", "//content.example/font.woff2", "wss://10.0.0.7/api"]
    assert lab.asked_of_other_hosts(own + other) == other


def test_the_page_without_code_asks_nothing_of_another_host_and_its_slider_moves(tmp_path):
    readme = (Path(__file__).resolve().parents[2] / "README.md").read_text()
    notebook = re.search(r"bin/voila notebooks/(\S+\.ipynb)", readme).group(1)
    with lab.running_voila(tmp_path, notebook) as address, started_chromium() as browser:
        page = browser.new_page(viewport={"width": 1600, "height": 1200})
        lab.listen(page)
        page.goto(address, timeout=180_000, wait_until="domcontentloaded")
        page.wait_for_selector(".sl-bench svg", timeout=180_000)
        before = seen(page)
        page.locator(".sl-bench .sl-slider-span .noUi-handle").first.focus()
        page.keyboard.press("ArrowRight")
        assert wait_for_change(page, before)["table"] != before["table"]
        assert page.locator(".jp-InputArea-editor").count() == 0, "the code shows"
        assert len(page.asked) > 10 and lab.asked_of_other_hosts(page.asked) == []
