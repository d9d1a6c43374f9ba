#include "page/notes.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>
#include <optional>

#include "page/said_words.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

/// The number of the note that a body is about, when the file still has it there as it is said to be.
std::optional<std::size_t> number_in(const Json& said, const Json& file) {
  if (!said.is_object() || !said.contains("number") || !said["number"].is_number_unsigned() ||
      !said.contains("was") || !file.is_object() || !file.contains("features"))
    return std::nullopt;
  const auto number = said["number"].get<std::size_t>();
  const Json& features = file["features"];
  if (number == 0 || number > features.size() || features[number - 1] != said["was"])
    return std::nullopt;
  return number;
}

}  // namespace

Reply Notes::answer(const Request& request, const Address& address) {
  const bool writes = request.method == Method::post;
  if (!writes && request.method != Method::get && request.method != Method::head)
    return not_so("GET, HEAD, POST");
  if (address.path != "/notes" && address.path != "/notes/change" && address.path != "/notes/drop")
    return trouble(404, "there is no such thing of notes");
  if (!writes) {
    if (address.path != "/notes") return not_so("POST");
    if (has_notes(desk_)) return json(bytes_of(desk_.notes));
    return told({{"type", "FeatureCollection"}, {"features", Json::array()}});
  }
  if (desk_.notes.empty())
    return trouble(409, "notes are kept when the page is opened with --notes FILE");
  if (address.path == "/notes") return add(request.body);
  return with_one(address.path == "/notes/drop" ? "drop" : "change", request.body);
}

Reply Notes::add(const std::string& body) {
  const OptionWords note = note_words(body);
  if (!note.trouble.empty()) return trouble(400, note.trouble);
  Words words{"note", "add", desk_.notes.string(), "--area", desk_.area.string()};
  words.insert(words.end(), note.words.begin(), note.words.end());
  const std::lock_guard lock(writing_);
  return run(std::move(words));
}

Reply Notes::with_one(const std::string& deed, const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  Words words{"note", deed, desk_.notes.string()};
  const std::lock_guard lock(writing_);
  const auto number = number_in(said, Json::parse(bytes_of(desk_.notes), nullptr, false));
  if (!number)
    return trouble(409, "that note is another one by now, or gone: look at your notes again");
  words.push_back(std::to_string(*number));
  if (deed == "change") {
    const OptionWords changes = changed_note_words(body);
    if (!changes.trouble.empty()) return trouble(400, changes.trouble);
    words.push_back("--area=" + desk_.area.string());
    words.insert(words.end(), changes.words.begin(), changes.words.end());
  }
  return run(std::move(words));
}

Reply Notes::run(Words words) {
  const JobState state = jobs_.run([&](const std::filesystem::path&) { return words; });
  return is_done(state) ? told({{"said", state.said}}) : trouble(422, complaint(state));
}

}  // namespace loopwright::page
