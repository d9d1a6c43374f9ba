// What fuzzers of readers share: a file to be read, a reading that may be refused, and a check that
// ends the run.
//
//   require(!refused([&] { open_area(scratch_file("town.area", bytes)); }));
//
// Rules: a refusal is one of ours (base/error.hpp) and says something; anything else that is thrown
// ends the run, as it would end a lesson's planning.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "loopwright/base/error.hpp"

namespace loopwright::fuzz {

/// Ends the run, so that libFuzzer keeps the input.
void require(bool holds);

/// Requires the text of a refusal to be something, in bounds of what a person reads.
void check_refusal(std::string_view text);

/// True when `act` refused its input.
template <class Act>
bool refused(Act act) {
  try {
    act();
  } catch (const Error& error) {
    check_refusal(error.what());
    return true;
  }
  return false;
}

/// A path in this run's own folder (under TMPDIR), which goes away at the end.
std::filesystem::path scratch_path(std::string_view name);

/// Writes bytes there and returns the path.
std::filesystem::path scratch_file(std::string_view name, std::string_view bytes);

}  // namespace loopwright::fuzz
