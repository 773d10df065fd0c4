"""A house as a file that people can read and write: TOML, with lengths and loads written as people write them."""

import os
import re
import tempfile
import tomllib
from functools import lru_cache
from pathlib import Path

from structlib.ground.refusals import BadInput, check_choice
from structlib.ground.tables import data_folder
from structlib.house.fields import read_record, write_record
from structlib.house.inputs import check_yes_or_no
from structlib.house.lines import Source
from structlib.house.plan import House, check_house
from structlib.house.version_1 import is_version_1, upgraded

VERSION = 2
_LONGEST_NAME, _LONGEST_FILE = 200, 400_000
_GROUPS_IN_GROUPS = re.compile(r"(?:[\w\"'-]+\s*\.\s*){8}|[\[{]\s*(?:[\[{]\s*){8}")


def demo_house(name="alder_lane"):
    """Return one of the invented houses that come with the workbook.

    Parameters
    ----------
    name : str
        File name without its ending [-].

    Returns
    -------
    structlib.house.plan.House
        The house [-].

    Examples
    --------
    >>> demo_house().name
    'Alder Lane'
    """
    folder = data_folder() / "houses"
    check_choice("demo house", name, sorted(path.stem for path in folder.glob("*.toml")))
    return read_house(folder / f"{name}.toml")


def read_house(path):
    """Read a house from a file of this version or of version 1.

    Parameters
    ----------
    path : str or pathlib.Path
        A TOML file laid out like the demo house [-].

    Returns
    -------
    structlib.house.plan.House
        The house [-].

    Examples
    --------
    >>> read_house("no-such-house.toml")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: there is no file no-such-house.toml; give the path of a house file, for example a copy of a demo house
    """
    path = _path(path)
    try:
        if path.stat().st_size > _LONGEST_FILE:
            raise BadInput(f"{path.name} is longer than a house file can be ({_LONGEST_FILE:,} letters)")
        text = path.read_text(encoding="utf-8-sig")  # some editors put a mark at the start
    except FileNotFoundError:
        raise BadInput(
            f"there is no file {path.name}; give the path of a house file, for example a copy of a demo house"
        ) from None
    except (OSError, UnicodeDecodeError):
        raise BadInput(
            f"{path.name} cannot be read as text; give a house file, for example a copy of a demo house"
        ) from None
    return house_from_text(text, path.name)


def house_from_text(text, name="the text"):
    """Build a house from the text of a file; a fault names its line.

    Parameters
    ----------
    text : str
        The whole file [-].
    name : str
        How a message names it [-].

    Returns
    -------
    structlib.house.plan.House
        The house [-].

    Examples
    --------
    >>> house_from_text("version = 2")
    Traceback (most recent call last):
    ...
    structlib.ground.refusals.BadInput: the text: the house has no 'name'; write it, for example name = "Alder Lane"
    """
    return _read(text, name)


@lru_cache(maxsize=16)
def _read(text, name):
    """The same text is the same house: pages and notebooks ask for the demo house again and again."""
    if _GROUPS_IN_GROUPS.search(text):
        raise BadInput(f"{name} has groups within groups beyond all measure; look at a demo house for an example")
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise BadInput(f"{name} is not laid out as TOML: {error}; look at a demo house for an example") from None
    version = data.pop("version", 1 if is_version_1(data) else VERSION)
    if version not in (1, VERSION):
        raise BadInput(f"{name} says version {version!r}, and this workbook reads versions 1 and {VERSION}")
    source = Source(name, text)
    try:
        house = upgraded(data) if version == 1 else read_record(House, data, "the house")
    except BadInput as error:
        raise source.named(error) from None
    return check_house(house.read_from(source))


def _path(path):
    if not isinstance(path, (str, os.PathLike)) or "\0" in str(path) or not Path(path).name:
        raise BadInput(f"the path of a house file must be text, got {path!r}; for example 'my-house.toml'")
    if len(Path(path).name) > _LONGEST_NAME:
        raise BadInput(
            f"the name of a house file must have at most {_LONGEST_NAME} letters, got "
            f"{len(Path(path).name)}; for example 'my-house.toml'"
        )
    return Path(path)


def write_house(house, path, *, overwrite=False):
    """Write a house to a file, whole or not at all.

    Parameters
    ----------
    house : structlib.house.plan.House
        The house [-].
    path : str or pathlib.Path
        Where to write it [-].
    overwrite : bool
        True to replace a file that is there already [-].

    Returns
    -------
    pathlib.Path
        Where it was written [-].

    Examples
    --------
    >>> import tempfile, pathlib
    >>> with tempfile.TemporaryDirectory() as folder:
    ...     path = write_house(demo_house(), pathlib.Path(folder) / "mine.toml")
    ...     read_house(path) == demo_house()
    True
    """
    import tomlkit

    path = _path(path)
    check_yes_or_no("overwrite", overwrite)
    text = tomlkit.dumps({"version": VERSION, **write_record(check_house(house))}).encode("utf-8")
    if path.is_dir() or not path.parent.is_dir():
        raise BadInput(
            f"{path.name} cannot be written there: a house file needs a folder that exists and a name "
            "of its own, for example 'my-house.toml'"
        )
    if path.exists() and not overwrite:
        raise BadInput(
            f"{path.name} is there already and was left as it is; choose another name, or say overwrite=True"
        )
    try:
        handle, name = tempfile.mkstemp(dir=path.parent, prefix="house-", suffix=".part")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(text)
            os.replace(name, path)
        except BaseException:
            Path(name).unlink(missing_ok=True)
            raise
    except OSError as error:
        raise BadInput(f"{path.name} cannot be written: {error.strerror}; choose another place") from None
    return path
