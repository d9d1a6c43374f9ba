#include "page/pupils.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupils.hpp"
#include "page/replies.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

/// What is proposed for a day, with the words of its wish.
Json proposal_of(const book::Book& book, const book::Pupil& pupil, const Date& day) {
  const book::Scheme* scheme = book::find_scheme(pupil.scheme);
  if (scheme == nullptr) return nullptr;
  const auto lessons = book::lessons_of(book, pupil.code);
  const book::Proposal next = book::proposed({pupil, *scheme, lessons, day});
  Json topics = Json::array(), words = Json::array();
  for (const book::ProposedTopic& topic : next.topics)
    topics.push_back(
        {{"what", book::words_of(topic.what)}, {"passes", topic.passes}, {"why", topic.why}});
  for (const book::WishWord& word : book::wish_words(next))
    words.push_back({word.name, word.value});
  for (const road::Kind kind : pupil.avoids) words.push_back({"avoid", road::name(kind)});
  return {{"goal", next.goal},
          {"topics", std::move(topics)},
          {"hints", next.hints},
          {"words", std::move(words)}};
}

}  // namespace

Reply Pupils::answer(const Request& request, const Address& address) {
  if (book_.empty())
    return trouble(409, "pupils are kept in a book: open the page with --book FILE");
  const auto parts = split(std::string_view(address.path).substr(1), '/');
  const bool reads = request.method == Method::get || request.method == Method::head;
  if (parts.size() == 1) return reads ? all() : not_so("GET, HEAD");
  const std::string code(parts[1]);
  if (!book::is_code(code))
    return trouble(404, "a pupil goes by a code of up to 12 letters and digits");
  if (parts.size() == 2 && reads) return one(code, word(address, "day"));
  if (parts.size() == 3 && parts[2] == "log" && request.method == Method::post)
    return log(code, request.body);
  return trouble(parts.size() > 3 ? 404 : 405, "there is no such thing of a pupil");
}

Reply Pupils::all() const {
  const book::Book book = book::Book::open(book_, book::Opening::must_be_there);
  Json pupils = Json::array();
  for (const book::Pupil& pupil : book::pupils_of(book))
    pupils.push_back({{"code", pupil.code}, {"home", pupil.home}});
  return told({{"pupils", std::move(pupils)}});
}

JobState Pupils::run(Words words) {
  words.insert(words.end(), {"--book", book_.string()});
  return jobs_.run([&](const std::filesystem::path&) { return words; });
}

Reply Pupils::one(const std::string& code, const std::string& day_text) {
  const auto day = read_date(day_text);
  if (!day) return trouble(400, "day: a date such as 2026-11-28");
  const JobState record = run({"pupil", "show", code, "--today", day_text});
  if (record.stage != Stage::over || record.code != 0) return trouble(422, complaint(record));
  const book::Book book = book::Book::open(book_, book::Opening::must_be_there);
  const book::Pupil pupil = book::pupil_of(book, code);
  return told({{"code", pupil.code},
               {"home", pupil.home},
               {"record", record.said},
               {"lessons", run({"lesson", "list", code}).said},
               {"next", proposal_of(book, pupil, *day)}});
}

Reply Pupils::log(const std::string& code, const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object() || !said.contains("line") || !said["line"].is_string() ||
      trim(said["line"].get_ref<const std::string&>()).empty())
    return trouble(400, "line: what came of the lesson");
  const std::string line = said["line"];
  if (line.front() == '-') return trouble(400, "a line begins with what was practised");
  const JobState done = run({"lesson", "log", code, line});
  if (done.stage != Stage::over || done.code != 0) return trouble(422, complaint(done));
  return told({{"said", done.said}});
}

}  // namespace loopwright::page
