// A page of headings, paragraphs, lists and tables, written as text or as HTML.
//
//   Document page{"What the map tells"};
//   page.heading("What was found");   page.table({{"practice", "places"}, {"zebra", "3"}});
//   write(page, DocumentForm::html);
//
// Rules: texts are plain; what HTML needs is escaped here.
// Why by hand: four kinds of blocks, written once from start to end.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/card/area_report.hpp"

namespace loopwright::card {

class Sheet;
class XmlWriter;

/// Rows of cells; the first row is the head.
using TableCells = std::vector<std::vector<std::string>>;

class Document {
 public:
  explicit Document(std::string title) : title_(std::move(title)) {}
  void heading(std::string text) { add(Shape::heading, std::move(text)); }
  /// A heading one step below.
  void subheading(std::string text) { add(Shape::subheading, std::move(text)); }
  void paragraph(std::string text) { add(Shape::paragraph, std::move(text)); }
  void list(std::vector<std::string> items);
  void table(TableCells cells);

 private:
  friend std::string write(const Document& document, DocumentForm form);
  enum class Shape : std::uint8_t { heading, subheading, paragraph, list, table };
  struct Block {
    Shape shape = Shape::paragraph;
    std::string text;
    TableCells cells;  ///< of a list one cell a row
  };
  void add(Shape shape, std::string text) { blocks_.push_back({shape, std::move(text), {}}); }
  static void write_text(const Block& block, Sheet& sheet);
  static void write_html(const Block& block, XmlWriter& html);

  std::string title_;
  std::vector<Block> blocks_;
};

/// The whole file, line end included.
std::string write(const Document& document, DocumentForm form);

}  // namespace loopwright::card
