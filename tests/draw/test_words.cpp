// All words on maps and sketches are those of the table.
#include <catch2/catch.hpp>

#include <algorithm>

#include "draw/driven.hpp"
#include "loopwright/draw/overview.hpp"
#include "loopwright/draw/strip.hpp"
#include "support/honest_loop.hpp"
#include "support/tables_of_words.hpp"

namespace loopwright::test {
namespace {

// Without names, so that every letter is of the table.
constexpr const char* nameless = R"(
          N
    A  B  C  E
          S
   w1 AB  highway=residential
   w2 BCE highway=tertiary
   w3 NC  highway=tertiary
   w4 CS  highway=tertiary oneway=yes
   nC highway=stop
)";

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/// Labels that aren't of the foreign table. P, the sign of a place to pull up, is no word.
std::vector<std::string> not_foreign(const draw::Picture& picture) {
  std::vector<std::string> odd;
  for (const draw::Label& label : labels_in(picture))
    if (std::ranges::any_of(label.text, is_letter) && label.text != "P" &&
        label.text.find('x') == std::string::npos)
      odd.push_back(label.text);
  return odd;
}

}  // namespace

TEST_CASE("maps and sketches speak another language when the table does", "[draw]") {
  const std::string table = foreign_table();
  const say::Words words{table};
  const BuiltTown town = built_town(draw_town(nameless, 100), "GB-ENG");
  const wish::Loop loop = honest_answer(town, "ABCNCBA").loops[0];
  const draw::Picture map = draw::overview(town.roads(), loop, {}, words)[0];
  CHECK(not_foreign(map) == std::vector<std::string>{});
  CHECK(labels_in(map).size() >= 4);
  const draw::Picture strip = draw::strip_map(town.roads(), loop, {}, words)[0];
  CHECK(not_foreign(strip) == std::vector<std::string>{});
  CHECK(labels_in(strip).size() >= 2);
  const draw::Picture sketch =
      draw::briefing_sketch(town.roads(), loop, {1, 2}, {"x", {92, 125}, words});
  CHECK(not_foreign(sketch) == std::vector<std::string>{});
  CHECK(labels_in(sketch).size() >= 5);
}

}  // namespace loopwright::test
