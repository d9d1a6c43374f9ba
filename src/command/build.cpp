// Method:
//   1. Options; the region, the outline and both folders are checked before the extract is opened.
//   2. read::build_area does the work; the area is written beside its place and renamed.
//   3. What was found is printed; the report, when one is asked for, takes the form its name says.
#include <malloc.h>

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/outline_words.hpp"
#include "command/print.hpp"
#include "command/progress_bar.hpp"
#include "command/progress_file.hpp"
#include "loopwright/card/area_report.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/place/place.hpp"
#include "loopwright/read/build.hpp"
#include "loopwright/read/heights.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

struct BuildTexts {
  std::string extract, area, region, side, report, progress;
  OutlineTexts outline;
  std::vector<std::string> heights;
  bool motorways = false, fords = false;
};

struct BuildJob {
  std::filesystem::path extract, area, report;
  std::vector<std::filesystem::path> heights;
  std::string progress;
  read::BuildOptions options;
};

Region region_of(const BuildTexts& texts) {
  if (texts.region.empty()) {
    throw UsageError("--region is missing, and an extract doesn't tell it; give " +
                     std::string(regions_there_are));
  }
  Region region = region_named(texts.region);
  if (texts.side == "left") {
    region.side = Side::left;
  } else if (texts.side == "right") {
    region.side = Side::right;
  } else if (!texts.side.empty()) {
    throw UsageError("--side takes left or right, not '" + texts.side + "'");
  }
  return region;
}

constexpr std::string_view report_endings = ".html, .txt or .json";

void check_report_name(const std::filesystem::path& report) {
  const std::string ending = report.extension().string();
  if (report.empty() || ending == ".html" || ending == ".txt" || ending == ".json") return;
  throw UsageError("--report takes a file name that ends in " + std::string(report_endings) +
                   ", not '" + report.string() + "'");
}

std::string write_report(const road::Roads& roads, const road::Report& report,
                         const std::filesystem::path& file) {
  if (file.extension() == ".json") return file::write_report(roads, report);
  const bool html = file.extension() == ".html";
  return card::write_area_report(roads, report,
                                 html ? card::DocumentForm::html : card::DocumentForm::text);
}

std::optional<BuildJob> build_job_of(const Arguments& words) {
  Options app{"Reads a map extract and writes the area file that all other commands use.",
              "loopwright build"};
  BuildTexts texts;
  app.add_option("EXTRACT", texts.extract, ".osm.pbf, .osm, .osm.bz2, .osm.gz or .opl")->required();
  app.add_option("-o,--output", texts.area, "area file to write")->required();
  app.add_option("--region", texts.region, std::string(regions_there_are));
  app.add_option("--side", texts.side, "of the road one drives on, when not the region's");
  app.add_option("--report", texts.report,
                 "also write what was found, inferred and is unknown:\nFILE.html or .txt to read, "
                 ".json for programs");
  app.add_option("--heights", texts.heights,
                 "elevation grid or a folder of them (.hgt, GeoTIFF), for gradients; once or more")
      ->one_value_each();
  add_outline(app, texts.outline);
  app.add_option("--progress", texts.progress,
                 "for another program: a file that gets a line each time more is done");
  app.add_flag("--motorways", texts.motorways, "loops may use motorways");
  app.add_flag("--fords", texts.fords, "loops may drive through fords");
  if (!parse(app, words)) return std::nullopt;
  check_report_name(texts.report);
  const read::BuildOptions options{
      region_of(texts), texts.motorways, texts.fords, {}, outline_of(texts.outline)};
  return BuildJob{texts.extract,  texts.area,
                  texts.report,   {texts.heights.begin(), texts.heights.end()},
                  texts.progress, options};
}

void print_report(const road::Report& report, const BuildJob& job) {
  for (const auto& [what, count] : report.counts())
    std::cout << "  " << what << ": " << count << '\n';
  if (report.oddities().empty()) return;
  std::cout << "  oddities of the map: " << report.oddities().size();
  if (job.report.empty()) std::cout << "; --report FILE lists them";
  std::cout << '\n';
}

/// The module beside the program, or where a package would put it.
std::filesystem::path heights_module() {
  constexpr std::string_view name = "loopwright_heights.so";
  const auto folder = std::filesystem::read_symlink("/proc/self/exe").parent_path();
  const auto beside = folder / name;
  return std::filesystem::exists(beside) ? beside : folder / "../lib/loopwright/modules" / name;
}

read::BuildOptions options_of(const BuildJob& job) {
  read::BuildOptions options = job.options;
  options.heights = read::open_heights(job.heights, heights_module());
  return options;
}

/// Memory that one step of a build gives back is taken by the next: handing it to the system and
/// asking for it again costs a tenth of the time (glibc, mallopt(3)). Of a large extract, whose columns
/// take gigabytes, what a column leaves behind when it grows goes back at once: little else fits there.
void keep_freed_memory(const std::filesystem::path& extract) {
  constexpr int kept_bytes = 1 << 30, more_at_once_bytes = 1 << 26, column_bytes = 1 << 22;
  constexpr std::uintmax_t large_bytes = 16'000'000;
  std::error_code missing;  // is told when it is opened
  const auto bytes = std::filesystem::file_size(extract, missing);
  const bool large = !missing && bytes > large_bytes;
  mallopt(M_MMAP_THRESHOLD, large ? column_bytes : kept_bytes);
  mallopt(M_TRIM_THRESHOLD, kept_bytes);
  mallopt(M_TOP_PAD, more_at_once_bytes);
}

Exit run(const BuildJob& job) {
  keep_freed_memory(job.extract);
  need_folder_of(job.area);
  need_own_file(job.area, {job.extract});
  for (const auto& heights : job.heights) need_own_file(job.area, {heights});
  if (!job.report.empty()) {
    need_folder_of(job.report);
    need_own_file(job.report, {job.extract});
    need_two_files(job.report, job.area);
  }
  const read::BuildOptions options = options_of(job);
  road::Report report;
  read::Built built;
  {
    ProgressFile told(job.progress);
    ProgressBar bar;
    built = read::build_area(job.extract, options, report, told.beside(bar.progress()));
  }
  const std::string names = place::make_index(road::view_of(built.tables, built.info));
  built.tables.place_index.assign(names.begin(), names.end());
  const std::string id = store::write_area(job.area, built.tables, built.info);
  const road::Roads roads = road::view_of(built.tables, built.info);
  if (!job.report.empty()) {
    store::write_whole(job.report, write_report(roads, report, job.report));
  }
  const Region& region = built.info.region;
  std::cout << job.area.string() << ": " << region.code << ", drives on the " << name(region.side)
            << ", id " << id << '\n';
  if (!region.own_rules) {
    std::cout << "  the law of " << region.code
              << " isn't known here: limits the map doesn't give follow general defaults\n";
  }
  print_report(report, job);
  return Exit::done;
}

}  // namespace

Exit build(const Arguments& words) {
  const std::optional<BuildJob> job = build_job_of(words);
  return job ? run(*job) : Exit::done;
}

}  // namespace loopwright::command
