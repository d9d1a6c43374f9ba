// Method: the loop asked for is read, tied to the area and written by room card in one of its
// formats, to a file or to standard output. One that may not be driven at its hour is told on standard
// error too, since a file is written without being looked at.
#include "loopwright/card/card.hpp"

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

using Writer = std::string (*)(const road::Roads&, const wish::Answer&, const wish::Loop&,
                               const hours::Setting&);

struct CardJob {
  AreaTexts area;
  std::filesystem::path loops, output;
  int loop = 1;
  Writer write = nullptr;
};

Writer writer_of(std::string_view format) {
  if (format == "text") return &card::write_text;
  if (format == "gpx") return &card::write_gpx;
  if (format == "geojson") return &card::write_geojson;
  throw UsageError("--format takes text, gpx or geojson, not '" + std::string(format) + "'");
}

std::optional<CardJob> job_of(const Arguments& words) {
  Options app{"Writes a loop as a route card to read from, or as a file to exchange.",
              "loopwright card"};
  AreaTexts area;
  std::string loops, output, loop = "1", format = "text";
  add_area(app, area);
  app.add_option("LOOPS", loops, "loop file")->required();
  app.add_option("--loop", loop, "number of the loop (default: 1)");
  app.add_option("--format", format, "text, gpx or geojson (default: text)");
  app.add_option("-o,--output", output, "file to write (default: standard output)");
  if (!parse(app, words)) return std::nullopt;
  return CardJob{area, loops, output, whole_number("--loop", loop, {1, 999}), writer_of(format)};
}

Exit run(const CardJob& job) {
  if (!job.output.empty()) {
    need_folder_of(job.output);
    need_own_file(job.output, {job.area.area, job.area.notes, job.loops});
  }
  Ground ground(job.area);
  const TiedLoops tied = loops_of(ground, job.loops);
  const wish::Loop& loop = loop_numbered(tied.answer, job.loop, job.loops);
  const std::string text = job.write(tied.roads, tied.answer, loop, tied.setting);
  const std::string barred = card::write_barred(tied.roads, loop, tied.setting);
  if (!barred.empty()) {
    std::cerr << "loopwright: " << job.loops.string() << ": loop " << loop.id << ": " << barred
              << '\n';
  }
  if (job.output.empty()) {
    std::cout << text;
  } else {
    store::write_whole(job.output, text);
  }
  return Exit::done;
}

}  // namespace

Exit card(const Arguments& words) {
  const std::optional<CardJob> job = job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
