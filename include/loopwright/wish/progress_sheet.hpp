// A pupil's progress as it is printed: plain text in sections, so that the room that prints needs no book.
#pragma once

#include <string>
#include <vector>

namespace loopwright::wish {

struct ProgressSheet {
  struct Section {
    std::string heading;
    std::vector<std::string> lines;
  };
  std::string code;  ///< the pupil's
  std::string day;   ///< as of, in words
  std::string made;  ///< ISO 8601, for the file alone
  std::vector<Section> sections;
};

}  // namespace loopwright::wish
