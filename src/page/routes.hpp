// What the page answers to each request that passed the gate.
//
//   GET  /                          the page; and its files
//   GET  /area                      what the area is, and what there is to practise
//   GET  /find?text=                places by what people call them (place/place.hpp)
//   GET  /tiles/ZOOM/COLUMN/ROW     a vector tile (noted_tiles.hpp)
//   GET  /look?at=LAT,LON           what the map says there, in words; start=: the moment; and the junction that is meant, if one is
//   GET  /symbols/KIND              the symbol of a kind of practice
//   …    /notes …                   the instructor's notes: see notes.hpp
//   GET  /told/QUESTION             what is near, what to check on the ground, …: see questions.hpp
//   …    /pupils …                  see pupils.hpp
//   …    /centres …                 test centres that mock tests keep off: see centres.hpp
//   POST /recorded …                a recorded drive: see recorded.hpp
//   …    /day                       plans a day, tells it as the book has it, prints it (days.hpp)
//   POST /loops                     looks for loops: {"words": [["home", "…"], …], "effort": "quick"}; a job
//   GET  /jobs/JOB                  how far it is: {"stage", "code", "said", "warned", "trouble"}
//   DELETE /jobs/JOB                breaks it off
//   GET  /jobs/JOB/loops            the loop file
//   GET  /jobs/JOB/drive?loop=      a loop as GeoJSON
//   GET  /jobs/JOB/sketches, sketch its junctions: see sketches.hpp
//   GET  /jobs/JOB/card?loop=       … as a card: form=pdf, html, gpx, ics, text; pupil=: a code
//   POST /jobs/JOB/keep             … as a pupil's lesson (keeping.hpp)
//   GET  /jobs/JOB/day, wish, paper what else a job wrote (job_files.hpp)
//
// Rules: any thread may call. What goes wrong is {"trouble": "one line"}: 400 the request, 404 no such thing, 405 not
// this way, 409 not yet, 422 the words, 503 too much at once.
#pragma once

#include <functional>
#include <mutex>

#include "loopwright/base/instant.hpp"
#include "loopwright/page/page.hpp"
#include "loopwright/place/place.hpp"
#include "page/centres.hpp"
#include "page/days.hpp"
#include "page/jobs.hpp"
#include "page/keeping.hpp"
#include "page/listener.hpp"
#include "page/noted_tiles.hpp"
#include "page/notes.hpp"
#include "page/pupils.hpp"
#include "page/questions.hpp"
#include "page/recorded.hpp"
#include "page/request.hpp"

namespace loopwright::page {

class Routes {
 public:
  /// Rules: both outlive this.
  Routes(const OpenArea& area, const Desk& desk);
  Reply answer(const Request& request);
  /// Of a request whose head was let in.
  Taken intake(const Request& head) { return recorded_.intake(head); }

 private:
  Reply area() const;
  Reply find(const Address& address);
  Reply look(const Address& address);
  Reply look_for_loops(const Request& request);
  Reply job(const Request& request, const Address& address);
  Reply loops_of(const JobState& state) const;
  Reply written(const JobState& state, const Address& address, const std::string& form);
  Reply get(const Address& address);

  const OpenArea& area_;
  const road::Roads& roads_;  // the map's own
  const Desk& desk_;
  NotedTiles tiles_;
  place::Finder finder_;
  std::mutex finding_;  // a Finder is for one thread at a time
  Jobs jobs_;
  Pupils pupils_;
  Centres centres_;
  Recorded recorded_;
  Notes notes_;
  Questions questions_;
  Keeping keeping_;
  Days days_;
};

}  // namespace loopwright::page
