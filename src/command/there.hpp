// What a lesson from a pupil's door can have, for the proposals of room book.
//
//   const auto there = practices_there(ground, wish, 19);   record.there = &there;
#pragma once

#include <set>

#include "command/ground.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// Each kind by each movement, and without one, that is within so many likely minutes of the wish's home and can be come
/// back from; special forms count for what they are a form of. Rules: the wish's home, start and level are filled in; what
/// it avoids is none of it.
std::set<book::Practice> practices_there(Ground& ground, const wish::Wish& wish,
                                         int within_minutes);

}  // namespace loopwright::command
