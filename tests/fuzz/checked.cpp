#include "checked.hpp"

namespace loopwright::fuzz {
namespace {

using hours::SchoolTerms;
using hours::Setting;

/// FNV-1a, 64 bits.
std::uint64_t hash_of(std::string_view text) {
  std::uint64_t hash = 14'695'981'039'346'656'037U;
  for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1'099'511'628'211U;
  return hash;
}

Instant moment(const CivilTime& civil) {
  return {civil_seconds(civil), 0};
}

const std::array<Setting, 4>& settings() {
  static const std::array<Setting, 4> all{
      Setting{},
      Setting("GB-SCT", "Europe/London", Point{559'500'000, -31'900'000},
              SchoolTerms({{{2026, 8, 19}, {2026, 10, 9}}, {{2026, 10, 26}, {2026, 12, 18}}})),
      Setting("GB-ENG", "Europe/London", Point{515'000'000, -1'200'000}),
      Setting("NO", "Arctic/Longyearbyen", Point{782'200'000, 156'400'000})};
  return all;
}

Instant within(std::uint64_t hash, std::int64_t from, std::int64_t length) {
  return {from + static_cast<std::int64_t>(hash % static_cast<std::uint64_t>(length)), 0};
}

}  // namespace

std::array<Ask, 6> asks(std::string_view text) {
  const std::uint64_t hash = hash_of(text);
  const auto setting = [hash](unsigned row) -> const Setting& {
    return settings()[(hash + row) % settings().size()];
  };
  constexpr std::int64_t from_1965 = -157'766'400, years_100 = 3'155'760'000;
  constexpr std::int64_t from_2026 = 1'767'225'600, year = 31'536'000;
  return {{{moment({{2026, 10, 25}, 0, 30, 0}), setting(0)},
           {moment({{2026, 3, 29}, 0, 59, 59}), setting(1)},
           {moment({{2026, 12, 31}, 23, 59, 0}), setting(2)},
           {moment({{2028, 2, 29}, 12, 0, 0}), setting(3)},
           {within(hash, from_2026, year), setting(4)},
           {within(hash, from_1965, years_100), setting(1)}}};
}

}  // namespace loopwright::fuzz
