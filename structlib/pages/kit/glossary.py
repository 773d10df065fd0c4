"""The words of the workbook, each with one line of meaning and a small sketch."""

import html
from dataclasses import dataclass

from structlib.pictures import svg
from structlib.pictures.scene import Arrow, Line, Polygon, Scene, hatch, rectangle

WIDTH, HEIGHT = 150.0, 84.0


@dataclass(frozen=True)
class Word:
    """A word, its meaning in one line, and the shapes of its sketch."""

    name: str
    meaning: str
    shapes: tuple


def _beam(top=34.0, bottom=50.0, left=16.0, right=134.0):
    return rectangle(left, top, right, bottom, "wood")


def _post(x, top=50.0, width=10.0):
    return rectangle(x - width / 2, top, x + width / 2, 80.0, "wood_cut")


def _arrows(y0, y1, places):
    return tuple(Arrow((x, y0), (x, y1), "force") for x in places)


def _sagging(depth, left=20.0, right=130.0, y=52.0):
    points = tuple((left + (right - left) * i / 12, y + depth * 4 * (i / 12) * (1 - i / 12)) for i in range(13))
    return Line(points, "moved")


WORDS = (
    Word(
        "dead load",
        "the building itself; it stays",
        (
            rectangle(20, 46, 130, 54, "wood"),
            rectangle(20, 36, 130, 46, "wall"),
            *_arrows(10, 34, (40, 75, 110)),
        ),
    ),
    Word(
        "live load",
        "people and things; they come and go",
        (
            rectangle(20, 56, 130, 64, "wood"),
            Polygon(((66, 54), (66, 30), (84, 30), (84, 54)), "force_band"),
            Arrow((75, 8), (75, 28), "force"),
        ),
    ),
    Word(
        "snow load",
        "snow on the roof, kept apart from live load",
        (
            Polygon(((20, 66), (75, 30), (130, 66), (130, 56), (75, 18), (20, 56)), "force_band"),
            Line(((14, 70), (75, 30), (136, 70)), "ink"),
        ),
    ),
    Word(
        "bearing wall",
        "a wall that holds up more than itself",
        (
            rectangle(16, 26, 134, 36, "wood"),
            rectangle(68, 36, 82, 80, "wall"),
            *_arrows(6, 24, (30, 52, 75, 98, 120)),
        ),
    ),
    Word(
        "tributary width",
        "how wide a strip of floor lands on one wall or beam",
        (
            rectangle(16, 40, 72, 48, "wood"),
            rectangle(78, 40, 134, 48, "wood"),
            rectangle(44, 24, 106, 40, "tributary"),
            rectangle(70, 48, 80, 80, "wall"),
        ),
    ),
    Word(
        "span",
        "the distance a beam or joist reaches between its supports",
        (
            _beam(),
            _post(22),
            _post(128),
            Line(((22, 68), (128, 68)), "dimension"),
            Line(((22, 62), (22, 74)), "dimension"),
            Line(((128, 62), (128, 74)), "dimension"),
        ),
    ),
    Word(
        "depth and width",
        "how tall a beam stands, and how thick it is sideways",
        (
            rectangle(66, 10, 84, 70, "wood_cut"),
            Line(((96, 10), (96, 70)), "dimension"),
            Line(((66, 78), (84, 78)), "dimension"),
        ),
    ),
    Word(
        "ply",
        "one of several boards side by side that share the load",
        (
            rectangle(52, 12, 66, 72, "wood_cut"),
            rectangle(69, 12, 83, 72, "wood_cut"),
            rectangle(86, 12, 100, 72, "wood_cut"),
        ),
    ),
    Word(
        "dropped and flush",
        "below the joists, or among them with the joists on its sides",
        (
            rectangle(10, 20, 66, 30, "wood"),
            rectangle(30, 30, 46, 60, "wood_cut"),
            rectangle(84, 20, 104, 30, "wood"),
            rectangle(120, 20, 140, 30, "wood"),
            rectangle(104, 20, 120, 50, "wood_cut"),
        ),
    ),
    Word(
        "seat",
        "the length of beam that sits on its support",
        (
            rectangle(40, 24, 140, 46, "wood"),
            rectangle(40, 46, 70, 80, "wood_cut"),
            *hatch((40, 38, 70, 46), 6, "bearing"),
        ),
    ),
    Word(
        "jack stud",
        "a short stud under the end of a header; it carries",
        (
            rectangle(46, 16, 140, 38, "wood"),
            rectangle(30, 10, 46, 80, "wall"),
            rectangle(46, 38, 58, 80, "wood_cut"),
            rectangle(58, 38, 70, 80, "wood_cut"),
        ),
    ),
    Word(
        "end grain",
        "the cut end of the fibres; pressed there, wood is strongest",
        (
            rectangle(58, 34, 92, 80, "wood"),
            *hatch((58, 34, 92, 42), 6, "bearing"),
            *_arrows(8, 32, (75,)),
        ),
    ),
    Word(
        "reaction",
        "how hard a support pushes back",
        (
            _beam(),
            *_arrows(10, 32, (40, 75, 110)),
            Arrow((22, 80), (22, 54), "force_big", 12),
            Arrow((128, 80), (128, 54), "force_big", 12),
        ),
    ),
    Word(
        "shear",
        "one part of the beam wants to slide down past the next",
        (
            rectangle(16, 30, 73, 48, "wood"),
            rectangle(77, 38, 134, 56, "wood"),
            Arrow((60, 76), (60, 52), "force"),
            Arrow((92, 10), (92, 34), "force"),
        ),
    ),
    Word(
        "moment",
        "how hard the beam is being bent at one place",
        (
            Line(tuple((20 + 110 * i / 12, 40 + 22 * 4 * (i / 12) * (1 - i / 12)) for i in range(13)), "ghost"),
            Arrow((14, 62), (34, 30), "force"),
            Arrow((136, 62), (116, 30), "force"),
        ),
    ),
    Word(
        "sag (deflection)",
        "how far the low point hangs down",
        (Line(((20, 30), (130, 30)), "guide"), _sagging(34, y=30), Line(((75, 30), (75, 64)), "dimension")),
    ),
    Word(
        "share",
        "what is asked of the beam, over what it can give; 100 % means nothing is left",
        (
            rectangle(20, 36, 130, 54, "wall"),
            rectangle(20, 36, 100, 54, "force_band"),
            Line(((130, 28), (130, 62)), "limit"),
        ),
    ),
    Word(
        "governs",
        "the check with the greatest share decides",
        (
            rectangle(24, 54, 44, 74, "wall"),
            rectangle(56, 40, 76, 74, "wall"),
            rectangle(88, 18, 108, 74, "wall"),
            Line(((84, 14), (112, 14), (112, 78), (84, 78), (84, 14)), "governs_thin"),
        ),
    ),
    Word(
        "sister",
        "a new piece fastened to the side of an old joist",
        (
            rectangle(52, 14, 72, 74, "wood"),
            rectangle(74, 24, 94, 74, "wood_cut"),
            Line(((46, 38), (100, 38)), "ink"),
            Line(((46, 60), (100, 60)), "ink"),
        ),
    ),
    Word(
        "flitch beam",
        "wood plies with a steel plate between them, bolted through",
        (
            rectangle(44, 14, 68, 74, "wood"),
            rectangle(70, 16, 78, 72, "steel"),
            rectangle(80, 14, 104, 74, "wood"),
            Line(((38, 30), (110, 30)), "ink"),
            Line(((38, 58), (110, 58)), "ink"),
        ),
    ),
    Word(
        "load path",
        "the way of a load from where it lands down to the soil",
        (
            rectangle(30, 10, 120, 18, "wood"),
            rectangle(70, 18, 80, 60, "wood_cut"),
            rectangle(52, 60, 98, 74, "wall"),
            Arrow((75, 20), (75, 72), "force"),
        ),
    ),
    Word(
        "temporary wall",
        "carries for the time of the work; a design of its own",
        (
            rectangle(16, 24, 134, 36, "wood"),
            rectangle(18, 36, 28, 76, "wall"),
            Line(((96, 38), (106, 38), (106, 76), (96, 76), (96, 38)), "guide"),
            Arrow((72, 74), (72, 39), "force_big"),
        ),
    ),
    Word(
        "uplift",
        "an end that wants to rise off its seat",
        (
            Line(((20, 34), (134, 58)), "moved"),
            rectangle(14, 46, 26, 76, "wall"),
            rectangle(86, 52, 96, 76, "wall"),
            Arrow((126, 22), (126, 52), "force"),
            Arrow((20, 44), (20, 20), "governs_thin"),
        ),
    ),
    Word(
        "overhang",
        "the part of a beam that runs past its last post",
        (
            _beam(),
            _post(26),
            _post(92),
            Line(((96, 26), (134, 26)), "dimension"),
            Line(((96, 20), (96, 32)), "dimension"),
            Line(((134, 20), (134, 32)), "dimension"),
        ),
    ),
    Word(
        "splice",
        "a joint in the length of a ply; the ply carries nothing there",
        (
            rectangle(16, 28, 134, 40, "wood"),
            rectangle(16, 40, 75, 52, "wood"),
            rectangle(77, 40, 134, 52, "wood"),
            _post(76, top=52.0),
            Line(((76, 36), (76, 56)), "governs_thin"),
        ),
    ),
    Word(
        "built-up post",
        "plies of lumber side by side, nailed or bolted into one post",
        (
            *(rectangle(58 + 11 * k, 14, 69 + 11 * k, 76, "wood") for k in range(3)),
            Arrow((74, 2), (74, 13), "force"),
        ),
    ),
    Word(
        "buckling",
        "a slender post bows out sideways, long before it is crushed",
        (
            rectangle(70, 16, 78, 78, "wood"),
            Line(tuple((74 + 104 * (i / 12) * (1 - i / 12), 16 + 62 * i / 12) for i in range(13)), "reference"),
            Arrow((74, 2), (74, 15), "force"),
        ),
    ),
    Word(
        "pad",
        "the block of concrete under a post; it spreads the load on the soil",
        (
            rectangle(40, 48, 110, 66, "masonry"),
            rectangle(70, 8, 80, 48, "wood_cut"),
            *(Arrow((x, 82), (x, 68), "force", 7) for x in (48, 66, 84, 102)),
        ),
    ),
    Word(
        "squash block",
        "a short post beside the joists; it carries the load past a floor",
        (
            rectangle(16, 30, 134, 54, "wood"),
            rectangle(66, 29, 84, 55, "wood_cut"),
            rectangle(66, 4, 84, 29, "wood"),
            rectangle(66, 55, 84, 82, "wood"),
        ),
    ),
    Word(
        "trimmer",
        "a joist beside a floor opening; it carries the header's end, too",
        (
            rectangle(16, 10, 134, 18, "wood"),
            rectangle(16, 66, 134, 74, "wood"),
            rectangle(70, 18, 78, 66, "wood_cut"),
            rectangle(16, 30, 70, 35, "wood"),
            rectangle(16, 48, 70, 53, "wood"),
        ),
    ),
    Word(
        "thrust",
        "the sideways push of rafters at the eaves",
        (
            Line(((30, 62), (75, 26), (120, 62)), "ink"),
            Arrow((75, 4), (75, 22), "force"),
            Arrow((28, 66), (8, 66), "force_big"),
            Arrow((122, 66), (142, 66), "force_big"),
        ),
    ),
    Word(
        "rafter tie",
        "holds the feet of the rafters together, low in the roof",
        (
            Line(((20, 70), (75, 22), (130, 70)), "ink"),
            rectangle(28, 62, 122, 70, "wood"),
            Arrow((36, 78), (60, 78), "force"),
            Arrow((114, 78), (90, 78), "force"),
        ),
    ),
    Word(
        "collar tie",
        "high in the roof; holds the ridge in wind, not the walls",
        (
            Line(((20, 74), (75, 22), (130, 74)), "ink"),
            rectangle(58, 36, 92, 43, "wood"),
        ),
    ),
    Word(
        "ridge beam",
        "carries half of the roof, on posts; a ridge board carries nothing",
        (
            Line(((20, 64), (75, 24), (130, 64)), "ink"),
            rectangle(69, 26, 81, 44, "wood_cut"),
            _post(75, top=44.0, width=7.0),
        ),
    ),
    Word(
        "notch and hole",
        "a cut into the edge of a member, and a cut through its middle",
        (
            rectangle(16, 26, 134, 56, "wood"),
            rectangle(40, 24, 54, 34, "paper"),
            Line(((40, 26), (40, 34), (54, 34), (54, 26)), "ink"),
            Polygon(((92, 41), (95, 34), (102, 31), (109, 34), (112, 41), (109, 48), (102, 51), (95, 48)), "badge"),
        ),
    ),
    Word(
        "creep",
        "what years of load add to a sag; it does not spring back",
        (
            Line(((20, 24), (130, 24)), "guide"),
            _sagging(16, y=24),
            _sagging(38, y=24),
            Arrow((75, 41), (75, 60), "force"),
        ),
    ),
    Word(
        "first frequency",
        "how often a floor swings in a second, at its slowest",
        (
            Line(((20, 42), (130, 42)), "guide"),
            _sagging(24, y=42),
            Line(tuple((20 + 110 * i / 12, 42 - 96 * (i / 12) * (1 - i / 12)) for i in range(13)), "ghost"),
        ),
    ),
)


def scene_of(word):
    """Return the sketch of one word.

    Examples
    --------
    >>> scene_of(WORDS[0]).alt
    'sketch of dead load: the building itself; it stays'
    """
    return Scene(WIDTH, HEIGHT, word.shapes, word.name, "", f"sketch of {word.name}: {word.meaning}")


class Glossary:
    """The words and their sketches as a table on the page, and as plain lines elsewhere."""

    def _repr_html_(self):
        cells = "".join(
            f'<div style="width:270px;display:flex;gap:10px;align-items:center;margin:4px 12px 4px 0">'
            f'<div style="flex:0 0 110px">{svg.svg_of(scene_of(word))}</div>'
            f'<div style="font-size:15px;line-height:1.3"><b>{html.escape(word.name)}</b><br>{html.escape(word.meaning)}</div>'
            "</div>"
            for word in WORDS
        )
        return f'{svg.stylesheet()}<div style="display:flex;flex-wrap:wrap;max-width:1150px">{cells}</div>'

    def __repr__(self):
        return "\n".join(f"{word.name}: {word.meaning}" for word in WORDS)
