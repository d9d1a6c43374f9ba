// Streets and limits with hours on a drive. Verdicts follow from the hours as written; common
// practice, no outside source.
#include <catch2/catch.hpp>

#include "loopwright/lanes/met.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/lanes/timed_things.hpp"

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

/// A turn rule that the drive above meets from its first stretch into its second.
struct TurnDrive : Drive {
  TurnDrive(std::string_view tag, std::string_view condition, bool only = false)
      : Drive(road::Timed::access, "yes", "no @ (Mo 08:00-09:00)") {
    tables.rule_path = {loop.stretches[0].stretch, StretchId(PieceId{only ? 2U : 1U}, false)};
    road::TurnRule rule;
    rule.path_count = 2, rule.text = add(tag), rule.condition = add(condition);
    rule.only = only ? 1 : 0;
    tables.turn_rules.push_back(rule);
  }
  std::string turned() {
    const road::Roads roads = road::view_of(tables, {});
    const hours::Setting setting;
    std::string all;
    for (const lanes::TurnMet& met : lanes::turns_met(roads, loop)) {
      const lanes::Said said = lanes::said_of(met, {roads, loop, setting});
      all += said.rule + lanes::when_passing(said.when) + ": " + said.verdict;
    }
    return all;
  }
};

}  // namespace

TEST_CASE("a school street is told once, with when we pass", "[lanes]") {
  Drive drive(road::Timed::access, "yes", "no @ (Mo-Fr 08:00-09:00)");
  CHECK(drive.said(road::Timed::access) ==
        Said{"shut Monday to Friday, eight till nine; you pass 15:01 to 15:03: may be driven"});
  CHECK(drive.said(road::Timed::limit).empty());
}

TEST_CASE("a rule on the street one sets out in is told", "[lanes]") {
  Drive drive(road::Timed::access, "yes", "no @ (Mo-Fr 08:00-09:00)");
  road::TimedRule first = drive.tables.timed_rules.front();
  first.stretch = drive.loop.stretches[0].stretch;
  drive.tables.timed_rules = {first};
  CHECK(drive.said(road::Timed::access) ==
        Said{"shut Monday to Friday, eight till nine; you pass 15:00 to 15:01: may be driven"});
}

TEST_CASE("a limit is met also where the same street has hours of access first", "[lanes]") {
  Drive drive(road::Timed::access, "yes", "no @ (Mo-Fr 08:00-09:00)");
  const StretchId street = drive.tables.timed_rules.front().stretch;
  const TextId base = drive.add("30 mph"), text = drive.add("20 mph @ (15:00-16:00)");
  drive.tables.timed_rules.insert(
      drive.tables.timed_rules.begin() + 1,
      road::TimedRule{street, base, text, {}, {}, road::Timed::limit, {}});
  const road::Roads roads = road::view_of(drive.tables, {});
  const std::int64_t from = drive.loop.start.unix_s;
  const lanes::LimitWhen limit =
      lanes::limit_when(roads, street, {Instant{from}, Instant{from + 60}}, hours::Setting{});
  CHECK(limit.values == std::vector<std::string>{"20 mph"});
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

TEST_CASE("a turn with hours is told as its sign is spoken of, without a tag", "[lanes]") {
  TurnDrive drive("restriction:conditional=no_left_turn @ (Mo-Sa 07:00-10:00)",
                  "Mo-Sa 07:00-10:00");
  CHECK(drive.turned() ==
        "no left turn Monday to Saturday, seven till ten; you pass 15:00 to 15:01: may be made");
}

TEST_CASE("a turn that is forbidden when we are there says keep out", "[lanes]") {
  TurnDrive drive("restriction=no_u_turn", "Sa 15:00-16:00");
  CHECK(drive.turned().starts_with("no U-turn Saturday"));
  CHECK(drive.turned().ends_with("keep out"));
}

TEST_CASE("an only turn with hours is met by whoever goes another way", "[lanes]") {
  TurnDrive drive("restriction=only_straight_on", "Mo-Fr 07:00-10:00", true);
  CHECK(drive.turned().starts_with("ahead only Monday to Friday, seven till ten"));
}

TEST_CASE("a tag that names two turns leaves open which one the rule forbids", "[lanes]") {
  TurnDrive drive(
      "restriction:conditional=no_left_turn @ (Mo 07:00-08:00); no_right_turn @ (Tu 07:00-08:00)",
      "Tu 07:00-08:00");
  CHECK(drive.turned().starts_with("no such turn Tuesday, seven till eight"));
}

TEST_CASE("a turn whose hours can't be read says so", "[lanes]") {
  TurnDrive drive("restriction=no_left_turn", "?");
  CHECK(drive.turned().starts_with("no left turn at hours that can't be read (?)"));
  CHECK(drive.turned().ends_with("keep out"));
}

// A "no" binds whoever drives it to its end; an "only" whoever has driven its first two stretches, or the first
// where it has but two, and then leaves it (OSM wiki, Relation:restriction; by way of a road: MAP-TAGS).
TEST_CASE("a turn is made against its rule at the row that makes it so", "[lanes]") {
  const auto against = [](bool only, std::vector<std::size_t> path, std::size_t first = 0,
                          std::size_t rows = 3) {
    Drive drive(road::Timed::access, "yes", "no @ (Mo 08:00-09:00)");
    for (const std::size_t piece : path)
      drive.tables.rule_path.push_back(StretchId(PieceId{piece}, piece > 2));
    road::TurnRule rule;
    rule.path_count = static_cast<std::uint8_t>(path.size());
    rule.only = only ? 1 : 0;
    drive.tables.turn_rules.push_back(rule);
    drive.loop.stretches.resize(rows);
    const road::Roads roads = road::view_of(drive.tables, {});
    return lanes::turned_against(roads, drive.loop, roads.turn_rules[0], first);
  };
  const bool only = true, no = false;
  CHECK(against(no, {0, 1}) == 1);
  CHECK(against(no, {0, 1, 2}) == 2);
  CHECK(against(no, {1, 2}, 1) == 2);
  CHECK(against(no, {0, 1, 2}, 0, 2) == 0);  // the drive ends before
  CHECK(against(no, {0, 2}) == 0);
  CHECK(against(no, {1, 2}) == 0);
  CHECK(against(only, {0, 1}) == 0);
  CHECK(against(only, {0, 2}) == 1);
  CHECK(against(only, {0, 2}, 0, 1) == 0);
  CHECK(against(only, {0, 1, 1}) == 2);
  CHECK(against(only, {0, 1, 2}) == 0);
  CHECK(against(only, {0, 2, 1}) == 0);  // it never was in the second
  CHECK(against(only, {0, 1, 1}, 0, 2) == 0);
  CHECK(against(only, {1, 2}) == 0);
}

TEST_CASE("a turn with hours is listed by the streets it leads from and into", "[lanes]") {
  TurnDrive drive("restriction:conditional=no_left_turn @ (Mo-Sa 07:00-10:00)",
                  "Mo-Sa 07:00-10:00");
  const char* names[] = {"Osk Road", "Mill Lane", "Bell Yard"};
  for (std::size_t k = 0; k < 3; ++k) drive.tables.pieces[k].name = drive.add(names[k]);
  const road::Roads roads = road::view_of(drive.tables, {});
  const hours::Setting setting;
  std::string streets;
  for (const lanes::TimedThing& thing : lanes::things_on({roads, drive.loop, setting}))
    if (thing.thing == lanes::Thing::turn) streets += thing.street + "; ";
  CHECK(streets == "Osk Road into Mill Lane; ");
}

}  // namespace loopwright
