// Percent-encoding: RFC 3986, 2.1 to 2.3.
#include <array>
#include <catch2/catch.hpp>

#include "loopwright/base/hex.hpp"

namespace loopwright {
namespace {

TEST_CASE("bytes are two small digits each", "[base]") {
  CHECK(hex({}).empty());
  CHECK(hex(std::array<std::uint8_t, 4>{0x00, 0x0f, 0xa9, 0xff}) == "000fa9ff");
}

TEST_CASE("what may not stand in an address is written by its number", "[base]") {
  CHECK(percent_encoded("").empty());
  CHECK(percent_encoded("aZ09-._~") == "aZ09-._~");
  CHECK(percent_encoded("a/b c?d#e%f\xc3\xa9") == "a%2Fb%20c%3Fd%23e%25f%C3%A9");
  CHECK(percent_encoded("/a b/c", "/") == "/a%20b/c");
}

}  // namespace
}  // namespace loopwright
