// Method: room place finds; here each outcome becomes one line. One candidate is taken, and told
// unless it is the very house. Several are listed with what to add. None: the nearest there is.
#include "command/places.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <ostream>

#include "command/arguments.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/reach/reach.hpp"

namespace loopwright::command {
namespace {

using place::Candidate;
using place::Finding;

constexpr std::size_t most_listed = 8;  // more than one reads in an error line

/// What one may type to mean this one of several.
std::string own_name(const Candidate& candidate) {
  return candidate.near.empty() ? candidate.name : candidate.name + ", " + candidate.near;
}

/// True when its own name is no other's of those meant.
bool means_one(const Finding& finding, const Candidate& candidate) {
  return std::count_if(
             finding.candidates.begin(),
             finding.candidates.begin() + static_cast<std::ptrdiff_t>(finding.meant),
             [&](const Candidate& other) { return own_name(other) == own_name(candidate); }) == 1;
}

std::string several(const Finding& finding, const WrittenPlace& place) {
  std::string text = place.option + ": '" + place.text + "' is " +
                     number_word(static_cast<int>(finding.meant)) + " places here: ";
  std::string example;
  for (std::size_t i = 0; i < finding.meant && i < most_listed; ++i) {
    const Candidate& candidate = finding.candidates[i];
    if (example.empty() && means_one(finding, candidate)) example = own_name(candidate);
    text += own_name(candidate) + " (" + candidate.what + ") " + degrees(candidate.at) + "; ";
  }
  if (finding.meant > most_listed) {
    text += std::to_string(finding.meant - most_listed) + " more; ";
  }
  return text + "say which, " + (example.empty() ? "by " : "e.g. '" + example + "' or ") +
         "LAT,LON";
}

std::string none(const Finding& finding, const WrittenPlace& place) {
  std::string text = place.option + ": " + finding.why + "; ";
  const char* before = "try ";
  for (const std::string& instead : finding.instead) {
    text += before + ("'" + instead + "'");
    before = ", ";
  }
  return text + (finding.instead.empty() ? "give LAT,LON" : " or LAT,LON");
}

std::string taken_for(const Finding& finding, const WrittenPlace& place) {
  const Candidate& found = finding.candidates.front();
  std::string text = place.option + " taken for: " + found.name + " (" + found.what + "), " +
                     (found.sort == place::Sort::street ? "middle " : "") + degrees(found.at);
  return finding.note.empty() ? text : text + "; " + finding.note;
}

struct Degrees {
  double lat, lon;
};

/// Two numbers with a comma between; they may lie outside the earth's.
std::optional<Degrees> read_degrees(std::string_view text) {
  const auto parts = split(text, ',');
  if (parts.size() != 2) return std::nullopt;
  const auto lat = read_number(parts[0]), lon = read_number(parts[1]);
  if (!lat || !lon) return std::nullopt;
  return Degrees{*lat, *lon};
}

/// Far from all roads, but near one the other way round: longitude stands first, as some maps give it.
void need_not_swapped(const road::Roads& roads, const WrittenPlace& place) {
  const Point at = *place.at;
  if (std::abs(at.lon()) > 90 || reach::nearest_road(roads, at)) return;
  const Point other = point_from_degrees(at.lon(), at.lat());
  if (!reach::nearest_road(roads, other)) return;
  throw UsageError(place.option + ": " + as_given(place.text) + " is not in this area, but " +
                   degrees(other) + " is: the latitude stands first");
}

bool is_just_that_house(const Finding& finding) {
  const Candidate& found = finding.candidates.front();
  return found.sort == place::Sort::house && found.match == place::Match::exact &&
         finding.note.empty();
}

}  // namespace

std::string place_help(std::string_view before) {
  std::string text(before);
  text += "LAT,LON, or a street, house number, crossing of two streets, postcode or name";
  return text;
}

WrittenPlace read_place(std::string_view option, std::string_view text) {
  const bool can_be_read = printable(text) == text;
  WrittenPlace place{std::string(option), std::string(trim(text)), std::nullopt};
  const auto degrees = read_degrees(text);
  const bool on_earth = degrees && std::abs(degrees->lat) <= 90 && std::abs(degrees->lon) <= 180;
  if (on_earth) place.at = point_from_degrees(degrees->lat, degrees->lon);
  if (can_be_read && (on_earth || (!degrees && !place.text.empty()))) return place;
  throw UsageError(place.option +
                   " takes LAT,LON in degrees, such as 54.2973,2.5981, or a street, " +
                   "house number, crossing, postcode or name, not " + as_given(place.text));
}

Places::Places(const road::Roads& roads, std::ostream& out) : roads_(roads), out_(out) {}

FoundPlace Places::look_up(const WrittenPlace& place) {
  if (place.at) {
    need_not_swapped(roads_, place);
    return {*place.at};
  }
  if (!finder_) finder_ = std::make_unique<place::Finder>(roads_);
  const Finding finding = finder_->find(place.text);
  if (finding.meant > 1) throw UsageError(several(finding, place));
  if (finding.meant == 0) throw UsageError(none(finding, place));
  if (!is_just_that_house(finding)) out_ << taken_for(finding, place) << '\n';
  const Candidate& found = finding.candidates.front();
  return {found.at, found.sort, found.name};
}

}  // namespace loopwright::command
