// What the page tells of the pupils of a book, and logs for them.
//
//   GET  /pupils                    their codes: {"pupils": [{"code", "home", "test"}]}
//   GET  /pupils/CODE?day=          the record in words, the lessons, and what is proposed for that day, with its wish
//   POST /pupils/CODE/log           {"line": "roundabout right 2 pedals; rest 4"}: what came of a lesson (lesson log)
//
// Rules: any thread may call; the book is opened for each request, since other programs use it too. Trouble as in
// routes.hpp; 409 without a book.
#pragma once

#include <filesystem>

#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Pupils {
 public:
  /// book: the file; empty: none. Rules: jobs outlive this.
  Pupils(std::filesystem::path book, Jobs& jobs) : book_(std::move(book)), jobs_(jobs) {}
  /// Rules: the address begins with /pupils.
  Reply answer(const Request& request, const Address& address);

 private:
  Reply all() const;
  Reply one(const std::string& code, const std::string& day);
  Reply log(const std::string& code, const std::string& body);
  JobState run(Words words);

  std::filesystem::path book_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
