// Clp's dual simplex, on minus the gains (it minimises). Bounds are ours:
//   gain ≤ Σ rows sup(price · row) + Σ columns sup((gain - Σ price · factor) · amount)
// for any prices at all, by weak duality; rows open on the side a price leans to lose their price. The sum of
// n terms in long double is off by at most n · 2^-63 · Σ |term|, far below the margin added. That no amounts
// exist is believed when the same sum without gains is below 0 for the prices of the solver's ray.
#include "circuit/bound_programme.hpp"

#include <ClpSimplex.hpp>
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace loopwright::circuit {

struct Programme::Solver {
  ClpSimplex clp;
};

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double margin = 1e-12;  // of the sum of sizes; ours, 10^6 times what long double needs
constexpr double room = 1e-6;     // of a row that isn't tight

struct Matrix {
  std::vector<CoinBigIndex> starts = {0};
  std::vector<int> columns;
  std::vector<double> factors, low, high;
  explicit Matrix(const std::vector<Row>& rows) {
    for (const Row& row : rows) {
      for (const Term& term : row.terms) {
        columns.push_back(term.column);
        factors.push_back(term.factor);
      }
      starts.push_back(static_cast<CoinBigIndex>(columns.size()));
      low.push_back(std::max(row.low, -COIN_DBL_MAX));
      high.push_back(std::min(row.high, COIN_DBL_MAX));
    }
  }
};

/// Whether no amounts within the columns' limits keep this one row.
bool out_of_reach(const Row& row, const std::vector<Column>& columns) {
  double low = 0, high = 0;
  for (const Term& term : row.terms) {
    const Column& column = columns[term.column];
    low += term.factor * (term.factor > 0 ? column.low : column.high);
    high += term.factor * (term.factor > 0 ? column.high : column.low);
  }
  return low > row.high + room || high < row.low - room;
}

}  // namespace

Programme::Programme(std::vector<Column> columns, std::vector<Row> rows)
    : columns_(std::move(columns)), solver_(std::make_unique<Solver>()) {
  ClpSimplex& clp = solver_->clp;
  clp.setLogLevel(0);
  clp.scaling(0);  // the factors are near 1, and each solve would scale anew
  clp.resize(0, static_cast<int>(columns_.size()));
  for (int c = 0; c < static_cast<int>(columns_.size()); ++c) {
    clp.setObjectiveCoefficient(c, -columns_[c].gain);
    clp.setColumnBounds(c, columns_[c].low, columns_[c].high);
  }
  add(std::move(rows));
  fixed_rows_ = rows_.size();
}

Programme::~Programme() = default;

void Programme::add(std::vector<Row> rows) {
  if (rows.empty()) return;
  const Matrix m(rows);
  solver_->clp.addRows(static_cast<int>(rows.size()), m.low.data(), m.high.data(), m.starts.data(),
                       m.columns.data(), m.factors.data());
  for (Row& row : rows) rows_.push_back({std::move(row), next_name_++, 0});
}

void Programme::limit(int column, double low, double high) {
  columns_[column].low = low;
  columns_[column].high = high;
  solver_->clp.setColumnBounds(column, low, high);
}

int Programme::solve(const SolveLimits& limits) {
  ClpSimplex& clp = solver_->clp;
  clp.setMaximumIterations(limits.iterations);
  clp.setDualObjectiveLimit(-limits.enough);
  clp.dual();
  solved_ = clp.status() == 0;
  check(clp.status() == 1);
  if (solved_) {
    const double* activity = clp.primalRowSolution();
    for (std::size_t r = fixed_rows_; r < rows_.size(); ++r) {
      const Row& row = rows_[r].row;
      const bool idle = activity[r] < row.high - room && activity[r] > row.low + room;
      rows_[r].idle = idle ? rows_[r].idle + 1 : 0;
    }
  }
  return clp.numberIterations();
}

double Programme::priced(std::span<const double> prices, bool with_gains,
                         std::vector<double>* slopes) const {
  std::vector<long double> left(columns_.size(), 0);
  if (with_gains)
    for (std::size_t c = 0; c < columns_.size(); ++c) left[c] = columns_[c].gain;
  long double sum = 0, size = 0;
  const auto take = [&](long double term) {
    sum += term;
    size += std::fabs(term);
  };
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const Row& row = rows_[r].row;
    const double side = prices[r] > 0 ? row.high : row.low;
    if (prices[r] == 0 || std::isinf(side)) continue;
    take(static_cast<long double>(prices[r]) * side);
    for (const Term& term : row.terms)
      left[term.column] -= static_cast<long double>(prices[r]) * term.factor;
  }
  for (std::size_t c = 0; c < columns_.size(); ++c)
    take(left[c] * (left[c] > 0 ? columns_[c].high : columns_[c].low));
  if (slopes != nullptr) slopes->assign(left.begin(), left.end());
  return static_cast<double>(sum + margin * (size + 1));
}

void Programme::check(bool infeasible) {
  ClpSimplex& clp = solver_->clp;
  std::vector<double> prices(clp.dualRowSolution(), clp.dualRowSolution() + rows_.size());
  for (double& price : prices) price = std::isfinite(price) ? -price : 0;
  bound_ = priced(prices, true, &slopes_);
  if (!infeasible) return;
  for (std::size_t r = 0; r < rows_.size(); ++r)  // found before any step, without a ray
    if (out_of_reach(rows_[r].row, columns_)) bound_ = -infinite;
  const std::unique_ptr<double[]> ray(clp.infeasibilityRay());
  if (!ray) return;
  for (const double sign : {1.0, -1.0}) {
    for (std::size_t r = 0; r < rows_.size(); ++r)
      prices[r] = std::isfinite(ray[r]) ? sign * ray[r] : 0;
    if (priced(prices, false, nullptr) < 0) bound_ = -infinite;
  }
}

std::span<const double> Programme::amounts() const {
  return {solver_->clp.primalColumnSolution(), columns_.size()};
}

void Programme::purge(int solves) {
  std::vector<int> out;
  std::vector<Kept> kept;
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    const bool idle = r >= fixed_rows_ && rows_[r].idle >= solves &&
                      solver_->clp.getRowStatus(static_cast<int>(r)) == ClpSimplex::basic;
    if (idle)
      out.push_back(static_cast<int>(r));
    else
      kept.push_back(std::move(rows_[r]));
  }
  rows_ = std::move(kept);
  if (!out.empty()) solver_->clp.deleteRows(static_cast<int>(out.size()), out.data());
}

Basis Programme::basis() const {
  Basis result;
  const ClpSimplex& clp = solver_->clp;
  for (int c = 0; c < static_cast<int>(columns_.size()); ++c)
    result.columns.push_back(static_cast<std::uint8_t>(clp.getColumnStatus(c)));
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    result.rows.push_back(static_cast<std::uint8_t>(clp.getRowStatus(static_cast<int>(r))));
    result.row_names.push_back(rows_[r].name);
  }
  return result;
}

void Programme::go_on_from(const Basis& basis) {
  std::vector<std::uint8_t> status(rows_.size(), ClpSimplex::basic);
  std::size_t mine = 0;
  for (std::size_t r = 0; r < basis.rows.size(); ++r) {
    while (mine < rows_.size() && rows_[mine].name < basis.row_names[r]) ++mine;
    const bool there = mine < rows_.size() && rows_[mine].name == basis.row_names[r];
    if (there)
      status[mine] = basis.rows[r];
    else if (basis.rows[r] != ClpSimplex::basic)
      return;
  }
  ClpSimplex& clp = solver_->clp;
  for (std::size_t r = 0; r < rows_.size(); ++r)
    clp.setRowStatus(static_cast<int>(r), static_cast<ClpSimplex::Status>(status[r]));
  for (std::size_t c = 0; c < columns_.size(); ++c)
    clp.setColumnStatus(static_cast<int>(c), static_cast<ClpSimplex::Status>(basis.columns[c]));
}

}  // namespace loopwright::circuit
