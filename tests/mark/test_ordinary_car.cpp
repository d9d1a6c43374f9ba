#include <catch2/catch.hpp>

#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::mark {
namespace {

using When = Binding::When;

TEST_CASE("hours bind a car at times, and are kept", "[mark]") {
  const Binding binding = binding_on_car("Mo-Fr 08:00-09:00,15:00-16:00");
  CHECK(binding.when == When::at_times);
  CHECK(binding.condition == "Mo-Fr 08:00-09:00,15:00-16:00");
  CHECK(binding_on_car("24/7").when == When::always);
}

TEST_CASE("a ban on heavy or large vehicles doesn't bind a car", "[mark]") {
  CHECK(binding_on_car("weight>7.5").when == When::never);
  CHECK(binding_on_car("weight > 7.5 t").when == When::never);
  CHECK(binding_on_car("length>10").when == When::never);
  CHECK(binding_on_car("trailers>=1").when == When::never);
  CHECK(binding_on_car("weight<=3.5").when == When::always);
  CHECK(binding_on_car("width>1.5").when == When::always);
}

TEST_CASE("a limit on how long one may stay doesn't bind who drives through", "[mark]") {
  CHECK(binding_on_car("stay > 2 hours").when == When::never);
}

TEST_CASE("a lesson is no delivery, resident or bus", "[mark]") {
  for (const char* user :
       {"delivery", "residents", "destination", "permit_holders", "bus", "HGV"}) {
    CHECK(binding_on_car(user).when == When::never);
  }
}

TEST_CASE("AND needs every part to hold", "[mark]") {
  CHECK(binding_on_car("Mo-Fr 07:00-19:00 AND weight>3.5").when == When::never);
  const Binding hours = binding_on_car("Mo-Fr 07:00-19:00 AND weight<3.5");
  CHECK(hours.when == When::at_times);
  CHECK(hours.condition == "Mo-Fr 07:00-19:00");
  CHECK(binding_on_car("(Mo-Fr 07:00-19:00) AND (weight<3.5)").condition == "Mo-Fr 07:00-19:00");
}

TEST_CASE("what nobody knows beforehand may bind, and is kept", "[mark]") {
  for (const char* state : {"wet", "flashing", "snow", "\"term time\"", "Mo-Fr 07:00-19:00 AND wet",
                            "(Mo-Fr 07:00-19:00; PH off) AND wet"}) {
    const Binding binding = binding_on_car(state);
    CHECK(binding.when == When::at_times);
    CHECK(binding.condition == state);
  }
  CHECK(binding_on_car("wet AND weight<3.5").condition == "wet");
}

TEST_CASE("a learner's car answers what conditions ask of it", "[mark]") {
  const LearnersCar car;
  const auto holds = [&](std::string_view condition) {
    return car.holds(hours::parts_of_condition(condition).front());
  };
  CHECK(holds("weight>7.5") == hours::Tri::no);
  CHECK(holds("weight<3.5") == hours::Tri::yes);
  CHECK(holds("draught>2") == hours::Tri::unknown);
  CHECK(holds("weight>heavy") == hours::Tri::unknown);
  CHECK(holds("destination") == hours::Tri::no);
  CHECK(holds("wet") == hours::Tri::unknown);
}

TEST_CASE("a width of 6'6\" lets a car through, six foot doesn't", "[mark]") {
  CHECK(size_tag_against_car({}).empty());
  CHECK(size_tag_against_car({{"maxwidth", "6'6\""}}).empty());
  CHECK(size_tag_against_car({{"maxwidth", "6'0\""}}) == "maxwidth=6'0\"");
  CHECK(size_tag_against_car({{"maxheight", "1.7"}}) == "maxheight=1.7");
  CHECK(size_tag_against_car({{"maxheight", "default"}}).empty());
  CHECK(size_tag_against_car({{"maxweight", "7.5"}}).empty());
  CHECK(size_tag_against_car({{"maxweight", "1500 kg"}}) == "maxweight=1500 kg");
}

// OSM wiki, Key:maxheight: "default" and "below_default" stand for what the law or nobody says.
TEST_CASE("limits on size without a number keep no car out and are nothing odd", "[mark]") {
  for (const char* word : {"default", "below_default", "none", "no_sign"}) {
    CHECK(size_tag_against_car({{"maxheight", word}}).empty());
    CHECK(unread_size_tag({{"maxheight", word}}).empty());
  }
  CHECK(unread_size_tag({}).empty());
  CHECK(unread_size_tag({{"maxheight", "14'6\""}}).empty());
  CHECK(unread_size_tag({{"maxweight", "3.5"}}).empty());
}

TEST_CASE("between posts a car needs room for its mirrors", "[mark]") {
  CHECK(size_tag_against_car({{"maxwidth:physical", "2.1"}}) == "maxwidth:physical=2.1");
  CHECK(size_tag_against_car({{"maxwidth:physical", "2.3"}}).empty());
  CHECK(size_tag_against_car({{"maxwidth", "2.1"}}).empty());
}

TEST_CASE("a car passes where lorries don't", "[mark]") {
  CHECK(size_tag_against_car({{"maxweight", "3.5"}}).empty());
  CHECK(size_tag_against_car({{"maxheight", "6'6\""}}).empty());
  CHECK(size_tag_against_car({{"maxheight", "5'9\""}}) == "maxheight=5'9\"");
}

TEST_CASE("a limit on size that can't be read is told, and lets a car through", "[mark]") {
  for (const char* text : {"high", "2,1", "6'6", "2.1;2.5"}) {
    CHECK(size_tag_against_car({{"maxheight", text}}).empty());
    CHECK(unread_size_tag({{"maxheight", text}}) == std::string("maxheight=") + text);
  }
  CHECK(unread_size_tag({{"maxweight", "7.5 tons"}}) == "maxweight=7.5 tons");
}

}  // namespace
}  // namespace loopwright::mark
