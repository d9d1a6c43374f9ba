// A recorded drive, told and then logged for a pupil of the book (lesson trace).
//
//   POST /recorded?code=WREN&lesson=   the bytes of a GPX file: a job, which tells what was passed and writes nothing
//   POST /recorded/JOB                 {"line": "rest 4", "keep": false}: logs what that job told; a job that holds the
//                                      recording from then on, so that a line that wasn't understood can be said anew
//
// Rules: any thread may call. name=: of the file, for messages. A recording lies in a folder for our eyes only and is
// gone with the page, as what is looked for is; in the book it is only when that is asked for. Trouble as in routes.hpp;
// 409 without a book, 413 beyond what `lesson trace` reads.
// Why a job: a long drive takes seconds to lay on the roads.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/listener.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Recorded {
 public:
  /// Rules: both outlive this.
  Recorded(const Desk& desk, Jobs& jobs) : desk_(desk), jobs_(jobs) {}
  /// Rules: the address begins with /recorded.
  Reply answer(const Request& request, const Address& address);
  /// Of a request whose head was let in; nothing for one that isn't ours.
  Taken intake(const Request& head);

 private:
  /// Whose drive a job tells or logs.
  struct Drive {
    std::string code, lesson;
    std::string file;  ///< name of the recording in the job's folder
  };
  Reply tell(const Request& request, const Address& address);
  Reply log(const std::string& job, const std::string& body);
  [[nodiscard]] Words words_of(const Drive& drive, const std::string& folder) const;
  Reply begun(const std::optional<std::string>& job, const Drive& drive);

  const Desk& desk_;
  Jobs& jobs_;
  std::mutex mutex_;
  std::map<std::string, Drive> drives_;  // by job
};

}  // namespace loopwright::page
