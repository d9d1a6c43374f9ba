// What was found in a drawn town, as the answer that is written and proved.
#pragma once

#include <utility>

#include "loopwright/find/find.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::test {

inline wish::Answer answer_of(const road::Roads& roads, const wish::Wish& wish,
                              find::FindResult found) {
  wish::Answer answer;
  answer.area = {"drawn.area", roads.info().id, roads.info().region.code, "left", "", ""};
  answer.wish = wish;
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  answer.fewer_because = std::move(found.fewer_because);
  return answer;
}

}  // namespace loopwright::test
