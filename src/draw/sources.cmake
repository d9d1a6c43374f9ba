set(draw_sources
  ${CMAKE_CURRENT_LIST_DIR}/briefing_sketch.cpp
  ${CMAKE_CURRENT_LIST_DIR}/carriageway.cpp
  ${CMAKE_CURRENT_LIST_DIR}/frame.cpp
  ${CMAKE_CURRENT_LIST_DIR}/hatching.cpp
  ${CMAKE_CURRENT_LIST_DIR}/ink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/kerb_shapes.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane_choice.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lane_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/lines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/picture.cpp
  ${CMAKE_CURRENT_LIST_DIR}/render.cpp
  ${CMAKE_CURRENT_LIST_DIR}/ring_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/room_for.cpp
  ${CMAKE_CURRENT_LIST_DIR}/row_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scene.cpp
  ${CMAKE_CURRENT_LIST_DIR}/scene_arms.cpp
  ${CMAKE_CURRENT_LIST_DIR}/shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_arm_words.cpp
  ${CMAKE_CURRENT_LIST_DIR}/sketch_boxes.cpp
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
# The maps: plain pictures, without those headers.
target_sources(loopwright_lib PRIVATE
  ${CMAKE_CURRENT_LIST_DIR}/drive_shape.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_foot.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_frame.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_lines.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_marks.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_parts.cpp
  ${CMAKE_CURRENT_LIST_DIR}/map_way.cpp
  ${CMAKE_CURRENT_LIST_DIR}/numbers.cpp
  ${CMAKE_CURRENT_LIST_DIR}/overview.cpp
  ${CMAKE_CURRENT_LIST_DIR}/overview_sheet.cpp
  ${CMAKE_CURRENT_LIST_DIR}/rings.cpp
  ${CMAKE_CURRENT_LIST_DIR}/street_names.cpp
  ${CMAKE_CURRENT_LIST_DIR}/strip.cpp
  ${CMAKE_CURRENT_LIST_DIR}/strip_columns.cpp
  ${CMAKE_CURRENT_LIST_DIR}/strip_ink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/strip_items.cpp
  ${CMAKE_CURRENT_LIST_DIR}/taken.cpp
  ${CMAKE_CURRENT_LIST_DIR}/town_roads.cpp
  ${CMAKE_CURRENT_LIST_DIR}/way_ink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/words_near.cpp)
