#include "county/plan_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <utility>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

constexpr double widest_m = 1e6;  // a plan is a county, not a continent

struct EndWord {
  std::string_view word;
  End end;
};
constexpr std::array<EndWord, 6> end_words{{{"give_way", End::give_way},
                                            {"stop", End::stop},
                                            {"signals", End::signals},
                                            {"turning_circle", End::turning_circle},
                                            {"closed", End::closed},
                                            {"edge", End::edge}}};

struct StyleWord {
  std::string_view word;
  Style style;
};
constexpr std::array<StyleWord, 5> style_words{{{"terraces", Style::terraces},
                                                {"crescents", Style::crescents},
                                                {"avenues", Style::avenues},
                                                {"works", Style::works},
                                                {"centre", Style::centre}}};

/// "12.5,-3"; nothing when it is anything else.
std::optional<Spot> read_point(std::string_view word) {
  const auto comma = word.find(',');
  if (comma == std::string_view::npos) return std::nullopt;
  const auto x = read_number(word.substr(0, comma));
  const auto y = read_number(word.substr(comma + 1));
  if (!x || !y || std::abs(*x) > widest_m || std::abs(*y) > widest_m) return std::nullopt;
  return spot(*x, *y);
}

}  // namespace

std::optional<End> end_named(std::string_view word) {
  const auto* known = std::ranges::find(end_words, word, &EndWord::word);
  return known == end_words.end() ? std::nullopt : std::optional(known->end);
}

std::optional<Style> style_named(std::string_view word) {
  const auto* known = std::ranges::find(style_words, word, &StyleWord::word);
  return known == style_words.end() ? std::nullopt : std::optional(known->style);
}

PlanWords::PlanWords(std::string_view line, std::string place, const TagSets& sets)
    : place_(std::move(place)), sets_(sets) {
  cut(line);
}

void PlanWords::fail(const std::string& why) const {
  throw InputError(place_ + ": " + why);
}

void PlanWords::cut(std::string_view line) {
  std::string word;
  bool quoted = false;
  bool begun = false;
  for (std::size_t i = 0; i < line.size(); ++i) {
    char c = line[i];
    const bool escaped = quoted && c == '\\' && i + 1 < line.size();
    if (escaped) c = line[++i];
    const bool space = c == ' ' || c == '\t' || c == '\r';
    if (!quoted && !begun && c == '#') return;
    if (c == '"' && !escaped) {
      quoted = !quoted;
      begun = true;
    } else if (space && !quoted) {
      if (begun) words_.push_back(std::exchange(word, {}));
      begun = false;
    } else {
      word += c;
      begun = true;
    }
  }
  if (quoted) fail("a quote is opened and not closed");
  if (begun) words_.push_back(word);
}

std::string PlanWords::word(std::string_view what) {
  if (empty()) fail("here " + std::string(what) + " is missing");
  return words_[next_++];
}

double PlanWords::number(std::string_view what) {
  const std::string text = word(what);
  const auto value = read_number(text);
  if (!value) fail("'" + text + "' stands where " + std::string(what) + " should; write a number");
  return *value;
}

double PlanWords::size(std::string_view what) {
  const double value = number(what);
  if (value <= 0) fail(std::string(what) + " must be above 0");
  return value;
}

Spot PlanWords::point() {
  const std::string text = word("a point");
  const auto at = read_point(text);
  if (!at) fail("'" + text + "' isn't a point; write metres east,north");
  return *at;
}

bool PlanWords::at_point() const {
  return !empty() && (words_[next_].starts_with('@') || read_point(words_[next_]));
}

std::vector<Spot> PlanWords::points(std::size_t least) {
  std::vector<Spot> out;
  while (!empty() && read_point(words_[next_])) out.push_back(point());
  if (out.size() < least) fail("it needs at least " + std::to_string(least) + " points");
  return out;
}

std::vector<PlanPoint> PlanWords::road_points(std::size_t least) {
  std::vector<PlanPoint> out;
  while (at_point()) {
    PlanPoint next;
    if (words_[next_].starts_with('@')) {
      next.ring = words_[next_++].substr(1);
      next.forked = next.ring.ends_with('^');
      if (next.forked) next.ring.pop_back();
    } else {
      next.at = point();
    }
    out.push_back(next);
  }
  if (out.size() < least) fail("it needs at least " + std::to_string(least) + " points");
  return out;
}

Tags PlanWords::tags() {
  Tags out;
  for (; !empty(); ++next_) {
    const std::string& text = words_[next_];
    if (const auto equals = text.find('='); equals != std::string::npos) {
      out[text.substr(0, equals)] = text.substr(equals + 1);
      continue;
    }
    const auto set = sets_.find(text);
    if (set == sets_.end())
      fail("there is no set '" + text + "'; write a tag as key=value, or define the set before");
    for (const auto& [key, value] : set->second) out[key] = value;
  }
  return out;
}

bool PlanWords::takes_tilde() {
  if (empty() || !words_[next_].ends_with('~')) return false;
  words_[next_].pop_back();
  return true;
}

}  // namespace loopwright::county
