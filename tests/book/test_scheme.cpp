#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

#include "loopwright/book/scheme.hpp"

namespace loopwright::book {
namespace {

std::vector<int> group_sizes(const Scheme& scheme) {
  std::vector<int> sizes;
  std::string_view group;
  for (const Skill& skill : scheme.skills) {
    if (skill.group != group || sizes.empty()) sizes.push_back(0);
    group = skill.group;
    ++sizes.back();
  }
  return sizes;
}

// gov.uk, "Driver's record for learner drivers" (DVSA, Open Government Licence v3).
TEST_CASE("the driver's record has 27 skills in 8 groups and five levels", "[book][scheme]") {
  const Scheme* scheme = find_scheme("car-27");
  REQUIRE(scheme != nullptr);
  CHECK(scheme->skills.size() == 27);
  CHECK(group_sizes(*scheme) == std::vector<int>{4, 3, 6, 3, 4, 3, 3, 1});
  CHECK(scheme->level_names == std::vector<std::string_view>{"introduced", "helped", "prompted",
                                                             "independent", "reflection"});
}

// nidirect; the list itself is from memory, as the table says.
TEST_CASE("Northern Ireland keeps the older record of 24 skills", "[book][scheme]") {
  CHECK(scheme_of("GB-NIR", {2026, 11, 28}).code == "car-24");
  CHECK(scheme_of("GB-NIR", {2026, 11, 28}).skills.size() == 24);
  CHECK(scheme_of("GB-NIR", {2026, 11, 28}).level_name(4) == "seldom prompted");
  CHECK(scheme_of("GB-WLS", {2026, 11, 28}).code == "car-27");
  CHECK(find_scheme("car-99") == nullptr);
}

TEST_CASE("a skill's code stands once in a scheme, and so does a kind of practice",
          "[book][scheme]") {
  for (const Scheme& scheme : schemes()) {
    std::set<std::string_view> codes;
    std::set<road::Kind> kinds;
    std::size_t listed = 0;
    for (const Skill& skill : scheme.skills) {
      codes.insert(skill.code);
      kinds.insert(skill.kinds.begin(), skill.kinds.end());
      listed += skill.kinds.size();
      CHECK((skill.rank >= 1 && skill.rank <= 10 && skill.stale_after_days > 0));
    }
    CHECK(codes.size() == scheme.skills.size());
    CHECK(kinds.size() == listed);
    CHECK(scheme.level_names.size() == highest_level);
  }
}

TEST_CASE("every kind of practice serves a skill of the driver's record", "[book][scheme]") {
  for (const road::Kind kind : road::all_kinds()) {
    INFO(road::name(kind));
    CHECK(find_scheme("car-27")->skill_of(kind) != nullptr);
  }
  CHECK(find_scheme("car-27")->skill_of(road::Kind::mini_roundabout)->code == "roundabouts");
  // The older record knows no motorways.
  CHECK(find_scheme("car-24")->skill_of(road::Kind::motorway) == nullptr);
}

}  // namespace
}  // namespace loopwright::book
