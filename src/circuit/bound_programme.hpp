// A linear programme that is solved again and again while rows come and go and columns are narrowed.
//
//   Programme lp(columns, rows);  lp.solve({.iterations = 1000, .enough = 25000});
//   lp.bound();  lp.amounts();
//
// Rules: maximised; every column has finite limits. The bound never rests on what the solver claims: it is
// summed anew from the rows, the columns' limits and the solver's row prices (weak duality: any prices give
// a bound), in long double, plus a margin above the rounding of that sum.
// Why one long-lived programme: the dual simplex goes on from the last basis after a new row or limit.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

namespace loopwright::circuit {

struct Column {
  double gain = 0, low = 0, high = 0;
};

struct Term {
  int column = 0;
  double factor = 0;
};

struct Row {
  std::vector<Term> terms;
  double low = 0, high = 0;  ///< ±infinite: open
};

/// What the solver goes on from. Rows are named by the order in which they were added.
struct Basis {
  std::vector<std::uint8_t> columns, rows;
  std::vector<std::int64_t> row_names;
};

struct SolveLimits {
  int iterations = 0;
  double enough = 0;  ///< stop as soon as the bound is below
};

class Programme {
 public:
  Programme(std::vector<Column> columns, std::vector<Row> rows);
  ~Programme();
  Programme(Programme&&) = delete;

  void add(std::vector<Row> rows);
  void limit(int column, double low, double high);
  [[nodiscard]] const std::vector<Column>& columns() const { return columns_; }

  /// Iterations made. Afterwards `solved` says whether amounts() are the best ones.
  int solve(const SolveLimits& limits);
  [[nodiscard]] bool solved() const { return solved_; }
  /// No amounts within the limits gain more. Minus infinity: none keep all rows, and that was checked.
  [[nodiscard]] double bound() const { return bound_; }
  [[nodiscard]] std::span<const double> amounts() const;
  /// By column, how much its bound falls for each unit away from the limit it is at, at most: below 0 for
  /// columns at their low limit, above for those at their high.
  [[nodiscard]] const std::vector<double>& slopes() const { return slopes_; }

  /// Takes out added rows that have had room to spare in the last so many solves.
  void purge(int solves);

  [[nodiscard]] Basis basis() const;
  /// Does nothing when rows the basis needs have been taken out.
  void go_on_from(const Basis& basis);

 private:
  struct Kept {
    Row row;
    std::int64_t name = 0;
    int idle = 0;
  };
  struct Solver;

  double priced(std::span<const double> prices, bool with_gains, std::vector<double>* slopes) const;
  void check(bool infeasible);

  std::vector<Column> columns_;
  std::vector<Kept> rows_;
  std::size_t fixed_rows_ = 0;
  std::int64_t next_name_ = 0;
  bool solved_ = false;
  double bound_ = 0;
  std::vector<double> slopes_;
  std::unique_ptr<Solver> solver_;
};

}  // namespace loopwright::circuit
