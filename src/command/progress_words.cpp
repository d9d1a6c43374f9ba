// Method: a section each for a group of skills, for what was driven, mock tests, goals and the pupil's own words; a
// section without a line is left out.
#include "command/progress_words.hpp"

#include <algorithm>
#include <map>

#include "command/book_option.hpp"
#include "command/hours_place.hpp"
#include "command/mock_words.hpp"
#include "command/print.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/book/progress.hpp"

namespace loopwright::command {
namespace {

using Section = wish::ProgressSheet::Section;

constexpr int fault_hours = 10;            // before that a rate says nothing; ours
constexpr std::ptrdiff_t most_before = 3;  // of a skill's earlier days

/// "28 November 2026"
std::string plain_day(Date day) {
  const std::string spoken = spoken_day(day);
  return spoken.substr(spoken.find(' ') + 1);
}

/// Where a level changed, the first day of each, the earliest first.
std::vector<book::Seen> changes_of(const std::vector<book::Seen>& seen) {
  std::vector<book::Seen> changes;
  for (const book::Seen& one : seen)
    if (changes.empty() || changes.back().level != one.level) changes.push_back(one);
  return changes;
}

/// "independent on 28 November 2026; before, prompted from 10 October 2026"
std::string skill_text(const book::Scheme& scheme, const book::SkillLine& line) {
  std::vector<book::Seen> changes = changes_of(line.seen);
  std::string text = std::string(line.skill->name) + ": " +
                     std::string(scheme.level_name(line.level())) + " on " +
                     plain_day(line.seen.back().day);
  if (changes.back().day != line.seen.back().day)
    text += ", since " + plain_day(changes.back().day);
  changes.pop_back();
  if (std::ssize(changes) > most_before)
    changes.erase(changes.begin(), changes.end() - most_before);
  std::vector<std::string> before;
  for (const book::Seen& one : changes)
    before.push_back(std::string(scheme.level_name(one.level)) + " from " + plain_day(one.day));
  if (!before.empty()) text += "; before, " + listed(before);
  return text;
}

void add_skills(std::vector<Section>& sections, const book::Scheme& scheme,
                const std::vector<book::Lesson>& lessons) {
  std::vector<std::string> not_yet;
  for (const book::SkillLine& line : book::skill_lines(scheme, lessons)) {
    if (line.seen.empty()) {
      not_yet.emplace_back(line.skill->name);
      continue;
    }
    const std::string group(line.skill->group);
    if (sections.empty() || sections.back().heading != group) sections.push_back({group, {}});
    sections.back().lines.push_back(skill_text(scheme, line));
  }
  if (!not_yet.empty()) sections.push_back({"not begun yet", {listed(not_yet)}});
}

Section driven_section(const std::vector<book::Lesson>& lessons) {
  const book::Hours hours = book::hours_of(lessons);
  Section section{"driven",
                  {"lessons: " + std::to_string(hours.lessons) +
                       ", hours: " + fixed(hours.lesson_minutes / 60.0, 1),
                   "practised at home, hours: " + fixed(hours.private_minutes / 60.0, 1)}};
  for (const book::Exposure& on : book::exposure_of(lessons)) {
    std::vector<std::string> in;
    for (const std::string& one : {on.conditions.light, on.conditions.weather})
      if (!one.empty()) in.push_back(one);
    if (!on.conditions.traffic.empty()) in.push_back("traffic " + on.conditions.traffic);
    section.lines.push_back(on.road + " roads" + (in.empty() ? "" : ", " + listed(in)) + ": " +
                            fixed(on.minutes, 0) + " min");
  }
  return section;
}

Section faults_section(const std::vector<book::Lesson>& lessons) {
  Section section{"faults an hour", {}};
  const double hours = book::hours_of(lessons).lesson_minutes / 60.0;
  if (hours < fault_hours) return section;
  std::map<std::string, int> counts;
  for (const book::Lesson& lesson : lessons)
    for (const book::LessonFault& fault : lesson.log.faults) counts[fault.heading] += fault.count;
  for (const auto& [code, count] : counts)
    if (const book::Heading* heading = book::find_heading(code))
      section.lines.push_back(std::string(heading->name) + ": " + fixed(count / hours, 1));
  return section;
}

Section mocks_section(const std::vector<book::Lesson>& lessons) {
  Section section{"mock tests", {}};
  for (const book::Lesson& lesson : lessons) {
    if (!lesson.log.mock) continue;
    section.lines.push_back(plain_day(lesson.log.mock->day) + ": " + mock_words(lesson.log));
  }
  return section;
}

Section words_section(const std::vector<book::Lesson>& lessons) {
  Section section{"in your own words", {}};
  for (const book::Lesson& lesson : lessons)
    if (!lesson.log.said.empty())
      section.lines.push_back(plain_day(day_of(lesson)) + ": " + lesson.log.said);
  return section;
}

}  // namespace

std::string faults_left_out(const std::vector<book::Lesson>& lessons) {
  if (!faults_section(lessons).lines.empty()) return {};
  const double hours = book::hours_of(lessons).lesson_minutes / 60.0;
  if (hours >= fault_hours) return "no fault is on the page: none was logged\n";
  return "no faults an hour are on the page: they say little before " +
         std::to_string(fault_hours) + " hours of lessons, and there are " + fixed(hours, 1) + "\n";
}

wish::ProgressSheet progress_sheet(const book::Pupil& pupil,
                                   const std::vector<book::Lesson>& lessons, Date day,
                                   FaultsTold faults) {
  wish::ProgressSheet sheet{
      pupil.code, spoken_day(day), write_time({days_since_epoch(day) * 24 * 3600, 0}), {}};
  sheet.sections.push_back({"next goals", book::open_goals(lessons)});
  add_skills(sheet.sections, scheme_kept(pupil), lessons);
  sheet.sections.push_back(driven_section(lessons));
  sheet.sections.push_back(mocks_section(lessons));
  if (faults == FaultsTold::told) sheet.sections.push_back(faults_section(lessons));
  sheet.sections.push_back(words_section(lessons));
  std::erase_if(sheet.sections, [](const Section& section) { return section.lines.empty(); });
  return sheet;
}

}  // namespace loopwright::command
