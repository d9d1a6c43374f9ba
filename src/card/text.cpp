// Method:
// 1. Head: when, how long, what for; first what bars driving it so.
// 2. Rows (row_text.cpp).
// 3. Below: bus lanes, what else has hours, what is practised, what isn't sure, what fell short,
//    cautions, map credit.
#include "card/head.hpp"
#include "card/row_text.hpp"
#include "card/sections.hpp"
#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "loopwright/card/card.hpp"

namespace loopwright::card {
namespace {

void add_head(Sheet& sheet, const Subject& subject) {
  const Head head = head_of(subject);
  sheet.spread(head.title, head.when);
  for (const std::string& line : head.first) sheet.paragraph(0, line);
  sheet.spread(head.driving, head.back_by);
  sheet.spread(head.level, subject.words.count("card.rows", subject.rows.size()));
  sheet.paragraph(0, head.goal);
  if (!head.kept_off.empty()) sheet.paragraph(0, head.kept_off);
  sheet.paragraph(0, subject.words.at("caution.head"));
  sheet.rule('=');
}

void add_foot(Sheet& sheet, const Subject& subject) {
  sheet.rule('-');
  sheet.paragraph(0, write_credit(subject.words, subject.roads));
  sheet.paragraph(0, subject.words.at("card.licence"));
}

}  // namespace

std::string write_text(const Lesson& lesson) {
  const SubjectOf all(lesson);
  const Subject& subject = all.get();
  Sheet sheet;
  add_head(sheet, subject);
  add_rows(sheet, subject, Reader::instructor);
  for (const Section& section : sections_of(subject)) add_section(sheet, section);
  add_foot(sheet, subject);
  return sheet.text();
}

std::string write_barred(const Lesson& lesson) {
  const std::vector<Timed> timed = timed_on({lesson.roads, lesson.loop, lesson.setting});
  const say::Words* words = lesson.manner.words;
  return write_barred(words == nullptr ? say::Words() : *words, barred_on(timed));
}

}  // namespace loopwright::card
