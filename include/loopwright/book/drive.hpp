// What a loop tells the book: its passes, the quiet streets it uses, and for how long it is on which sort of road
// and under which speed limit.
//
// Rules: the loop is resolved. Only what the learner drives counts (wish::Loop::practice). Streets near where the drive
// begins or ends are marked as such: they tell of the door.
#pragma once

#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::book {

std::vector<LessonPass> passes_of(const wish::Loop& loop);
/// Ascending; each stretch of street once.
std::vector<StreetDriven> streets_of(const road::Roads& roads, const wish::Wish& wish,
                                     const wish::Loop& loop);
/// "quiet", "town", "country", "dual carriageway", "motorway": likely minutes on each that there are any of.
std::vector<Plan::Road> roads_of(const road::Roads& roads, const wish::Loop& loop);
/// Likely minutes under each speed limit of the drive, ascending.
std::vector<Plan::Limit> limits_of(const wish::Loop& loop);

}  // namespace loopwright::book
