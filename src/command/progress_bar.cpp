#include "command/progress_bar.hpp"

#include <unistd.h>

#include <algorithm>
#include <cmath>
#include <iostream>

namespace loopwright::command {
namespace {

constexpr int bar_width = 30;
constexpr std::string_view wipe =
    "\r\x1b[K";  // back to the start, clear to the line's end (ECMA-48)

}  // namespace

ProgressBar::ProgressBar() : watched_(::isatty(STDERR_FILENO) == 1) {}

ProgressBar::~ProgressBar() {
  if (!shown_.empty()) std::cerr << wipe << std::flush;
}

Progress ProgressBar::progress() {
  if (!watched_) return {};
  return [this](std::string_view stage, double done) { show(stage, done); };
}

void ProgressBar::show(std::string_view stage, double done) {
  const auto filled = static_cast<std::size_t>(std::lround(bar_width * std::clamp(done, 0.0, 1.0)));
  std::string line = "[" + std::string(filled, '#') + std::string(bar_width - filled, ' ') + "] ";
  line += stage;
  if (line == shown_) return;
  std::cerr << wipe << line << std::flush;
  shown_ = line;
}

}  // namespace loopwright::command
