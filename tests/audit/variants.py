"""The easier and the harder variant of the first loop. DEVELOPERS.md, Variants.

What each must meet is checked like any loop, against the wish of the variant (asked.wish_of).
"""
from asked import hardest_driven

ORDER = ("easier", "harder")


def check_variants(tally, wish, answer):
    loops = answer["loops"]
    told = [loop["variant"] for loop in loops if "variant" in loop]
    plain = len(loops) - len(told)
    tally.check("variants", told == [name for name in ORDER if name in told] and (wish.variants or not told)
                and (not told or plain) and all("variant" in loop for loop in loops[plain:]), told)
    tally.check("loops", plain <= wish.alternatives and (
        plain == wish.alternatives or bool(answer["shortfall"] or answer["fewer_because"])),
        f"{plain} of {wish.alternatives}, and nothing says why")
    if not told or "variant" in loops[0]:
        return
    shortfall = answer["shortfall"] or {}
    tally.check("variant: of a loop as wished", not shortfall.get("missing") and not shortfall.get("stops"))
    first = hardest_driven(loops[0])
    for loop in loops[plain:]:
        own, certificate = hardest_driven(loop), loop["certificate"]
        tally.check("variant: hardness", own > first if loop["variant"] == "harder" else own[0] < first[0],
                    loop["variant"], own, "loop 1 has", first)
        tally.check("variant: searched", (certificate["state"], certificate["bound"]) == ("searched", None),
                    loop["variant"], certificate)
