// Streets and limits with hours on a drive. Verdicts follow from the hours as written; common
// practice, no outside source.
#include <catch2/catch.hpp>

#include "loopwright/lanes/met.hpp"

namespace loopwright {
namespace {

/// Three stretches, a minute each, from Saturday 28 November 2026 15:00; a rule on the last two.
struct Drive {
  road::Tables tables;
  wish::Loop loop;

  Drive(road::Timed about, std::string_view base, std::string_view text) {
    tables.text_first = {0, 0};
    tables.pieces.resize(3);
    tables.stretches.resize(6);
    for (std::size_t k = 0; k < 3; ++k) {
      const double likely = 60.0 * static_cast<double>(k);
      wish::LoopStretch row;
      row.stretch = StretchId(PieceId{k}, false);
      row.arrive_s = {likely, likely, likely};
      loop.stretches.push_back(row);
      if (k > 0)
        tables.timed_rules.push_back({row.stretch, add(base), add(text), {}, {}, about, {}});
    }
    loop.start = {civil_seconds({{2026, 11, 28}, 15, 0, 0}), 0};
    loop.seconds = {180, 180, 180};
  }

  /// Each text once, so that equal rules have equal ids.
  TextId add(std::string_view text) {
    for (std::size_t id = 1; id + 1 < tables.text_first.size(); ++id) {
      const std::string_view bytes(tables.text_bytes.data(), tables.text_bytes.size());
      const std::size_t from = tables.text_first[id];
      if (bytes.substr(from, tables.text_first[id + 1] - from) == text) return TextId{id};
    }
    tables.text_bytes.insert(tables.text_bytes.end(), text.begin(), text.end());
    tables.text_first.push_back(static_cast<std::uint32_t>(tables.text_bytes.size()));
    return TextId{tables.text_first.size() - 2};
  }

  std::vector<std::string> said(road::Timed about) {
    const road::Roads roads = road::view_of(tables, {});
    const hours::Setting setting;
    std::vector<std::string> all;
    for (const auto& met : lanes::rules_met(roads, loop, about))
      all.push_back(lanes::met_words(met, {roads, loop, setting}));
    return all;
  }
};

using Said = std::vector<std::string>;

}  // namespace

TEST_CASE("a school street is told once, with when we pass", "[lanes]") {
  Drive drive(road::Timed::access, "yes", "no @ (Mo-Fr 08:00-09:00)");
  CHECK(drive.said(road::Timed::access) ==
        Said{"shut Monday to Friday, eight till nine; you pass 15:01 to 15:03: may be driven"});
  CHECK(drive.said(road::Timed::limit).empty());
}

TEST_CASE("a street that is shut when we pass says keep out", "[lanes]") {
  Drive drive(road::Timed::access, "yes", "no @ (Sa 15:02-16:00)");
  CHECK(drive.said(road::Timed::access).front().ends_with("15:01 to 15:03: keep out"));
}

TEST_CASE("a limit that hangs on flashing lights sends us to the signs", "[lanes]") {
  Drive drive(road::Timed::limit, "30 mph", "20 mph @ flashing");
  CHECK(drive.said(road::Timed::limit) ==
        Said{"20 mph when lights flash, else 30 mph; you pass 15:01 to 15:03: 30 mph or 20 mph, "
             "check the signs"});
}

}  // namespace loopwright
