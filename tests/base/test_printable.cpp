#include <catch2/catch.hpp>

#include "loopwright/base/printable.hpp"

namespace loopwright {
namespace {

TEST_CASE("a text of the map is printed without anything that moves the cursor", "[base]") {
  CHECK(printable("").empty());
  CHECK(printable("Stryd Fawr – “é 7.5t” \u00a0Mo-Fr 07:00") ==
        "Stryd Fawr – “é 7.5t” \u00a0Mo-Fr 07:00");
  CHECK(printable("Mo-Fr\n07:00\t-\r10:00") == "Mo-Fr 07:00 - 10:00");
  CHECK(printable("a\x1b[31mb") == "a\ufffd[31mb");
  CHECK(printable(std::string_view("a\0b\x7f", 4)) == "a\ufffdb\ufffd");
  CHECK(printable("\xc2\x9b"
                  "31m") == "\ufffd31m");  // CSI as one character
  CHECK(printable("\u202eab\u2028c") ==
        "\ufffd"
        "ab c");
}

TEST_CASE("bytes that aren't UTF-8 are printed as a mark each", "[base]") {
  CHECK(printable("a\xff"
                  "b") ==
        "a\ufffd"
        "b");
  CHECK(printable("\xe2\x82") == "\ufffd\ufffd");            // cut off
  CHECK(printable("\xc0\x8a") == "\ufffd\ufffd");            // overlong line feed
  CHECK(printable("\xed\xa0\x80") == "\ufffd\ufffd\ufffd");  // half of a pair
  CHECK(printable("\xf4\x90\x80\x80") == "\ufffd\ufffd\ufffd\ufffd");
  CHECK(printable("\U0001f6a6") == "\U0001f6a6");
}

}  // namespace
TEST_CASE("what is shielded is given back as it was when printed", "[base]") {
  const std::string shielded = loopwright::shielded("1 @ (Mo-Fr \"(07:00\"", "()\"@");
  CHECK(shielded.find_first_of("()\"@") == shielded.npos);
  CHECK(printable(shielded) == "1 @ (Mo-Fr \"(07:00\"");
  // A map that holds such a character itself can't make a control character of it.
  CHECK(printable("\ue01b[2J\ue07f") == "\ue01b[2J\ue07f");
}

}  // namespace loopwright
