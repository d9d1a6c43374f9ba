// What the page tells of the pupils of a book, and does for them.
//
//   GET  /pupils                    their codes: {"pupils": [{"code", "home"}]}
//   POST /pupils/CODE/add           {"words": [["home", "4 Lantern Row"], …]}: a new one (pupil add)
//   POST /pupils/CODE/change        {"words": …}: what isn't said stays (pupil change)
//   GET  /pupils/CODE               the record (pupil_record.hpp), and "told": what pupil show says of it
//   POST /pupils/CODE/log           {"line": "roundabout right 2 pedals; rest 4", "lesson": 2}: what came of a lesson, the next
//                                   planned one when none is named (lesson log)
//   POST /pupils/CODE/erase         {"code": "WREN"}, typed once more: all of it goes (pupil erase)
//   POST /pupils/CODE/next, again, mock, not-met, like-it, at-home   {"words": [["start", "2026-11-28T15:00"], …]}: a job; what it says is
//        the command's, its wish (next) or its paper (at-home) is read as job_files.hpp tells
//   GET  /pupils/CODE/export?form=  all that is kept: json, pdf
//   GET  /pupils/CODE/progress      the page for the pupil, PDF
//   GET  /pupils/CODE/card?lesson=  a planned lesson: form=pdf, html, gpx, ics, text
//
// Rules: any thread may call; the book is opened for each request, since other programs use it too. Trouble as in
// routes.hpp; 409 without a book.
#pragma once

#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Pupils {
 public:
  /// Rules: both outlive this.
  Pupils(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  /// Rules: the address begins with /pupils.
  Reply answer(const Request& request, const Address& address);

 private:
  Reply all() const;
  Reply one(const std::string& code);
  Reply read(const std::string& code, std::string_view what, const Address& address);
  Reply change(const std::string& code, std::string_view what, const std::string& body);
  Reply log(const std::string& code, const std::string& body);
  Reply unlog(const std::string& code, const std::string& body);
  Reply set(const std::string& code, const std::string& deed, const std::string& body);
  Reply erase(const std::string& code, const std::string& body);
  Reply begin(const std::string& code, const std::string& task, const std::string& body);
  Reply card(const std::string& code, const Address& address);
  Reply export_of(const std::string& code, const std::string& form);
  /// A file that a command writes with -o; ending: of its name, with the dot.
  Reply written(Words words, const std::string& ending, std::string_view form,
                const std::string& name);
  JobState run(Words words);

  const Desk& desk_;
  Jobs& jobs_;
};

}  // namespace loopwright::page
