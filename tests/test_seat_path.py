"""Each seat of a beam and each plate under a post apart, by hand: what it receives, its faces, what withdraws it."""

import dataclasses

import pytest
from dummy_rulebook import DUMMY, DummyLimitStates
from test_path_by_hand import FIR, LONG, floor, house, opening, post, row_house, three, wall

from structlib.ground.refusals import BadInput
from structlib.ground.units import ft, inch, lb, plf, psi
from structlib.house.judging import judge, judge_element
from structlib.house.path import follow
from structlib.house.pieces import piece_of
from structlib.house.plan import Beam, Load, Plate, Wood
from structlib.pages.kit.show import start_values
from structlib.pages.topics.path.page import PathPage
from structlib.pages.topics.wall.page import WallPage
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import BEAM_FACE, LEAST_SEAT, PLATE_FACE, ask

SPF, HEM_FIR = Plate(species="Spruce-Pine-Fir", grade="No.1/No.2"), Plate(species="Hem-Fir", grade="No.2")


def kinds(judged):
    return {check.kind: check for check in judged.checks}


def door(**of_opening):
    """13 ft of floor of 10 and 40 psf on a header over 5 ft 9 in, seats of 3 in, on a plate; 6 ft from seat to seat."""
    return house(
        floor("west middle east"),
        *three(0, 13, 26, plate=SPF),
        opening("door", "middle", 6, 5.75, beam=FIR, **of_opening),
    )


def test_a_seat_of_an_opening_by_hand():
    path = follow(door())
    found = judge(path, RULEBOOK)
    left = found["door, left seat"]
    own = path.element("door").own[0].amount[0] * 6 * ft / 2 / lb
    # half of 6 ft of 13 ft of floor: 390 lb dead, 1,560 lb live
    assert left.element.total()["live"] / lb == pytest.approx(1560) and left.element.received[0].source == "door"
    assert left.element.total()["dead"] / lb == pytest.approx(390 + own)
    assert left.element.gives[0].to == "door, left post" and left.members[0].seat.length == 3 * inch
    stress = (1950 + own) / (4.5 * 3)
    faces = kinds(left)
    assert faces[BEAM_FACE].asked / psi == pytest.approx(stress) and faces[BEAM_FACE].share == pytest.approx(
        stress / 625
    )
    assert faces[PLATE_FACE].share == pytest.approx(stress / 425) and faces[LEAST_SEAT].share == 0.5
    assert left.governs is faces[LEAST_SEAT] and not left.gates
    # the beam as a whole has the same checks of its seats, by the same rule
    assert [
        one for one in found["door"].checks if one.kind in faces and one.name.endswith(("left", "left seat, beam"))
    ] == [faces[BEAM_FACE], faces[LEAST_SEAT]]
    assert list(found)[list(found).index("door") + 1 :][:2] == ["door, left seat", "door, right seat"]
    assert judge_element(path, "door, right seat", RULEBOOK).checks == found["door, right seat"].checks


def test_what_the_rulebook_answers_about_a_seat():
    seat = judge_element(follow(door()), "door, left seat", RULEBOOK).answers[0]
    push = max(seat.demands, key=lambda one: one.axial)
    lengths = ask(RULEBOOK, "bearing_lengths", seat.member, push)
    assert [one / inch for one in lengths] == pytest.approx([push.axial / lb / 4.5 / 625, push.axial / lb / 4.5 / 425])
    assert (
        ask(RULEBOOK, "jack_studs", seat.member, push).count == 1
        and ask(RULEBOOK, "area_factor", seat.member).value == 1.0
    )


def test_the_seats_of_a_row_hand_on_together_what_the_beams_hand_on():
    # 9 and 11 ft of 520 plf on one post, the tub's 1,500 lb at 5.5 ft of the first: each beam's own end apart
    path = follow(row_house(wood=FIR))
    found = judge(path, RULEBOOK)
    assert found["north beam, right seat"].element.total()["live"] / lb == pytest.approx(520 * 4.5 + 1500 * 5.5 / 9)
    assert found["south beam, left seat"].element.total()["live"] / lb == pytest.approx(520 * 5.5)
    for name in ("north beam", "south beam"):
        seats = [found[f"{name}, {side} seat"].element.total() for side in ("left", "right")]
        assert {kind: sum(one[kind] for one in seats) for kind in seats[0]} == pytest.approx(
            dict(path.element(name).total())
        )


def test_a_post_right_over_a_middle_support_is_shared_by_both_seats():
    path = follow(
        house(
            wall("west", 0),
            Beam(name="beam", on=("a", "b", "c"), at=12 * ft, start=0.0, end=LONG * ft),
            *(post(name, 12, y) for name, y in (("a", 0), ("b", 10), ("c", 20))),
            post("top", 12, 10, "beam"),
            Load(name="above", on="top", x=12 * ft, y=10 * ft, dead=20_000 * lb),
        )
    )
    found = judge(path, RULEBOOK)
    pressed = {name: one.element.total()["dead"] / lb for name, one in found.items() if name.startswith("beam, ")}
    assert pressed == pytest.approx(
        {
            "beam, left seat of span 1": 0,
            "beam, right seat of span 1": 10_000,
            "beam, left seat of span 2": 10_000,
            "beam, right seat of span 2": 0,
        }
    )
    # its wood is not chosen: what comes down is told all the same, and why nothing is judged
    seat = found["beam, left seat of span 2"]
    assert not seat.checks and any("is not chosen" in one for one in seat.refused)


@pytest.mark.parametrize(
    "of_wall, below, least",
    [(dict(made_of="masonry"), "masonry", 3.0), (dict(plate=HEM_FIR), "plate", 1.5), ({}, "plate", 1.5)],
)
def test_a_beam_into_a_wall_sits_on_what_the_wall_is_made_of(of_wall, below, least):
    # a beam across with one end in the west wall: on masonry the code asks for 3 in, on a plate for 1 1/2 in (R502.6)
    gate = [] if of_wall.get("made_of") else [opening("gate", "west", 7, 6)]  # in studs a point load needs a header
    path = follow(
        house(
            floor("west girder east"),
            wall("west", 0, **of_wall),
            wall("east", 14),
            *gate,
            Beam(name="girder", on=("g1", "g2", "g3"), at=5 * ft, start=0.0, end=LONG * ft),
            Beam(name="transfer", on=("west", "far post"), runs="across", at=10 * ft, start=0.0, end=12 * ft, wood=FIR),
            post("g1", 5, 0),
            post("g2", 5, 10, "transfer"),
            post("g3", 5, 20),
            post("far post", 12, 10),
        )
    )
    found = judge(path, RULEBOOK)["transfer, left seat"]
    assert found.members[0].seat.below == below and kinds(found)[LEAST_SEAT].asked == pytest.approx(least * inch)
    assert (PLATE_FACE in kinds(found)) == (below == "plate")
    if below == "plate":  # Hem-Fir 405 psi; where nobody told, the weakest wood listed
        assert kinds(found)[PLATE_FACE].given / psi == pytest.approx(405 if of_wall else 335)
    assert any("masonry" in gate for gate in found.gates) == (below == "masonry")


def test_a_beam_on_a_beam_presses_it_across_its_grain():
    # the lower beam is three plies wide, 4 1/2 in, and of Hem-Fir, 405 psi: no end grain
    low = dataclasses.replace(FIR, species="Hem-Fir")
    path = follow(
        house(
            floor("west upper east"),
            wall("west", 0),
            wall("east", 24),
            Beam(name="upper", on=("a", "cross"), at=12 * ft, start=0.0, end=LONG * ft, wood=FIR, seat=8 * inch),
            post("a", 12, 0),
            Beam(name="cross", on=("l", "r"), runs="across", at=20 * ft, start=8 * ft, end=16 * ft, wood=low),
            post("l", 8, 20),
            post("r", 16, 20),
        )
    )
    found = judge(path, RULEBOOK)["upper, right seat"]
    assert found.members[0].seat.length == pytest.approx(4.5 * inch)
    assert kinds(found)[PLATE_FACE].given / psi == pytest.approx(405) and "plate" not in kinds(found)[PLATE_FACE].name


@pytest.mark.parametrize(
    "sits_on, posts, below",
    [("as drawn", None, "plate"), ("studs", None, "post"), ("as drawn", FIR, "post"), ("plate", FIR, "plate")],
)
def test_an_opening_says_what_its_beam_sits_on(sits_on, posts, below):
    found = judge_element(
        follow(door(sits_on=sits_on, posts=posts and dataclasses.replace(posts, size="2x4"))),
        "door, left seat",
        RULEBOOK,
    )
    assert found.members[0].seat.below == below


def test_the_plate_under_a_post_stands_apart():
    # 4 1/2 in by 5 1/2 in of post on Spruce-Pine-Fir of 425 psi, and on the header below it
    stud = dataclasses.replace(FIR, size="2x6")
    path = follow(
        house(
            floor("west middle east"),
            *three(0, 13, 26),
            opening("door", "middle", 6, 5.75, beam=FIR),
            post("king", 13, 9, "door", wood=stud),
            post("stud", 13, 16, plate=SPF, wood=stud),
            *(
                Load(name=f"on {name}", on=name, x=13 * ft, y=y * ft, snow=4000 * lb)
                for name, y in (("king", 9), ("stud", 16))
            ),
        )
    )
    found = judge(path, RULEBOOK)
    own = path.element("stud").own[0].amount[0] / lb
    plate = found["stud, plate"]
    assert plate.element.total()["snow"] / lb == pytest.approx(4000)
    assert plate.checks[0].share == pytest.approx((4000 + own) / (4.5 * 5.5) / 425)
    assert found["king, door"].checks[0].share == pytest.approx((4000 + own) / (4.5 * 5.5) / 625)
    assert judge_element(path, "stud, plate", RULEBOOK).checks == plate.checks


def test_under_another_rulebook_a_seat_keeps_what_it_receives():
    path = follow(door())
    found = judge_element(path, "door, left seat", DUMMY)
    assert not found.checks and "no rule for a seat here" in found.refused[0]
    strong = found.answers[0].demands[0]
    own = path.element("door").own[0].amount[0] * 6 * ft / 2 / lb
    assert strong.axial / lb == pytest.approx(1.25 * (390 + own) + 1.5 * 1560)


def test_no_such_seat_is_refused_with_the_names_that_there_are():
    with pytest.raises(BadInput, match="left seat"):
        judge_element(follow(door()), "door, top seat", RULEBOOK)
    with pytest.raises(BadInput, match="nothing on the load's way"):
        judge_element(follow(door()), "gate, left seat", RULEBOOK)


def test_two_beam_ends_share_the_post_of_the_start_page():
    # three plies of LVL, 5 1/4 in wide, on half of a post 4 1/2 in wide: 2 1/4 in of seat, 800 psi on the beam's face
    page = PathPage()
    found = page.result(tuple(start_values(page, wood="lvl 2.0", plies=3).items()))
    post = piece_of(page.house.posts[0].wood)
    own = post.material.weight_density * post.ply_width * post.plies * post.depth * page.house.posts[0].height
    one_end = (found.post - own) / 2
    assert found.check.share == pytest.approx(
        one_end / (5.25 * inch * 2.25 * inch) / found.beam.member.material.bearing
    )


def test_a_rulebook_without_soils_leaves_the_start_page_its_demands_and_one_sentence():
    class NoSoils(DummyLimitStates):
        soils = None

    page, with_soils = PathPage(rulebook=NoSoils()), PathPage(rulebook=DUMMY)
    values = start_values(page, above="none")
    shown, other = page.compute(values), with_soils.compute(start_values(with_soils, above="none"))
    assert [row for row in other.rows if "soil" not in row[0]] == list(shown.rows)
    assert [note for note in shown.notes if "no rule for the soils here" in note] and not shown.gates
    assert "not judged" in shown.scene.alt


def test_the_wall_page_combines_by_its_rulebook_and_keeps_the_types_apart():
    shown, other = (page.compute(start_values(page)) for page in (WallPage(), WallPage(rulebook=DUMMY)))
    assert shown.rows == other.rows  # what comes down is no matter of rules
    total = WallPage().result(tuple(start_values(WallPage()).items()))[1].total
    assert total["dead"] and total["live"] and not total["snow"] and not total["roof live"]
    strong = (1.25 * total["dead"] + 1.5 * total["live"]) / plf
    assert f"Under strength they ask most: {strong:,.0f} plf." in other.notes[0]
    assert f"Under D + L they ask most: {(total['dead'] + total['live']) / plf:,.0f} plf." in shown.notes[0]


def test_a_wood_that_no_rule_covers_leaves_the_other_parts_their_verdicts():
    wet = Wood(species="LVL", grade="2.0E-2900Fb", size="1 3/4 x 11 7/8 LVL", plies=3, wet=True)
    found = judge(
        follow(
            house(
                floor("west middle east"),
                *three(0, 13, 26),
                opening("door", "middle", 6, 5.75, beam=FIR),
                opening("hall", "middle", 14, 3.75, beam=wet),
            )
        ),
        RULEBOOK,
    )
    assert found["door"].checks and not found["hall"].checks and "LVL" in found["hall"].refused[0]
    assert found["hall, left seat"].element.total()["live"] > 0  # what is asked stays


@pytest.mark.parametrize("joined, gated", [("not chosen", True), ("10d", False)])
def test_plies_loaded_from_the_side_are_gated_in_a_house_too(joined, gated):
    gates = judge_element(follow(door(position="flush", joined=joined)), "door", RULEBOOK).gates
    assert any("choose how they are joined" in one for one in gates) == gated
    one_ply = door(position="flush").openings[0]
    one_ply = dataclasses.replace(one_ply, beam=dataclasses.replace(FIR, plies=1))
    assert not judge_element(follow(dataclasses.replace(door(), openings=(one_ply,))), "door", RULEBOOK).gates


def test_what_holds_the_top_edge_of_a_beam_is_told_in_the_house():
    factors = [
        next(
            factor.value
            for check in judge_element(follow(door(held_every=every)), "door", RULEBOOK).checks
            if check.kind == "bending"
            for factor in check.factors
            if factor.symbol == "C_L"
        )
        for every in (0.0, 6 * ft)
    ]
    assert factors[0] == 1.0 > factors[1]
