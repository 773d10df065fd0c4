"""What a house says of its opening reaches the page of the beam: both seats, the plate, the wall, the other rulebook's room."""

import dataclasses

import pytest
from label_boxes import label_overlaps

from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.file import demo_house
from structlib.house.judging import judge_element
from structlib.house.path import follow
from structlib.house.plan import JOINED, Load, Plate, Post, SteelBeam, with_changes
from structlib.house.plies import PLY_JOINTS
from structlib.pages.kit.show import start_values
from structlib.pages.topics.beam import choices
from structlib.pages.topics.beam.page import BeamPage
from structlib.pictures.drawings.parts import FRAMES
from structlib.pictures.scene import outside


def page(**changes):
    return BeamPage(with_changes(demo_house(), changes))


def shares(one, **values):
    """Name and share of every check at the start."""
    values = {**start_values(one), **values}
    return {check.name: check.share for check in one.result(tuple(values.items())).checks}


def test_each_seat_has_its_own_length():
    long = page()
    short = page(**{"kitchen opening": {"right_seat": 1.5 * inch, "start": 14 * ft}})
    # a third of the length presses three times as hard, but for the span that is 1 1/2 in shorter of 8 ft 4 1/2 in
    before, after = shares(long)["bearing, left seat, beam"], shares(short)["bearing, right seat, beam"]
    assert after == pytest.approx(before * 3 * (100.5 - 1.5) / 100.5, rel=1e-6)
    assert shares(short)["bearing, left seat, beam"] == pytest.approx(before * (100.5 - 1.5) / 100.5, rel=1e-6)


def test_the_plate_is_that_of_the_wall():
    fir = page(**{"middle wall": {"plate": Plate(species="Douglas Fir-Larch", grade="No.2")}})
    assert start_values(fir)["below"] == "fir" and start_values(page())["below"] == "spf"
    assert start_values(page(**{"middle wall": {"plate": None}}))["below"] == "plate"  # the weakest one listed counts
    assert start_values(page(**{"middle wall": {"made_of": "masonry"}}))["below"] == "masonry"


def test_a_beam_wider_than_its_wall_is_a_gate_and_is_never_offered():
    thin = page(**{"middle wall": {"thickness": 4.5 * inch}})
    told = thin.compute(start_values(thin))  # four plies of 1 1/2 in
    assert any("wider than what it sits on" in gate for gate in told.gates)
    assert not any("wider than" in gate for gate in thin.compute({**start_values(thin), "plies": 3}).gates)
    offered = choices.below_full(thin, count=50).rows
    assert offered and all(int(row[0].split("-")[0]) <= 3 for row in offered)


def test_the_line_load_at_the_opening_is_that_of_the_path():
    one = page(**{"upper floor": {"joists": "continuous"}})
    values = start_values(one)
    # 11 and 13 ft in one piece: M over the wall is w (11^3 + 13^3) / (8 x 24); 30 psf on it, and 20 psf cut above
    over = 30 * (11**3 + 13**3) / (8 * 24)
    asked = 30 * 12 + over / 11 + over / 13 + 20 * 12
    assert values["live"] / (47.88025898e-6 * 304.8) == pytest.approx(asked, rel=1e-6)


NO_LINE = dict(dead=0.0, live=0.0, roof_live=0.0, snow=0.0)


def test_a_post_on_the_beam_by_hand():
    """8 ft clear on seats of 3 in: 8.25 ft. 1,000 lb dead and 2,000 lb live at a quarter of 8 ft: 2.125 ft and 6.125 ft."""
    one = page()
    values = start_values(
        one,
        **NO_LINE,
        seat=3 * inch,
        span=8 * ft,
        plies=3,
        above="none",
        point_dead=1000 * lb,
        point_live=2000 * lb,
        point_at=0.25,
    )
    found, told = one.result(tuple(values.items())), one.compute(values)
    own = found.member.weight_per_length / plf
    moment = (
        3000 * 2.125 * 6.125 / 8.25 + own * 2.125 * 6.125 / 2
    )  # lb-ft, under the post: the shear changes sign there
    bending = next(check for check in found.checks if check.kind == "bending")
    assert bending.asked / psi == pytest.approx(moment * 12 / (4.5 * found.member.depth**2 / inch**2 / 6))
    assert bending.position == pytest.approx(2.125 * ft)
    left, right = (3000 * part / 8.25 + own * 8.25 / 2 for part in (6.125, 2.125))
    pushes = [
        reaction.force / lb
        for reaction in max(found.demands, key=lambda d: d.solution.reactions[0].force).solution.reactions
    ]
    assert pushes == pytest.approx([left, right])
    rows = {row[0]: row for row in told.rows}
    assert rows["post on the beam"][1] == "3,000 lb" and "2 ft from the left edge" in rows["post on the beam"][4]
    assert "dead 1,000 lb, live 2,000 lb" in rows["post on the beam"][4] and "Load: post 3,000 lb." in told.scene.alt
    assert any("kept from rolling" in note for note in told.notes) and not told.gates


def test_a_post_that_is_entered_is_no_more_what_nobody_followed():
    one = page()
    assert one.compute(start_values(one, above="post")).gates
    assert not one.compute(start_values(one, above="post", point_snow=1000 * lb)).gates
    assert one.compute(start_values(one, above="truss", point_snow=1000 * lb)).gates


@pytest.mark.parametrize("joined", ["unknown", *PLY_JOINTS])
def test_a_post_on_plies_loaded_from_the_side_is_for_an_engineer(joined):
    one = page()
    values = start_values(one, above="none", position="flush", joined=joined, point_dead=1000 * lb)
    gates = one.compute(values).gates
    assert any(
        ("fasteners of its own there" if joined in PLY_JOINTS else "choose how they are joined") in gate
        for gate in gates
    )
    assert not one.compute({**values, "plies": 1}).gates  # one ply has nothing to pass on


def ridge_posts(*places):
    house, names = demo_house(), [f"king {number}" for number in range(len(places))]
    x, opening = house.part("middle wall").at, house.part("kitchen opening")
    loads = [
        Load(
            name=f"ridge on {name}",
            on=name,
            x=x,
            y=opening.start + at * opening.clear_width,
            dead=500 * lb,
            snow=1500 * lb,
        )
        for name, at in zip(names, places)
    ]
    posts = [Post(name=name, on="kitchen opening", x=x, y=one.y, height=8 * ft) for name, one in zip(names, loads)]
    return dataclasses.replace(house, posts=(*house.posts, *posts), loads=(*house.loads, *loads))


def test_a_post_that_the_house_puts_on_the_opening_is_where_the_page_starts():
    one = BeamPage(ridge_posts(0.375))
    values = start_values(one)
    assert [values[f"point_{kind}"] / lb for kind in ("dead", "live", "roof_live", "snow")] == pytest.approx(
        [500, 0, 0, 1500]
    )
    assert values["point_at"] == pytest.approx(0.375)
    # the same beam in the house itself is asked the same
    wood = one.path(values).house.openings[0].beam
    there = follow(with_changes(ridge_posts(0.375), {"kitchen opening": {"beam": wood}}))
    demands = judge_element(there, "kitchen opening", one.rulebook).answers[0].demands
    here = one.result(tuple(values.items())).demands
    assert [d.combination.name for d in here] == [d.combination.name for d in demands]
    assert [d.solution.extremes.moment.value for d in here] == pytest.approx(
        [d.solution.extremes.moment.value for d in demands]
    )


def test_more_than_one_post_on_the_opening_is_a_gate():
    two = BeamPage(ridge_posts(0.25, 0.75))
    assert any("More than one post" in gate for gate in two.compute(start_values(two, above="none")).gates)


def test_every_way_to_join_plies_is_a_word_of_the_house():
    assert JOINED == ("not chosen", *PLY_JOINTS)


def test_a_post_stays_on_the_beam_whatever_the_width_of_floor():
    one = page()
    light, heavy = (
        choices.giving_way(one, keys=("fir",), above="none", point_snow=force) for force in (0.0, 4000 * lb)
    )
    assert light.rows and heavy.rows and light.rows[-1][1] != heavy.rows[-1][1]


def test_a_house_with_steel_over_its_opening_starts_the_page_with_wood():
    steel = BeamPage(
        with_changes(
            demo_house(), {"kitchen opening": {"beam": None, "steel": SteelBeam(shape="W8x18", braced=4 * ft)}}
        )
    )
    assert shares(steel) == shares(page())


@pytest.mark.parametrize("frame", FRAMES)
def test_a_post_anywhere_on_the_beam_meets_no_label(frame):
    for system in ("us", "metric"):
        one = BeamPage(system=system)
        for at in (0.0, 0.05, 0.5, 1.0):
            for span in (3 * ft, 20 * ft):
                scene = one.compute(
                    start_values(one, above="none", point_at=at, span=span, point_snow=39_000 * lb), frame=frame
                ).scene
                assert label_overlaps(scene) == [] and outside(scene) == []


@pytest.mark.parametrize("every, braced", [(0.0, "all"), (16 * inch, "joists"), (4 * ft, "middle"), (5 * ft, "ends")])
def test_what_holds_the_top_edge_and_joins_the_plies_is_that_of_the_house(every, braced):
    values = start_values(page(**{"kitchen opening": {"held_every": every, "joined": "16d"}}))  # 8 ft clear
    assert (values["braced"], values["joined"]) == (braced, "16d")


def test_an_even_beam_names_its_left_end_at_every_place_of_the_slider():
    page = BeamPage()
    start = start_values(page)
    for step in range(24):
        shown = page.compute({**start, "span": (6 + step / 4) * ft})
        ends = [row[0] for row in shown.rows if "left" in row[0] or "right" in row[0]]
        assert ends and not [name for name in ends if "right" in name], (step, ends)
