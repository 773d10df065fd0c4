"""Headroom gained against demand: two curves over the height of a tie, and where the code stops counting."""

from dataclasses import dataclass

from structlib.ground.refusals import BadInput, check_choice, check_number
from structlib.pictures.drawings import parts
from structlib.pictures.labels import Label, text_width
from structlib.pictures.scene import Curve, Line, Scene, hatch
from structlib.pictures.style import NOTE_SIZE


@dataclass(frozen=True)
class HeadroomCurve:
    """One demand over the height of the tie."""

    name: str
    role: str
    times: tuple
    at_limit: str


@dataclass(frozen=True)
class HeadroomView:
    """All that the picture of headroom against demand shows; texts are ready to print."""

    title: str
    heights: tuple
    curves: tuple
    limit: float
    ticks: tuple
    most: float = 4.0
    note: str = ""


# left, right, top and bottom of the plot; baselines of the two names; lines of caption
_PLOTS = {
    "page": ((80, 690, 150, 540), (96, 124), 3),
    "wide": ((70, 690, 124, 306), (84, 108), 1),
    "tall": ((90, 680, 230, 900), (160, 196), 5),
}


def draw_headroom(view, frame="page"):
    """Draw what a raised tie and its rafters are asked for, over the headroom gained.

    Examples
    --------
    >>> pull = HeadroomCurve("pull in the tie", "force", (1.0, 2.0), "1.5 times")
    >>> bend = HeadroomCurve("bending", "moved", (1.0, 3.0), "2.2 times")
    >>> draw_headroom(HeadroomView("Higher costs more", (0.0, 0.5), (pull, bend), 1/3, ((0.5,
    ...     "3 ft"),))).height
    720.0
    """
    check_choice("frame", frame, parts.FRAMES)
    _check(view)
    (width, height), (box, names, captions) = parts.FRAMES[frame], _PLOTS[frame]
    left, right, top, bottom = box
    last = view.heights[-1]

    def x(share):
        return left + (right - left) * share / last

    def y(times):
        return bottom - (bottom - top) * times / view.most

    edge = x(view.limit)
    # the short names stand above and left of their curves, where a rising curve leaves room
    spot = min(view.heights, key=lambda share: abs(share - 0.8 * last))
    beside = view.heights.index(spot)
    items = [*hatch((edge, top, right, bottom)), Line(((edge, top), (edge, bottom)), "limit")]
    for times in range(int(view.most) + 1):
        items += [
            Line(((left, y(times)), (right, y(times))), "axis" if times == 0 else "guide"),
            Label(f"{times}×", left - 8, y(times) + 6, "quiet", NOTE_SIZE, "end"),
        ]
    for share, text in view.ticks:
        items += [
            Line(((x(share), bottom), (x(share), bottom + 7)), "axis"),
            Label(text, x(share), bottom + 27, "ink", NOTE_SIZE, "middle"),
        ]
    for curve, baseline in zip(view.curves, names):
        kept = [(x(h), y(t)) for h, t in zip(view.heights, curve.times) if t <= view.most]
        style = {"force": "force_band", "moved": "moved"}[curve.role]
        line = Curve(*zip(*kept), "moved") if style == "moved" else Line(tuple(kept), "force_big")
        at = min(range(len(view.heights)), key=lambda k: abs(view.heights[k] - view.limit))
        text = f"{curve.name}: {curve.at_limit} at a third"
        if text_width(text, NOTE_SIZE, bold=True) > width - 80:
            raise BadInput(f"the text {text!r} is too long; shorten the name of the curve")
        items += [
            line,
            parts.dot(edge, y(curve.times[at]), "ink_dot", 7),
            Line(((20, baseline - 6), (52, baseline - 6)), "force_big" if curve.role == "force" else "moved"),
            Label(text, 60, baseline, curve.role, NOTE_SIZE, bold=True),
            Label(
                curve.name.split()[0],
                x(spot) - 8,
                y(curve.times[beside]) - 10,
                curve.role,
                NOTE_SIZE,
                "end",
                plate="plate",
            ),
        ]
    items.append(Label("engineered", right - 8, bottom - 12, "ink", NOTE_SIZE, "end", bold=True, plate="plate"))
    items.append(
        Label(
            "headroom gained: height of the tie above the eaves",
            (left + right) / 2,
            bottom + 51,
            "quiet",
            NOTE_SIZE,
            "middle",
        )
    )
    shown = [view.note]
    scene = (
        parts.still_group("paper", [parts.paper(width, height)]),
        *items,
        *parts.caption_labels(shown if frame != "wide" else [""], frame, captions),
        *parts.title_labels(view.title, frame),
    )
    alt = f"{view.title}. Two curves over the height of a tie: " + "; ".join(
        f"{c.name}, from {c.times[0]:.2g} times at the eaves to {c.at_limit} at a third and "
        f"{c.times[-1]:.2g} times at "
        f"{100 * last:.0f} % of the height"
        for c in view.curves
    )
    return Scene(width, height, scene, view.title, view.note, f"{alt}. Above a third: engineered. {view.note}")


def _check(view):
    check_number("heights of the tie", view.heights, low=0, high=0.95)
    check_number("limit", view.limit, low=0, high=view.heights[-1])
    check_number("greatest multiple", view.most, low=1, high=20)
    for curve in view.curves:
        parts.check_pairs(curve.name, view.heights, curve.times)
        check_choice("role of a curve", curve.role, ("force", "moved"))
