// Chances of what is wanted that a search doesn't use, and why: for the certificate.
//
//   loop.certificate.reasons = left_out_of(hunt);
//
// Rules: each chance once, under the first reason that fits: driven to, but not through it and home in the
// minutes; too hard; avoided; kept off; shut at that time; worn out by the ledger; only behind such roads. What
// can't be come to in the minutes at all isn't counted, so that the cost grows with what is reached.
#pragma once

#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

std::vector<wish::LeftOut> left_out_of(const Hunt& hunt);

}  // namespace loopwright::find
