"""Texts of hours made at random from the grammar (OSM wiki Key:opening_hours/specification), every
construct of it, with moments to ask them at. Seeded: the same seed gives the same cases."""
import random

DAYS = "Mo Tu We Th Fr Sa Su".split()
MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split()
REGIONS = ["GB-ENG", "GB-WLS", "GB-SCT", "GB-NIR"]


class Grammar:
    def __init__(self, seed):
        self.dice = random.Random(seed)

    def clock(self, low, high):
        return f"{self.dice.randint(low, high):02d}:{self.dice.choice([0, 0, 15, 30, 45]):02d}"

    def by_the_sun(self):
        return self.dice.choice([
            "sunrise-sunset", "(sunrise+01:00)-(sunset-00:30)", "dawn-dusk", "sunset-23:30",
            "06:00-sunset", "dusk-dawn", "22:00-sunrise"])

    def span(self):
        kind = self.dice.random()
        if kind < 0.68:
            begin = self.dice.randint(0, 20)
            return f"{begin:02d}:{self.dice.choice(['00', '30'])}-{self.clock(begin + 1, 23)}"
        if kind < 0.82:
            return f"{self.clock(18, 23)}-{self.clock(0, 8)}"
        if kind < 0.87:
            return f"{self.clock(18, 23)}-{self.dice.randint(25, 30)}:00"
        if kind < 0.91:
            return f"{self.clock(6, 12)}-24:00"
        return f"{self.clock(6, 22)}+" if kind < 0.95 else self.by_the_sun()

    def spans(self):
        if self.dice.random() < 0.6:
            return self.span()
        a = self.dice.randint(5, 10)
        b = a + self.dice.randint(1, 4)
        c = b + self.dice.randint(1, 3)
        return f"{a:02d}:00-{b:02d}:30,{c + 1:02d}:00-{min(c + self.dice.randint(2, 5), 24):02d}:00"

    def nth(self):
        number = self.dice.choice(["1", "2", "-1", "1,3", "2-4", "-2", "5"])
        move = self.dice.choice(["", "", "", " +1 day", " -2 days"])
        return f"{self.dice.choice(DAYS)}[{number}]{move}"

    def weekdays(self):
        kind = self.dice.random()
        if kind < 0.4:
            return self.dice.choice(["Mo-Fr", "Mo-Sa", "Sa,Su", "Mo-Th", "Sa-Su", "Fr-Mo"])
        if kind < 0.6:
            few = self.dice.sample(DAYS, self.dice.randint(1, 3))
            return ",".join(sorted(few, key=DAYS.index))
        if kind < 0.75:
            return self.nth()
        if kind < 0.87:
            return self.dice.choice(["PH,Mo-Fr", "Mo-Fr,PH", "PH", "Su,PH", "PH -1 day", "PH +1 day"])
        return "-".join(self.dice.sample(DAYS, 2))

    def date(self):
        return f"{self.dice.choice(MONTHS)} {self.dice.randint(1, 28):02d}"

    def dates(self):
        kind = self.dice.random()
        if kind < 0.3:
            return "-".join(self.dice.sample(MONTHS, self.dice.randint(1, 2)))
        if kind < 0.55:
            return f"{self.date()}-{self.date()}"
        if kind < 0.7:
            first = self.dice.randint(1, 20)
            return f"{self.dice.choice(MONTHS)} {first:02d}-{first + self.dice.randint(1, 8):02d}"
        if kind < 0.8:
            return self.date()
        if kind < 0.9:
            return self.dice.choice(["easter", "easter -2 days-easter +1 day", "Dec 24-Jan 02",
                                     "Mar Su[-1]-Oct Su[-1]", "Feb 29", "Dec 25,26"])
        if kind < 0.94:
            year = self.dice.choice([2026, 2027])
            return f"2026 {MONTHS[self.dice.randint(0, 5)]} 05-{year} {MONTHS[self.dice.randint(6, 11)]} 20"
        step = self.dice.choice(["", "/2"])
        return f"week {self.dice.randint(1, 20):02d}-{self.dice.randint(25, 53):02d}{step}"

    def rule(self):
        parts = []
        if self.dice.random() < 0.08:
            parts.append(self.dice.choice(["2026", "2026-2028", "2026+", "2025-2029/2"]))
        if self.dice.random() < 0.3:
            parts.append(self.dates())
        if self.dice.random() < 0.7:
            parts.append(self.weekdays())
        if self.dice.random() < 0.85 or not parts:
            parts.append(self.spans())
        state = self.dice.random()
        if state < 0.12:
            parts.append(self.dice.choice(["off", "closed"]))
        elif state < 0.24:
            parts.append(self.dice.choice(["unknown", '"by notice"', "open", 'open "gate"']))
        return " ".join(parts)

    def text(self):
        text = self.rule()
        for _ in range(self.dice.choice([0, 0, 1, 1, 2])):
            text += self.dice.choice(["; ", "; ", ", ", " || "]) + self.rule()
        return text + "; PH off" if self.dice.random() < 0.2 else text

    def moment(self):
        return (f"{self.dice.choice([2025, 2026, 2026, 2027])}-{self.dice.randint(1, 12):02d}-"
                f"{self.dice.randint(1, 28):02d}T{self.dice.randint(0, 23):02d}:"
                f"{self.dice.choice([0, 5, 20, 40]):02d}:00")

    def cases(self, text, count):
        return [(self.dice.choice(REGIONS), text, self.moment()) for _ in range(count)]
