// Deleted rows leave no byte in the book's file or beside it.
#pragma once

#include "book/connection.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::book {

/// Rules: outside of a transaction; no other program holds the book open.
void leave_no_byte(SQLite::Database& db);

/// The same of a book from which something was just deleted. Throws Error that says so when it can't be done yet.
void leave_no_byte(Book& book);

}  // namespace loopwright::book
