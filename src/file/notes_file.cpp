// 1. The text is kept as a JSON tree in its own order, so that what we don't know isn't lost.
// 2. Each feature is read by read_note.cpp; a new note becomes one more feature of the tree.
// 3. Writing puts the collection's members on a line each, then one feature a line. Bytes that are
//    no UTF-8 are replaced (U+FFFD).
#include "loopwright/file/notes_file.hpp"

#include <nlohmann/json.hpp>
#include <utility>

#include "file/contradictions.hpp"
#include "file/note_json.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/nesting.hpp"
#include "loopwright/file/load_text.hpp"

namespace loopwright::file {
namespace {

using Json = nlohmann::ordered_json;

constexpr std::size_t most_notes = 100'000;

Json parse(std::string_view text, const std::string& name) {
  if (text.empty()) throw InputError(name + ": is empty; a notes file is GeoJSON");
  if (nests_deeper(text, most_nested))
    throw InputError(name + ": its lists lie too deep in each other; a notes file is GeoJSON");
  try {
    return Json::parse(text);
  } catch (const Json::parse_error& error) {
    throw InputError(name + ": is no JSON at byte " + std::to_string(error.byte) +
                     "; a notes file is GeoJSON");
  } catch (const Json::out_of_range&) {
    throw InputError(name + ": holds a number that is too large");
  }
}

std::string line_of(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string line_of_features(const Json& features) {
  std::string text = "[";
  std::string_view before = "\n";
  for (const Json& feature : features) {
    text.append(before).append(line_of(feature));
    before = ",\n";
  }
  return text + "\n]";
}

}  // namespace

struct NotesFile::Inside {
  std::string name;  ///< of the file, for messages
  Json tree = {{"type", "FeatureCollection"}, {"features", Json::array()}};
};

NotesFile::NotesFile() : inside_(std::make_unique<Inside>()) {}
NotesFile::~NotesFile() = default;
NotesFile::NotesFile(NotesFile&&) noexcept = default;
NotesFile& NotesFile::operator=(NotesFile&&) noexcept = default;

NotesFile NotesFile::read(std::string_view text, std::string_view file_name) {
  const std::string name(file_name);
  NotesFile file;
  file.inside_->name = name;
  file.inside_->tree = parse(text, name);
  file.sha256_ = sha256_of(text);
  const nlohmann::json plain = file.inside_->tree;
  const Cursor whole(plain, name);
  const auto is_collection = [](std::string_view type) -> std::optional<bool> {
    return type == "FeatureCollection" ? std::optional(true) : std::nullopt;
  };
  static_cast<void>(whole.at("type").word(is_collection, "\"FeatureCollection\""));
  for (const Cursor& feature : whole.at("features").items(most_notes)) {
    file.notes_.push_back(read_note(feature));
  }
  if (const auto found = contradiction_in(file.notes_))
    throw InputError(name + ": " + words_for(*found));
  return file;
}

NotesFile NotesFile::load(const std::filesystem::path& path) {
  return read(load_text(path, {"notes file", "loopwright note add"}), path.string());
}

void NotesFile::add(const road::Note& note) {
  notes_.push_back(note);
  if (const auto found = contradiction_in(notes_)) {
    notes_.pop_back();
    throw InputError(inside_->name + ": not written: " + words_for(*found));
  }
  inside_->tree["features"].push_back(json_of(note));
}

void NotesFile::replace(std::size_t row, const road::Note& note) {
  road::Note was = std::exchange(notes_[row], note);
  if (const auto found = contradiction_in(notes_)) {
    notes_[row] = std::move(was);
    throw InputError(inside_->name + ": not written: " + words_for(*found));
  }
  Json& feature = inside_->tree["features"][row];
  const Json before = json_of(was), now = json_of(note);
  for (const auto& [key, value] : before["properties"].items()) feature["properties"].erase(key);
  // What we know stands first, in our order, as in a note that was added.
  Json properties = now["properties"];
  properties.update(feature["properties"]);
  feature["properties"] = std::move(properties);
  feature["geometry"] = now["geometry"];
}

void NotesFile::drop(std::size_t row) {
  notes_.erase(notes_.begin() + static_cast<std::ptrdiff_t>(row));
  Json& features = inside_->tree["features"];
  features.erase(features.begin() + static_cast<std::ptrdiff_t>(row));
}

std::string NotesFile::text() const {
  std::string text = "{";
  std::string_view before;
  for (const auto& [key, value] : inside_->tree.items()) {
    text.append(before).append(line_of(key)).append(": ");
    text += key == "features" ? line_of_features(value) : line_of(value);
    before = ",\n";
  }
  return text + "}\n";
}

}  // namespace loopwright::file
