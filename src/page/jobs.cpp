#include "page/jobs.hpp"

#include <algorithm>
#include <array>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::page {
namespace {

namespace fs = std::filesystem;

// As many as there are cores in an old laptop; who asks for more waits, and who floods the page is refused.
constexpr std::size_t at_once = 2, most_waiting = 20, most_kept = 60;

std::optional<std::uint64_t> number_of(const std::string& id) {
  const auto number = read_int64(id);
  return number && *number > 0 ? std::optional(static_cast<std::uint64_t>(*number)) : std::nullopt;
}

/// A folder that goes with this, whatever is thrown.
class Gone {
 public:
  explicit Gone(fs::path folder) : folder_(std::move(folder)) {}
  ~Gone() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  Gone(const Gone&) = delete;
  Gone& operator=(const Gone&) = delete;

 private:
  fs::path folder_;
};

JobState state_of(Stage stage, int code, const fs::path& folder, const Child* child) {
  JobState state{.stage = stage, .code = code, .said = "", .complained = "", .folder = folder};
  if ((stage == Stage::working || stage == Stage::over) && child != nullptr)
    state.said = child->said(), state.complained = child->complained();
  return state;
}

}  // namespace

std::string_view name(Stage stage) {
  constexpr std::array<std::string_view, 5> names{"waiting", "working", "over", "broken off",
                                                  "failed"};
  return names[static_cast<std::size_t>(stage)];
}

Jobs::Jobs(fs::path program, const fs::path& folder)
    : program_(std::move(program)), scratch_(folder) {
  for (std::size_t k = 0; k < at_once; ++k)
    workers_.emplace_back([this](const std::stop_token& stop) { work(stop); });
}

Jobs::~Jobs() {
  for (std::jthread& worker : workers_) worker.request_stop();
  {
    const std::lock_guard lock(mutex_);
    waiting_.clear();
    for (auto& [id, job] : jobs_)
      if (job.child) job.child->kill();
  }
  workers_.clear();  // joins
}

fs::path Jobs::new_folder() {
  fs::path own = scratch_.path() / std::to_string(++last_id_);
  fs::create_directory(own);
  return own;
}

fs::path Jobs::new_file() {
  const std::lock_guard lock(mutex_);
  return scratch_.path() / std::to_string(++last_id_);
}

std::optional<std::string> Jobs::add(const Prepare& prepare) {
  fs::path own;
  std::uint64_t id = 0;
  {
    const std::lock_guard lock(mutex_);
    if (waiting_.size() >= most_waiting) return std::nullopt;
    own = new_folder();
    id = last_id_;
  }
  // A school's book may be read for it, and be away: meanwhile other jobs are asked about.
  Job job{.words = {}, .folder = own, .stage = Stage::waiting, .code = 0, .child = {}};
  try {
    job.words = prepare(own);
  } catch (...) {
    const Gone unused(own);
    throw;
  }
  const std::lock_guard lock(mutex_);
  jobs_.emplace(id, std::move(job));
  waiting_.push_back(id);
  forget_oldest();
  changed_.notify_one();
  return std::to_string(id);
}

/// Rules: the mutex is held.
void Jobs::forget_oldest() {
  for (auto job = jobs_.begin(); job != jobs_.end() && jobs_.size() > most_kept;) {
    const bool is_done = job->second.stage != Stage::waiting && !job->second.is_watched;
    if (!is_done) {
      ++job;
      continue;
    }
    std::error_code ignored;
    fs::remove_all(job->second.folder, ignored);
    job = jobs_.erase(job);
  }
}

void Jobs::work(const std::stop_token& stop) {
  std::unique_lock lock(mutex_);
  while (changed_.wait(lock, stop, [this] { return !waiting_.empty(); })) {
    Job& job = jobs_.at(waiting_.front());
    waiting_.pop_front();
    job.stage = Stage::working;
    job.is_watched = true;
    try {
      job.child = std::make_shared<Child>(program_, job.words, job.folder);
    } catch (const InputError&) {
      job.stage = Stage::failed;
      job.is_watched = false;
      continue;
    }
    const std::shared_ptr<Child> child = job.child;
    lock.unlock();
    const End end = child->wait();
    lock.lock();
    job.code = end.code;
    job.is_watched = false;
    if (job.stage != Stage::broken_off) job.stage = end.killed ? Stage::failed : Stage::over;
  }
}

std::optional<JobState> Jobs::state(const std::string& id) const {
  const std::lock_guard lock(mutex_);
  const auto number = number_of(id);
  if (!number) return std::nullopt;
  const auto job = jobs_.find(*number);
  if (job == jobs_.end()) return std::nullopt;
  return state_of(job->second.stage, job->second.code, job->second.folder, job->second.child.get());
}

void Jobs::end(const std::string& id) {
  const std::lock_guard lock(mutex_);
  const auto number = number_of(id);
  if (!number) return;
  const auto job = jobs_.find(*number);
  if (job == jobs_.end() || job->second.stage == Stage::over) return;
  job->second.stage = Stage::broken_off;
  std::erase(waiting_, *number);
  if (job->second.child) job->second.child->kill();
}

JobState Jobs::run(const Prepare& prepare,
                   const std::function<void(const JobState&)>& before_it_is_gone) {
  fs::path own;
  {
    const std::lock_guard lock(mutex_);
    own = new_folder();
  }
  const Gone at_the_end(own);
  Child child(program_, prepare(own), own);
  const End end = child.wait();
  JobState state = state_of(end.killed ? Stage::failed : Stage::over, end.code, own, &child);
  if (before_it_is_gone) before_it_is_gone(state);
  return state;
}

}  // namespace loopwright::page
