"""Does a drive start and end at the doors asked for? DECISIONS.md, Place."""
from geo import along, metres

SNAP_M = 150  # DECISIONS.md: the nearest road a learner may use through, at most so far away
SEEN_M = 100  # roads are looked for so far and a little further
ROUNDING_M = 2  # of coordinates, of metres to the hundredth and of the ball against the ellipsoid


def point_of(drive, i, end):
    """Where the drive begins (end 0) or ends (end 1) on its stretch i."""
    part = drive.stretches[i].get("partial_m")
    nodes = drive.nodes[i]
    places = [drive.ground.at(n) for n in nodes]
    return places[-end] if part is None else along(places, part[end])


def nearest_in_use(ground, place):
    """Metres to the nearest street that can be driven into and out of; a service road is a door's only
    where no street is near (DEVELOPERS.md, Place)."""
    near = {True: [SNAP_M], False: []}
    for off, way, a, b in ground.steps_near(place):
        in_use = (a, b) in ground.joined or (b, a) in ground.joined
        if in_use and way not in ground.noted.shut_ways:
            near[ground.tags(way)["highway"] != "service"].append(off)
    return min(near[True])


def at_door(ground, tally, claim, point, door):
    """The point is as near to the door as any road in use, and not too far from it."""
    off = metres(point, door)
    best = nearest_in_use(ground, door)
    tally.check(claim, off <= SNAP_M + ROUNDING_M, f"{off:.1f} m from the door at {door}")
    tally.check(claim + " nearest", off <= best + ROUNDING_M or best > SEEN_M,
                f"{off:.1f} m from the door at {door}; a road in use is {best:.1f} m from it")


def check(ground, tally, drive, asked):
    at_door(ground, tally, "start", point_of(drive, 0, 0), asked.home)
    at_door(ground, tally, "end", point_of(drive, len(drive) - 1, 1), asked.end or asked.home)
    if asked.end is None:
        gap = metres(point_of(drive, 0, 0), point_of(drive, len(drive) - 1, 1))
        tally.check("back at the door", gap <= ROUNDING_M, f"ends {gap:.1f} m from where it starts")
