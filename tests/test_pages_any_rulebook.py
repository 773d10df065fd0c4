"""Pages under an invented rulebook: demands stay, what has no rule is told, and nothing of another book comes in."""

import importlib
import random
import re
from pathlib import Path

import numpy
import pytest
from dummy_rulebook import DUMMY, RESISTANCE, SOIL_GIVES, STRENGTH
from test_every_page import _drawn

import structlib.pages
from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, plf, psi
from structlib.pages.kit.controls import Page, Slide
from structlib.pages.kit.show import start_values
from structlib.pages.topics.beam.page import BeamPage
from structlib.pages.topics.boards.page import BoardsPage
from structlib.pages.topics.meanwhile.jack import JackPage
from structlib.pages.topics.meanwhile.page import MeanwhilePage
from structlib.pages.topics.old_wood.page import OldWoodPage
from structlib.pages.topics.past_post.page import PastPostPage
from structlib.pages.topics.path.page import PathPage
from structlib.pages.topics.post.page import PostPage
from structlib.pages.topics.push.page import PushPage
from structlib.pages.topics.roof.page import RoofPage
from structlib.pages.topics.seat.page import SeatPage
from structlib.pages.topics.shared_plies.page import UnlikePliesPage
from structlib.pages.topics.wall.page import WallPage
from structlib.rules.choice import RULEBOOK
from structlib.rules.members import Compared, CutMember, Question, acting

OF_ANOTHER_BOOK = re.compile(r"\b(NDS|IRC|ASCE|AISC|IBC)\b|United States")
PAGES = (
    PathPage,
    WallPage,
    BeamPage,
    SeatPage,
    PostPage,
    RoofPage,
    PastPostPage,
    UnlikePliesPage,
    OldWoodPage,
    MeanwhilePage,
)
#: Pages of mechanics alone, which ask no rulebook.
NO_RULES = (BoardsPage, PushPage, JackPage)
#: A wall and what holds a house meanwhile have loads and no verdict; the invented rulebook knows no old joists, no plies
#: that share a load from the side, and no beam that runs on.
NOTHING_JUDGED = (WallPage, MeanwhilePage, OldWoodPage, UnlikePliesPage, PastPostPage)


def _anywhere(page, dice):
    values = _drawn(page, dice)
    if isinstance(values.get("above"), str):  # rarely something, since it withdraws every verdict
        values["above"] = dice.choice(("none", "none", "chimney"))
    if isinstance(page, RoofPage):  # of a roof the invented rulebook judges a ridge beam alone
        values |= {"sets": "ridge", "holds": dice.choice(("tie", "raised tie", "nothing", "ridge beam", "ridge beam"))}
    for one in page.controls(values):
        if isinstance(one, Slide):  # as the slider steps
            value = one.low + round((values[one.name] - one.low) / one.step) * one.step
            values[one.name] = int(value) if one.dimension == "count" else value
    return values


def test_every_bench_goes_through_the_invented_rulebook():
    for path in Path(structlib.pages.__file__).parent.glob("*_page.py"):
        importlib.import_module(f"structlib.pages.{path.stem}")
    there = {one for one in Page.__subclasses__() if one.__module__.startswith("structlib.")}
    assert there == {*PAGES, *NO_RULES}


@pytest.mark.parametrize("kind", (*PAGES, *NO_RULES), ids=lambda kind: kind.__name__)
def test_a_page_computes_under_another_rulebook_and_names_no_other(kind):
    page, dice = kind() if kind in NO_RULES else kind(rulebook=DUMMY), random.Random(kind.__name__)
    judged, first = 0, start_values(page)
    first |= {"above": "none"} if isinstance(first.get("above"), str) else {}
    for values in (first, *(_anywhere(page, dice) for _ in range(25))):
        shown = page.compute(values, start_values(page))
        texts = (
            shown.scene.title,
            shown.scene.alt,
            *shown.notes,
            *shown.gates,
            *(cell for row in shown.rows for cell in row),
        )
        # where a wood comes from is a fact of that wood
        told = [text for text in texts if not re.match("(Design values|Values) of ", text)]
        assert not [text for text in told if OF_ANOTHER_BOOK.search(text)]
        judged += any("%" in cell for row in shown.rows for cell in row[1:])
    assert judged == 0 if kind in NOTHING_JUDGED else judged > 3 or kind in NO_RULES


def test_the_post_s_demands_stay_and_each_kind_without_a_rule_is_told_in_a_sentence():
    page = PostPage(rulebook=DUMMY)
    values = start_values(page, plate="spf", blocks="blocks", above="none", live=0.0, snow=0.0, height=8 * ft)
    found, shown = page.result(tuple(values.items())), page.compute(values)
    rows = {row[0]: row for row in shown.rows}
    assert (
        rows["plate under the post"][1] == rows["load on the post"][1]
        and rows["plate under the post"][3] == "not judged"
    )
    for kind in ("plate", "capacity", "least pad", "held top"):
        assert (
            len(
                [
                    note
                    for note in shown.notes
                    if note.startswith("Not judged: ") and "no rule for" in note and f" {kind} here" in note
                ]
            )
            == 1
        )
    assert shown.scene.title.endswith("not judged: plate under the post")
    assert {"squash", "soil under the pad"} <= set(rows) and "fewest plies for this load" not in rows
    # by hand: both beam ends with their own weight, and the post's own; 1.25 of it under the strength combination
    beam, post = found.beam.member, found.column
    dead = (values["dead"] + beam.weight_per_length) * values[
        "span"
    ] + post.material.weight_density * post.area * 8 * ft
    squash, sink = found.post[0], found.soil_pressure
    assert squash.share == pytest.approx(1.25 * dead / (RESISTANCE * post.material.compression * post.area), rel=1e-12)
    assert sink.share == pytest.approx(dead / values["pad"] ** 2 / SOIL_GIVES, rel=1e-12)


def test_a_roof_keeps_its_demands_and_its_ridge_beam_is_judged():
    """15 psf that stays and 30 psf of snow on 24 ft, every 16 in, 6 in 12: 1.25 and 1.5 of them, in feet and pounds."""
    page = RoofPage(rulebook=DUMMY)
    shown = page.compute(start_values(page, roof_live=0.0))
    rows = {row[0]: row for row in shown.rows}
    load = 1.25 * 15 + 1.5 * 30
    push = load * 16 / 12 * 24**2 / (8 * 6)
    assert (
        rows["push at each eave, a pair"][1] == rows["tie"][1] == f"{push:,.0f} lb" and rows["tie"][3] == "not judged"
    )
    assert rows["rafters"][1] == rows["greatest bending in a rafter"][1] == f"{load * 16 / 12 * 12**2 / 8:,.0f} lb-ft"
    assert shown.scene.title == f"Each eave is pushed by {push:,.0f} lb; not judged: rafters, tie" and not shown.gates
    for what in ("rafter", "tie", "roof snow", "blown snow", "joint nails", "roof gates"):
        assert len([note for note in shown.notes if note.startswith("Not judged: ") and f" {what} here" in note]) == 1
    beam = dict(sets="ridge", holds="ridge beam", roof_live=0.0, depth=11.25 * inch, plies=3, span=12 * ft)
    (ridge,) = (one for one in page.result(tuple(start_values(page, **beam).items())).checks if one.kind == "bend")
    wood = page.result(tuple(start_values(page, **beam).items())).chosen
    own = wood.material.weight_density * 4.5 * 11.25 * inch**2
    line = 1.25 * (15 * 12 * plf + own) + 1.5 * 30 * 12 * plf
    strong = RESISTANCE * STRENGTH * wood.material.bending * 4.5 * 11.25**2 / 6 * inch**3
    assert ridge.share == pytest.approx(line * (12 * ft) ** 2 / 8 / strong, rel=1e-9)


@pytest.mark.parametrize("rulebook", [RULEBOOK, DUMMY], ids=lambda one: one.name)
def test_one_post_has_one_load_on_the_path_page_and_on_the_post_page(rulebook):
    path, page, dice = PathPage(rulebook=rulebook), PostPage(rulebook=rulebook), random.Random(11)
    post = path.house.posts[0]
    same = dict(
        post_wood="hem-fir", size=post.wood.size[2:], made="nailed", height=post.height, post_plies=post.wood.plies
    )
    for _ in range(12):
        beam = {
            name: dice.choice((4, 5, 6.25, 9)) * ft if name == "span" else dice.choice((1, 2, 3, 5))
            for name in ("span", "plies")
        }
        there = path.result(tuple(start_values(path, **beam, wood="fir").items())).post
        here = page.path(start_values(page, **beam, **same)).element("pad").total().sum_for_equilibrium_only()
        assert here == pytest.approx(there, rel=1e-12)
        if rulebook is RULEBOOK:  # dead and live without factors are all that comes down here
            values = start_values(page, **beam, **same)
            assert page.result(tuple(values.items())).greatest.axial == pytest.approx(there, rel=1e-12)


def test_plies_that_another_rulebook_does_not_join_have_no_verdict_and_keep_what_is_asked():
    page = BeamPage(rulebook=DUMMY)
    values = start_values(page, above="none", position="flush", joined="10d", plies=3)
    shown = page.compute(values)
    [gate] = [one for one in shown.gates if "no rule for the joined plies here" in one]
    assert gate.startswith("No verdict: 10d common nails, 3 lines: the rulebook of Dummy (invented)")
    assert not [note for note in shown.notes if note.startswith("Plies joined")]
    assert all(row[1] for row in shown.rows if row[0] in ("bend", "slide", "droop"))
    [doubtful] = [note for note in page.compute({**values, "plies": 1}).notes if note.startswith("Doubtful")]
    assert "it rolls over unless it is held sideways" in doubtful


def test_the_seat_keeps_its_push_where_no_rule_is_and_the_beam_above_its_share():
    page = SeatPage(rulebook=DUMMY)
    values = start_values(
        page, above="none", span=6 * ft, seat=3 * inch, dead=0.0, live=400 * plf, roof_live=0.0, snow=0.0
    )
    found, shown = page.result(tuple(values.items())), page.compute(values)
    beam = found.beam.member
    line = 1.25 * beam.weight_per_length + 1.5 * 400 * plf  # 6 ft clear and half of each seat
    assert found.push.axial == pytest.approx(line * 6.25 * ft / 2, rel=1e-9)
    bend = line * (6.25 * ft) ** 2 / 8 / (RESISTANCE * 2.0 * beam.material.bending * beam.section_modulus)
    assert found.beam.checks[0].share == pytest.approx(bend, rel=1e-9)
    rows = {row[0]: row for row in shown.rows}
    assert rows["seat"][1] == rows["push on the seat"][1] and rows["seat"][3] == "not judged"
    assert shown.scene.title.endswith("not judged: the seat") and "jack studs for the beam's face" not in rows


def test_what_is_asked_meanwhile_is_the_same_under_any_rulebook():
    page, ours, dice = MeanwhilePage(rulebook=DUMMY), MeanwhilePage(), random.Random(12)
    for values in (start_values(page), *(_drawn(page, dice) for _ in range(25))):
        shown, same = page.compute(values, start_values(page)), ours.compute(values, start_values(page))
        told = [row for row in shown.rows if not row[2].startswith("Not judged: ")]
        assert set(told) <= set(same.rows) and len(shown.rows) - len(told) == (values["below"] == "slab")


def test_a_slab_without_a_rule_is_told_and_the_demand_on_it_stays():
    page = MeanwhilePage(rulebook=DUMMY)
    shown = page.compute(start_values(page, below="slab"))
    *_, (_, force, _), (slab, pressure, told) = shown.rows
    # 50 psf x 12 ft x 6 / 10 on 4 ft
    assert force == "1,440 lb" and slab.startswith("under a 4 in slab") and pressure == ""
    assert told.startswith("Not judged: ") and "no rule for the slab pressure here" in told


def test_shared_plies_keep_what_is_asked_and_say_once_that_no_rule_judges_it():
    page, dice = UnlikePliesPage(rulebook=DUMMY), random.Random("shared plies")
    for values in (start_values(page), *(_drawn(page, dice) for _ in range(40))):
        shown = page.compute(values, start_values(page))
        texts = (
            shown.scene.title,
            shown.scene.alt,
            *shown.notes,
            *shown.gates,
            *(cell for row in shown.rows for cell in row),
        )
        assert not [text for text in texts if OF_ANOTHER_BOOK.search(text)]
        assert (
            len(
                [
                    note
                    for note in shown.notes
                    if note.startswith("Not judged: ") and "no rule for a shared beam here" in note
                ]
            )
            == 1
        )
        assert not [row for row in shown.rows if "%" in row[3]]
    # by hand: two 2x10 of E 1.6 million psi beside 1 3/4 in of 2.0 million; 1.5 of the load under its strength combination
    shown = page.compute(start_values(page, span=10 * ft, load=400 * plf))
    rows = {row[0]: row for row in shown.rows}
    whole = (1.6e6 * 3.0 + 2.0e6 * 1.75) * psi * inch * (9.25 * inch) ** 3 / 12
    old = 1.5 * 1.6e6 * psi * 9.25 * inch / 2 * 400 * plf * (10 * ft) ** 2 / 8 / whole
    assert rows["bending, old plies"][1] == f"{old / psi:,.0f} psi" and rows["bending, old plies"][3] == "not judged"
    assert "takes 42 %" in shown.scene.title and 2.0 * 1.75 / (2.0 * 1.75 + 1.6 * 3.0) == pytest.approx(0.42, abs=0.005)
    assert shown.scene.title.endswith("not judged: bending, sag, fasteners between the pieces")
    flitch = {
        row[0]: row
        for row in page.compute(start_values(page, arrangement="flitch", load=400 * plf, new_depth=9.25 * inch)).rows
    }
    share = 29e6 * 0.5 / (29e6 * 0.5 + 1.6e6 * 3.0)
    told = flitch["load into the plate along the beam"]
    assert told[1] == f"{1.5 * 400 * share:.0f} plf" and told[3] == "not judged"


def test_an_old_joist_s_demands_stay_without_a_rule_and_another_rule_is_used_where_there_is_one():
    page = OldWoodPage(rulebook=DUMMY)
    values = start_values(page, cut="notch bottom", place=0.0, size=1.5 * inch, length=6 * inch)
    shown = page.compute(values)
    rows = {row[0]: row for row in shown.rows}
    # 10 and 30 psf every 16 in on 13 ft, factors 1.25 and 1.5: 76.67 plf, 1,620 lb-ft, 498 lb; 2 in by 7 1/2 in
    line = (1.25 * 10 + 1.5 * 30) * 16 / 12
    assert rows["bending"][1:4] == (f"{line * 13**2 / 8 * 12 / (2 * 7.5**2 / 6):,.0f} psi", "", "not judged")
    assert rows["bending"][4] == "1.25 x dead + 1.5 x live" and shown.scene.title.endswith(
        "not judged: the joist, the cut"
    )
    assert (
        rows["shear at the ends"][1] == f"{1.5 * line * 6.5 / 15:.0f} psi"
        and rows["push on the notched end"][1] == f"{line * 6.5:.0f} lb"
    )
    for kind in ("measured joist", "cut", "compared woods", "cut limits", "measured conditions"):
        assert len([note for note in shown.notes if note.startswith("Not judged: ") and f" {kind} here" in note]) == 1

    class Knows(type(DUMMY)):
        """The invented rulebook with an invented rule: every wood of the files takes half of its listed value."""

        def compared_woods(self, member, demands):
            woods, strong = (find_material("Hem-Fir", "No.2"), find_material("Hem-Fir", "No.1")), demands[0]
            half = numpy.array([wood.bending / 2 for wood in woods])
            name = "at the cut" if isinstance(member, CutMember) else "bend"
            asked = Question(
                name,
                name,
                strong.bending_stress,
                half,
                "stress",
                acting(strong.combination),
                "strength",
                "invented",
                "common practice",
            )
            return Compared(woods, ("transcribed", "transcribed"), (asked,), "No.2")

    page = OldWoodPage(rulebook=Knows())
    rows = {row[0]: row for row in page.compute(values).rows}
    values = [find_material("Hem-Fir", grade).bending / psi / 2 for grade in ("No.1", "No.2")]
    shares = [100 * line * 13**2 / 8 * 12 / 18.75 / value for value in values]
    assert (
        rows["bend"][3] == f"{shares[0]:.0f} % to {shares[1]:.0f} %"
        and rows["bend"][4] == "1.25 x dead + 1.5 x live; invented"
    )


def test_a_beam_that_runs_on_keeps_its_demands_under_a_rulebook_without_a_rule_for_it():
    page = PastPostPage(rulebook=DUMMY)
    values = start_values(page, above="none", post_dead=0.0, post_live=0.0, overhang=2 * ft)
    found, shown = (
        page.result(tuple((name, value) for name, value in values.items() if name != "drawn")),
        page.compute(values),
    )
    rows = {row[0]: row for row in shown.rows}
    # by hand: 60 plf and its own weight on 14 ft, 1.25 times, 240 plf 1.5 times, turned about A, 12 ft from B
    dead, live = 60 * plf + found.member.weight_per_length, 240 * plf
    push = (1.25 * dead + 1.5 * live) * (14 * ft) ** 2 / 2 / (12 * ft)
    assert found.pushes[1][0].value == pytest.approx(push, rel=1e-9)
    assert rows["push of B, most"][1] == show(push, "force") and rows["bending, shear and sag"][2] == "not judged"
    sentence = "no rule for a beam or joist that runs on here; what is asked of it stays"
    assert len([note for note in shown.notes if note.startswith("Not judged: ") and sentence in note]) == 1
    assert shown.scene.title.endswith("not judged: bending, shear and sag") and not shown.gates
