"""Rows, notes, title and texts of the page of the roof."""

from math import isclose

from structlib.ground.showing import show
from structlib.ground.units import ft
from structlib.mechanics import frames
from structlib.pages.kit import verdict
from structlib.pages.kit.verdict import CAUTION
from structlib.pictures.drawings.roof import RoofStat
from structlib.rules.check import BeamMember
from structlib.rules.members import RafterMember, RidgeBoardMember, TieMember

RAFTERS, RIDGE = "rafters", "ridge"
#: Ends the name of every check of snow on one slope alone.
MARK = ", one side"
#: How a row calls a member for which a rulebook has no rule.
KINDS = {RafterMember: "rafters", TieMember: "tie", RidgeBoardMember: "ridge board", BeamMember: "ridge beam"}
NOTHING_HOLDS = (
    "Nothing holds these rafters, so they can slide apart: a hinged pair without a tie is a mechanism. "
    "Only its push is shown."
)
# a load that the page shows, rounded to three digits, may be typed back
_ROUNDING = 0.005
_LETTERS = {"D": "dead", "Lr": "roof live", "L": "live", "S": "snow"}


def questions(result, system):
    """Return the question that stands instead of every share where the roof snow is too small for the ground snow."""
    asked, snow = result.asked_snow, result.values["snow"]
    if asked is None or snow >= asked.load * (1 - _ROUNDING):
        return ()
    told = lambda load: show(load, "area load", system)  # noqa: E731
    return (
        f"Which snow is right? {told(snow)} on the roof is less than the {told(asked.load)} that "
        f"{asked.standard} makes of {told(result.values['ground'])} on the ground. No share is shown until the two "
        "agree: ask the building department for both. Where no snow is asked for, type 0 for both. A slippery roof "
        "may keep less; that is for an engineer.",
    )


# ---- rows ---------------------------------------------------------------------------------------------


def rows(result, system, withdrawn=()):
    """Return what is asked and what can be given, as rows of text."""
    found = [*_demand_rows(result, system), *_one_side_rows(result, system)]
    found += [_check_row(check, result, system, withdrawn) for check in result.all_checks]
    found += [
        (name, "", "", "" if withdrawn else "no answer", "the rule does not cover it; see the notes")
        for name, _ in result.left_out
    ]
    found += [
        (name, _asked_of(one, system), "", "" if withdrawn else "not judged", one.refused)
        for name, one in result.not_judged
    ]
    return tuple(found + _more_rows(result, system, withdrawn))


def _demand_rows(result, system):
    case, most = result.even, result.even.most.name
    say = lambda value, dimension: show(value, dimension, system)  # noqa: E731
    asked = lambda what, value, rule: (what, value, "", "", rule)  # noqa: E731
    yield asked("load on plan", say(case.load, "area load"), most)
    if result.asked_snow is not None:
        yield asked("roof snow, at least", say(result.asked_snow.load, "area load"), result.asked_snow.told)
    if result.holds == "ridge beam":
        per_foot = frames.ridge_post_load(ridge_load=case.ridge_line, spans=1 * ft)
        yield asked("push at each eave", say(0.0, "force"), "the ridge beam carries, so nothing pushes")
        yield asked(
            "load along the ridge", say(case.ridge_line, "line load"), f"{most}; w L / 2, its own weight left out"
        )
        yield asked("an end post, per foot of ridge span", say(per_foot, "force"), "half of the span")
    else:
        raised = result.holds == "raised tie"
        word = "push at the eave, were the tie there" if raised else "push at each eave, a pair"
        yield asked(word, say(case.thrust, "force"), f"{most}; w L² / (8 h)")
        yield asked("the same, by length of wall", say(case.thrust / result.values["spacing"], "line load"), most)
    if result.holds in ("tie", "raised tie"):
        yield asked("pull in the tie", say(case.pull, "force"), f"{most}; the push / (1 - a)")
    if case.rafters is not None:
        yield asked("greatest bending in a rafter", say(case.moment[0], "moment"), f"{most}; {_where(result)}")
        yield asked("eaves part by", say(case.moves.spread, "small length"), _spread_from(result))


def _where(result):
    if result.holds != "raised tie":
        return "in its middle; w (L/2)² / 8"
    return "at the tie" if isclose(result.even.moment[1], result.height, rel_tol=1e-9) else "between tie and ridge"


def _spread_from(result):
    if result.holds == "tie":
        return "the tie stretches"
    if result.holds == "raised tie":
        return "the rafters bend below the tie"
    return "the ridge beam sags" if result.even.ridge else "the rafters shorten; the ridge kept in place"


def _one_side_rows(result, system):
    """What snow on one side asks, or why the rule gives none."""
    side, blown = result.side, result.blown
    if side is None:
        return [("snow on one side", "not asked", "", "", result.no_side)] if result.no_side else []
    say, name = lambda value, dimension: show(value, dimension, system), side.most.name  # noqa: E731
    both = f"{say(side.load, 'area load')} and {say(side.far_load, 'area load')}"
    rule = f"{name}; {blown.clause.split(' (')[0]}, {blown.verified}; the whole {blown.basis}"
    # short names: the first column of the table does not wrap
    found = [("snow on one side, and the other", both, "", "", rule)]
    ask = lambda what, value, how: found.append((f"one side: {what}", value, "", "", how))  # noqa: E731
    if result.holds == "ridge beam":
        ask("load along the ridge", say(side.ridge_line, "line load"), "a quarter of L times both, added")
    else:
        tied = result.holds != "nothing"
        push = side.pull if tied else side.thrust
        ask("pull in the tie" if tied else "push at each eave", say(push, "force"), "as under the mean of both sides")
        ask("upright force at the ridge", say(side.ridge_shear, "force"), "L (w - w') / 8, a pair")
    if side.rafters is not None:
        ask("bending, loaded rafter", say(side.moment[0], "moment"), f"{name}; of the pair as a frame")
        ask("eaves part by", say(side.moves.spread, "small length"), _spread_from(result))
    return found


def _check_row(check, result, system, withdrawn):
    told = verdict.share_text(check, result.all_checks)
    if result.left_out or result.not_judged:
        told = told.removesuffix(" governs")  # what has no answer might
    return (
        check.name,
        # a sum of shares is a verdict, also where it stands under "asked"
        "" if withdrawn and check.dimension == "ratio" else show(check.asked, check.dimension, system),
        "" if withdrawn else show(check.given, check.dimension, system),
        "" if withdrawn else told,
        f"{check.combination}; {check.clause.split(' (')[0]}".removeprefix("; "),
    )


def _asked_of(answer, system):
    """The greatest demand on a member for which there is no rule."""
    if isinstance(answer.member, RafterMember):
        return show(max(one.moment for one in answer.demands), "moment", system)
    if isinstance(answer.member, TieMember):
        return show(max(one.force for one in answer.demands), "force", system)
    return ""


def _more_rows(result, system, withdrawn):
    """Nails of the joint and the code's factors, where there is a tie; posts, where there is a beam."""
    if result.even.ridge is not None:
        push = max(demand.solution.reactions[0].force for case in result.cases for demand in case.ridge.demands)
        return [
            ("load on an end post", show(push, "force", system), "", "", "own weight of the beam in it"),
            ("load on a middle post, two such spans", show(2 * push, "force", system), "", "",
             "simple spans; a beam in one piece gives it more"),
        ]  # fmt: skip
    found, nails = [], result.nails
    if nails is not None and not withdrawn:
        count = "no count" if nails.nails is None else str(nails.nails)
        found.append((f"{nails.fastener} nails, each joint of the tie", count, "", "", nails.told))
    if not withdrawn:
        found += [
            (f"code: {one.symbol}, times", f"{one.value:g}", "", "", f"{one.clause}; {one.verified}")
            for one in result.raised
        ]
    return found


# ---- notes --------------------------------------------------------------------------------------------


def notes(result, system):
    """Return what must be said below the numbers."""
    found = [*_notes_of_sliders(result, system), *_notes_of_tie(result)]
    found += [f"No answer to {name}: {refused}." for name, refused in result.left_out]
    found += [
        f"Not judged: {one}." for one in dict.fromkeys((*(one.refused for _, one in result.not_judged), *result.silent))
    ]
    if result.holds in ("tie", "raised tie"):
        found.append(
            "The tie is a 2x6 of Douglas Fir-Larch No.2, checked for its pull alone. A ceiling on it bends it "
            "too, and a lap in it passes the whole pull on. Slip of its joints is left out of the spread."
        )
    rule = result.blown_rule
    if result.side is not None:
        found.append(
            f"Snow on one side is judged apart ({result.blown.clause.split(' (')[0]}, {result.blown.verified}): the whole ground snow on "
            "one slope, none on the other, for rafters in one piece from eave to ridge. A pair with a raised "
            f"tie is taken as such, which is our choice. {rule.ground} Roof snow and ground snow are boxes of their own: "
            "work the first out from the second, as below."
        )
    elif rule is not None and result.values["snow"] and result.values["rise"] <= rule.greatest_rise:
        found.append(
            f"Ground snow is 0, so these shares take the snow as even on both slopes. {rule.asks} That bends one "
            "rafter more."
        )
    found.append(
        "Weight and snow only: wind, which lifts, is not here. "
        "Overhangs, which take a little of the push away, are left out."
    )
    return (*found, CAUTION)


def _notes_of_sliders(result, system):
    beam = result.holds == "ridge beam"
    if result.values["sets"] == RIDGE:
        yield (
            "The sliders set the ridge beam; span is from post to post. The rafters drawn are 2x8 fir."
            if beam
            else "There is no ridge beam here, so the sliders set a ridge board; choose a ridge beam under Held by."
        )
        return
    waits = (
        "slider House width waits"
        if result.holds == "raised tie"
        else "sliders House width and Height of raised tie wait"
    )
    yield f"The sliders set the rafters: the house is twice their span wide, {width(result, system)}. The {waits}."
    if beam:
        yield "The ridge beam is drawn, not sized: let the sliders set the ridge beam."


def _notes_of_tie(result):
    height = result.height
    if height and height < frames.TIE_GOVERNS_FROM:
        more = frames.raised_tie_greatest_factor(height_fraction=height)
        at_tie = frames.raised_tie_bending_factor(height_fraction=height)
        yield (
            f"Bending at the tie is {at_tie:.2f} times that of a tie at the eaves; between tie and ridge it is "
            f"{more:.2f} times.{' The code' + chr(39) + 's factor goes by the first.' if result.raised or result.gates else ''}"
        )


# ---- the picture's texts ------------------------------------------------------------------------------


def width(result, system):
    """Write the distance between the walls."""
    return show(2 * result.half, "length", system)


def mark(check):
    """Write the check that governs where it stands in the picture."""
    word = check.kind if check.kind in ("bending", "shear", "sag") else check.name
    return f"{word} {show(check.share, 'ratio')}"


def load_text(case, system, one_side):
    """Write the load on plan of the case that is drawn."""
    load = show(case.load, "area load", system)
    if one_side:
        return f"left {show(case.far_load, 'area load', system)} (dead), right {load}"
    # letters as words, for a picture that must stand alone
    name = " ".join(_LETTERS.get(part, part) for part in case.most.name.split(" "))
    return f"{name}: {load} on plan"


def stats(result, system):
    """Write the numbers below the picture, under even snow."""
    case, holds = result.even, result.holds
    stat = lambda word, value, dimension, role: RoofStat(word, show(value, dimension, system), role)  # noqa: E731
    if holds == "nothing":
        return (
            stat("push at each eave", case.thrust, "force", "force"),
            RoofStat("held by", "nothing", "governs"),
            RoofStat("eaves part by", "no limit", "moved"),
        )
    bent = (
        stat("most bending, a rafter", case.moment[0], "moment", "moment"),
        stat("eaves part by", case.moves.spread, "small length", "moved"),
    )
    if holds == "ridge beam":
        return (
            stat("push at each eave", 0.0, "force", "force"),
            stat("load along the ridge", case.ridge_line, "line load", "force"),
            *bent,
        )
    at_eave = "push at each eave" if holds == "tie" else "push if tied at eaves"
    return (stat(at_eave, case.thrust, "force", "force"), stat("pull in the tie", case.pull, "force", "force"), *bent)


def one_side_stats(result, system):
    """Write each number below the picture in the case that asks most of it, with the case in its word."""

    def most(word, ask, dimension, role):
        even, one = ask(result.even), ask(result.side)
        case = "one side" if one > even else "even load"
        return RoofStat(f"{word}, {case}", show(max(even, one), dimension, system), role)

    bent = (
        most("bending", lambda case: case.moment[0], "moment", "moment"),
        most("eaves part", lambda case: case.moves.spread, "small length", "moved"),
    )
    if result.holds == "ridge beam":
        return (
            RoofStat("push at each eave", show(0.0, "force", system), "force"),
            most("ridge load", lambda case: case.ridge_line, "line load", "force"),
            *bent,
        )
    at_eave = "push" if result.holds == "tie" else "push if tied"
    return (
        most(at_eave, lambda case: case.thrust, "force", "force"),
        most("tie pull", lambda case: case.pull, "force", "force"),
        *bent,
    )


def note(result, system):
    """Write the sentence below the picture."""
    values, chosen = result.values, result.chosen
    every = show(values["spacing"], "section length", system)
    slope = f"rise {values['rise']:.0f} in 12"
    if values["sets"] == RAFTERS:
        return f"Rafters {chosen.name} every {every}, {slope}."
    thing = "Ridge beam" if result.holds == "ridge beam" else "Ridge board"
    span = f" over {show(values['span'], 'length', system)}" if result.holds == "ridge beam" else ""
    return f"{thing} {chosen.name}{span}; rafters 2x8 every {every}, {slope}."


# ---- the title ----------------------------------------------------------------------------------------


def title(result, system):
    """Word the title of the page."""
    stop, asked = verdict.STOP, questions(result, system)
    if asked and not result.gates:
        roof, ground = (show(result.values[key], "area load", system) for key in ("snow", "ground"))
        stop = f"Which snow is right: {roof} on the roof, or {ground} on the ground?"
    unjudged = tuple(name for name, _ in (*result.left_out, *result.not_judged))
    words = lambda first: _message(result, first, system)  # noqa: E731
    return verdict.headline(result.all_checks, result.gates or asked, words, unjudged=unjudged, stop=stop)


def _message(result, first, system):
    if result.left_out:
        return "A rule does not cover these rafters"
    if first is None and not (result.not_judged and result.even.load > 0):
        return "Nothing weighs on this roof, so nothing pushes"
    if first is None:
        return _pushes(result, system)
    used = verdict.used(first.share)
    if first in result.side_checks:
        return _one_side_title(result, first, used, system)
    if first.kind == "tie":
        return f"The tie is pulled with {show(result.even.pull, 'force', system)}: {used}"
    if result.even.ridge is not None:
        return f"{used}: {first.name.split(',')[0]} governs the ridge beam"
    if result.values["sets"] == RIDGE:
        return f"The ridge board's depth governs: {used}"
    return f"{_pushes(result, system)}{'.' if result.holds == 'ridge beam' else ';'} {_rafters(result)} {used}"


def _rafters(result):
    return "Rafters" if result.holds == "ridge beam" else "rafters"


def _pushes(result, system):
    """What the roof does, whatever a rule says of it."""
    if result.holds == "ridge beam":
        return "No push: the ridge carries"
    if result.holds == "raised tie":
        return f"The raised tie pulls {show(result.even.pull, 'force', system)}"
    return f"Each eave is pushed by {show(result.even.thrust, 'force', system)}"


def _one_side_title(result, first, used, system):
    if first.kind == "tie":
        return f"Snow on one side pulls the tie with {show(result.side.pull, 'force', system)}: {used}"
    if result.side.ridge is not None:
        return f"Snow on one side: {first.name.split(',')[0]} governs the ridge beam, {used}"
    what = {"sag": "makes its rafter sag most", "shear": "asks its rafter for most shear"}
    return f"Snow on one side {what.get(first.kind, 'bends its rafter most')}: {used}"
