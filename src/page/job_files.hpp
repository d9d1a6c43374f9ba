// What a job wrote besides loops: read from its folder, where the command was told to put it.
//
//   day     a day's sheet, JSON (DEVELOPERS.md, THE PAGE)
//   wish    the words of a wish file: {"words": [["want", "zebra=2"], …]}
//   paper   a PDF
#pragma once

#include <filesystem>
#include <optional>
#include <string_view>

#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

/// Where a command is told to write each.
std::filesystem::path day_file(const std::filesystem::path& folder);
std::filesystem::path wish_file(const std::filesystem::path& folder);
std::filesystem::path paper_file(const std::filesystem::path& folder);

/// None when there is no such thing of jobs; 404 when this one didn't write it.
std::optional<Reply> file_of(const JobState& job, std::string_view what);

}  // namespace loopwright::page
