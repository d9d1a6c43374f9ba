// A search as the words of a wish ask for it: shared by `loops`, which writes what was found, and `lesson`, which keeps
// it in the book.
//
//   LoopAsk ask = ask_of(std::move(words));   Ground ground(texts);   settle(ask, ground, std::cout);
//   const wish::Answer answer = answer_to(ground, {ask, texts.area}, std::cout);
//   const std::string text = file::write_answer(answer);   prove_text(ground, text, "loops.json");
#pragma once

#include <cstdint>
#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string_view>
#include <vector>

#include "command/ground.hpp"
#include "command/keep_off_words.hpp"
#include "command/places.hpp"
#include "command/wish_words.hpp"
#include "loopwright/base/instant.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

struct LoopAsk {
  WishWords words;
  std::optional<WrittenTime> start;
  WrittenPlace home;
  std::optional<WrittenPlace> end, drive_out, drive_back;
  std::vector<WrittenPlace> through;
  std::vector<WrittenKeepOff> keep_offs;
  std::vector<WrittenTake> takes;
  find::Effort effort = find::Effort::usual;
  wish::Wish wish;  ///< its places, start and terms are filled in by `settle`
};

/// Checks all of the words before anything is opened. Rules: they are settled. Throws UsageError, or InputError for a
/// word of a wish file.
LoopAsk ask_of(WishWords words);

/// Looks up its places in the area, tells `out` what their words were taken for, and takes now for a start that isn't
/// said.
void settle(LoopAsk& ask, const Ground& ground, std::ostream& out);

/// Takes away what isn't a quiet street of this area: a ledger may speak of others, too.
void keep_quiet(std::vector<wish::StreetUse>& use, const road::Roads& roads);

/// Searches, and tells `out` where a place lies off its road. area: the file, for the answer's name of it.
struct SearchAsk {
  const LoopAsk& ask;
  std::filesystem::path area;
};
wish::Answer answer_to(Ground& ground, const SearchAsk& search, std::ostream& out);

/// What is false in a loop file's text, and how many claims were checked. Rules: for_lesson was asked for its lesson.
struct TextProof {
  std::optional<std::string> false_claim;
  std::int64_t claims = 0;
};
TextProof proof_of_text(const Ground& ground, std::string_view text,
                        const std::filesystem::path& name);

/// Claims checked in the loop file as it will be written under that name. Throws Error when one is false: our own
/// fault, and then nothing may be written.
std::int64_t prove_text(const Ground& ground, std::string_view text,
                        const std::filesystem::path& name);

}  // namespace loopwright::command
