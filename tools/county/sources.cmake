target_sources(county PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/draft.cpp
  ${CMAKE_CURRENT_LIST_DIR}/draw_lines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/join.cpp
  ${CMAKE_CURRENT_LIST_DIR}/joining.cpp
  ${CMAKE_CURRENT_LIST_DIR}/line_grid.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plan_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/put_late.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_plan.cpp
  ${CMAKE_CURRENT_LIST_DIR}/resolve_turns.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spot.cpp)
