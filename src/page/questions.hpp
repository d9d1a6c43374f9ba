// Questions to the map that a command answers in words: what is near, what to check on the ground, which streets are used
// most, what of the notes is to be looked at again.
//
//   GET /told/near?home=4+Lantern+Row&want=roundabout:right&within=10     {"said": "there  back  what …"}
#pragma once

#include "page/jobs.hpp"
#include "page/replies.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Questions {
 public:
  /// Rules: both outlive it.
  Questions(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  /// address: below /told/. 400 for a word the question doesn't have, 404 for no such question, 409 without the file it is about,
  /// 422 with the command's own line when it refuses.
  Reply answer(const Address& address);

 private:
  const Desk& desk_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
