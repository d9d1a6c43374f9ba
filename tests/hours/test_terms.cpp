// The file's form is ours; what counts as a school holiday is OSM wiki
// Key:opening_hours/specification (SH).
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/hours/terms.hpp"

namespace loopwright::hours {

TEST_CASE("an empty file of terms tells nothing", "[hours]") {
  CHECK(read_terms("", "terms.txt").empty());
  CHECK(read_terms("# none yet\n\n", "terms.txt").holiday({2026, 12, 1}) == Tri::unknown);
}

TEST_CASE("between two parts of a term the schools are shut", "[hours]") {
  const SchoolTerms terms = read_terms(
      "2026-11-02 2026-12-18  autumn, second half\n2026-09-02 2026-10-23 autumn # Wenshire\n",
      "terms.txt");
  CHECK(terms.holiday({2026, 9, 2}) == Tri::no);
  CHECK(terms.holiday({2026, 10, 23}) == Tri::no);
  CHECK(terms.holiday({2026, 10, 24}) == Tri::yes);
  CHECK(terms.holiday({2026, 11, 1}) == Tri::yes);
  CHECK(terms.holiday({2026, 11, 2}) == Tri::no);
}

TEST_CASE("a Saturday inside a term is no school holiday", "[hours]") {
  CHECK(read_terms("2026-09-02 2026-10-23", "t").holiday({2026, 9, 5}) == Tri::no);
}

TEST_CASE("before the first and after the last day listed nothing is known", "[hours]") {
  const SchoolTerms terms = read_terms("2026-09-02 2026-10-23\r\n", "terms.txt");
  CHECK(terms.holiday({2026, 9, 1}) == Tri::unknown);
  CHECK(terms.holiday({2026, 10, 24}) == Tri::unknown);
}

TEST_CASE("a line of terms that can't be meant is told with its number", "[hours]") {
  CHECK_THROWS_WITH(read_terms("\n2026-09-02\n", "terms.txt"),
                    "terms.txt, line 2: no two dates; write the first and last school day: "
                    "2026-09-02 2026-10-23");
  CHECK_THROWS_WITH(read_terms("2026-02-30 2026-03-01", "t"),
                    Catch::StartsWith("t, line 1: no two"));
  CHECK_THROWS_WITH(read_terms("2026-09-02 2026-09-01", "terms.txt"),
                    "terms.txt, line 1: it ends before it begins");
  CHECK_THROWS_WITH(read_terms("2026-09-02 2026-10-23\n2026-10-23 2026-12-01", "terms.txt"),
                    "terms.txt, line 2: it shares days with another line");
}

}  // namespace loopwright::hours
