// Each value is looked at once, with the range it may have; what is wrong is named by the cursor.
#include "file/read_values.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::file::values {
namespace {

std::optional<int> count(const Cursor& value) {
  // A text here can only be "max".
  if (value.is_text()) {
    one_of(value, {"max"});
    return std::nullopt;
  }
  return small(value, 1, 1000);
}

/// A verdict that may be asked for of this kind.
wish::Verdict asked_verdict(const Cursor& value, road::Kind kind) {
  const auto asked = verdict(value);
  const auto known = wish::verdicts_of(kind);
  if (known.empty()) value.fail("no verdict: only bus-lane has any");
  if (std::find(known.begin(), known.end(), asked) == known.end()) value.fail("usable or in force");
  return asked;
}

/// The kind that a want is joined to; a stop can't be.
road::Kind kind_joined(const Cursor& value) {
  const road::Kind into = kind(value);
  if (road::form_of(into) == road::KindForm::manoeuvre) value.fail("a kind that is driven");
  return into;
}

}  // namespace

int small(const Cursor& value, int least, int most) {
  return static_cast<int>(value.whole(least, most));
}

std::int64_t map_id(const Cursor& value) {
  return value.whole(-greatest_id, greatest_id);
}

std::string one_of(const Cursor& value, std::initializer_list<std::string_view> words) {
  const std::string text = value.text();
  std::string expected;
  for (const std::string_view word : words) {
    if (word == text) return text;
    expected += (expected.empty() ? "\"" : " or \"") + std::string(word) + "\"";
  }
  value.fail(expected);
}

Point point(const Cursor& value) {
  const auto degrees_e7 = [](const Cursor& degrees, double most) {
    return static_cast<std::int32_t>(std::lround(degrees.number(-most, most) * 1e7));
  };
  return {degrees_e7(value.at("lat"), 90), degrees_e7(value.at("lon"), 180)};
}

Date date(const Cursor& value) {
  return value.word([](std::string_view text) { return read_date(text); },
                    "a date like \"2026-10-03\"");
}

Instant instant(const Cursor& value) {
  constexpr int first_year = 1970;  // where a clock begins that was never set
  const auto written = read_time(value.text());
  if (!written || !written->offset_s || written->civil.date.year < first_year)
    value.fail("a time since 1970, like \"2026-11-28T15:00:00+00:00\"");
  return {civil_seconds(written->civil) - *written->offset_s, *written->offset_s};
}

road::Kind kind(const Cursor& value) {
  return value.word(road::parse_kind, "a practice kind");
}

road::Movement movement(const Cursor& value) {
  const auto read = [](const Cursor& text) {
    return text.word(road::parse_movement, "left, ahead, right, round or null");
  };
  return or_none(value, read).value_or(road::Movement::none);
}

wish::Verdict verdict(const Cursor& value) {
  return value.word(wish::parse_verdict, "usable, in force or check the plate");
}

wish::Want want(const Cursor& value, std::string_view count_key) {
  wish::Want want{kind(value.at("kind")), movement(value.at("movement")),
                  count(value.at(count_key))};
  if (const auto asked = value.find("verdict")) {
    want.verdict =
        or_none(*asked, [&](const Cursor& text) { return asked_verdict(text, want.kind); });
  }
  if (const auto joined = value.find("into")) want.into = or_none(*joined, kind_joined);
  return want;
}

}  // namespace loopwright::file::values
