// Runs this program once more, as the command line would, and takes down what it says.
//
//   Child child(program, {"look", "county.area", "54.3,2.6"}, folder);   // folder: what it says is written there
//   const End end = child.wait();   child.said();
//
// Rules: nothing of ours is handed on but its words and which folder is the page's own (scratch_variable.hpp): no input, no
// open file or socket. Any thread may end it. It dies with the thread that started it, however that ends (a page that is
// killed leaves nothing running), so that thread waits for it.
// Why a process of its own: what a person asks for on the page is checked and proved as it is on the command line, can
// be broken off at any moment, and takes the page down with it in no case.
#pragma once

#include <sys/types.h>

#include <filesystem>
#include <mutex>
#include <string>
#include <vector>

namespace loopwright::page {

/// How a child ended.
struct End {
  int code = 0;         ///< its exit code; meaningless when it was killed
  bool killed = false;  ///< by us, or by the system
};

class Child {
 public:
  /// Starts it. Rules: the folder is there. Throws InputError.
  Child(const std::filesystem::path& program, const std::vector<std::string>& words,
        std::filesystem::path folder);
  /// Ends it, if it still runs.
  ~Child();
  Child(const Child&) = delete;
  Child& operator=(const Child&) = delete;

  /// Until it is over.
  End wait();
  /// At once, and for good.
  void kill();
  /// What it wrote to standard output and to standard error; the first megabyte of each.
  [[nodiscard]] std::string said() const;
  [[nodiscard]] std::string complained() const;

 private:
  std::filesystem::path folder_;
  std::mutex living_;
  pid_t pid_ = 0;  ///< 0 once it is over and nobody else may have its number
};

}  // namespace loopwright::page
