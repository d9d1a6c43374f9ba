// The parts of the truth, each appends its rows.
#pragma once

#include "county/truth.hpp"
#include "county/truth_net.hpp"

namespace loopwright::county {

/// Collects rows.
class Rows {
 public:
  explicit Rows(const Net& net) : net_(net) {}
  void must_at(road::Kind kind, Spot at, double within_m, std::string says = "");
  void may_at(std::uint64_t kinds, Spot at, double within_m);
  void must_along(road::Kind kind, const Road& road, Course course, double metres);
  void may_along(std::uint64_t kinds, const Road& road, Course course);
  void add(TrueRun run) { truth_.runs.push_back(std::move(run)); }
  [[nodiscard]] Truth take() { return std::move(truth_); }

 private:
  const Net& net_;
  Truth truth_;
};

void tell_rings(const Net& net, Rows& rows);    ///< roundabouts, minis
void tell_signs(const Net& net, Rows& rows);    ///< lights, crossings, humps, stop lines …
void tell_streets(const Net& net, Rows& rows);  ///< narrow, limits, one-way, dual …
void tell_shape(const Net& net, Rows& rows);    ///< country roads, bends, slip roads, road numbers
void tell_lanes(const Net& net, Rows& rows);    ///< lanes for buses and cycles, merges, trams
void tell_junctions(const Net& net, Rows& rows);  ///< emerging, turning off, crossroads …
void tell_besides(const Net& net, Rows& rows);    ///< schools, bus stops, car parks
void tell_spots(const Net& net, Rows& rows);      ///< where to stop and practise

}  // namespace loopwright::county
