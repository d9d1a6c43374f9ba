// Small texts that sheet and exchange files share: dates, limits, wants, rows by number.
#pragma once

#include <string>
#include <vector>

#include "card/timed.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/lanes/door_kerb.hpp"
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
std::vector<std::string> cautions_for(const say::Words& words, const wish::Loop& loop,
                                      const std::vector<Timed>& timed);

/// The same as one text, after what bars driving so.
std::string cautions_in_one(const say::Words& words, const wish::Loop& loop,
                            const std::vector<Timed>& timed);

/// "Costard Road: shut Monday to Friday, eight till nine; passed 10:05 to 10:07: may be driven"
std::string hours_in_one(const say::Words& words, const Timed& timed);

/// "the kerb here: no parking …; in force at 15:57: only set down here, talk elsewhere", of a row of so
/// many; empty but for the first and the last, and when no mapped ban may hold there then.
std::string write_kerb(const say::Words& words, const std::vector<lanes::DoorKerb>& kerbs,
                       std::size_t row, std::size_t rows);

}  // namespace loopwright::card
