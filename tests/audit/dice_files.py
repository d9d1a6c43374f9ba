"""Files that random wishes name: notes, terms and a ledger, all about the surroundings of a door."""
import json
from datetime import date, timedelta

NEAR_DEG = 0.015      # a mile or so
AWAY_DEG = 0.003      # what shuts a road lies some 300 m from the door at least
LINE_NODES = 8
TERMS = ("2026-01-05 2026-02-13", "2026-02-23 2026-03-27", "2026-04-13 2026-05-22",
         "2026-06-01 2026-07-21", "2026-09-02 2026-10-23", "2026-11-02 2026-12-18")  # invented
HOURS = ("Mo-Fr 08:15-09:15", "Mo-Fr 07:00-10:00,16:00-19:00", "Sa,Su 09:00-18:00", "SH off",
         "Mo-Fr 08:30-09:00; SH off", "22:00-05:00")
ADDED = ("zebra", "narrow-road", "meeting-traffic", "school", "calming", "crossroads", "bus-stop", "stop-line")
TAKEN = ("narrow-road", "meeting-traffic", "zebra", "twenty-zone", "bus-lane", "signals", "calming",
         "mini-roundabout", "one-way")


class Files:
    """Writes into a folder; `raw` is the map, `dice` the dice."""

    def __init__(self, folder, raw, dice):
        self.folder, self.raw, self.dice = folder, raw, dice
        self.ways = sorted(way for way in raw.ways if raw.is_road(way))

    def terms(self):
        return self._write("terms.txt", "\n".join(TERMS[self.dice.randint(0, 2):]) + "\n")

    def ledger(self, home, start):
        """Quiet and other streets round the door, worn out or nearly."""
        day, rows = date.fromisoformat(start[:10]), []
        for way in self._ways_near(home, 30):
            on = day - timedelta(self.dice.choice([-1, 0, 0, 1, 5, 20, 29, 30, 40]))
            rows.append(f"{on} {way} {self.dice.randint(1, 12)}")
        return self._write("driven.txt", "\n".join(rows) + "\n")

    def notes(self, home, start):
        features = [self._note(home, start) for _ in range(self.dice.randint(1, 6))]
        return self._write("notes.geojson", json.dumps({"type": "FeatureCollection", "features": features}))

    def _write(self, name, text):
        path = self.folder / name
        path.write_text(text, encoding="utf-8")
        return str(path)

    def _ways_near(self, home, most, away=0.0):
        """Roads with a first node near the door, and no nearer than `away` degrees."""
        lat, lon = map(float, home.split(","))
        def apart(way):
            node = self.raw.ways[way].nodes[0]
            at = self.raw.places.get(node, (0, 0))
            return max(abs(at[0] - lat), abs(at[1] - lon))
        near = [way for way in self.ways if away <= apart(way) < NEAR_DEG]
        return self.dice.sample(near or self.ways, min(most, len(near or self.ways)))

    def _note(self, home, start):
        dice, day = self.dice, date.fromisoformat(start[:10])
        says = dice.choice(["narrow", "pull-up", "never", "closed", "hump", "plate", "limit", "practice", "not"])
        own = {"says": says, "seen": str(day - timedelta(dice.randint(1, 90)))}
        if says in ("never", "plate"):
            own["hours"] = dice.choice(HOURS)
        if says == "closed":
            own["from"] = str(day + timedelta(dice.choice([-9, 0, 1])))
            own["until"] = str(date.fromisoformat(own["from"]) + timedelta(dice.choice([0, 8])))
        if says == "limit":
            own.update(limit=dice.choice([20, 30, 40]), unit="mph")
        if says == "practice":
            own["kind"] = dice.choice(ADDED)
        if says == "not":
            own["kind"] = dice.choice(TAKEN)
        away = AWAY_DEG if says in ("never", "closed") else 0
        return {"type": "Feature", "geometry": self._shape(self._ways_near(home, 1, away)[0]), "properties": own}

    def _shape(self, way):
        """A point on the way, or a line along some of it."""
        nodes = [n for n in self.raw.ways[way].nodes if n in self.raw.places]
        first = self.dice.randrange(max(1, len(nodes) - 1))
        part = nodes[first:first + LINE_NODES]
        places = [[round(degrees, 7) for degrees in self.raw.places[n][::-1]] for n in part]
        if self.dice.random() < 0.4 or len(places) < 2:
            at = [sum(place[k] for place in places[:2]) / len(places[:2]) for k in (0, 1)]
            return {"type": "Point", "coordinates": at}
        return {"type": "LineString", "coordinates": places}
