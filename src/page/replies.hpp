// Small pieces that replies of the page are put together from.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <vector>

#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

/// As a body; bytes that are no UTF-8 are replaced.
Reply told(const nlohmann::json& body);

/// What the address says after the '?'; empty when it doesn't.
std::string word(const Address& address, const std::string& name);

/// A name to write a sent file under: the person's own when it is plain (letters, digits, '.', '_', '-', 100 at most), so that
/// a command's complaint names their file; else the other.
std::string plain_file_name(const std::string& name, const std::string& other);

/// The line that a command complained in, without the program's name before it.
std::string complaint(const JobState& state);

/// What a command that did its work told besides, a line each: notes that change nothing, a plan it can't compare with.
std::vector<std::string> warnings(const JobState& state);

}  // namespace loopwright::page
