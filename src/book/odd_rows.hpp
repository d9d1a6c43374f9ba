// Rows that all members see, and that somebody wrote by SQL before there was a rule against it.
#pragma once

#include <string>
#include <vector>

#include "book/server_link.hpp"

namespace loopwright::book {

/// Has the server look through them once, by the owner, in a transaction: from then on it warrants that there are none. What it
/// finds is told, a line each, and passed over by whoever reads; it is looked for again the next time.
std::vector<std::string> odd_rows(ServerLink& link);

}  // namespace loopwright::book
