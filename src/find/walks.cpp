#include "find/walks.hpp"

#include <algorithm>

namespace loopwright::find {

namespace {

/// What a street costs more each time a walk wears it out, as a multiple of its time (ours).
constexpr std::int32_t worn_out_dislike = 12;

/// Makes the quiet streets dearer that the plan drives more often than they may be.
void make_worn_out_dearer(const Hunt& hunt, const Plan& plan, std::vector<std::int32_t>& courtesy) {
  const std::vector<int> drives = drives_of_pieces(hunt, plan.vertices());
  for (Vertex v = 0; v < hunt.graph.size(); ++v) {
    const std::uint32_t piece = hunt.piece_of[v];
    if (hunt.piece_quiet[piece] == 0 || drives[piece] <= hunt.piece_most[piece]) continue;
    courtesy[v] += worn_out_dislike * hunt.graph.along_ms(v);
  }
}

circuit::Walk walk_with(const PassageGraph& graph, std::span<const std::int32_t> courtesy,
                        int rounds, std::uint64_t seed) {
  return circuit::search(graph.problem(courtesy),
                         {.rounds = rounds, .seed = seed, .longer_wait_ms = longer_wait_ms});
}

}  // namespace

Plan plan_along_walk(const Hunt& hunt, Builder& builder, int rounds, const Liking& liking) {
  const PassageGraph graph(hunt);
  const std::vector<std::int32_t> courtesy = graph.courtesy();
  Plan plan = builder.lay_along(graph, walk_with(graph, courtesy, rounds, 1), courtesy);
  builder.finish(plan, liking);
  return plan;
}

std::vector<Plan> plans_along_walks(const Hunt& hunt, Builder& builder, Certifier& certifier,
                                    const FindWork& work) {
  const PassageGraph graph(hunt, work.settled);
  std::vector<std::int32_t> courtesy = graph.courtesy();
  std::vector<Plan> plans;
  const auto drive = [&](const circuit::Walk& walk) {
    Plan plan = builder.lay_along(graph, walk, courtesy);
    plans.push_back(plan);
    builder.finish(plans.back(), {});
    make_worn_out_dearer(hunt, plan, courtesy);
  };
  circuit::Walk best;
  for (int round = 0; round < work.walks; ++round) {
    const circuit::Walk walk =
        walk_with(graph, courtesy, work.walk_rounds, static_cast<std::uint64_t>(round + 1));
    if (round == 0) best = walk;
    drive(walk);
  }
  const circuit::Walk better = certifier.bound(graph, work.bound, best);
  if (!(better == best)) drive(better);
  return plans;
}

}  // namespace loopwright::find
