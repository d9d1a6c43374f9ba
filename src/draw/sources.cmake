set(draw_sources
  ${CMAKE_CURRENT_LIST_DIR}/briefing_sketch.cpp
  ${CMAKE_CURRENT_LIST_DIR}/carriageway.cpp
  ${CMAKE_CURRENT_LIST_DIR}/frame.cpp
  ${CMAKE_CURRENT_LIST_DIR}/ink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/picture.cpp
  ${CMAKE_CURRENT_LIST_DIR}/render.cpp
  ${CMAKE_CURRENT_LIST_DIR}/room_for.cpp
  ${CMAKE_CURRENT_LIST_DIR}/row_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scene.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_arm_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_crosslines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_looks.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_scale.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/spread.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbol_pen.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbols.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbols_crossings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbols_junctions.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbols_manoeuvres.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symbols_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/type.cpp
  ${CMAKE_CURRENT_LIST_DIR}/way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/worth_sketching.cpp)
target_sources(loopwright_lib PRIVATE ${draw_sources})
# The headers of Cairo and Pango are for this room alone.
list(TRANSFORM PANGO_INCLUDE_DIRS PREPEND -isystem OUTPUT_VARIABLE draw_options)
set_source_files_properties(${draw_sources} PROPERTIES COMPILE_OPTIONS "${draw_options}")
