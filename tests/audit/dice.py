"""Random wishes for the audit: those of tests/real/random_wishes.py, and what else a wish may ask for.

An instructor asks for what there is: kinds are those the second reader finds on the map, and one wish in
ten asks for any kind at all. What is wanted isn't avoided by the same wish.
"""
import math

from random_wishes import KINDS, Wishes

LEAST_THINGS = 3  # of a kind on a map, to be asked for
FAR_DEG = 0.01    # about a kilometre
ALWAYS = {"emerge", "turn-off"}  # what no tag decides, and no town lacks


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
    """Throws wishes; the same seed gives the same ones. `minutes`: lengths of lessons to choose from."""

    def __init__(self, program, area, raw, dice, kinds, minutes=(15, 25, 40, 60, 90)):
        super().__init__(program, area, raw, dice)
        self.usual, self.minutes = kinds, minutes

    def wish(self, home):
        return self._lesson(home) + self._wants() + self._limits() + self._extras(home)

    def _lesson(self, home):
        dice = self.dice
        words = ["--home", home, "--minutes", str(dice.choice(self.minutes)),
                 "--start", f"2026-{dice.randint(1, 12):02}-{dice.randint(1, 28):02}"
                            f"T{dice.randint(7, 21):02}:{dice.randint(0, 59):02}",
                 "--alternatives", str(dice.randint(1, 3))]
        if dice.random() < 0.3:
            words += ["--level", str(dice.choice([2, 3, 3, 4, 4, 5]))]
        return words + (["--end", self.door()] if dice.random() < 0.15 else [])

    def _wants(self):
        """One to three kinds, each a few times; sometimes another one is avoided."""
        dice, words = self.dice, []
        usual = sorted(KINDS) if dice.random() < 0.1 else self.usual
        wanted = dice.sample(usual, min(len(usual), dice.choice([1, 1, 2, 2, 3])))
        for kind in wanted:
            movement = dice.choice(KINDS[kind]) if dice.random() < 0.6 else ""
            words += ["--want", f"{kind}{movement}={dice.choice(['1', '1', '2', '3', 'max', 'max'])}"]
        avoided = self._kind()
        if dice.random() < 0.15 and avoided not in wanted:
            words += ["--avoid", avoided]
        return words

    def _kind(self):
        return self.dice.choice(self.usual)

    def _limits(self):
        words, dice = [], self.dice
        if dice.random() < 0.15:
            words += ["--spacing", f"{self._kind()}={dice.randint(2, 8)}"]
        if dice.random() < 0.15:
            words += ["--place-passes", str(dice.choice([1, 2, 4]))]
        if dice.random() < 0.1:
            words += ["--hardest", str(dice.randint(3, 4))]
        return words

    def _extras(self, home):
        words, dice = [], self.dice
        if dice.random() < 0.15:
            words += ["--reserve", str(dice.choice([2, 5]))]
        if dice.random() < 0.15:
            words += ["--welcome", self._kind()]
        if dice.random() < 0.1:
            words += self._keep_off(home)
        return words

    def _keep_off(self, home):
        """A place well away from the door: one at the door itself is refused."""
        place = self.door()
        far = math.dist(*([float(part) for part in one.split(",")] for one in (home, place))) > FAR_DEG
        return ["--keep-off", place] if far else []
