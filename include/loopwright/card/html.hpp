// The lesson as one HTML file to look at or to print from, with nothing to fetch.
#pragma once

#include <string>

#include "loopwright/card/card.hpp"

namespace loopwright::card {

/// Head, rows with their junctions drawn, sections, cautions. pupil: a code, may be empty.
std::string write_html(const Lesson& lesson, const std::string& pupil);

}  // namespace loopwright::card
