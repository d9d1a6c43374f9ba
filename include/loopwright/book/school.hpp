// A school's book: the tables on its server, who belongs to the school, and pupils who change hands.
//
//   prepare_school("postgresql:///school");   admit(address, "ash", Membership::instructor);   hand_over(book, "WREN", "birch");
//
// Rules: whoever owns the database prepares it and admits members, by their login roles, which whoever runs the server
// makes. An instructor sees the pupils they hold, the office all; both see the ledger's counts. The database holds them
// to it (row-level security), not this program. Throws InputError, UsageError in one line.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"

namespace loopwright::book {

/// Makes the tables and roles, or brings them to this version, while members go on working. Doing it again changes
/// nothing. True: something was made.
bool prepare_school(const std::string& address);

/// Looks through what all members see for rows that somebody wrote by SQL, and that no Loopwright would: plans pass them over. A
/// line each, for the owner to delete.
std::vector<std::string> odd_rows_for_all(const std::string& address);

enum class Membership { instructor, office };
/// Whose the pupils are that are held by a login of this name, which was no member until now: it may be another person's login
/// made anew.
enum class Before { nobody, same_person };
/// login: a role of the server. Throws InputError when it would be given pupils of somebody before.
void admit(const std::string& address, const std::string& login, Membership as, Before before);
/// Takes a login out, at once. Returns how many pupils it still holds, which the office hands over.
int leave(const std::string& address, const std::string& login);

/// The pupil with all lessons is then held by that instructor, and no more by who held it.
void hand_over(Book& book, std::string_view code, const std::string& login);

/// The codes of the pupils that are held by who holds that one, itself among them: those of one instructor's day. Of a file
/// they are all.
std::vector<std::string> codes_of_same_holder(const Book& book, std::string_view code);

/// True for what names a book on a server: "postgresql://…" or "postgres://…".
bool is_address(std::string_view place);

}  // namespace loopwright::book
