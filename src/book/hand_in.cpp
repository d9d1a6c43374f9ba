// Method, for each lesson with a log that waits, in one transaction of the school's book:
// 1. The ids of its entries are looked for among those that were handed in. The last one is there: nothing is to be done, an
//    answer was lost. An earlier one is there: the lesson must be as that one left it. None: as it was taken along.
// 2. When it is so, the entry's id is put in, and what the log says is written as it is by logging there.
// 3. The copy is told afterwards. Killed before that, the next time finds the id.
// A lesson with a row that is damaged, in the copy or by what the school's book takes, is told, and the others go on.
#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "book/connection.hpp"
#include "book/damaged.hpp"
#include "book/lesson_rows.hpp"
#include "book/moved_tables.hpp"
#include "book/rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/day_copy.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/book/record_mark.hpp"

namespace loopwright::book {
namespace {

using Outcome = HandedLog::Outcome;

/// A lesson of the copy with entries that wait. code is empty of an entry whose lesson isn't there, or goes by no name.
struct WaitingLesson {
  RowKey lesson;
  std::string code;
  int number = 0;
};

/// What its log says.
struct WaitingLog {
  std::string code;
  RowKey lesson, pupil;
  Value pupil_there,
      lesson_there;              ///< keys in the school's book; none of a lesson that is only here
  std::string mark;              ///< as it was taken along, or as an entry left it
  std::vector<std::string> ids;  ///< in order
  bool handed_before =
      false;  ///< an earlier log of it is in the school's book, as far as the copy knows
  Lesson is;
};

/// What came of handing one in.
struct Handed {
  Outcome outcome = Outcome::handed_in;
  std::string why;
  Value lesson_there;
  int number = 0;
  std::string mark;  ///< as it left the lesson
};

constexpr std::int64_t most_lessons = 9999;  // of one pupil, as commands take a lesson's number

std::vector<WaitingLesson> lessons_waiting(Database& copy) {
  std::vector<WaitingLesson> all;
  for (auto row = ask(copy,
                      "SELECT log_entry.lesson, max(log_entry.rowid), code, number FROM log_entry "
                      "LEFT JOIN lesson ON lesson.id = log_entry.lesson LEFT JOIN pupil ON "
                      "pupil.id = lesson.pupil WHERE log_entry.state = 'kept' GROUP BY "
                      "log_entry.lesson, code, number ORDER BY 2");
       row.next();) {
    const auto* number = std::get_if<std::int64_t>(&row.at(3).value());
    const bool has_name =
        is_code(row.at(2).text()) && number != nullptr && *number > 0 && *number <= most_lessons;
    all.push_back({row.at(0).key(), has_name ? row.at(2).text() : std::string(),
                   has_name ? static_cast<int>(*number) : 0});
  }
  return all;
}

WaitingLog waiting_in(Database& copy, const RowKey& lesson) {
  WaitingLog log;
  log.lesson = lesson;
  auto row = ask(copy,
                 "SELECT code, pupil.id, pupil.taken_from, lesson.taken_from, taken_mark, number "
                 "FROM lesson JOIN pupil ON pupil.id = lesson.pupil WHERE lesson.id = ?",
                 lesson);
  if (!row.next()) throw DamagedRow("its lesson isn't in the copy any more");
  log.code = row.at(0).text();
  log.pupil = row.at(1).key();
  log.pupil_there = row.at(2).value();
  log.lesson_there = row.at(3).value();
  log.mark = row.at(4).text();
  log.is = read_lesson(copy, log.pupil, row.at(5).number());
  for (auto id =
           ask(copy, "SELECT id FROM log_entry WHERE lesson = ? AND state = 'kept' ORDER BY rowid",
               lesson);
       id.next();)
    log.ids.push_back(id.at(0).text());
  log.handed_before =
      ask(copy, "SELECT 1 FROM log_entry WHERE lesson = ? AND state = 'handed in' AND mark <> ''",
          lesson)
          .next();
  return log;
}

std::string start_words(const Lesson& lesson) {
  std::string text = write_time(lesson.plan.start).substr(0, 16);
  text[10] = ' ';
  return text;
}

/// What became of a lesson since it was taken along, and what to do.
std::string why_other(const WaitingLog& log, const Lesson& now) {
  const std::string name = log.code + ":" + std::to_string(log.is.number);
  const std::string instead = "'--instead " + name + "' puts yours in its place, '--set-aside " +
                              name + "' leaves it as it is there";
  if (log.lesson_there == Value{})
    return "the school's book has lesson " + std::to_string(now.number) + " at that time, " +
           (now.state == LessonState::driven ? "logged" : "planned") + "; " + instead;
  if (now.state == LessonState::driven)
    return "it is logged in the school's book already, otherwise; " + instead;
  if (now.state == LessonState::not_driven)
    return "the school's book says meanwhile that it wasn't driven; " + instead;
  if (!(now.plan.start == log.is.plan.start))
    return "it was moved to " + start_words(now) + " in the school's book meanwhile; " + instead;
  return "it was planned anew in the school's book meanwhile; " + instead;
}

std::string why_gone(const WaitingLog& log) {
  const std::string name = log.code + ":" + std::to_string(log.is.number);
  return "the school's book shows you no such pupil any more: handed over, or erased; tell who "
         "holds the pupil what came of it, then '--set-aside " +
         name + "'";
}

/// The rows that a log and a recording leave of a lesson, but what log_rows.hpp writes.
void put_rows(Database& copy, Database& school, const WaitingLog& log, const RowKey& to) {
  for (const MovedTable& table : tables_moved()) {
    constexpr std::array ours{"road_minutes", "limit_minutes", "trace", "trace_time", "street_use"};
    if (std::ranges::find(ours, table.name) == ours.end()) continue;
    clear(school, to, {table.name});
    for (auto row = ask(copy, select_of_lesson(table), log.lesson); row.next();) {
      std::vector<Value> values = row.values();
      for (int k = 0; k < row.columns(); ++k) {
        auto& value = values[static_cast<std::size_t>(k)];
        if (row.at(k).name() == "lesson") value = to.value;
        if (row.at(k).name() == "pupil") value = log.pupil_there;
      }
      school.run(insert_into(table.name, table.columns), values);
    }
  }
}

void put_log(Database& copy, Database& school, const WaitingLog& log, const RowKey& to) {
  run(school, "UPDATE lesson SET start = ?, start_s = ?, length_minutes = ? WHERE id = ?",
      write_time(log.is.plan.start), log.is.plan.start.unix_s, log.is.plan.length_minutes, to);
  put_rows(copy, school, log, to);
  if (log.is.state == LessonState::driven) {
    Log said = log.is.log;
    said.seen = seen_by(copy, log.lesson);
    clear_log(school, to);
    write_log(school, to, said);
    if (!log.is.plan.wish.empty()) drop_earlier_drives(school, to);
    return;
  }
  write_unlogged(school, to, log.is.plan.passes);
  if (log.is.state == LessonState::not_driven) write_not_driven(school, to);
}

/// One lesson's handing in, within a transaction of the school's book.
class HandingIn {
 public:
  HandingIn(Database& copy, Database& school, const WaitingLog& log,
            std::optional<Deciding> deciding)
      : copy_(copy), school_(school), log_(log), deciding_(deciding) {}

  Handed done() {
    mark_ = log_.mark;
    there_ = log_.lesson_there;
    if (last_is_there()) return handed(Outcome::was_in);
    if (has_nothing_to_say()) return {Outcome::taken_back, {}, {}, 0, {}};
    if (!is_seen("pupil", log_.pupil_there)) return waits(why_gone(log_));
    if (there_ == Value{}) return put_new();
    if (!is_seen("lesson", there_)) return waits(why_gone(log_));
    const Lesson now = lesson_there();
    if (mark_of(now) != mark_ && !deciding_) return waits(why_other(log_, now));
    return put();
  }

 private:
  /// Whether the last entry is in the school's book already; what an earlier one left there is what counts.
  bool last_is_there() {
    bool is_there = false;
    for (const std::string& id : log_.ids) {
      auto row = ask(school_, "SELECT lesson, mark FROM log_entry WHERE id = ?", id);
      is_there = row.next();
      if (!is_there) continue;
      there_ = row.at(0).value();
      mark_ = row.at(1).text();
      some_is_there_ = true;
    }
    return is_there;
  }

  /// Logged and taken back, all of it in the copy.
  [[nodiscard]] bool has_nothing_to_say() const {
    if (some_is_there_ || log_.handed_before) return false;
    return log_.is.state == LessonState::planned ||
           (there_ == Value{} && log_.is.state == LessonState::not_driven);
  }

  bool is_seen(const std::string& table, const Value& key) {
    return ask(school_, "SELECT 1 FROM " + table + " WHERE id = ?", RowKey{key}).next();
  }

  Lesson lesson_there() { return read_lesson(school_, {log_.pupil_there}, number()); }

  int number() { return number_of(school_, {there_}); }

  static Handed waits(std::string why) { return {Outcome::waits, std::move(why), {}, 0, {}}; }

  Handed handed(Outcome outcome) {
    // Its pupil may be another's by now, and then only the entry is seen.
    const bool seen = is_seen("lesson", there_);
    return {outcome, {}, there_, seen ? number() : 0, mark_};
  }

  Handed put_new() {
    const RowKey pupil{log_.pupil_there};
    auto row = ask(school_,
                   "SELECT id, number FROM lesson WHERE pupil = ? AND start_s = ? AND state <> "
                   "'not driven'",
                   pupil, log_.is.plan.start.unix_s);
    if (row.next()) {
      if (!deciding_)
        return waits(why_other(log_, read_lesson(school_, pupil, row.at(1).number())));
      there_ = row.at(0).value();
    } else {
      there_ = add_row(school_, pupil, log_.is.plan).value;
    }
    return put();
  }

  Handed put() {
    put_log(copy_, school_, log_, {there_});
    mark_ = mark_of(lesson_there());
    run(school_, "INSERT INTO log_entry (id, lesson, state, mark) VALUES (?, ?, 'handed in', ?)",
        log_.ids.back(), RowKey{there_}, mark_);
    return handed(Outcome::handed_in);
  }

  Database& copy_;
  Database& school_;
  const WaitingLog& log_;
  std::optional<Deciding> deciding_;
  Value there_;
  std::string mark_;
  bool some_is_there_ = false;
};

/// What is done is told to the copy; what waits stays as it is there.
void settle(Database& copy, const WaitingLog& log, const Handed& handed) {
  if (handed.outcome == Outcome::waits) return;
  for (const std::string& id : log.ids)
    run(copy, "UPDATE log_entry SET state = 'handed in', mark = ? WHERE id = ?", handed.mark, id);
  if (!(handed.lesson_there == Value{}))
    run(copy, "UPDATE lesson SET taken_from = ?, taken_mark = ? WHERE id = ?",
        RowKey{handed.lesson_there}, handed.mark, log.lesson);
}

bool is_on(const Decision& decision, const WaitingLesson& lesson) {
  return decision.code == lesson.code && decision.number == lesson.number;
}

std::optional<Deciding> deciding_on(const WaitingLesson& lesson,
                                    const std::vector<Decision>& decisions) {
  for (const Decision& one : decisions)
    if (is_on(one, lesson)) return one.deciding;
  return std::nullopt;
}

void need_waiting(const std::vector<WaitingLesson>& waiting,
                  const std::vector<Decision>& decisions) {
  for (const Decision& one : decisions)
    if (std::ranges::none_of(waiting,
                             [&](const WaitingLesson& lesson) { return is_on(one, lesson); }))
      throw InputError("lesson " + std::to_string(one.number) + " of " + one.code +
                       " has no log in this copy that waits");
}

/// Also of a lesson that can't be read.
HandedLog set_aside(Book& copy, const WaitingLesson& lesson) {
  copy.connection().write([&](Database& here) {
    run(here, "UPDATE log_entry SET state = 'set aside' WHERE lesson = ? AND state = 'kept'",
        lesson.lesson);
  });
  return {lesson.code, lesson.number, 0, Outcome::set_aside};
}

HandedLog handed_in(Book& copy, Book& school, const WaitingLesson& lesson,
                    std::optional<Deciding> deciding) {
  WaitingLog log;
  const Handed handed = school.connection().write([&](Database& there) {
    return copy.connection().read([&](Database& here) {
      log = waiting_in(here, lesson.lesson);  // it may have been logged anew, or handed in
      if (log.ids.empty()) return Handed{Outcome::was_in, {}, {}, 0, {}};
      return HandingIn(here, there, log, deciding).done();
    });
  });
  copy.connection().write([&](Database& here) { settle(here, log, handed); });
  return {lesson.code, lesson.number, handed.number, handed.outcome, handed.why};
}

}  // namespace

std::vector<HandedLog> hand_in(Book& copy, Book& school, const std::vector<Decision>& decisions) {
  const auto waiting = copy.connection().read(lessons_waiting);
  need_waiting(waiting, decisions);
  std::vector<HandedLog> told;
  for (const WaitingLesson& lesson : waiting) {
    const auto deciding = deciding_on(lesson, decisions);
    try {
      told.push_back(deciding == Deciding::set_aside ? set_aside(copy, lesson)
                                                     : handed_in(copy, school, lesson, deciding));
    } catch (const DamagedRow& row) {
      told.push_back({lesson.code, lesson.number, 0, Outcome::damaged, row.wrong()});
    }
  }
  return told;
}

}  // namespace loopwright::book
