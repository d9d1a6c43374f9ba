#include <algorithm>
#include <array>
#include <cstdio>
#include <ostream>

#include "county/check.hpp"

namespace loopwright::county {
namespace {

void line(std::ostream& out, const std::string& name, const std::array<std::string, 5>& cells) {
  std::array<char, 96> text{};
  std::snprintf(text.data(), text.size(), "%-24s%9s%9s%9s%9s%11s", name.c_str(), cells[0].c_str(),
                cells[1].c_str(), cells[2].c_str(), cells[3].c_str(), cells[4].c_str());
  out << text.data() << '\n';
}

}  // namespace

bool Verdict::clean() const {
  return std::ranges::all_of(kinds, [](const Tally& t) { return t.missed == 0 && t.wrong == 0; });
}

Verdict check(const Truth& truth, const road::Roads& roads) {
  Verdict verdict;
  check_places(truth, roads, verdict);
  check_runs(truth, roads, verdict);
  check_bus_lanes(truth, roads, verdict);
  return verdict;
}

void print(std::ostream& out, const Verdict& verdict, std::size_t examples) {
  line(out, "kind", {"planted", "found", "missed", "false", "by a rule"});
  Tally all;
  for (const road::Kind kind : road::all_kinds()) {
    const Tally& t = verdict.kinds.at(static_cast<std::size_t>(kind));
    line(out, std::string(road::name(kind)),
         {std::to_string(t.planted), std::to_string(t.found), std::to_string(t.missed),
          std::to_string(t.wrong), std::to_string(t.by_rule)});
    all.planted += t.planted, all.found += t.found, all.missed += t.missed;
    all.wrong += t.wrong, all.by_rule += t.by_rule;
  }
  line(out, "all",
       {std::to_string(all.planted), std::to_string(all.found), std::to_string(all.missed),
        std::to_string(all.wrong), std::to_string(all.by_rule)});
  if (verdict.cut_off > 0)
    out << "on roads that nothing leads into or out of: " << verdict.cut_off << '\n';
  for (const road::Kind kind : road::all_kinds()) {
    const Tally& t = verdict.kinds.at(static_cast<std::size_t>(kind));
    for (std::size_t i = 0; i < std::min(examples, t.examples.size()); ++i)
      out << road::name(kind) << ": " << t.examples[i] << '\n';
  }
}

}  // namespace loopwright::county
