// How far long work is, for another program: a file that gets a line each time it changed, "37 reading roads": per cent
// of the step that is under way, and its name.
#pragma once

#include <fstream>
#include <string>

#include "loopwright/base/progress.hpp"

namespace loopwright::command {

class ProgressFile {
 public:
  /// file: empty: none is written. Throws InputError when it can't be.
  explicit ProgressFile(const std::string& file);
  /// Tells the other, too. Rules: this outlives it.
  [[nodiscard]] Progress beside(Progress other);

 private:
  void write(std::string_view stage, double done);

  std::ofstream out_;
  std::string last_;
};

}  // namespace loopwright::command
