// What the pupils' book knows of quiet streets driven on other lessons, as the file that `loops --driven` reads.
//
//   if (write_ledger(desk.book, read_time(start)->civil().date, folder / "driven")) words.insert(…, {"--driven", …});
//
// Why: a loop that the ledger forbids couldn't be kept as a lesson, and would only be found to be shown.
#pragma once

#include <filesystem>

#include "loopwright/base/instant.hpp"

namespace loopwright::page {

/// Writes it for a lesson on that day; false, and no file, where there is no book yet or nothing was driven in the days that count.
/// Throws InputError when the book can't be read.
bool write_ledger(const std::filesystem::path& book, const Date& day,
                  const std::filesystem::path& file);

}  // namespace loopwright::page
