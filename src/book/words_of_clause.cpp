#include "book/words_of_clause.hpp"

#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::book {
namespace {

constexpr int most_count = 99;  // passes or marks of one clause; more is a slip of the pen

}  // namespace

Clause::Clause(std::string_view text) : whole_(trim(text)) {
  const std::size_t colon = whole_.find(':');
  has_text_ = colon != std::string_view::npos;
  if (has_text_) text_ = trim(whole_.substr(colon + 1));
  std::string_view rest = trim(whole_.substr(0, colon));
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find_first_of(" \t,"), rest.size());
    if (end > 0) words_.push_back(rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
}

void Clause::refuse(const std::string& why) const {
  throw UsageError("'" + printable(whole_) + "': " + why);
}

bool Clause::took(std::string_view word_meant) {
  if (word() != word_meant) return false;
  take();
  return true;
}

int Clause::number(std::string_view what, int low, int high) {
  const auto number = read_int(word());
  if (!number || *number < low || *number > high)
    refuse(std::string(what) + " is a whole number from " + std::to_string(low) + " to " +
           std::to_string(high));
  take();
  return *number;
}

std::optional<int> Clause::level() {
  if (!read_int(word())) return std::nullopt;
  return number("a level", 1, 5);
}

std::optional<int> Clause::count() {
  if (word().size() < 2 || word().front() != 'x') return std::nullopt;
  const auto number = read_int(word().substr(1));
  if (!number) return std::nullopt;
  if (*number < 1 || *number > most_count)
    refuse("a count is x1 to x" + std::to_string(most_count));
  take();
  return number;
}

std::optional<Practice> Clause::practice() {
  // "roundabout:right" as wishes have it, or "roundabout right".
  const auto kind = road::parse_kind(word());
  if (!kind) return std::nullopt;
  take();
  Practice what{*kind, road::Movement::none};
  const auto movement = road::parse_movement(word());
  if (!movement) return what;
  const auto can = road::movements_of(*kind);
  if (std::find(can.begin(), can.end(), *movement) == can.end())
    refuse(std::string(road::name(*kind)) + " has no movement '" + std::string(word()) + "'");
  take();
  what.movement = *movement;
  return what;
}

LessonFault Clause::fault() {
  if (find_heading(word()) == nullptr)
    refuse(
        "behind 'fault' stands a heading of the marking sheet, such as junction-observation "
        "('loopwright lesson "
        "log --help' lists them)");
  LessonFault fault{std::string(word())};
  take();
  if (const auto grade = parse_grade(word())) {
    fault.grade = *grade;
    take();
  }
  fault.count = count().value_or(1);
  return fault;
}

void Clause::need_end() {
  if (!ends()) refuse("'" + printable(word()) + "' has no meaning there");
}

}  // namespace loopwright::book
