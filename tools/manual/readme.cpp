#include "manual/readme.hpp"

#include <sstream>
#include <stdexcept>

namespace loopwright::manual {
namespace {

/// Lines joined by blanks, parted at empty lines and before items of a list.
std::vector<std::string> paragraphs_of(std::string_view text) {
  std::vector<std::string> paragraphs;
  bool begins = true;
  std::istringstream lines{std::string(text)};
  for (std::string line; std::getline(lines, line);) {
    if (line.empty()) {
      begins = true;
      continue;
    }
    if (begins || line.starts_with("- ")) {
      paragraphs.push_back(line);
    } else {
      paragraphs.back().append(" ").append(line.substr(line.find_first_not_of(' ')));
    }
    begins = false;
  }
  return paragraphs;
}

}  // namespace

std::vector<std::string> Readme::section(std::string_view title) const {
  const std::string heading = "\n## " + std::string(title) + "\n";
  const auto at = text_.find(heading);
  if (at == std::string::npos)
    throw std::runtime_error("README.md has no section " + std::string(title));
  const auto begin = at + heading.size();
  return paragraphs_of(text_.substr(begin, text_.find("\n## ", begin) - begin));
}

std::string Readme::paragraph(std::string_view title) const {
  const std::string mark = "\n\n**" + std::string(title) + ".** ";
  const auto at = text_.find(mark);
  if (at == std::string::npos)
    throw std::runtime_error("README.md has no paragraph " + mark.substr(2));
  const auto begin = at + mark.size();
  return paragraphs_of(text_.substr(begin, text_.find("\n\n", begin) - begin)).front();
}

std::string Readme::opening() const {
  const auto begin = text_.find("\n\n");
  if (begin == std::string::npos) throw std::runtime_error("README.md has no paragraph");
  return paragraphs_of(text_.substr(begin)).front();
}

}  // namespace loopwright::manual
