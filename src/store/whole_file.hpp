// A file that appears under its name only when it is whole.
//
//   WholeFile out("out/n.area");  out.write(bytes, count);  out.keep();
//
// Rules: until keep() the bytes lie in a file beside it, "n.area.1234-0.part", which goes away with
// this object; one that a killed program left is deleted by the next that writes the same file. A target that is no ordinary file (a pipe, /dev/null) is written straight through.
// Throws InputError.
#pragma once

#include <cstddef>
#include <filesystem>

namespace loopwright::store {

class WholeFile {
 public:
  explicit WholeFile(const std::filesystem::path& target);
  ~WholeFile();
  WholeFile(const WholeFile&) = delete;
  WholeFile& operator=(const WholeFile&) = delete;

  void write(const void* bytes, std::size_t count);
  void keep();

 private:
  void open_beside();
  void close_file();
  [[noreturn]] void fail(const char* what) const;

  std::filesystem::path named_;   ///< as the user wrote it, for messages
  std::filesystem::path target_;  ///< symbolic links followed
  std::filesystem::path beside_;  ///< empty when written straight through, or kept
  int descriptor_ = -1;
};

}  // namespace loopwright::store
