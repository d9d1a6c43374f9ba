// Words of the command `lanes`: where a lane lies, who may use it, what to read on its plate.
#pragma once

#include <string>
#include <string_view>

#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// "bus lane on the left, lane 1 of 3 from the left", "bus gate"
std::string lane_words(const wish::BusLanePass& lane);

/// "buses, taxis and cycles" of "bus;taxi;bicycle"
std::string users_words(std::string_view who);

/// What the sign at it says, and how to take one without times.
std::string plate_words(const wish::BusLanePass& lane);

/// "Monday to Saturday, seven till ten", "hours not mapped"
std::string hours_words(const wish::BusLanePass& lane);

/// "16:00", or "Tuesday 1 December 2026, 07:00" on another day than the one given.
std::string change_words(const Instant& change, const Date& today);


}  // namespace loopwright::command
