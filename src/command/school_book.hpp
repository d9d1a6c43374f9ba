// Books that a school's commands name: one on a server, and files that are made.
#pragma once

#include <filesystem>
#include <string>

namespace loopwright::command {

/// The address of --book. Throws UsageError unless it is a server's.
std::string school_address(const std::string& option);

/// A file's book that is made unless it was there: when nothing came of it, it goes again, so that no empty book is left behind.
/// Rules: made before the book is opened, so that it is closed first.
class NewBook {
 public:
  /// file: may be a server's address, which is left alone.
  explicit NewBook(const std::string& file);
  ~NewBook();
  NewBook(const NewBook&) = delete;
  NewBook& operator=(const NewBook&) = delete;
  /// Something came of it.
  void keep() { kept_ = true; }

 private:
  std::filesystem::path file_;
  bool kept_ = false;
};

}  // namespace loopwright::command
