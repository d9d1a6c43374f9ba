// Asking hours, conditions and timetables allocates nothing once they are read. A program of its
// own, since it counts every allocation of the process.
//
// 1. Texts of every kind of selector are read, and asked once, so that the zone and the tables that
//    are looked up at first use are there.
// 2. Then all is asked again, with the counting on.
#include <cstdio>
#include <cstdlib>
#include <new>
#include <vector>

#include "loopwright/hours/timetable.hpp"

namespace {

std::size_t& allocations() {
  static std::size_t count = 0;
  return count;
}

}  // namespace

void* operator new(std::size_t size) {
  ++allocations();
  if (void* memory = std::malloc(size)) return memory;
  throw std::bad_alloc();
}
void operator delete(void* memory) noexcept {
  std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
  std::free(memory);
}

namespace {

using namespace loopwright;
using namespace loopwright::hours;

struct Asked {
  Hours hours;
  Conditional conditional;
  Timetable timetable;
};

std::vector<Asked> read_all() {
  std::vector<Asked> all;
  for (const std::string_view text :
       {"24/7", "Mo-Fr 07:00-10:00,16:00-19:00; PH off", "Mo[1] +1 day,SH 22:00-26:00",
        "2026-2030/2 Dec 24-Jan 2 sunrise-(sunset+00:30)", "week 2-52/2 We 17:00+ \"ask\"",
        "easter -2 days-easter +1 day off || 10:00-12:00 unknown", "Mo-Fr 07:"}) {
    const std::string clauses = "yes @ (" + std::string(text) + " AND wet); no @ (weight>7.5)";
    all.push_back({read_hours(text), read_conditional("no", clauses), Timetable(clauses)});
  }
  return all;
}

void ask(const Asked& asked, const Instant& at, const Setting& setting) {
  const Instant later = at.plus_seconds(7200);
  const CivilTime civil = setting.on_clock(at).civil();
  static_cast<void>(asked.hours.at(at, setting));
  static_cast<void>(asked.hours.through(at, later, setting));
  static_cast<void>(asked.hours.next_change(at, setting));
  static_cast<void>(asked.hours.next_look(civil, setting));
  static_cast<void>(asked.conditional.at(civil, setting));
  static_cast<void>(asked.conditional.through(at, later, setting));
  static_cast<void>(asked.conditional.next_change(at, setting));
  static_cast<void>(asked.timetable.at(at, setting));
  static_cast<void>(asked.timetable.through(at, later, setting));
  static_cast<void>(asked.timetable.next_change(at, setting));
}

void ask_all(const std::vector<Asked>& all, const std::vector<Setting>& settings) {
  constexpr std::int64_t midsummer = 1'782'000'000, summer_ends = 1'792'886'400;
  for (const Asked& asked : all) {
    for (const Setting& setting : settings) {
      for (const std::int64_t at : {midsummer, summer_ends}) ask(asked, {at, 0}, setting);
    }
  }
}

}  // namespace

int main() {
  const std::vector<Asked> all = read_all();
  const SchoolTerms autumn(std::vector<TermPart>{{{2026, 8, 19}, {2026, 10, 9}}});
  const std::vector<Setting> settings{
      Setting(), Setting("GB-SCT", "Europe/London", point_from_degrees(55.95, -3.19), autumn)};
  ask_all(all, settings);
  const std::size_t before = allocations();
  ask_all(all, settings);
  const std::size_t made = allocations() - before;
  std::printf("asking %zu texts: %zu allocations (reading them made some of %zu)\n", all.size(),
              made, before);
  return made == 0 && before > 0 ? 0 : 1;
}
