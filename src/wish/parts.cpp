// Method: a part's words are cut at the first colon; before it stand its minutes and what they are of,
// behind it its wants, parted by commas (no want holds one).
#include "loopwright/wish/parts.hpp"

#include <algorithm>
#include <array>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/road/kind_table.hpp"
#include "wish/quoted.hpp"

namespace loopwright::wish {
namespace {

constexpr int most_part_minutes = 600;
constexpr std::array all_roads{RoadsAllowed::any, RoadsAllowed::quiet, RoadsAllowed::busier};
// Times of a file are told to a thousandth of a second.
constexpr double a_hair_s = 0.01;

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  for (std::string_view rest = trim(text); !rest.empty();) {
    const std::size_t end = std::min(rest.find_first_of(" \t"), rest.size());
    words.push_back(rest.substr(0, end));
    rest = trim(rest.substr(end));
  }
  return words;
}

int read_minutes(std::string_view text) {
  const std::optional<int> minutes = read_int(text);
  if (!minutes)
    throw UsageError("a part begins with its minutes, such as '20 quiet: turn-off:left=3', not " +
                     quoted(text));
  if (*minutes < least_part_minutes || *minutes > most_part_minutes)
    throw UsageError("the minutes of a part are " + std::to_string(least_part_minutes) + " to " +
                     std::to_string(most_part_minutes) + ", not " + quoted(text));
  return *minutes;
}

int read_hardest(std::string_view text) {
  const std::optional<int> hardest = read_int(text);
  if (!hardest || *hardest < 1 || *hardest > 5)
    throw UsageError("the hardest of a part is 1 to 5, such as '20 quiet hardest 3'" +
                     (text.empty() ? std::string() : ", not " + quoted(text)));
  return *hardest;
}

/// "20 quiet hardest 3"
Part read_head(std::string_view text) {
  const std::vector<std::string_view> words = words_of(text);
  Part part;
  part.minutes = read_minutes(words.empty() ? std::string_view() : words[0]);
  for (std::size_t k = 1; k < words.size(); ++k) {
    if (const auto roads = parse_roads(words[k])) {
      part.roads = *roads;
    } else if (words[k] == "hardest") {
      ++k;
      part.hardest = read_hardest(k < words.size() ? words[k] : std::string_view());
    } else {
      throw UsageError("of a part's roads there is no " + quoted(words[k]) +
                       "; they are any, quiet or busier, and 'hardest 3' may stand behind");
    }
  }
  return part;
}

}  // namespace

Part read_part(std::string_view text) {
  const std::size_t colon = text.find(':');
  Part part = read_head(text.substr(0, colon));
  if (colon == std::string_view::npos) return part;
  for (const std::string_view want : split(text.substr(colon + 1), ','))
    if (!trim(want).empty()) part.wants.push_back(read_want(trim(want)));
  if (part.wants.empty())
    throw UsageError("behind the colon of a part stands what to practise: " + quoted(text));
  return part;
}

std::string write_part(const Part& part) {
  std::string text = std::to_string(part.minutes);
  if (part.roads != RoadsAllowed::any) text.append(" ").append(name(part.roads));
  if (part.hardest) text += " hardest " + std::to_string(*part.hardest);
  for (std::size_t k = 0; k < part.wants.size(); ++k)
    text.append(k == 0 ? ": " : ", ").append(write_want(part.wants[k]));
  return text;
}

std::string_view name(RoadsAllowed roads) {
  switch (roads) {
    case RoadsAllowed::quiet:
      return "quiet";
    case RoadsAllowed::busier:
      return "busier";
    case RoadsAllowed::any:
      break;
  }
  return "any";
}

std::optional<RoadsAllowed> parse_roads(std::string_view text) {
  for (const RoadsAllowed roads : all_roads)
    if (text == name(roads)) return roads;
  return std::nullopt;
}

std::vector<Want> all_wants(const Wish& wish) {
  std::vector<Want> wants = wish.wants;
  for (const Part& part : wish.parts)
    wants.insert(wants.end(), part.wants.begin(), part.wants.end());
  return wants;
}

double driven_s(const Loop& loop, RowSpan rows) {
  double seconds = begins_s(loop, rows.last + 1) - begins_s(loop, rows.first);
  for (const PullUp& stop : loop.pull_ups)
    if (stop.stretch >= rows.first && stop.stretch <= rows.last) seconds -= stop.seconds;
  return seconds;
}

std::vector<std::size_t> off_ramp(const Loop& loop, const Ramp& ramp) {
  const RowSpan practice = practice_of(loop);
  const double begin_s = begins_s(loop, practice.first), end_s = begins_s(loop, practice.last + 1);
  const double early_until_s = begin_s + ramp.first_share * (end_s - begin_s) - a_hair_s;
  const double late_from_s = end_s - ramp.last_share * (end_s - begin_s) + a_hair_s;
  std::vector<std::size_t> off;
  for (std::size_t k = 0; k < loop.passes.size(); ++k) {
    const Pass& pass = loop.passes[k];
    if (!touches(pass, practice) || road::is_of_choice(pass.kind)) continue;
    const bool early = begins_s(loop, begin_row(pass)) < early_until_s;
    const bool late = begins_s(loop, end_row(pass)) > late_from_s;
    if ((early && pass.hardness > ramp.early) || (late && pass.hardness > ramp.late))
      off.push_back(k);
  }
  return off;
}

}  // namespace loopwright::wish
