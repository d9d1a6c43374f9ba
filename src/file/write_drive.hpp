// What of a loop lies along the road, as JSON: its stretches, its places to pull up, its ways home.
#pragma once

#include "file/write_values.hpp"

namespace loopwright::file::values {

double seconds(double value);  ///< to a thousandth
double metres(double value);   ///< to a hundredth
Json range(const wish::Range& range);
Json stretch(const wish::LoopStretch& stretch);
Json pull_up(const wish::PullUp& place);
Json stop_after(const wish::StopAfter& after);
Json way_home(const wish::WayHome& way);
Json independent(const wish::IndependentStretch& stretch);

}  // namespace loopwright::file::values
