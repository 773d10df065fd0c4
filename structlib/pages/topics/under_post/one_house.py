"""One problem over the whole path, in notebook 07: a fresh house from its floors down to a pad, one number a step.

The same seed brings the same house in every step. The answers are read off the path of the load itself.
"""

from dataclasses import dataclass

from structlib.ground.units import ft, inch, plf, psf
from structlib.house.path import follow
from structlib.house.plan import Beam, House, Layer, Level, Load, Pad, Post, Wall
from structlib.pages.kit.questions.question import Mistake, Question, asks
from structlib.pages.kit.questions.wording import _shown, any_unit, carried, say, say_length, say_line_load

_PAD_STEPS = (1 * inch, 2 * inch, 6 * inch)


@dataclass(frozen=True)
class _Drawn:
    """What is told of the house: spans [mm], floor loads [MPa], the wall between the floors and the beam [N/mm], soil [MPa]."""

    left: float
    right: float
    upper: float
    lower: float
    wall: float
    span: float
    beam: float
    soil: float

    @property
    def numbers(self):
        return dict(self.__dict__)

    @property
    def told(self):
        return (
            f"Two floors lie over one wall. Their joists are cut over it and span {say_length(self.left)} on the left and "
            f"{say_length(self.right)} on the right. The upper floor asks {say(self.upper, 'area load')} in all, the lower "
            f"one {say(self.lower, 'area load')}; the wall between them weighs {say_line_load(self.wall)}."
        )

    @property
    def path(self):
        """The house, followed: both floors, the wall between, the beam, a post under each end, and their pads."""
        at = (("left", -self.left), ("middle", 0.0), ("right", self.right))
        walls = [
            Wall(name=f"{name} wall", on=("soil",), at=x, start=0.0, end=self.span, height=8 * ft, weight=0.0)
            for name, x in at
            if name != "middle"
        ]
        walls += [
            Wall(
                name=f"{name} above",
                on=("beam",) if name == "middle" else (f"{name} wall",),
                at=x,
                start=0.0,
                end=self.span,
                height=8 * ft,
                weight=self.wall / (8 * ft) if name == "middle" else 0.0,
            )
            for name, x in at
        ]
        floors = [
            Level(
                name=name,
                kind="floor",
                on=on,
                start=0.0,
                end=self.span,
                live=0.0,
                layers=(Layer(name="dead and live together", weight=load),),
            )
            for name, on, load in (
                ("upper", tuple(f"{side} above" for side, _ in at), self.upper),
                ("lower", ("left wall", "beam", "right wall"), self.lower),
            )
        ]
        posts = [Post(name=f"post {y:g}", on=f"pad {y:g}", x=0.0, y=y, height=8 * ft) for y in (0.0, self.span)]
        own = Load(name="the beam itself", on="beam", x=0.0, y=0.0, length=self.span, dead=self.beam * self.span)
        return follow(
            House(
                name="one house",
                levels=tuple(floors),
                walls=tuple(walls),
                loads=(own,),
                posts=tuple(posts),
                beams=(Beam(name="beam", on=tuple(one.name for one in posts), at=0.0, start=0.0, end=self.span),),
                pads=tuple(Pad(name=one.on, x=0.0, y=one.y, side=3 * ft) for one in posts),
            )
        )

    @property
    def line(self):
        return self.path.line_on("beam", self.span / 2)["dead"] - self.beam

    @property
    def push(self):
        return self.path.element(f"pad {self.span:g}").total()["dead"]


def _drawn(draw):
    left = draw.randrange(18, 29) / 2 * ft
    return _Drawn(
        left, left + draw.choice((1, 2, 3)) * ft, draw.choice((28, 30, 32)) * psf, draw.choice((45, 50, 55)) * psf,
        draw.choice((60, 64, 72)) * plf, draw.choice((8, 9, 10, 12)) * ft, draw.choice((12, 16, 20)) * plf,
        draw.choice((1500, 2000, 3000)) * psf)  # fmt: skip


@asks("07", "house_width", "One house, step 1: how wide a strip?", family="one house")
def _width(draw):
    house = _drawn(draw)
    answer = (house.left + house.right) / 2
    return Question(
        prompt=f"{house.told} Step 1: how wide a strip of each floor does the wall carry? {any_unit('feet (ft)')}",
        dimension="length",
        answer=answer,
        mistakes=(
            Mistake(house.left + house.right, "half span forgotten", "Each joist has two ends. The wall gets one: half."),
            Mistake(house.left / 2, "one side only", "That is half of the left span. The right side lands here too."),
            Mistake(house.right / 2, "one side only", "That is half of the right span. The left side lands here too."),
            Mistake(answer / 2, "halved twice", "You halved twice. Half of each span is enough."),
        ),
        hints=("A cut joist hands half of its load to each end.", "Width = ____ / 2 + ____ / 2.",
               f"Width = ({say_length(house.left)} + {say_length(house.right)}) / 2."),
        solution=f"({say_length(house.left)} + {say_length(house.right)}) / 2 = **{say_length(answer)}**.",
        numbers=house.numbers,
    )  # fmt: skip


@asks("07", "house_line", "One house, step 2: what comes down on the beam?", family="one house")
def _line(draw):
    house = _drawn(draw)
    width, answer = (house.left + house.right) / 2, house.line
    floors = carried(
        [(load * width, "line load") for load in (house.upper, house.lower)],
        lambda upper, lower: upper + lower + house.wall,
        "line load",
    )
    return Question(
        prompt=f"{house.told} A beam takes the place of the wall below them. Step 2: what comes down on each foot of it, "
               f"without its own weight? {any_unit('pounds per foot (plf)')}",
        dimension="line load",
        answer=answer,
        mistakes=(
            Mistake(answer - house.wall, "wall between forgotten", "The wall between the two floors comes down as well."),
            Mistake(house.lower * width, "one floor only", "That is the lower floor. The upper one comes down on it."),
            Mistake(house.lower * width + house.wall, "upper floor forgotten", "The upper floor comes down as well."),
            Mistake(2 * answer - house.wall, "half span forgotten", "You gave the wall both whole spans. It gets half."),
            Mistake((house.upper + house.lower) * ft, "load per square foot", "Multiply the load by the width carried."),
        ),
        hints=("First the width, then load times width for each floor. Then the wall between.",
               "Line load = (upper + lower) × width + ____.",
               f"Line load = ({say(house.upper, 'area load')} + {say(house.lower, 'area load')}) × {say_length(width)} + "
               f"{say_line_load(house.wall)}."),
        solution=(f"Width: {say_length(width)}.\n\nUpper floor: {floors[0]}. Lower floor: {floors[1]}. Wall between: "
                  f"{say_line_load(house.wall)}.\n\n{floors[0]} + {floors[1]} + {say_line_load(house.wall)} = "
                  f"**{say_line_load(answer)}**."),
        numbers=house.numbers,
    )  # fmt: skip


@asks("07", "house_push", "One house, step 3: what does each post get?", family="one house")
def _push(draw):
    house = _drawn(draw)
    line, answer = house.line, house.push
    return Question(
        prompt=f"{house.told} The beam below them is {say_length(house.span)} long, from the middle of one post to the middle "
               f"of the other, and weighs {say_line_load(house.beam)}. Step 3: what does each post get? "
               f"{any_unit('pounds (lb)')}",
        dimension="force",
        answer=answer,
        mistakes=(
            Mistake(line * house.span / 2, "own weight forgotten", "The beam weighs something too. Add it to the line load."),
            Mistake(2 * answer, "both posts", "That is the whole beam. Each of its two posts gets half."),
            Mistake(answer / 2, "halved twice", "You halved twice. Half of the beam is enough."),
            Mistake((line + house.beam) * house.span**2 / 8 / ft, "moment formula",
                    "That looks like w L² / 8, which bends the beam. A post asks for w L / 2."),
        ),
        hints=("Step 2 gives the line load. Add the beam's own weight.", "P = (w + ____) × L / 2.",
               f"P = ({say_line_load(line)} + {say_line_load(house.beam)}) × {say_length(house.span)} / 2."),
        solution=(f"Line load of step 2: {say_line_load(line)}. With the beam: "
                  f"{(line + house.beam) / plf:g} plf.\n\n{(line + house.beam) / plf:g} × {house.span / ft:g} / 2 = "
                  f"**{say(answer, 'force')}**."),
        numbers=house.numbers,
    )  # fmt: skip


@asks("07", "house_pad", "One house, step 4: how wide is the pad?", family="one house")
def _pad(draw):
    house = _drawn(draw)
    push = house.push
    area, answer = push / house.soil, (push / house.soil) ** 0.5
    (square_feet,) = carried([(area / ft**2, "number")], lambda shown: shown**0.5 * ft, "small length")
    places = len(square_feet.partition(".")[2])
    brought = next(
        text
        for text, value in (_shown(push, "force", more) for more in range(9))
        if f"{value / house.soil / ft**2:.{places}f}" == square_feet
    )
    return Question(
        prompt=f"{house.told} The beam below them is {say_length(house.span)} long between the middles of its posts and weighs "
               f"{say_line_load(house.beam)}. The soil bears {say(house.soil, 'area load')}. Step 4: how long is the side of "
               f"a square pad under one post at least, its own weight left out? {any_unit('inches (in)', 'at least', _PAD_STEPS)}",
        dimension="small length",
        side="at least",
        stock=_PAD_STEPS,
        answer=answer,
        mistakes=(
            Mistake(area / ft, "root forgotten", "That is the area in square feet. Take its root for the side."),
            Mistake((2 * push / house.soil) ** 0.5, "both posts", "That is a pad for the whole beam. Each post has its own."),
            Mistake(answer / 2**0.5, "half the load", "You put half of the post's load on it. The post brings all of it."),
            Mistake(answer / 12, "feet written as inches (x12)", "The number is in feet. Multiply by 12, or name the unit ft."),
        ),
        hints=("Steps 1 to 3 give what the post brings. Area = load / pressure.", "a = √(P / ____).",
               f"a = √({brought} / {say(house.soil, 'area load')}), in feet, times 12."),
        solution=(f"Each post brings {brought} (step 3).\n\nArea = {brought} / "
                  f"{say(house.soil, 'area load')} = {square_feet} ft².\n\nIts root is the side in feet; twelve times as many "
                  f"inches.\n\na = 12 × √({square_feet}) = **{say(answer, 'small length')}**."),
        numbers=house.numbers,
    )  # fmt: skip
