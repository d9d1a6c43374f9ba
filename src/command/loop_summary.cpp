// One block a loop: how long and how far, what was asked and got, everything passed by kind, road
// driven twice. Then what fell short, with the nearest there is.
#include "command/loop_summary.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <ostream>
#include <vector>

#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/independent_summary.hpp"
#include "command/lesson_summary.hpp"
#include "command/print.hpp"
#include "command/stops_summary.hpp"
#include "loopwright/lanes/door_kerb.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/learners_drive.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/not_taken.hpp"
#include "loopwright/wish/parts.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::command {
namespace {

std::string minutes(double seconds) {
  return std::to_string(std::lround(seconds / 60));
}

SpeedUnit unit_of(const SummaryBy& by) {
  return by.roads.info().region.unit;
}

void print_times(std::ostream& out, const wish::Loop& loop, const SummaryBy& by) {
  const Instant end = wish::likely_end(loop, by.setting);
  out << "Loop " << loop.id << ": " << minutes(loop.seconds.likely) << " min driving, likely "
      << minutes(loop.seconds.low) << " to " << minutes(loop.seconds.high) << "; "
      << long_distance(loop.metres, unit_of(by)) << "; " << write_clock(loop.start) << " to "
      << write_clock(end) << '\n';
  if (end.offset_s == loop.start.offset_s) return;
  out << "  the clocks go " << (end.offset_s < loop.start.offset_s ? "back" : "forward")
      << " on the way\n";
}

bool is_inferred(const wish::Pass& pass) {
  return pass.confidence == road::Confidence::inferred;
}

/// " (3 inferred)", or nothing.
std::string of_them(std::int64_t inferred) {
  return inferred == 0 ? "" : " (" + std::to_string(inferred) + " inferred)";
}

void print_met(std::ostream& out, const wish::Loop& loop) {
  for (const wish::Met& met : loop.met) {
    std::int64_t inferred = 0;
    for (std::size_t i = 0; i < loop.passes.size(); ++i)
      if (is_inferred(loop.passes[i]) && wish::lies_in(loop.passes[i], wish::practice_of(loop)) &&
          wish::counts_for(i, loop.passes, met.want))
        ++inferred;
    out << "  asked " << wish::write_want(met.want) << ": " << met.got << of_them(inferred);
    if (met.practised) out << "; " << met.practised->size() << " to practise";
    out << '\n';
  }
}

/// What is welcome, and how often it comes; the proof counts what of it has worth.
void print_welcome(std::ostream& out, const wish::Loop& loop, const wish::Wish& wish) {
  std::string line;
  for (const road::Kind kind : wish.welcome) {
    if (kind == road::Kind::turn_in_road) continue;  // told where it is done
    const auto passes = std::ranges::count_if(
        loop.passes, [&](const wish::Pass& pass) { return road::meets(pass.kind, kind); });
    line += (line.empty() ? "welcome " : ", ") + std::string(road::name(kind)) + ": " +
            std::to_string(passes);
  }
  if (!line.empty()) print_folded(out, 2, line);
}

/// Streets and junctions that were to be taken, and are.
void print_takes(std::ostream& out, const wish::Answer& answer) {
  std::string line;
  for (const wish::Take& take : answer.wish.takes) {
    const auto* missing = answer.shortfall ? &answer.shortfall->not_taken : nullptr;
    if (missing != nullptr && std::ranges::find(*missing, take.name) != missing->end()) continue;
    line += (line.empty() ? "takes " : ", ") + take.name + " as asked";
  }
  if (!line.empty()) print_folded(out, 2, line);
}

void print_left_out(std::ostream& out, const wish::Certificate& certificate) {
  std::string line;
  for (const wish::LeftOut& left_out : certificate.reasons)
    line += (line.empty() ? "places to practise not used: " : ", ") +
            std::to_string(left_out.count) + " " + left_out.why;
  if (!line.empty()) print_folded(out, 2, line);
}

/// "  passes: zebra 5, signals 2 (1 inferred)": folded between its parts, which stay whole.
void print_list(std::ostream& out, std::string line, const std::vector<std::string>& parts) {
  constexpr std::size_t columns = 80;
  for (std::size_t k = 0; k < parts.size(); ++k) {
    const std::string part = parts[k] + (k + 1 < parts.size() ? "," : "");
    if (line.size() + 1 + part.size() > columns) {
      out << line << '\n';
      line = "   ";
    }
    line += ' ' + part;
  }
  out << line << (parts.empty() ? " none" : "") << '\n';
}

void print_passes(std::ostream& out, const wish::Loop& loop) {
  std::array<int, road::kind_count> passes{}, inferred{};
  for (const wish::Pass& pass : loop.passes) {
    ++passes[static_cast<std::size_t>(pass.kind)];
    if (is_inferred(pass)) ++inferred[static_cast<std::size_t>(pass.kind)];
  }
  std::vector<std::string> said;
  for (std::size_t k = 0; k < passes.size(); ++k)
    if (passes[k] > 0)
      said.push_back(std::string(road::name(static_cast<road::Kind>(k))) + " " +
                     std::to_string(passes[k]) + of_them(inferred[k]));
  print_list(out, "  passes:", said);
  const int crossings = passes[static_cast<std::size_t>(road::Kind::level_crossing)];
  if (crossings > 0) {
    out << "  a level crossing that is shut adds up to " << wish::shut_crossing_minutes
        << " min each time\n";
  }
}

/// Turning round is a manoeuvre, though nothing is practised there: told with its street and minute.
void print_turns_round(std::ostream& out, const wish::Loop& loop, const SummaryBy& by) {
  const std::vector<std::size_t> rows = wish::turns_round(loop);
  std::string where;
  for (const std::size_t row : rows) {
    const wish::LoopStretch& before = loop.stretches[row - 1];
    where += (where.empty() ? "" : ", ") +
             (before.street.empty() ? "an unnamed road" : before.street) + " at " +
             write_clock(wish::clock_after(loop, loop.stretches[row].arrive_s.likely, by.setting));
  }
  if (rows.empty()) return;
  // What is asked for is practised at a quiet place, and counted as a pass.
  const bool asked = std::ranges::any_of(
      loop.met, [](const wish::Met& met) { return met.want.kind == road::Kind::turn_in_road; });
  print_folded(out, 2,
               std::string(asked ? "besides what is asked for, " : "") +
                   "turns the car round where the road ends, a manoeuvre: " +
                   (rows.size() == 1 ? "" : std::to_string(rows.size()) + " times: ") + where);
}

/// Where waiting may be forbidden at the time; the loop is no worse for it, the talk must be elsewhere.
void print_kerbs(std::ostream& out, const wish::Loop& loop, const SummaryBy& by) {
  for (const lanes::DoorKerb& kerb : lanes::door_kerbs({by.roads, loop, by.setting})) {
    if (kerb.verdict == lanes::MayStop::usable) continue;
    const bool end = kerb.which == lanes::DoorEnd::end;
    print_folded(
        out, 2,
        "kerb where it " + std::string(end ? "ends" : "begins") + ": " + lanes::kerb_words(kerb));
  }
}

/// How good it is: of value in passes with "max" wants, else of road driven twice.
void print_certificate(std::ostream& out, const wish::Answer& answer,
                       const wish::Certificate& certificate) {
  if (!certificate.bound) return;
  const wish::Wish& wish = answer.wish;
  const std::vector<wish::Want> wants = wish::all_wants(wish);
  const bool counts_passes =
      wish::welcomes_practice(wish) ||
      std::ranges::any_of(wants, [](const wish::Want& want) { return !want.count; });
  const std::int64_t more = *certificate.bound - certificate.value;
  if (more == 0) {
    // Above what isn't met it would say that nothing more of the wish could be had.
    if (!answer.shortfall) out << "  nothing better exists\n";
  } else if (counts_passes) {
    const std::int64_t passes = (more + 999) / 1000;
    out << "  better by at most the worth of " << passes << (passes == 1 ? " pass" : " passes")
        << '\n';
  } else {
    out << "  better by at most " << more << " m less driven twice\n";
  }
}

void print_loop(std::ostream& out, const wish::Answer& answer, const wish::Loop& loop,
                const SummaryBy& by) {
  const wish::Loop own = wish::learners_drive(by.roads, answer.wish, loop).loop;
  print_times(out, loop, by);
  print_variant(out, answer, loop);
  print_lesson(out, answer, loop);
  print_met(out, own);
  print_welcome(out, own, answer.wish);
  print_takes(out, answer);
  print_passes(out, own);
  print_turns_round(out, loop, by);
  out << "  road driven twice: " << long_distance(loop.metres_twice, unit_of(by)) << '\n';
  print_certificate(out, answer, loop.certificate);
  print_kerbs(out, loop, by);
  print_independent(out, answer, own, by.setting);
  print_stops(out, answer, own, by.setting);
  print_left_out(out, loop.certificate);
}

/// What people call the place of the nearest chance: its street, or its own name; empty when it has neither.
std::string nearest_name(const road::Roads& roads, const wish::Missing& missing) {
  for (const road::Chance& chance : roads.chances)
    if (chance.source == *missing.nearest && road::meets(chance.kind, missing.want.kind))
      return street_of(roads, chance);
  return {};
}

void print_missing(std::ostream& out, const wish::Missing& missing, const SummaryBy& by) {
  print_folded(out, 2,
               wish::write_want(missing.want) + ": " + std::to_string(missing.got) + " found; " +
                   missing.why);
  if (!missing.nearest) return;
  const std::string name = nearest_name(by.roads, missing);
  std::string nearest = "nearest: " + (name.empty() ? object(*missing.nearest)
                                                    : name + " (" + object(*missing.nearest) + ")");
  if (missing.nearest_minutes) nearest += ", " + fixed(*missing.nearest_minutes, 1) + " min away";
  if (missing.needs_minutes)
    nearest += ", " + fixed(*missing.needs_minutes, 1) + " min there and back";
  print_folded(out, 4, nearest);
}

/// What all that is wanted by number takes, and which want most of it.
void print_least(std::ostream& out, const wish::Answer& answer) {
  const wish::Shortfall& shortfall = *answer.shortfall;
  if (shortfall.least_minutes) {
    // Where a shorter loop has the rest minutes aren't what is short, and its length explains nothing.
    const bool fits = answer.wish.minutes && *shortfall.least_minutes <= *answer.wish.minutes;
    const bool lacks_room = fits && shortfall.missing.empty() && answer.loops.empty();
    out << (lacks_room ? "  road to fill the minutes is what is short: a loop with all of it takes "
            : fits     ? "  minutes aren't what is short: a loop with the rest takes "
                       : "  the shortest loop with the rest takes ")
        << fixed(*shortfall.least_minutes, 1) << " min\n";
  }
  const auto& least = shortfall.at_least_minutes;
  if (!least || (answer.wish.minutes && *least <= *answer.wish.minutes)) return;
  out << "  all of it takes at least " << fixed(*least, 1) << " min\n";
  for (const wish::WantCost& cost : shortfall.costs)
    if (cost.minutes >= 0.05)
      out << "    " << wish::write_want(cost.want) << " alone adds " << fixed(cost.minutes, 1)
          << " min\n";
}

void print_shortfall(std::ostream& out, const wish::Answer& answer, const SummaryBy& by) {
  const wish::Shortfall& shortfall = *answer.shortfall;
  const bool tells_why = shortfall.missing.empty() || shortfall.why.starts_with(wish::not_easy);
  print_folded(out, 0, "Not met:" + (tells_why ? " " + shortfall.why : ""));
  for (const wish::Missing& missing : shortfall.missing) print_missing(out, missing, by);
  if (!tells_why && !shortfall.not_taken.empty())
    print_folded(out, 2, shortfall.why.substr(shortfall.why.find(wish::not_taken_because)));
  for (const std::string& stop : shortfall.stops) print_folded(out, 2, stop);
  print_least(out, answer);
  const std::string better = better_starts_words(shortfall, answer.wish.start);
  if (!better.empty()) print_folded(out, 2, better);
}

}  // namespace

std::string better_starts_words(const wish::Shortfall& shortfall, const Instant& start) {
  std::string times;
  for (const Instant& at : shortfall.better_starts) {
    const bool same_day = at.civil().date == start.civil().date;
    times += (times.empty() ? "" : " or ") + (same_day ? write_clock(at) : spoken_moment(at));
  }
  if (times.empty()) return "";
  const bool lanes = std::ranges::any_of(shortfall.missing, [](const wish::Missing& missing) {
    return missing.want.verdict.has_value();
  });
  // Of a bus lane "open" could be heard the other way.
  return "start at " + times + " instead: " +
         (lanes ? "nothing named here is in the way then" : "what is in the way is open then");
}

void print_summary(std::ostream& out, const wish::Answer& answer, const SummaryBy& by) {
  for (const wish::Loop& loop : answer.loops) print_loop(out, answer, loop, by);
  if (!answer.fewer_because.empty())
    print_folded(out, 0, "Fewer loops than asked: " + answer.fewer_because);
  if (answer.shortfall) print_shortfall(out, answer, by);
}

}  // namespace loopwright::command
