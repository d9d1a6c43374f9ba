// The words of one line of a plan, taken one after another.
//
//   PlanWords words("road - service 0,0 50,0 lit=yes", place, sets);
//   words.word("a name");  words.tags();
//
// Rules: what isn't there or can't be read is an InputError that begins with the place given
// ("maps/x.plan line 7").
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "county/plan.hpp"

namespace loopwright::county {

using TagSets = std::map<std::string, Tags>;

/// What a road ends in, by the word of first= and last=; nothing for another word.
std::optional<End> end_named(std::string_view word);
/// A style of streets by its word.
std::optional<Style> style_named(std::string_view word);

class PlanWords {
 public:
  PlanWords(std::string_view line, std::string place, const TagSets& sets);
  [[nodiscard]] bool empty() const { return next_ == words_.size(); }
  /// The next word; `what` names it in the error when there is none.
  std::string word(std::string_view what);
  double number(std::string_view what);
  /// A number above nought.
  double size(std::string_view what);
  Spot point();
  /// All points that follow, at least so many.
  std::vector<Spot> points(std::size_t least);
  std::vector<PlanPoint> road_points(std::size_t least);
  /// All words left, as tags.
  Tags tags();
  /// Whether the next word is a point followed by '~', which is taken away.
  bool takes_tilde();
  [[noreturn]] void fail(const std::string& why) const;

 private:
  void cut(std::string_view line);
  [[nodiscard]] bool at_point() const;

  std::string place_;
  const TagSets& sets_;
  std::vector<std::string> words_;
  std::size_t next_ = 0;
};

}  // namespace loopwright::county
