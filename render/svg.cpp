#include "render/svg.hpp"

#include <fmt/format.h>

#include <cmath>
#include <iterator>

#include "render/clean.hpp"
#include "render/lettering.hpp"

namespace ohmtrail::render {
namespace {

using Out = std::back_insert_iterator<std::string>;

/// Hundredths of a point: finer than any printer.
std::string number(double value) {
  const double rounded = std::round(value * 100) / 100;
  return fmt::format("{:g}", rounded == 0 ? 0.0 : rounded);
}

std::string hex(Colour colour) {
  const auto byte = [](double part) { return static_cast<int>(std::lround(part * 255)); };
  return fmt::format("#{:02x}{:02x}{:02x}", byte(colour.red), byte(colour.green), byte(colour.blue));
}

class Writer {
 public:
  explicit Writer(std::string& out) : out_(out) {}

  void operator()(const Line& line) const {
    if (line.points.empty()) return;
    out_ += "<path d=\"M";
    for (const Point& p : line.points)
      fmt::format_to(Out(out_), "{}{} {}", &p == line.points.data() ? "" : "L", number(p.x), number(p.y));
    out_ += line.closed ? "Z\"" : "\"";
    finish(line.stroke, line.fill);
  }

  void operator()(const Circle& circle) const {
    fmt::format_to(Out(out_), "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"", number(circle.middle.x),
                   number(circle.middle.y), number(circle.radius));
    finish(circle.stroke, circle.fill);
  }

  void operator()(const Text& text) const {
    // textLength holds the room that was reserved, whatever font the viewer has.
    fmt::format_to(Out(out_),
                   "<text x=\"{}\" y=\"{}\" font-size=\"{}\"{} fill=\"{}\" textLength=\"{}\" "
                   "lengthAdjust=\"spacingAndGlyphs\">{}</text>\n",
                   number(text.bounds.x), number(text.baseline), number(text.size),
                   text.bold ? " font-weight=\"700\"" : "", hex(text.colour), number(text.bounds.width),
                   escaped(text.text));
  }

 private:
  void finish(const Stroke& stroke, const std::optional<Colour>& fill) const {
    fmt::format_to(Out(out_), " fill=\"{}\"", fill ? hex(*fill) : "none");
    if (stroke.width > 0)
      fmt::format_to(Out(out_), " stroke=\"{}\" stroke-width=\"{}\"{}", hex(stroke.colour),
                     number(stroke.width), stroke.dashed ? " stroke-dasharray=\"4 2.5\"" : "");
    out_ += "/>\n";
  }

  std::string& out_;
};

std::string_view class_name(Kind kind) {
  switch (kind) {
    case Kind::conductor:
      return "conductor";
    case Kind::post:
      return "post";
    case Kind::symbol:
      return "symbol";
    case Kind::label:
      return "label";
    case Kind::disc:
      return "hot-spot";
    case Kind::arrow:
      return "arrow";
    case Kind::furniture:
      break;
  }
  return "furniture";
}

/// Shapes that follow each other in one group and kind share a <g>.
void write_shapes(const Scene& scene, std::string& out) {
  const Shape* before = nullptr;
  for (const Shape& shape : scene.shapes) {
    if (!before || before->group != shape.group || before->kind != shape.kind) {
      if (before) out += "</g>\n";
      fmt::format_to(Out(out), "<g class=\"{}\">", class_name(shape.kind));
      if (shape.group >= 0)
        fmt::format_to(Out(out), "<title>{}</title>",
                       escaped(scene.groups[static_cast<std::size_t>(shape.group)].title));
      out += '\n';
    }
    std::visit(Writer(out), shape.what);
    before = &shape;
  }
  if (before) out += "</g>\n";
}

}  // namespace

std::string svg(const Scene& scene, bool prologue) {
  std::string out;
  if (prologue) out += "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";
  fmt::format_to(
      Out(out),
      "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {0} {1}\"{2} role=\"img\" "
      "font-family=\"{3}\" stroke-linejoin=\"round\">\n<title>{4}</title>\n"
      "<rect width=\"{0}\" height=\"{1}\" fill=\"#ffffff\"/>\n",
      number(scene.width), number(scene.height),
      prologue ? fmt::format(" width=\"{}pt\" height=\"{}pt\"", number(scene.width), number(scene.height))
               : "",
      font_family, escaped(scene.title));
  write_shapes(scene, out);
  out += "</svg>\n";
  return out;
}

}  // namespace ohmtrail::render
