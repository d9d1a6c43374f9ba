// Method: what is passed by driving is told by one look around; manoeuvres, which that leaves out, are asked for one by
// one.
#include "command/there.hpp"

#include "loopwright/find/around.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

using road::Kind;
using road::Movement;

void add_form(std::set<book::Practice>& there, Kind kind, Movement movement) {
  for (const Kind asked : road::all_kinds()) {
    if (!road::meets(kind, asked)) continue;
    there.insert({asked, movement});
    if (movement != Movement::round) there.insert({asked, Movement::none});
  }
}

}  // namespace

std::set<book::Practice> practices_there(Ground& ground, const wish::Wish& wish,
                                         int within_minutes) {
  const hours::Setting setting = ground.setting_of(wish);
  constexpr int there_and_back = 2;
  const road::Roads& roads =
      ground.for_lesson(road::lesson_time(wish.start, there_and_back * within_minutes, setting));
  std::set<book::Practice> there;
  for (const find::FormAround& form : find::around(roads, wish, within_minutes, setting).forms)
    add_form(there, form.kind, form.movement);
  for (const Kind kind : road::all_kinds()) {
    if (road::form_of(kind) != road::KindForm::manoeuvre) continue;
    const wish::Want want{.kind = kind};
    const find::NearAsk ask{wish, want, static_cast<double>(within_minutes)};
    if (!find::chances_near(roads, ask, setting).empty()) add_form(there, kind, Movement::none);
  }
  return there;
}

}  // namespace loopwright::command
