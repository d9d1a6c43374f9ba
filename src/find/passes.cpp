// Method:
//   1. Junction-like: at each stretch, every place some chance enters by it is followed through the
//      stretches inside the place to the way out; (place, entry, exit) names the chance.
//   2. Stretch-like: maximal runs of stretches that carry the kind's bit (or a special form's) and lie
//      in one place (one road number, one school), long enough as driven; a run is named by the most
//      special form that is long enough by itself.
//   3. Beside the road: where it lies is driven past. A manoeuvre: where the drive stops for it.
#include "loopwright/find/passes.hpp"

#include <algorithm>

#include "find/stops.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::find {

namespace {

bool is_inside(const road::Roads& roads, PlaceId place, StretchId stretch) {
  const auto pieces = roads.pieces_of(place);
  return std::find(pieces.begin(), pieces.end(), stretch.piece()) != pieces.end();
}

wish::Pass pass_from(const road::Roads& roads, const road::Chance& chance, std::size_t first,
                     std::size_t last) {
  wish::Pass pass;
  pass.kind = chance.kind, pass.movement = chance.movement, pass.exit = chance.exit_number;
  pass.first = first, pass.last = last;
  pass.hardness = chance.hardness, pass.confidence = chance.confidence;
  pass.source = chance.source, pass.tag = roads.text(chance.tag);
  return pass;
}

class PassFinder {
 public:
  PassFinder(const road::Roads& roads, const Drive& drive) : roads_(roads), drive_(drive) {
    for (const StateId s : drive.states) stretches_.push_back(roads.stretch_of(s));
  }

  std::vector<PlacePass> find() {
    for (std::size_t i = 0; i + 1 < stretches_.size(); ++i) junctions_from(i);
    for (std::size_t i = 0; i < stretches_.size(); ++i) beside(i);
    for (const PlannedStop& stop : drive_.stops) stop_at(stop);
    for (const road::Kind kind : road::all_kinds())
      if (road::is_stretch_like(kind) && !is_special_form(kind)) runs_of(kind);
    std::stable_sort(found_.begin(), found_.end(), [](const PlacePass& a, const PlacePass& b) {
      return std::tuple(a.pass.first, a.pass.last, a.pass.kind) <
             std::tuple(b.pass.first, b.pass.last, b.pass.kind);
    });
    return std::move(found_);
  }

 private:
  static bool is_special_form(road::Kind kind) {
    const auto kinds = road::all_kinds();
    return std::any_of(kinds.begin(), kinds.end(),
                       [&](road::Kind other) { return other != kind && road::meets(kind, other); });
  }

  void junctions_from(std::size_t i) {
    PlaceId last_place;
    for (const road::Chance& chance : roads_.chances_from(stretches_[i])) {
      if (!is_junction(chance) || chance.place == last_place) continue;
      last_place = chance.place;
      junction_at(i, chance.place);
    }
  }

  void junction_at(std::size_t i, PlaceId place) {
    std::size_t j = i + 1;
    while (j < stretches_.size() && is_inside(roads_, place, stretches_[j])) ++j;
    if (j == stretches_.size()) return;
    for (const road::Chance& chance : roads_.chances_from(stretches_[i]))
      if (chance.place == place && chance.exit == stretches_[j] && is_junction(chance)) {
        found_.push_back({pass_from(roads_, chance, i, j), place});
        return;
      }
  }

  static bool is_junction(const road::Chance& chance) {
    return road::form_of(chance.kind) == road::KindForm::junction;
  }

  void beside(std::size_t i) {
    for (const road::Chance& chance : roads_.chances_from(stretches_[i])) {
      if (road::form_of(chance.kind) != road::KindForm::roadside) continue;
      const double at_m = spot_m(roads_, chance);
      const double from_m = i == 0 ? drive_.start_m : 0;
      if (at_m >= from_m && at_m <= from_m + driven_m(roads_, drive_, i))
        found_.push_back({pass_from(roads_, chance, i, i), chance.place});
    }
  }

  void stop_at(const PlannedStop& stop) {
    const road::Chance& chance = roads_.chances[stop.chance.index()];
    wish::Pass pass = pass_from(roads_, chance, stop.at, stop.at);
    pass.stop_s = static_cast<double>(stop_ms(chance.kind)) / 1000;
    found_.push_back({std::move(pass), chance.place});
  }

  void runs_of(road::Kind kind) {
    const std::uint64_t mask = road::with_special_forms(kind);
    for (std::size_t i = 0; i < stretches_.size();) {
      const PlaceId run = run_at(i, mask);
      std::size_t end = i + 1;
      while (end < stretches_.size() && run_at(end, mask) == run) ++end;
      if (run.known()) run_between(kind, i, end);
      i = end;
    }
  }

  /// The run of one of the kinds that a stretch of the drive lies in; none when it lies in none.
  [[nodiscard]] PlaceId run_at(std::size_t i, std::uint64_t mask) const {
    if ((roads_.stretch(stretches_[i]).runs & mask) == 0) return {};
    const auto facts = roads_.run_facts_of(stretches_[i]);
    const auto fact = std::find_if(facts.begin(), facts.end(), [&](const road::RunFact& f) {
      return (road::bit(f.kind) & mask) != 0;
    });
    return fact == facts.end() ? PlaceId{} : fact->place;
  }

  void run_between(road::Kind kind, std::size_t begin, std::size_t end) {
    if (metres(begin, end) < road::least_run_m(kind)) return;
    const road::Kind named = most_special(kind, begin, end);
    PlacePass found;
    wish::Pass& pass = found.pass;
    pass.kind = named, pass.first = begin, pass.last = end - 1;
    pass.hardness = 0;
    bool sourced = false;
    for (std::size_t i = begin; i < end; ++i)
      for (const road::RunFact& fact : roads_.run_facts_of(stretches_[i])) {
        if ((road::bit(fact.kind) & road::with_special_forms(kind)) == 0) continue;
        pass.hardness = std::max(pass.hardness, static_cast<int>(fact.hardness));
        pass.confidence = road::less_sure(pass.confidence, fact.confidence);
        if (sourced || !road::meets(fact.kind, named)) continue;
        sourced = true;
        pass.source = {.id = roads_.piece(stretches_[i]).way, .type = ObjectType::way};
        pass.tag = roads_.text(fact.tag);
        found.place = fact.place;
      }
    found_.push_back(std::move(found));
  }

  /// The special form of `kind` that has a long enough run of its own in the range, or `kind`.
  road::Kind most_special(road::Kind kind, std::size_t begin, std::size_t end) const {
    for (const road::Kind special : road::all_kinds()) {
      if (special == kind || !road::meets(special, kind)) continue;
      for (std::size_t i = begin; i < end; ++i) {
        std::size_t j = i;
        while (j < end && (roads_.stretch(stretches_[j]).runs & road::bit(special)) != 0) ++j;
        if (j > i && metres(i, j) >= road::least_run_m(special)) return special;
        i = j;
      }
    }
    return kind;
  }

  [[nodiscard]] double metres(std::size_t begin, std::size_t end) const {
    double sum = 0;
    for (std::size_t i = begin; i < end; ++i) sum += driven_m(roads_, drive_, i);
    return sum;
  }

  const road::Roads& roads_;
  const Drive& drive_;
  std::vector<StretchId> stretches_;
  std::vector<PlacePass> found_;
};

}  // namespace

double driven_m(const road::Roads& roads, const Drive& drive, std::size_t i) {
  const double begin = i == 0 ? drive.start_m : 0;
  const double end = i + 1 == drive.states.size()
                         ? drive.end_m
                         : roads.piece(roads.stretch_of(drive.states[i])).length_m;
  return std::max(0.0, end - begin);
}

std::vector<PlacePass> passes_of(const road::Roads& roads, const Drive& drive) {
  return PassFinder(roads, drive).find();
}

}  // namespace loopwright::find
