#include "command/mock_words.hpp"

#include <vector>

#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/mock_test.hpp"

namespace loopwright::command {

std::string mock_words(const book::Log& log) {
  const book::Faults& faults = log.mock->faults;
  std::string text = "driving faults " + std::to_string(faults.driving) + ", serious " +
                     std::to_string(faults.serious) + ", dangerous " +
                     std::to_string(faults.dangerous) + "; " +
                     (is_passed(faults, log.mock->day) ? "" : "not ") + "within the rule";
  std::vector<std::string> more;
  for (const book::Repeated& one : book::repeated(log.faults))
    more.push_back(std::string(one.heading->name) + " " + std::to_string(one.count));
  if (!more.empty())
    text += "; marked more than once, which an examiner may take as serious: " + listed(more);
  return text;
}

}  // namespace loopwright::command
