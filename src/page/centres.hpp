// The surroundings of test centres that mock tests keep off, kept and taken out on the page.
//
//   GET  /centres          {"centres": [{"name", "outline": [[lat, lon], …], "hours", "since"}]}, as 'centre list' has them
//   POST /centres/keep     {"words": [["outline", "54.30,2.60;…"], ["hours", "Mo-Fr 08:00-16:30"], ["since", "2026-11-28"]],
//                          "name": "Stavely"}: one more, or what holds of it from a later day on (centre keep)
//   POST /centres/drop     {"name": "Stavely"}: all its days (centre drop)
//
// Rules: any thread may call. Trouble as in routes.hpp; 409 without a book.
#pragma once

#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Centres {
 public:
  /// Rules: both outlive this.
  Centres(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  /// Rules: the address begins with /centres.
  Reply answer(const Request& request, const Address& address);

 private:
  Reply all() const;
  Reply keep(const std::string& body);
  Reply drop(const std::string& body);
  Reply run(Words words);

  const Desk& desk_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
