// Round outlines, and the things that people go by: churches, inns, schools.
#pragma once

#include <vector>

#include "county/drawing.hpp"
#include "county/grow.hpp"
#include "county/grow_ground.hpp"

namespace loopwright::county {

/// About a circle of 18 corners; each as far out as the radius, give or take that share of it.
std::vector<Spot> round_outline(Spot middle, double radius_m, double uneven, Dice& dice);
/// The node that names a settlement, unless the plan has put it.
void put_place(Drawing& county, const char* kind, const Settlement& settlement);
Tags church_tags(const Drawing& county, Dice& dice);
Tags inn_tags(const Drawing& county, Dice& dice);

/// A school's grounds beside a street or minor road within the outline, where there is room; false
/// when a fair number of tries finds none.
bool put_school(Ground& ground, const std::vector<Spot>& outline, Dice& dice);

}  // namespace loopwright::county
