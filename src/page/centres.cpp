#include "page/centres.hpp"

#include <filesystem>
#include <nlohmann/json.hpp>
#include <optional>

#include "loopwright/base/text.hpp"
#include "loopwright/book/centres.hpp"
#include "loopwright/road/note.hpp"
#include "page/replies.hpp"
#include "page/said_words.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

/// The name in a body. None when it says none, or one that would be taken for an option of the command.
std::optional<std::string> centre_in(const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object() || !said.contains("name") || !said["name"].is_string()) return std::nullopt;
  std::string name(trim(said["name"].get_ref<const std::string&>()));
  if (name.empty() || name.front() == '-') return std::nullopt;
  return name;
}

/// Corners as [lat, lon] each. Rules: as the book keeps them.
Json corners_of_outline(const std::string& outline) {
  Json corners = Json::array();
  for (const std::string_view corner : split(outline, ';')) {
    const auto parts = split(corner, ',');
    if (parts.size() != 2) continue;
    const auto lat = read_number(trim(parts[0])), lon = read_number(trim(parts[1]));
    if (lat && lon) corners.push_back({*lat, *lon});
  }
  return corners;
}

const Reply& no_name() {
  static const Reply reply = trouble(400, "name: what you call the test centre");
  return reply;
}

}  // namespace

Reply Centres::answer(const Request& request, const Address& address) {
  if (desk_.book.empty())
    return trouble(409, "test centres are kept in a book: open the page with --book FILE");
  const bool reads = request.method == Method::get || request.method == Method::head;
  if (address.path == "/centres") return reads ? all() : not_so("GET, HEAD");
  if (address.path != "/centres/keep" && address.path != "/centres/drop")
    return trouble(404, "there is no such thing of test centres");
  if (request.method != Method::post) return not_so("POST");
  return address.path == "/centres/keep" ? keep(request.body) : drop(request.body);
}

Reply Centres::all() const {
  Json centres = Json::array();
  std::error_code ignored;
  if (std::filesystem::exists(desk_.book, ignored)) {  // it is made by the first that is kept
    const book::Book book = book::Book::open(desk_.book, book::Opening::must_be_there);
    for (const book::Centre& one : book::centres(book))
      centres.push_back({{"name", one.name},
                         {"outline", corners_of_outline(one.outline)},
                         {"hours", one.hours},
                         {"since", road::day_text(one.since)}});
  }
  return told({{"centres", std::move(centres)}});
}

Reply Centres::keep(const std::string& body) {
  const auto name = centre_in(body);
  if (!name) return no_name();
  const OptionWords said = centre_words(body);
  if (!said.trouble.empty()) return trouble(400, said.trouble);
  Words words{"centre", "keep", *name};
  words.insert(words.end(), said.words.begin(), said.words.end());
  return run(std::move(words));
}

Reply Centres::drop(const std::string& body) {
  const auto name = centre_in(body);
  return name ? run({"centre", "drop", *name}) : no_name();
}

Reply Centres::run(Words words) {
  words.insert(words.end(), {"--book", desk_.book.string()});
  const JobState done = jobs_.run([&](const std::filesystem::path&) { return words; });
  return is_done(done) ? told({{"said", in_a_line(done.said)}}) : trouble(422, complaint(done));
}

}  // namespace loopwright::page
