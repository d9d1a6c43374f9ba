// Method: one typeface for all sheets (Lato, Debian's fonts-lato; what fontconfig names instead when
// it isn't there), measured without hinting, so that lines break alike on every surface and machine.
// What was laid out once is kept, and is laid out at one size: a lesson measures the same words again and
// again, tries them at several sizes and then draws them, and laying them out is most of the work.
#include "draw/type.hpp"

#include <unordered_map>

#include "loopwright/base/error.hpp"
#include "loopwright/base/memory.hpp"

namespace loopwright::draw {
namespace {

constexpr const char* typeface = "Lato";
constexpr double laid_out_pt = 12;
// What Fontconfig and Pango take when they begin (measured: 90 MB of address space, most of it the stacks of
// Pango's seven threads), and what one more layout may take: one in a look of its own begins threads again, of which
// each stack is 8 MB.
constexpr std::size_t begin_bytes = 128 << 20, layout_bytes = 32 << 20;

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
  share_scarce_memory();
  need_memory(begin_bytes);
  need_thread();
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
  double width = 0;  ///< at laid_out_pt
  bool bold = false;
  Align align = Align::left;
  friend bool operator==(const Words&, const Words&) = default;
};
struct WordsHash {
  std::size_t operator()(const Words& words) const {
    // Of one text there are few looks.
    return std::hash<std::string>{}(words.text);
  }
};

Layout laid_out(PangoContext* context, const Words& words) {
  need_memory(layout_bytes);
  Layout layout(pango_layout_new(context));
  PangoLayout* const made = layout.get();
  const std::unique_ptr<PangoFontDescription, FontCloser> font(pango_font_description_new());
  pango_font_description_set_family_static(font.get(), typeface);
  pango_font_description_set_weight(font.get(),
                                    words.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_size(font.get(), static_cast<gint>(laid_out_pt * PANGO_SCALE));
  pango_layout_set_font_description(made, font.get());
  pango_layout_set_alignment(made, alignment(words.align));
  if (words.width > 0) {
    pango_layout_set_width(made, static_cast<int>(words.width / mm_per_point * PANGO_SCALE));
    pango_layout_set_wrap(made, PANGO_WRAP_WORD_CHAR);
  }
  pango_layout_set_text(made, words.text.c_str(), static_cast<int>(words.text.size()));
  return layout;
}

}  // namespace

LaidOut layout_of(const Label& label) {
  // More than a lesson has; a program that draws all day starts afresh then.
  constexpr std::size_t most_kept = 10'000;
  thread_local const Context context = measuring_context();
  thread_local std::unordered_map<Words, Layout, WordsHash> kept;
  if (kept.size() >= most_kept) kept.clear();
  const double scale = label.type.points / laid_out_pt;
  const Words words{label.text, label.width / scale, label.type.bold, label.type.align};
  Layout& layout = kept[words];
  if (!layout) layout = laid_out(context.get(), words);
  return {Layout(PANGO_LAYOUT(g_object_ref(layout.get()))), scale};
}

Extent extent_of(const Label& label) {
  const auto [layout, scale] = layout_of(label);
  int width = 0, height = 0;
  pango_layout_get_size(layout.get(), &width, &height);
  const double unit = scale * mm_per_point / PANGO_SCALE;
  return {width * unit, height * unit};
}

}  // namespace loopwright::draw
