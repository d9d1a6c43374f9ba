// Method: the first two towns and the first two numbers of the way's destination tags: a glance at a
// sheet takes no more. Source: OSM wiki, page Key:destination.
#include "say/signed_to.hpp"

#include <algorithm>

#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::say {
namespace {

constexpr std::size_t most_of_a_list = 2;

void add_first(std::string_view list, std::string& text) {
  const auto parts = split(list, ';');
  std::vector<std::string> told;
  for (const std::string_view part : parts) {
    const std::string name = printable(part);
    if (name.empty() || std::find(told.begin(), told.end(), name) != told.end()) continue;
    if (told.size() == most_of_a_list) break;
    told.push_back(name);
    text.append(text.empty() ? "" : ", ").append(name);
  }
}

}  // namespace

std::string signed_to(const Drive& drive, const Moment& moment) {
  const bool leads_on = moment.kind != RowKind::leave && moment.kind != RowKind::warn &&
                        moment.kind != RowKind::pull_up && moment.kind != RowKind::turn_round;
  if (!leads_on) return {};
  std::string text;
  for (const road::SignedTo& sign : drive.roads().signs_of(drive.at(moment.exit))) {
    add_first(drive.roads().text(sign.destination), text);
    add_first(drive.roads().text(sign.ref), text);
  }
  return text;
}

}  // namespace loopwright::say
