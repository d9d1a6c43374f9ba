"""Random wishes for the audit: those of tests/real/random_wishes.py, and all else a wish may ask for.

An instructor asks for what there is: what is wanted is what the second reader finds within reach of the door
(around.py), and one wish in ten asks for any kind at all. What is wanted isn't avoided by the same wish.
Levels, quiet parts and manoeuvres are for doors on quiet streets, where beginners begin (common practice, no
source).
"""
import math
import shlex
from pathlib import Path

from around import QUIET
from counts import MANOEUVRES
from dice_files import HOURS, Files
from random_wishes import KINDS, Wishes

FAR_DEG = 0.01    # about a kilometre
NEAR_DEG = 0.02
SAME_DOOR_DEG = 0.003  # the lesson begins there anyway
SPARE = 14        # minutes: a reserve of 5, a brief and a talk
JOINED = ("emerge", "turn-off")  # what may lead into another kind
TURNS_INTO = ("narrow-road", "twenty-zone", "twenty-limit", "one-way")
# `near` is told of none of these, so its nearest may be another one.
NOT_FOR_NEAR = {"--part", "--through", "--driven", "--notes", "--drive-out", "--drive-back", "--wish",
                "--terms", "--place-passes", "--street-passes", "--easy-first"}


class Dice(Wishes):
    """Throws wishes; the same seed gives the same ones. `minutes`: lengths of lessons to choose from;
    `efforts`: how often of a hundred one looks as long as usual, only for the first answer, for about a second, thoroughly;
    `folder`: for the files a wish names."""

    def __init__(self, program, area, around, dice, minutes, efforts, folder):
        super().__init__(program, area, around.ground.map, dice)
        self.around, self.usual, self.minutes, self.efforts = around, around.kinds(), minutes, efforts
        self.files, self.given = Files(Path(folder), self.raw, dice), []
        self.offers, self.beginners = {}, False  # round the door of the wish that is thrown
        self.spare = 0  # minutes of it that stops and a reserve may take

    def chance(self, share):
        return self.dice.random() < share

    def run(self, verb, *words):
        """Notes and terms go to every command."""
        return super().run(verb, *words, *(self.given if verb != "loops" else []))

    def trouble_with_nearest(self, missing, words):
        special = NOT_FOR_NEAR & set(words) or any("+" in word or "bus-lane:" in word for word in words)
        return None if special else super().trouble_with_nearest(missing, words)

    def wish(self, home):
        minutes, limits = self.dice.choice(self.minutes), self._hardness()
        self.beginners, self.spare = self.around.is_quiet_at(home), SPARE if minutes > 2 * SPARE else 0
        self.offers = self.around.near(home, minutes, self._ruled_out(limits))
        if not self.offers:  # nothing can be had so easily from this door
            limits, self.offers = [], self.around.near(home, minutes)
        words = self._lesson(home, minutes) + limits
        shape = self.dice.choices(["loop", "parts", "seats", "own"], [70, 12, 10, 8])[0]
        words += {"loop": self._loop, "parts": self._parts, "seats": self._seats,
                  "own": self._own_drive}[shape](home, words)
        words += self._limits() + self._extras(home, words) + self._stops()
        effort = self.dice.choices([[], ["--quick"], ["--soon"], ["--thorough"]], self.efforts)[0]
        return self._kept(words) + self._files(home, words) + effort

    def _lesson(self, home, minutes):
        dice = self.dice
        words = ["--home", home, "--minutes", str(minutes),
                 "--start", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}"
                            f"T{dice.randint(7, 21):02}:{dice.randint(0, 59):02}"]
        return words + (["--pace", dice.choice(["0.85", "1.15", "1.4"])] if self.chance(0.15) else [])

    def _hardness(self):
        """The learner's level, and the hardest of all, now and then."""
        words = ["--level", str(self.dice.choice([2, 3, 3, 4, 4, 5]))] if self.chance(0.3) else []
        return words + (["--hardest", str(self.dice.randint(3, 4))] if self.chance(0.1) else [])

    def _ruled_out(self, limits):
        """Kinds that these limits rule out."""
        said = dict(zip(limits[::2], map(int, limits[1::2])))
        return self.around.harder_than(min(said.get("--level", 4) + 1, said.get("--hardest", 5)))

    # --- shapes of a lesson -------------------------------------------------------------------------

    def _loop(self, home, words):
        more = self._wants() + ["--alternatives", str(self.dice.randint(1, 3))]
        if self.chance(0.15):
            more += ["--end", self.door()]
        minutes = int(words[words.index("--minutes") + 1])
        if self.chance(0.15) and minutes >= 20:
            more += ["--independent", str(self.dice.choice([5, minutes // 4]))]
        more += ["--take", self._door_near(home)] if self.chance(0.1) else []
        return more + (["--variants"] if self.chance(0.1) else ["--easy-first"] if (
            self.beginners and self.chance(0.1) and not {"--independent", "--take"} & set(more)) else [])

    def _parts(self, _, words):
        """Parts that leave some of the minutes to the last, and to stops."""
        left, parts = int(words[words.index("--minutes") + 1]) - 3 - self.spare, []
        while left >= 5 and len(parts) < 3:
            minutes = min(left, self.dice.choice([5, 8, 10, 15, 20]))
            wants = ", ".join(self._want(kind, ["1", "1", "2"])
                              for kind in self._some_kinds(self.dice.choice([0, 1, 1, 2])))
            hardest = " hardest 4" if self.chance(0.1) else ""
            roads = self.dice.choice(["any", "any", "quiet", "busier"] if self.beginners else ["any"])
            parts += ["--part", f"{minutes} {roads}{hardest}" + (f": {wants}" if wants else "")]
            left -= minutes
        return parts + (["--easy-first"] if self.beginners and self.chance(0.1) else [])

    def _seats(self, home, _):
        """Somebody else drives out or back."""
        words = self._wants()
        out = self._door_near(home)
        words += ["--drive-out", out] if self.chance(0.6) and self._apart(home, out) > SAME_DOOR_DEG else []
        if "--drive-out" not in words or self.chance(0.3):
            words += ["--drive-back", self._door_near(home)]
        return words

    def _own_drive(self, home, words):
        if self.chance(0.5):
            at = words.index("--minutes")
            del words[at:at + 2]
            self.spare = 0
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

    def _some_kinds(self, count):
        """Of what is within reach; one time in ten of any kind."""
        near = sorted({kind for kind, _ in self.offers if kind in KINDS}) or list(JOINED)
        kinds = sorted(KINDS) if self.chance(0.1) else near
        return self.dice.sample(kinds, min(len(kinds), count))

    def _want(self, kind, counts):
        known = [movement for other, movement in self.offers if other == kind and movement]
        movements = [""] + [":" + movement for movement in known] if known else KINDS.get(kind, [""])
        movement = self.dice.choice(movements) if self.chance(0.6) else ""
        if kind == "bus-lane" and self.chance(0.5):
            movement = self.dice.choice([":usable", ":in-force"])
        into = ""
        if kind in JOINED and self.chance(0.15):
            into = self._into()
        there = self.offers.get((kind, movement[1:]), 9)
        counts = [count for count in counts if count == "max" or int(count) <= there]
        return f"{kind}{movement}{into}={self.dice.choice(counts)}"

    def _into(self):
        """What a turn may lead into, of what there is."""
        there = [kind for kind in TURNS_INTO if (kind, "") in self.offers]
        return "+" + self.dice.choice(there) if there else ""

    def _wants(self):
        """One to three kinds, each a few times; sometimes a manoeuvre; sometimes another one is avoided."""
        dice, words = self.dice, []
        wanted = self._some_kinds(dice.choice([1, 1, 2, 2, 3]))
        for kind in wanted:
            words += ["--want", self._want(kind, ["1", "1", "2", "3", "max", "max"])]
        if self.beginners and self.chance(0.1):
            words += ["--want", dice.choice(sorted(MANOEUVRES)) + "=1"]
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
        return words

    def _extras(self, home, said):
        """`said`: the words so far. What is avoided doesn't lie before what is wanted."""
        words, dice = [], self.dice
        avoided, minutes = self._kind(), int(said[said.index("--minutes") + 1]) if "--minutes" in said else 15
        if self.chance(0.2):
            kept = self.around.near(home, minutes, [avoided])
            wanted = {word.partition("=")[0].partition("+")[0].partition(":")[0] for word in said}
            lost = {kind for kind, _ in self.offers} - {kind for kind, _ in kept}
            movements = sorted(movement for kind, movement in self.offers if kind == avoided and movement)
            by = ":" + movements[minutes % len(movements)] if movements and minutes % 2 else ""
            words += [] if not kept or wanted & (lost | {avoided}) else ["--avoid", avoided + by]
        if self.chance(0.15) and self.spare:
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
        if QUIET not in self.offers or not self.spare:
            return words  # nowhere to stop
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
