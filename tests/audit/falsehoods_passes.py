"""Falsehoods about passes and bus lanes."""
import copy

from falsehood import plants
from rings import FAMILY

JUNCTIONS = ("emerge", "turn-off")


def a_ring(w):
    return w.a_pass(lambda row: row["kind"] in FAMILY and row["movement"] in ("left", "right")
                    and row["exit"] is not None and row["first"] > 3)


@plants("pass: of its kind")
def moved_away(w):
    """a roundabout moved to another place"""
    row = a_ring(w)
    step = next(k for k in range(4, 40) if not any(
        "junction" in w.tags(w.stretches[i + k]) for i in range(row["first"], row["last"] + 1)))
    row["first"], row["last"] = row["first"] + step, row["last"] + step


@plants("pass: of its kind")
def widened(w):
    """a roundabout that begins a stretch early"""
    row = a_ring(w)
    row["first"] -= 1


@plants("pass: tight")
def cut_short(w):
    """a roundabout that ends on its ring"""
    row = w.a_pass(lambda p: p["kind"] in FAMILY and p["last"] - p["first"] > 2)
    row["last"] -= 1


@plants("pass: movement")
def ring_the_other_way(w):
    """left told of a roundabout that is left by a road to the right"""
    row = w.a_pass(lambda p: p["kind"] in FAMILY and p["movement"] == "right")
    row["movement"] = "left"


@plants("pass: movement")
def all_round(w):
    """all the way round told of a roundabout left by the first exit"""
    row = w.a_pass(lambda p: p["kind"] in FAMILY and p["movement"] == "left")
    row["movement"] = "round"


@plants("pass: movement")
def other_side(w):
    """a turn to the other side"""
    row = w.a_pass(lambda p: p["kind"] in JUNCTIONS and p["movement"] == "left")
    row["movement"] = "right"


@plants("pass: movement")
def ahead_at_lights(w):
    """the other side told at lights"""
    row = w.a_pass(lambda p: p["kind"] in ("signals", "crossroads") and p["movement"] in ("left", "right"))
    row["movement"] = {"left": "right", "right": "left"}[row["movement"]]


@plants("pass: exit")
def next_exit(w):
    """the next exit"""
    a_ring(w)["exit"] += 1


@plants("pass: most special kind")
def another_kind_of_ring(w):
    """lights told of a roundabout without"""
    w.a_pass(lambda p: p["kind"] == "roundabout")["kind"] = "signal-roundabout"


@plants("pass: distinct")
def told_twice(w):
    """a pass told twice"""
    w.passes.append(copy.deepcopy(w.passes[3]))


@plants("pass: place")
def out_of_the_loop(w):
    """a pass behind the end of the loop"""
    w.passes[-1]["last"] = len(w.stretches) + 4


@plants("pass: kind")
def unknown_kind(w):
    """a kind nobody knows"""
    w.passes[3]["kind"] = "flyover"


@plants("pass: source")
def no_such_source(w):
    """an object the map doesn't have"""
    w.passes[3]["source"]["id"] = 1


@plants("pass: tag")
def another_tag(w):
    """a tag the object doesn't bear"""
    row = w.a_pass(lambda p: p["confidence"] == "certain" and "=" in p["source"]["tag"])
    row["source"]["tag"] = "surface=cobblestone"


@plants("pass: of its kind")
def a_zebra_more(w):
    """a zebra where there is none"""
    row = copy.deepcopy(w.a_pass(lambda p: p["kind"] in JUNCTIONS))
    row.update(kind="zebra", movement=None, confidence="inferred")
    w.passes.append(row)


@plants("pass: of its kind")
def lights_more(w):
    """lights where there are none"""
    row = copy.deepcopy(w.a_pass(lambda p: p["kind"] in JUNCTIONS and not any(
        w.ground.node(n).get("highway") for i in range(max(0, p["first"] - 3), p["last"] + 3)
        for n in w.ground.line(w.stretches[i]["way"]))))
    row.update(kind="signals", confidence="inferred")
    w.passes.append(row)


@plants("pass: of its kind")
def a_crossroads_of_three(w):
    """a crossroads of three roads"""
    w.a_pass(lambda p: p["kind"] in JUNCTIONS)["kind"] = "crossroads"


@plants("pass: of its kind")
def a_zone_too_long(w):
    """a 20 zone that goes on where it has ended"""
    row = w.a_pass(lambda p: p["kind"] == "twenty-zone" and p["last"] + 6 < len(w.stretches))
    row["last"] = next(i for i in range(row["last"], len(w.stretches))
                       if w.tags(w.stretches[i]).get("maxspeed") not in ("20 mph", None))


@plants("pass: of its kind")
def one_way_both_ways(w):
    """one-way told of a street with traffic both ways"""
    row = copy.deepcopy(w.a_pass(lambda p: p["kind"] in JUNCTIONS and len(
        w.ground.directions(w.stretches[p["first"]]["way"])) == 2))
    row.update(kind="one-way", movement=None, confidence="inferred")
    w.passes.append(row)


@plants("pass: of its kind")
def no_change(w):
    """a change of limit where it stays the same"""
    i = next(i for i, (a, b) in enumerate(zip(w.stretches, w.stretches[1:]))
             if a["limit"] == b["limit"])
    w.passes.append({**copy.deepcopy(w.passes[3]), "kind": "limit-change", "movement": None,
                     "first": i, "last": i + 1, "confidence": "inferred"})


def forget(kind, claim):
    """A pass of the kind left out, to be found by its claim."""
    def spoil(w):
        row = w.a_pass(lambda p: p["kind"] in (FAMILY if kind == "roundabout" else (kind,)))
        w.passes.remove(row)
    spoil.__doc__ = f"a {kind} driven and left out"
    plants(claim)(spoil)


for _kind in ("roundabout", "mini-roundabout", "zebra", "level-crossing", "one-way", "twenty-zone",
              "limit-change"):
    forget(_kind, "none missing: " + _kind)


def forget_all(kind):
    """All passes of a kind left out: some of them no tag leaves in doubt."""
    def spoil(w):
        gone = [p for p in w.passes if p["kind"] == kind]
        w.loop["passes"] = [p for p in w.passes if p["kind"] != kind]
        next(iter(gone))
    spoil.__doc__ = f"every {kind} left out"
    plants("none missing: " + kind)(spoil)


for _kind in ("emerge", "turn-off", "crossroads"):
    forget_all(_kind)


def a_lane(w):
    return next(row for row in w.loop["bus_lanes"] if row["hours"] and "; " not in row["hours"]
                and row["verdict"] in ("usable", "in force"))


@plants("bus lane: verdict")
def another_verdict(w):
    """a bus lane's verdict turned round"""
    row = a_lane(w)
    row["verdict"] = {"usable": "in force", "in force": "usable"}[row["verdict"]]


@plants("bus lane: verdict")
def doubt_without_reason(w):
    """doubt about a bus lane whose hours are plain"""
    a_lane(w)["verdict"] = "check the plate"


@plants("bus lane: hours")
def another_plate(w):
    """hours of a bus lane that nobody mapped"""
    a_lane(w)["hours"] = "Mo-Su 08:00-09:00"


@plants("bus lane: arrive")
def another_time(w):
    """a bus lane passed half an hour later"""
    a_lane(w)["arrive"] = ["09:58", "09:59"]


@plants("bus lane: place")
def a_lane_nowhere(w):
    """a bus lane behind the end"""
    a_lane(w)["last"] = len(w.stretches) + 1


@plants("bus lane: of the pass")
def a_pass_of_another_verdict(w):
    """a pass of a bus lane with a verdict none along it has"""
    row = w.a_pass(lambda p: p["kind"] == "bus-lane" and p["verdict"] == "in force")
    row["verdict"] = "usable"
