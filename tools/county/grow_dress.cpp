#include "county/grow_dress.hpp"

#include "county/grow.hpp"

namespace loopwright::county {

void dress_streets(Drawing& county, Dice& dice) {
  clear_junctions(county);
  name_streets(county, dice);
  make_one_way(county, dice);
  furnish_streets(county, dice);
  number_houses(county, dice);
  cut_streets(county, dice);
}

}  // namespace loopwright::county
