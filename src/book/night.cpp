// Method:
// 1. Every pupil that one sees gets a row of `proposal`, so that there is one to lock; nobody waits for it but workers.
// 2. In a transaction of its own, a row that isn't of this night is locked, others' passed over; the proposal is made, written,
//    and with the commit the row is let go. READ COMMITTED: a row that another worker has just done is looked at once more
//    before it is taken, where a serializable transaction would only complain (40001).
// 3. When all that is left is locked, one waits: its worker will be done, or dead.
// The record is read by a connection of its own, as it is at one moment.
#include "loopwright/book/night.hpp"

#include <chrono>
#include <thread>
#include <vector>

#include "book/connection.hpp"
#include "book/rows.hpp"
#include "book/server_link.hpp"
#include "book/server_store.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

/// A worker that hangs, or whose computer is switched off, loses its pupil after so long. Ours: a proposal takes seconds.
constexpr const char* begin_turn =
    "BEGIN ISOLATION LEVEL READ COMMITTED; SET LOCAL idle_in_transaction_session_timeout = '600s'; "
    "SET LOCAL lock_timeout = '20s'; SET LOCAL tcp_keepalives_idle = 30";

constexpr std::string_view make_rows =
    "INSERT INTO proposal (pupil, day, made, area, mark, says, wish) SELECT id, '', '', '', '', "
    "'', "
    "'' FROM pupil WHERE NOT EXISTS (SELECT 1 FROM proposal WHERE proposal.pupil = pupil.id) ON "
    "CONFLICT "
    "DO NOTHING";

constexpr std::string_view take_one =
    "SELECT pupil, code FROM proposal JOIN pupil ON pupil.id = proposal.pupil WHERE proposal.day "
    "<> "
    "?1 OR area <> ?2 ORDER BY pupil LIMIT 1 FOR UPDATE OF proposal SKIP LOCKED";

constexpr std::string_view count_left =
    "SELECT count(*) FROM proposal WHERE day <> ?1 OR area <> ?2";

constexpr std::string_view write_one =
    "UPDATE proposal SET day = ?, area = ?, mark = ?, says = ?, wish = ?, made = to_char(now() AT "
    "TIME ZONE 'UTC', 'YYYY-MM-DD HH24:MI \"UTC\"') WHERE pupil = ?";

class Worker {
 public:
  Worker(const std::string& address, const Night& night)
      : link_(address), which_{day_text(night.day), night.area} {
    link_.connect();
    link_.run(make_rows, {});
  }

  enum class Found { done_one, others_have_it, nothing_left };

  Found turn(const std::function<NightProposal(const std::string&)>& propose) {
    link_.exec(begin_turn);
    Rows row = link_.ask(take_one, which_);
    if (row.next()) {
      const Value pupil = row.at(0).value();
      const NightProposal one = propose(row.at(1).text());
      const std::vector<Value> values{which_[0], which_[1], one.mark, one.says, one.wish, pupil};
      link_.run(write_one, values);
      link_.exec("COMMIT");
      return Found::done_one;
    }
    Rows left = link_.ask(count_left, which_);
    left.next();
    const bool some = left.at(0).number() > 0;
    link_.exec("COMMIT");
    return some ? Found::others_have_it : Found::nothing_left;
  }

 private:
  ServerLink link_;
  std::vector<Value> which_;
};

}  // namespace

int work_off(const std::string& address, const Night& night,
             const std::function<NightProposal(const std::string& code)>& propose) {
  constexpr std::chrono::milliseconds pause{500};
  int done = 0;
  try {
    Worker worker(address, night);
    for (;;) {
      const Worker::Found found = worker.turn(propose);
      if (found == Worker::Found::nothing_left) return done;
      if (found == Worker::Found::done_one)
        ++done;
      else
        std::this_thread::sleep_for(pause);
    }
  } catch (const ServerError& error) {
    tell(address, error);
  }
}

std::optional<KeptProposal> kept_proposal(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) -> std::optional<KeptProposal> {
    auto row = ask(db,
                   "SELECT day, area, made, mark, says, wish FROM proposal WHERE day <> '' AND "
                   "pupil = ?",
                   row_of_pupil(db, code));
    if (!row.next()) return std::nullopt;
    return KeptProposal{{day_in(row.at(0)), row.at(1).text()},
                        row.at(2).text(),
                        {row.at(3).text(), row.at(4).text(), row.at(5).text()}};
  });
}

}  // namespace loopwright::book
