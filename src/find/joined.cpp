// Method: the second pass must cover the stretch on which the first ends.
//   1. A chance of a junction's kind that begins on the way and goes on as the way does: the way, and what
//      is left of that chance.
//   2. Something beside the last stretch: the way itself.
//   3. A run that the last stretch lies in: the way, followed in the run until what is driven of it is long
//      enough. When the way lies in it from its beginning, more may have been driven before: then the way.
#include "find/joined.hpp"

#include <algorithm>

#include "loopwright/road/kind.hpp"

namespace loopwright::find {

namespace {

// Ours: a run has a piece for each side street.
constexpr std::size_t most_stretches = 24;
constexpr std::size_t most_ways = 8;

using Way = std::vector<StretchId>;

/// The run of such a kind that a stretch lies in; none when it lies in none.
PlaceId run_at(const road::Roads& roads, StretchId stretch, std::uint64_t mask) {
  if ((roads.stretch(stretch).runs & mask) == 0) return {};
  for (const road::RunFact& fact : roads.run_facts_of(stretch))
    if ((road::bit(fact.kind) & mask) != 0) return fact.place;
  return {};
}

void add_junctions(const road::Roads& roads, const road::Chance& chance, road::Kind into,
                   std::vector<Way>& ways) {
  const auto path = roads.path_of(chance);
  for (std::size_t at = 0; at < path.size(); ++at)
    for (const road::Chance& second : roads.chances_from(path[at])) {
      if (&second == &chance || !road::meets(second.kind, into)) continue;
      const auto onward = roads.path_of(second);
      const auto rest = path.subspan(at);
      if (onward.size() < rest.size() || !std::equal(rest.begin(), rest.end(), onward.begin()))
        continue;
      Way way(path.begin(), path.end());
      way.insert(way.end(), onward.begin() + static_cast<std::ptrdiff_t>(rest.size()),
                 onward.end());
      ways.push_back(std::move(way));
    }
}

bool has_beside(const road::Roads& roads, StretchId stretch, road::Kind into) {
  const auto chances = roads.chances_from(stretch);
  return std::any_of(chances.begin(), chances.end(), [&](const road::Chance& chance) {
    return road::form_of(chance.kind) == road::KindForm::roadside && road::meets(chance.kind, into);
  });
}

class RunFollower {
 public:
  RunFollower(const road::Roads& roads, road::Kind into)
      : roads_(roads), mask_(road::with_special_forms(into)), least_m_(road::least_run_m(into)) {}

  void add_ways(Way way, std::vector<Way>& ways) const {
    const PlaceId run = run_at(roads_, way.back(), mask_);
    if (!run.known()) return;
    double metres = 0;
    std::size_t from = way.size();
    while (from > 0 && run_at(roads_, way[from - 1], mask_) == run)
      metres += roads_.piece(way[--from]).length_m;
    follow(std::move(way), run, from == 0 ? least_m_ : metres, ways);
  }

 private:
  void follow(Way way, PlaceId run, double metres, std::vector<Way>& ways) const {
    if (ways.size() >= most_ways || way.size() > most_stretches) return;
    if (metres >= least_m_) {
      ways.push_back(std::move(way));
      return;
    }
    const StretchId last = way.back();
    for (const StretchId next : roads_.leaving(roads_.to_node(last))) {
      if (next.piece() == last.piece() || !roads_.drivable(next) ||
          run_at(roads_, next, mask_) != run ||
          std::find(way.begin(), way.end(), next) != way.end())
        continue;
      Way further = way;
      further.push_back(next);
      follow(std::move(further), run, metres + roads_.piece(next).length_m, ways);
    }
  }

  const road::Roads& roads_;
  std::uint64_t mask_;
  double least_m_;
};

}  // namespace

std::vector<std::vector<StretchId>> joined_ways(const road::Roads& roads,
                                                const road::Chance& chance, road::Kind into) {
  const auto path = roads.path_of(chance);
  std::vector<Way> ways;
  switch (road::form_of(into)) {
    case road::KindForm::junction:
      add_junctions(roads, chance, into, ways);
      break;
    case road::KindForm::roadside:
      if (has_beside(roads, path.back(), into)) ways.emplace_back(path.begin(), path.end());
      break;
    case road::KindForm::run:
      RunFollower(roads, into).add_ways(Way(path.begin(), path.end()), ways);
      break;
    case road::KindForm::manoeuvre:
      break;
  }
  std::sort(ways.begin(), ways.end());
  ways.erase(std::unique(ways.begin(), ways.end()), ways.end());
  return ways;
}

}  // namespace loopwright::find
