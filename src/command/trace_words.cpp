// Rules: a recording is never surer than its fixes: what lies where nothing was recorded is told as such.
#include "command/trace_words.hpp"

#include <cmath>
#include <map>
#include <ostream>

#include "command/folded.hpp"
#include "command/print.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/say/say.hpp"
#include "loopwright/trace/departures.hpp"

namespace loopwright::command {
namespace {

std::string clock_at(const TracedDrive& drive, double unix_s) {
  return write_clock(hours::with_offset_of(drive.roads.info().zone, std::llround(unix_s)));
}

std::string minutes_text(double seconds) {
  const auto whole = std::llround(seconds);
  if (whole < 90) return std::to_string(whole) + " s";
  return std::to_string(std::llround(seconds / 60)) + " min";
}

std::string distance(const TracedDrive& drive, double metres) {
  return long_distance(metres, drive.roads.info().region.unit);
}

/// Of a part of the drive: "220 yards".
std::string short_distance(const TracedDrive& drive, double metres) {
  return say::say_distance(metres, drive.roads.info().region.unit);
}

std::string street_of(const road::Roads& roads, StateId state) {
  const road::Piece& piece = roads.piece(roads.stretch_of(state));
  const std::string_view name = roads.text(piece.name), ref = roads.text(piece.ref);
  if (!name.empty()) return printable(name);
  if (!ref.empty()) return printable(ref);
  return "a road without a name";
}

std::string street_at(const TracedDrive& drive, const trace::LegName& leg) {
  return street_of(drive.roads, drive.match.runs[leg.run].legs[leg.leg].state);
}

void tell_off_roads(std::ostream& out, const TracedDrive& drive) {
  for (const trace::OffRoads& one : drive.match.off_roads)
    print_folded(out, 2,
                 clock_at(drive, one.from_s) + " to " + clock_at(drive, one.to_s) +
                     ": on no road a lesson may use, by " + degrees(one.at));
  double unseen_m = 0;
  for (const trace::Run& run : drive.match.runs)
    for (const trace::Leg& leg : run.legs)
      if (!leg.seen) unseen_m += leg.to_m - leg.from_m;
  if (unseen_m > 0)
    print_folded(out, 2,
                 short_distance(drive, unseen_m) +
                     " lie where nothing was recorded: the plan's way when it fits the time, else "
                     "the shortest");
}

std::string departure_words(const TracedDrive& drive, const trace::Departure& one) {
  const auto& runs = drive.match.runs;
  std::string words;
  if (one.left) {
    const trace::Leg& leg = runs[one.left->run].legs[one.left->leg];
    words = clock_at(drive, leg.leave_s) + ", behind " + street_at(drive, *one.left) + ": ";
  } else {
    words = "at the beginning: ";
  }
  words += short_distance(drive, one.driven_m) + " another way, " +
           short_distance(drive, one.missed_m) + " of the plan left out";
  if (one.came_back) {
    const trace::Leg& leg = runs[one.came_back->run].legs[one.came_back->leg];
    words += "; back on it in " + street_at(drive, *one.came_back) + " at " +
             clock_at(drive, leg.enter_s);
  } else {
    words += "; not back on it";
  }
  if (one.unseen) words += " (partly unseen)";
  return words;
}

void tell_plan(std::ostream& out, const TracedDrive& drive) {
  if (drive.plan.empty()) return;
  const trace::Comparison compared = trace::compared(drive.roads, drive.plan, drive.match.runs);
  out << "on the plan: " << distance(drive, compared.on_plan_m) << " of "
      << distance(drive, drive.planned->metres)
      << (compared.departures.empty() ? "; nowhere left it\n" : "; off it:\n");
  for (const trace::Departure& one : compared.departures)
    print_folded(out, 2, departure_words(drive, one));
}

void tell_stops(std::ostream& out, const TracedDrive& drive) {
  double waiting_s = 0;
  int waits = 0;
  std::vector<std::string> stops;
  for (const trace::LessonStop& one : drive.lesson.stops) {
    const double seconds = one.stop.to_s - one.stop.from_s;
    if (one.waiting) {
      ++waits;
      waiting_s += seconds;
    } else {
      stops.push_back(clock_at(drive, one.stop.from_s) + " " + minutes_text(seconds) + " in " +
                      street_of(drive.roads, drive.match.runs[one.run].legs[one.stop.leg].state));
    }
  }
  if (waits > 0)
    out << "waited at junctions: " << waits << (waits == 1 ? " time, " : " times, ")
        << minutes_text(waiting_s) << " in all\n";
  if (!stops.empty()) print_folded(out, 0, "stood elsewhere: " + listed(stops));
}

std::string counted(const std::map<book::Practice, int>& passes) {
  std::vector<std::string> parts;
  for (const auto& [what, count] : passes)
    parts.push_back(words_of(what) + (count == 1 ? "" : " x" + std::to_string(count)));
  return listed(parts);
}

}  // namespace

void tell_recording(std::ostream& out, const std::string& file, const trace::Recording& recording,
                    std::span<const trace::Fix> used) {
  std::string line = file + ": " + std::to_string(recording.fixes.size()) + " points with times";
  if (used.size() != recording.fixes.size())
    line += ", " + std::to_string(used.size()) + " of them of the lesson";
  const auto left_out = [&line](std::size_t count, const char* why) {
    if (count > 0) line += "; " + std::to_string(count) + " " + why;
  };
  left_out(recording.without_time, "without a time left out");
  left_out(recording.off_earth, "without a place left out");
  left_out(recording.same_time, "at a time that was there already left out");
  print_folded(out, 0, line);
  if (!recording.broken_off.empty())
    print_folded(out, 2, "it breaks off at " + recording.broken_off + "; what came before counts");
}

void tell_drive(std::ostream& out, const TracedDrive& drive) {
  const trace::DrivenLesson& lesson = drive.lesson;
  out << "driven " << clock_at(drive, lesson.from_s) << " to " << clock_at(drive, lesson.to_s)
      << ", " << minutes_text(lesson.to_s - lesson.from_s) << ", " << distance(drive, lesson.metres)
      << "; points lie " << std::lround(drive.match.noise.sigma_m) << " m beside the road\n";
  tell_off_roads(out, drive);
  tell_plan(out, drive);
  tell_stops(out, drive);
}

void tell_passes(std::ostream& out, std::span<const book::LessonPass> passes, std::size_t planned) {
  std::map<book::Practice, int> missed, besides;
  std::size_t driven = 0;
  for (std::size_t k = 0; k < passes.size(); ++k) {
    if (k >= planned)
      ++besides[passes[k].what];
    else if (passes[k].driven)
      ++driven;
    else
      ++missed[passes[k].what];
  }
  if (planned > 0) out << "planned passes driven: " << driven << " of " << planned << '\n';
  if (!missed.empty()) print_folded(out, 2, "not driven: " + counted(missed));
  if (!besides.empty())
    print_folded(out, 2, (planned > 0 ? "driven besides: " : "passes driven: ") + counted(besides));
}

}  // namespace loopwright::command
