#include "page/job_files.hpp"

#include <nlohmann/json.hpp>
#include <string>

#include "loopwright/base/text.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;

/// A wish file's lines, a word and what it says.
Reply words_in(const std::string& text) {
  nlohmann::json words = nlohmann::json::array();
  for (const std::string_view whole : split(text, '\n')) {
    const std::string_view line = trim(whole);
    if (line.empty() || line.front() == '#') continue;
    const std::size_t blank = std::min(line.find(' '), line.size());
    words.push_back({line.substr(0, blank), trim(line.substr(blank))});
  }
  return told({{"words", std::move(words)}});
}

}  // namespace

fs::path day_file(const fs::path& folder) {
  return folder / "day.json";
}
fs::path wish_file(const fs::path& folder) {
  return folder / "wish";
}
fs::path paper_file(const fs::path& folder) {
  return folder / "paper.pdf";
}

std::optional<Reply> file_of(const JobState& job, std::string_view what) {
  const fs::path file = what == "day"     ? day_file(job.folder)
                        : what == "wish"  ? wish_file(job.folder)
                        : what == "paper" ? paper_file(job.folder)
                                          : fs::path();
  if (file.empty()) return std::nullopt;
  if (!fs::exists(file)) return trouble(404, "this job wrote no such thing");
  if (what == "wish") return words_in(bytes_of(file));
  if (what == "day") return json(bytes_of(file));
  return paper(bytes_of(file), "lessons");
}

}  // namespace loopwright::page
