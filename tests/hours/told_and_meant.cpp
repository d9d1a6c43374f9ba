// For each line of standard input, a text of hours: its words, and what is in force every half hour of the
// weeks given as dates of their Mondays, in England, as letters O, C and U; parted by tabs. ERR for
// what can't be read. A test tool: tests/real/test_hours_words.py listens to the words.
#include <iostream>
#include <string>
#include <vector>

#include "loopwright/hours/hours.hpp"

namespace {

using namespace loopwright;

std::string answers(const hours::Hours& hours, const hours::Setting& england, Date monday) {
  std::string letters;
  for (int day = 0; day < 7; ++day) {
    const Date date = date_from_days(days_since_epoch(monday) + day);
    for (int half = 0; half < 48; ++half) {
      const CivilTime at{date, half / 2, half % 2 * 30, 0};
      letters += "COU"[static_cast<std::size_t>(hours.at(at, england).in_force)];
    }
  }
  return letters;
}

}  // namespace

int main(int argc, char** argv) {
  const hours::Setting england("GB-ENG", "Europe/London", std::nullopt);
  std::vector<Date> mondays;
  for (int k = 1; k < argc; ++k) {
    if (const auto time = read_time(std::string(argv[k]) + "T00:00")) {
      mondays.push_back(time->civil.date);
    }
  }
  for (std::string text; std::getline(std::cin, text);) {
    const hours::Hours read = hours::read_hours(text);
    std::cout << (read.readable() ? read.words() : "ERR");
    for (const Date monday : mondays) std::cout << '\t' << answers(read, england, monday);
    std::cout << '\n';
  }
}
