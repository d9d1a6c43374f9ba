#include "command/effort_options.hpp"

namespace loopwright::command {

void add_effort(Options& app, EffortTexts& texts) {
  const auto quick = app.add_flag("--quick", texts.quick,
                                  "the first good loops, and how good they are only roughly");
  const auto soon =
      app.add_flag("--soon", texts.soon,
                   "better loops than the first, and how good they are at most, in about a second");
  soon->excludes(quick);
  app.add_flag("--thorough", texts.thorough,
               "look longer, and say more closely how good the loops are")
      ->excludes(quick)
      ->excludes(soon);
}

find::Effort effort_of(const EffortTexts& texts) {
  if (texts.quick) return find::Effort::quick;
  if (texts.soon) return find::Effort::soon;
  return texts.thorough ? find::Effort::thorough : find::Effort::usual;
}

}  // namespace loopwright::command
