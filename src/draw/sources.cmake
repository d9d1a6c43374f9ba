set(draw_sources
  ${CMAKE_CURRENT_LIST_DIR}/ink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/picture.cpp
  ${CMAKE_CURRENT_LIST_DIR}/render.cpp
  ${CMAKE_CURRENT_LIST_DIR}/type.cpp)
target_sources(loopwright_lib PRIVATE ${draw_sources})
# The headers of Cairo and Pango are for this room alone.
list(TRANSFORM PANGO_INCLUDE_DIRS PREPEND -isystem OUTPUT_VARIABLE draw_options)
set_source_files_properties(${draw_sources} PROPERTIES COMPILE_OPTIONS "${draw_options}")
