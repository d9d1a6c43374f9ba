#include "command/write_for_pupil.hpp"

#include "command/files.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {

void write_for_pupil(book::Book& book, const LessonName& lesson, const std::filesystem::path& file,
                     const std::string& bytes) {
  const std::filesystem::path path = absolute_path(file);
  book::note_written(book, lesson.code, lesson.number, {path, file::sha256_of(bytes)});
  store::write_whole(file, bytes);
}

}  // namespace loopwright::command
