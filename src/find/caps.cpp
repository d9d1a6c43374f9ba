// Reads the table once per wish; a name that is missing is our own mistake.
#include "find/caps.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::find {

namespace {

double value_of(const std::vector<TableRow>& rows, std::string_view name) {
  for (const TableRow& row : rows)
    if (row.at(0) == name) return number_cell(row, 1);
  throw std::logic_error("caps.txt has no row '" + std::string(name) + "'");
}

Caps read_caps() {
  const auto rows = read_table(rule_text("caps"));
  Caps caps;
  caps.junction_passes = static_cast<int>(value_of(rows, "junction place passes"));
  caps.stretch_passes = static_cast<int>(value_of(rows, "stretch place passes"));
  caps.quiet_passes = static_cast<int>(value_of(rows, "quiet street passes"));
  caps.spacing_ms = static_cast<std::int64_t>(1000 * value_of(rows, "spacing seconds"));
  caps.overlap_share = value_of(rows, "overlap share");
  caps.overlap_exempt_m = value_of(rows, "overlap exempt metres");
  caps.window_share = value_of(rows, "window share");
  caps.hardness_above_level = static_cast<int>(value_of(rows, "hardness above level"));
  caps.welcome_worth = static_cast<std::int64_t>(value_of(rows, "welcome worth"));
  caps.day_passes = static_cast<int>(value_of(rows, "street passes a day"));
  caps.month_passes = static_cast<int>(value_of(rows, "street passes a month"));
  caps.ledger_free_m = value_of(rows, "ledger free metres");
  caps.easy_first_share = value_of(rows, "easy first share");
  caps.easy_below_level = static_cast<int>(value_of(rows, "easy first below"));
  caps.easy_least = static_cast<int>(value_of(rows, "easy first least"));
  caps.easy_last_share = value_of(rows, "easy last share");
  caps.easy_last_hardest = static_cast<int>(value_of(rows, "easy last hardest"));
  caps.part_leeway = {value_of(rows, "part leeway share"),
                      60 * value_of(rows, "part leeway minutes")};
  caps.part_link_ms = static_cast<std::int64_t>(60'000 * value_of(rows, "part link minutes"));
  for (std::size_t k = 0; k < caps.repeat_worth.size(); ++k)
    caps.repeat_worth[k] =
        static_cast<std::int64_t>(value_of(rows, "repeat worth " + std::to_string(k + 1)));
  return caps;
}

}  // namespace

Caps caps_of(const wish::Wish& wish) {
  Caps caps = read_caps();
  if (wish.place_passes) caps.junction_passes = caps.stretch_passes = *wish.place_passes;
  if (wish.street_passes) caps.quiet_passes = *wish.street_passes;
  return caps;
}

wish::Ramp ramp_of(const wish::Wish& wish, const Caps& caps) {
  return {caps.easy_first_share, caps.easy_last_share,
          std::max(wish.level - caps.easy_below_level, caps.easy_least), caps.easy_last_hardest};
}

std::int64_t spacing_ms_of(const wish::Wish& wish, const wish::Want& want, const Caps& caps) {
  const std::optional<int> asked = wish::spacing_s(wish, want);
  return asked ? std::int64_t{1000} * *asked : caps.spacing_ms;
}

}  // namespace loopwright::find
