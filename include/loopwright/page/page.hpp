// The page at the instructor's desk: a map of the area and lessons on it, in the browser of this computer.
//
//   Page page(area.roads(), desk);   std::cout << page.address();   page.run();
//
// Rules: it answers on 127.0.0.1 only, and only who has the key (src/page/gate.hpp). It keeps nothing itself: what
// is looked for lies in a folder of its own that is gone when it ends. What is asked for is done by this program itself, run as
// on the command line (src/page/child.hpp), so that the page can say nothing the commands don't.
#pragma once

#include <filesystem>
#include <memory>
#include <string>

#include "loopwright/hours/terms.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::page {

/// What lies on the desk.
struct Desk {
  std::filesystem::path program;             ///< this program, to be run for each deed
  std::filesystem::path area;                ///< the file that the roads are of
  std::filesystem::path notes, terms, book;  ///< as of the commands; empty: none
  hours::SchoolTerms school_terms;           ///< what the file of terms says
  std::filesystem::path scratch;             ///< a folder for what is looked for
  int port = 0;                              ///< 0: a free one
};

class Page {
 public:
  /// Rules: the roads are the area's, and outlive this. Throws InputError when it can't answer there.
  Page(const road::Roads& roads, const Desk& desk);
  ~Page();
  Page(const Page&) = delete;
  Page& operator=(const Page&) = delete;

  /// With the key, which is good once.
  [[nodiscard]] std::string address() const;
  /// Answers until the program is asked to end (SIGINT, SIGTERM, SIGHUP).
  void run();

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace loopwright::page
