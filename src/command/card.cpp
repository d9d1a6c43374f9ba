// Method: the loop asked for is read, tied to the area, proved, and written by room card in one of its
// formats, to a file or to standard output. A loop that may not be driven at its hour says so at its head, and on standard
// error too; any other that doesn't hold is refused, for one drives by what is printed.
#include "loopwright/card/card.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/book_option.hpp"
#include "command/card_form.hpp"
#include "command/files.hpp"
#include "command/words_file.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct CardJob {
  AreaTexts area;
  std::filesystem::path loops, output, words;
  int loop = 1;
  CardForm form;
};

std::optional<CardJob> card_job_of(const Arguments& words) {
  Options app{
      "Writes a loop as a lesson on paper, as a card to read from, or as a file to exchange.",
      "loopwright card"};
  AreaTexts area;
  CardTexts texts;
  std::string loops, output, loop = "1", pupil;
  add_area(app, area);
  app.add_option("LOOPS", loops, "loop file")->required();
  app.add_option("--loop", loop, "number of the loop (default: 1)");
  add_card_options(app, texts);
  app.add_option("--pupil", pupil, "pdf, html, ics: a code for the learner, never a name");
  app.add_option("-o,--output", output, "file to write (default: standard output)");
  if (!parse(app, words)) return std::nullopt;
  CardJob job{area,
              loops,
              output,
              texts.words,
              whole_number("--loop", loop, {1, 999}),
              card_form_of(texts, output)};
  if (!pupil.empty()) job.form.pack.pupil = pupil_code("--pupil", pupil);
  return job;
}

void need_proved(const Ground& ground, const TiedLoops& tied, const std::filesystem::path& file) {
  const proof::Proof found = proof::prove(ground.noted(), tied.answer, tied.setting);
  if (found.false_claim)
    throw Error(Exit::false_claim, file.string() + ": nothing is written, since it doesn't hold: " +
                                       *found.false_claim + "; look for loops again");
}

Exit run(const CardJob& job) {
  if (!job.output.empty()) {
    need_folder_of(job.output);
    need_own_file(job.output, {job.area.area, job.area.notes, job.loops, job.words});
  }
  std::optional<WordsFile> words;
  if (!job.words.empty()) words.emplace(job.words);
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  const wish::Loop& loop = loop_numbered(tied.answer, job.loop, job.loops);
  const card::Lesson lesson{tied.roads,
                            tied.answer,
                            loop,
                            tied.setting,
                            {words ? &words->words() : nullptr, job.form.sides}};
  if (card::write_barred(lesson).empty()) need_proved(ground, tied, job.loops);
  const std::string text = write_card(job.form, lesson);
  tell_barred(lesson, job.loops.string());
  if (job.output.empty()) {
    std::cout << text;
  } else {
    store::write_whole(job.output, text);
  }
  return Exit::done;
}

}  // namespace

Exit card(const Arguments& words) {
  const std::optional<CardJob> job = card_job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
