// What the manual's first page takes over from README.md, so that nothing is written twice.
//
//   Readme readme(text);   readme.section("Cautions");   readme.paragraph("Exit codes");
//
// Rules: throws std::runtime_error for what isn't there: a README that was changed shows at the build.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::manual {

class Readme {
 public:
  explicit Readme(std::string text) : text_(std::move(text)) {}
  /// The paragraphs between "## title" and the next heading; an item of a list is a paragraph that begins with "- ".
  [[nodiscard]] std::vector<std::string> section(std::string_view title) const;
  /// The paragraph that begins with "**title.**", without that.
  [[nodiscard]] std::string paragraph(std::string_view title) const;
  /// The first paragraph under the first heading.
  [[nodiscard]] std::string opening() const;

 private:
  std::string text_;
};

}  // namespace loopwright::manual
