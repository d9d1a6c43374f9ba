// Method:
//   1. By the head alone: is it an extract by its name, is its region known, is there room on the disk.
//   2. Its bytes go to a file beside the area to be; `build` makes an area of it there.
//   3. Whoever asks next finds it over: a whole area is renamed, and the extract deleted.
#include "page/first_run.hpp"

#include <algorithm>
#include <array>
#include <fstream>
#include <nlohmann/json.hpp>

#include "loopwright/base/region.hpp"
#include "loopwright/base/text.hpp"
#include "page/assets.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

// Of one file: Great Britain as a whole had two gigabytes in 2026 (from memory); a lesson needs a county.
constexpr std::uint64_t most_extract_bytes = std::uint64_t{4} << 30U;
// Of the extract's size an area takes so much again (measured: Newport's of 2.5 MB 1.8 times).
constexpr std::uint64_t area_share = 2;

constexpr std::array<std::string_view, 5> endings{".osm.pbf", ".osm", ".osm.bz2", ".osm.gz",
                                                  ".opl"};

std::string_view ending_of(std::string_view name) {
  const auto known =
      std::ranges::find_if(endings, [&](std::string_view each) { return name.ends_with(each); });
  return known == endings.end() ? std::string_view() : *known;
}

std::string gigabytes(std::uint64_t bytes) {
  const std::uint64_t tenths = bytes * 10 >> 30U;
  return std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + " GB";
}

/// Why that can't be taken; none when it can.
std::optional<Reply> refusal_of(const Address& address) {
  const std::string name = word(address, "name");
  if (ending_of(name).empty())
    return trouble(415, "an extract's name ends in .osm.pbf, .osm, .osm.bz2, .osm.gz or .opl");
  if (!find_region(word(address, "region")))
    return trouble(400,
                   "region: GB-ENG, GB-WLS, GB-SCT, GB-NIR, IE, or the two letters of another "
                   "country (ISO 3166)");
  const std::string side = word(address, "side");
  if (!side.empty() && side != "left" && side != "right")
    return trouble(400, "side: left or right");
  return std::nullopt;
}

/// The last line that `build` wrote of how far it is: "37 reading roads".
struct Step {
  int percent = 0;
  std::string what;
};
Step step_in(const fs::path& file) {
  std::ifstream in(file);
  Step last;
  for (Step step; in >> step.percent && std::getline(in >> std::ws, step.what);) last = step;
  return last;
}

bool is_running(Stage stage) {
  return stage == Stage::waiting || stage == Stage::working;
}

constexpr std::string_view area_name = "built.area", progress_name = "progress";

fs::path folder_of(const fs::path& file) {
  return file.has_parent_path() ? file.parent_path() : fs::path(".");
}

}  // namespace

FirstRun::FirstRun(const Desk& desk)
    : desk_(desk), uploads_(folder_of(desk.area)), jobs_(desk.program, folder_of(desk.area)) {}

FirstRun::~FirstRun() {
  const std::lock_guard lock(mutex_);
  settle();
}

bool FirstRun::is_own(const std::string& path) {
  return path == "/build" || path == "/extract";
}

/// Once a build is over: the area gets its name, and all else goes. Gives the state it went by. Rules: the mutex is held.
std::optional<JobState> FirstRun::settle() {
  std::optional<JobState> state = job_ ? jobs_.state(*job_) : std::nullopt;
  if (settled_ || !state || is_running(state->stage)) return state;
  settled_ = true;
  if (state->stage == Stage::broken_off) {
    trouble_.clear();
  } else if (state->stage == Stage::over && state->code == 0) {
    std::error_code failure;
    fs::rename(state->folder / area_name, desk_.area, failure);
    built_ = !failure;
    if (failure) trouble_ = desk_.area.string() + ": can't be written (" + failure.message() + ")";
  } else {
    trouble_ = complaint(*state);
  }
  std::error_code ignored;
  fs::remove_all(state->folder, ignored);
  return state;
}

bool FirstRun::is_built() {
  const std::lock_guard lock(mutex_);
  settle();
  return built_;
}

void FirstRun::cannot_open(const std::string& line) {
  const std::lock_guard lock(mutex_);
  built_ = false;
  trouble_ = line;
}

Reply FirstRun::state() {
  const std::lock_guard lock(mutex_);
  // Asked once: a build that ends between two questions would be told as over, and not as what it came to.
  const std::optional<JobState> job = settle();
  const Step step = job ? step_in(job->folder / progress_name) : Step{};
  return told({{"area", desk_.area.string()},
               {"most_bytes", most_extract_bytes},
               {"endings", endings},
               {"stage", !job ? "none" : name(job->stage)},
               {"step", step.what},
               {"percent", step.percent},
               {"trouble", trouble_}});
}

std::optional<Reply> FirstRun::refuses(const Address& address, std::uint64_t length) {
  if (auto refused = refusal_of(address)) return refused;
  const std::lock_guard lock(mutex_);
  settle();
  if (built_ || !settled_) return trouble(409, "an area is being built already");
  if (length > most_extract_bytes)
    return trouble(413, "more than " + gigabytes(most_extract_bytes) + "; take a smaller extract");
  std::error_code failure;
  const fs::space_info room = fs::space(uploads_.path(), failure);
  if (!failure && room.available < length * (1 + area_share))
    return trouble(507, "the disk has " + gigabytes(room.available) +
                            " left, and this takes some " + gigabytes(length * (1 + area_share)) +
                            "; make room, or take a smaller extract");
  return std::nullopt;
}

Taken FirstRun::intake(const Request& head) {
  const std::optional<Address> address = address_of(head.target);
  if (!address || address->path != "/extract" || head.method != Method::post) return {};
  if (auto refused = refuses(*address, head.length.value_or(0))) return std::move(*refused);
  const std::lock_guard lock(mutex_);
  return Intake{uploads_.path() / std::to_string(++last_upload_), most_extract_bytes};
}

Reply FirstRun::build(const Request& request) {
  const std::optional<Address> address = address_of(request.target);
  if (auto refused = refusal_of(*address)) return std::move(*refused);
  if (request.file.empty()) return trouble(400, "there is nothing in it");
  const std::lock_guard lock(mutex_);
  settle();
  const auto number = read_int64(request.file.filename().string());
  if (number && static_cast<std::uint64_t>(*number) <= broken_off_)
    return trouble(409, "broken off while it was sent");
  if (built_ || !settled_) return trouble(409, "an area is being built already");
  const std::string name = word(*address, "name");
  const std::string written = plain_file_name(name, "extract" + std::string(ending_of(name)));
  const auto id = jobs_.add([&](const fs::path& folder) {
    const fs::path extract = folder / written;
    fs::rename(request.file, extract);
    Words words{
        "build",    extract.string(),         "-o",         (folder / area_name).string(),
        "--region", word(*address, "region"), "--progress", (folder / progress_name).string()};
    if (const std::string side = word(*address, "side"); !side.empty())
      words.insert(words.end(), {"--side", side});
    return words;
  });
  if (!id) return trouble(503, "too much at once; wait for it");
  job_ = id;
  settled_ = false;
  trouble_.clear();
  return told({{"job", *id}});
}

Reply FirstRun::answer(const Request& request) {
  const std::optional<Address> address = address_of(request.target);
  if (!address) return trouble(400, "no address of this page");
  if (address->path == "/extract" && request.method == Method::post) return build(request);
  if (address->path == "/build" && request.method == Method::remove) {
    const std::lock_guard lock(mutex_);
    broken_off_ = last_upload_;
    if (job_ && !settled_) jobs_.end(*job_);
    settle();
    return told(Json::object());
  }
  if (request.method != Method::get && request.method != Method::head)
    return not_so(address->path == "/build" ? "GET, HEAD, DELETE" : "GET, HEAD, POST");
  if (address->path == "/build") return state();
  if (address->path == "/extract") {
    const auto length = read_int64(word(*address, "length"));
    if (!length || *length < 0) return trouble(400, "length: of the file, in bytes");
    return refuses(*address, static_cast<std::uint64_t>(*length)).value_or(told(Json::object()));
  }
  if (const auto file = asset(address->path == "/" ? "/first.html" : address->path))
    return {.status = 200,
            .type = std::string(file->type),
            .body = std::string(file->bytes),
            .headers = {}};
  return trouble(404, "there is no area yet");
}

}  // namespace loopwright::page
