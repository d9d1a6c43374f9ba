// Method:
//   1. Words become a wish; loops are looked for, and proved as they will be written (loop_search.hpp).
//   2. The file is written whole, and a summary printed. Wish not met: exit 4, the file is there.
#include <iostream>

#include "command/arguments.hpp"
#include "command/effort_options.hpp"
#include "command/files.hpp"
#include "command/loop_search.hpp"
#include "command/loop_summary.hpp"
#include "loopwright/file/ledger.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct LoopTexts {
  AreaTexts area;
  WishWords words;
  std::string wish_file, keep_wish, driven, output;
  EffortTexts effort;
};

struct LoopJob {
  AreaTexts area;
  std::filesystem::path output, wish_file, keep_wish, driven;
  LoopAsk ask;
};

void add_options(Options& app, LoopTexts& texts) {
  add_area(app, texts.area);
  texts.words.add_options(app);
  app.add_option("--wish", texts.wish_file,
                 "file of words of this command, a line each, such as "
                 "'minutes 60'; what is given here beats it");
  app.add_option("--keep-wish", texts.keep_wish, "file to write these words into, for --wish");
  app.add_option("--driven", texts.driven,
                 "file of streets driven on other lessons: day, OSM way, how often, a line each");
  add_effort(app, texts.effort);
  app.add_option("-o,--output", texts.output, "loop file to write")->required();
  app.footer(kinds_help());
}

std::optional<LoopJob> loop_job_of(const Arguments& words) {
  Options app{"Finds loops from the door and back that meet a wish inside the time.",
              "loopwright loops"};
  LoopTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  texts.words.settle(texts.wish_file);
  LoopJob job{texts.area,      texts.output, texts.wish_file,
              texts.keep_wish, texts.driven, ask_of(std::move(texts.words))};
  job.ask.effort = effort_of(texts.effort);
  return job;
}

/// What the ledger says of quiet streets of this area, for the day of the lesson.
std::vector<wish::StreetUse> street_use(const LoopJob& job, const road::Roads& roads) {
  if (job.driven.empty()) return {};
  const std::string name = job.driven.string();
  const auto rows = file::read_ledger(file::load_text(job.driven, {"ledger", {}}), name);
  std::vector<wish::StreetUse> use = file::street_use(rows, job.ask.wish.start.civil().date);
  keep_quiet(use, roads);
  return use;
}

/// Nothing is worked out that couldn't be written, or would be written over what is read.
void need_room_for_files(const LoopJob& job) {
  for (const std::filesystem::path& file : {job.output, job.keep_wish}) {
    if (file.empty()) continue;
    need_folder_of(file);
    need_own_file(file, {job.area.area, job.area.notes, job.wish_file, job.driven});
  }
  need_two_files(job.keep_wish, job.output);
}

void keep_wish(const LoopJob& job, const std::string& text) {
  if (job.keep_wish.empty()) return;
  store::write_whole(job.keep_wish, text);
  std::cout << job.keep_wish.string() << ": written; --wish " << job.keep_wish.string()
            << " asks for the same again\n";
}

Exit run(LoopJob job) {
  need_room_for_files(job);
  const std::string kept = job.ask.words.file_text();
  Ground ground(job.area);
  settle(job.ask, ground, std::cout);
  job.ask.wish.street_use = street_use(job, ground.map());
  const wish::Answer answer = answer_to(ground, {job.ask, job.area.area}, std::cout);
  const std::string text = file::write_answer(answer);
  const std::int64_t claims = prove_text(ground, text, job.output);
  store::write_whole(job.output, text);
  const hours::Setting setting = ground.setting_of(answer.wish);
  print_summary(std::cout, answer, {ground.noted().roads, setting});
  std::cout << job.output.string() << ": written; " << claims
            << " claims checked, all agree with the map's rules\n";
  keep_wish(job, kept);
  return answer.shortfall ? Exit::wish_not_met : Exit::done;
}

}  // namespace

Exit loops(const Arguments& words) {
  const std::optional<LoopJob> job = loop_job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
