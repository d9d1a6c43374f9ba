// The page where there is no area yet: takes an extract and has an area built of it.
//
//   GET    /          says where open extracts come from, and takes one
//   GET    /extract   whether one of that name=, region=, side= and length= (bytes) would be taken: {}, or what is wrong
//   GET    /build     how far it is: {"area", "most_bytes", "endings", "stage", "step", "percent", "trouble"}
//   POST   /extract   the bytes of an extract, written to disk as they come; name=: of its file, region=: its law and
//                     hours, side=: of the road, when not the region's. Then it is built; a job, one at a time
//   DELETE /build     breaks it off
//
// Rules: any thread may call. Extract and half an area lie in a folder beside where the area will be, and are gone when
// it is built, broken off or failed, when the page ends, or (of a page that was killed) when the next one begins.
// Trouble as in routes.hpp; 413 too large, 415 no extract by its name, 507 no room on the disk.
// Why beside: a folder for what passes is often kept in memory, and a region's extract has gigabytes.
#pragma once

#include <filesystem>
#include <mutex>
#include <optional>
#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/listener.hpp"
#include "page/request.hpp"
#include "page/scratch.hpp"

namespace loopwright::page {

class FirstRun {
 public:
  /// Rules: the desk outlives this; the area's folder is there. Throws InputError.
  explicit FirstRun(const Desk& desk);
  /// A finished area gets its name, though nobody asked any more.
  ~FirstRun();
  FirstRun(const FirstRun&) = delete;
  FirstRun& operator=(const FirstRun&) = delete;

  /// Whether a path is one of those above, but for "/".
  [[nodiscard]] static bool is_own(const std::string& path);
  Reply answer(const Request& request);
  /// Of a request whose head was let in.
  Taken intake(const Request& head);
  /// True when the area lies where it belongs, whole.
  bool is_built();
  /// Tells that the area that was built can't be opened.
  void cannot_open(const std::string& line);

 private:
  /// Why an extract can't be taken, by what is known before it is sent; none when it can.
  std::optional<Reply> refuses(const Address& address, std::uint64_t length);
  Reply state();
  Reply build(const Request& request);
  std::optional<JobState> settle();

  const Desk& desk_;
  Scratch uploads_;
  Jobs jobs_;
  std::mutex mutex_;
  std::uint64_t last_upload_ = 0,
                broken_off_ = 0;    ///< uploads up to the second aren't built any more
  std::optional<std::string> job_;  ///< the one that isn't settled yet, or was the last one
  bool settled_ = true, built_ = false;
  std::string trouble_;
};

}  // namespace loopwright::page
