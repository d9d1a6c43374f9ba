// The notes file (GeoJSON) in and out: what the instructor knows better than the map.
//
//   NotesFile file = NotesFile::load("notes.geojson");
//   file.add(note);   store::write_whole("notes.geojson", file.text());
//
// Rules: RFC 7946: one FeatureCollection of Points and LineStrings; the properties are ours ("Notes
// file" in DEVELOPERS.md, src/rules/notes.schema.json). Reading is strict and throws InputError with
// file, JSON pointer ("/features/2/properties/seen") and what was expected; two notes that contradict
// each other (a practice is at a place, and it isn't) are refused with both their numbers. Members and properties
// that we don't know are kept and written again. Same notes, same bytes.
#pragma once

#include <filesystem>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/road/note.hpp"

namespace loopwright::file {

class NotesFile {
 public:
  NotesFile();  ///< without a note
  ~NotesFile();
  NotesFile(NotesFile&&) noexcept;
  NotesFile& operator=(NotesFile&&) noexcept;

  /// file_name is only used in messages.
  static NotesFile read(std::string_view text, std::string_view file_name);
  static NotesFile load(const std::filesystem::path& path);

  /// In the file's order.
  [[nodiscard]] std::span<const road::Note> notes() const { return notes_; }
  /// Rules: the note has what its kind needs. Throws InputError, nothing added, when it contradicts one
  /// in the file.
  void add(const road::Note& note);
  /// In the place of one that is there; what we don't know of that one is kept. Rules: as add; row < notes().size().
  void replace(std::size_t row, const road::Note& note);
  /// Rules: row < notes().size().
  void drop(std::size_t row);
  [[nodiscard]] std::string text() const;
  /// SHA-256 of the text as it was read, 64 hex digits.
  [[nodiscard]] const std::string& sha256() const { return sha256_; }

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
  std::vector<road::Note> notes_;
  std::string sha256_;
};

/// SHA-256 (FIPS 180-4) in hex.
std::string sha256_of(std::string_view bytes);

}  // namespace loopwright::file
