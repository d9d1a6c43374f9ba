#include "command/write_for_pupil.hpp"

#include <sys/stat.h>

#include <algorithm>
#include <cstdlib>

#include "command/files.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/page/scratch_variable.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {

namespace {

/// It lies in the folder of the page that runs this command.
bool is_handed_on(const std::filesystem::path& path) {
  const char* folder = std::getenv(page::scratch_variable);
  if (folder == nullptr || *folder == '\0') return false;
  const std::filesystem::path own(folder);
  return std::mismatch(own.begin(), own.end(), path.begin(), path.end()).first == own.end();
}

/// Files made while it lasts may be read by their owner alone, as the book itself.
class OwnersAlone {
 public:
  OwnersAlone() : before_(::umask(S_IRWXG | S_IRWXO)) {}
  ~OwnersAlone() { ::umask(before_); }
  OwnersAlone(const OwnersAlone&) = delete;
  OwnersAlone& operator=(const OwnersAlone&) = delete;

 private:
  mode_t before_;
};

}  // namespace

void write_for_pupil(book::Book& book, const LessonName& lesson, const std::filesystem::path& file,
                     const std::string& bytes) {
  const std::filesystem::path path = absolute_path(file);
  if (!is_handed_on(path))
    book::note_written(book, lesson.code, lesson.number, {path, file::sha256_of(bytes)});
  const OwnersAlone owners_alone;
  store::write_whole(file, bytes);
}

}  // namespace loopwright::command
