"""Falsehoods about independent driving and variants."""
import copy

from asked import hardest_driven
from falsehood import plants


# --- independent driving ----------------------------------------------------------------------------------

def own_way(w):
    return w.loop["independent"][0]


@plants("wish: independent", "independent")
def another_stretch(w):
    """independent driving of other minutes"""
    w.answer["wish"]["independent_minutes"] += 1


@plants("met", "independent")
def too_short_a_stretch(w):
    """independent driving that is too short, and nothing says so"""
    own_way(w)["last"] = own_way(w)["first"]
    own_way(w)["directions"] = []


@plants("independent: one", "independent")
def two_stretches(w):
    """two stretches of it"""
    w.loop["independent"].append(copy.deepcopy(own_way(w)))


@plants("independent: place", "independent")
def ends_on_a_ring(w):
    """a stretch of it that begins on a roundabout"""
    own_way(w)["first"] = next(i for i, s in enumerate(w.stretches) if "junction" in w.tags(s))


@plants("independent: directions", "independent")
def many_directions(w):
    """more directions than a learner can keep"""
    own_way(w).update(follow=None, directions=["turn left into Nowhere Lane"] * 4)


@plants("independent: directions", "independent")
def mumbled(w):
    """a direction nobody would understand"""
    own_way(w).update(follow=None, directions=["by the pub, you know"])


@plants("independent: ways", "independent")
def turned_the_other_way(w):
    """a direction into a street that isn't driven"""
    own_way(w).update(follow=None, directions=["turn left into Nowhere Lane"])


@plants("independent: ways", "independent")
def left_untold(w):
    """corners and roundabouts that nothing is told of"""
    own_way(w).update(follow=None, directions=[], first=1, last=len(w.stretches) - 2)
    inside = {i for row in w.passes for i in range(row["first"] + 1, row["last"])}
    own_way(w)["first"] = next(i for i in range(1, len(w.stretches)) if i not in inside and "junction" not in
                               w.tags(w.stretches[i]))
    own_way(w)["last"] = next(i for i in range(len(w.stretches) - 2, 0, -1) if i not in inside
                              and "junction" not in w.tags(w.stretches[i]))


@plants("independent: signed", "independent")
def signed_nowhere(w):
    """a place that nothing is signed to"""
    own_way(w).update(follow="Atlantis", directions=[])


# --- variants ---------------------------------------------------------------------------------------------

def variant(w, name):
    return next(loop for loop in w.answer["loops"] if loop.get("variant") == name)


@plants("variants", "independent")
def variants_swapped(w):
    """the harder variant before the easier one"""
    w.answer["loops"].reverse()


@plants("variants", "independent")
def variants_unasked(w):
    """variants that nobody asked for"""
    w.words.remove("--variants")


@plants("variant: hardness", "independent")
def not_easier(w):
    """an easier variant with a pass as hard as the hardest"""
    row = variant(w, "easier")["passes"][0]
    row["hardness"] = hardest_driven(w.loop)[0]


@plants("hardness", "independent")
def easier_and_hard(w):
    """an easier variant harder than its wish allows"""
    variant(w, "easier")["passes"][0]["hardness"] = 5


@plants("variant: searched", "independent")
def a_sure_variant(w):
    """a variant told to be the best there is"""
    variant(w, "easier")["certificate"].update(state="best possible")


@plants("loops", "independent")
def a_loop_too_few(w):
    """fewer loops than asked, and nothing says why"""
    w.say("--alternatives", "3")
    w.answer["fewer_because"] = None
