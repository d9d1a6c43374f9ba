// The deeds that were asked for on the page: done one or two at a time, watched, broken off.
//
//   Jobs jobs(program, folder);
//   std::string id = jobs.add([](const path& own) { return Words{"loops", …, "-o", own / "loops.json"}; });
//   jobs.state(id);   jobs.end(id);
//
// Rules: any thread may call. Each job has a folder of its own, for what it reads and writes; the oldest that is over is
// forgotten with its folder when there are too many. No job outlives this, nor does the folder.
#pragma once

#include <condition_variable>
#include <cstdint>
#include <deque>
#include <filesystem>
#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "page/child.hpp"
#include "page/scratch.hpp"

namespace loopwright::page {

using Words = std::vector<std::string>;

enum class Stage : std::uint8_t {
  waiting,
  working,
  over,
  broken_off,  ///< by who asked
  failed       ///< it ended by itself, and not as commands end
};

std::string_view name(Stage stage);  // "waiting", "working", "over", "broken off", "failed"

struct JobState {
  Stage stage = Stage::waiting;
  int code = 0;                  ///< the command's exit code (README), once it is over
  std::string said, complained;  ///< so far, while it works or once it is over
  std::filesystem::path folder;
};

class Jobs {
 public:
  /// folder: a new one is made in it, for our eyes only. Throws InputError.
  Jobs(std::filesystem::path program, const std::filesystem::path& folder);
  ~Jobs();
  Jobs(const Jobs&) = delete;
  Jobs& operator=(const Jobs&) = delete;

  /// A name that nothing has yet, in a folder for our eyes only, for what is written before its job is known.
  std::filesystem::path new_file();

  /// Prepares the job's folder and says the words of the command; called once, before this returns.
  using Prepare = std::function<Words(const std::filesystem::path& folder)>;
  /// The job's name; none when too many wait already.
  std::optional<std::string> add(const Prepare& prepare);
  /// None when there is no such job, or no longer.
  [[nodiscard]] std::optional<JobState> state(const std::string& id) const;
  /// Breaks it off; nothing for one that is over.
  void end(const std::string& id);
  /// Runs a short command at once, beside the others, in a folder that is gone afterwards.
  JobState run(const Prepare& prepare,
               const std::function<void(const JobState&)>& before_it_is_gone = {});

 private:
  struct Job {
    Words words;
    std::filesystem::path folder;
    Stage stage = Stage::waiting;
    int code = 0;
    std::shared_ptr<Child> child;
    bool is_watched = false;  ///< a worker waits for its end: not to be forgotten
  };
  void work(const std::stop_token& stop);
  void forget_oldest();
  std::filesystem::path new_folder();

  std::filesystem::path program_;
  Scratch scratch_;
  mutable std::mutex mutex_;
  std::condition_variable_any changed_;
  std::uint64_t last_id_ = 0;
  std::map<std::uint64_t, Job> jobs_;  // by number, so by age
  std::deque<std::uint64_t> waiting_;
  std::vector<std::jthread> workers_;
};

}  // namespace loopwright::page
