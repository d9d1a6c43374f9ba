// 1. Cut at ';' outside brackets and quotes.
// 2. A piece with '@' begins a clause; one without is glued back on to the clause before.
// 3. Cut each clause at its first '@'; brackets that hold the whole condition come off.
// Source: OSM wiki Conditional restrictions.
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::hours {
namespace {

/// Positions of a text by how deep in brackets and quotes they lie.
class Depth {
 public:
  /// Goes past one more character; true when it lies outside all brackets and quotes.
  bool outside(char c) {
    if (c == '"') quoted_ = !quoted_;
    if (!quoted_ && c == '(') ++brackets_;
    if (!quoted_ && c == ')' && brackets_ > 0) --brackets_;
    return !quoted_ && brackets_ == 0;
  }

 private:
  int brackets_ = 0;
  bool quoted_ = false;
};

std::vector<std::string_view> pieces_of(std::string_view text) {
  std::vector<std::string_view> pieces;
  Depth depth;
  std::size_t start = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (!depth.outside(text[i]) || text[i] != ';') continue;
    pieces.push_back(text.substr(start, i - start));
    start = i + 1;
  }
  pieces.push_back(text.substr(start));
  return pieces;
}

/// "(a; b)" without its brackets; "(a) AND (b)" stays.
std::string_view without_brackets(std::string_view condition) {
  if (condition.empty() || condition.front() != '(') return condition;
  Depth depth;
  std::size_t closing = 0;
  while (closing < condition.size() && !depth.outside(condition[closing])) ++closing;
  if (closing + 1 != condition.size()) return condition;
  return trim(condition.substr(1, condition.size() - 2));
}

Clause clause_of(std::string_view text) {
  const std::size_t at = text.find('@');
  if (at == std::string_view::npos) return {std::string(trim(text)), {}};
  return {std::string(trim(text.substr(0, at))),
          std::string(without_brackets(trim(text.substr(at + 1))))};
}

}  // namespace

std::vector<Clause> read_conditional(std::string_view text) {
  if (text.find('@') == std::string_view::npos) return {};
  std::vector<std::string> clauses;
  for (const std::string_view piece : pieces_of(text)) {
    if (clauses.empty() || piece.find('@') != std::string_view::npos) {
      clauses.emplace_back(piece);
    } else {
      clauses.back().append(";").append(piece);
    }
  }
  std::vector<Clause> result;
  for (const std::string& clause : clauses) result.push_back(clause_of(clause));
  return result;
}

}  // namespace loopwright::hours
