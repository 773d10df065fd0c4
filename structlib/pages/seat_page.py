"""What does it sit on? One end of a beam: which face is crushed first, and how long its seat must be."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.loads import LOAD_TYPES
from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.units import ft, inch, lb, plf
from structlib.house.beam import BeamChoice, BeamJob, TypedLoad, check_beam
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.mechanics.beams import LineLoad
from structlib.pages import verdict
from structlib.pages.beam_page import CAUTION, SEAT_NOT_KNOWN, beam_evidence
from structlib.pages.comes_down import comes_down, comes_down_pick, titled, without_load
from structlib.pages.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.door import hold
from structlib.pages.woods import UNKNOWN, WOODS, pieces
from structlib.pictures.drawings.seat import STUD, Face, PreviousSeat, SeatView, draw_seat
from structlib.rules.check import Seat
from structlib.rules.us import bearing, seats
from structlib.rules.choice import RULEBOOK

_WOODS = ("hem-fir", "spf", "fir", "southern pine", "lvl 2.0")
_PLATES = {
    "spf": ("Spruce-Pine-Fir", "No.1/No.2"),
    "hem-fir": ("Hem-Fir", "No.2"),
    "fir": ("Douglas Fir-Larch", "No.2"),
    "southern pine": ("Southern Pine", "No.2"),
}
_BELOW = (
    ("plate of Spruce-Pine-Fir", "spf"),
    ("plate of Hem-Fir", "hem-fir"),
    ("plate of Douglas Fir-Larch", "fir"),
    ("plate of Southern Pine", "southern pine"),
    ("plate, its wood not known", "plate"),
    ("end grain of jack studs", "post"),
    ("masonry", "masonry"),
    ("not looked yet", UNKNOWN),
)
_LOADS = {kind: kind.replace(" ", "_") for kind in LOAD_TYPES}  # names of the controls
# a push from which on the arrow grows no longer
_FULL_ARROW = 12000 * lb


class SeatPage(Page):
    """The bench of the seat: one end of a beam, close up, and the two faces that press on each other.

    Parameters
    ----------
    system : str
        Units of the reader: 'us' or 'metric' [-].
    rulebook : structlib.rules.check.Rulebook
        The rules to judge by [-].
    """

    def __init__(self, system="us", rulebook=RULEBOOK):
        self.system, self.rulebook = system, rulebook
        self.house = demo_house()
        path = follow(self.house)
        self.total = path.line_on(path.opening().name, path.opening().middle)
        self.numbers = lru_cache(maxsize=64)(self._numbers)

    def controls(self, values):
        depths = tuple(depth for depth, *_ in pieces(values.get("wood", "fir")))
        woods = tuple((one.label, one.key) for one in WOODS if one.key in _WOODS)
        load = dict(dimension="line load", low=0.0, high=3000 * plf)
        return (
            Slide("span", "Span, clear", "length", 3 * ft, 20 * ft, 3 * inch, 10 * ft),
            Steps("depth", "Depth", "section length", depths, max(d for d in depths if d <= 9.5 * inch)),
            Slide("plies", "Plies", "count", 1, 5, 1, 3),
            comes_down_pick(),
            Pick("wood", "Wood", woods, "fir"),
            Box("dead", "Dead load", default=self.total["dead"], **load),
            Box("live", "Live load", default=self.total["live"], **load),
            Box("roof_live", "Roof live load", default=self.total["roof live"], **load),
            Box("snow", "Snow load", default=self.total["snow"], **load),
            Slide("seat", "Seat length", "section length", 0.5 * inch, 12 * inch, 0.25 * inch, 3 * inch),
            Pick("below", "Sits on", _BELOW, "spf"),
        )

    def _numbers(self, items):
        """One checked beam, and what its left seat is asked, from the values as a tuple of pairs."""
        values = dict(items)
        span, below, length = values["span"] + values["seat"], values["below"], values["seat"]
        if below in _PLATES:
            # values across the grain are alike for every size; some woods are listed by size all the same
            plate = find_material(*_PLATES[below], "2x6")
            seat = Seat(length, "plate", plate.bearing, f"plate of {plate.species}", plate.verified)
        else:
            seat = Seat(length, "plate" if below == UNKNOWN else below)
        depth, ply_width, name, wood = min(
            pieces(values["wood"]), key=lambda piece: abs(piece[0] - values["depth"])
        )
        plies = int(values["plies"])
        loads = tuple(
            TypedLoad(kind, LineLoad(0.0, span, values[name]))
            for kind, name in _LOADS.items()
            if values[name]
        )
        result = check_beam(
            BeamJob(values["span"], seat, seat, loads, stops=_stops(values)),
            BeamChoice(wood, ply_width, depth, plies, f"{plies}-{name}"),
            self.rulebook,
        )
        on_beam = result.check("bearing, left seat, beam")
        plate = bearing.plate_below(seat)
        on_plate = None if plate is None else result.check(f"bearing, left seat, {plate[1]}")
        demand = max(result.demands, key=lambda one: one.solution.reactions[0].force)
        reaction = demand.solution.reactions[0].force
        width = result.member.width
        needed = [
            bearing.bearing_length_needed(reaction=reaction, width=width, bearing_value=check.given)
            for check in (on_beam, on_plate)
            if check is not None
        ]
        return {
            "result": result,
            "reaction": reaction,
            "combination": demand.combination.name,
            "width": width,
            "seat": length,
            "kind": seat.below,
            "beam": on_beam,
            "plate": on_plate,
            "least": result.check("seat length, left"),
            "whole": replace(result.governs, name=f"the whole beam, {result.governs.name}", decides=False),
            "needed": tuple(needed),
            "jacks": seats.jack_studs(reaction=reaction, width=width, bearing_value=on_beam.given),
        }

    def compute(self, values, before=None, frame="page"):
        now = self.numbers(tuple(values.items()))
        ghost = self.numbers(tuple(before.items())) if before else None
        gates = now["result"].gates
        withdrawn = gates or without_load(values, _LOADS.values())
        return Shown(
            self.scene(values, now, ghost, withdrawn, frame),
            ("what", "asked", "can give", "share", "loads and rule"),
            self.rows(now, withdrawn),
            self.notes(now),
            gates,
            known=beam_evidence(now["result"], checks_of(now)),
        )

    def rows(self, now, gates=()):
        """Return what the seat is asked and what it can give, as rows of text.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].
        gates : tuple of str
            Gates that withdraw the verdicts; what is asked stays [-].

        Returns
        -------
        tuple of tuple of str
            What, asked, can give, share, loads and rule [-].
        """
        system, checks = self.system, checks_of(now)
        member = now["result"].member

        def judged(name, check):
            if check is None:
                return []
            told = verdict.share_text(check, checks)
            return [
                (
                    name,
                    show(check.asked, check.dimension, system),
                    "" if gates else show(check.given, check.dimension, system),
                    "" if gates else told,
                    f"{check.combination}; {check.clause.split(' (')[0]}",
                )
            ]

        own = show(member.weight_per_length, "line load", system)
        faces = ("the beam's face", "the plate below")
        jacks = now["jacks"]
        return (
            (
                "push on the seat",
                show(now["reaction"], "force", system),
                "",
                "",
                f"{now['combination']}; own weight of {own} in it",
            ),
            *judged("crushing the beam", now["beam"]),
            *judged("crushing the plate", now["plate"]),
            *(
                (f"seat length for {face}", show(length, "small length", system), "", "", "R / (b F)")
                for face, length in zip(faces, now["needed"])
            ),
            (
                "bearing area factor",
                f"{_area_factor(now):.2f}",
                "",
                "",
                "1 at a beam's end: no wood beyond it to help; NDS 2018 3.10.4",
            ),
            *judged("least seat of the code here", now["least"]),
            *judged(now["whole"].name, now["whole"]),
            *(
                ()
                if gates
                else (
                    (
                        "jack studs for the beam's face",
                        str(jacks.count),
                        "",
                        "",
                        f"seat of {show(jacks.seat_given, 'section length', system)}; {jacks.clause}",
                    ),
                )
            ),
        )

    def notes(self, now):
        """Return what must be said below the numbers.

        Parameters
        ----------
        now : dict
            What `numbers` worked out [any].

        Returns
        -------
        tuple of str
            One sentence a note [-].
        """
        wood = now["result"].member.material
        notes = [
            "Only the seat is judged here. Of the whole beam the row for information shows the check that "
            "governs; all of them are in notebook 04.",
            f"Design values of {wood.name}: {wood.source}, {wood.verified}.",
        ]
        if now["plate"] is not None:
            notes.append(f"Value of the {now['plate'].where.split(', ')[-1]}: {now['plate'].verified}.")
        if now["kind"] == "post":
            notes.append(
                "End grain is far stronger than the beam's face, so the beam is crushed first. The studs "
                "below are columns, and a check of their own."
            )
        if wood.kind == "lvl":
            notes.append("LVL values here are generic; enter those of the maker's evaluation report.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, now, ghost, gates=(), frame="page"):
        """Draw the end of the beam on its seat, and its contact area from above.

        Parameters
        ----------
        values : dict
            Values of the controls [any].
        now : dict
            What `numbers` worked out [any].
        ghost : dict or None
            The same before the last change [any].
        gates : tuple of str
            Gates that withdraw the verdicts [-].
        frame : str
            Shape of the picture: 'page', 'wide' or 'tall' [-].

        Returns
        -------
        structlib.pictures.scene.Scene
            The picture [-].
        """
        system, member, first = self.system, now["result"].member, governs(now)

        def face(word, check):
            if gates:
                return Face(word, show(check.asked, "stress", system), 0.0, False)
            return Face(word, show(check.share, "ratio"), check.share, check is first or _alike(now))

        faces = [face("crushing the beam" if not gates else "beam pressed by", now["beam"])]
        if now["plate"] is not None:
            faces.append(face("crushing the plate", now["plate"]))
        longest = max(now["needed"])
        view = SeatView(
            title=titled(_title(now, gates, system), values, gates),
            seat=now["seat"],
            depth=member.depth,
            plies=member.plies,
            ply_width=member.ply_width,
            material_kind="lvl" if member.material.kind == "lvl" else "sawn",
            below=now["kind"],
            push=min(now["reaction"] / _FULL_ARROW, 1.0),
            push_text=show(now["reaction"], "force", system),
            seat_text=show(now["seat"], "section length", system),
            width_text=show(now["width"], "section length", system),
            area_text=show(now["seat"] * now["width"], "area", system),
            depth_text=show(member.depth, "section length", system),
            faces=tuple(faces),
            needed=longest,
            needed_text=show(longest, "small length", system),
            least=now["least"].asked,
            least_text=show(now["least"].asked, "section length", system),
            full_text=show(STUD, "section length", system),
            stopped=bool(gates),
            previous=None if ghost is None or ghost is now else _ghost(ghost),
        )
        return draw_seat(view, frame)


def _stops(values):
    return comes_down(values)[0] + ((SEAT_NOT_KNOWN,) if values["below"] == UNKNOWN else ())


def governs(now):
    """Return the check of the seat that uses the greatest share.

    Parameters
    ----------
    now : dict
        What `SeatPage.numbers` worked out [any].

    Returns
    -------
    structlib.rules.check.Check
        Crushing the beam, crushing the plate, or the code's least seat [-].
    """
    return verdict.worst(checks_of(now))


def checks_of(now):
    """Return every check of the page: those of the seat, and the one that governs the beam, for information.

    Parameters
    ----------
    now : dict
        What `SeatPage.numbers` worked out [any].

    Returns
    -------
    tuple of structlib.rules.check.Check
        The checks [-].
    """
    found = (now["plate"], now["beam"], now["least"], now["whole"])
    return tuple(check for check in found if check is not None)


def _area_factor(now):
    return float(bearing.bearing_area_factor(bearing_length=now["seat"], distance_to_end=0.0))


def _alike(now):
    plate, beam = now["plate"], now["beam"]
    return (
        plate is not None
        and governs(now) is not now["least"]
        and abs(plate.share - beam.share) < 1e-9 * beam.share
    )


def _ghost(now):
    member = now["result"].member
    return PreviousSeat(now["seat"], member.depth, now["width"])


def _title(now, gates, system):
    return verdict.headline(checks_of(now), gates, lambda first: _message(now, first, system))


def _message(now, first, system):
    used = verdict.used(first.share)
    if first is now["least"]:
        if first.share > 1 + 1e-9:
            least = show(first.asked, "section length", system)
            return f"Too short: the code asks for {least} of seat, whatever the load; {used}"
        return f"The code's least seat governs: {used}"
    word = "The beam" if first is now["beam"] else "The plate"
    if _alike(now):
        return f"Beam and plate are used alike: both {used}"
    if first.share > 1 + 1e-9:
        return f"{word} is asked {first.share:.2f} times what it gives"
    return f"{word} would be crushed first: {used}"


hold(globals())
