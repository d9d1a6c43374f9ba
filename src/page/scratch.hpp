// A folder for what is looked for, for our eyes only, that is gone with this; and with the next one, should the program
// be killed.
//
// Why: a wish and its loops give a pupil's door away.
#pragma once

#include <filesystem>

namespace loopwright::page {

class Scratch {
 public:
  /// Makes one in `folder`, and deletes there what programs left that live no more. Throws InputError.
  explicit Scratch(const std::filesystem::path& folder);
  ~Scratch();
  Scratch(const Scratch&) = delete;
  Scratch& operator=(const Scratch&) = delete;
  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
  int lock_ = -1;  ///< held while we live; no child has it (child.cpp closes all)
};

}  // namespace loopwright::page
