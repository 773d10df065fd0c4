"""A dummy rulebook in limit states. Every number in it is invented: it stands for no code, sizes no real beam.

It is here to prove that the house room asks nothing of a rulebook but what the protocol says. It combines
loads by other factors than the United States book (1.25 and 1.5 where that has 1.0), compares with resistances
instead of allowable stresses, checks sag under a combination of its own, and calls its checks by its own names.
It covers three kinds of member: beam, post and pad; for every other it has no rule.
"""

from types import SimpleNamespace

import numpy

from structlib.rules.check import BeamMember, BeamUse, Check, Combination
from structlib.rules.members import PadMember, PostMember, found_by_kind

PERMANENT, PASSING = 1.25, 1.5  # invented load factors
RESISTANCE = 0.9  # invented resistance factor
STRENGTH = 2.0  # invented: strength over the design value of the data files
SAG_DIVISOR = 300.0  # invented
WET_MODULUS = 0.8  # invented
SOIL_GIVES = 0.2  # MPa, invented

_PASSING_TYPES = ("live", "roof live", "snow")


class DummyLimitStates:
    """An invented limit-states rulebook."""

    name = "Dummy (invented)"
    edition = "invented"

    def combinations(self, load_types):
        passing = [word for word in _PASSING_TYPES if word in set(load_types)]
        strong = (("dead", PERMANENT),) + tuple((word, PASSING) for word in passing)
        plain = (("dead", 1.0),) + tuple((word, 1.0) for word in passing)
        return (
            Combination("strength", strong, 1.0, "any", "invented", "common practice"),
            Combination("in use", plain, 1.0, "any", "invented", "common practice"),
        )

    def leaves_out_load_near_seat(self, *, below, loaded_on):
        return False

    def modulus_factor(self, material, *, wet):
        return WET_MODULUS if wet else 1.0

    def in_service(self, material, *, incised, treatment):
        return material

    def prepare(self, rack):
        bend, slide = numpy.empty(len(rack.depth)), numpy.empty(len(rack.depth))
        for number, material in enumerate(rack.materials):
            rows = rack.rows_of(number)
            bend[rows] = RESISTANCE * STRENGTH * material.bending
            slide[rows] = RESISTANCE * STRENGTH * material.shear
        return {"bend": bend * rack.section_modulus, "slide": slide * rack.area * 2 / 3}

    def beam_shares(self, rack, strengths, demand, use):
        nothing = numpy.zeros(len(rack.depth))
        if demand.combination.name == "in use":
            return {
                "bend": nothing,
                "slide": nothing,
                "droop": demand.total_deflection * SAG_DIVISOR / demand.span,
            }
        return {
            "bend": demand.moment / strengths["bend"],
            "slide": demand.shear / strengths["slide"],
            "droop": nothing,
        }

    def soils(self):
        return (
            SimpleNamespace(name="dummy ground", pressure=SOIL_GIVES, clause="invented", verified="common practice"),
        )

    def checks(self, member, demands):
        rules = {
            BeamMember: lambda beam, asked: self.beam_checks(beam, asked, BeamUse()),
            PostMember: _post,
            PadMember: _pad,
        }
        return found_by_kind(rules, self.name, member, demands)

    def beam_checks(self, member, demands, use):
        strong, plain = demands
        bend = RESISTANCE * STRENGTH * member.material.bending * member.section_modulus
        slide = RESISTANCE * STRENGTH * member.material.shear * member.area * 2 / 3
        moment = abs(strong.solution.extremes.moment.value)
        push = max(reaction.force for reaction in strong.solution.reactions)
        sag, limit = abs(plain.solution.extremes.deflection.value), plain.span / SAG_DIVISOR
        return (
            _check("bend", moment, bend, "moment", strong),
            _check("slide", push, slide, "force", strong),
            _check("droop", sag, limit, "small length", plain),
        )


def _post(post, demands):
    return (
        _check("squash", demands[0].axial, RESISTANCE * post.material.compression * post.area, "force", demands[0]),
    )


def _pad(pad, demands):
    return (_check("sink", demands[1].axial / pad.side**2, SOIL_GIVES, "area load", demands[1]),)


def _check(name, asked, given, dimension, demand):
    return Check(
        name=name,
        kind=name,
        sentence="an invented check",
        asked=asked,
        given=given,
        share=asked / given,
        dimension=dimension,
        position=getattr(demand, "span", 0.0) / 2,
        where="anywhere",
        combination=demand.combination.name,
        clause="invented",
        formula="asked <= given",
        verified="common practice",
    )


DUMMY = DummyLimitStates()
