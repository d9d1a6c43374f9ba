// The town in which fuzzers read areas, notes and loop files: tests/card/card_town.hpp, built anew by
// each run, so that no seed grows old with the format of areas.
#pragma once

#include <filesystem>

#include "loopwright/road/roads.hpp"

namespace loopwright::fuzz {

/// Its roads, with an index of names.
road::Roads town_roads();

/// Its area file, in the run's own folder.
const std::filesystem::path& town_area();

}  // namespace loopwright::fuzz
