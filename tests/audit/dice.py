"""Random wishes for the audit: those of tests/real/random_wishes.py, and all else a wish may ask for.

An instructor asks for what there is: kinds are those the second reader finds on the map, and one wish in
ten asks for any kind at all. What is wanted isn't avoided by the same wish.
"""
import math
import shlex
from pathlib import Path

from counts import MANOEUVRES
from dice_files import HOURS, Files
from random_wishes import KINDS, Wishes

LEAST_THINGS = 3  # of a kind on a map, to be asked for
FAR_DEG = 0.01    # about a kilometre
NEAR_DEG = 0.02
ALWAYS = {"emerge", "turn-off"}  # what no tag decides, and no town lacks
TURNS_INTO = ("narrow-road", "twenty-zone", "twenty-limit", "one-way")
# `near` is told of none of these, so its nearest may be another one.
NOT_FOR_NEAR = {"--part", "--through", "--driven", "--notes", "--drive-out", "--drive-back", "--wish",
                "--terms", "--place-passes", "--street-passes", "--easy-first"}


def kinds_on(ground, claims):
    """Of the kinds a wish may name those of which the map has some that can be driven."""
    def driven(name):
        what, number = name.split("/")
        return (ground.is_driven(int(number)) if what == "way" else ground.is_driven_over(int(number)))
    found = set(ALWAYS)
    for kind in KINDS:
        claimed = getattr(claims, kind.replace("-", "_"), None)
        groups = claimed().groups if claimed else []
        if sum(any(map(driven, group)) for group in groups) >= LEAST_THINGS:
            found.add(kind)
    return sorted(found)


class Dice(Wishes):
    """Throws wishes; the same seed gives the same ones. `minutes`: lengths of lessons to choose from;
    `folder`: for the files a wish names."""

    def __init__(self, program, area, raw, dice, kinds, minutes=(15, 25, 40, 60, 90), folder="."):
        super().__init__(program, area, raw, dice)
        self.usual, self.minutes = kinds, minutes
        self.files, self.given = Files(Path(folder), raw, dice), []

    def chance(self, share):
        return self.dice.random() < share

    def run(self, verb, *words):
        """Notes and terms go to every command."""
        return super().run(verb, *words, *(self.given if verb != "loops" else []))

    def trouble_with_nearest(self, missing, words):
        special = NOT_FOR_NEAR & set(words) or any("+" in word or "bus-lane:" in word for word in words)
        return None if special else super().trouble_with_nearest(missing, words)

    def wish(self, home):
        words = self._lesson(home)
        shape = self.dice.choices(["loop", "parts", "seats", "own"], [70, 12, 10, 8])[0]
        words += {"loop": self._loop, "parts": self._parts, "seats": self._seats,
                  "own": self._own_drive}[shape](home, words)
        words += self._limits() + self._extras(home) + self._stops()
        return self._kept(words) + self._files(home, words)

    def _lesson(self, home):
        dice = self.dice
        words = ["--home", home, "--minutes", str(dice.choice(self.minutes)),
                 "--start", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}"
                            f"T{dice.randint(7, 21):02}:{dice.randint(0, 59):02}"]
        if self.chance(0.3):
            words += ["--level", str(dice.choice([2, 3, 3, 4, 4, 5]))]
        return words

    # --- shapes of a lesson -------------------------------------------------------------------------

    def _loop(self, home, words):
        more = self._wants() + ["--alternatives", str(self.dice.randint(1, 3))]
        if self.chance(0.15):
            more += ["--end", self.door()]
        if self.chance(0.1):
            more += ["--independent", str(self.dice.choice([5, 5, 8, 10]))]
        return more + (["--variants"] if self.chance(0.1) else ["--easy-first"] if (
            self.chance(0.1) and "--independent" not in more) else [])

    def _parts(self, _, words):
        """Parts that leave some of the minutes to the last."""
        left, parts = int(words[words.index("--minutes") + 1]) - 3, []
        while left >= 5 and len(parts) < 3:
            minutes = min(left, self.dice.choice([5, 8, 10, 15, 20]))
            wants = ", ".join(self._want(kind, ["1", "1", "2"]) for kind in self.dice.sample(
                self.usual, self.dice.choice([0, 1, 1, 2])))
            hardest = " hardest 4" if self.chance(0.1) else ""
            roads = self.dice.choice(["any", "any", "quiet", "busier"])
            parts += ["--part", f"{minutes} {roads}{hardest}" + (f": {wants}" if wants else "")]
            left -= minutes
        return parts + (["--easy-first"] if self.chance(0.1) else [])

    def _seats(self, home, _):
        """Somebody else drives out or back."""
        words = self._wants()
        words += ["--drive-out", self._door_near(home)] if self.chance(0.6) else []
        if "--drive-out" not in words or self.chance(0.3):
            words += ["--drive-back", self._door_near(home)]
        return words

    def _own_drive(self, home, words):
        if self.chance(0.5):
            at = words.index("--minutes")
            del words[at:at + 2]
        return ["--through", ";".join(self._door_near(home) for _ in range(self.dice.randint(1, 4)))]

    def _door_near(self, home):
        """A door within a mile or two of another, if any is found soon."""
        for _ in range(40):
            place = self.door()
            if self._apart(home, place) < NEAR_DEG:
                break
        return place

    @staticmethod
    def _apart(one, other):
        return math.dist(*([float(part) for part in place.split(",")] for place in (one, other)))

    # --- what is wanted -----------------------------------------------------------------------------

    def _want(self, kind, counts):
        movement = self.dice.choice(KINDS.get(kind, [""])) if self.chance(0.6) else ""
        if kind == "bus-lane" and self.chance(0.5):
            movement = self.dice.choice([":usable", ":in-force"])
        into = "+" + self.dice.choice(TURNS_INTO) if kind in ALWAYS and self.chance(0.15) else ""
        return f"{kind}{movement}{into}={self.dice.choice(counts)}"

    def _wants(self):
        """One to three kinds, each a few times; sometimes a manoeuvre; sometimes another one is avoided."""
        dice, words = self.dice, []
        usual = sorted(KINDS) if self.chance(0.1) else self.usual
        wanted = dice.sample(usual, min(len(usual), dice.choice([1, 1, 2, 2, 3])))
        for kind in wanted:
            words += ["--want", self._want(kind, ["1", "1", "2", "3", "max", "max"])]
        if self.chance(0.08):
            words += ["--want", dice.choice(sorted(MANOEUVRES)) + "=1"]
        avoided = self._kind()
        if self.chance(0.15) and avoided not in wanted:
            words += ["--avoid", avoided]
        return words

    def _kind(self):
        return self.dice.choice(self.usual)

    def _limits(self):
        words, dice = [], self.dice
        if self.chance(0.15):
            words += ["--spacing", f"{self._kind()}={dice.randint(2, 8)}"]
        if self.chance(0.15):
            words += ["--place-passes", str(dice.choice([1, 2, 4]))]
        if self.chance(0.1):
            words += ["--street-passes", str(dice.choice([1, 3]))]
        if self.chance(0.1):
            words += ["--hardest", str(dice.randint(3, 4))]
        return words

    def _extras(self, home):
        words, dice = [], self.dice
        if self.chance(0.15):
            words += ["--reserve", str(dice.choice([2, 5]))]
        if self.chance(0.15):
            words += ["--welcome", self._kind()]
        if self.chance(0.15):
            words += self._keep_off(home)
        return words

    def _keep_off(self, home):
        """A street, a junction or an area well away from the door: one at the door itself is refused."""
        place = self.door()
        if self._apart(home, place) < FAR_DEG:
            return []
        if self.chance(0.3):
            lat, lon = map(float, place.split(","))
            place = ";".join(f"{lat + dy:.6f},{lon + dx:.6f}"
                             for dy, dx in ((0.002, 0), (-0.001, 0.003), (-0.001, -0.003)))
        elif self.chance(0.3):
            node = self.dice.choice(self.nodes)
            place = "{:.7f},{:.7f}".format(*self.raw.places[node])
        return ["--keep-off", place + (f" @ {self.dice.choice(HOURS)}" if self.chance(0.4) else "")]

    def _stops(self):
        words = []
        if self.chance(0.08):
            words += ["--new", self._kind()] + (["--brief", "3"] if self.chance(0.3) else [])
        return words + (["--talk", str(self.dice.choice([3, 5]))] if self.chance(0.08) else [])

    # --- files --------------------------------------------------------------------------------------

    def _kept(self, words):
        """One in twenty of the wishes comes from a file, but for where and when."""
        if not self.chance(0.05):
            return words
        lines, own, on = [], [], iter(words)
        for word in on:
            flag = word in ("--variants", "--easy-first")
            value = [] if flag else [next(on)]
            if word in ("--home", "--start"):
                own += [word, *value]
            else:
                lines.append(" ".join([word[2:], *value]))
        path = self.files.folder / "kept.wish"
        path.write_text("# kept\n\n" + "\n".join(lines) + "\n", encoding="utf-8")
        return own + ["--wish", str(path)]

    def _files(self, home, words):
        """Notes and terms, which every command is told of, and the ledger."""
        start = words[words.index("--start") + 1]
        self.given = ["--notes", self.files.notes(home, start)] if self.chance(0.12) else []
        self.given += ["--terms", self.files.terms()] if self.chance(0.12) else []
        return self.given + (["--driven", self.files.ledger(home, start)] if self.chance(0.12) else [])

    def try_one(self, file):
        """The files of a wish that fails are written over by the next: their text is told."""
        before = len(self.failures)
        answered = super().try_one(file)
        if len(self.failures) > before and self.given:
            named = [Path(word).read_text(encoding="utf-8") for word in self.given[1::2]]
            self.failures[-1] += "".join(f"\n    {shlex.quote(text)}" for text in named)
        return answered
