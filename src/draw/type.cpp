// Method: one typeface for all sheets (Lato, Debian's fonts-lato; what fontconfig names instead when
// it isn't there), measured without hinting, so that lines break alike on every surface and machine.
// What was laid out once is kept: a lesson measures the same words again and again and then draws them,
// and laying them out is most of the work.
#include "draw/type.hpp"

#include <unordered_map>

#include "loopwright/base/error.hpp"

namespace loopwright::draw {
namespace {

constexpr const char* typeface = "Lato";

struct ObjectCloser {
  void operator()(gpointer object) const { g_object_unref(object); }
};
using Context = std::unique_ptr<PangoContext, ObjectCloser>;
struct FontCloser {
  void operator()(PangoFontDescription* font) const { pango_font_description_free(font); }
};
struct OptionsCloser {
  void operator()(cairo_font_options_t* options) const { cairo_font_options_destroy(options); }
};

void steady(PangoContext* context) {
  const std::unique_ptr<cairo_font_options_t, OptionsCloser> options(cairo_font_options_create());
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options(context, options.get());
  pango_cairo_context_set_resolution(context, points_per_inch);
  pango_context_set_round_glyph_positions(context, FALSE);
}

/// For words that are measured, not drawn. Throws InputError.
Context measuring_context() {
  PangoFontMap* fonts = pango_cairo_font_map_get_default();
  PangoFontFamily** families = nullptr;
  int count = 0;
  pango_font_map_list_families(fonts, &families, &count);
  g_free(families);
  if (count == 0) throw InputError("no typeface on this machine; install the package fonts-lato");
  Context context(pango_font_map_create_context(fonts));
  steady(context.get());
  return context;
}

PangoAlignment alignment(Align align) {
  if (align == Align::middle) return PANGO_ALIGN_CENTER;
  return align == Align::right ? PANGO_ALIGN_RIGHT : PANGO_ALIGN_LEFT;
}

/// What the layout of a label hangs on.
struct Words {
  std::string text;
  double points = 0, width = 0;
  bool bold = false;
  Align align = Align::left;
  friend bool operator==(const Words&, const Words&) = default;
};
struct WordsHash {
  std::size_t operator()(const Words& words) const {
    // Of one text there are few sizes.
    return std::hash<std::string>{}(words.text);
  }
};

Layout with_words(PangoLayout* made, const Label& label) {
  Layout layout(made);
  const std::unique_ptr<PangoFontDescription, FontCloser> font(pango_font_description_new());
  pango_font_description_set_family_static(font.get(), typeface);
  pango_font_description_set_weight(font.get(),
                                    label.type.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_size(font.get(), static_cast<gint>(label.type.points * PANGO_SCALE));
  pango_layout_set_font_description(made, font.get());
  pango_layout_set_alignment(made, alignment(label.type.align));
  if (label.width > 0) {
    pango_layout_set_width(made, static_cast<int>(label.width / mm_per_point * PANGO_SCALE));
    pango_layout_set_wrap(made, PANGO_WRAP_WORD_CHAR);
  }
  pango_layout_set_text(made, label.text.c_str(), static_cast<int>(label.text.size()));
  return layout;
}

}  // namespace

Layout layout_of(const Label& label) {
  // More than a lesson has; a program that draws all day starts afresh then.
  constexpr std::size_t most_kept = 10'000;
  thread_local const Context context = measuring_context();
  thread_local std::unordered_map<Words, Layout, WordsHash> kept;
  if (kept.size() >= most_kept) kept.clear();
  const Type& type = label.type;
  Layout& layout = kept[{label.text, type.points, label.width, type.bold, type.align}];
  if (!layout) layout = with_words(pango_layout_new(context.get()), label);
  return Layout(PANGO_LAYOUT(g_object_ref(layout.get())));
}

Extent extent_of(const Label& label) {
  const Layout layout = layout_of(label);
  int width = 0, height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  return {width * mm_per_point / PANGO_SCALE, height * mm_per_point / PANGO_SCALE};
}

}  // namespace loopwright::draw
