"""Falsehoods about the road driven, its lengths and its times."""
from falsehood import plants


@plants("way")
def no_such_way(w):
    """a way the map doesn't have"""
    w.stretches[5]["way"] = 1


@plants("way")
def a_footpath(w):
    """a way that is no road"""
    w.stretches[5]["way"] = min(n for n, way in w.ground.map.ways.items() if n not in w.ground.roads)


@plants("nodes")
def another_node(w):
    """a node that isn't at its place in the way"""
    w.stretches[5]["from"] += 1


@plants("nodes")
def another_place(w):
    """a place in the way that is another node's"""
    w.stretches[5]["to_index"] += 1 if w.stretches[5]["direction"] == "along" else -1


@plants("direction")
def another_direction(w):
    """along told where it is against"""
    one = w.stretches[5]
    one["direction"] = {"along": "against", "against": "along"}[one["direction"]]


@plants("joined")
def a_gap(w):
    """a stretch left out"""
    del w.stretches[5]


@plants("joined")
def swapped(w):
    """two stretches in each other's place"""
    w.stretches[5], w.stretches[6] = w.stretches[6], w.stretches[5]


def reverse(one):
    for a, b in (("from", "to"), ("from_index", "to_index")):
        one[a], one[b] = one[b], one[a]
    one["direction"] = {"along": "against", "against": "along"}[one["direction"]]


@plants("one-way")
def against_one_way(w):
    """a one-way street driven the other way"""
    reverse(w.a_stretch(lambda s: len(w.ground.directions(s["way"])) == 1))


@plants("access")
def private_road(w):
    """a private road"""
    w.drive_along(w.a_way(lambda t: t.get("access") == "private"))


@plants("access")
def no_motor_vehicles(w):
    """a road without motor vehicles"""
    w.drive_along(w.a_way(lambda t: t.get("motor_vehicle") == "no"))


@plants("access")
def motorway(w):
    """a motorway, for a learner without leave"""
    w.drive_along(w.a_way(lambda t: t["highway"] == "motorway"))


@plants("access")
def shut_now(w):
    """a street that is shut to cars at that hour"""
    way = w.a_way(lambda t: "08:15-09:15" in t.get("motor_vehicle:conditional", ""))
    at = w.drive_along(way)
    eight = 35 * 60  # the loop starts at ten past eight: a quarter to nine
    w.stretches[at]["arrive_s"] = {"low": eight, "likely": eight, "high": eight}
    w.stretches[at + 1]["arrive_s"] = {"low": eight, "likely": eight, "high": eight}


@plants("barrier")
def through_a_bollard(w):
    """a road with a bollard in it"""
    node = min(n for n in w.ground.ways_at if w.ground.is_wall(n)
               and any(n in w.ground.line(way)[1:-1] for way in w.ground.ways_at[n]))
    w.drive_along(min(way for way in w.ground.ways_at[node] if node in w.ground.line(way)[1:-1]))


@plants("turning round")
def back_in_the_road(w):
    """turning round where no road ends"""
    at = next(i for i, s in enumerate(w.stretches) if 5 < i < len(w.stretches) - 5 and len(
        w.ground.ways_at[s["to"]]) > 2 and w.ground.node(s["to"]).get("highway") != "mini_roundabout")
    again = dict(w.stretches[at])
    reverse(again)
    w.stretches.insert(at + 1, again)


@plants("turn")
def banned_turn(w):
    """a turn that a restriction forbids"""
    w.drive_ban(w.a_ban(lambda b: len(b.chain) == 1 and not b.only and b.hours is None))


@plants("turn")
def not_the_only_turn(w):
    """another turn than the only one allowed"""
    w.drive_ban(w.a_ban(lambda b: len(b.chain) == 1 and b.only and b.hours is None))


@plants("turn")
def banned_over_a_way(w):
    """a turn forbidden to who comes over another road"""
    w.drive_ban(w.a_ban(lambda b: len(b.chain) == 2 and not b.only))


@plants("turn")
def banned_now(w):
    """a turn that is forbidden at hours, at these hours"""
    at = w.drive_ban(w.a_ban(lambda b: b.hours is not None and len(b.chain) == 1 and not b.only))
    for k in range(3):
        w.stretches[at + k]["arrive_s"] = {"low": 1200, "likely": 1200, "high": 1200}


@plants("street")
def another_street(w):
    """a street of another name"""
    w.a_stretch(lambda s: s["street"])["street"] = "Nowhere Street"


@plants("limit")
def another_limit(w):
    """a limit ten higher than mapped"""
    w.a_stretch(lambda s: s["limit"]["confidence"] == "certain")["limit"]["value"] += 10


@plants("limit")
def another_unit(w):
    """a limit in another unit"""
    w.a_stretch(lambda s: s["limit"]["confidence"] == "certain")["limit"]["unit"] = "km/h"


@plants("length")
def one_per_cent(w):
    """a stretch 1 % longer than it is"""
    w.a_stretch(w.is_long)["metres"] *= 1.01


@plants("length")
def part_beyond_its_stretch(w):
    """a part of a stretch that begins before it"""
    w.stretches[0]["partial_m"][0] = -5


@plants("length of all")
def whole_length(w):
    """a loop 3 % longer than it is"""
    w.loop["metres"] *= 1.03


@plants("driven twice")
def twice(w):
    """a hundred metres more driven twice"""
    w.loop["metres_twice"] += 100


@plants("first moment")
def starts_late(w):
    """a start that isn't at nought"""
    w.stretches[0]["arrive_s"]["likely"] = 3.0


@plants("speed")
def too_fast(w):
    """a stretch driven faster than its limit"""
    i = next(i for i, s in enumerate(w.stretches) if i > 3 and w.is_long(s))
    for moment in [s["arrive_s"] for s in w.stretches[i + 1:]]:
        for name in moment:
            moment[name] -= w.stretches[i]["metres"] * 0.05


@plants("order of times")
def backwards(w):
    """a stretch come to before the one before it"""
    w.stretches[8]["arrive_s"]["likely"] = w.stretches[4]["arrive_s"]["likely"]


@plants("order of times")
def low_above_likely(w):
    """a quickest time that is slower than the likely one"""
    w.stretches[8]["arrive_s"]["low"] += 600


@plants("spread")
def one_sided(w):
    """a spread that is wider on one side"""
    w.stretches[-3]["arrive_s"]["high"] += 60


@plants("spread grows")
def surer_later(w):
    """times that get surer on the way"""
    moment = w.stretches[-3]["arrive_s"]
    moment["low"] = moment["high"] = moment["likely"]


@plants("end time")
def ends_later(w):
    """an end five minutes after the sum of the times"""
    w.loop["end"] = w.loop["end"].replace(":", ":", 1)[:14] + "59:59" + w.loop["end"][19:]


@plants("end time")
def another_offset(w):
    """an end by summer time in winter"""
    w.loop["end"] = w.loop["end"][:19] + "+01:00"


@plants("start")
def starts_elsewhen(w):
    """a start of the loop that isn't the wish's"""
    w.loop["start"] = w.loop["start"].replace("T08", "T09")


@plants("minutes")
def too_long(w):
    """more minutes than asked for"""
    w.say("--minutes", "20")


@plants("minutes filled")
def too_short(w):
    """fewer minutes than asked for"""
    w.say("--minutes", "90")


@plants("turning round")
def a_circle(w):
    """a short stretch driven again at once"""
    at = next(i for i, s in enumerate(w.stretches) if i > 3 and s["metres"] < 50)
    w.stretches.insert(at, dict(w.stretches[at]))
