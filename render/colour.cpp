#include "render/colour.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace ohmtrail::render {
namespace {

struct Lab {
  double l, a, b;
};

double linear(double part) {
  return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

double companded(double part) {
  part = std::clamp(part, 0.0, 1.0);
  return part <= 0.0031308 ? part * 12.92 : 1.055 * std::pow(part, 1 / 2.4) - 0.055;
}

// Matrices: Björn Ottosson, "A perceptual color space for image processing" (2020), sRGB to OKLab and back.
Lab to_lab(Colour colour) {
  const double r = linear(colour.red), g = linear(colour.green), b = linear(colour.blue);
  const double l = std::cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const double m = std::cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const double s = std::cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return {0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
          1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
          0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s};
}

Colour from_lab(Lab lab) {
  const double l = std::pow(lab.l + 0.3963377774 * lab.a + 0.2158037573 * lab.b, 3);
  const double m = std::pow(lab.l - 0.1055613458 * lab.a - 0.0638541728 * lab.b, 3);
  const double s = std::pow(lab.l - 0.0894841775 * lab.a - 1.2914855480 * lab.b, 3);
  return {companded(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
          companded(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
          companded(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s)};
}

double length(Lab p, Lab q) {
  return std::hypot(p.l - q.l, p.a - q.a, p.b - q.b);
}

// The corners of the scale in OKLab, falling in lightness: pale blue, leaf green, ochre, dark red.
constexpr std::array<Lab, 4> corners{
    {{0.78, -0.035, -0.085}, {0.68, -0.075, 0.055}, {0.57, 0.045, 0.105}, {0.36, 0.125, 0.06}}};

}  // namespace

double lightness(Colour colour) {
  return to_lab(colour).l;
}

double distance(Colour a, Colour b) {
  return length(to_lab(a), to_lab(b));
}

Colour loss_colour(double share) {
  double along = 0;
  for (std::size_t k = 1; k < corners.size(); ++k) along += length(corners[k - 1], corners[k]);
  along *= share > 0 ? std::min(share, 1.0) : 0;
  std::size_t leg = 1;
  while (leg + 1 < corners.size() && along > length(corners[leg - 1], corners[leg])) {
    along -= length(corners[leg - 1], corners[leg]);
    ++leg;
  }
  const Lab &p = corners[leg - 1], &q = corners[leg];
  const double t = along / length(p, q);
  return from_lab({p.l + t * (q.l - p.l), p.a + t * (q.a - p.a), p.b + t * (q.b - p.b)});
}

}  // namespace ohmtrail::render
