// The words of a command line, checked one by one before any file is opened.
//
//   Options app{"…", "…"};   app.add_option(…);   if (!parse(app, words)) return Exit::done;
//
// Rules: every option is read as text by CLI11 and turned into a value here, so that each refusal
// is one line of ours: the option, what it takes, what was given. Throws UsageError.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "command/options.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/base/region.hpp"
#include "loopwright/command/command.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// What was given instead of what an option takes, for its refusal: "'noon'"; of a long text its
/// beginning, and of one with signs that can't be printed only that.
std::string as_given(std::string_view text);

struct Between {
  int low, high;
};
/// "60" for an option that takes whole numbers between the two.
int whole_number(std::string_view option, std::string_view text, Between allowed);

/// "GB-ENG, GB-WLS, … or the ISO 3166 code of another country"
inline constexpr std::string_view regions_there_are =
    "GB-ENG, GB-WLS, GB-SCT, GB-NIR, IE, or the ISO 3166 code of another country";
/// The region of a code given with --region.
Region region_named(std::string_view code);

/// "2026-11-28T15:00", with or without an offset.
WrittenTime time_of(std::string_view option, std::string_view text);

/// The moment a written time means in a time zone, or in an area; now when none was given.
Instant moment(const std::optional<WrittenTime>& written, std::string_view zone);
Instant moment(const std::optional<WrittenTime>& written, const road::AreaInfo& area);

/// The kinds there are to ask for, with their movements, for the end of a help text.
std::string kinds_help();

/// The options that commands which tell times have in common, as typed.
struct TripTexts {
  std::string start, level, pace;
};
/// What --pace says, 0.8 to 1.6, in hundredths as the loop file keeps it. Throws UsageError.
double read_pace(std::string_view text);
/// Its help.
inline constexpr const char* pace_help =
    "how many times as long as the usual learner's of that level this one's driving takes, 0.8 to "
    "1.6 (default: 1)";

void add_trip(Options& app, TripTexts& texts);

struct Trip {
  std::optional<WrittenTime> start;
  std::optional<int> level;
  double pace = wish::usual_pace;
  [[nodiscard]] int level_or_usual() const { return level.value_or(3); }
};
Trip trip_of(const TripTexts& texts);

}  // namespace loopwright::command
