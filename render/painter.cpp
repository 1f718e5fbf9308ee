#include "render/painter.hpp"

#include "render/pango_text.hpp"

namespace ohmtrail::render {
namespace {

void use(cairo_t* cr, Colour colour) {
  cairo_set_source_rgb(cr, colour.red, colour.green, colour.blue);
}

class Painter {
 public:
  explicit Painter(cairo_t* cr) : cr_(cr) {}

  void operator()(const Line& line) const {
    if (line.points.empty()) return;
    cairo_move_to(cr_, line.points.front().x, line.points.front().y);
    for (std::size_t k = 1; k < line.points.size(); ++k)
      cairo_line_to(cr_, line.points[k].x, line.points[k].y);
    if (line.closed) cairo_close_path(cr_);
    finish(line.stroke, line.fill);
  }

  void operator()(const Circle& circle) const {
    cairo_new_sub_path(cr_);
    cairo_arc(cr_, circle.middle.x, circle.middle.y, circle.radius, 0, 6.283185307179586);
    finish(circle.stroke, circle.fill);
  }

  void operator()(const Text& text) const {
    use(cr_, text.colour);
    const Layout layout = make_layout(text.text, text.size, text.bold);
    cairo_move_to(cr_, text.bounds.x,
                  text.baseline - pango_layout_get_baseline(layout.get()) / double{PANGO_SCALE});
    pango_cairo_show_layout(cr_, layout.get());
    cairo_new_path(cr_);
  }

 private:
  void finish(const Stroke& stroke, const std::optional<Colour>& fill) const {
    if (fill) {
      use(cr_, *fill);
      cairo_fill_preserve(cr_);
    }
    if (stroke.width > 0) {
      use(cr_, stroke.colour);
      cairo_set_line_width(cr_, stroke.width);
      const double dashes[] = {4, 2.5};
      cairo_set_dash(cr_, dashes, stroke.dashed ? 2 : 0, 0);
      cairo_stroke_preserve(cr_);
    }
    cairo_new_path(cr_);
  }

  cairo_t* cr_;
};

}  // namespace

void paint(cairo_t* cr, const Scene& scene) {
  cairo_save(cr);
  cairo_set_line_join(cr, CAIRO_LINE_JOIN_ROUND);
  for (const Shape& shape : scene.shapes) std::visit(Painter(cr), shape.what);
  cairo_restore(cr);
}

}  // namespace ohmtrail::render
