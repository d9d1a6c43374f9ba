#include "loopwright/file/day_file.hpp"

#include <nlohmann/json.hpp>

#include "loopwright/road/note.hpp"

namespace loopwright::file {
namespace {

using DayJson = nlohmann::ordered_json;

DayJson lesson_row(const wish::DaySheet::Lesson& lesson) {
  DayJson away = nullptr;
  if (lesson.away_minutes)
    away = {{"low", lesson.away_minutes->low},
            {"likely", lesson.away_minutes->likely},
            {"high", lesson.away_minutes->high}};
  return {{"code", lesson.code},         {"number", lesson.number},  {"state", lesson.state},
          {"start", lesson.start},       {"end", lesson.end},        {"minutes", lesson.minutes},
          {"practice", lesson.practice}, {"away_minutes", away},     {"back_by", lesson.back_by},
          {"unsure", lesson.unsure},     {"trouble", lesson.trouble}};
}

DayJson between_row(const wish::DaySheet::Between& between) {
  return {{"free_minutes", between.free_minutes},
          {"drive_minutes", between.drive_minutes ? DayJson(*between.drive_minutes) : DayJson()},
          {"clash", between.clash}};
}

}  // namespace

std::string write_day_sheet(const wish::DaySheet& sheet) {
  DayJson lessons = DayJson::array(), between = DayJson::array();
  for (const auto& lesson : sheet.lessons) lessons.push_back(lesson_row(lesson));
  for (const auto& gap : sheet.between) between.push_back(between_row(gap));
  const DayJson all = {{"day", road::day_text(sheet.day)},
                       {"lessons", std::move(lessons)},
                       {"between", std::move(between)}};
  return all.dump(1, ' ', false, nlohmann::json::error_handler_t::replace) + "\n";
}

}  // namespace loopwright::file
