// A line on a terminal that shows how far long work is; in a pipe it shows nothing.
#pragma once

#include <string>

#include "loopwright/base/progress.hpp"

namespace loopwright::command {

class ProgressBar {
 public:
  ProgressBar();
  ~ProgressBar();  ///< wipes the line
  ProgressBar(const ProgressBar&) = delete;
  ProgressBar& operator=(const ProgressBar&) = delete;

  /// Empty when nobody watches. Rules: the bar outlives it.
  [[nodiscard]] Progress progress();

 private:
  void show(std::string_view stage, double done);
  bool watched_ = false;
  std::string shown_;
};

}  // namespace loopwright::command
