"""What a learner has done, kept in one small file that is never lost in silence."""

import json
import os
import tempfile
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path

from structlib.ground.refusals import BadInput
from structlib.pages.kit.questions.question import check_seed

_VERSION = 1


@dataclass(frozen=True)
class Try:
    """What happened with one question."""

    tries: int = 0
    hints: int = 0
    right: bool = False
    last: str = ""


@dataclass(frozen=True)
class Progress:
    """All questions met so far, by kind and seed; `note` is a sentence for the reader."""

    done: dict = field(default_factory=dict)
    note: str = ""

    def of(self, kind, seed):
        """Give what happened with one question so far."""
        return self.done.get(f"{kind}-{check_seed(seed)}", Try())

    def with_answer(self, question, text, verdict):
        """Give the progress with one more judged answer; an answer that was asked back adds none."""
        before = self.of(question.kind, question.seed)
        after = replace(
            before,
            tries=before.tries + (not verdict.asks),
            right=before.right or verdict.right,
            last=str(text)[:200],
        )
        return self._with(question, after)

    def with_hint(self, question):
        """Give the progress with one more hint opened, at most three."""
        before = self.of(question.kind, question.seed)
        return self._with(question, replace(before, hints=min(before.hints + 1, len(question.hints))))

    def _with(self, question, record):
        return replace(self, done={**self.done, f"{question.kind}-{question.seed}": record})

    def right_in(self, kind):
        """Count the questions of a kind answered rightly."""
        return sum(record.right for key, record in self.done.items() if key.rpartition("-")[0] == kind)


def load_progress(path):
    """Read the progress file; one that cannot be read is kept aside and a note says so."""
    path = Path(path)
    try:
        text = path.read_bytes().decode("utf-8")
    except FileNotFoundError:
        return Progress()
    except OSError as error:
        raise BadInput(f"the progress file {path.name} may not be opened: {error.strerror}") from None
    except UnicodeDecodeError:
        return Progress(note=_kept_aside(path))
    try:
        return Progress(done=_read(json.loads(text)))
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError):
        return Progress(note=_kept_aside(path))


def save_progress(progress, path):
    """Write the progress file in one stroke, joined with what another page has written meanwhile."""
    path = Path(path)
    there = load_progress(path)
    joined = Progress(done=_joined(there.done, progress.done), note=there.note)
    record = {"version": _VERSION, "done": {key: asdict(joined.done[key]) for key in sorted(joined.done)}}
    try:
        _write_in_one_stroke(path, json.dumps(record, indent=1) + "\n")
    except OSError as error:
        raise BadInput(
            f"the progress file {path.name} could not be written: {error.strerror}; choose a folder you may write to"
        ) from None
    return joined


def _read(record):
    if record["version"] != _VERSION:
        raise ValueError("written by another version")
    done = {key: Try(**entry) for key, entry in record["done"].items()}
    for entry in done.values():
        kinds = (type(entry.tries), type(entry.hints), type(entry.right), type(entry.last))
        if kinds != (int, int, bool, str) or entry.tries < 0 or entry.hints < 0:
            raise ValueError("not a record of tries")
    return done


def _joined(there, mine):
    joined = dict(there)
    for key, entry in mine.items():
        other = there.get(key, Try())
        joined[key] = Try(
            tries=max(entry.tries, other.tries),
            hints=max(entry.hints, other.hints),
            right=entry.right or other.right,
            last=entry.last or other.last,
        )
    return joined


def _kept_aside(path):
    """Rename an unreadable file to the first free name, and say so in one sentence."""
    number = 1
    while (aside := path.with_name(f"{path.name}.unreadable-{number}")).exists():
        number += 1
    try:
        os.replace(path, aside)
    except OSError as error:
        raise BadInput(
            f"the progress file {path.name} cannot be read and cannot be moved: {error.strerror}; move it yourself"
        ) from None
    return f"The progress file could not be read. It is kept as {aside.name}, and a new one is begun."


def _write_in_one_stroke(path, text):
    """Write beside the file first and rename, so that a crash leaves the old file whole."""
    handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}-")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(beside, path)
    except OSError:
        os.unlink(beside)
        raise
