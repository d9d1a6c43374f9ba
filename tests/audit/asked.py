"""A wish as it is given on the command line of `loops`: what the loop file is held against.

README.md names the words. Places are LAT,LON: the audit reads no names. Files named (notes, terms, ledger,
a kept wish) are read by files_given.py.
"""
import argparse
import copy
import re
import shlex
from collections import namedtuple
from pathlib import Path

# kind, movement or "", count or None for as many as fit, verdict or "", kind led into or ""
Want = namedtuple("Want", "kind movement count verdict into")
# minutes, "any", "quiet" or "busier", hardest or 5, wants
Part = namedtuple("Part", "minutes roads hardest wants")
# kind, movement or "" for any
Avoid = namedtuple("Avoid", "kind movement")
# points of an outline, or one; hours or ""
KeepOff = namedtuple("KeepOff", "outline hours")
VERDICTS = {"usable": "usable", "in-force": "in force"}  # README.md, the words of `loops`
PART = re.compile(r"^\s*(\d+)\s*(any|quiet|busier)?\s*(?:hardest\s+(\d))?\s*(?::(.*))?$")


def place(text):
    """(lat, lon) of `LAT,LON`."""
    lat, lon = text.split(",")
    return float(lat), float(lon)


def places(text):
    return [place(one) for one in text.split(";")]


def want(text):
    """`roundabout:right=3`, `bus-lane:usable`, `turn-off:left+narrow-road=max`."""
    what, _, count = text.strip().partition("=")
    what, _, into = what.partition("+")
    kind, _, more = what.partition(":")
    verdict = VERDICTS.get(more, "")
    number = None if count == "max" else int(count or 1)
    return Want(kind, "" if verdict else more, number, verdict, into)


def part(text):
    """`20 quiet hardest 3: turn-off:left=3, emerge:left=2`."""
    said = PART.match(text)
    if not said:
        raise argparse.ArgumentTypeError(f"no part: {text}")
    wants = [want(one) for one in (said[4] or "").split(",") if one.strip()]
    return Part(int(said[1]), said[2] or "any", int(said[3] or 5), wants)


def keep_off(text):
    where, _, hours = text.partition("@")
    return KeepOff(places(where.strip()), hours.strip())


def take(text):
    return text.strip(), place(text)


def avoid(text):
    kind, _, movement = text.partition(":")
    return Avoid(kind, movement)


def spacing(text):
    kind, _, minutes = text.partition("=")
    return kind, float(minutes) * 60


def _parser():
    words = argparse.ArgumentParser(prog="a wish", allow_abbrev=False)
    for name in ("--home", "--end", "--drive-out", "--drive-back"):
        words.add_argument(name, type=place)
    words.add_argument("--minutes", type=float)
    words.add_argument("--pace", type=float, default=1)
    words.add_argument("--start", required=True)
    words.add_argument("--hardest", type=int, default=5)
    words.add_argument("--alternatives", type=int, default=1)
    words.add_argument("--brief", type=int, default=4)
    for name in ("--reserve", "--talk", "--independent"):
        words.add_argument(name, type=float, default=0)
    for name in ("--level", "--place-passes", "--street-passes"):
        words.add_argument(name, type=int)
    for name, read in (("--want", want), ("--spacing", spacing), ("--part", part),
                       ("--keep-off", keep_off), ("--take", take), ("--avoid", avoid), ("--welcome", str), ("--new", str)):
        words.add_argument(name, type=read, action="append", default=[])
    for name in ("--easy-first", "--variants", "--quick", "--soon", "--thorough"):
        words.add_argument(name, action="store_true")
    words.add_argument("--through", type=places, default=[])
    for name in ("--notes", "--terms", "--driven", "--wish"):
        words.add_argument(name, type=Path)
    return words


def kept(path):
    """The words of a wish kept in a file: a word a line, without its dashes, what it says behind it."""
    words = []
    for line in path.read_text(encoding="utf-8").splitlines():
        name, _, value = line.strip().partition(" ")
        if name and not name.startswith("#"):
            words += [f"--{name}", value.strip()] if value else [f"--{name}"]
    return words


def asked(words):
    """The wish of a list of words, or of one line of them. Raises SystemExit on a word unknown."""
    words = shlex.split(words) if isinstance(words, str) else list(words)
    if "--wish" in words:  # what the command line says beats it; of repeated words the file's come first
        words = kept(Path(words[words.index("--wish") + 1])) + words
    wish = _parser().parse_args(words)
    wish.avoid, wish.welcome = list(dict.fromkeys(wish.avoid)), list(dict.fromkeys(wish.welcome))
    wish.spacing = [one for k, one in enumerate(wish.spacing)  # what is said later of a kind beats it
                    if one[0] not in {later[0] for later in wish.spacing[k + 1:]}]
    wish.all_wants = wish.want + [one for each in wish.part for one in each.wants]
    return wish


def kept_for_stops_s(wish):
    """Seconds kept free for planned stops: a brief for each new kind, and the talk (DEVELOPERS.md)."""
    return 60 * (wish.brief * len(wish.new) + wish.talk)


def is_in_parts(wish):
    """The lesson is cut into sections, so of its worth nothing but "searched" is known."""
    return bool(wish.part or wish.easy_first or wish.drive_out or wish.drive_back)


def hardest_driven(loop):
    """(hardness, how many) of the hardest passes of a loop; following signs isn't counted."""
    grades = [row["hardness"] for row in loop["passes"] if row["kind"] != "independent-stretch"]
    return (max(grades), grades.count(max(grades))) if grades else (0, 0)


def wish_of(wish, loop, first):
    """The wish that a loop must meet: of a variant another one (DEVELOPERS.md, Variants)."""
    if "variant" not in loop:
        return wish
    other, has = copy.copy(wish), hardest_driven(first)[0]
    if loop["variant"] == "easier":
        other.hardest = has - 1
        return other
    allowed = min(wish.hardest, 5 if wish.level is None else wish.level + 1)
    other.hardest, other.free_of_level = min(5, max(allowed + 1, has)), True
    return other
