// libFuzzer: any bytes as a notes file.
//
// 1. Reading refuses it, or what is written again is read alike, with as many notes.
// 2. Notes that were read can be laid on the fuzzers' town, for a lesson of an hour.
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "loopwright/file/notes_file.hpp"
#include "loopwright/mark/noted.hpp"
#include "loopwright/road/setting_of.hpp"
#include "town.hpp"
#include "trial.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace loopwright;
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  std::optional<file::NotesFile> notes;
  if (fuzz::refused([&] { notes = file::NotesFile::read(text, "notes.geojson"); })) return 0;
  const std::string written = notes->text();
  const file::NotesFile again = file::NotesFile::read(written, "notes.geojson");
  fuzz::require(again.text() == written && again.notes().size() == notes->notes().size());
  const road::Roads roads = fuzz::town_roads();
  const Instant saturday_afternoon{1'795'878'000, 0};
  const road::LessonTime lesson =
      road::lesson_time(saturday_afternoon, 60, road::setting_of(roads.info(), std::nullopt));
  const mark::Noted noted = mark::with_notes(roads, notes->notes(), lesson);
  fuzz::require(noted.roads().stretches.size() == roads.stretches.size());
  return 0;
}
