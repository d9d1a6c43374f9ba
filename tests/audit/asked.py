"""A wish as it is given on the command line of `loops`: what the loop file is held against."""
import argparse
import shlex
from collections import namedtuple

# kind, movement or "", count or None for as many as fit, verdict or "", kind led into or ""
Want = namedtuple("Want", "kind movement count verdict into")
VERDICTS = {"usable": "usable", "in-force": "in force"}  # README.md, the words of `loops`


def place(text):
    """(lat, lon) of `LAT,LON`; the audit reads no names."""
    lat, lon = text.split(",")
    return float(lat), float(lon)


def want(text):
    """`roundabout:right=3`, `bus-lane:usable`, `turn-off:left+narrow-road=max`."""
    what, _, count = text.partition("=")
    what, _, into = what.partition("+")
    kind, _, more = what.partition(":")
    verdict = VERDICTS.get(more, "")
    number = None if count == "max" else int(count or 1)
    return Want(kind, "" if verdict else more, number, verdict, into)


def spacing(text):
    kind, _, minutes = text.partition("=")
    return kind, float(minutes) * 60


def _parser():
    words = argparse.ArgumentParser(prog="a wish", allow_abbrev=False)
    for name in ("--home", "--end"):
        words.add_argument(name, type=place)
    words.add_argument("--minutes", type=float, required=True)
    words.add_argument("--reserve", type=float, default=0)
    words.add_argument("--start", required=True)
    words.add_argument("--level", type=int)
    words.add_argument("--hardest", type=int, default=5)
    words.add_argument("--alternatives", type=int, default=1)
    words.add_argument("--place-passes", type=int)
    words.add_argument("--street-passes", type=int)
    words.add_argument("--want", type=want, action="append", default=[])
    words.add_argument("--spacing", type=spacing, action="append", default=[])
    for name in ("--avoid", "--welcome"):
        words.add_argument(name, action="append", default=[])
    words.add_argument("--keep-off", type=place, action="append", default=[])
    return words


def asked(words):
    """The wish of a list of words, or of one line of them. Raises SystemExit on a word unknown."""
    return _parser().parse_args(shlex.split(words) if isinstance(words, str) else words)
