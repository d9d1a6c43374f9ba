// The loop file (JSON) in and out, and the build report.
//
// Rules: writing gives the same bytes for the same answer. Reading checks types and ranges and
// throws InputError with file, JSON pointer ("/loops/0/stretches/3/way") and what was expected;
// unknown keys are ignored. `Loop::…::stretch` is not filled: call wish::resolve.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "loopwright/base/region.hpp"
#include "loopwright/road/report.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::file {

/// Rows of each list of a wish: places to drive through, corners of an area, what is asked for …
inline constexpr std::size_t most_listed = 1000;

std::string write_answer(const wish::Answer& answer);
/// file_name is only used in messages.
wish::Answer read_answer(std::string_view text, std::string_view file_name);
/// Reads the file and parses it.
wish::Answer load_answer(const std::filesystem::path& path);

/// The report of a build as JSON: counts, every finding with the object that says so, what the map
/// tells of each sort of street, and oddities in the order found.
std::string write_report(const road::Roads& roads, const road::Report& report);

}  // namespace loopwright::file
