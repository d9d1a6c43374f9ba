# Which fuzzers there are among the rooms that are built, and what each is made of: `fuzzers`, and for
# each `fuzzer_sources_NAME` beside fuzz_NAME.cpp.
#
# Word by word: name, rooms it needs, sources.
set(fuzzers)
macro(fuzzer name needs)
  set(missing ${needs})
  list(REMOVE_ITEM missing ${rooms})
  if(NOT missing)
    list(APPEND fuzzers ${name})
    set(fuzzer_sources_${name} trial.cpp ${ARGN})
    list(TRANSFORM fuzzer_sources_${name} PREPEND ${CMAKE_CURRENT_LIST_DIR}/)
  endif()
endmacro()

set(towns town.cpp ../support/drawn_town.cpp ../support/built_town.cpp)
set(drives town_loop.cpp ../support/honest_loop.cpp)
set(area_user use_area_rooms.cpp)
if("command" IN_LIST rooms)
  set(area_user use_area.cpp verbs.cpp)
endif()

fuzzer(hours "base;hours" checked.cpp)
fuzzer(conditional "base;hours" checked.cpp)
fuzzer(terms "base;hours")
fuzzer(ledger "base;road;wish;file")
fuzzer(trace "base;hours;road;mark;wish;read;store;pace;lanes;reach;circuit;find;place;trace" ${towns})
fuzzer(loop_file "base;road;wish;file")
fuzzer(notes "base;hours;road;mark;read;store;place;file" ${towns})
fuzzer(typed "base;road;mark;read;store;place" ${towns})
fuzzer(extract "base;hours;road;mark;read;store;reach;place" built_map.cpp)
fuzzer(import "base;hours;road;mark;read;store;reach;place" built_map.cpp broken_map.cpp)
fuzzer(area "base;hours;road;mark;read;store;pace;reach;place" ${towns} ${area_user} forged_area.cpp)
# These run commands, and so need every room.
fuzzer(wish "command" ${towns} verbs.cpp)
fuzzer(words "command" ${towns} ${drives} verbs.cpp)
fuzzer(lesson "command" ${towns} ${drives} verbs.cpp)
fuzzer(batch "command" verbs.cpp)
