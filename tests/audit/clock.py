"""Hours and conditions at an interval of passing, by the npm package opening_hours."""
import json
import os
import re
import subprocess
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo


# The zone and the nation's name for the tables of holidays (OSM wiki, Key:opening_hours).
NATIONS = {"GB-ENG": "England", "GB-WLS": "Wales", "GB-SCT": "Scotland", "GB-NIR": "Northern Ireland"}
ZONES = {"GB": "Europe/London", "LI": "Europe/Vaduz", "IE": "Europe/Dublin", "DE": "Europe/Berlin"}
YES, NO, UNKNOWN = "yes", "no", "unknown"
CAR = {"weight": 1.8, "weightrating": 2.5, "length": 4.5, "width": 1.9, "height": 1.8, "axles": 2,
       "trailers": 0, "maxweight": 1.8}  # an ordinary hatchback (common practice, no source)
PROPERTY = re.compile(r"^(\w+)\s*(<=|>=|<|>|=)\s*([\d.]+)")
OTHERS = {"delivery", "destination", "customers", "residents", "permit", "private", "agricultural",
          "forestry", "disabled", "loading", "bus", "psv", "taxi", "emergency", "trailer", "hgv",
          "bicycle", "permit_holders", "resident"}  # who a learner isn't (Key:access)
ROAD_STATES = {"wet", "snow", "ice", "flashing", "winter"}  # Conditional restrictions
HAS_HOURS = re.compile(r"\d\d?:\d\d|24/7|\b(Mo|Tu|We|Th|Fr|Sa|Su|PH|SH|Jan|Feb|Mar|Apr|May|Jun|Jul|"
                       r"Aug|Sep|Oct|Nov|Dec|sunrise|sunset|dawn|dusk)\b")


def without_school_holidays(text):
    """A text read on a school day, and read in the holidays: without the rules of SH, and with SH as any
    day of the week."""
    rules = [rule.strip() for rule in text.split(";")]
    kept = [re.sub(r"\bSH,|,SH\b", "", rule) for rule in rules]
    return ["; ".join(rule for rule in kept if not re.search(r"\bSH\b", rule)),
            "; ".join(re.sub(r"\bSH\b", "Mo-Su", rule) for rule in rules)]


def clauses_of(text):
    """(value, condition) of each clause; a piece without `@` is of the clause before it, since mappers
    leave out the brackets (MAP-TAGS.md 2.1)."""
    clauses = []
    for piece in re.split(r";(?![^()]*\))", text):
        value, at, condition = piece.partition("@")
        if at:
            clauses.append([value.strip(), condition.strip()])
        elif clauses:
            clauses[-1][1] += ";" + piece
    return clauses


def zone_of(region):
    return ZONES[region.split("-")[0]]


class Clock:
    """Asks one long-lived node process; every answer is kept."""

    def __init__(self, region, npm, place):
        self.region, self.known, self.place = region, {}, place
        self.terms = []  # (first, last) school day of each part of a term, by the instructor's file
        self.node = subprocess.Popen(
            ["node", Path(__file__).parent / "hours_npm.cjs"], text=True, bufsize=1,
            stdin=subprocess.PIPE, stdout=subprocess.PIPE,
            env=dict(os.environ, TZ=zone_of(region), NODE_PATH=str(Path(npm) / "node_modules")))

    def states(self, text, interval):
        """The letters O, C, U a text of hours has in an interval (instants in s), or ERR. School holidays
        nobody knows: both with and without, and what both say holds (DEVELOPERS.md, HOURS)."""
        if "SH" not in text:
            return self._ask(text, interval)
        readings = without_school_holidays(text)
        kinds = {self._is_school_day(day) for day in self._days(interval)}
        if len(kinds) == 1 and None not in kinds:
            readings = readings[:1] if kinds == {True} else readings[1:]
        answers = [self._ask(one, interval) for one in readings]
        return "ERR" if "ERR" in answers else "".join(sorted(set("".join(answers))))

    def _days(self, interval):
        """The days an interval touches, and the ones before them: a span may reach past midnight."""
        zone = ZoneInfo(zone_of(self.region))
        first, last = (datetime.fromtimestamp(t, zone).date() for t in interval)
        return [first - timedelta(1), *(first + timedelta(k) for k in range((last - first).days + 1))]

    def _is_school_day(self, day):
        """In a part of a term, between two parts, or None where the file says nothing."""
        if not self.terms or not self.terms[0][0] <= day <= self.terms[-1][1]:
            return None
        return any(first <= day <= last for first, last in self.terms)

    def _ask(self, text, interval):
        if not text:
            return "C"  # no rule is left: nothing is in force (opening_hours specification: no rule, closed)
        low, high = (int(t // 60) for t in interval)
        key = text, low, high
        if key not in self.known:
            query = {"text": text, "from": low * 60000, "to": high * 60000,
                     "country": self.region[:2].lower(), "state": NATIONS.get(self.region, ""),
                     "lat": str(self.place[0]), "lon": str(self.place[1])}
            self.node.stdin.write(json.dumps(query) + "\n")
            self.node.stdin.flush()
            self.known[key] = self.node.stdout.readline().strip()
        return self.known[key]

    def holds(self, condition, interval):
        """YES, NO or UNKNOWN all through the interval: parts joined by AND, in three-valued logic."""
        text = condition.strip()
        if text.startswith("(") and text.endswith(")"):
            text = text[1:-1]
        answers = {self._part_holds(part.strip(), interval) for part in re.split(r"\bAND\b", text)}
        return NO if NO in answers else UNKNOWN if UNKNOWN in answers else YES

    def _part_holds(self, text, interval):
        said = PROPERTY.match(text)
        if said:
            return self._property_holds(*said.groups())
        if text.lower() in OTHERS:
            return NO
        if text.lower() in ROAD_STATES or not HAS_HOURS.search(text):
            return UNKNOWN
        return {"O": YES, "C": NO}.get(self.states(text, interval), UNKNOWN)

    @staticmethod
    def _property_holds(name, sign, number):
        if name not in CAR:
            return UNKNOWN
        own, told = CAR[name], float(number)
        holds = {"<": own < told, ">": own > told, "<=": own <= told, ">=": own >= told,
                 "=": own == told}[sign]
        return YES if holds else NO

    def values(self, text, interval):
        """The values a conditional text may have in an interval: the last true clause wins (OSM wiki,
        Conditional restrictions); None stands for the plain tag."""
        able = {None}
        for value, condition in clauses_of(text):
            holds = self.holds(condition, interval)
            if holds == YES:
                able = {value.strip()}
            elif holds == UNKNOWN:
                able.add(value.strip())
        return able

    def close(self):
        self.node.stdin.close()
        self.node.wait()
