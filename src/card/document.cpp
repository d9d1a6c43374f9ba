// Text: a sheet as wide as the cards; columns of a table as wide as they need, figures (every
// column but the first) at the right. HTML: one file without anything to fetch, ink on paper, dark
// where the reader's screen is, tables that scroll by themselves on a small one.
#include "card/document.hpp"

#include <algorithm>

#include "card/sheet.hpp"
#include "card/xml.hpp"

namespace loopwright::card {
namespace {

constexpr std::string_view style = R"(
:root { color-scheme: light dark; --ink: #16181b; --paper: #ffffff; --pale: #e9e7e1; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e7e1; --paper: #16181b; --pale: #34373b; } }
body { font: 17px/1.5 Lato, sans-serif; color: var(--ink); background: var(--paper);
       max-width: 46rem; margin: 2rem auto; padding: 0 1rem; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; line-height: 1.2; }
h2 { font-size: 1.2rem; margin-top: 2rem; border-top: 3px solid var(--ink); padding-top: .5rem; }
h3 { font-size: 1rem; margin-bottom: .2rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; overflow-wrap: normal; }
th, td { text-align: right; padding: .2rem .8rem .2rem 0; border-bottom: 1px solid var(--pale);
         font-variant-numeric: tabular-nums; vertical-align: top; }
th:first-child, td:first-child { text-align: left; }
li { margin-bottom: .2rem; }
@media print { body { font-size: 10pt; margin: 0; max-width: none; } }
)";

std::vector<std::size_t> widths_of(const TableCells& cells) {
  std::vector<std::size_t> widths;
  for (const auto& row : cells) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], columns(row[i]));
  }
  return widths;
}

void write_table(const TableCells& cells, Sheet& sheet) {
  const std::vector<std::size_t> widths = widths_of(cells);
  for (const auto& row : cells) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string room(widths[i] - columns(row[i]), ' ');
      line += i == 0 ? row[i] + room : "  " + room + row[i];
    }
    line.erase(line.find_last_not_of(' ') + 1);
    sheet.line(std::move(line));
  }
}

void write_table(const TableCells& cells, XmlWriter& html) {
  html.open("div", {{"class", "wide"}});
  html.open("table");
  for (const auto& row : cells) {
    html.open("tr");
    for (const std::string& cell : row) html.leaf(&row == &cells.front() ? "th" : "td", cell);
    html.close();
  }
  html.close();
  html.close();
}

}  // namespace

void Document::list(std::vector<std::string> items) {
  Block block{Shape::list, {}, {}};
  for (std::string& item : items) block.cells.push_back({std::move(item)});
  blocks_.push_back(std::move(block));
}

void Document::table(TableCells cells) {
  blocks_.push_back({Shape::table, {}, std::move(cells)});
}

void Document::write_text(const Block& block, Sheet& sheet) {
  constexpr std::size_t list_indent = 2;
  switch (block.shape) {
    case Shape::heading:
      sheet.blank();
      sheet.rule('=');
      sheet.line(block.text);
      break;
    case Shape::subheading:
      sheet.blank();
      sheet.line(block.text);
      break;
    case Shape::paragraph:
      sheet.paragraph(0, block.text);
      break;
    case Shape::list:
      for (const auto& row : block.cells) sheet.paragraph(list_indent, row.front());
      break;
    case Shape::table:
      write_table(block.cells, sheet);
      break;
  }
}

void Document::write_html(const Block& block, XmlWriter& html) {
  switch (block.shape) {
    case Shape::heading:
      html.leaf("h2", block.text);
      break;
    case Shape::subheading:
      html.leaf("h3", block.text);
      break;
    case Shape::paragraph:
      html.leaf("p", block.text);
      break;
    case Shape::list:
      html.open("ul");
      for (const auto& row : block.cells) html.leaf("li", row.front());
      html.close();
      break;
    case Shape::table:
      write_table(block.cells, html);
      break;
  }
}

std::string write(const Document& document, DocumentForm form) {
  if (form == DocumentForm::text) {
    Sheet sheet;
    sheet.line(document.title_);
    for (const auto& block : document.blocks_) Document::write_text(block, sheet);
    return sheet.text();
  }
  XmlWriter html(XmlWriter::Head::html);
  html.open("html", {{"lang", "en"}});
  html.open("head");
  html.empty("meta", {{"charset", "utf-8"}});
  html.empty("meta", {{"name", "viewport"}, {"content", "width=device-width"}});
  html.leaf("title", document.title_);
  html.leaf("style", style);
  html.close();
  html.open("body");
  html.leaf("h1", document.title_);
  for (const auto& block : document.blocks_) Document::write_html(block, html);
  html.close();
  html.close();
  return html.text();
}

}  // namespace loopwright::card
