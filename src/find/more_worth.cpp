// Method: windows over the passes of worth, a few passes wide, from the drive's beginning to its end and again while
// something is gained. The part between the pass before a window and the one behind it is looked for anew
// (part_search.hpp), in its own time and what the drive has to spare. Of the ways found the first is taken that makes
// the whole drive worth more, or as much in less time: time saved in several windows is room for one more pass.
// When nothing more is gained a part is made otherwise, even if that is worth a pass less, and gone on from there.
// A large neighbourhood search (Shaw 1998, from memory) whose neighbourhoods are searched nearly exactly.
#include "find/more_worth.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "find/counting.hpp"
#include "find/stops.hpp"

namespace loopwright::find {

namespace {

constexpr std::int64_t alike_ms =
    5000;  // a part with no more time than this isn't looked for again; ours
constexpr std::size_t kick_width = 4;     // passes of a kick's part at most; ours
constexpr std::int64_t kick_loss = 1200;  // what a kick may cost; ours
constexpr std::size_t kicks_a_pass = 4;   // a short drive has few parts to make otherwise; ours

}  // namespace

std::vector<MoreWorth::Counted> MoreWorth::counted_on(const Drive& drive) const {
  const std::vector<PlacePass> passes = passes_on(hunt_, drive);
  std::vector<Counted> counted;
  for (std::size_t goal = 0; goal < search_.goals().size(); ++goal) {
    const wish::Want& want = hunt_.ground.wish.wants[search_.goals()[goal]];
    std::map<std::pair<PlaceId, road::Movement>, std::size_t> repeats;
    for (const std::size_t row : practised(hunt_.ground, passes, want).passes) {
      const PlacePass& found = passes[row];
      const std::size_t repeat = repeats[{found.place, found.pass.movement}]++;
      counted.push_back({{goal, found.place, found.pass.movement},
                         found.pass.first,
                         found.pass.last,
                         found.begins_ms,
                         hunt_.ground.caps.repeat_worth[repeat]});
    }
  }
  std::stable_sort(counted.begin(), counted.end(),
                   [](const Counted& a, const Counted& b) { return a.begins_ms < b.begins_ms; });
  return counted;
}

MoreWorth::Driven MoreWorth::driven(std::vector<Vertex> vertices) const {
  Driven made;
  made.vertices = std::move(vertices);
  made.score = score(hunt_, made.vertices);
  const Drive drive = hunt_.drive_of(made.vertices);
  made.passes = counted_on(drive);
  made.ends_ms = begin_times(hunt_.ground, drive);
  for (std::size_t row = 0; row < made.vertices.size(); ++row)
    made.ends_ms[row] += hunt_.graph.along_ms(made.vertices[row]);
  return made;
}

MoreWorth::Rows MoreWorth::around(const Driven& drive, Window window) {
  const bool to_end = window.last + 1 >= drive.passes.size();
  return {window.first == 0 ? 0 : drive.passes[window.first - 1].last,
          to_end ? drive.vertices.size() - 1 : drive.passes[window.last + 1].first};
}

Part MoreWorth::part_of(const Driven& drive, Window window, Rows rows) const {
  Part part;
  part.from = drive.vertices[rows.from];
  part.to = drive.vertices[rows.to];
  const std::int64_t begin_ms = drive.ends_ms[rows.from], end_ms = drive.ends_ms[rows.to];
  part.now_ms = end_ms - begin_ms;
  part.most_ms = part.now_ms + std::max<std::int64_t>(0, hunt_.high_ms - drive.score.ms);
  for (std::size_t k = 0; k < drive.passes.size(); ++k) {
    const Counted& pass = drive.passes[k];
    const std::size_t goal = pass.pass.goal;
    if (k >= window.first && k <= window.last) {
      part.to_beat += pass.worth;
      continue;
    }
    part.others.push_back(pass.pass);
    if (k < window.first)
      part.ready_ms[goal] =
          std::max<std::int64_t>(0, pass.begins_ms + search_.spacing_ms(goal) - begin_ms);
    if (k > window.last && part.next_worth[goal] == 0) {
      part.next_ms[goal] = pass.begins_ms - end_ms;
      part.next_worth[goal] = pass.worth;
    }
  }
  const std::span<const Vertex> all = drive.vertices;
  part.drives = drives_of_pieces(hunt_, all);
  for (const Vertex v : all.subspan(rows.from + 1, rows.to - rows.from - 1))
    if (const std::uint32_t piece = hunt_.piece_of[v];
        --part.drives[piece] > 0 && hunt_.piece_quiet[piece] != 0)
      part.to_beat -= std::lround(hunt_.piece_m[piece]);
  return part;
}

std::vector<Vertex> MoreWorth::with_way(const Driven& drive, Rows rows,
                                        std::span<const Vertex> way) {
  const std::span<const Vertex> all = drive.vertices;
  const std::span<const Vertex> before = all.first(rows.from), after = all.subspan(rows.to + 1);
  std::vector<Vertex> changed(before.begin(), before.end());
  changed.insert(changed.end(), way.begin(), way.end());
  changed.insert(changed.end(), after.begin(), after.end());
  return changed;
}

/// In the window and the caps, and no less of what is asked for.
bool MoreWorth::is_as_good(const Score& now, const Score& before) {
  return now.allowed() && now.missing <= before.missing && now.unplaced <= before.unplaced;
}

bool MoreWorth::is_better(const Score& now, const Score& before) {
  return now.rating() > before.rating() ||
         (now.rating() == before.rating() && now.ms < before.ms - PartSearch::least_saved_ms);
}

bool MoreWorth::take_better(Driven& drive, Rows rows,
                            const std::vector<std::vector<Vertex>>& ways) const {
  for (const std::vector<Vertex>& way : ways) {
    std::vector<Vertex> changed = with_way(drive, rows, way);
    const Score now = score(hunt_, changed);
    if (!is_as_good(now, drive.score) || !is_better(now, drive.score)) continue;
    drive = driven(std::move(changed));
    return true;
  }
  return false;
}

/// Of a part as it is, with the time it may take: FNV-1a (Fowler, Noll and Vo 1991).
std::uint64_t MoreWorth::number_of(const Driven& drive, Rows rows, std::int64_t most_ms) {
  std::uint64_t number = 0xcbf29ce484222325U;
  const auto mix = [&](std::uint64_t value) { number = (number ^ value) * 0x100000001b3U; };
  for (std::size_t row = rows.from; row <= rows.to; ++row) mix(drive.vertices[row]);
  mix(static_cast<std::uint64_t>(most_ms / alike_ms));
  return number;
}

std::vector<std::vector<Vertex>> MoreWorth::ways_of(Part part, std::size_t most_labels) {
  auto ways = search_.best(std::move(part), std::min(most_labels, labels_left_));
  labels_left_ -= std::min(labels_left_, search_.labels());
  return ways;
}

bool MoreWorth::change(Driven& drive, Window window, std::size_t most_labels) {
  const Rows rows = around(drive, window);
  if (rows.to <= rows.from + 1 || labels_left_ == 0) return false;
  Part part = part_of(drive, window, rows);
  if (!tried_.insert(number_of(drive, rows, part.most_ms)).second) return false;
  return take_better(drive, rows, ways_of(std::move(part), most_labels));
}

void MoreWorth::climb(Driven& drive, const Widths& widths) {
  for (bool gained = true; gained && labels_left_ > 0;) {
    gained = false;
    for (const std::size_t width : widths.passes)
      for (std::size_t first = 0; first < drive.passes.size(); ++first)
        if (change(drive, {first, std::min(first + width, drive.passes.size()) - 1},
                   widths.most_labels))
          gained = true;
  }
}

/// Puts another way in somewhere, which may be worth a pass less; false when there is none.
bool MoreWorth::kick(Driven& drive, std::size_t most_labels) {
  if (drive.passes.empty()) return false;
  const std::size_t first = dice_.below(drive.passes.size());
  const Window window{first, std::min(first + dice_.below(kick_width), drive.passes.size() - 1)};
  const Rows rows = around(drive, window);
  if (rows.to <= rows.from + 1) return false;
  Part part = part_of(drive, window, rows);
  part.to_beat -= kick_loss;
  part.now_ms = part.most_ms;
  const auto ways = ways_of(std::move(part), most_labels);
  if (ways.empty()) return false;
  std::vector<Vertex> changed = with_way(drive, rows, ways[dice_.below(ways.size())]);
  if (changed == drive.vertices || !is_as_good(score(hunt_, changed), drive.score)) return false;
  drive = driven(std::move(changed));
  return true;
}

std::vector<Vertex> MoreWorth::bettered(std::vector<Vertex> vertices, const Widths& widths) {
  if (search_.goals().empty()) return vertices;
  tried_.clear();
  labels_left_ = widths.of_all;
  dice_ = Dice(1);
  Driven best = driven(std::move(vertices));
  climb(best, widths);
  const std::size_t kicks = std::min(widths.kicks, kicks_a_pass * best.passes.size());
  for (std::size_t k = 0; k < kicks && labels_left_ > 0; ++k) {
    Driven kicked = best;
    if (!kick(kicked, widths.most_labels)) continue;
    climb(kicked, widths);
    if (is_better(kicked.score, best.score)) best = std::move(kicked);
  }
  return std::move(best.vertices);
}

}  // namespace loopwright::find
