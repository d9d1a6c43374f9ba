// The manual's pages (man(7)): one for the program, one for each verb.
#pragma once

#include <span>
#include <string>
#include <utility>
#include <vector>

#include "loopwright/command/description.hpp"
#include "manual/readme.hpp"

namespace loopwright::manual {

/// What stands in the head and foot of every page.
struct Edition {
  std::string version;  ///< "0.1.0"
  std::string day;      ///< of the release, "2026-11-29"
};

/// Names of files, such as "loopwright-near.1", and their texts. brief: what the program is, without a stop.
std::vector<std::pair<std::string, std::string>> man_pages(
    std::span<const command::Description> verbs, const Readme& readme, const Edition& edition,
    const std::string& brief);

}  // namespace loopwright::manual
