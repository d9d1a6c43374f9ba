// Small texts that sheet and exchange files share: dates, limits, wants, rows by number.
#pragma once

#include <string>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/lanes/met.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/say/words.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::card {

/// "Saturday 28 November 2026, 15:00"
std::string write_when(const say::Words& words, const Instant& at);
/// "map © OpenStreetMap contributors, ODbL, as of 12 November 2026"
std::string write_credit(const say::Words& words, const road::Roads& roads);
/// "limit 20"
std::string write_limit(const say::Words& words, const road::LimitOnDay& limit);
/// "roundabout right"
std::string write_kind(const say::Words& words, road::Kind kind, road::Movement movement);
/// "roundabout right 3"
std::string write_asked(const say::Words& words, const wish::Want& want);
/// What isn't sure of an inferred pass of this kind: "who gives way is inferred".
std::string write_unsure(const say::Words& words, road::Kind kind);
/// "rows 1 to 3, 5"; ascending row numbers from 1, at least one.
std::string write_rows(const say::Words& words, const std::vector<std::size_t>& numbers);
/// "3 min"
std::string write_minutes(const say::Words& words, double seconds);
/// The cautions that this drive calls for, a sentence each.
std::vector<std::string> cautions_for(const say::Words& words, const wish::Loop& loop);

/// A street or limit with hours that the drive meets: "Costard Road", "shut …; you pass …".
struct HoursLine {
  std::size_t stretch = 0;
  std::string street, rule;
};
/// In driving order, streets before limits.
std::vector<HoursLine> hours_met(const lanes::TimedDrive& drive, const say::Words& words);

}  // namespace loopwright::card
