"""The beam of the page of what happens past the post, as the path and a rulebook see it."""

from dataclasses import dataclass
from functools import cached_property

import numpy

from structlib.house.judging import Judged
from structlib.pages.kit import verdict
from structlib.pages.topics.past_post.tables import DUST, stretch_name
from structlib.rules.members import RunningDemand

#: Letters of the supports, by kind of beam.
LETTERS = {"over": "AB", "wall": "AB", "two": "ABC", "three": "ABCD", "out": "AC"}
_DRAWN_AT = 48  # places along the beam at which its curves are drawn
#: The questions of this page; seats are not chosen here, so what each must be is asked instead.
_ASKED = ("bending", "shear", "sag")


def listed(words):
    """Join words as a sentence does.

    Examples
    --------
    >>> listed(["A", "B", "C"])
    'A, B and C'
    """
    return " and ".join(words) if len(words) < 3 else ", ".join(words[:-1]) + " and " + words[-1]


@dataclass(frozen=True)
class PastPostResult:
    """The beam as the path and the rulebook see it: all that the page shows, before it is put into words.

    ``most`` is the demand that pushes most; ``pushes`` are the most and the least of each support over all
    combinations, each with the arrangement. ``downs`` are what must hold each support down, as the rulebook counts it,
    and ``seat`` the length that one support asks for [mm]; None where the rulebook has no rule, and ``silent`` says so.
    """

    kind: str
    name: str
    judged: Judged
    most: RunningDemand
    pushes: tuple
    downs: object
    first: int
    seat: object
    silent: tuple

    @property
    def member(self):
        """The beam [-]."""
        return self.judged.members[0]

    @property
    def answer(self):
        """What the rulebook says of it [-]."""
        return self.judged.answers[0]

    @property
    def letters(self):
        """A letter for each support [-]."""
        return LETTERS[self.kind]

    @cached_property
    def checks(self):
        """The checks that belong to this page [-]."""
        return tuple(check for check in self.answer.checks if check.kind in _ASKED)

    @cached_property
    def groups(self):
        """Names of what comes and goes by itself [-]."""
        return tuple(
            "in the post above" if one.is_point else stretch_name(one.start, self.member.supports, self.letters)
            for one in self.most.comes
        )

    def hold_down(self, number):
        """Return what must hold one support down, the most of both ways to count.

        Gives [N].
        """
        plain = max(0.0, -self.pushes[number][1].value)
        return plain if self.downs is None else max(plain, self.downs[number].most)

    @cached_property
    def lifting(self):
        """Letters of the supports that lift under any arrangement [-]."""
        return [letter for number, letter in enumerate(self.letters) if self.hold_down(number) > DUST]

    @property
    def most_down(self):
        """The greatest hold-down asked [N]."""
        return max(self.hold_down(number) for number in range(len(self.letters)))

    def where(self, on):
        """Put an arrangement into words."""
        there = [name for name, wanted in zip(self.groups, on) if wanted]
        return "nowhere" if not there else "everywhere" if len(there) == len(self.groups) else listed(there)

    def curve(self, on):
        """Return places along the beam with deflection and moment under one arrangement, and the least and most moment.

        Gives [mm, N*mm].
        """
        if on not in self._curves:
            all_load, length = self.most.all_load, self.member.length
            marks = (
                *self.member.supports,
                all_load.sagging.position,
                all_load.hogging.position,
                all_load.case(on).extremes.deflection.position,
            )
            x = numpy.array(sorted({*marks, *(length * k / _DRAWN_AT for k in range(_DRAWN_AT + 1))}))
            moments, sags = all_load.along(x)
            there = numpy.array((1.0, *on)[: len(sags)])
            above, below = moments[1:].clip(min=0.0).sum(axis=0), moments[1:].clip(max=0.0).sum(axis=0)
            self._curves[on] = x, there @ sags, there @ moments, moments[0] + below, moments[0] + above
        return self._curves[on]

    @cached_property
    def _curves(self):
        return {}

    def drawn(self, which):
        """Return the arrangement that the picture shows."""
        worst = verdict.worst(self.checks)
        if which == "lift":
            least = min(one.value for _, one in self.pushes)  # of equal ones the leftmost, so that dust moves nothing
            return next(one.on for _, one in self.pushes if one.value <= least + 1e-9 * abs(least))
        if which == "all" or worst is None:
            return (True,) * len(self.groups)
        return worst.on
