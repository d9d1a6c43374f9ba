// Independent driving and variants in the loop file: what is written is read again, what is odd is refused.
#include <catch2/catch.hpp>
#include <string>

#include "file/sample_answer.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

wish::Answer sample() {
  wish::Answer answer = sample_answer();
  answer.wish.independent_minutes = 15;
  wish::Loop& loop = answer.loops.front();
  loop.independent = {{0, 1, "A7901", {}}, {1, 1, "", {"turn left into Mill Road"}}};
  answer.loops.push_back(loop);
  answer.loops.back().variant = "harder";
  return answer;
}

std::string said_with(std::string_view part, std::string_view other) {
  std::string text = file::write_answer(sample());
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  text.replace(at, part.size(), other);
  try {
    file::read_answer(text, "loops.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

TEST_CASE("independent driving and variants are kept", "[file][independent]") {
  const wish::Answer again = file::read_answer(file::write_answer(sample()), "loops.json");
  CHECK(again.wish.independent_minutes == 15);
  CHECK(again.loops[0].independent == sample().loops[0].independent);
  CHECK(again.loops[0].variant == "");
  CHECK(again.loops[1].variant == "harder");
}

TEST_CASE("a file without them says nothing of them, and is read", "[file][independent]") {
  const std::string text = file::write_answer(sample_answer());
  CHECK_THAT(text, !Contains("independent") && !Contains("variant"));
  CHECK(file::read_answer(text, "loops.json").wish.independent_minutes == 0);
}

TEST_CASE("a stretch that isn't one of the loop's is refused", "[file][independent]") {
  const auto rows = [](int first, int last) {
    return "\"first\": " + std::to_string(first) + ",\n     \"last\": " + std::to_string(last) +
           ",\n     \"follow\"";
  };
  CHECK(said_with(rows(0, 1), rows(7, 1)) ==
        "loops.json: /loops/0/independent/0/first: expected a whole number from 0 to 1, found 7");
  CHECK(
      said_with(rows(1, 1), rows(1, 0)) ==
      "loops.json: /loops/0/independent/1/last: expected a stretch not before \"first\", found 0");
}

TEST_CASE("other variants, and odd minutes, are refused", "[file][independent]") {
  CHECK(said_with("\"variant\": \"harder\"", "\"variant\": \"nicer\"") ==
        "loops.json: /loops/1/variant: expected \"easier\" or \"harder\", found \"nicer\"");
  CHECK(said_with("\"independent_minutes\": 15", "\"independent_minutes\": 0") ==
        "loops.json: /wish/independent_minutes: expected a whole number from 1 to 1440, found 0");
}

}  // namespace
}  // namespace loopwright::test
