#include "page/pupils.hpp"

#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "loopwright/base/text.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/rights.hpp"
#include "page/job_files.hpp"
#include "page/pupil_record.hpp"
#include "page/replies.hpp"
#include "page/said_words.hpp"

namespace loopwright::page {
namespace {

using Json = nlohmann::json;

/// What a body says by that name; empty when it isn't a text.
std::string text_in(const std::string& body, const char* name) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object() || !said.contains(name) || !said[name].is_string()) return {};
  return said[name].get<std::string>();
}

Reply said_or_trouble(const JobState& done) {
  return is_done(done) ? told({{"said", done.said}}) : trouble(422, complaint(done));
}

constexpr std::array<std::string_view, 6> tasks{"next",    "again",   "mock",
                                                "not-met", "like-it", "at-home"};

/// The words of a task: what it is told, what it writes, and of whom. Rules: one of tasks.
Words words_of_task(const Desk& desk, const std::string& code, const std::string& task,
                    const std::filesystem::path& folder, Words said) {
  said.insert(said.end(), {"--book", desk.book.string()});
  if (task == "again") {  // on the area it was planned with
    said.insert(said.begin(), {"lesson", "again", code});
    return said;
  }
  if (task == "next") {
    said.insert(said.end(), {"--keep-wish", wish_file(folder).string()});
    return on_area(desk, {"lesson", "next", code, "--area"}, std::move(said));
  }
  if (task == "mock") {
    said.emplace_back("--mock");
    return on_area(desk, {"lesson", "plan", code}, std::move(said));
  }
  if (task == "at-home") said.insert(said.end(), {"-o", paper_file(folder).string()});
  return on_area(desk, {task == "not-met" ? "pupil" : "lesson", task, code}, std::move(said));
}

}  // namespace

Reply Pupils::answer(const Request& request, const Address& address) {
  if (desk_.book.empty())
    return trouble(409, "pupils are kept in a book: open the page with --book FILE");
  const auto parts = split(std::string_view(address.path).substr(1), '/');
  const bool reads = request.method == Method::get || request.method == Method::head;
  if (!reads && request.method != Method::post) return not_so("GET, HEAD, POST");
  if (parts.size() == 1) return reads ? all() : not_so("GET, HEAD");
  const std::string code(parts[1]);
  if (!book::is_code(code))
    return trouble(404, "a pupil goes by a code of up to 12 letters and digits");
  if (parts.size() == 2) return reads ? one(code) : not_so("GET, HEAD");
  if (parts.size() > 3) return trouble(404, "there is no such thing of a pupil");
  return reads ? read(code, parts[2], address) : change(code, parts[2], request.body);
}

Reply Pupils::read(const std::string& code, std::string_view what, const Address& address) {
  if (what == "export") return export_of(code, word(address, "form"));
  if (what == "progress")
    return written({"pupil", "show", code}, ".pdf", "pdf", code + "-progress");
  if (what == "card") return card(code, address);
  return trouble(404, "there is no such thing of a pupil");
}

Reply Pupils::change(const std::string& code, std::string_view what, const std::string& body) {
  if (what == "log") return log(code, body);
  if (what == "unlog") return unlog(code, body);
  if (what == "add" || what == "change") return set(code, std::string(what), body);
  if (what == "erase") return erase(code, body);
  if (std::ranges::find(tasks, what) != tasks.end()) return begin(code, std::string(what), body);
  return trouble(404, "there is no such thing of a pupil");
}

Reply Pupils::all() const {
  const book::Book book = book::Book::open(desk_.book, book::Opening::must_be_there);
  Json pupils = Json::array();
  for (const book::Pupil& pupil : book::pupils_of(book))
    pupils.push_back({{"code", pupil.code}, {"home", pupil.home}});
  return told({{"pupils", std::move(pupils)}});
}

JobState Pupils::run(Words words) {
  words.insert(words.end(), {"--book", desk_.book.string()});
  return jobs_.run([&](const std::filesystem::path&) { return words; });
}

Reply Pupils::one(const std::string& code) {
  const JobState shown = run({"pupil", "show", code});
  if (!is_done(shown)) return trouble(422, complaint(shown));
  const book::Book book = book::Book::open(desk_.book, book::Opening::must_be_there);
  Json record = record_of_pupil(book, code);
  record["told"] = shown.said;
  return told(record);
}

Reply Pupils::set(const std::string& code, const std::string& deed, const std::string& body) {
  const OptionWords said = pupil_words(body);
  if (!said.trouble.empty()) return trouble(400, said.trouble);
  Words words{"pupil", deed, code};
  words.insert(words.end(), said.words.begin(), said.words.end());
  const auto says_home = [](const std::string& each) {
    return each.starts_with("--home=") && each.size() > std::string_view("--home=").size();
  };
  if (std::ranges::any_of(said.words, says_home)) words.push_back("--area=" + desk_.area.string());
  return said_or_trouble(run(std::move(words)));
}

Reply Pupils::log(const std::string& code, const std::string& body) {
  const std::string line = text_in(body, "line");
  if (trim(line).empty()) return trouble(400, "line: what came of the lesson");
  if (line.front() == '-') return trouble(400, "a line begins with what was practised");
  Words words{"lesson", "log", code, line};
  if (const Json said = Json::parse(body); said.contains("lesson")) {
    if (!said["lesson"].is_number_unsigned()) return trouble(400, "lesson: its number");
    words.insert(words.end(), {"--lesson", said["lesson"].dump()});
  }
  if (const Json said = Json::parse(body); said.value("still_to_come", Json(false)) == Json(true))
    words.emplace_back("--yes");
  return said_or_trouble(run(std::move(words)));
}

Reply Pupils::unlog(const std::string& code, const std::string& body) {
  const Json said = Json::parse(body, nullptr, false);
  if (!said.is_object() || !said.contains("lesson") || !said["lesson"].is_number_unsigned())
    return trouble(400, "lesson: its number");
  return said_or_trouble(run({"lesson", "unlog", code, "--lesson", said["lesson"].dump()}));
}

Reply Pupils::erase(const std::string& code, const std::string& body) {
  const std::string typed = text_in(body, "code");
  if (lower(trim(typed)) != lower(code))
    return trouble(400, "type the code " + code + " to erase all that is kept under it");
  const JobState done = run({"pupil", "erase", code, "--yes"});
  if (is_done(done)) return told({{"said", in_a_line(done.said)}});
  // Erased all the same, but for a file that is changed since: each is named (exit code 1).
  if (done.said.find(" is erased") != std::string::npos)
    return told({{"said", in_a_line(done.said + done.complained)}});
  return trouble(422, complaint(done));
}

Reply Pupils::begin(const std::string& code, const std::string& task, const std::string& body) {
  const OptionWords said = task_words(body);
  if (!said.trouble.empty()) return trouble(400, said.trouble);
  const auto id = jobs_.add([&](const std::filesystem::path& folder) {
    return words_of_task(desk_, code, task, folder, said.words);
  });
  if (!id) return too_much();
  return told({{"job", *id}});
}

Reply Pupils::written(Words words, const std::string& ending, std::string_view form,
                      const std::string& name) {
  Reply reply{.status = 200, .type = std::string(type_of(form)), .body = {}, .headers = {}};
  words.insert(words.end(), {"--book", desk_.book.string()});
  const JobState state = jobs_.run(
      [&](const std::filesystem::path& folder) {
        words.insert(words.end(), {"-o", (folder / ("paper" + ending)).string()});
        return words;
      },
      [&](const JobState& over) { reply.body = bytes_of(over.folder / ("paper" + ending)); });
  if (!is_done(state)) return line_to_read(422, complaint(state));
  if (form != "html" && form != "text")
    reply.headers["Content-Disposition"] = "inline; filename=\"" + name + ending + "\"";
  return reply;
}

Reply Pupils::card(const std::string& code, const Address& address) {
  const std::string form = word(address, "form"), lesson = word(address, "lesson");
  if (type_of(form).empty() || form == "json" || !read_int(lesson))
    return trouble(400, "lesson: its number; form: pdf, html, gpx, ics or text");
  return written({"lesson", "print", code, "--lesson=" + lesson, "--format", form}, "." + form,
                 form, code + "-lesson-" + lesson);
}

Reply Pupils::export_of(const std::string& code, const std::string& form) {
  if (form == "pdf") return written({"pupil", "export", code}, ".pdf", "pdf", code + "-all");
  if (form != "json") return trouble(400, "form: json or pdf");
  const book::Book book = book::Book::open(desk_.book, book::Opening::must_be_there);
  Reply reply = json(book::export_pupil(book, code));
  reply.headers["Content-Disposition"] = "attachment; filename=\"" + code + ".json\"";
  return reply;
}

}  // namespace loopwright::page
