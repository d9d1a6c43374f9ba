// Small pieces that replies of the page are put together from.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

/// As a body; bytes that are no UTF-8 are replaced.
Reply told(const nlohmann::json& body);

/// What the address says after the '?'; empty when it doesn't.
std::string word(const Address& address, const std::string& name);

/// The line that a command complained in, without the program's name before it.
std::string complaint(const JobState& state);

}  // namespace loopwright::page
