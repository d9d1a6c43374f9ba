"""Counts the claims that were checked, by kind, and keeps those that are false."""
from collections import Counter


class Tally:
    """Of one run: claims and differences by kind, each difference with a line that says where."""

    def __init__(self):
        self.claims, self.differences = Counter(), []
        self.where = ""  # what is being read: goes in front of each difference

    def check(self, claim, holds, *told):
        """One claim looked at. `told` is joined into a line when it doesn't hold."""
        self.claims[claim] += 1
        if not holds:
            self.differences.append((claim, self.where + " ".join(map(str, told))))
        return holds

    def by_claim(self):
        """How many differences each kind of claim has."""
        return Counter(claim for claim, _ in self.differences)


def lines(differences):
    """A line for each difference."""
    yield from (f"{claim}: {line}" for claim, line in differences)


def told(tally, loops):
    """Lines for people: differences by claim, and the sums."""
    yield from (f"differences, {claim}: {count} of {tally.claims[claim]}"
                for claim, count in sorted(tally.by_claim().items()))
    yield (f"{loops} loops, {sum(tally.claims.values())} claims of {len(tally.claims)} kinds checked, "
           f"{len(tally.differences)} differences")
