// A timetable is yes or no by the clauses of OSM wiki Conditional restrictions, where the last
// true one wins, or a condition alone.
#include "loopwright/hours/timetable.hpp"

#include <catch2/catch.hpp>

namespace loopwright::hours {
namespace {

const Setting& scotland() {
  static const Setting setting("GB-SCT", "Europe/London", std::nullopt);
  return setting;
}

/// In the week of Monday 30 November 2026, St Andrew's Day.
Instant at(int day, int hour, int minute = 0) {
  return {civil_seconds({date_from_days(days_since_epoch({2026, 11, 30}) + day), hour, minute, 0}),
          0};
}

Answer asked(std::string_view text, const Instant& moment) {
  return Timetable(text).at(moment, scotland());
}

}  // namespace

TEST_CASE("a timetable is a condition alone, or clauses of yes and no", "[hours]") {
  CHECK(asked("Mo-Fr 07:00-10:00", at(1, 8)).in_force == Tri::yes);
  CHECK(asked("Mo-Fr 07:00-10:00", at(1, 10)).in_force == Tri::no);
  const std::string_view clauses = "yes @ (Mo-Fr 07:00-10:00); no @ (Tu)";
  CHECK(asked(clauses, at(0, 8)).in_force == Tri::yes);
  CHECK(asked(clauses, at(1, 8)).in_force == Tri::no);
  CHECK(asked(clauses, at(2, 8)).in_force == Tri::yes);
  CHECK(asked("no @ (Tu)", at(1, 8)).in_force == Tri::no);
  CHECK(asked("no @ (Tu)", at(2, 8)).in_force == Tri::no);  // nothing holds
}

TEST_CASE("a value other than yes is no yes", "[hours]") {
  CHECK(asked("yes @ (Mo-Fr); destination @ (Tu)", at(1, 8)).in_force == Tri::no);
}

TEST_CASE("a timetable that is off on St Andrew's Day says that the holiday made it so",
          "[hours]") {
  const Answer answer = asked("Mo-Fr 07:00-10:00; PH off", at(0, 8));
  CHECK(answer.in_force == Tri::no);
  CHECK(answer.reason == Reason::holiday);
  CHECK(asked("Mo-Fr 07:00-10:00; PH off", at(1, 8)).reason == Reason::stated);
}

TEST_CASE("a timetable nobody can tell is unknown, and says why", "[hours]") {
  CHECK(asked("flashing", at(1, 8)) == Answer{Tri::unknown, Reason::road_state, {}});
  CHECK(asked("Mo-Fr 08:00-09:00; SH off", at(1, 8)).reason == Reason::no_terms);
  CHECK(asked("Mo-Fr 08:00-", at(1, 8)) == Answer{Tri::unknown, Reason::unreadable, {}});
  CHECK(asked("yes @ (Mo-Fr); no @ (wet)", at(1, 8)).in_force == Tri::unknown);
  CHECK(asked("yes @ (wet); yes @ (Mo-Fr)", at(1, 8)).in_force == Tri::yes);
}

TEST_CASE("a timetable is readable when each of its parts is", "[hours]") {
  CHECK(Timetable("Mo-Fr 07:00-10:00").readable());
  CHECK(Timetable("yes @ (Mo-Fr); no @ (wet AND weight>7.5)").readable());
  CHECK_FALSE(Timetable("yes @ (Mo-Fr); no @ (Mo-Fr 25)").readable());
  CHECK_FALSE(Timetable("when it suits").readable());
}

TEST_CASE("a timetable is one answer through an interval, or changes in it", "[hours]") {
  const Timetable lane("Mo-Fr 07:00-10:00");
  CHECK(lane.through(at(1, 7), at(1, 9), scotland()).in_force == Tri::yes);
  CHECK(lane.through(at(1, 10), at(1, 12), scotland()).in_force == Tri::no);
  CHECK(lane.through(at(1, 9), at(1, 10), scotland()) == Answer{Tri::unknown, Reason::changes, {}});
}

TEST_CASE("clauses that change hands without another answer are no change", "[hours]") {
  const Timetable lane("yes @ (Tu 07:00-09:00); yes @ (Tu 08:00-10:00)");
  const auto change = lane.next_change(at(1, 7), scotland());
  REQUIRE(change);
  CHECK(write_time(*change) == "2026-12-01T10:00:00+00:00");
  CHECK(lane.through(at(1, 7), at(1, 9, 59), scotland()).in_force == Tri::yes);
  CHECK_FALSE(Timetable("24/7").next_change(at(1, 7), scotland()));
}

// By the letter the second rule alone holds (OSM wiki Key:opening_hours/specification, rule separators);
// that mappers often mean both, and that the plate shows both: common practice, no source.
TEST_CASE("a rule that a later one leaves nothing of isn't in force by the letter, but is doubted",
          "[hours]") {
  const std::string_view both = "Tu-Fr 07:00-10:00; Tu-Fr 16:00-19:00";
  const auto letter = [&](int hour) { return read_hours(both).at(at(1, hour), scotland()); };
  CHECK(letter(8).in_force == Tri::no);
  CHECK(letter(8).replaced);
  CHECK_FALSE(letter(12).replaced);
  CHECK(letter(17).in_force == Tri::yes);
  CHECK(asked(both, at(1, 8)) == Answer{Tri::unknown, Reason::replaced, {}});
  CHECK(asked(both, at(1, 12)).in_force == Tri::no);
  CHECK(asked(both, at(1, 17)).in_force == Tri::yes);
  const auto change = Timetable(both).next_change(at(1, 8), scotland());
  REQUIRE(change);
  CHECK(write_time(*change) == "2026-12-01T10:00:00+00:00");
}

// DEVELOPERS.md, HOURS: so long a text is read by its letter alone.
TEST_CASE("of more than a hundred rules none is doubted for being replaced", "[hours]") {
  const auto with_rules = [](int before) {
    std::string text = "Tu-Fr 07:00-10:00";
    for (int k = 0; k < before; ++k) text += ", Sa 01:00-02:00";
    return text + "; Tu-Fr 16:00-19:00";
  };
  CHECK(asked(with_rules(97), at(1, 8)).reason == Reason::replaced);
  CHECK(asked(with_rules(99), at(1, 8)) == asked("Tu-Fr 16:00-19:00", at(1, 8)));
}

TEST_CASE("what is replaced on some of its days only is meant so", "[hours]") {
  CHECK(asked("Mo-Su 07:00-19:00; Tu 08:00-12:00", at(1, 15)).in_force == Tri::no);
  CHECK(asked("Tu 07:00-10:00; PH off; SH off", at(1, 12)).in_force == Tri::no);
  CHECK(asked("Tu 08:00-12:00; Mo-Su 14:00-19:00", at(1, 9)).reason == Reason::replaced);
}

TEST_CASE("hours that an off for all days puts out are doubted, those it means stay out",
          "[hours]") {
  CHECK(asked("Tu 07:00-10:00; off", at(1, 8)).reason == Reason::replaced);
  CHECK(asked("Tu 07:00-10:00; off", at(1, 11)).in_force == Tri::no);
  CHECK_FALSE(Timetable("Tu 07:00-10:00; off").never_changes());
  CHECK(asked("Tu-Fr 07:00-10:00; Tu-Fr 16:00-19:00; Tu off", at(1, 8)).in_force == Tri::no);
}

}  // namespace loopwright::hours
