#include "command/effort_options.hpp"

namespace loopwright::command {

void add_effort(Options& app, EffortTexts& texts) {
  const auto quick = app.add_flag("--quick", texts.quick,
                                  "the first good loops, and how good they are only roughly");
  app.add_flag("--thorough", texts.thorough,
               "look longer, and say more closely how good the loops are")
      ->excludes(quick);
}

find::Effort effort_of(const EffortTexts& texts) {
  if (texts.quick) return find::Effort::quick;
  return texts.thorough ? find::Effort::thorough : find::Effort::usual;
}

}  // namespace loopwright::command
