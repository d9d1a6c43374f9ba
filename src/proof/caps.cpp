// Method: the rows "repeat worth 1, 2, …" are read as long as there is a next one; every other
// name must be there.
#include "proof/caps.hpp"

#include <optional>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"

namespace loopwright::proof {
namespace {

std::optional<double> find_number(const std::vector<TableRow>& rows, std::string_view name) {
  for (const TableRow& row : rows)
    if (row.front() == name) return number_cell(row, 1);
  return {};
}

double number(const std::vector<TableRow>& rows, std::string_view name) {
  const auto found = find_number(rows, name);
  if (!found) throw std::logic_error("rule table caps: no row '" + std::string(name) + "'");
  return *found;
}

Caps read_caps() {
  const std::vector<TableRow> rows = read_table(rule_text("caps"));
  const auto whole = [&](std::string_view name) { return static_cast<int>(number(rows, name)); };
  Caps caps;
  caps.junction_passes = whole("junction place passes");
  caps.stretch_passes = whole("stretch place passes");
  caps.quiet_passes = whole("quiet street passes");
  caps.spacing_s = number(rows, "spacing seconds");
  caps.overlap_share = number(rows, "overlap share");
  caps.overlap_exempt_m = number(rows, "overlap exempt metres");
  caps.window_share = number(rows, "window share");
  caps.hardness_above_level = whole("hardness above level");
  caps.day_passes = whole("street passes a day");
  caps.month_passes = whole("street passes a month");
  caps.ledger_free_m = number(rows, "ledger free metres");
  caps.welcome_worth = whole("welcome worth");
  caps.easy_first_share = number(rows, "easy first share");
  caps.easy_last_share = number(rows, "easy last share");
  caps.easy_below_level = whole("easy first below");
  caps.easy_least = whole("easy first least");
  caps.easy_last_hardest = whole("easy last hardest");
  caps.part_leeway_share = number(rows, "part leeway share");
  caps.part_leeway_minutes = number(rows, "part leeway minutes");
  caps.part_link_minutes = number(rows, "part link minutes");
  while (const auto worth =
             find_number(rows, "repeat worth " + std::to_string(caps.repeat_worth.size() + 1)))
    caps.repeat_worth.push_back(static_cast<int>(*worth));
  return caps;
}

}  // namespace

Caps caps_of(const wish::Wish& wish) {
  Caps caps = read_caps();
  caps.junction_passes = wish.place_passes.value_or(caps.junction_passes);
  caps.stretch_passes = wish.place_passes.value_or(caps.stretch_passes);
  caps.quiet_passes = wish.street_passes.value_or(caps.quiet_passes);
  return caps;
}

}  // namespace loopwright::proof
