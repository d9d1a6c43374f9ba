#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/store/area.hpp"
#include "store/area_trial.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright {
namespace {

using test::area_bytes;
using test::Trial;

std::string with_byte(std::string bytes, std::size_t at, char value) {
  bytes.at(at) = value;
  return bytes;
}

TEST_CASE("a missing area file is named, with how to build it", "[store]") {
  CHECK_THROWS_WITH(store::open_area("nowhere/n.area"),
                    "nowhere/n.area: no such file; build it with 'loopwright build'");
}

TEST_CASE("an empty file is no area", "[store]") {
  CHECK(Trial("").opening() == "is empty; build it again with 'loopwright build'");
}

TEST_CASE("a folder or a file of another kind is no area", "[store]") {
  const std::string no_area = "is not an area file; build one with 'loopwright build'";
  const test::ScratchFolder folder;
  CHECK_THROWS_WITH(store::open_area(folder.path()), folder.path().string() + ": " + no_area);
  CHECK(Trial("PK").opening() == no_area);
  CHECK(Trial(std::string(5000, 'x')).opening() == no_area);
  // Line ends "corrected" on the way:
  CHECK(Trial(with_byte(area_bytes(), 6, '\n')).opening() == no_area);
}

TEST_CASE("an area file cut short says at which byte", "[store]") {
  const std::string bytes = area_bytes();
  const std::string advice = "; build it again with 'loopwright build'";
  for (const std::size_t length :
       {std::size_t{3}, std::size_t{47}, std::size_t{1000}, std::size_t{1896}, bytes.size() - 1}) {
    CHECK(Trial(bytes.substr(0, length)).opening() ==
          "cut short at byte " + std::to_string(length) + advice);
  }
}

TEST_CASE("bytes after an area file's end are noticed", "[store]") {
  CHECK(Trial(area_bytes() + "x").opening() ==
        "goes on after its end at byte 2496; build it again with 'loopwright build'");
}

TEST_CASE("an area of another version says which", "[store]") {
  CHECK(Trial(with_byte(area_bytes(), 8, 9)).opening() ==
        "was written by another version (format 9, this program reads 8); "
        "build it again with 'loopwright build'");
}

TEST_CASE("any changed byte of header or section table is noticed at opening", "[store]") {
  const std::string bytes = area_bytes();
  std::size_t noticed = 0;
  for (std::size_t at = 16; at < 2064; at += 7) {
    const Trial trial(with_byte(bytes, at, static_cast<char>(~bytes[at])));
    noticed += trial.opening() == "its header is damaged; build it again with 'loopwright build'";
  }
  CHECK(noticed == (2064 - 16 + 6) / 7);
}

TEST_CASE("a section count beyond the file is a file cut short, not a crash", "[store]") {
  CHECK(Trial(with_byte(area_bytes(), 15, '\x7f')).opening() ==
        "cut short at byte 2496; build it again with 'loopwright build'");
}

TEST_CASE("opening reads no column; verifying finds the damaged one", "[store]") {
  const Trial trial(with_byte(area_bytes(), 2200, 99));
  CHECK(trial.opening() == "nothing");
  CHECK(trial.verifying() ==
        "section 'nodes' at byte 2200 is damaged; build it again with 'loopwright build'");
}

TEST_CASE("verifying notices any changed byte of the sections", "[store]") {
  const std::string bytes = area_bytes();
  std::size_t noticed = 0;
  for (std::size_t at = 1560; at < bytes.size(); ++at) {
    const Trial trial(with_byte(bytes, at, static_cast<char>(bytes[at] ^ 1)));
    noticed += trial.verifying() != "nothing";
  }
  CHECK(noticed == bytes.size() - 1560);
}

}  // namespace
}  // namespace loopwright
