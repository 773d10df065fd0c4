"""A beam in exact fractions, by another road than the library's.

Start at the left end with unknown deflection and slope, walk to the right and integrate piece by
piece (Macaulay's idea, with unknown support forces, fixed-end couples and hinge kinks met on the way),
so that every quantity is a linear form in the unknowns; then solve all conditions at once.
Python's Fraction makes it exact: no rounding, however badly the numbers are placed.
"""

from fractions import Fraction

from structlib.mechanics.beams import Couple, LineLoad, PointLoad


class ExactBeam:
    """Exact reactions, and shear, moment, slope and deflection at a place inside a piece or at its ends."""

    def __init__(self, beam, lifted=()):
        self.beam = beam
        self.supports = [s for i, s in enumerate(beam.supports) if i not in lifted]
        self._number_unknowns()
        self._walk()
        values = _solve(self.conditions, self.unknowns)
        self.values = values
        self.pieces = [(*piece[:5], *map(self._number, piece[5:])) for piece in self.pieces]
        self.reactions = []
        for i, support in enumerate(beam.supports):
            if i in lifted:
                self.reactions.append((Fraction(0), Fraction(0)))
                continue
            at = Fraction(support.position)
            turn = values[self.couple[at]] if at in self.couple else Fraction(0)
            self.reactions.append((values[self.force[at]], turn))

    def _number_unknowns(self):
        names = ["sink", "slope"]
        self.force, self.couple, self.kink = {}, {}, {}
        for support in self.supports:
            self.force[Fraction(support.position)] = len(names)
            names.append("force")
            if support.kind == "fixed":
                self.couple[Fraction(support.position)] = len(names)
                names.append("couple")
        for hinge in self.beam.hinges:
            self.kink[Fraction(hinge)] = len(names)
            names.append("kink")
        self.unknowns = len(names)

    def _form(self, constant=0, unknown=None):
        form = [Fraction(0)] * (self.unknowns + 1)
        form[-1] = Fraction(constant)
        if unknown is not None:
            form[unknown] += 1
        return form

    def _walk(self):
        beam = self.beam
        length = Fraction(beam.length)
        places = {Fraction(0), length, *self.force, *self.kink}
        for load in beam.loads:
            if isinstance(load, LineLoad):
                places |= {Fraction(load.start), Fraction(load.end)}
            else:
                places.add(Fraction(load.position))
        steps = [(Fraction(end), Fraction(ei)) for end, ei in beam.stiffness_pieces()]
        places |= {end for end, _ in steps}
        places = sorted(places)
        sink, slope = self._form(unknown=0), self._form(unknown=1)
        moment, shear = self._form(), self._form()
        self.pieces, self.conditions = [], []
        for j, x in enumerate(places):
            for load in beam.loads:
                if isinstance(load, PointLoad) and Fraction(load.position) == x:
                    shear = _add(shear, self._form(-Fraction(load.force)))
                if isinstance(load, Couple) and Fraction(load.position) == x:
                    moment = _add(moment, self._form(Fraction(load.moment)))
            if x in self.force:
                shear = _add(shear, self._form(unknown=self.force[x]))
                self.conditions.append(self._support_condition(x, sink))
            if x in self.couple:
                moment = _add(moment, self._form(unknown=self.couple[x]))
                self.conditions.append(slope)
            if x in self.kink:
                slope = _add(slope, self._form(unknown=self.kink[x]))
                self.conditions.append(moment)
            if x == length:
                self.conditions += [shear, moment]  # beyond the end there is nothing
                break
            h = places[j + 1] - x
            ei = next(value for end, value in steps if end > x)
            load, rate = self._load_at(x)
            self.pieces.append((x, x + h, ei, load, rate, shear, moment, slope, sink))
            shear, moment, slope, sink = self._advance(h, ei, load, rate, shear, moment, slope, sink)

    def _support_condition(self, x, sink):
        support = next(s for s in self.supports if Fraction(s.position) == x)
        condition = _add(sink, self._form(-Fraction(support.settlement)))
        if support.kind == "spring":
            give = _times(self._form(unknown=self.force[x]), -1 / Fraction(support.stiffness))
            condition = _add(condition, give)
        return condition

    def _load_at(self, x):
        load = rate = Fraction(0)
        for item in self.beam.loads:
            if isinstance(item, LineLoad) and Fraction(item.start) <= x < Fraction(item.end):
                first = Fraction(item.intensity)
                final = first if item.end_intensity is None else Fraction(item.end_intensity)
                grows = (final - first) / (Fraction(item.end) - Fraction(item.start))
                load += first + grows * (x - Fraction(item.start))
                rate += grows
        return load, rate

    def _advance(self, t, ei, load, rate, shear, moment, slope, sink):
        new_shear = _add(shear, self._form(-load * t - rate * t**2 / 2))
        new_moment = _add(moment, _times(shear, t), self._form(-load * t**2 / 2 - rate * t**3 / 6))
        bend = _add(
            _times(moment, t),
            _times(shear, t**2 / 2),
            self._form(-load * t**3 / 6 - rate * t**4 / 24),
        )
        twice = _add(
            _times(moment, t**2 / 2),
            _times(shear, t**3 / 6),
            self._form(-load * t**4 / 24 - rate * t**5 / 120),
        )
        new_slope = _add(slope, _times(bend, -1 / ei))
        new_sink = _add(sink, _times(slope, t), _times(twice, -1 / ei))
        return new_shear, new_moment, new_slope, new_sink

    def at(self, x, side="right"):
        """Shear, moment, slope and deflection at x, exactly."""
        x = Fraction(x)
        for piece in self.pieces:
            start, end, ei, load, rate, shear, moment, slope, sink = piece
            inside = start <= x < end if side == "right" else start < x <= end
            if inside or (x == end == self.pieces[-1][1]) or (x == start == 0):
                t = x - start
                bend = moment * t + shear * t**2 / 2 - load * t**3 / 6 - rate * t**4 / 24
                twice = moment * t**2 / 2 + shear * t**3 / 6 - load * t**4 / 24 - rate * t**5 / 120
                return (
                    shear - load * t - rate * t**2 / 2,
                    moment + shear * t - load * t**2 / 2 - rate * t**3 / 6,
                    slope - bend / ei,
                    sink + slope * t - twice / ei,
                )
        raise AssertionError("x is off the beam")

    def _number(self, form):
        return sum((c * v for c, v in zip(form, self.values) if c), Fraction(0)) + form[-1]


def _add(*forms):
    return [sum(column, Fraction(0)) for column in zip(*forms)]


def _times(form, factor):
    return [entry * factor for entry in form]


def _solve(conditions, size):
    rows = [list(row) for row in conditions]
    assert len(rows) == size
    for k in range(size):
        pivot = next(i for i in range(k, size) if rows[i][k])
        rows[k], rows[pivot] = rows[pivot], rows[k]
        for i in range(size):
            if i != k and rows[i][k]:
                factor = rows[i][k] / rows[k][k]
                rows[i] = [a - factor * b if b else a for a, b in zip(rows[i], rows[k])]
    return [-rows[k][-1] / rows[k][k] for k in range(size)]


def worst_differences(solution, exact, places):
    """Greatest difference of reactions, shear, moment, slope, deflection, each beside its own largest."""
    worst = {}
    rows = [(0.0, 0.0)]
    scale = max((abs(float(force)) for force, _ in exact.reactions), default=0.0)
    for reaction, (force, _) in zip(solution.reactions, exact.reactions):
        rows.append((reaction.force, float(force)))
    worst["reaction"] = _relative(rows, scale)
    couples = [(r.moment, float(turn)) for r, (_, turn) in zip(solution.reactions, exact.reactions)]
    columns = {"shear": [], "moment": [], "slope": [], "deflection": []}
    for x in places:
        for side in ("left", "right"):
            for name, value in zip(columns, exact.at(x, side)):
                columns[name].append((getattr(solution, name)(x, side=side), float(value)))
    columns["moment"] += couples
    for name, rows in columns.items():
        worst[name] = _relative(rows, max(abs(value) for _, value in rows))
    return worst


def _relative(rows, scale):
    gap = max(abs(ours - theirs) for ours, theirs in rows)
    return gap / scale if scale else gap
