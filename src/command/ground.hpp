// The area a command works on, as the instructor's notes make it.
//
//   AreaTexts texts;   add_area(app, texts);   …   Ground ground(texts);
//   const road::Roads& roads = ground.for_lesson(lesson);
//
// Rules: notes that change nothing in this area are told on standard error, a line each, since one
// who noted a road as closed must learn when it isn't known.
#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <string>

#include "command/options.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/mark/noted.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/store/area.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// The words AREA, --notes and --terms, as typed.
struct AreaTexts {
  std::string area, notes, terms;
};
void add_area(Options& app, AreaTexts& texts);
void add_terms(Options& app, std::string& terms);

/// School terms of a file; none when no file is named. Throws InputError, also when there are more
/// than a loop file may hold.
hours::SchoolTerms terms_in(const std::string& file);

class Ground {
 public:
  /// Opens the area, and the notes and school terms when some are named. Throws InputError.
  explicit Ground(const AreaTexts& texts);

  /// What hours are read by around a place.
  [[nodiscard]] hours::Setting setting_at(Point place) const;
  /// … around a wish's home, by the school terms it names; by those of --terms when it names none.
  [[nodiscard]] hours::Setting setting_of(const wish::Wish& wish) const;
  /// The school terms of --terms; none when they aren't given.
  [[nodiscard]] const hours::SchoolTerms& terms() const { return terms_; }
  /// Tells, a line on standard error, when --terms gives others than a loop file was made with: the
  /// file's own are what its claims mean.
  void tell_other_terms(const wish::Wish& wish, const std::filesystem::path& file) const;
  /// … anywhere in the area: for what doesn't hang on a minute of the sun.
  [[nodiscard]] hours::Setting setting_somewhere() const;

  /// What the map says alone.
  [[nodiscard]] const road::Roads& map() const { return area_.roads(); }
  [[nodiscard]] const road::AreaInfo& info() const { return map().info(); }
  [[nodiscard]] std::span<const road::Note> notes() const;
  /// What a loop file says of the notes.
  [[nodiscard]] std::optional<wish::NotesName> notes_name() const;

  /// The roads as they are for a lesson. Valid until asked for another.
  const road::Roads& for_lesson(const road::LessonTime& lesson);
  /// Both, for a proof. Rules: for_lesson has been asked.
  [[nodiscard]] proof::NotedArea noted() const;

 private:
  [[nodiscard]] const road::Roads& roads() const { return noted_ ? noted_->roads() : map(); }

  std::filesystem::path notes_path_;
  store::Area area_;
  std::optional<file::NotesFile> notes_;
  std::optional<mark::Noted> noted_;
  std::filesystem::path terms_path_;
  hours::SchoolTerms terms_;
};

}  // namespace loopwright::command
