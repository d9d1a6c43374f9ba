// Small pieces that replies of the page are put together from.
#pragma once

#include <filesystem>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/page/page.hpp"
#include "page/jobs.hpp"
#include "page/request.hpp"

namespace loopwright::page {

/// As a body; bytes that are no UTF-8 are replaced.
Reply told(const nlohmann::json& body);

/// What the address says after the '?'; empty when it doesn't.
std::string word(const Address& address, const std::string& name);

/// A name to write a sent file under: the person's own when it is plain (letters, digits, '.', '_', '-', 100 at most), so that
/// a command's complaint names their file; else the other.
std::string plain_file_name(const std::string& name, const std::string& other);

/// A PDF to look at, print or keep; name: of the file, without its ending.
Reply paper(std::string bytes, const std::string& name);

/// As many jobs wait as may (503).
Reply too_much();

/// Folded lines of a command as one.
std::string in_a_line(std::string_view said);

/// The text without the name of a folder of ours, which says nothing to a person asked by a form.
std::string without(std::string text, const std::filesystem::path& folder);

/// A file whole; empty when it isn't there.
std::string bytes_of(const std::filesystem::path& file);

/// How it is sent that a form of paper or file is: "pdf", "html", "gpx", "ics", "geojson", "text", "json"; empty: no form.
std::string_view type_of(std::string_view form);

/// Neither done nor, at least, an answer to what can't be met (exit code 4).
bool has_failed(const JobState& state);

/// Done, exit code 0.
bool is_done(const JobState& state);

/// The words of a command on this desk's area, which is its first option, its notes and terms behind. words: the command's
/// name, in one word or two, then all else.
/// Whether there is a notes file: one that is to be made by the first note isn't there yet.
bool has_notes(const Desk& desk);
Words on_area(const Desk& desk, Words command, Words others);

/// The line that a command complained in, without the program's name before it.
std::string complaint(const JobState& state);

/// What a command that did its work told besides, a line each: notes that change nothing, a plan it can't compare with.
std::vector<std::string> warnings(const JobState& state);

}  // namespace loopwright::page
