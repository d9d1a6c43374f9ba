// Strings and escapes: RFC 8259, section 7.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/base/nesting.hpp"

namespace loopwright {
namespace {

TEST_CASE("how deep a JSON text nests is known before it is read", "[base]") {
  CHECK_FALSE(nests_deeper("", 0));
  CHECK_FALSE(nests_deeper("1", 0));
  CHECK(nests_deeper("[]", 0));
  CHECK_FALSE(nests_deeper(R"([{"a": []}, [[]]])", 3));
  CHECK(nests_deeper(R"([{"a": []}, [[]]])", 2));
  CHECK_FALSE(nests_deeper(std::string(1000, '[') + std::string(1000, ']'), 1000));
  CHECK(nests_deeper(std::string(1001, '['), 1000));
}

TEST_CASE("brackets in a string nest nothing", "[base]") {
  CHECK_FALSE(nests_deeper(R"(["[[{{", "\"[[", "\\"])", 1));
  CHECK(nests_deeper(R"(["\\", [[1]]])", 2));
  CHECK_FALSE(nests_deeper("[\"\\", 1));  // cut off
}

}  // namespace
}  // namespace loopwright
