// Method:
//   1. Rows on road that the drive has twice are gathered to runs. Round each a part of the drive is chosen, wider
//      from try to try, that holds nothing wanted.
//   2. One sweep on from its beginning and one back from its end, on which road that the rest of the drive has
//      counts many times over; of the places that bring the drive into its minutes those with the least such road
//      are driven by, and the best of these taken.
//   3. Kept when the drive is as good as it was and worth more; then from the beginning, until nothing is gained.
//   4. Then the same for spans with many corners, the most first: each is a row to be spoken.
// A local search by segments, as 2-opt is for tours (Croes 1958), with the whole road network for the new segment.
#include "find/less_again.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "find/counting.hpp"
#include "find/describe.hpp"

namespace loopwright::find {

namespace {

// Ours: tried on Newport and the county.
constexpr std::array<std::size_t, 5> margins = {2, 8, 24, 60, 140};  // rows on each side
constexpr std::array<std::size_t, 3> spans = {24, 60, 140};          // rows looked at for corners
constexpr int many_corners = 3;        // on a span: as many may be too many
constexpr std::int32_t dislike = 12;   // of the time on road that the rest has
constexpr std::size_t most_vias = 24;  // of which the road driven twice is measured
constexpr double corner_m = 10;        // of road driven twice: what a corner weighs
constexpr double worn_out_m = 2000;    // a quiet street beyond its cap

}  // namespace

LessAgain::LessAgain(const Hunt& hunt)
    : hunt_(hunt),
      out_(hunt.graph),
      back_(hunt.graph),
      extra_ms_(hunt.graph.size(), 0),
      others_(hunt.piece_m.size(), 0),
      seen_(hunt.piece_m.size(), 0) {}

bool LessAgain::counts_twice(std::uint32_t piece) const {
  return hunt_.piece_quiet[piece] != 0 || !counts_worth(hunt_.ground.wish);
}

/// By row of the drive: it belongs to a pass that a want counts.
std::vector<std::uint8_t> LessAgain::wanted_rows(std::span<const Vertex> drive) const {
  std::vector<std::uint8_t> wanted(drive.size(), 0);
  const std::vector<PlacePass> passes = passes_on(hunt_, hunt_.drive_of(drive));
  for (const wish::Want& want : hunt_.ground.wish.wants) {
    std::vector<std::size_t> rows = counting(hunt_.ground, passes, want);
    if (want.count) rows.resize(std::min(rows.size(), static_cast<std::size_t>(*want.count)));
    for (const std::size_t row : rows)
      for (std::size_t at = passes[row].pass.first; at <= passes[row].pass.last; ++at)
        wanted[at] = 1;
  }
  return wanted;
}

std::vector<LessAgain::Between> LessAgain::places_to_change(std::span<const Vertex> drive) const {
  const std::vector<std::uint8_t> wanted = wanted_rows(drive);
  const std::vector<int> drives = drives_of_pieces(hunt_, drive);
  const auto is_twice = [&](std::size_t row) {
    const std::uint32_t piece = hunt_.piece_of[drive[row]];
    return wanted[row] == 0 && drives[piece] > 1 && counts_twice(piece);
  };
  std::vector<Between> parts;
  for (const std::size_t margin : margins)
    for (std::size_t row = 0; row < drive.size(); ++row) {
      if (!is_twice(row)) continue;
      Between part{row, row};
      while (row + 1 < drive.size() && is_twice(row + 1)) part.last = ++row;
      for (std::size_t k = 0; k < margin && part.first > 0 && wanted[part.first] == 0; ++k)
        --part.first;
      for (std::size_t k = 0; k < margin && part.last + 1 < drive.size() && wanted[part.last] == 0;
           ++k)
        ++part.last;
      if (part.last > part.first + 1 && std::ranges::find(parts, part) == parts.end())
        parts.push_back(part);
    }
  return parts;
}

/// Spans that hold nothing wanted, the most corners first.
std::vector<LessAgain::Between> LessAgain::spans_with_corners(std::span<const Vertex> drive) const {
  const std::vector<std::uint8_t> wanted = wanted_rows(drive);
  std::vector<std::pair<int, Between>> found;
  for (const std::size_t rows : spans)
    for (std::size_t first = 0; first + 2 < drive.size(); first += rows / 2) {
      Between part{first, first};
      while (part.last + 1 < drive.size() && part.last < first + rows &&
             (part.last == first || wanted[part.last] == 0))
        ++part.last;
      const int corners = corners_on(hunt_, drive.subspan(first, part.last - first + 1));
      if (corners >= many_corners) found.emplace_back(-corners, part);
    }
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<Between> parts;
  parts.reserve(found.size());
  for (const auto& [corners, part] : found) parts.push_back(part);
  return parts;
}

/// From the end of its first row, or the door, to the end of its last, or the door.
std::int64_t LessAgain::part_ms(std::span<const Vertex> drive, Between part) const {
  Plan one;
  one.legs[0].assign(drive.begin() + static_cast<std::ptrdiff_t>(part.first),
                     drive.begin() + static_cast<std::ptrdiff_t>(part.last) + 1);
  if (part.first > 0) one.legs.insert(one.legs.begin(), std::vector<Vertex>{});
  if (part.last + 1 < drive.size()) one.legs.emplace_back();
  return leg_ms(hunt_, one, part.first > 0 ? 1 : 0);
}

void LessAgain::learn_others(std::span<const Vertex> drive, Between part) {
  std::fill(others_.begin(), others_.end(), std::uint8_t{0});
  const auto is_kept = [&](std::size_t row) {
    const bool first_stays = part.first > 0 && row == part.first;
    const bool last_stays = part.last + 1 < drive.size() && row == part.last;
    return row < part.first || row > part.last || first_stays || last_stays;
  };
  for (std::size_t row = 0; row < drive.size(); ++row)
    if (std::uint8_t& times = others_[hunt_.piece_of[drive[row]]]; is_kept(row) && times < 255)
      ++times;
  for (Vertex v = 0; v < hunt_.graph.size(); ++v) {
    const std::uint32_t piece = hunt_.piece_of[v];
    const bool twice = others_[piece] != 0 && counts_twice(piece);
    extra_ms_[v] = twice ? dislike * hunt_.graph.along_ms(v) : 0;
  }
}

double LessAgain::again_on(std::span<const Vertex> path) {
  ++stamp_;
  double again_m = corner_m * corners_on(hunt_, path) +
                   static_cast<double>(turning_weight * turnings_on(hunt_, path)) +
                   static_cast<double>(circlings_on(hunt_, path).weight());
  for (const Vertex v : path) {
    const std::uint32_t piece = hunt_.piece_of[v];
    const int times = others_[piece] + (seen_[piece] == stamp_ ? 1 : 0);
    if (times > 0 && counts_twice(piece)) again_m += static_cast<double>(hunt_.piece_m[piece]);
    if (hunt_.piece_quiet[piece] != 0 && times >= hunt_.piece_most[piece]) again_m += worn_out_m;
    seen_[piece] = stamp_;
  }
  return again_m;
}

std::vector<Vertex> LessAgain::way_via(Vertex via) const {
  std::vector<Vertex> path = out_.path(via);
  const std::vector<Vertex> onward = back_.path(via);
  path.insert(path.end(), onward.begin() + 1, onward.end());
  return path;
}

/// The drive with another way in this part; empty when there is none in the minutes.
std::vector<Vertex> LessAgain::elsewhere(std::span<const Vertex> drive, Between part,
                                         std::int64_t whole_ms) {
  const std::int64_t rest_ms = whole_ms - part_ms(drive, part);
  const std::int64_t most_ms = hunt_.high_ms - rest_ms, least_ms = hunt_.low_ms - rest_ms;
  const bool from_door = part.first == 0, to_door = part.last + 1 == drive.size();
  const Vertex from = drive[part.first], to = drive[part.last];
  const std::array<reach::LocalSeed, 1> begin{{{from, 0}}}, end{{{to, hunt_.graph.along_ms(to)}}};
  learn_others(drive, part);
  out_.run(from_door ? std::span<const reach::LocalSeed>(hunt_.starts) : begin,
           {.limit_ms = most_ms, .extra_ms = extra_ms_});
  back_.run_back(to_door ? std::span<const reach::LocalSeed>(hunt_.goals) : end,
                 {.limit_ms = most_ms, .extra_ms = extra_ms_, .meeting = &out_});
  std::vector<std::pair<std::int64_t, Vertex>> vias;  // by what the other sweeps' dislike adds
  for (const Vertex v : out_.settled()) {
    if (!back_.reached(v)) continue;
    const std::int64_t ms = out_.ms(v) + back_.ms(v) - hunt_.graph.along_ms(v);
    if (ms < least_ms || ms > most_ms) continue;
    vias.emplace_back(out_.cost(v) - out_.ms(v) + back_.cost(v) - back_.ms(v), v);
  }
  std::sort(vias.begin(), vias.end());
  // Of many alike an even choice: those next to each other lie on the same way.
  const auto last_alike = std::find_if(vias.begin(), vias.end(), [&](const auto& via) {
    return via.first > vias.front().first + 1000;
  });
  const auto alike = static_cast<std::size_t>(last_alike - vias.begin());
  const std::size_t among = std::max(alike, std::min(vias.size(), most_vias));
  const std::size_t step = std::max<std::size_t>(1, among / most_vias);
  std::vector<Vertex> best;
  double best_m = 0;
  for (std::size_t k = 0; k < among; k += step) {
    std::vector<Vertex> way = way_via(vias[k].second);
    const double again_m = again_on(std::span(way).subspan(from_door ? 0 : 1));
    if (best.empty() || again_m < best_m) best = std::move(way), best_m = again_m;
  }
  if (best.empty()) return best;
  best.insert(best.begin(), drive.begin(), drive.begin() + static_cast<std::ptrdiff_t>(part.first));
  best.insert(best.end(), drive.begin() + static_cast<std::ptrdiff_t>(part.last) + 1, drive.end());
  return best;
}

/// Of a drive, before its passes are known, which take longest to find.
std::int64_t LessAgain::value_at_most(std::span<const Vertex> drive) const {
  if (counts_worth(hunt_.ground.wish)) return std::numeric_limits<std::int64_t>::max();
  return -std::llround(metres_twice(hunt_.ground.roads, hunt_.drive_of(drive), 0));
}

/// Changes the first of these parts for which that is better; false when there is none.
bool LessAgain::change_one(const std::vector<Between>& parts, Scored& drive, int& searches) {
  for (const Between part : parts) {
    if (searches-- <= 0) return false;
    std::vector<Vertex> changed = elsewhere(drive.vertices, part, drive.score.ms);
    if (changed.empty() || value_at_most(changed) < drive.score.rating()) continue;
    const Score now = score(hunt_, changed);
    const Score& best = drive.score;
    if (!now.allowed() || now.missing > best.missing || now.unplaced > best.unplaced) continue;
    if (now.rating() < best.rating() || (now.rating() == best.rating() && !now.better_than(best)))
      continue;
    drive = {std::move(changed), now};
    return true;
  }
  return false;
}

LessAgain::Scored LessAgain::scored(std::vector<Vertex> drive) const {
  Scored scored{std::move(drive), {}};
  scored.score = score(hunt_, scored.vertices);
  return scored;
}

std::vector<Vertex> LessAgain::bettered(std::vector<Vertex> drive, int most_searches) {
  Scored best = scored(std::move(drive));
  while (change_one(places_to_change(best.vertices), best, most_searches)) {
  }
  return std::move(best.vertices);
}

std::vector<Vertex> LessAgain::with_fewer_corners(std::vector<Vertex> drive, int most_searches) {
  Scored best = scored(std::move(drive));
  while (change_one(spans_with_corners(best.vertices), best, most_searches)) {
  }
  return std::move(best.vertices);
}

}  // namespace loopwright::find
