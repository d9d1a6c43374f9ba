// Method: the entries of the card, one block each, with its junction as an SVG picture in the page itself;
// then the sections. Ink on paper; dark where the reader's screen is.
#include "loopwright/card/html.hpp"

#include "card/entries.hpp"
#include "card/head.hpp"
#include "card/row_shape.hpp"
#include "card/speech.hpp"
#include "card/subject_of.hpp"
#include "card/xml.hpp"
#include "loopwright/base/hex.hpp"
#include "loopwright/draw/render.hpp"

namespace loopwright::card {
namespace {

constexpr std::string_view style = R"(
:root { color-scheme: light dark; --ink: #16181b; --paper: #ffffff; --pale: #e1dfd8; --grey: #64676b; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e9e7e1; --paper: #16181b; --pale: #34373b; --grey: #a3a6aa; }
  img { filter: invert(1); } }
body { font: 17px/1.45 Lato, sans-serif; color: var(--ink); background: var(--paper);
       max-width: 46rem; margin: 2rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 2rem; margin: 0; }
h2 { font-size: 1.2rem; margin: 2rem 0 .3rem; border-top: 3px solid var(--ink); padding-top: .5rem; }
p { margin: 0; }
.row { display: flex; gap: 1rem; padding: .7rem 0; border-top: 1px solid var(--pale); }
.joins { border-top: 0; border-left: 3px solid var(--ink); padding-left: .5rem; }
.number { flex: 0 0 2.2rem; text-align: right; font-weight: bold; font-size: 1.3rem; }
.shape { flex: 0 0 6rem; }
.shape img { width: 6rem; }
.say { font-weight: bold; font-size: 1.3rem; line-height: 1.2; }
.far { color: var(--grey); }
.brief, .lane, .kerb { font-weight: bold; }
.figures { margin-left: auto; flex: 0 0 auto; text-align: right; font-weight: bold; }
.limit { display: inline-block; border: 2px solid var(--ink); border-radius: 1.2rem; padding: 0 .35rem; }
.band { border-top: 3px solid var(--ink); border-bottom: 1px solid var(--ink); padding: .5rem 0; }
.more { padding-left: 1rem; }
@media print { body { font-size: 10pt; margin: 0; max-width: none; } .row { break-inside: avoid; } }
)";

class PageWriter {
 public:
  PageWriter(const Subject& subject, const Head& head) : subject_(subject), head_(head) {}

  std::string write(const std::string& title) {
    html_.open("html", {{"lang", "en"}});
    html_.open("head");
    html_.empty("meta", {{"charset", "utf-8"}});
    html_.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
    html_.leaf("title", title + ", " + head_.when);
    html_.leaf("style", style);
    html_.close();
    html_.open("body");
    add_head(title);
    for (const Entry& entry : entries_of(subject_)) add_entry(entry);
    for (const Section& section : sections_of(subject_)) add_section(section);
    html_.leaf("h2", "");
    add_paragraph({}, write_credit(subject_.words, subject_.roads));
    add_paragraph({}, std::string(subject_.words.at("card.licence")));
    html_.close();
    html_.close();
    return html_.text();
  }

 private:
  void add_paragraph(const std::string& of, const std::string& text) {
    if (text.empty()) return;
    of.empty() ? html_.leaf("p", text) : html_.leaf("p", text, {{"class", of}});
  }

  void add_head(const std::string& title) {
    html_.leaf("h1", title);
    add_paragraph("say", head_.when + ", " + head_.back_by);
    for (const std::string& line : head_.first) add_paragraph("brief", line);
    for (const std::string* line : {&head_.goal, &head_.driving, &head_.level, &head_.kept_off})
      add_paragraph({}, *line);
    add_paragraph("brief", std::string(subject_.words.at("caution.head")));
    html_.leaf("h2", "");
  }

  void add_entry(const Entry& entry) {
    if (entry.kind == EntryKind::band) {
      html_.open("div", {{"class", "band"}});
      add_paragraph("brief", entry.say);
      add_paragraph({}, entry.then);
      html_.close();
      return;
    }
    html_.open("div", {{"class", entry.joins_previous ? "row joins" : "row"}});
    add_paragraph("number", entry.number);
    add_shape(entry);
    html_.open("div");
    add_paragraph("say", entry.say);
    for (const std::string* line : {&entry.where, &entry.landmark}) add_paragraph({}, *line);
    add_paragraph("lane", entry.lane);
    add_paragraph("kerb", entry.kerb);
    add_paragraph("brief", entry.brief);
    add_paragraph({}, entry.then);
    add_paragraph("far", entry.next);
    add_paragraph("far", entry.after);
    html_.close();
    add_figures(entry);
    html_.close();
  }

  void add_shape(const Entry& entry) {
    constexpr double width = 26, height = 20;
    const draw::Picture shape = shape_of(subject_, entry, {width, height});
    html_.open("div", {{"class", "shape"}});
    html_.empty("img", {{"alt", ""},
                        {"src", "data:image/svg+xml," + percent_encoded(draw::to_svg(shape))}});
    html_.close();
  }

  void add_figures(const Entry& entry) {
    const say::Words& words = subject_.words;
    html_.open("div", {{"class", "figures"}});
    if (!entry.limit.empty()) {
      add_paragraph("limit", entry.limit + (entry.limit_sure ? "" : "?"));
      if (!entry.limit_sure) add_paragraph("far", std::string(words.at("card.look")));
    }
    if (entry.hardness > 0)
      add_paragraph({}, words.fill("card.hard", {{"n", std::to_string(entry.hardness)}}));
    html_.close();
  }

  void add_section(const Section& section) {
    html_.leaf("h2", section.heading);
    for (const SectionLine& line : section.lines)
      add_paragraph(line.level > 0 ? "more" : "", line.text);
  }

  const Subject& subject_;
  const Head& head_;
  XmlWriter html_{XmlWriter::Head::html};
};

}  // namespace

std::string write_html(const Lesson& lesson, const std::string& pupil) {
  const SubjectOf all(lesson);
  const Head head = head_of(all.get());
  return PageWriter(all.get(), head).write(pupil.empty() ? head.title : pupil);
}

}  // namespace loopwright::card
