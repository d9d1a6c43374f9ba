// The instructor's notes as the page shows and writes them: each by the commands `note add`, `change` and `drop`.
//
//   GET /notes                                    the notes file (GeoJSON, DEVELOPERS.md NOTES FILE)
//   POST /notes         {"words": [["at", "54.3,2.6"], ["says", "hump"], ["seen", "2026-11-28"]]}
//   POST /notes/change  {"number": 2, "was": {feature}, "words": [["seen", "2026-11-28"]]}
//   POST /notes/drop    {"number": 2, "was": {feature}}
//
// Rules: notes go by their number in the file, which changes when one above goes: who changes or drops one says what it
// was, and another is never taken for it (409).
#pragma once

#include <mutex>

#include "page/jobs.hpp"
#include "page/replies.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Notes {
 public:
  /// Rules: both outlive it.
  Notes(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  Reply answer(const Request& request, const Address& address);

 private:
  Reply add(const std::string& body);
  /// deed: "change" or "drop".
  Reply with_one(const std::string& deed, const std::string& body);
  Reply run(Words words);
  const Desk& desk_;
  Jobs& jobs_;
  std::mutex writing_;  ///< what a note was is read, and it is changed, in one go
};

}  // namespace loopwright::page
