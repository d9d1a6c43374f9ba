// Just enough XML for exchange files and pages: nested elements with attributes and text.
//
//   XmlWriter xml;   xml.open("wpt", {{"lat", "1"}});   xml.leaf("name", "turn left");   xml.close();
//
// Why by hand: some hundred elements of five kinds, written once from start to end. What a library
// would add is reading; what can go wrong is escaping, which is one function and its test.
#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loopwright::card {

/// Text fit for element content and attribute values of XML 1.0: markup escaped, characters that
/// XML can't hold and bytes that are no UTF-8 replaced by U+FFFD.
std::string xml_escaped(std::string_view text);

using XmlAttribute = std::pair<std::string_view, std::string>;

class XmlWriter {
 public:
  enum class Head : std::uint8_t { xml, html };
  explicit XmlWriter(Head head = Head::xml);
  void open(std::string_view element, std::initializer_list<XmlAttribute> attributes = {});
  void close();
  /// <element attributes>text</element>
  void leaf(std::string_view element, std::string_view text,
            std::initializer_list<XmlAttribute> attributes = {});
  /// <element attributes/>
  void empty(std::string_view element, std::initializer_list<XmlAttribute> attributes);
  /// Rules: every element is closed.
  [[nodiscard]] const std::string& text() const;

 private:
  void start(std::string_view element, std::initializer_list<XmlAttribute> attributes);
  std::string text_;
  std::vector<std::string> open_;
};

}  // namespace loopwright::card
