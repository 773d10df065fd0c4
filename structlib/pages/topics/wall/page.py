"""What does this wall carry? Level by level, from the roof down, with a check that nothing is lost."""

from dataclasses import replace
from functools import lru_cache

from structlib.ground.lumber import find_material
from structlib.ground.showing import show
from structlib.ground.sizes import dressed_size
from structlib.ground.units import ft, inch, psf
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.plan import House, stretched, with_changes
from structlib.house.takedown import take_down
from structlib.pages.kit import verdict
from structlib.pages.kit.comes_down import comes_down, comes_down_pick, titled
from structlib.pages.kit.controls import Box, Page, Pick, Shown, Slide, Steps
from structlib.pages.kit.door import hold
from structlib.pages.kit.show import Table, start_values
from structlib.pages.kit.verdict import CAUTION
from structlib.pictures.drawings.house_section import HouseLevel, HouseSectionView, draw_house_section
from structlib.rules.check import Rulebook
from structlib.rules.choice import RULEBOOK

_SIZES = ("2x6", "2x8", "2x10", "2x12")
_JOISTS = (("as in the house", "as is"), ("cut over the wall", "cut"), ("in one piece over it", "continuous"))
_STOREY = 9 * ft
_HEAD = ("level", "width that lands here", "dead", "live", "roof live", "snow", "sum from the top")


class WallPage(Page):
    """The bench of the take-down: what comes down on one wall of a house."""

    def __init__(
        self, house: House | None = None, system: str = "us", wall: str | None = None, rulebook: Rulebook = RULEBOOK
    ):
        self.house = demo_house() if house is None else house
        path = follow(self.house)
        self.wall = self.house.part(wall or path.opening().wall)
        here = [one for one in self.house.openings if one.wall == self.wall.name]
        self.at = here[0].middle if here else (self.wall.start + self.wall.end) / 2
        self.lowest = next(
            path.element(share.source)
            for share in reversed(path.element(self.wall.name).received)
            if path.element(share.source).kind == "level"
        )
        self.system, self.rulebook = system, rulebook
        self.result = lru_cache(maxsize=64)(self._result)

    def controls(self, values):
        lowest, (left, right) = self.lowest.part, self._spans(self.lowest)
        depths = tuple(self.sizes())
        own = dressed_size(lowest.joist.size).depth if lowest.joist else depths[2]
        plies = lowest.joist.plies if lowest.joist else 1
        side = "left" if left else "right"  # an outside wall has joists on one side only
        both = (Box("right_span", "Span, right joists", "length", 3 * ft, 20 * ft, right),) if left and right else ()
        joists = (Pick("joists", "Joists are", _JOISTS, "as is"),) if left and right else ()
        return (
            Slide("span", f"Span, {side} joists", "length", 3 * ft, 20 * ft, 3 * inch, left or right),
            Steps("depth", "Depth of joists", "section length", depths, own),
            Slide("plies", "Plies", "count", 1, 3, 1, plies),
            comes_down_pick(),
            *both,
            *joists,
            Box("live", "Live load", "area load", 0.0, 150 * psf, lowest.live or 0.0),
        )

    def sizes(self):
        """List the joists on offer, that of the house among them: nominal size by depth, from the least [mm]."""
        joist = self.lowest.part.joist
        offered = {dressed_size(size).depth: size for size in (*_SIZES, *([joist.size] if joist else []))}
        return dict(sorted(offered.items()))

    def _spans(self, level):
        """The spans of a level on the left and on the right of the wall, 0 where there is none [mm]."""
        places = sorted({x for span in level.spans for x in span})
        left = max((x for x in places if x < self.wall.at), default=self.wall.at)
        right = min((x for x in places if x > self.wall.at), default=self.wall.at)
        return self.wall.at - left, right - self.wall.at

    def changed(self, values):
        """Return the house with the reader's spans and joists in it: wider or narrower as a whole, so that every
        level keeps its own spans; wood, joints and live load of the lowest level alone.
        """
        lowest, (left, right) = self.lowest.part, self._spans(self.lowest)
        size = self.sizes()[values["depth"]]
        grown = {"left": values["span"] / left} if left else {"right": values["span"] / right}
        if left and right:
            grown["right"] = values["right_span"] / right
        changes = {} if lowest.kind == "roof" else {"live": values["live"]}
        if lowest.joist is not None:
            changes["joist"] = replace(lowest.joist, size=size, plies=int(values["plies"]))
        if values.get("joists", "as is") != "as is":
            changes["joists"] = values["joists"]
        return stretched(with_changes(self.house, {lowest.name: changes}), self.wall.at, **grown)

    def _result(self, items):
        path = follow(self.changed(dict(items)))
        return path, take_down(path, self.wall.name, self.at)

    def compute(self, values, before=None, frame="page"):
        path, found = self.result(tuple(values.items()))
        was = self.result(tuple(before.items()))[1] if before else None
        scene, gates = self.scene(values, path, found, was, frame), comes_down(values)[0]
        return Shown(scene, _HEAD, self.rows(found), self.notes(found), gates, known=self.known(path.house.levels))

    def known(self, levels):
        """List all that the page used, each with how well it is known."""
        return (
            *map(_weight_known, (level.joist for level in levels if level.joist)),
            ("layers and live loads", verdict.ENTERED),
        )

    def table(self, **changes):
        """Return the take-down as a table, for the starting values with some of them changed."""
        return Table(_HEAD, self.rows(self.result(tuple(start_values(self, **changes).items()))[1]))

    def rows(self, found):
        """Return the take-down as rows of text, with the total and the sum check."""
        line = lambda value: show(value, "line load", self.system)  # noqa: E731
        rows = []
        for share in found.shares:
            if not share.line.sum_for_equilibrium_only() and not share.wall:
                rows.append((share.name, "nothing: it stands on other walls", "", "", "", "", ""))
                continue
            width = share.left_width + share.right_width
            above = share.running.sum_for_equilibrium_only() - share.wall
            rows.append(
                (
                    share.name,
                    show(width, "length", self.system),
                    *(line(v) for v in share.line.values()),
                    line(above),
                )
            )
            if share.wall:
                rows.append(
                    (
                        f"wall under the {share.name}",
                        "",
                        line(share.wall),
                        "",
                        "",
                        "",
                        line(share.running.sum_for_equilibrium_only()),
                    )
                )
        rows += [(name, "", *(line(v) for v in loads.values()), "") for name, loads in found.others]
        rows.append(
            (
                "in all, by type",
                "",
                *(line(v) for v in found.total.values()),
                line(found.total.sum_for_equilibrium_only()),
            )
        )
        entered = sum(share.entered for share in found.shares)
        elsewhere = sum(share.elsewhere for share in found.shares)
        rows.append(
            (
                "sum check",
                f"all levels hold {line(entered)}",
                f"other supports {line(elsewhere)}",
                "",
                "",
                "",
                f"left over {line(abs(found.left_over))}",
            )
        )
        return tuple(rows)

    def notes(self, found):
        """Return what must be said below the numbers."""
        combinations = self.rulebook.combinations({kind for kind, amount in found.total.items() if amount})
        sums = [(sum(one.factor(kind) * amount for kind, amount in found.total.items()), one) for one in combinations]
        asked, most = max(sums, key=lambda one: one[0])
        notes = [
            "The types are kept apart: a rulebook combines them later, each with its own factor. "
            f"Under {most.name} they ask most: {show(asked, 'line load', self.system)}.",
            f"Joists and live load are those of the {self.lowest.name}; a wider span widens every level in proportion.",
        ]
        if any(share.joists == "continuous" for share in found.shares):
            notes.append(
                "A joist in one piece over the wall puts more than half of each span on it: a quarter more in "
                "all when both spans are equal."
            )
        if self.house.invented:
            notes.append(f"{self.house.name} is an invented house, made up for this workbook.")
        notes.append(CAUTION)
        return tuple(notes)

    def scene(self, values, path, found, was, frame="page"):
        """Draw the section through the house, with what gathers in the wall."""
        line = lambda value: show(value, "line load", self.system)  # noqa: E731
        floors = sum(share.kind != "roof" for share in found.shares)
        drawn, height = [], _STOREY * floors
        for share in found.shares:
            left, right = self._spans(path.element(share.name))
            per_width, lands = share.area.sum_for_equilibrium_only(), bool(share.left_width or share.right_width)
            drawn.append(
                HouseLevel(
                    share.name,
                    share.kind,
                    height,
                    left,
                    right,
                    share.joists == "continuous",
                    share.left_width,
                    share.right_width,
                    line(share.left_width * per_width) if share.left_width else "",
                    line(share.right_width * per_width) if share.right_width else "",
                    line(share.running.sum_for_equilibrium_only()) if lands else "",
                )
            )
            height -= 0.0 if share.kind == "roof" else _STOREY
        total = found.total.sum_for_equilibrium_only()
        title = f"This wall carries {line(total)}"
        if was is not None:
            before = was.total.sum_for_equilibrium_only()
            title += f", {show(abs(total - before), 'line load', self.system, 0 if self.system == 'us' else None)} {'more' if total >= before else 'less'} than before"
        title = "Stop and call first: more comes down than is added up here" if comes_down(values)[0] else title
        left, right = (max(sizes) for sizes in zip(*((one.left_span, one.right_span) for one in drawn)))
        roof = any(share.kind == "roof" for share in found.shares)
        return draw_house_section(
            HouseSectionView(
                titled(title, values, comes_down(values)[0]),
                tuple(drawn),
                left,
                right,
                roof_rise=0.25 * (left + right) if roof else 0.0,
                wall_name="the wall in question",
                note="Dead and live together, for the eye only.",
                scale_text=f"House {show(left + right, 'length', self.system)} wide",
            ),
            frame,
        )


@lru_cache(maxsize=64)
def _weight_known(joist):
    """The weight of a joist, and how it is known."""
    wood = find_material(joist.species, joist.grade, joist.size)
    return f"weight of {wood.name}", wood.verified


hold(globals())
