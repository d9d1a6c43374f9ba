// The numbers of src/rules/pull_ups.txt, read once in a build.
#pragma once

#include <string_view>
#include <unordered_map>

namespace loopwright::mark {

class PullUpRules {
 public:
  PullUpRules();
  /// A number by its name in the table; a missing one is our own mistake (std::logic_error).
  [[nodiscard]] double at(std::string_view name) const;

 private:
  std::unordered_map<std::string_view, double> rows_;
};

}  // namespace loopwright::mark
