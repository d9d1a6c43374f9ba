// Distances as they are spoken. 1 mile = 1760 yd = 1609.344 m (international yard and mile, 1959).
#include <catch2/catch.hpp>

#include "loopwright/say/say.hpp"

namespace loopwright::test {

using say::say_distance;

TEST_CASE("no distance is under fifty yards, or under fifty metres", "[say]") {
  CHECK(say_distance(0, SpeedUnit::mph) == "under 50 yd");
  CHECK(say_distance(0, SpeedUnit::kmh) == "under 50 m");
}

TEST_CASE("where signs use miles, short distances are yards to the nearest fifty", "[say]") {
  CHECK(say_distance(100, SpeedUnit::mph) == "100 yd");  // 109 yd
  CHECK(say_distance(274.32, SpeedUnit::mph) == "300 yd");
  CHECK(say_distance(640, SpeedUnit::mph) == "700 yd");
}

TEST_CASE("a quarter of a mile and more are quarters of a mile", "[say]") {
  CHECK(say_distance(402.336, SpeedUnit::mph) == "¼ mile");
  CHECK(say_distance(804.672, SpeedUnit::mph) == "½ mile");
  CHECK(say_distance(1207, SpeedUnit::mph) == "¾ mile");
  CHECK(say_distance(1609.344, SpeedUnit::mph) == "1 mile");
  CHECK(say_distance(2011.68, SpeedUnit::mph) == "1¼ miles");
  CHECK(say_distance(3218.688, SpeedUnit::mph) == "2 miles");
}

TEST_CASE("elsewhere they are metres to the nearest fifty, and tenths of a kilometre", "[say]") {
  CHECK(say_distance(274, SpeedUnit::kmh) == "250 m");
  CHECK(say_distance(974, SpeedUnit::kmh) == "950 m");
  CHECK(say_distance(976, SpeedUnit::kmh) == "1 km");
  CHECK(say_distance(1249, SpeedUnit::kmh) == "1.2 km");
}

TEST_CASE("what is said is never wrong by more than its last step", "[say]") {
  for (double m = 25; m < 5000; m += 7) {
    CAPTURE(m);
    const std::string yards = say_distance(m, SpeedUnit::mph);
    if (yards.ends_with(" yd") && yards != "under 50 yd")
      CHECK(std::stod(yards) * 0.9144 == Approx(m).margin(23));
    const std::string metres = say_distance(m, SpeedUnit::kmh);
    const double scale = metres.ends_with(" km") ? 1000 : 1;
    CHECK(std::stod(metres) * scale == Approx(m).margin(51));
  }
}

}  // namespace loopwright::test
