// The school terms of the instructor's own council, from a small file, since each council sets its
// own and no open list of them is kept.
//
//   SchoolTerms t = read_terms("2026-09-02 2026-10-23  autumn, first half\n", "terms.txt");
//
// The file: a line for each part of a term, its first and last school day, then words of one's own.
// '#' begins a comment; empty lines are passed over.
// Rules: what lies between two listed parts is a school holiday (SH); Saturdays and Sundays inside
// one aren't. Before the first and after the last listed day nothing is known.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/hours/answer.hpp"

namespace loopwright::hours {

struct TermPart {
  Date first, last;
  friend constexpr bool operator==(const TermPart&, const TermPart&) = default;
};

class SchoolTerms {
 public:
  SchoolTerms() = default;
  /// Rules: in order, none overlapping.
  explicit SchoolTerms(std::vector<TermPart> parts) : parts_(std::move(parts)) {}
  [[nodiscard]] bool empty() const { return parts_.empty(); }
  [[nodiscard]] const std::vector<TermPart>& parts() const { return parts_; }
  [[nodiscard]] Tri holiday(Date day) const;

 private:
  std::vector<TermPart> parts_;
};

/// Throws InputError: "terms.txt, line 3: …", when a line isn't two dates, ends before it begins,
/// or overlaps another.
SchoolTerms read_terms(std::string_view text, std::string_view file_name);

}  // namespace loopwright::hours
