// A day's lessons, planned from rows or told as the book has them (the command `day`).
//
//   POST /day  {"day": "2026-11-28", "lines": ["09:00 45 WREN roundabouts", …]}   a job; its day (job_files.hpp) is the sheet.
//              Without lines nothing is planned.
//   GET  /day?day=2026-11-28    its planned lessons on paper, one PDF
#pragma once

#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Days {
 public:
  /// Rules: both outlive this.
  Days(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  Reply begin(const std::string& body);
  Reply paper_of(const std::string& day);

 private:
  const Desk& desk_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
