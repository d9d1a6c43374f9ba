// The page at the instructor's desk: a map of the area and lessons on it, in the browser of this computer.
//
//   Page page(desk);   std::cout << page.address();   page.run();
//
// Rules: it answers on 127.0.0.1 only, and only who has the key (src/page/gate.hpp). It keeps nothing itself: what
// is looked for lies in a folder of its own that is gone when it ends. What is asked for is done by this program itself, run as
// on the command line (src/page/child.hpp), so that the page can say nothing the commands don't. Where there is no area
// yet, it first takes an extract and has one built (src/page/first_run.hpp).
#pragma once

#include <filesystem>
#include <functional>
#include <memory>
#include <string>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/terms.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::page {

/// The area on the desk. Rules: any thread may ask; what is handed out lives as long as somebody holds it, and as this.
class OpenArea {
 public:
  OpenArea() = default;
  virtual ~OpenArea() = default;
  OpenArea(const OpenArea&) = delete;
  OpenArea& operator=(const OpenArea&) = delete;

  /// What the map says alone.
  [[nodiscard]] virtual const road::Roads& map() const = 0;
  /// The roads as the desk's notes make them for a lesson of so many minutes from then; the map's own without notes.
  /// Throws InputError when the notes can't be read.
  [[nodiscard]] virtual std::shared_ptr<const road::Roads> noted(const Instant& start,
                                                                 int minutes) const = 0;
};

/// What lies on the desk.
struct Desk {
  std::filesystem::path program;  ///< this program, to be run for each deed
  std::filesystem::path area;     ///< the area file; not there yet: the page has one built there
  std::filesystem::path notes, terms, book;  ///< as of the commands; empty: none
  hours::SchoolTerms school_terms;           ///< what the file of terms says
  std::filesystem::path scratch;             ///< a folder for what is looked for
  int port = 0;                              ///< 0: a free one
  /// Opens the area file; throws InputError. Why by the caller: who lays notes on roads is no part of the page.
  std::function<std::unique_ptr<OpenArea>()> open;
};

class Page {
 public:
  /// Throws InputError when the area can't be opened, or when it can't answer there.
  explicit Page(const Desk& desk);
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
