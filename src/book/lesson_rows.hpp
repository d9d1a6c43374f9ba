// The rows of a lesson, as several of the room's sources read and write them within a transaction.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "book/database.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/streets.hpp"

namespace loopwright::book {

/// A pupil's lessons by number, without their loop files.
std::vector<Lesson> read_lessons(Database& db, const RowKey& pupil);
/// One of them. Rules: there is one of that number.
Lesson read_lesson(Database& db, const RowKey& pupil, int number);

/// A new planned lesson with all of its plan but the streets. Returns its row.
RowKey add_row(Database& db, const RowKey& pupil, const Plan& plan);
int number_of(Database& db, const RowKey& lesson);

void clear(Database& db, const RowKey& lesson, std::initializer_list<std::string_view> tables);
void write_passes(Database& db, const RowKey& lesson, const std::vector<LessonPass>& passes);
void write_roads(Database& db, const RowKey& lesson, const Plan& plan);
void write_streets(Database& db, const RowKey& pupil, const RowKey& lesson,
                   const std::vector<StreetDriven>& streets);
/// The plan's values in a row that is there, and has no lists.
void write_plan(Database& db, const RowKey& lesson, const Plan& plan);

/// What its logs saw on the ground.
std::vector<SeenFact> seen_by(Database& db, const RowKey& lesson);
/// Takes away what a log said, but for what it saw on the ground, passes, streets and what a recording told. Goals of it
/// that a later lesson reached stay until it is logged anew (write_log).
void clear_log(Database& db, const RowKey& lesson);
/// In the place of the planned passes, of a lesson whose log was cleared.
void write_log(Database& db, const RowKey& lesson, const Log& log);
/// A drive that is over isn't printed again, and its loop file gives the door away: it goes with the pupil's next log.
/// Until then the log may be a mistake that is taken back.
void drop_earlier_drives(Database& db, const RowKey& lesson);
/// It didn't happen: its streets count no more.
void write_not_driven(Database& db, const RowKey& lesson);
/// Takes the log back: the lesson is as it was planned, but for its streets; one that wasn't planned here didn't happen.
/// planned: its passes; none: those that have a place and weren't found by a recording alone.
void write_unlogged(Database& db, const RowKey& lesson,
                    const std::optional<std::vector<LessonPass>>& planned);

/// Throws InputError when the lesson isn't the one whose mark the caller read (record_mark.hpp); an empty mark is any.
void need_as_read(Database& db, const RowKey& pupil, int number, std::string_view mark);

/// In a day's copy (day_copy.hpp) what came of a lesson is kept as an entry, to be handed in; elsewhere nothing is done.
void keep_entry(Database& db, const RowKey& lesson);
/// Throws InputError in a day's copy: what isn't a log can't be handed in.
void need_no_copy(Database& db, const RowKey& pupil);

}  // namespace loopwright::book
