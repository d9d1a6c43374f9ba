#include "page/keeping.hpp"

#include <fstream>
#include <nlohmann/json.hpp>

#include "loopwright/base/text.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/file/loop_file.hpp"
#include "page/job_files.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

/// What is to be kept, for whom.
struct Keep {
  std::string pupil, loop, length;
  bool elsewhere = false;
};

std::optional<Keep> keep_in(const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object()) return std::nullopt;
  const Json pupil = said.value("pupil", Json()), loop = said.value("loop", Json()),
             length = said.value("length", Json());
  if (!pupil.is_string() || !book::is_code(pupil.get_ref<const std::string&>()) ||
      !loop.is_number_unsigned() || !(length.is_null() || length.is_number_unsigned()))
    return std::nullopt;
  return Keep{pupil.get<std::string>(), loop.dump(), length.is_null() ? "" : length.dump(),
              said.value("elsewhere", Json(false)) == Json(true)};
}

/// What the wish calls the place its loops begin at.
std::string home_in(const std::filesystem::path& wish) {
  std::ifstream in(wish);
  constexpr std::string_view word = "home ";
  for (std::string line; std::getline(in, line);)
    if (line.starts_with(word)) return std::string(trim(line.substr(word.size())));
  return {};
}

/// The number of the lesson that begins then.
int lesson_then(const std::filesystem::path& book_file, const std::string& code,
                const Instant& start) {
  const book::Book book = book::Book::open(book_file, book::Opening::must_be_there);
  int number = 0;
  for (const book::Lesson& lesson : book::lessons_of(book, code))
    if (lesson.state == book::LessonState::planned && lesson.plan.start.unix_s == start.unix_s)
      number = lesson.number;
  return number;
}

}  // namespace

Reply Keeping::keep(const std::optional<JobState>& job, const std::string& body) {
  if (desk_.book.empty())
    return trouble(409, "lessons are kept in the pupils' book: open the page with --book FILE");
  if (!job || job->stage != Stage::over || has_failed(*job))
    return trouble(404, "there are no such loops, or no longer: look for them again");
  const auto keep = keep_in(body);
  if (!keep) return trouble(400, "pupil: a code; loop: its number; length: minutes");
  const std::filesystem::path loops = job->folder / "loops.json";
  const JobState state = jobs_.run([&](const std::filesystem::path&) {
    Words words{"--loops", loops.string(), "--loop", keep->loop, "--book", desk_.book.string()};
    if (!keep->length.empty()) words.insert(words.end(), {"--length", keep->length});
    if (keep->elsewhere) words.push_back("--home=" + home_in(wish_file(job->folder)));
    return on_area(desk_, {"lesson", "plan", keep->pupil}, std::move(words));
  });
  if (has_failed(state)) return trouble(422, without(complaint(state), job->folder));
  // What can't be the pupil's lesson is said where a plan would be (exit code 4, and nothing is planned).
  if (state.code == 4 && state.said.find("nothing is planned") != std::string::npos)
    return trouble(422, in_a_line(state.said));
  const Instant start = file::load_answer(loops).wish.start;
  return told({{"said", state.said},
               {"code", keep->pupil},
               {"lesson", lesson_then(desk_.book, keep->pupil, start)}});
}

}  // namespace loopwright::page
