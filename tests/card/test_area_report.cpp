// The report of a build, as an instructor reads it.
#include <catch2/catch.hpp>

#include "card/card_town.hpp"
#include "loopwright/card/area_report.hpp"
#include "support/golden.hpp"

namespace loopwright::test {
namespace {

using Catch::Contains;

std::string report_of(const BuiltTown& town, card::DocumentForm form) {
  return card::write_area_report(town.roads(), town.report, form);
}

std::string text_of(const BuiltTown& town) {
  return report_of(town, card::DocumentForm::text);
}

}  // namespace

TEST_CASE("the report of a small town reads as approved", "[card]") {
  BuiltTown town = built_card_town();
  town.built.info.source_file = "small.opl";
  check_golden("town-report.txt", text_of(town));
  check_golden("town-report.html", report_of(town, card::DocumentForm::html));
}

TEST_CASE("a report of nothing claims nothing", "[card]") {
  const std::string text = card::write_area_report({}, {}, card::DocumentForm::text);
  CHECK_THAT(text, Contains("Not found here: roundabout"));
  CHECK_THAT(text, Contains("Nothing that contradicts itself."));
  CHECK_THAT(text, !Contains(" of the road has a mapped one"));
}

TEST_CASE("what is inferred is counted apart, with how and where to look", "[card]") {
  const BuiltTown town = built_town(R"(
    A    z    B    y    C
  w1 AzByC highway=tertiary name=Mill_Street
  nz       highway=crossing crossing=zebra
  ny       highway=crossing crossing=marked
  )");
  const std::string text = text_of(town);
  CHECK_THAT(text, Contains("zebra                       1         1"));
  CHECK_THAT(text, Contains("Zebra, 1 of 2: crossing=zebra or its markings"));
  CHECK_THAT(text, Contains("For instance Mill") && Contains("54.2"));
}

TEST_CASE("some is never rounded to all or none", "[card]") {
  const BuiltTown town = built_town(R"(
    A                                                            B C
  w1 AB highway=residential lit=yes
  w2 BC highway=residential
  )");
  const std::string text = text_of(town);
  CHECK_THAT(text, Contains("3 % of the residential streets, by length, carry no word of street"));
  CHECK_THAT(text, Contains("No part of the residential streets carries a width."));
  road::Report report;
  report.cover("main roads", "a width", 100000, 1);
  CHECK_THAT(card::write_area_report({}, report, card::DocumentForm::text),
             Contains("99 % of the main roads"));
}

TEST_CASE("what to mend is listed by place, with the object", "[card]") {
  const BuiltTown town = built_town(R"(
    A    B    C
         s
  w1 AB highway=residential name=Mill_Street width=narrow
  w2 BC highway=residential
  f1 s  place=village name=Stavely
  )");
  const std::string text = text_of(town);
  CHECK_THAT(text, Contains("\nStavely\n  Mill Street ("));
  CHECK_THAT(text, Contains("width can't be read, width=narrow [way 1]"));
}

TEST_CASE("names with markup in them do no harm to the page", "[card]") {
  const BuiltTown town = built_town(R"(
    A    B
  w1 AB highway=residential name=<b>&_Sons width=narrow
  )");
  const std::string html = report_of(town, card::DocumentForm::html);
  CHECK_THAT(html, Contains("&lt;b&gt;&amp; Sons") && !Contains("<b>"));
}

}  // namespace loopwright::test
