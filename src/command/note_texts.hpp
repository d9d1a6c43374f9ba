// What a note says, as it is typed: where it lies is told by others.
//
//   NoteTexts texts;   add_note_options(app, texts, NoteTold::wholly);   …   road::Note note = note_of(texts);
#pragma once

#include <string>

#include "command/options.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {

struct NoteTexts {
  std::string says, kind, hours, from, until, limit, length, seen, remark;
};

/// Whether all of a note is told, or what changes of it.
enum class NoteTold { wholly, in_part };

/// Rules: app must not outlive texts.
void add_note_options(Options& app, NoteTexts& texts, NoteTold told);

/// A note that has no place yet. Throws UsageError for a value that its kind has no use for, lacks, or can't be read.
road::Note note_of(const NoteTexts& texts);
/// The same again, as it would be typed.
NoteTexts texts_of(const road::Note& note);

}  // namespace loopwright::command
