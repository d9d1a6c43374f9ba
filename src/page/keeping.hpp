// A loop that was found on the page as a pupil's lesson (the command `lesson plan --loops`).
//
//   POST /jobs/JOB/keep  {"pupil": "WREN", "loop": 2, "length": 60, "elsewhere": false}
//        {"said", "lesson", "code"}; elsewhere: the lesson is meant to begin where its loops do, and not at the pupil's door
#pragma once

#include <optional>
#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Keeping {
 public:
  /// Rules: both outlive this.
  Keeping(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  /// job: the search that found it; none: there is none, or no longer.
  Reply keep(const std::optional<JobState>& job, const std::string& body);

 private:
  const Desk& desk_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
