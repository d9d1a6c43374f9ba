// Why the id decides: two areas may have the same file name and still number their roads otherwise.
#include "command/files.hpp"

#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::command {
namespace {

// Credit the Open Database Licence asks for wherever results are published (ODbL 1.0, 4.3).
constexpr std::string_view map_credit = "© OpenStreetMap contributors (ODbL)";

std::string numbers_in(const wish::Answer& answer) {
  if (answer.loops.empty()) return "it has none, since the wish can't be met";
  std::string text = "it has ";
  for (const wish::Loop& loop : answer.loops) {
    if (&loop != &answer.loops.front()) text += ", ";
    text += std::to_string(loop.id);
  }
  return text;
}

void need_same_notes(const std::optional<wish::NotesName>& made_with,
                     const std::optional<wish::NotesName>& given,
                     const std::filesystem::path& file) {
  if (!made_with && !given) return;
  if (!given) {
    throw InputError(file.string() + ": was made with notes; give --notes " + made_with->file);
  }
  if (!made_with) {
    throw InputError(file.string() +
                     ": was made without notes; leave --notes out, or make it again");
  }
  if (made_with->sha256 == given->sha256) return;
  throw InputError(file.string() + ": was made with other notes (" + made_with->file +
                   ", SHA-256 " + made_with->sha256 + "); these have " + given->sha256);
}

/// Checks that an answer was made with this area and these notes, and lays the notes for its lesson.
void lay_ground_for(const wish::Answer& answer, Ground& ground, const std::filesystem::path& file) {
  if (answer.area.id != ground.info().id) {
    throw InputError(file.string() + ": was made with another area (" + answer.area.file + ", id " +
                     answer.area.id + "); this one's id is " + ground.info().id);
  }
  need_same_notes(answer.notes, ground.notes_name(), file);
  ground.tell_other_terms(answer.wish, file);
  ground.for_lesson(wish::lesson_time(answer.wish, ground.setting_of(answer.wish)));
}

TiedLoops tied(const Ground& ground, wish::Answer answer) {
  const road::Roads& roads = ground.noted().roads;
  for (wish::Loop& loop : answer.loops) wish::resolve(roads, loop);
  hours::Setting setting = ground.setting_of(answer.wish);
  return {roads, std::move(setting), std::move(answer)};
}

/// False for no name.
bool is_same_file(const std::filesystem::path& one, const std::filesystem::path& other) {
  std::error_code ignored;  // a file that isn't there yet is no other's
  return !other.empty() && (std::filesystem::equivalent(one, other, ignored) ||
                            absolute_path(one) == absolute_path(other));
}

}  // namespace

void need_folder_of(const std::filesystem::path& file) {
  std::error_code ignored;
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  if (std::filesystem::is_directory(folder, ignored)) return;
  throw InputError(file.string() + ": there is no folder " + folder.string() + "; make it first");
}

void need_own_file(const std::filesystem::path& output,
                   std::initializer_list<std::filesystem::path> read) {
  for (const std::filesystem::path& other : read)
    if (is_same_file(output, other))
      throw UsageError(output.string() +
                       ": the command reads this file too; give another name to write to");
}

void need_two_files(const std::filesystem::path& output, const std::filesystem::path& other) {
  if (!output.empty() && is_same_file(output, other))
    throw UsageError(output.string() +
                     ": two files would be written there; give each a name of its own");
}

std::filesystem::path absolute_path(const std::filesystem::path& file) {
  return file.empty() ? file : std::filesystem::absolute(file).lexically_normal();
}

wish::AreaName name_of(const road::AreaInfo& info, const std::filesystem::path& file) {
  return {file.filename().string(), info.id,
          info.region.code,         std::string(name(info.region.side)),
          info.map_timestamp,       std::string(map_credit)};
}

wish::Answer answer_in(Ground& ground, const std::filesystem::path& file) {
  wish::Answer answer = file::load_answer(file);
  lay_ground_for(answer, ground, file);
  return answer;
}

TiedLoops loops_of(Ground& ground, const std::filesystem::path& file) {
  return tied(ground, answer_in(ground, file));
}

TiedLoops loops_in(Ground& ground, std::string_view text, const std::string& name) {
  wish::Answer answer = file::read_answer(text, name);
  lay_ground_for(answer, ground, name);
  return tied(ground, std::move(answer));
}

const wish::Loop& loop_numbered(const wish::Answer& answer, int number,
                                const std::filesystem::path& file) {
  const auto found = std::ranges::find(answer.loops, number, &wish::Loop::id);
  if (found != answer.loops.end()) return *found;
  throw UsageError(file.string() + ": has no loop " + std::to_string(number) + "; " +
                   numbers_in(answer));
}

}  // namespace loopwright::command
