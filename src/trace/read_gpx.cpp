// Method:
//   1. libexpat walks the file; a point begins with its trkpt, and counts when that ends.
//   2. Points are put in order of time, since recorders that join files mix them; of one time the first counts.
// Expat bounds what entities may grow to; here they are refused altogether, since no track needs them.
#include <expat.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>

#include "loopwright/base/error.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/trace/recording.hpp"

namespace loopwright::trace {
namespace {

constexpr std::size_t longest_time = 64;            // characters; RFC 3339 with nanoseconds has 35
constexpr int first_year = 1973, last_year = 9998;  // of a lesson's start on the command line, too

/// "2026-11-28T15:00:03.250Z" as seconds since 1970.
std::optional<double> seconds_in(std::string_view text) {
  text = trim(text);
  double part_s = 0;
  std::string whole(text);
  if (const auto point = text.find('.'); point != std::string_view::npos) {
    const auto end = std::min(text.find_first_not_of("0123456789", point + 1), text.size());
    const auto part = read_number("0" + std::string(text.substr(point, end - point)));
    if (!part) return std::nullopt;
    part_s = *part;
    whole = std::string(text.substr(0, point)) + std::string(text.substr(end));
  }
  const auto written = read_time(whole);
  if (!written || written->civil.date.year < first_year || written->civil.date.year > last_year)
    return std::nullopt;
  return static_cast<double>(civil_seconds(written->civil) - written->offset_s.value_or(0)) +
         part_s;
}

/// An element's name without the namespace's prefix.
std::string_view bare(const char* name) {
  const std::string_view text(name);
  const auto colon = text.rfind(':');
  return colon == std::string_view::npos ? text : text.substr(colon + 1);
}

class Reader {
 public:
  Reader() : parser_(XML_ParserCreate(nullptr)) {
    if (!parser_) throw std::bad_alloc();
    XML_SetUserData(parser_.get(), this);
    XML_SetElementHandler(parser_.get(), begin_element, end_element);
    XML_SetCharacterDataHandler(parser_.get(), characters);
    XML_SetEntityDeclHandler(parser_.get(), entity);
  }

  Recording read(std::string_view text, const std::string& name) {
    // Expat takes an int of bytes at a time.
    constexpr std::size_t chunk = std::size_t{1} << 20U;
    for (std::size_t at = 0; at == 0 || at < text.size(); at += chunk) {
      const std::string_view part = text.substr(at, chunk);
      const bool last = at + chunk >= text.size();
      if (XML_Parse(parser_.get(), part.data(), static_cast<int>(part.size()), last ? 1 : 0) ==
          XML_STATUS_OK)
        continue;
      if (why_refused_.empty()) broken_off();
      break;
    }
    if (!why_refused_.empty()) throw InputError(name + ": " + why_refused_);
    if (!is_gpx_) throw InputError(name + ": is no GPX file; record the drive as a GPX track");
    return std::move(recording_);
  }

 private:
  struct Free {
    void operator()(XML_ParserStruct* parser) const { XML_ParserFree(parser); }
  };

  static Reader& of(void* user) { return *static_cast<Reader*>(user); }
  static void XMLCALL begin_element(void* user, const XML_Char* name, const XML_Char** attributes) {
    of(user).begin(bare(name), attributes);
  }
  static void XMLCALL end_element(void* user, const XML_Char* name) { of(user).end(bare(name)); }
  static void XMLCALL characters(void* user, const XML_Char* text, int length) {
    Reader& reader = of(user);
    if (reader.in_time_ && reader.time_.size() < longest_time)
      reader.time_.append(text, static_cast<std::size_t>(length));
  }
  static void XMLCALL entity(void* user, const XML_Char* /*name*/, int /*is_parameter*/,
                             const XML_Char* /*value*/, int /*length*/, const XML_Char* /*base*/,
                             const XML_Char* /*system*/, const XML_Char* /*open*/,
                             const XML_Char* /*notation*/) {
    of(user).refuse("declares entities, which no recorded drive needs; export the track again");
  }

  void begin(std::string_view name, const XML_Char** attributes) {
    if (depth_++ == 0) is_gpx_ = name == "gpx";
    if (!is_gpx_) return refuse("is no GPX file; record the drive as a GPX track");
    if (name == "trkpt") begin_point(attributes);
    in_time_ = in_point_ && name == "time";
    if (in_time_) time_.clear();
  }

  void begin_point(const XML_Char** attributes) {
    in_point_ = true;
    lat_.reset(), lon_.reset(), time_.clear();
    for (; *attributes != nullptr; attributes += 2) {
      if (bare(attributes[0]) == "lat") lat_ = read_number(trim(attributes[1]));
      if (bare(attributes[0]) == "lon") lon_ = read_number(trim(attributes[1]));
    }
  }

  void end(std::string_view name) {
    --depth_;
    if (name == "time") in_time_ = false;
    if (name != "trkpt") return;
    in_point_ = false;
    const auto at_s = seconds_in(time_);
    // What is off the earth, and the "null island" that recorders write before they know where they are.
    const bool on_earth = lat_ && lon_ && std::abs(*lat_) <= 90 && std::abs(*lon_) <= 180 &&
                          (*lat_ != 0 || *lon_ != 0);
    if (!on_earth)
      ++recording_.off_earth;
    else if (!at_s)
      ++recording_.without_time;
    else if (recording_.fixes.size() == most_fixes)
      refuse("has more than " + std::to_string(most_fixes) +
             " points, which no lesson has; cut the lesson's part out of it");
    else
      recording_.fixes.push_back({point_from_degrees(*lat_, *lon_), *at_s});
  }

  void refuse(const std::string& why) {
    if (why_refused_.empty()) why_refused_ = why;
    XML_StopParser(parser_.get(), XML_FALSE);
  }

  void broken_off() {
    recording_.broken_off = "line " + std::to_string(XML_GetCurrentLineNumber(parser_.get())) +
                            ": " + XML_ErrorString(XML_GetErrorCode(parser_.get()));
  }

  std::unique_ptr<XML_ParserStruct, Free> parser_;
  Recording recording_;
  std::string why_refused_, time_;
  std::optional<double> lat_, lon_;
  int depth_ = 0;
  bool is_gpx_ = false, in_point_ = false, in_time_ = false;
};

void put_in_order(Recording& recording) {
  auto& fixes = recording.fixes;
  const auto earlier = [](const Fix& a, const Fix& b) { return a.unix_s < b.unix_s; };
  if (!std::is_sorted(fixes.begin(), fixes.end(), earlier))
    std::stable_sort(fixes.begin(), fixes.end(), earlier);
  const auto rest = std::unique(fixes.begin(), fixes.end(),
                                [](const Fix& a, const Fix& b) { return a.unix_s == b.unix_s; });
  recording.same_time = static_cast<std::size_t>(fixes.end() - rest);
  fixes.erase(rest, fixes.end());
}

}  // namespace

Recording read_gpx(std::string_view text, const std::string& name) {
  Recording recording = Reader().read(text, name);
  if (recording.fixes.empty()) {
    const std::string broken =
        recording.broken_off.empty() ? "" : " (" + printable(recording.broken_off) + ")";
    throw InputError(name + ": " +
                     (recording.without_time > 0
                          ? "none of its " + std::to_string(recording.without_time) +
                                " points has a time; record the drive as a track with times"
                          : "has no point of a track; record the drive as a GPX track") +
                     broken);
  }
  put_in_order(recording);
  return recording;
}

}  // namespace loopwright::trace
