// The parts of a lesson, and who drives, in a loop file.
#include <catch2/catch.hpp>

#include "file/sample_answer.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright {
namespace {

wish::Answer in_parts() {
  wish::Answer answer = test::sample_answer();
  answer.wish.wants.clear();
  answer.wish.parts = {wish::read_part("20 quiet hardest 3: turn-off:left=3"),
                       wish::read_part("35 busier: roundabout=max")};
  answer.wish.easy_first = true;
  answer.wish.drive_out = Point{515000000, -30000000};
  answer.wish.drive_back = Point{515000001, -30000001};
  wish::Loop& loop = answer.loops[0];
  loop.met.clear();
  loop.parts = {{0, 0, {{wish::read_want("turn-off:left=3"), 2}}},
                {1, 1, {{wish::read_want("roundabout=max"), 1}}}};
  loop.parts[1].met[0].practised = {0};
  loop.practice = {0, 1};
  return answer;
}

std::string said_with(std::string_view from, std::string_view to) {
  std::string text = file::write_answer(in_parts());
  const std::size_t at = text.find(from);
  REQUIRE(at != std::string::npos);
  text.replace(at, from.size(), to);
  try {
    file::read_answer(text, "loops.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

TEST_CASE("a loop file without parts says nothing of them", "[file][parts]") {
  const std::string text = file::write_answer(test::sample_answer());
  for (const char* key : {"\"parts\"", "\"easy_first\"", "\"drive_out\"", "\"practice\""})
    CHECK(text.find(key) == std::string::npos);
}

TEST_CASE("a loop file keeps the parts of a lesson and who drives", "[file][parts]") {
  const std::string text = file::write_answer(in_parts());
  const wish::Answer read = file::read_answer(text, "loops.json");
  CHECK(read.wish.parts == in_parts().wish.parts);
  CHECK(read.wish.easy_first);
  CHECK(read.wish.drive_out == in_parts().wish.drive_out);
  CHECK(read.wish.drive_back == in_parts().wish.drive_back);
  const wish::Loop& loop = read.loops[0];
  REQUIRE(loop.parts.size() == 2);
  CHECK(loop.parts[0].met[0].got == 2);
  CHECK_FALSE(loop.parts[0].met[0].practised);
  CHECK(loop.parts[1].met[0].practised == std::vector<std::size_t>{0});
  REQUIRE(loop.practice);
  CHECK((*loop.practice)[1] == 1);
  CHECK(file::write_answer(read) == text);
}

TEST_CASE("parts that no lesson can have are refused", "[file][parts]") {
  CHECK(said_with("\"roads\": \"quiet\"", "\"roads\": \"leafy\"") ==
        "loops.json: /wish/parts/0/roads: expected any, quiet or busier, found \"leafy\"");
  CHECK(said_with("\"minutes\": 20", "\"minutes\": 0") ==
        "loops.json: /wish/parts/0/minutes: expected a whole number from 1 to 1440, found 0");
  CHECK(said_with("\"hardest\": 3", "\"hardest\": 9") ==
        "loops.json: /wish/parts/0/hardest: expected a whole number from 1 to 5, found 9");
  CHECK(said_with("\"easy_first\": true", "\"easy_first\": 1")
            .starts_with("loops.json: /wish/easy_first: expected "));
  CHECK(said_with("\"practice\": {\n    \"first\": 0", "\"practice\": {\n    \"first\": 2") ==
        "loops.json: /loops/0/practice/first: expected a whole number from 0 to 1, found 2");
}

}  // namespace
}  // namespace loopwright
