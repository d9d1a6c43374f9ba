// Method: legs that follow each other in one street with one limit are one row; its speed is the quickest of those of
// 100 m and more, stops and what wasn't seen left out, since shorter ones tell the noise.
#include <cmath>
#include <optional>
#include <ostream>

#include "command/print.hpp"
#include "command/trace_words.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright::command {
namespace {

constexpr double least_m = 100;
constexpr double mph_mps = 0.44704, kmh_mps = 1 / 3.6;  // exact, by the definition of the mile

struct SpeedRow {
  std::string street;
  road::LimitOnDay limit;
  double from_s = 0, metres = 0, quickest_mps = 0;
};

bool holds_stop(const trace::Run& run, std::size_t leg) {
  for (const trace::Stop& stop : run.stops)
    if (stop.leg == leg) return true;
  return false;
}

void add_leg(std::vector<SpeedRow>& rows, const TracedDrive& drive, const trace::Run& run,
             std::size_t k) {
  const trace::Leg& leg = run.legs[k];
  const StretchId stretch = drive.roads.stretch_of(leg.state);
  const Date day =
      hours::with_offset_of(drive.roads.info().zone, std::llround(leg.enter_s)).civil().date;
  const road::LimitOnDay limit =
      road::law_of(drive.roads.info()).on(drive.roads.stretch(stretch).limit, day);
  const std::string street = printable(drive.roads.text(drive.roads.piece(stretch).name));
  if (rows.empty() || rows.back().street != street || !(rows.back().limit == limit))
    rows.push_back({street, limit, leg.enter_s});
  SpeedRow& row = rows.back();
  const double metres = leg.to_m - leg.from_m, seconds = leg.leave_s - leg.enter_s;
  row.metres += metres;
  if (leg.seen && metres >= least_m && seconds > 0 && !holds_stop(run, k))
    row.quickest_mps = std::max(row.quickest_mps, metres / seconds);
}

}  // namespace

void tell_speeds(std::ostream& out, const TracedDrive& drive) {
  std::vector<SpeedRow> rows;
  for (const trace::Run& run : drive.match.runs)
    for (std::size_t k = 0; k < run.legs.size(); ++k) add_leg(rows, drive, run, k);
  const bool miles = drive.roads.info().region.unit == SpeedUnit::mph;
  Table table({"at", miles ? "mph" : "km/h", "limit", "street"});
  for (const SpeedRow& row : rows) {
    if (row.quickest_mps == 0) continue;
    const Instant at = hours::with_offset_of(drive.roads.info().zone, std::llround(row.from_s));
    const double speed = row.quickest_mps / (miles ? mph_mps : kmh_mps);
    const bool over = row.limit.value > 0 && row.quickest_mps > row.limit.metres_per_second();
    table.add({write_clock(at), fixed(speed, 0),
               limit(row.limit) + (over ? " (over)" : "") +
                   (road::is_sure(row.limit.confidence) ? "" : " (look for the sign)"),
               row.street.empty() ? "a road without a name" : row.street});
  }
  if (table.empty())
    out << "speeds: no road of 100 m and more was seen without a stop\n";
  else
    table.print(out);
}

}  // namespace loopwright::command
