#include "page/recorded.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "loopwright/base/text.hpp"
#include "loopwright/book/pupil.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

// What file/load_text.hpp reads at most.
constexpr std::uint64_t most_recording_bytes = std::uint64_t{256} << 20U;
// Jobs are forgotten sooner (jobs.cpp).
constexpr std::size_t most_drives = 100;

bool is_number(std::string_view text) {
  return std::ranges::all_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

/// Why a drive of that can't be told; none when it can.
std::optional<Reply> refusal_of(const Desk& desk, const Address& address) {
  if (desk.book.empty())
    return trouble(409, "drives are logged in a book: open the page with --book FILE");
  if (!book::is_code(word(address, "code")))
    return trouble(400, "code: of a pupil, up to 12 letters and digits");
  if (const std::string lesson = word(address, "lesson"); !is_number(lesson) || lesson.size() > 6)
    return trouble(400, "lesson: its number in the book");
  return std::nullopt;
}

}  // namespace

Taken Recorded::intake(const Request& head) {
  const std::optional<Address> address = address_of(head.target);
  if (!address || address->path != "/recorded" || head.method != Method::post) return {};
  if (auto refused = refusal_of(desk_, *address)) return std::move(*refused);
  return Intake{jobs_.new_file(), most_recording_bytes};
}

Words Recorded::words_of(const Drive& drive, const std::string& folder) const {
  Words words{"lesson",   "trace",
              drive.code, folder + "/" + drive.file,
              "--book",   desk_.book.string(),
              "--area",   desk_.area.string()};
  std::error_code ignored;
  if (!desk_.notes.empty() && fs::exists(desk_.notes, ignored))
    words.insert(words.end(), {"--notes", desk_.notes.string()});
  if (!drive.lesson.empty()) words.insert(words.end(), {"--lesson", drive.lesson});
  return words;
}

Reply Recorded::begun(const std::optional<std::string>& job, const Drive& drive) {
  if (!job) return trouble(503, "too much at once; wait for it");
  const std::lock_guard lock(mutex_);
  drives_[*job] = drive;
  if (drives_.size() > most_drives)
    drives_.erase(std::ranges::min_element(
        drives_, {}, [](const auto& each) { return read_int64(each.first).value_or(0); }));
  return told({{"job", *job}});
}

Reply Recorded::tell(const Request& request, const Address& address) {
  if (auto refused = refusal_of(desk_, address)) return std::move(*refused);
  if (request.file.empty()) return trouble(400, "there is nothing in it");
  const Drive drive{word(address, "code"), word(address, "lesson"),
                    plain_file_name(word(address, "name"), "drive.gpx")};
  return begun(jobs_.add([&](const fs::path& folder) {
    fs::rename(request.file, folder / drive.file);
    Words words = words_of(drive, folder.string());
    words.emplace_back("--only-tell");
    return words;
  }),
               drive);
}

Reply Recorded::log(const std::string& job, const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object() || !said.contains("line") || !said["line"].is_string())
    return trouble(400, "line: what is said of it besides, or nothing; keep: true or false");
  const std::string line(trim(said["line"].get_ref<const std::string&>()));
  if (line.starts_with('-')) return trouble(400, "a line begins with what was practised");
  const bool keep = said.contains("keep") && said["keep"] == true;
  std::optional<Drive> drive;
  {
    const std::lock_guard lock(mutex_);
    if (const auto known = drives_.find(job); known != drives_.end()) drive = known->second;
  }
  const std::optional<JobState> state = jobs_.state(job);
  std::error_code ignored;
  if (!drive || !state || !fs::exists(state->folder / drive->file, ignored))
    return trouble(404, "that drive isn't here any more: load it again");
  if (state->stage == Stage::waiting || state->stage == Stage::working)
    return trouble(409, "it is still being read");
  return begun(jobs_.add([&](const fs::path& folder) {
    fs::rename(state->folder / drive->file, folder / drive->file);
    Words words = words_of(*drive, folder.string());
    if (!line.empty()) words.insert(words.begin() + 4, line);
    if (keep) words.emplace_back("--keep");
    return words;
  }),
               *drive);
}

Reply Recorded::answer(const Request& request, const Address& address) {
  if (request.method != Method::post) return not_so("POST");
  const auto parts = split(std::string_view(address.path).substr(1), '/');
  if (parts.size() == 1) return tell(request, address);
  if (parts.size() == 2) return log(std::string(parts[1]), request.body);
  return trouble(404, "there is no such thing of a recorded drive");
}

}  // namespace loopwright::page
