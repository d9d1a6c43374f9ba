#include "bench/wish_lines.hpp"

#include <sstream>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::bench {

namespace {

constexpr const char* usual_start = "2026-11-30T10:00";  // a Monday in term

void add_word(wish::Wish& wish, const std::string& word, const std::string& value,
              const road::AreaInfo& info) {
  if (word == "--want") return wish.wants.push_back(wish::read_want(value));
  if (word == "--avoid") return wish.avoids.push_back(wish::read_avoid(value));
  if (word == "--welcome") return wish.welcome.push_back(wish::read_welcome(value));
  if (word == "--spacing") return wish.spacings.push_back(wish::read_spacing(value));
  if (word == "--place-passes") return void(wish.place_passes = read_int(value));
  if (word == "--start") {
    const auto written = read_time(value);
    if (!written) throw InputError(value + " isn't a time");
    return void(wish.start = hours::instant_in(info.zone, written->civil));
  }
  throw InputError("no word of a timed wish: " + word);
}

NamedWish read_line(const std::vector<std::string_view>& cells, const road::AreaInfo& info) {
  NamedWish named{std::string(trim(cells[1])), {}};
  const auto at = split(trim(cells[2]), ',');
  if (at.size() != 2) throw InputError(named.name + ": no LAT,LON");
  named.wish.home =
      point_from_degrees(std::stod(std::string(at[0])), std::stod(std::string(at[1])));
  named.wish.minutes = read_int(trim(cells[3]));
  add_word(named.wish, "--start", usual_start, info);
  std::istringstream words{std::string(cells[4])};
  for (std::string word, value; words >> word >> value;) add_word(named.wish, word, value, info);
  return named;
}

}  // namespace

std::vector<NamedWish> wishes_of(std::istream& table, std::string_view area,
                                 const road::AreaInfo& info) {
  std::vector<NamedWish> wishes;
  for (std::string line; std::getline(table, line);) {
    if (line.empty() || line.front() == '#') continue;
    const auto cells = split(line, '|');
    if (cells.size() != 5) throw InputError("not five columns: " + line);
    if (trim(cells[0]) == area) wishes.push_back(read_line(cells, info));
  }
  return wishes;
}

}  // namespace loopwright::bench
