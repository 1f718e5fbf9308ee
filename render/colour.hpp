#pragma once

namespace ohmtrail::render {

/// sRGB, each part from 0 to 1.
struct Colour {
  double red = 0, green = 0, blue = 0;
  friend bool operator==(Colour, Colour) = default;
};

/// The few colours of every picture; all of them keep a contrast of 4.5 : 1 or more on white where they carry
/// text.
namespace palette {
inline constexpr Colour ink{0.11, 0.13, 0.16};     ///< text and symbols
inline constexpr Colour quiet{0.36, 0.39, 0.43};   ///< second-rank text
inline constexpr Colour hair{0.80, 0.82, 0.84};    ///< rules and frames
inline constexpr Colour wash{0.955, 0.96, 0.965};  ///< table bands, backgrounds
inline constexpr Colour paper{1, 1, 1};
inline constexpr Colour idle{0.75, 0.76, 0.78};    ///< without current
inline constexpr Colour alarm{0.64, 0.13, 0.07};   ///< before further use
inline constexpr Colour sound{0.13, 0.42, 0.36};   ///< inside its limits
inline constexpr Colour accent{0.11, 0.30, 0.47};  ///< headings
}  // namespace palette

/// Perceived lightness L of OKLab (Ottosson 2020, "A perceptual color space for image processing"), 0 to 1.
[[nodiscard]] double lightness(Colour colour);

/// Distance of two colours in OKLab.
[[nodiscard]] double distance(Colour a, Colour b);

/// What a share of the allowed loss looks like: 0 is pale blue, 1 and above dark red, equal steps of the
/// share being equal steps to the eye. Lightness only falls, so that a grey print still tells the order; the
/// way from blue to red passes green and ochre without a grey that could be taken for `palette::idle`.
[[nodiscard]] Colour loss_colour(double share);

}  // namespace ohmtrail::render
