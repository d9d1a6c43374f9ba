// The tables of a school's book on a server, and who may see what of them.
#pragma once

#include <span>

namespace loopwright::book {

/// The book's version that this program needs.
int school_version();

/// The k-th brings version k to version k + 1; version 0 has no table of ours. Each may be several statements.
///
/// Rules: programs of the version before go on working while a step is made and after it (DEVELOPERS.md, "A school's
/// book"): a step adds tables, and columns with a default; nothing is taken away or renamed until a later version,
/// when no program that needs it is left. That later step sets school_schema.oldest_program.
std::span<const char* const> school_steps();

/// What the roles may do, said anew at each preparing: it names every table, so that none is forgotten.
const char* school_rights();

}  // namespace loopwright::book
