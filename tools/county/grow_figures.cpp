// How the streets of each style run. Common practice, no source: set by eye, then by comparing the
// whole county with a real town of its size (compare-maps).
#include "county/grow_fill.hpp"

namespace loopwright::county {
namespace {

const Figures terraces_figures{.along_gap_m = 66,
                               .across_gap_m = 150,
                               .follow = 0.7,
                               .wobble = 0.03,
                               .bow = 0.01,
                               .sway = 0.12,
                               .closed = 0.1,
                               .cross = 0.5,
                               .entry_m = 95,
                               .closed_m = 80,
                               .close_m = 18,
                               .loose = 0.2,
                               .hole_m = 62};

const Figures crescents_figures{.along_gap_m = 76,
                                .across_gap_m = 105,
                                .follow = 0.12,
                                .wobble = 0.08,
                                .bow = 0.17,
                                .sway = 1.0,
                                .closed = 0.5,
                                .cross = 0.1,
                                .entry_m = 230,
                                .longest_m = 700,
                                .closed_m = 110,
                                .loose = 0.6,
                                .hole_m = 58};

const Figures avenues_figures{.along_gap_m = 84,
                              .across_gap_m = 175,
                              .follow = 0.4,
                              .wobble = 0.07,
                              .bow = 0.04,
                              .sway = 0.5,
                              .closed = 0.25,
                              .cross = 0.4,
                              .entry_m = 170,
                              .loose = 0.35,
                              .hole_m = 62};

const Figures works_figures{.along_gap_m = 130,
                            .across_gap_m = 210,
                            .follow = 0.5,
                            .wobble = 0.03,
                            .bow = 0.05,
                            .sway = 0.2,
                            .closed = 0.4,
                            .cross = 0.15,
                            .entry_m = 330,
                            .closed_m = 170,
                            .close_m = 32,
                            .loose = 0.8,
                            .hole_m = 120};

const Figures centre_figures{.along_gap_m = 58,
                             .across_gap_m = 80,
                             .follow = 0.35,
                             .wobble = 0.14,
                             .bow = 0.05,
                             .sway = 0.5,
                             .closed = 0.15,
                             .cross = 0.4,
                             .entry_m = 75,
                             .longest_m = 300,
                             .closed_m = 60,
                             .close_m = 16,
                             .loose = 0.25,
                             .hole_m = 45};

}  // namespace

Figures figures_of(Style style) {
  switch (style) {
    case Style::terraces:
      return terraces_figures;
    case Style::crescents:
      return crescents_figures;
    case Style::avenues:
      return avenues_figures;
    case Style::works:
      return works_figures;
    case Style::centre:
      return centre_figures;
  }
  return {};
}

}  // namespace loopwright::county
