"""Each notebook in a real JupyterLab: run it, move every slider by keyboard and by mouse, read what changes."""

import os
import re
from contextlib import contextmanager

import pytest

lab = pytest.importorskip("lab", reason="playwright is not installed")

NOTEBOOKS = sorted(path.name for path in lab.NOTEBOOKS.glob("*.ipynb"))
SLIDERS = ("span", "depth", "plies")

pytestmark = pytest.mark.browser


@contextmanager
def started_chromium():
    if lab.chromium() is None:
        if os.environ.get("STRUCTLIB_REQUIRE_BROWSER"):
            pytest.fail("chromium is not installed, and this run must test the pages in a browser")
        pytest.skip("chromium is not installed")
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.CHROMIUM_FLAGS)
        yield started
        started.close()


@pytest.fixture(scope="module")
def browser(tmp_path_factory):
    with lab.running_lab(tmp_path_factory.mktemp("lab")) as address, started_chromium() as started:
        # one context for all notebooks: the lab's own code is loaded and compiled once
        yield started.new_context(viewport={"width": 1600, "height": 1200}), address


@pytest.fixture(scope="module", params=NOTEBOOKS)
def notebook(request, browser):
    context, address = browser
    page = context.new_page()
    page.set_default_timeout(60_000)
    page.notebook = request.param
    lab.listen(page)
    lab.open_and_run(page, address, request.param)
    yield page
    page.close()


def seen(page):
    """What a reader can read of the bench: the picture's alternative text and the table."""
    return page.evaluate("""() => {
        const bench = document.querySelector('.sl-bench');
        return {alt: bench.querySelector('.sl-picture svg').getAttribute('aria-label'),
                table: bench.querySelector('.sl-picture table').innerText,
                height: Math.round(bench.querySelector('.sl-picture svg').getBoundingClientRect().height)};
    }""")


def box(page, name):
    return page.evaluate(f"() => document.querySelector('.sl-bench .sl-box-{name} input').value")


def wait_for_change(page, before):
    page.wait_for_function(
        "old => document.querySelector('.sl-bench .sl-picture svg').getAttribute('aria-label') !== old",
        arg=before["alt"],
    )
    page.wait_for_timeout(150)
    return seen(page)


def handle(page, name):
    found = page.locator(f".sl-bench .sl-slider-{name} .noUi-handle").first
    found.scroll_into_view_if_needed()
    return found


def towards_room(page, name):
    """An arrow key that moves the slider, whichever end it stands at."""
    at = handle(page, name)
    now, most = float(at.get_attribute("aria-valuenow")), float(at.get_attribute("aria-valuemax"))
    return "ArrowRight" if now < most else "ArrowLeft"


def test_the_three_sliders_come_first_and_in_order(notebook):
    order = notebook.evaluate("""() => [...document.querySelector('.sl-bench').querySelectorAll('[class*="sl-slider-"]')]
        .map(node => node.className.match(/sl-slider-([a-z_]+)/)[1])""")
    assert tuple(order[:3]) == SLIDERS


def test_every_box_has_a_name_for_screen_readers(notebook):
    names = notebook.evaluate("""() => [...document.querySelectorAll('.sl-bench input[type=text]')]
        .map(node => node.labels.length ? node.labels[0].textContent : '')""")
    assert len(names) >= 3 and all(names)


def test_tab_goes_through_box_and_slider_in_order_and_focus_is_seen(notebook):
    field = notebook.locator(".sl-bench .sl-box-span input").first
    field.scroll_into_view_if_needed()
    field.focus()
    met = []
    for _ in range(5):
        notebook.keyboard.press("Tab")
        met.append(
            notebook.evaluate("""() => {
            const at = document.activeElement;
            const holder = at.closest('[class*="sl-slider-"], [class*="sl-box-"]');
            const style = getComputedStyle(at);
            return {name: holder ? holder.className.match(/sl-(slider|box)-[a-z_]+/)[0] : '',
                    outline: style.outlineStyle !== 'none' ? parseFloat(style.outlineWidth) : 0};
        }""")
        )
    assert [one["name"] for one in met] == [
        "sl-slider-span",
        "sl-box-depth",
        "sl-slider-depth",
        "sl-box-plies",
        "sl-slider-plies",
    ]
    assert met[0]["outline"] >= 2 and met[4]["outline"] >= 2


def test_nothing_sticks_out_on_a_narrow_page_or_at_twice_the_size(notebook):
    size = notebook.viewport_size
    try:
        for width in (800, 1000):  # what is left of 1600 and 2000 pixels at 200 %
            notebook.set_viewport_size({"width": width, "height": 900})
            notebook.wait_for_timeout(400)
            wide = notebook.evaluate("""() => {
                const bench = document.querySelector('.sl-bench');
                const picture = bench.querySelector('.sl-picture svg').getBoundingClientRect();
                const room = bench.getBoundingClientRect();
                return [picture.right - room.right, room.left - picture.left];
            }""")
            assert max(wide) <= 1, (width, wide)
    finally:
        notebook.set_viewport_size(size)
        notebook.wait_for_timeout(400)


@pytest.mark.parametrize("name", SLIDERS)
def test_slider_by_keyboard(notebook, name):
    before, text = seen(notebook), box(notebook, name)
    key = towards_room(notebook, name)
    handle(notebook, name).focus()
    notebook.keyboard.press(key)
    after = wait_for_change(notebook, before)
    assert after["table"] != before["table"] or name == "plies"  # the same wood in more plies is the same numbers
    assert box(notebook, name) != text
    assert after["height"] == before["height"]


@pytest.mark.parametrize("name", SLIDERS)
def test_slider_by_mouse(notebook, name):
    before = seen(notebook)
    at = handle(notebook, name).bounding_box()
    rail = notebook.locator(f".sl-bench .sl-slider-{name} .noUi-base").first.bounding_box()
    x, y = at["x"] + at["width"] / 2, at["y"] + at["height"] / 2
    far = rail["x"] + rail["width"] * (0.98 if towards_room(notebook, name) == "ArrowRight" else 0.02)
    notebook.mouse.move(x, y)
    notebook.mouse.down()
    notebook.mouse.move((x + far) / 2, y, steps=4)
    notebook.mouse.move(far, y, steps=4)
    notebook.mouse.up()
    after = wait_for_change(notebook, before)
    assert after["height"] == before["height"]


def test_typed_value_is_read_and_a_bad_one_is_answered(notebook):
    field = notebook.locator(".sl-bench .sl-box-span input").first
    field.scroll_into_view_if_needed()
    before = seen(notebook)
    field.fill("10'-3\"")
    field.press("Enter")
    wait_for_change(notebook, before)
    assert box(notebook, "span") == "10 ft 3 in"
    field.fill("12")
    field.press("Enter")
    notebook.wait_for_function("() => /12 what/.test(document.querySelector('.sl-bench .sl-status').innerText)")
    notebook.wait_for_function(  # the box is put back in a message of its own
        "() => document.querySelector('.sl-bench .sl-box-span input').value === '10 ft 3 in'", timeout=10_000
    )


def test_last_value_is_drawn_after_a_burst(notebook):
    handle(notebook, "span").focus()
    notebook.keyboard.press("Home")
    notebook.wait_for_timeout(500)
    before = seen(notebook)
    for _ in range(50):
        notebook.keyboard.press("ArrowRight")
    wait_for_change(notebook, before)
    notebook.wait_for_timeout(1500)
    value = box(notebook, "span")
    after = seen(notebook)
    handle(notebook, "span").focus()
    notebook.keyboard.press("ArrowLeft")
    wait_for_change(notebook, after)
    notebook.keyboard.press("ArrowRight")
    notebook.wait_for_timeout(800)
    # the same value, reached alone, shows the same numbers as the end of the burst did
    assert box(notebook, "span") == value
    assert seen(notebook)["table"] == after["table"]


def test_prediction_is_committed_before_the_answer_by_keyboard(notebook):
    if notebook.notebook.startswith("00"):  # the start page asks nothing yet
        assert notebook.locator(".sl-predict").count() == 0
        return
    block = notebook.locator(".sl-predict").first
    block.scroll_into_view_if_needed()
    button = block.locator("button")
    assert button.is_disabled()
    block.locator("input[type=radio]").first.focus()
    notebook.keyboard.press("Space")
    notebook.wait_for_function("() => !document.querySelector('.sl-predict button').disabled")
    button.focus()
    notebook.keyboard.press("Enter")
    notebook.wait_for_function("() => /Yes\\.|Not quite/.test(document.querySelector('.sl-predict').innerText)")


def test_practice_answers_a_wrong_try(notebook):
    if notebook.notebook.startswith("00"):
        assert notebook.locator(".sl-practice").count() == 0
        return
    block = notebook.locator(".sl-practice").first
    block.scroll_into_view_if_needed()
    field = block.locator("input[placeholder='number and unit']")
    field.fill("banana")
    field.press("Enter")
    notebook.wait_for_function("() => document.querySelector('.sl-practice [role=status]')?.innerText.length > 10")


def test_no_error_reached_the_console(notebook):
    ours = [text for text in notebook.errors if not re.search(r"favicon|ResizeObserver", text)]
    assert not ours, ours[:3]


def test_nothing_was_asked_of_another_host(notebook):
    assert len(notebook.asked) > 10 and lab.asked_of_other_hosts(notebook.asked) == []
