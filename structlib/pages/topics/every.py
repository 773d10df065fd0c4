"""Every topic, for sheets and tests over all of them: a new topic adds its name."""

from structlib.pages.topics import (
    beam,
    boards,
    meanwhile,
    old_wood,
    past_post,
    path,
    post,
    push,
    ridge,
    roof,
    sag,
    seat,
    shared_plies,
    under_post,
    wall,
)

TOPICS = (
    beam, boards, meanwhile, old_wood, past_post, path, post, push, ridge, roof, sag, seat, shared_plies, under_post, wall
)  # fmt: skip


def all_of(room):
    """Return every public function of one room of every topic, such as 'derivations', by its name."""
    rooms = [vars(topic)[room] for topic in TOPICS if room in vars(topic)]
    return {
        name: one
        for module in rooms
        for name, one in vars(module).items()
        if callable(one) and not name.startswith("_") and one.__module__ == module.__name__
    }
