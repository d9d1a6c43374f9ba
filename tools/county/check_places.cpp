// 1. Every kind that the area lets one practise at a place, with its movements: what was found.
// 2. Each `must` is looked for among them; its arms and movements are compared.
// 3. What no row covers is false. A spot to stop at is covered by its way instead, and must lie 10 m
//    from every junction (Highway Code rule 243).
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <set>

#include "county/check.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

using road::Kind;
using road::KindForm;
constexpr double clear_m = 10;
constexpr double metres_a_degree = 111'000;

struct FoundPlace {
  Kind kind = Kind::roundabout;
  std::vector<Point> points;  // its middle first
  std::size_t arms = 0;
  std::set<std::string_view> moves;
  std::set<std::int64_t> ways;  // from which it is entered
  std::int64_t source = 0;
  bool beside_left_out = false;  // a road there can't be driven into and out of
  bool covered = false;
};

bool near(Point a, Point b, double metres) {
  if (std::abs(a.lat() - b.lat()) * metres_a_degree > metres + 5) return false;
  return distance_m(a, b) <= metres;
}

bool near(const FoundPlace& place, Point at, double metres) {
  return std::ranges::any_of(place.points, [&](Point p) { return near(p, at, metres); });
}

class Found {
 public:
  explicit Found(const road::Roads& roads) : roads_(roads) {
    for (const road::Chance& chance : roads.chances) {
      if (road::form_of(chance.kind) == KindForm::run) continue;
      FoundPlace& place = at(chance.place, chance.kind);
      if (chance.movement != road::Movement::none) place.moves.insert(road::name(chance.movement));
      place.ways.insert(roads.piece(chance.entry).way);
    }
    for (std::size_t p = 0; p < roads.places.size(); ++p) {
      const Kind kind = roads.places[p].kind;
      if (road::form_of(kind) != KindForm::run) (void)at(PlaceId{p}, kind);
    }
  }
  std::vector<FoundPlace> take() {
    std::vector<FoundPlace> all;
    for (auto& [key, place] : found_) all.push_back(std::move(place));
    return all;
  }

 private:
  FoundPlace& at(PlaceId id, Kind kind) {
    const auto [row, is_new] = found_.try_emplace({id, kind});
    if (is_new) {
      const road::Place& place = roads_.places[id.index()];
      row->second.kind = kind;
      row->second.arms = place.arms;
      row->second.source = place.source.id;
      row->second.points.push_back(place.at);
      for (const NodeId n : roads_.nodes_of(id)) {
        row->second.points.push_back(roads_.nodes[n.index()].at);
        for (const StretchId s : roads_.leaving(n))
          if (left_out(s) || left_out(s.back())) row->second.beside_left_out = true;
      }
    }
    return row->second;
  }
  [[nodiscard]] bool left_out(StretchId s) const {
    return (roads_.stretch(s).flags & road::stretch_flag::cut_off) != 0;
  }
  const road::Roads& roads_;
  std::map<std::pair<PlaceId, Kind>, FoundPlace> found_;
};

std::string where(Point at) {
  std::array<char, 48> text{};
  std::snprintf(text.data(), text.size(), "%.6f,%.6f", at.lat(), at.lon());
  return text.data();
}

/// What of a row a place doesn't bear out; empty when all is well.
std::string differs(std::string_view says, const FoundPlace& place) {
  for (const std::string_view part : split(says, ' ')) {
    if (part.starts_with("arms=")) {
      const auto range = split(part.substr(5), '-');
      const auto least = read_int(range.front()).value_or(0),
                 most = read_int(range.back()).value_or(0);
      const auto arms = static_cast<int>(place.arms);
      if (arms < least || arms > most) return std::string(part) + ", found " + std::to_string(arms);
    } else if (part.starts_with("moves=") && !place.beside_left_out) {
      for (const std::string_view move : split(part.substr(6), ','))
        if (!place.moves.contains(move)) return "no movement " + std::string(move);
    }
  }
  return "";
}

void check_must(const TruePlace& row, std::vector<FoundPlace>& found, Verdict& verdict) {
  for (const Kind kind : road::all_kinds()) {
    if (row.kinds != road::bit(kind)) continue;
    Tally& tally = verdict.of(kind);
    ++tally.planted;
    std::string why = "not found";
    bool met = false;
    for (FoundPlace& place : found) {
      if (place.kind != kind || !near(place, row.at, row.within_m)) continue;
      place.covered = true;
      const std::string difference = differs(row.says, place);
      met = met || difference.empty();
      if (!difference.empty()) why = difference + " (object " + std::to_string(place.source) + ")";
    }
    if (met)
      ++tally.found;
    else
      ++tally.missed, tally.examples.push_back("missed at " + where(row.at) + ": " + why);
  }
}

bool is_manoeuvre(Kind kind) {
  return road::form_of(kind) == KindForm::manoeuvre && kind != Kind::bay_park;
}

class Covers {
 public:
  explicit Covers(const Truth& truth) : truth_(truth) {
    for (const TrueRun& run : truth.runs) by_way_[run.way] |= run.kinds;
  }
  /// Why a place is false; empty when a row covers it.
  [[nodiscard]] std::string against(const FoundPlace& place) const {
    if (is_manoeuvre(place.kind)) return against_spot(place);
    const bool covered = std::ranges::any_of(truth_.places, [&](const TruePlace& row) {
      return (row.kinds & road::bit(place.kind)) != 0 && near(place, row.at, row.within_m);
    });
    return covered ? "" : "nothing of the kind there";
  }

 private:
  [[nodiscard]] std::string against_spot(const FoundPlace& place) const {
    for (const std::int64_t way : place.ways) {
      const auto kinds = by_way_.find(way);
      if (kinds == by_way_.end() || (kinds->second & road::bit(place.kind)) == 0)
        return "not on way " + std::to_string(way);
    }
    const bool at_junction = std::ranges::any_of(truth_.places, [&](const TruePlace& row) {
      return row.duty == Duty::may && (row.kinds & road::bit(Kind::emerge)) != 0 &&
             near(place.points.front(), row.at, clear_m);
    });
    return at_junction ? "within 10 m of a junction" : "";
  }
  const Truth& truth_;
  std::map<std::int64_t, std::uint64_t> by_way_;
};

}  // namespace

void check_places(const Truth& truth, const road::Roads& roads, Verdict& verdict) {
  std::vector<FoundPlace> found = Found(roads).take();
  for (const TruePlace& row : truth.places) {
    if (row.duty != Duty::must) continue;
    if (row.kinds == road::bit(Kind::ford) && !roads.info().fords) continue;
    check_must(row, found, verdict);
  }
  const Covers covers(truth);
  for (const FoundPlace& place : found) {
    Tally& tally = verdict.of(place.kind);
    const std::string why = place.covered && !is_manoeuvre(place.kind) ? "" : covers.against(place);
    if (!why.empty()) {
      ++tally.wrong;
      tally.examples.push_back("false at " + where(place.points.front()) + ": " + why +
                               " (object " + std::to_string(place.source) + ")");
    } else if (!place.covered) {
      ++tally.by_rule;
    }
  }
}

}  // namespace loopwright::county
