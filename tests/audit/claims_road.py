"""Does each stretch lie on its way, joined to the next, open to a learner's car when it is driven?"""
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
    for i, node in turns_round(ground, drive):
        tally.check("turning round", allowed == "anywhere" or (
            allowed == "street ends" and drive.tags(i).get("highway") in STREETS), f"stretch {i} turns round at node/{node}, allowed: {allowed}")
        tally.check("turning round", ground.is_dead_end(drive.nodes[i][-2], node)
                    or ground.node(node).get("highway") == "mini_roundabout", f"stretch {i} turns round at node/{node}")
