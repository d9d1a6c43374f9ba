"""Why the program may leave out what a tag says: rules with a source, each checked on the raw tags.

A reason is a text and a test of one claim; it holds for a claim when it holds for all its objects.
"""
LESS_M = 100  # DEVELOPERS.md, places: a run counts from 100 m on

ANY_LENGTH = {"bus-lane", "school", "brow", "tram"}  # the kinds table: met in a moment
RUNS = {"twenty-zone", "twenty-limit", "country-road", "motorway", "dual-carriageway", "one-way",
        "bus-lane", "cycle-lane", "narrow-road", "meeting-traffic", "tram", "school",
        "downhill", "brow", "independent-stretch"}
BESIDE = {"bus-stop", "bay-park"}
FOLLOWED_M = 1000  # the kinds table: a kilometre signed to one place


class LeftOut:
    def __init__(self, reader):
        self.r = reader

    def ways_of(self, name):
        """The roads an object is, or lies on."""
        what, number = name.split("/")
        number = int(number)
        return {number} & self.r.roads if what == "way" else self.r.ways_at.get(number, set())

    def off_road(self, name):
        return not self.ways_of(name)

    def on_service(self, name):
        return all(self.r.tags(w)["highway"] == "service" for w in self.ways_of(name))

    def not_open(self, name):
        return not any(self.r.open_ways(w) for w in self.ways_of(name))

    def cut_off(self, name):
        what, number = name.split("/")
        if what == "node":
            return not self.r.is_driven_over(int(number))
        return not self.r.is_driven(int(number))

    def reasons(self, kind):
        if kind in BESIDE:
            return
        yield "on no road a car uses (Key:highway, Key:service)", self.off_road
        yield "not open to a learner, or shut at hours (Key:access)", self.not_open
        yield "can't be driven into and out of (DEVELOPERS.md, roads)", self.cut_off

    def shortness(self, kind, groups):
        """Of runs, those that are too short; groups that are left out anyhow are no part of one."""
        if kind not in RUNS - ANY_LENGTH:
            return []
        least = FOLLOWED_M if kind == "independent-stretch" else LESS_M
        ways = {w for group in groups for name in group for w in self.ways_of(name)}
        short = {w for run, length in self.r.connected(ways) if length < least for w in run}
        return [(f"a run shorter than {least} m (DEVELOPERS.md, places)",
                 lambda name: bool(self.ways_of(name)) and self.ways_of(name) <= short)]
