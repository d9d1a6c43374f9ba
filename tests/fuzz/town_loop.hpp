// A loop file made in the fuzzers' town, for fuzzers of what reads loop files.
#pragma once

#include <filesystem>

namespace loopwright::fuzz {

/// The file of one true loop (card_answer), in the run's own folder.
const std::filesystem::path& town_loop();

}  // namespace loopwright::fuzz
