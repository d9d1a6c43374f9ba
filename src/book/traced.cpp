#include "loopwright/book/traced.hpp"

#include <algorithm>

#include "book/connection.hpp"
#include "book/damaged.hpp"
#include "book/rows.hpp"

namespace loopwright::book {
namespace {

bool is_same(const LessonPass& a, const LessonPass& b) {
  return a.what == b.what && a.place == b.place;
}

road::Control control_in(const Column& column) {
  for (std::size_t k = 0; k < road::control_count; ++k)
    if (road::name(static_cast<road::Control>(k)) == column.text())
      return static_cast<road::Control>(k);
  odd_value(column);
}

std::vector<TracedTime> times_of(Database& db, const RowKey& lesson) {
  std::vector<TracedTime> times;
  auto row = ask(db,
                 "SELECT control, count, expected_s, took_s FROM trace_time WHERE lesson = ? "
                 "ORDER BY rowid",
                 lesson);
  while (row.next())
    times.push_back(
        {control_in(row.at(0)), row.at(1).number(), row.at(2).real(), row.at(3).real()});
  return times;
}

}  // namespace

std::vector<LessonPass> traced_passes(const std::vector<LessonPass>& planned,
                                      const std::vector<LessonPass>& driven) {
  std::vector<LessonPass> passes = planned;
  std::vector<bool> used(driven.size(), false);
  for (LessonPass& pass : passes) {
    pass.traced = true;
    pass.driven = false;
    for (std::size_t k = 0; k < driven.size() && !pass.driven; ++k)
      if (!used[k] && is_same(pass, driven[k])) pass.driven = used[k] = true;
    if (!pass.driven) pass.level.reset(), pass.help.reset();
  }
  for (std::size_t k = 0; k < driven.size(); ++k) {
    if (used[k]) continue;
    passes.push_back(driven[k]);
    passes.back().driven = passes.back().traced = true;
  }
  return passes;
}

std::vector<LessonTrace> traces_of(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    std::vector<LessonTrace> traces;
    auto row = ask(db,
                   "SELECT lesson.id, number, trace.start, seconds, standing_s, metres FROM trace "
                   "JOIN lesson ON lesson.id = trace.lesson WHERE pupil = ? ORDER BY number",
                   row_of_pupil(db, code));
    while (row.next())
      traces.push_back({row.at(1).number(),
                        {instant_in(row.at(2)), row.at(3).real(), row.at(4).real(),
                         row.at(5).real(), "", times_of(db, row.at(0).key())}});
    return traces;
  });
}

}  // namespace loopwright::book
