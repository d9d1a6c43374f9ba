// What the page sends, as words of a command: pairs of a name and a text.
//
// Rules: a text is one line. Whether the command knows the word, and what it says, is for the command to check; no text
// can become a word of its own.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace loopwright::page {

/// A wish as a wish file (DEVELOPERS.md, WISH FILE).
struct WishLines {
  std::string text;     ///< the file
  std::string start;    ///< as it is said; empty: now
  std::string effort;   ///< "quick", "soon", "thorough"; empty: the usual
  std::string trouble;  ///< why it is none; else empty
};
/// body: {"words": [["home", "4 Lantern Row"], ["easy-first", ""], …], "effort": "quick"}
WishLines wish_lines(std::string_view body);

/// Options of a command: "--says=never" …
struct OptionWords {
  std::vector<std::string> words;
  std::string trouble;  ///< why it is none; else empty
};

/// A note as words of `note add`.
/// body: {"words": [["at", "54.3,2.6"], ["says", "never"], ["seen", "2026-11-28"], …]}
OptionWords note_words(std::string_view body);
/// What changes of a note as words of `note change`.
/// body: {"words": [["without", "remark"], ["seen", "2026-11-28"], …]}
OptionWords changed_note_words(std::string_view body);

/// What is kept of a pupil as words of `pupil add` and `pupil change`.
/// body: {"words": [["home", "4 Lantern Row"], ["test", "2027-02-03"], …]}
OptionWords pupil_words(std::string_view body);

/// What is kept of a test centre, but for its name, as words of `centre keep`.
/// body: {"words": [["outline", "54.30,2.60;…"], ["hours", "Mo-Fr 08:00-16:30"], …]}
OptionWords centre_words(std::string_view body);

/// What a task for a pupil may be told: "--within=20", "--start=2026-11-28T15:00".
/// body: {"words": [["within", "20"], …]}
OptionWords task_words(std::string_view body);

}  // namespace loopwright::page
