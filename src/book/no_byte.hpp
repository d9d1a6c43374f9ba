// Deleted rows leave no byte in the book's file or beside it.
#pragma once

#include "book/connection.hpp"

namespace loopwright::book {

/// Rules: outside of a transaction; no other program holds the book open.
void leave_no_byte(SQLite::Database& db);

}  // namespace loopwright::book
