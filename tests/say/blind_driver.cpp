// 1. Between rows he goes ahead: the one road that is as good as straight, or the only one.
// 2. A row he has heard is looked for at each node: its words say what kind of place to look for,
//    and the first that fits is where he does it.
// 3. Rings, minis and lights are followed through from the entry, exits counted as signs count them.
#include "say/blind_driver.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "say/eyes.hpp"

namespace loopwright::test {
namespace {

constexpr double straight_on_deg = 15, slip_deg = 4, side_deg = 10;
constexpr double ahead_deg = 45, alike_deg = 20, plain_deg = 30, fork_deg = 75, back_deg = 165;

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

bool is_ahead(const View& view) {
  return std::abs(view.angle) <= ahead_deg;
}

bool nearer_ahead(const View& a, const View& b) {
  return std::abs(a.angle) < std::abs(b.angle);
}

/// Where the road goes on, of some ways: the nearest ahead, one with no entry only when no other is.
View way_on(const std::vector<View>& ways) {
  return *std::min_element(ways.begin(), ways.end(), [](const View& a, const View& b) {
    const bool a_open = !a.shut && is_ahead(a), b_open = !b.shut && is_ahead(b);
    return a_open != b_open ? a_open : nearer_ahead(a, b);
  });
}

/// The number word before (or in) a part of the text; 1 when there is none.
int ordinal_in(std::string_view text) {
  constexpr std::string_view words[] = {"first", "second",  "third",  "fourth", "fifth",
                                        "sixth", "seventh", "eighth", "ninth",  "tenth"};
  for (int i = 0; i < 10; ++i)
    if (contains(text, words[i])) return i + 1;
  return 1;
}

class Driver {
 public:
  Driver(const road::Roads& roads, StretchId first, const std::vector<say::Row>& rows)
      : eyes_(roads), rows_(rows) {
    driven_.stretches = {first};
    double due_m = 0;
    for (const say::Row& row : rows) due_m_.push_back(due_m), due_m += row.to_next_m;
  }

  Driven drive(std::size_t most) {
    hear_next(0);
    while (driven_.stretches.size() < most && driven_.lost.empty()) at_node();
    driven_.stretches.resize(std::min(driven_.stretches.size(), most));
    return std::move(driven_);
  }

 private:
  /// What he does at a node where a row may be due: true when it was, or he is lost.
  using Move = bool (Driver::*)(const std::string&);

  [[nodiscard]] StretchId here() const { return driven_.stretches.back(); }
  [[nodiscard]] bool heard() const { return row_ < rows_.size() && at_m_ >= heard_m_ - 0.5; }
  [[nodiscard]] std::vector<View> views() const { return eyes_.views(here()); }

  bool lose(const std::string& why) {
    const std::string told = row_ < rows_.size() ? rows_[row_].say : "nothing";
    driven_.lost = why + ", told '" + told + "'";
    return true;
  }

  bool go(StretchId next) {
    driven_.stretches.push_back(next);
    at_m_ += eyes_.roads().piece(next).length_m;
    return true;
  }

  /// The row at hand is done, so far along; the next one is heard in its time, or at once.
  void hear_next(double at_m) {
    driven_.done.push_back(done_at_);
    ++row_, seen_ = 0;
    // Lights one is amidst aren't met any more.
    counted_lights_ = eyes_.lights_at(eyes_.roads().from_node(here()));
    if (row_ >= rows_.size()) return;
    const double speak_m = rows_[row_].speak_m;
    heard_m_ = speak_m > 0 ? due_m_[row_] - speak_m : at_m;
  }

  void at_node();
  bool do_row();
  [[nodiscard]] std::optional<StretchId> told_nothing() const;
  [[nodiscard]] std::optional<StretchId> main_road_on(const std::vector<View>& ways) const;
  bool take_side(const std::vector<View>& ways, const std::string& how);
  bool warned(const std::string& text);
  bool over_mini(const std::string& text);
  bool round_ring(const std::string& text);
  bool turn_round(const std::string& text);
  bool at_lights(const std::string& text);
  bool at_crossroads(const std::string& text);
  bool at_end(const std::string& text);
  bool at_fork(const std::string& text);
  bool at_slip_road(const std::string& text);
  bool at_small_road(const std::string& text);
  bool at_nth_of(const std::vector<View>& side, const std::string& text);
  bool round_bend(const std::string& text);
  bool at_main_road(const std::string& text);
  bool at_nth_road(const std::string& text);
  bool at_named_road(const std::string& text);
  bool at_junction(const std::string& text);

  Eyes eyes_;
  const std::vector<say::Row>& rows_;
  std::vector<double> due_m_;
  Driven driven_;
  std::size_t row_ = 0, done_at_ = 0;
  double at_m_ = 0, heard_m_ = 0;
  int seen_ = 0;  ///< roads, lights or crossroads counted since the row was heard
  PlaceId counted_lights_;
};

void Driver::at_node() {
  done_at_ = driven_.stretches.size() - 1;
  const PlaceId lights = eyes_.lights_at(eyes_.roads().to_node(here()));
  if (lights != counted_lights_ && !eyes_.is_inside(counted_lights_, here())) counted_lights_ = {};
  if (heard() && do_row()) return;
  if (const auto next = told_nothing()) {
    go(*next);
  } else {
    lose("more than one way to go");
  }
}

/// The main road one is on, which goes on straight as big and under the same name or number while slip roads or
/// smaller roads leave it: nobody who is told nothing leaves it. Where arrows part the lanes one may be led off.
std::optional<StretchId> Driver::main_road_on(const std::vector<View>& ways) const {
  if (eyes_.has_arrows(here())) return std::nullopt;
  for (const View& on : ways) {
    if (on.shut || std::abs(on.angle) > straight_on_deg || !eyes_.is_same_main_road(here(), on.arm))
      continue;
    const bool alone = std::all_of(ways.begin(), ways.end(), [&](const View& off) {
      const double more = std::abs(off.angle) - std::abs(on.angle);
      return off.arm == on.arm || off.shut || more >= plain_deg ||
             (eyes_.is_link(off.arm)
                  ? more >= slip_deg
                  : eyes_.rank(off.arm) > eyes_.rank(on.arm) && more >= side_deg);
    });
    if (alone) return on.arm;
  }
  return std::nullopt;
}

/// The way a person takes who is told nothing; none when there is a choice to make.
std::optional<StretchId> Driver::told_nothing() const {
  std::vector<View> ways = views();
  if (const auto on = main_road_on(ways)) return on;
  const bool shut_seen = std::erase_if(ways, [](const View& v) { return v.shut; }) > 0;
  if (ways.empty()) return std::nullopt;
  std::sort(ways.begin(), ways.end(), nearer_ahead);
  const View& best = ways[0];
  if (ways.size() == 1 && (!shut_seen || is_ahead(best))) return best.arm;
  if (!is_ahead(best)) return std::nullopt;
  for (std::size_t i = 1; i < ways.size(); ++i) {
    if (std::abs(ways[i].angle) < std::abs(best.angle) + alike_deg) return std::nullopt;
    // The road one is on bends away from a smaller one ahead.
    const bool bends = eyes_.rank(ways[i].arm) == eyes_.rank(here()) &&
                       eyes_.rank(ways[i].arm) < eyes_.rank(best.arm);
    if (bends && std::abs(ways[i].angle) < 180 - ahead_deg) return std::nullopt;
  }
  return best.arm;
}

/// Looks whether this node is where the row heard is to be done.
bool Driver::do_row() {
  constexpr std::pair<std::string_view, Move> moves[] = {
      {"crossing ahead", &Driver::warned},
      {"lights ahead", &Driver::warned},
      {"mini-roundabout", &Driver::over_mini},
      {"roundabout", &Driver::round_ring},
      {"turn the car round", &Driver::turn_round},
      {"lights", &Driver::at_lights},
      {"crossroads", &Driver::at_crossroads},
      {"end of the road", &Driver::at_end},
      {"divides", &Driver::at_fork},
      {"slip road", &Driver::at_slip_road},
      {"at the junction", &Driver::at_junction},
      {"small road", &Driver::at_small_road},
      {"road round", &Driver::round_bend},
      {"main road", &Driver::at_main_road},
      {"take the ", &Driver::at_nth_road},
      {" into ", &Driver::at_named_road},
  };
  const std::string text = rows_[row_].say;
  for (const auto& [words, move] : moves) {
    if (!contains(text, words)) continue;
    if (!(this->*move)(text)) return false;
    const double exit_m = eyes_.roads().piece(here()).length_m;
    if (move != &Driver::warned && driven_.lost.empty()) hear_next(at_m_ - exit_m);
    return true;
  }
  return false;  // pulling up: not his to find
}

/// A crossing is passed; what is said in the same breath may be due here too.
bool Driver::warned(const std::string& text) {
  namespace flag = road::node_flag;
  const std::uint32_t crossing = contains(text, "zebra") ? flag::zebra : flag::signal_crossing;
  const std::uint32_t kind = contains(text, "level") ? flag::level_crossing : crossing;
  if ((eyes_.flags_at_end(here()) & kind) == 0) return false;
  hear_next(at_m_);
  return heard() && do_row();
}

bool Driver::over_mini(const std::string& text) {
  if ((eyes_.flags_at_end(here()) & road::node_flag::mini_roundabout) == 0) return false;
  std::vector<View> ways = views();
  std::erase_if(ways, [](const View& v) { return v.shut; });
  if (eyes_.roads().info().region.side == Side::right) std::reverse(ways.begin(), ways.end());
  if (contains(text, "small road")) {
    std::vector<View> small = eyes_.small_views(here());
    std::erase_if(small, [](const View& v) { return v.shut; });
    if (contains(text, "take the small road") && small.size() == 1) return go(small[0].arm);
    return take_side(small, text) || lose("no small road at the mini");
  }
  if (const auto into = text.find(" into "); into != std::string::npos) {
    for (const View& v : eyes_.small_views(here())) ways.push_back(v);
    for (const View& v : ways)
      if (!v.shut && eyes_.sign(v.arm) == text.substr(into + 6)) return go(v.arm);
    return lose("no such road at the mini");
  }
  const auto nth = static_cast<std::size_t>(ordinal_in(text));
  if (nth <= ways.size()) return go(ways[nth - 1].arm);
  return nth == ways.size() + 1 ? go(here().back()) : lose("the mini has fewer exits");
}

bool Driver::round_ring(const std::string& text) {
  const road::Roads& roads = eyes_.roads();
  int exits = ordinal_in(text);
  const auto into = text.find(" into ");
  const std::string name = into == std::string::npos ? "" : text.substr(into + 6);
  const bool small = contains(text, "small road");
  const auto counts = [&](StretchId s) {
    if (small) return eyes_.is_small(s);
    return eyes_.is_road(s) || (eyes_.is_small(s) && eyes_.is_small(here()));
  };
  bool entered = eyes_.on_ring(here());
  for (std::size_t steps = 0; steps < 200; ++steps) {
    std::optional<StretchId> ring, exit;
    for (const StretchId s : roads.leaving(roads.to_node(here()))) {
      if (s == here().back()) continue;
      if (eyes_.on_ring(s)) {
        if (roads.drivable(s)) ring = s;
      } else if (counts(s) && !eyes_.is_shut(s) && !eyes_.stays_inside_ring(s)) {
        exit = s;
      }
    }
    const bool named = exit && !name.empty() && eyes_.sign(*exit) == name;
    if (entered && exit && (name.empty() ? --exits == 0 : named)) return go(*exit);
    if (!ring) return entered ? lose("the ring doesn't go on") : false;
    entered = go(*ring);
  }
  return lose("round and round");
}

bool Driver::turn_round(const std::string&) {
  const std::uint32_t ends = road::node_flag::dead_end | road::node_flag::wall;
  return (eyes_.flags_at_end(here()) & ends) != 0 && go(here().back());
}

/// Takes the one way that lies left, right or ahead. False when none does.
bool Driver::take_side(const std::vector<View>& ways, const std::string& how) {
  const bool left = contains(how, "left"), right = contains(how, "right");
  const bool keep = contains(how, "keep"), bear = contains(how, "bear");
  std::vector<View> fit;
  for (const View& v : ways) {
    if (v.shut || std::abs(v.angle) > back_deg) continue;
    const bool to_side = !is_ahead(v) && (v.angle < 0) == left;
    if (keep || (!left && !right) ? is_ahead(v) : to_side) fit.push_back(v);
  }
  if (const auto at = how.find(", into "); at != std::string::npos)
    std::erase_if(fit, [&](const View& v) { return eyes_.sign(v.arm) != how.substr(at + 7); });
  if (fit.empty()) return false;
  std::sort(fit.begin(), fit.end(), [](const View& a, const View& b) { return a.angle < b.angle; });
  if (fit.size() > 1 && !keep && !bear && !contains(how, "sharp"))
    return lose("two ways to that side");
  const bool leftmost = bear ? right : left;
  return go(leftmost ? fit.front().arm : fit.back().arm);
}

bool Driver::at_lights(const std::string& text) {
  const StretchId entry = here();
  const PlaceId lights = eyes_.lights_at(eyes_.roads().to_node(entry));
  if (!lights.known() || lights == counted_lights_) return false;
  counted_lights_ = lights;
  if (++seen_ < ordinal_in(std::string_view(text).substr(0, text.find(" lights")))) return false;
  const bool small = contains(text, "small road");
  if (!take_side(eyes_.views_beyond_lights(entry, small), text))
    return lose("no such way at the lights");
  if (!driven_.lost.empty()) return true;
  const StretchId exit = here();
  driven_.stretches.pop_back();
  at_m_ -= eyes_.roads().piece(exit).length_m;
  for (const StretchId s : eyes_.way_through_lights(entry, exit, small)) go(s);
  return true;
}

bool Driver::at_crossroads(const std::string& text) {
  std::vector<int> sides;
  for (const View& v : views()) sides.push_back(is_ahead(v) ? 0 : (v.angle < 0 ? -1 : 1));
  if (sides != std::vector{-1, 0, 1}) return false;
  if (++seen_ < ordinal_in(std::string_view(text).substr(0, text.find(" crossroads"))))
    return false;
  return take_side(contains(text, "small road") ? eyes_.small_views(here()) : views(), text);
}

bool Driver::at_end(const std::string& text) {
  const std::vector<View> ways = views();
  if (ways.size() < 2) return false;
  if (std::none_of(ways.begin(), ways.end(), is_ahead)) return take_side(ways, text);
  // A road that joins a bigger one, which goes on in about the same direction, ends too.
  const bool bigger = std::any_of(ways.begin(), ways.end(), [&](const View& v) {
    return eyes_.rank(v.arm) < eyes_.rank(here());
  });
  for (const View& v : ways)
    if (bigger && contains(text, "bear") && !v.shut && is_ahead(v) &&
        (v.angle < 0) == contains(text, "left"))
      return go(v.arm);
  return false;
}

bool Driver::at_fork(const std::string& text) {
  std::vector<View> ways = views();
  std::erase_if(ways, [](const View& v) { return v.shut || std::abs(v.angle) > fork_deg; });
  if (ways.size() < 2) return false;
  std::vector<View> near = ways;
  std::sort(near.begin(), near.end(), nearer_ahead);
  const bool plain = std::abs(near[1].angle) >= std::abs(near[0].angle) + plain_deg;
  if (plain || !is_ahead(near[0])) return false;
  if (contains(text, "middle")) return ways.size() == 3 ? go(ways[1].arm) : lose("no three roads");
  return go(contains(text, "left") ? ways.front().arm : ways.back().arm);
}

bool Driver::at_slip_road(const std::string& text) {
  const auto ahead = told_nothing();
  std::vector<View> roads = views();
  std::erase_if(roads, [&](const View& v) { return v.shut || eyes_.is_link(v.arm); });
  const double road_on =
      roads.empty() ? back_deg : std::min_element(roads.begin(), roads.end(), nearer_ahead)->angle;
  std::vector<View> side;
  for (const View& v : views()) {
    if (v.shut || !eyes_.is_link(v.arm) || eyes_.is_link(here()) ||
        !nearer_ahead(v, {{}, back_deg}))
      continue;
    // Where nothing is plainly ahead, the road nearest to it that is no slip road itself is the one to compare with.
    const bool to_left = ahead ? *ahead == v.arm || v.angle < 0 : v.angle < road_on;
    if (to_left == contains(text, "left") || std::abs(v.angle) <= 5) side.push_back(v);
  }
  return at_nth_of(side, text);
}

/// Counts the small roads to that side of the way on, and nothing else.
bool Driver::at_small_road(const std::string& text) {
  const bool left = contains(text, " left");
  const std::vector<View> ways = views();
  if (ways.empty()) return false;
  if (contains(text, "into the small road")) return take_side(eyes_.small_views(here()), text);
  const View on = way_on(ways);
  std::vector<View> side;
  for (const View& v : eyes_.small_views(here()))
    if (v.arm != on.arm && !v.shut && (v.angle < on.angle) == left) side.push_back(v);
  return at_nth_of(side, text);
}

/// Counts those of a sort to the side that is told; of several at one place only "the sharper" or "the gentler" is sure.
bool Driver::at_nth_of(const std::vector<View>& side, const std::string& text) {
  if (side.empty()) return false;
  const bool sharper = contains(text, "the sharper"), gentler = contains(text, "the gentler");
  if (side.size() > 1 && (sharper || gentler) && seen_ + 1 >= ordinal_in(text)) {
    const auto turn = [](const View& v) { return std::abs(v.angle); };
    return go((sharper ? std::ranges::max(side, {}, turn) : std::ranges::min(side, {}, turn)).arm);
  }
  seen_ += static_cast<int>(side.size());
  if (seen_ < ordinal_in(text)) return false;
  return side.size() > 1 ? lose("two of a sort to that side") : go(side[0].arm);
}

bool Driver::round_bend(const std::string& text) {
  const road::Roads& roads = eyes_.roads();
  const bool main = contains(text, "main");
  const auto around = roads.leaving(roads.to_node(here()));
  std::vector<View> ways = views();
  // The main road doesn't bend where one as big goes on ahead.
  const bool goes_on = std::any_of(ways.begin(), ways.end(), [&](const View& v) {
    return !v.shut && is_ahead(v) && (!main || eyes_.rank(v.arm) <= eyes_.rank(here()));
  });
  if (around.size() <= 2 || goes_on) return false;
  std::erase_if(ways, [&](const View& v) {
    const bool other_size = main && eyes_.rank(v.arm) != eyes_.rank(here());
    return v.shut || is_ahead(v) || other_size || (v.angle < 0) != contains(text, "left");
  });
  return ways.size() == 1 && go(ways[0].arm);
}

/// Where the main road bends, or where a bigger one crosses.
bool Driver::at_main_road(const std::string& text) {
  const std::vector<View> ways = views();
  const bool bends = contains(text, "bends");
  // It doesn't bend where one as big goes on about straight.
  if (bends && std::any_of(ways.begin(), ways.end(), [&](const View& v) {
        return !v.shut && std::abs(v.angle) < plain_deg && eyes_.rank(v.arm) <= eyes_.rank(here());
      }))
    return false;
  const bool here_it_is = std::any_of(ways.begin(), ways.end(), [&](const View& v) {
    const int size = eyes_.rank(v.arm) - eyes_.rank(here());
    const bool bigger = size < 0 && std::abs(v.angle) > alike_deg;
    // What leads back isn't the main road's bend.
    const bool bend =
        bends && size == 0 && std::abs(v.angle) > alike_deg && std::abs(v.angle) < 180 - ahead_deg;
    return !v.shut && (bigger || bend);
  });
  return here_it_is && take_side(ways, text);
}

bool Driver::at_nth_road(const std::string& text) {
  const bool left = contains(text, " left");
  const std::vector<View> ways = views();
  if (ways.size() < 2) return false;
  const View on = way_on(ways);
  std::vector<View> side;
  for (const View& v : ways)
    if (v.arm != on.arm && !v.shut && (v.angle < on.angle) == left) side.push_back(v);
  const auto comma = text.find(", ");
  const std::string after = comma == std::string::npos ? "" : text.substr(comma + 2);
  const bool sharp = after.starts_with("sharp ") || after == "the sharper";
  const bool gentle = after.starts_with("bear ") || after == "the gentler";
  if (!after.empty() && !sharp && !gentle) {
    for (const View& v : side)
      if (eyes_.sign(v.arm) == after) return go(v.arm);
    return false;
  }
  // Hardly off the way on: the same road, at a glance.
  if (!sharp && !gentle)
    std::erase_if(side, [&](const View& v) { return std::abs(v.angle - on.angle) < plain_deg; });
  if (side.empty()) return false;
  seen_ += static_cast<int>(side.size());
  if (seen_ < ordinal_in(text)) return false;
  if (sharp || gentle) return go(sharp == left ? side.front().arm : side.back().arm);
  return side.size() > 1 ? lose("two roads to that side") : go(side[0].arm);
}

/// The first road to that side with this name on its sign, small ones included.
bool Driver::at_named_road(const std::string& text) {
  const std::string name = text.substr(text.find(" into ") + 6);
  std::vector<View> ways = views();
  for (const View& v : eyes_.small_views(here())) ways.push_back(v);
  if (ways.size() < 2) return false;
  const bool left = contains(text, "left");
  for (const View& v : ways)
    if (!v.shut && eyes_.sign(v.arm) == name && std::abs(v.angle) > 5 && (v.angle < 0) == left)
      return go(v.arm);
  return false;
}

bool Driver::at_junction(const std::string& text) {
  const std::vector<View> ways = views();
  if (contains(text, "small road"))
    return !ways.empty() && std::none_of(ways.begin(), ways.end(), is_ahead) &&
           take_side(eyes_.small_views(here()), text);
  return ways.size() > 1 && take_side(ways, text);
}

}  // namespace

Driven drive_blind(const road::Roads& roads, StretchId first, const std::vector<say::Row>& rows,
                   std::size_t most_stretches) {
  return Driver(roads, first, rows).drive(most_stretches);
}

}  // namespace loopwright::test
