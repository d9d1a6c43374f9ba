target_sources(loopwright_test PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/dots.cpp
  ${CMAKE_CURRENT_LIST_DIR}/driven.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_briefing_sketch.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_overview.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_picture.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_real_junctions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_row_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_strip.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_symbols.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_worth_sketching.cpp)
# Pictures are read back by Cairo.
list(TRANSFORM PANGO_INCLUDE_DIRS PREPEND -isystem OUTPUT_VARIABLE dots_options)
set_source_files_properties(${CMAKE_CURRENT_LIST_DIR}/dots.cpp PROPERTIES COMPILE_OPTIONS "${dots_options}")
set_property(SOURCE ${CMAKE_CURRENT_LIST_DIR}/test_overview.cpp ${CMAKE_CURRENT_LIST_DIR}/test_real_junctions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/test_strip.cpp
  APPEND PROPERTY COMPILE_DEFINITIONS LOOPWRIGHT_ROOT="${PROJECT_SOURCE_DIR}")
add_test(NAME draw-real COMMAND loopwright_test "[draw][real]")
set_tests_properties(draw-real PROPERTIES LABELS real)
