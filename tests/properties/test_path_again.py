"""A house followed again after one change is the house followed from the start, and only what the change touches is run."""

import random
from dataclasses import fields, replace

import pytest
from test_path_balance import random_house

from structlib.ground.refusals import BadInput
from structlib.ground.units import inch, psf
from structlib.house import path as paths
from structlib.house.file import demo_house
from structlib.house.path import follow
from structlib.house.plan import House, with_changes


def changed(house, draw):
    """One part with one number, one word or one thing of it changed; or a part gone."""
    part = draw.choice(house.parts())
    choices = {
        "length": lambda value: value * draw.uniform(0.9, 1.1) + draw.choice((0.0, 10.0)),
        "section length": lambda value: value * draw.uniform(0.9, 1.1),
        "area load": lambda value: value * draw.uniform(0.5, 1.5) + 1 * psf,
        "force": lambda value: value + 300.0,
        "choice": lambda value: value,
        "record": lambda value: replace(value, size="2x10") if hasattr(value, "size") else value,
    }
    able = [one for one in fields(part) if one.metadata["kind"] in choices and getattr(part, one.name) is not None]
    one = draw.choice(able)
    if one.metadata["kind"] == "choice":
        return {part.name: {one.name: draw.choice(one.metadata["choices"])}}
    return {part.name: {one.name: choices[one.metadata["kind"]](getattr(part, one.name))}}


def counted(monkeypatch):
    """Names of the parts whose step is run, from now on."""
    run = []
    monkeypatch.setattr(paths, "STEPS", {
        kind: lambda part, parts, received, step=step: run.append(part.name) or step(part, parts, received)
        for kind, step in paths.STEPS.items()
    })  # fmt: skip
    return run


@pytest.mark.parametrize("block", range(10))
def test_a_house_followed_again_after_one_change_is_the_house_followed_from_the_start(block, monkeypatch):
    run, again, whole, refused = counted(monkeypatch), 0, 0, 0
    for seed in range(100 * block, 100 * block + 100):
        draw, house = random.Random(seed), random_house(seed)
        path = follow(house)
        try:
            change = changed(house, draw)
            one = with_changes(house, change)
            run.clear()
            fresh = follow(one)
        except BadInput as refusal:  # what is refused from the start is refused again, in the same words
            refused += 1
            with pytest.raises(BadInput) as second:
                follow(house, change, before=path)
            assert str(second.value) == str(refusal)
            continue
        whole += len(run)
        run.clear()
        after = follow(house, change, before=path)
        again += len(run)
        assert after == fresh, (seed, change)
        run.clear()
        assert follow(one, before=after) == fresh and not run  # and nothing is run where nothing changed
        back = follow(house, before=after)
        assert back == path
    assert refused < 40 and again < 0.3 * whole


def test_any_house_may_be_the_one_before():
    for seed in range(20):
        one, other = random_house(seed), random_house(seed + 1)
        assert follow(other, before=follow(one)) == follow(other)
    assert follow(demo_house(), before=follow(one)) == follow(demo_house())


def test_a_part_that_is_gone_or_new_is_met():
    house = random_house(3)
    lists = {one.name: getattr(house, one.name) for one in fields(House) if one.metadata["kind"] == "records"}
    fewer = replace(house, **{**{name: rows for name, rows in lists.items()}, "loads": house.loads[:1]})
    assert follow(fewer, before=follow(house)) == follow(fewer)
    assert follow(house, before=follow(fewer)) == follow(house)
    closed = replace(house, openings=(), posts=house.posts[1:], loads=house.loads[1:])
    assert follow(closed, before=follow(house)) == follow(closed)
    assert follow(house, before=follow(closed)) == follow(house)


def test_a_pad_made_wider_runs_its_own_step_and_that_of_the_post_on_it(monkeypatch):
    house = demo_house()
    path, run = follow(house), counted(monkeypatch)
    pad = house.pads[0]
    follow(house, {pad.name: {"side": pad.side + 1 * inch}}, before=path)
    assert run == ["north post", pad.name] and len(run) < len(path.elements) / 5
