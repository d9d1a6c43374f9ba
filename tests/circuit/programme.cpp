#include "circuit/programme.hpp"

#include <coin/Cbc_C_Interface.h>

#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace loopwright::test {

using namespace circuit;

namespace {

using Terms = std::vector<std::pair<int, double>>;

/// Columns and rows, as they come.
class Programme {
 public:
  int column(double low, double high, double worth, bool whole) {
    low_.push_back(low);
    high_.push_back(high);
    worth_.push_back(worth);
    whole_.push_back(whole);
    return static_cast<int>(low_.size()) - 1;
  }
  int choice() { return column(0, 1, 0, true); }
  void at_least(double low, Terms terms) { row(low, 1e30, std::move(terms)); }
  void at_most(double high, Terms terms) { row(-1e30, high, std::move(terms)); }
  void equal(double value, Terms terms) { row(value, value, std::move(terms)); }

  std::optional<double> solve(bool most) const {
    const std::unique_ptr<Cbc_Model, void (*)(Cbc_Model*)> model(Cbc_newModel(), Cbc_deleteModel);
    Cbc_setParameter(model.get(), "logLevel", "0");
    std::vector<CoinBigIndex> starts{0};
    std::vector<int> rows;
    std::vector<double> numbers;
    for (std::size_t c = 0; c < low_.size(); ++c) {
      for (std::size_t r = 0; r < rows_.size(); ++r)
        for (const auto& [column, number] : rows_[r])
          if (column == static_cast<int>(c)) {
            rows.push_back(static_cast<int>(r));
            numbers.push_back(number);
          }
      starts.push_back(static_cast<CoinBigIndex>(rows.size()));
    }
    Cbc_loadProblem(model.get(), static_cast<int>(low_.size()), static_cast<int>(rows_.size()),
                    starts.data(), rows.data(), numbers.data(), low_.data(), high_.data(),
                    worth_.data(), row_low_.data(), row_high_.data());
    for (std::size_t c = 0; c < whole_.size(); ++c)
      if (whole_[c]) Cbc_setInteger(model.get(), static_cast<int>(c));
    Cbc_setObjSense(model.get(), most ? -1 : 1);
    Cbc_solve(model.get());
    if (Cbc_isProvenOptimal(model.get()) == 0) return {};
    return Cbc_getObjValue(model.get());
  }

 private:
  void row(double low, double high, Terms terms) {
    row_low_.push_back(low);
    row_high_.push_back(high);
    rows_.push_back(std::move(terms));
  }
  std::vector<double> low_, high_, worth_, row_low_, row_high_;
  std::vector<bool> whole_;
  std::vector<Terms> rows_;
};

bool counts_for(const Pass& pass, std::size_t group) {
  for (const std::uint32_t g : pass.groups)
    if (g == group) return true;
  return false;
}

/// Times in seconds, which suits the solver; the numbers of the tests are whole seconds.
double seconds(std::int64_t ms) {
  return static_cast<double>(ms) / 1000.0;
}

class Formulation {
 public:
  Formulation(const Problem& problem, int steps, std::int64_t most_ms, bool time_counts)
      : p(problem), last(steps), most_s(seconds(most_ms)) {
    add_steps(time_counts);
    add_legs();
    add_counts();
  }

  void add_worths() {
    for (std::size_t g = 0; g < p.groups.size(); ++g) add_worths_of(g);
    for (std::size_t h = 0; h < p.goals.size(); ++h)
      if (p.goals[h].spacing_ms > 0) add_spacing(h);
    for (std::size_t g = 0; g < p.groups.size(); ++g) add_taking(g);
  }

  std::optional<std::int64_t> solve(bool most, double unit) const {
    const std::optional<double> found = programme.solve(most);
    if (!found) return {};
    return std::llround(*found * unit);
  }

 private:
  void add_steps(bool time_counts) {
    for (int t = 0; t < last; ++t) {
      y.emplace_back();
      for (std::size_t i = 0; i < p.passes.size(); ++i) y.back().push_back(programme.choice());
      begins.push_back(programme.column(0, most_s, 0, false));
    }
    begins.push_back(programme.column(0, most_s, time_counts ? 1 : 0, false));
  }

  /// Passes of step t, -1: home is behind.
  Terms leaving(int t, std::uint32_t exit, double factor) const {
    Terms terms;
    for (std::size_t i = 0; t >= 0 && i < p.passes.size(); ++i)
      if (p.passes[i].exit == exit) terms.emplace_back(y[static_cast<std::size_t>(t)][i], factor);
    return terms;
  }

  void add_legs() {
    for (int t = 0; t <= last; ++t) {
      std::vector<Terms> out(p.exit_count + 1), in(p.entry_count + 1);
      Terms clock{{begins[static_cast<std::size_t>(t)], 1}};
      for (std::uint32_t x = 0; x <= p.exit_count; ++x)
        for (std::uint32_t e = t == last ? p.end() : 0; e <= p.entry_count; ++e)
          if ((x == p.home()) == (t == 0) && p.leg(x, e) < no_way)
            add_leg(out[x], in[e], clock, x, e);
      add_flow(t, out, in);
      add_clock(t, clock);
    }
  }

  void add_leg(Terms& out, Terms& in, Terms& clock, std::uint32_t x, std::uint32_t e) {
    const int z = programme.choice();
    out.emplace_back(z, 1);
    in.emplace_back(z, 1);
    clock.emplace_back(z, -seconds(p.leg(x, e)));
  }

  /// What leaves an exit is the pass of the step before; what comes to an entry is the step's.
  void add_flow(int t, std::vector<Terms>& out, std::vector<Terms>& in) {
    if (t == 0) programme.equal(1, out[p.home()]);
    for (std::uint32_t x = 0; t > 0 && x < p.exit_count; ++x) {
      Terms terms = leaving(t - 1, x, -1);
      terms.insert(terms.end(), out[x].begin(), out[x].end());
      programme.equal(0, terms);
    }
    for (std::uint32_t e = 0; t < last && e < p.entry_count; ++e) {
      Terms terms = in[e];
      for (std::size_t i = 0; i < p.passes.size(); ++i)
        if (p.passes[i].entry == e) terms.emplace_back(y[static_cast<std::size_t>(t)][i], -1);
      programme.equal(0, terms);
    }
  }

  /// After the leg to the end nothing is driven and the clock may stand.
  void add_clock(int t, const Terms& clock) {
    Terms terms = clock;
    if (t > 0) {
      terms.emplace_back(begins[static_cast<std::size_t>(t - 1)], -1);
      for (std::size_t i = 0; i < p.passes.size(); ++i)
        terms.emplace_back(y[static_cast<std::size_t>(t - 1)][i], -seconds(p.passes[i].inner_ms));
    }
    programme.at_least(0, terms);
  }

  void add_counts() {
    std::vector<Terms> goals(p.goals.size());
    for (std::size_t g = 0; g < p.groups.size(); ++g) {
      const int n = programme.column(0, std::min(1e6, double(p.groups[g].most_counted)), 0, false);
      Terms terms = passes_of(g, -1);
      terms.emplace_back(n, 1);
      programme.at_most(0, terms);
      goals[p.groups[g].goal].emplace_back(n, 1);
    }
    for (std::size_t h = 0; h < p.goals.size(); ++h)
      if (p.goals[h].least > 0) programme.at_least(p.goals[h].least, goals[h]);
  }

  Terms passes_of(std::size_t g, double factor) const {
    Terms terms;
    for (const std::vector<int>& step : y)
      for (std::size_t i = 0; i < step.size(); ++i)
        if (counts_for(p.passes[i], g)) terms.emplace_back(step[i], factor);
    return terms;
  }

  Terms pass_at(std::size_t t, std::size_t g, double factor) const {
    Terms terms;
    for (std::size_t i = 0; i < p.passes.size(); ++i)
      if (counts_for(p.passes[i], g)) terms.emplace_back(y[t][i], factor);
    return terms;
  }

  void add_worths_of(std::size_t g) {
    takes.emplace_back();
    Terms had;
    for (std::size_t t = 0; t < y.size(); ++t) {
      const int k = programme.choice();
      takes.back().push_back(k);
      Terms terms = pass_at(t, g, -1);
      terms.emplace_back(k, 1);
      programme.at_most(0, terms);
      had.emplace_back(k, 1);
    }
    for (const std::int64_t worth : p.groups[g].worths)
      had.emplace_back(programme.column(0, 1, static_cast<double>(worth), false), -1);
    programme.equal(0, had);
  }

  Terms has_worth(std::size_t t, std::size_t goal, double factor) const {
    Terms terms;
    for (std::size_t g = 0; g < p.groups.size(); ++g)
      if (p.groups[g].goal == goal) terms.emplace_back(takes[g][t], factor);
    return terms;
  }

  void add_spacing(std::size_t goal) {
    const double spacing = seconds(p.goals[goal].spacing_ms);
    for (std::size_t s = 0; s < y.size(); ++s)
      for (std::size_t t = s + 1; t < y.size(); ++t) {
        const double big = spacing + most_s;
        Terms terms = has_worth(s, goal, -big);
        for (const auto& term : has_worth(t, goal, -big)) terms.push_back(term);
        terms.emplace_back(begins[t], 1);
        terms.emplace_back(begins[s], -1);
        programme.at_least(spacing - 2 * big, terms);
      }
  }

  /// A pass that may have worth takes it: what the lesson does without looking ahead.
  void add_taking(std::size_t g) {
    const std::size_t goal = p.groups[g].goal;
    const double spacing = seconds(p.goals[goal].spacing_ms);
    for (std::size_t t = 0; t < y.size(); ++t) {
      Terms rule = pass_at(t, g, 1);
      rule.emplace_back(takes[g][t], -1);
      const int all_had = programme.choice();
      rule.emplace_back(all_had, -1);
      Terms had{{all_had, -static_cast<double>(p.groups[g].worths.size())}};
      for (std::size_t s = 0; s < t; ++s) had.emplace_back(takes[g][s], 1);
      programme.at_least(0, had);
      for (std::size_t s = 0; spacing > 0 && s < t; ++s)
        rule.emplace_back(too_soon(s, t, goal, spacing), -1);
      programme.at_most(0, rule);
    }
  }

  int too_soon(std::size_t s, std::size_t t, std::size_t goal, double spacing) {
    const int b = programme.choice();
    Terms only = has_worth(s, goal, -1);
    only.emplace_back(b, 1);
    programme.at_most(0, only);
    // Of times in whole seconds one comes sooner by a second, or can be made to; less is asked for here, so
    // that a few of these in a row take no second away.
    programme.at_most(spacing - 0.05 + most_s, {{begins[t], 1}, {begins[s], -1}, {b, most_s}});
    return b;
  }

  const Problem& p;
  int last;
  double most_s;
  Programme programme;
  std::vector<std::vector<int>> y;      ///< by step and pass
  std::vector<int> begins;              ///< by step
  std::vector<std::vector<int>> takes;  ///< by group and step
};

}  // namespace

std::optional<std::int64_t> best_value_by_programme(const Problem& problem, int steps) {
  Formulation formulation(problem, steps, problem.most_ms, false);
  formulation.add_worths();
  return formulation.solve(true, 1);
}

std::optional<std::int64_t> least_time_by_programme(const Problem& problem, int steps) {
  constexpr std::int64_t a_day = 86'400'000;
  return Formulation(problem, steps, a_day, true).solve(false, 1000);
}

}  // namespace loopwright::test
