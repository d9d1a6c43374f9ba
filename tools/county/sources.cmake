target_sources(county PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/draw_lines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/joining.cpp
  ${CMAKE_CURRENT_LIST_DIR}/line_grid.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plan_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/read_plan.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spot.cpp)
