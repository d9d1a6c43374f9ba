// Forms as documented: OSM wiki Conditional restrictions; Key:maxspeed:conditional;
// Key:lanes:bus.
#include <catch2/catch.hpp>

#include "loopwright/hours/hours.hpp"

namespace loopwright {
namespace {

using hours::Clause;
using hours::read_conditional;
using Clauses = std::vector<Clause>;

TEST_CASE("a text without a condition has no clauses", "[hours]") {
  CHECK(read_conditional("").empty());
  CHECK(read_conditional("no").empty());
}

TEST_CASE("a conditional value is its value and its condition, brackets off", "[hours]") {
  CHECK(read_conditional("1 @ (Mo-Fr 07:00-10:00,16:00-19:00)") ==
        Clauses{{"1", "Mo-Fr 07:00-10:00,16:00-19:00"}});
  CHECK(read_conditional("20 mph @ flashing") == Clauses{{"20 mph", "flashing"}});
  CHECK(read_conditional("yes|no @(Mo-Fr 07:00-10:00 )") ==
        Clauses{{"yes|no", "Mo-Fr 07:00-10:00"}});
}

TEST_CASE("several clauses are kept in their order", "[hours]") {
  CHECK(read_conditional("none @ 20:00-22:00; 100 @ 22:00-06:00") ==
        Clauses{{"none", "20:00-22:00"}, {"100", "22:00-06:00"}});
  CHECK(read_conditional("no @ (Mo-Sa 07:00-16:00); yes @ (Mo-Sa 13:00-14:00)") ==
        Clauses{{"no", "Mo-Sa 07:00-16:00"}, {"yes", "Mo-Sa 13:00-14:00"}});
}

// Trap 9: brackets forgotten.
TEST_CASE("a piece without a value belongs to the clause before", "[hours]") {
  CHECK(read_conditional("1 @ Mo-Fr 07:00-10:00; PH off") ==
        Clauses{{"1", "Mo-Fr 07:00-10:00; PH off"}});
  CHECK(read_conditional("no; yes @ (Su)") == Clauses{{"no", ""}, {"yes", "Su"}});
}

TEST_CASE("semicolons in brackets and quotes separate nothing", "[hours]") {
  CHECK(read_conditional("no @ (Mo-Fr 08:00-09:00; PH off); yes @ (Sa)") ==
        Clauses{{"no", "Mo-Fr 08:00-09:00; PH off"}, {"yes", "Sa"}});
  CHECK(read_conditional("no @ (07:00-10:00 \"a;(b\"); yes @ Su") ==
        Clauses{{"no", "07:00-10:00 \"a;(b\""}, {"yes", "Su"}});
}

TEST_CASE("only brackets around all of a condition come off", "[hours]") {
  CHECK(read_conditional("no @ (07:00-10:00) AND (weight>7.5)") ==
        Clauses{{"no", "(07:00-10:00) AND (weight>7.5)"}});
  CHECK(read_conditional("no @ (07:00-10:00") == Clauses{{"no", "(07:00-10:00"}});
}

}  // namespace
}  // namespace loopwright
