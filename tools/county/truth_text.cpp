// The truth as a file: lines of cells with tabs between.
//   must|may  KINDS  at  LAT  LON  WITHIN_M  SAYS         kinds joined by '+'
//   must|may  KINDS  on  COURSE  SAYS  WAY:METRES …      ways of the same kinds, course and says
// An empty SAYS is a '-'.
//   trap  NUMBER  LAT  LON  WHAT
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>

#include "county/truth.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

constexpr std::array<std::string_view, 2> duties{"must", "may"};
constexpr std::array<std::string_view, 4> courses{"both", "along", "against", "any"};
constexpr std::string_view head =
    "# What a build of this county must find and may find; what it finds besides is false.\n"
    "# tools/county/truth.hpp explains the duties, truth_text.cpp the columns. Written by\n"
    "# draw-county --truth.\n";

std::string degrees(Point at) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.6f\t%.6f", at.lat(), at.lon());
  return text.data();
}

std::string names(std::uint64_t kinds) {
  std::string text;
  for (const road::Kind kind : road::all_kinds())
    if ((kinds & road::bit(kind)) != 0)
      text += (text.empty() ? "" : "+") + std::string(road::name(kind));
  return text;
}

std::string opening(Duty duty, std::uint64_t kinds) {
  return std::string(duties.at(static_cast<std::size_t>(duty))) + '\t' + names(kinds) + '\t';
}

std::string or_dash(const std::string& says) {
  return says.empty() ? "-" : says;
}
std::string from_dash(std::string_view cell) {
  return cell == "-" ? "" : std::string(cell);
}

bool same_line(const TrueRun& a, const TrueRun& b) {
  return a.duty == b.duty && a.kinds == b.kinds && a.course == b.course && a.says == b.says;
}

class Reader {
 public:
  Truth read(std::string_view text) {
    for (const std::string_view line : split(text, '\n')) {
      ++number_;
      if (!line.empty() && line.front() != '#') read_line(line);
    }
    return std::move(truth_);
  }

 private:
  [[noreturn]] void bad(const std::string& what) const {
    throw InputError("line " + std::to_string(number_) + ": " + what +
                     "; write the truth anew with draw-county --truth");
  }
  [[nodiscard]] double number(std::string_view text) const {
    const auto found = read_number(text);
    if (!found) bad("no number: " + std::string(text));
    return *found;
  }
  template <class Names>
  [[nodiscard]] std::size_t one_of(const Names& words, std::string_view text) const {
    for (std::size_t i = 0; i < words.size(); ++i)
      if (words[i] == text) return i;
    bad("no word of a truth: " + std::string(text));
  }
  [[nodiscard]] Point place(std::string_view lat, std::string_view lon) const {
    return point_from_degrees(number(lat), number(lon));
  }
  [[nodiscard]] std::uint64_t kinds(std::string_view text) const {
    std::uint64_t bits = 0;
    for (const std::string_view word : split(text, '+')) {
      const auto kind = road::parse_kind(word);
      if (!kind) bad("no kind: " + std::string(word));
      bits |= road::bit(*kind);
    }
    return bits;
  }
  void read_line(std::string_view line);
  void read_runs(TrueRun run, std::string_view ways);

  Truth truth_;
  std::size_t number_ = 0;
};

void Reader::read_runs(TrueRun run, std::string_view ways) {
  for (const std::string_view one : split(ways, ' ')) {
    const std::vector<std::string_view> parts = split(one, ':');
    const auto way = read_int64(parts[0]);
    if (!way || parts.size() > 2) bad("no way: " + std::string(one));
    run.way = *way;
    run.metres = parts.size() == 2 ? number(parts[1]) : 0;
    truth_.runs.push_back(run);
  }
}

void Reader::read_line(std::string_view line) {
  const std::vector<std::string_view> cells = split(line, '\t');
  if (cells[0] == "trap" && cells.size() == 5) {
    truth_.traps.push_back(
        {static_cast<int>(number(cells[1])), place(cells[2], cells[3]), std::string(cells[4])});
    return;
  }
  if (cells.size() < 6) bad("cells are missing");
  const auto duty = static_cast<Duty>(one_of(duties, cells[0]));
  if (cells[2] == "at" && cells.size() == 7) {
    truth_.places.push_back(
        {duty, kinds(cells[1]), place(cells[3], cells[4]), number(cells[5]), from_dash(cells[6])});
  } else if (cells[2] == "on" && cells.size() == 6) {
    const auto course = static_cast<Course>(one_of(courses, cells[3]));
    read_runs({duty, kinds(cells[1]), course, from_dash(cells[4]), 0, 0}, cells[5]);
  } else {
    bad("neither a place nor ways");
  }
}

}  // namespace

std::string written(const Truth& truth) {
  std::string text(head);
  for (const Trap& trap : truth.traps)
    text +=
        "trap\t" + std::to_string(trap.number) + '\t' + degrees(trap.at) + '\t' + trap.what + '\n';
  for (const TruePlace& p : truth.places)
    text += opening(p.duty, p.kinds) + "at\t" + degrees(p.at) + '\t' +
            std::to_string(std::lround(p.within_m)) + '\t' + or_dash(p.says) + '\n';
  for (std::size_t i = 0; i < truth.runs.size(); ++i) {
    const TrueRun& run = truth.runs[i];
    if (i == 0 || !same_line(truth.runs[i - 1], run)) {
      text += opening(run.duty, run.kinds) + "on\t" +
              std::string(courses.at(static_cast<std::size_t>(run.course))) + '\t' +
              or_dash(run.says) + '\t';
    } else {
      text += ' ';
    }
    text += std::to_string(run.way);
    if (run.metres > 0) text += ':' + std::to_string(std::lround(run.metres));
    if (i + 1 == truth.runs.size() || !same_line(run, truth.runs[i + 1])) text += '\n';
  }
  return text;
}

Truth read_truth(std::string_view text) {
  return Reader().read(text);
}

}  // namespace loopwright::county
