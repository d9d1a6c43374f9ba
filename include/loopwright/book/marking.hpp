// How a drive is marked: faults by heading in three grades, how the instructor stepped in, and when a mock
// test is passed.
//
//   is_passed({15, 0, 0}, day);   // true
//
// Rules: headings and the rule of passing come from src/rules/marking.txt, with source and date. Codes never
// change once released: books keep them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "loopwright/base/instant.hpp"

namespace loopwright::book {

enum class Grade : std::uint8_t { driving, serious, dangerous };
std::string_view name(Grade grade);  // "driving"
std::optional<Grade> parse_grade(std::string_view text);

/// How the instructor stepped in. Source: the driver's record of gov.uk speaks of verbal and physical help;
/// that wheel and pedals are told apart is common practice, no source.
enum class Intervention : std::uint8_t { words, wheel, pedals };
std::string_view name(Intervention how);
std::optional<Intervention> parse_intervention(std::string_view text);

/// How much was said of it: talked through it, guided, prompted by questions, nothing. Common practice.
enum class Help : std::uint8_t { talked, guided, prompted, alone };
std::string_view name(Help help);
std::optional<Help> parse_help(std::string_view text);

/// A heading of the marking sheet.
struct Heading {
  std::string_view code, name;
};
std::span<const Heading> headings();
/// Null when there is none of that code.
const Heading* find_heading(std::string_view code);

/// Faults counted in a mock test.
struct Faults {
  int driving = 0, serious = 0, dangerous = 0;
  friend bool operator==(const Faults&, const Faults&) = default;
};
/// By the rule of that day. It says nothing about a real test.
bool is_passed(const Faults& faults, Date day);

/// What a lesson was driven in: codes as the log takes them and the book keeps them.
/// Source of the weathers: the boxes of the test report, from trade copies, two merged with others.
std::span<const std::string_view> weathers();
std::span<const std::string_view> traffics();  ///< light, usual, heavy
std::span<const std::string_view> lights();    ///< day, dusk, dark

}  // namespace loopwright::book
