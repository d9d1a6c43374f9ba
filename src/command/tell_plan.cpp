// Method: a loop file that was asked for is first noted in the book, for the day on which the pupil is erased.
#include "command/tell_plan.hpp"

#include <iostream>

#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/loop_summary.hpp"
#include "command/write_for_pupil.hpp"

namespace loopwright::command {
namespace {

void write_loop_file(book::Book& book, const PlanJob& job, int number, const std::string& text) {
  if (job.output.empty()) return;
  write_for_pupil(book, {job.code, number}, job.output, text);
  std::cout << job.output.string()
            << ": written; it gives the door away: treat it as personal data\n";
}

void tell_planned(const PlanJob& job, int number, const Instant& start) {
  if (!job.length.sum.empty())
    print_folded(std::cout, 0,
                 job.length.sum + "; you leave at " + write_clock(start) +
                     ": talk before that means a later --start");
  const std::string lesson = std::to_string(number);
  print_folded(std::cout, 0,
               job.code + ", lesson " + lesson + ", " + spoken_moment(start) +
                   ": planned; 'loopwright lesson print " + job.code + " --lesson " + lesson +
                   "' writes its card");
}

}  // namespace

Exit tell_and_keep(book::Book& book, const PlanJob& job, const FoundPlan& found) {
  const wish::Answer& answer = found.answer;
  print_summary(std::cout, answer,
                {found.ground->noted().roads, found.ground->setting_of(answer.wish)});
  if (answer.loops.empty()) {
    std::cout << "nothing is planned\n";
    return Exit::wish_not_met;
  }
  std::cout << found.claims << " claims checked, all agree with the map's rules\n";
  const int number = keep_plan(book, job, found);
  tell_planned(job, number, answer.wish.start);
  tell_look_again(std::cout, book, found);
  write_loop_file(book, job, number, found.text);
  return answer.shortfall ? Exit::wish_not_met : Exit::done;
}

}  // namespace loopwright::command
