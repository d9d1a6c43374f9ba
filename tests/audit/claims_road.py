"""Does each stretch lie on its way, joined to the next, open to a learner's car when it is driven?"""
from second_reader import between, metres

# For the tags see ground.py. Names of streets: Key:name, Key:ref.


def lies_on_its_way(ground, tally, i, stretch):
    """Way, nodes, positions and direction agree with the map; without that nothing else is read."""
    way = ground.map.ways.get(stretch["way"])
    if not tally.check("way", way is not None and stretch["way"] in ground.roads,
                       f"stretch {i}: way/{stretch['way']} is no road of the map"):
        return False
    a, b = stretch["from_index"], stretch["to_index"]
    inside = 0 <= min(a, b) and max(a, b) < len(way.nodes) and a != b
    return tally.check(
        "nodes", inside and (way.nodes[a], way.nodes[b]) == (stretch["from"], stretch["to"])
        and all(n in ground.map.places for n in way.nodes[min(a, b):max(a, b) + 1]),
        f"stretch {i}: nodes {stretch['from']} to {stretch['to']} aren't at {a} and {b} of "
        f"way/{stretch['way']}") and tally.check(
        "direction", stretch["direction"] == ("along" if a < b else "against"),
        f"stretch {i}: from node {a} to {b} of way/{stretch['way']} isn't {stretch['direction']}")


def joins(tally, stretches):
    for i, (one, other) in enumerate(zip(stretches, stretches[1:])):
        tally.check("joined", one["to"] == other["from"],
                    f"stretch {i} ends at node {one['to']}, the next begins at {other['from']}")


def opens(ground, tally, drive):
    """Open in this direction all through the interval of passing."""
    for i in range(len(drive)):
        way, direction = drive.way(i), drive.direction(i)
        if not ground.has_hours(way) and ground.always_open(way, direction):
            tally.claims.update(("one-way", "access"))
            continue
        tally.check("one-way", direction in ground.directions_by_hour(way),
                    f"stretch {i}: way/{way} is one-way against it")
        tally.check("access", ground.may_drive(way, direction, drive.interval(i)),
                    f"stretch {i}: way/{way} isn't open {direction} at that time")


def barriers(ground, tally, drive):
    """No wall on the way, but where one turns round before it."""
    tally.claims["barrier"] += len(drive.steps)
    for (a, b, _, i), (_, c, _, _) in zip(drive.steps, drive.steps[1:]):
        if b in ground.walls and c != a:
            tally.check("barrier", False, f"stretch {i}: node/{b} is a barrier")


def is_street(ground, tally, i, stretch):
    """The street's name is the way's own, or its number."""
    tags = ground.tags(stretch["way"])
    own = tags.get("name", ""), tags.get("ref", "")
    tally.check("street", stretch["street"] in own,
                f"stretch {i}: way/{stretch['way']} is {own}, not {stretch['street']!r}")


# Round through a gap in the reservation, and in a circle inside one junction, nobody drives: both are turning the
# car round, which the Highway Code (200 to 203) makes a manoeuvre. The figures are DEVELOPERS.md's, but for the
# angle: headings are read over other lengths here, and only what is plainly back is told.
BACK_DEG, STRAIGHT_DEG, GAP_M, GAP_OF_ONE_NAME_M, CIRCLE_M = 150, 60, 40, 20, 60
ONE_WAY_CIRCLE_M = 120


def is_ring(tags):
    return tags.get("junction") in ("roundabout", "circular")


def one_road(one, other):
    """Of one class, and of one name or number."""
    same = [one.get(key) == other.get(key) for key in ("name", "ref")]
    named = any(s and one.get(key) for s, key in zip(same, ("name", "ref")))
    return one["highway"] == other["highway"] and (all(same) or named)


def had_a_choice(ground, drive, first, last):
    """Another road was open where the drive passed from stretch `first` to `last`."""
    for i in range(first, last):
        came, node, goes = drive.nodes[i][-2], drive.nodes[i][-1], drive.nodes[i + 1][1]
        if any(way_on in ground.open_ways(way) and line[1] not in (came, goes)
               for way, way_on, line in ground.arms_at(node)):
            return True
    return False


def ends_in_a_circle(ground, drive, first, last):
    """One-way and under its own name all along the road leads on from stretch `last` to where `first` begins, and
    elsewhere only out of the circle, to where it is open both ways: the end of a street, which is driven round."""
    def is_own(way, directions=1):
        return one_road(drive.tags(first), ground.tags(way)) and len(ground.open_ways(way)) == directions

    def leads_out(line):
        end = next((node for node in line[1:] if len(list(ground.arms_at(node))) > 2), line[-1])
        return any(is_own(way, 2) for way, _, _ in ground.arms_at(end)) and end

    goal, node, seen = drive.nodes[first][0], drive.nodes[last][-1], set()
    left_m = ONE_WAY_CIRCLE_M - drive.length(first) - drive.length(last)
    while left_m > 0 and node != goal and node not in seen:
        seen.add(node)
        on = [line for way, along, line in ground.arms_at(node) if is_own(way) and along in ground.open_ways(way)]
        if any(leads_out(line) == goal for line in on):
            return left_m > 0
        on = [line for line in on if not leads_out(line)]
        if len(on) != 1:
            return False
        left_m -= metres(ground.at(node), ground.at(on[0][1]))
        node = on[0][1]
    return node == goal


def is_half(ground, drive, i):
    return len(ground.open_ways(drive.way(i))) == 1 and not is_ring(drive.tags(i))


def comes_back(ground, drive, first):
    """The stretch on which a half of a road is driven back, right behind a gap; none."""
    gap_m = own_m = 0
    change = lambda i: abs(between(drive.heading_in(first), drive.heading_out(i)))
    for i in range(first + 1, len(drive)):
        own = one_road(drive.tags(first), drive.tags(i))
        half = own and is_half(ground, drive, i)
        if i > first + 1 and half and drive.way(i) != drive.way(first) and change(i) > BACK_DEG:
            short = gap_m <= (GAP_OF_ONE_NAME_M if own_m else GAP_M)
            return i if (short and had_a_choice(ground, drive, first, i)
                         and not ends_in_a_circle(ground, drive, first, i)) else None
        gap_m += drive.length(i)
        own_m += drive.length(i) if own else 0
        if gap_m > GAP_M or is_ring(drive.tags(i)) or (half and change(i) < STRAIGHT_DEG):
            return None
    return None


def drives_a_circle(ground, drive, i):
    """The same stretch was begun within 60 m before, or 120 m all one-way, by no roundabout."""
    far_m, within_m = 0, ONE_WAY_CIRCLE_M
    for before in range(i - 1, -1, -1):
        far_m += drive.length(before)
        if not is_half(ground, drive, before):
            within_m = CIRCLE_M
        if far_m > within_m or is_ring(drive.tags(before)) or drive.nodes[before][-2] == drive.nodes[before + 1][1]:
            return False
        if drive.nodes[before] == drive.nodes[i]:
            return True
    return False


def rounds(ground, tally, drive):
    """No way round inside a junction."""
    for i in range(len(drive)):
        back = comes_back(ground, drive, i) if is_half(ground, drive, i) else None
        tally.check("turning round", back is None, f"stretch {i}: turns round through a gap, back on stretch {back}")
        tally.check("turning round", not drives_a_circle(ground, drive, i), f"stretch {i} is driven again: a circle")


# A main road hardly ever ends: the extract does (DEVELOPERS.md, Turning the car round).
STREETS = ("unclassified", "residential", "living_street")


def turns_round(ground, drive):
    """(stretch, node) of each place at which the drive goes back the way it came."""
    for (a, b, _, i), (_, c, _, _) in zip(drive.steps, drive.steps[1:]):
        if c == a:
            yield i, b


def turning(ground, tally, drive, allowed):
    """Round only at a dead end, before a wall and at a mini-roundabout (DEVELOPERS.md, roads; U-turns have
    no default ban in the map: MAP-TAGS.md 1.6), and as the wish allows: "never", where a "street ends", or "anywhere"."""
    rounds(ground, tally, drive)
    for i, node in turns_round(ground, drive):
        tally.check("turning round", allowed == "anywhere" or (
            allowed == "street ends" and drive.tags(i).get("highway") in STREETS), f"stretch {i} turns round at node/{node}, allowed: {allowed}")
        tally.check("turning round", ground.is_dead_end(drive.nodes[i][-2], node)
                    or ground.node(node).get("highway") == "mini_roundabout", f"stretch {i} turns round at node/{node}")
