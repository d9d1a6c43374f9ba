// A pupil as the book keeps one: a code and what planning needs, no more.
//
// Rules: no name, birth date, licence number, photo or diagnosis has a place here (UK GDPR article 5(1)(c), data
// minimisation; a licence number encodes birth date and sex). What is ticked off is kept as the day on which the
// instructor saw it.
#pragma once

#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::book {

/// What the instructor has seen of a pupil, or the pupil has passed.
enum class Tick : std::uint8_t { licence_seen, eyesight_read, theory_passed };
inline constexpr std::array all_ticks{Tick::licence_seen, Tick::eyesight_read, Tick::theory_passed};
std::string_view name(Tick tick);  // "licence-seen"
std::optional<Tick> parse_tick(std::string_view text);

struct Pupil {
  std::string code;    ///< is_code
  std::string scheme;  ///< by which skills are recorded (scheme.hpp)
  Date added = {};
  std::string home = {};  ///< as it is typed for --home; empty: said with each plan
  std::optional<Date> test_day = {};
  bool my_your = false;  ///< mixes left and right: "my side", "your side"
  std::map<Tick, Date> ticks = {};
  std::vector<road::Kind> avoids = {};  ///< kinds that are kept off, ascending
};

/// The longest code a sheet has room for.
inline constexpr std::size_t longest_code = 12;
/// True for up to 12 letters, digits and hyphens, none of them first: short, no full name, and no option of a command.
bool is_code(std::string_view text);

}  // namespace loopwright::book
