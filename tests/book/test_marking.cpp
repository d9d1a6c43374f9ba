#include <catch2/catch.hpp>
#include <set>

#include "loopwright/book/marking.hpp"

namespace loopwright::book {
namespace {

// gov.uk, "Understanding your driving test result".
TEST_CASE("fifteen driving faults pass a mock test, sixteen or one serious or dangerous fail",
          "[book][marking]") {
  const Date day{2026, 11, 28};
  CHECK(is_passed({}, day));
  CHECK(is_passed({15, 0, 0}, day));
  CHECK_FALSE(is_passed({16, 0, 0}, day));
  CHECK_FALSE(is_passed({0, 1, 0}, day));
  CHECK_FALSE(is_passed({0, 0, 1}, day));
}

TEST_CASE("every heading of the marking sheet has a code of its own", "[book][marking]") {
  std::set<std::string_view> codes;
  for (const Heading& heading : headings()) codes.insert(heading.code);
  CHECK(codes.size() == headings().size());
  REQUIRE(find_heading("junction-observation") != nullptr);
  CHECK(find_heading("junction-observation")->name == "junctions, observation");
  CHECK(find_heading("junctions") == nullptr);
}

TEST_CASE("grades, help and stepping in are read as they are written", "[book][marking]") {
  for (const Grade grade : {Grade::driving, Grade::serious, Grade::dangerous})
    CHECK(parse_grade(name(grade)) == grade);
  for (const Help help : {Help::talked, Help::guided, Help::prompted, Help::alone})
    CHECK(parse_help(name(help)) == help);
  for (const Intervention how : {Intervention::words, Intervention::wheel, Intervention::pedals})
    CHECK(parse_intervention(name(how)) == how);
  CHECK_FALSE(parse_grade("minor"));
}

}  // namespace
}  // namespace loopwright::book
