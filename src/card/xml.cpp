// Method: one element a line, a blank of indent for each it lies in. Escaping walks the text by
// UTF-8 sequences (RFC 3629) and keeps what XML 1.0 section 2.2 allows as a character.
#include "card/xml.hpp"

#include <cassert>
#include <cstdint>

namespace loopwright::card {
namespace {

/// A character of UTF-8: its number and its bytes. No bytes: they are no UTF-8.
struct Character {
  std::uint32_t number = 0;
  std::size_t bytes = 0;
};

Character first_character(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<std::uint8_t>(text[i]); };
  const std::uint8_t lead = byte(0);
  if (lead < 0x80) return {lead, 1};
  const std::size_t bytes = lead >= 0xF0 ? 4 : (lead >= 0xE0 ? 3 : 2);
  if (lead < 0xC2 || lead > 0xF4 || text.size() < bytes) return {};
  std::uint32_t number = lead & (0xFFU >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return {};
    number = number << 6 | (byte(i) & 0x3FU);
  }
  // Not the shortest form, or past the end of Unicode.
  const bool long_form = (bytes == 3 && number < 0x800) || (bytes == 4 && number < 0x10000);
  if (long_form || number > 0x10FFFF) return {};
  return {number, bytes};
}

bool allowed_in_xml(std::uint32_t c) {
  if (c < 0x20) return c == '\t' || c == '\n' || c == '\r';
  return c < 0xD800 || (c >= 0xE000 && c != 0xFFFE && c != 0xFFFF);
}

std::string_view replacement(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    default:
      return {};
  }
}

}  // namespace

std::string xml_escaped(std::string_view text) {
  std::string result;
  while (!text.empty()) {
    const Character c = first_character(text);
    const std::size_t bytes = c.bytes == 0 ? 1 : c.bytes;
    const std::string_view markup = replacement(text[0]);
    if (c.bytes == 0 || !allowed_in_xml(c.number)) {
      result += "\uFFFD";
    } else {
      result += markup.empty() ? text.substr(0, bytes) : markup;
    }
    text.remove_prefix(bytes);
  }
  return result;
}

XmlWriter::XmlWriter(Head head)
    : text_(head == Head::html ? "<!DOCTYPE html>\n"
                               : "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n") {}

void XmlWriter::start(std::string_view element, std::initializer_list<XmlAttribute> attributes) {
  text_.append(open_.size(), ' ').append("<").append(element);
  for (const auto& [name, value] : attributes)
    text_.append(" ").append(name).append("=\"").append(xml_escaped(value)).append("\"");
}

void XmlWriter::open(std::string_view element, std::initializer_list<XmlAttribute> attributes) {
  start(element, attributes);
  text_ += ">\n";
  open_.emplace_back(element);
}

void XmlWriter::close() {
  assert(!open_.empty());
  const std::string element = std::move(open_.back());
  open_.pop_back();
  text_.append(open_.size(), ' ').append("</").append(element).append(">\n");
}

void XmlWriter::leaf(std::string_view element, std::string_view text,
                     std::initializer_list<XmlAttribute> attributes) {
  start(element, attributes);
  text_.append(">").append(xml_escaped(text)).append("</").append(element).append(">\n");
}

void XmlWriter::empty(std::string_view element, std::initializer_list<XmlAttribute> attributes) {
  start(element, attributes);
  text_ += "/>\n";
}

const std::string& XmlWriter::text() const {
  assert(open_.empty());
  return text_;
}

}  // namespace loopwright::card
