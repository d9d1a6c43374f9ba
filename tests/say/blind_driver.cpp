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
    ++row_, seen_ = 0, counted_lights_ = {};
    if (row_ >= rows_.size()) return;
    const double speak_m = rows_[row_].speak_m;
    heard_m_ = speak_m > 0 ? due_m_[row_] - speak_m : at_m;
  }

  void at_node();
  bool do_row();
  [[nodiscard]] std::optional<StretchId> told_nothing() const;
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
  if (heard() && do_row()) return;
  if (const auto next = told_nothing()) {
    go(*next);
  } else {
    lose("more than one way to go");
  }
}

/// The way a person takes who is told nothing; none when there is a choice to make.
std::optional<StretchId> Driver::told_nothing() const {
  std::vector<View> ways = views();
  const bool shut_seen = std::erase_if(ways, [](const View& v) { return v.shut; }) > 0;
  if (ways.empty()) {
    // Only a private or service way leads on.
    for (const StretchId s : eyes_.roads().leaving(eyes_.roads().to_node(here())))
      if (s != here().back() && eyes_.roads().drivable(s)) return s;
    return std::nullopt;
  }
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
      {"road round", &Driver::round_bend},
      {"main road", &Driver::at_main_road},
      {"take the ", &Driver::at_nth_road},
      {" into ", &Driver::at_named_road},
      {"at the junction", &Driver::at_junction},
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
  const auto nth = static_cast<std::size_t>(ordinal_in(text));
  if (nth <= ways.size()) return go(ways[nth - 1].arm);
  return nth == ways.size() + 1 ? go(here().back()) : lose("the mini has fewer exits");
}

bool Driver::round_ring(const std::string& text) {
  const road::Roads& roads = eyes_.roads();
  int exits = ordinal_in(text);
  bool entered = eyes_.on_ring(here());
  for (std::size_t steps = 0; steps < 200; ++steps) {
    std::optional<StretchId> ring, exit;
    for (const StretchId s : roads.leaving(roads.to_node(here()))) {
      if (s == here().back()) continue;
      if (eyes_.on_ring(s)) {
        if (roads.drivable(s)) ring = s;
      } else if (eyes_.is_road(s) && !eyes_.is_shut(s) && !eyes_.stays_inside_ring(s)) {
        exit = s;
      }
    }
    if (entered && exit && --exits == 0) return go(*exit);
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
  if (!take_side(eyes_.views_beyond_lights(entry), text)) return lose("no such way at the lights");
  if (!driven_.lost.empty()) return true;
  const StretchId exit = here();
  driven_.stretches.pop_back();
  at_m_ -= eyes_.roads().piece(exit).length_m;
  for (const StretchId s : eyes_.way_through_lights(entry, exit)) go(s);
  return true;
}

bool Driver::at_crossroads(const std::string& text) {
  std::vector<int> sides;
  for (const View& v : views()) sides.push_back(is_ahead(v) ? 0 : (v.angle < 0 ? -1 : 1));
  if (sides != std::vector{-1, 0, 1}) return false;
  if (++seen_ < ordinal_in(std::string_view(text).substr(0, text.find(" crossroads"))))
    return false;
  return take_side(views(), text);
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
  return go(contains(text, "left") ? ways.front().arm : ways.back().arm);
}

bool Driver::at_slip_road(const std::string& text) {
  const auto ahead = told_nothing();
  for (const View& v : views()) {
    if (v.shut || !eyes_.is_link(v.arm) || eyes_.is_link(here()) ||
        !nearer_ahead(v, {{}, back_deg}))
      continue;
    const bool to_left = !ahead || *ahead == v.arm || v.angle < 0;
    const bool that_side = to_left == contains(text, "left") || std::abs(v.angle) <= 5;
    if (that_side && ++seen_ >= ordinal_in(text)) return go(v.arm);
  }
  return false;
}

bool Driver::round_bend(const std::string& text) {
  const road::Roads& roads = eyes_.roads();
  const bool main = contains(text, "main");
  const auto around = roads.leaving(roads.to_node(here()));
  std::vector<View> ways = views();
  const bool goes_on =
      std::any_of(ways.begin(), ways.end(), [](const View& v) { return !v.shut && is_ahead(v); });
  if (around.size() <= 2 || (goes_on && !main)) return false;
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
  const bool here_it_is = std::any_of(ways.begin(), ways.end(), [&](const View& v) {
    const int size = eyes_.rank(v.arm) - eyes_.rank(here());
    return !v.shut && std::abs(v.angle) > alike_deg && (size < 0 || (bends && size == 0));
  });
  return here_it_is && take_side(ways, text);
}

bool Driver::at_nth_road(const std::string& text) {
  const bool left = contains(text, " left");
  const std::vector<View> ways = views();
  if (ways.size() < 2) return false;
  const View on = *std::min_element(ways.begin(), ways.end(), nearer_ahead);
  std::vector<View> side;
  for (const View& v : ways)
    if (v.arm != on.arm && !v.shut && (v.angle < on.angle) == left) side.push_back(v);
  const auto comma = text.find(", ");
  const std::string after = comma == std::string::npos ? "" : text.substr(comma + 2);
  const bool sharp = after.starts_with("sharp "), gentle = after.starts_with("bear ");
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

bool Driver::at_named_road(const std::string& text) {
  const std::string name = text.substr(text.find(" into ") + 6);
  for (const View& v : views())
    if (!v.shut && eyes_.sign(v.arm) == name) return go(v.arm);
  return false;
}

bool Driver::at_junction(const std::string& text) {
  const std::vector<View> ways = views();
  return ways.size() > 1 && take_side(ways, text);
}

}  // namespace

Driven drive_blind(const road::Roads& roads, StretchId first, const std::vector<say::Row>& rows,
                   std::size_t most_stretches) {
  return Driver(roads, first, rows).drive(most_stretches);
}

}  // namespace loopwright::test
