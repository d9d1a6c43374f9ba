#include "command/progress_file.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "loopwright/base/error.hpp"

namespace loopwright::command {

ProgressFile::ProgressFile(const std::string& file) {
  if (file.empty()) return;
  out_.open(file, std::ios::app);
  if (!out_) throw InputError(file + ": can't be written; name another for --progress");
}

Progress ProgressFile::beside(Progress other) {
  if (!out_.is_open()) return other;
  return [this, other = std::move(other)](std::string_view stage, double done) {
    tell(other, stage, done);
    write(stage, done);
  };
}

void ProgressFile::write(std::string_view stage, double done) {
  const auto percent = std::lround(100 * std::clamp(done, 0.0, 1.0));
  std::string line = std::to_string(percent) + " " + std::string(stage);
  if (line == last_) return;
  out_ << line << '\n' << std::flush;
  last_ = std::move(line);
}

}  // namespace loopwright::command
