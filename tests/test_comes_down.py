"""What else comes down here: asked on every page of a load path, and said beside the title until somebody looked."""

import pytest
from label_boxes import label_overlaps, labels_of

from structlib.pages.kit.comes_down import NO_LOAD, NOT_LOOKED, comes_down_pick
from structlib.pages.kit.show import start_values
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.past_post.page import PastPostPage
from structlib.pages.topics.path.page import PathPage
from structlib.pages.topics.post.page import PostPage
from structlib.pages.topics.seat.page import SeatPage
from structlib.pages.topics.wall.page import WallPage
from structlib.pictures.drawings.parts import FRAMES
from structlib.pictures.scene import outside

PAGES = {kind.__name__: kind for kind in (BeamPage, WallPage, SeatPage, PostPage, PathPage, PastPostPage)}
#: On the page of overhangs the post above and the end that lifts are gates of their own.
PLAIN = {"PastPostPage": {"kind": "two", "post_dead": 0.0, "post_live": 0.0}}
STOPS = [value for _, value in comes_down_pick().options if value not in (NOT_LOOKED, "none")]
LOADED = {
    "BeamPage": ("dead", "live", "roof_live", "snow"),
    "SeatPage": ("dead", "live", "snow"),
    "PostPage": ("dead", "live", "snow"),
    "PastPostPage": ("dead", "live"),
}


def shown(name, system="us", frame="page", **changes):
    page = PAGES[name](system=system)
    return page.compute(start_values(page, **{**PLAIN.get(name, {}), **changes}), frame=frame)


def shares(found):
    return [cell for row in found.rows for cell in row[1:-1] if "%" in cell]


@pytest.mark.parametrize("stop", STOPS)
@pytest.mark.parametrize("name", PAGES)
def test_what_comes_down_is_a_gate_that_withdraws_shares_and_keeps_what_is_asked(name, stop):
    found, free = shown(name, above=stop), shown(name, above="none")
    assert len(found.gates) == len(free.gates) + 1 and "engineer" in found.gates[0]
    assert found.scene.title.startswith("Stop and call") and not shares(found) and "%" not in found.scene.alt
    asked = {row[0]: row[1] for row in free.rows}
    kept = {row[0]: row[1] for row in found.rows}
    assert all(asked[what] == value for what, value in kept.items()) and kept


@pytest.mark.parametrize("name", PAGES)
def test_not_looked_stands_beside_the_title_and_none_of_these_leaves_it_plain(name):
    start, free = shown(name), shown(name, above="none")
    assert not start.gates and start.scene.title.endswith("what else comes down here: not looked yet")
    assert "not looked" not in free.scene.title and start.scene.title.startswith(free.scene.title)
    assert start.rows == free.rows


@pytest.mark.parametrize("system", ["us", "metric"])
@pytest.mark.parametrize("frame", FRAMES)
@pytest.mark.parametrize("name", PAGES)
def test_no_title_is_cut_whatever_comes_down(name, frame, system):
    for above in (NOT_LOOKED, "bracing"):
        scene = shown(name, system, frame, above=above).scene
        assert label_overlaps(scene) == [] and outside(scene) == []
        drawn = " ".join(label.text for label in labels_of(scene) if label.bold)
        assert scene.title in drawn


@pytest.mark.parametrize("name", PAGES)
def test_the_pick_stands_after_the_three_sliders(name):
    controls = PAGES[name]().controls({})
    place = [control.name for control in controls].index("above")
    assert place >= 3 and controls[place] == comes_down_pick()


@pytest.mark.parametrize("name, loads", LOADED.items())
def test_where_no_load_is_typed_no_share_is_shown(name, loads):
    found = shown(name, above="none", **dict.fromkeys(loads, 0.0))
    assert found.scene.title == NO_LOAD and not shares(found) and not found.gates
    assert "%" not in found.scene.alt
    assert shares(shown(name, above="none"))
