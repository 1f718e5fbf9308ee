#pragma once
#include <vector>

#include "render/paper.hpp"

/// Pictures that are too large for one page.
namespace ohmtrail::render {

/// Letters below this size are hard to read in print, pt. From memory: 5 pt is the least that is set for
/// legal small print.
inline constexpr double least_letters = 5;

/// The smallest sheet of the paper's series (A4 to A0 of ISO 216; letter to E of ANSI/ASME Y14.1) on which
/// the picture's names keep `least_letters`, turned so that the picture is largest; the largest sheet where
/// none does. `side`: margins left and right together; `above_below`: what top and bottom take.
[[nodiscard]] PaperSize sheet_for(const Scene& picture, Paper paper, double side, double above_below);

/// Whether the picture's names keep `least_letters` on one page, with the margins that a report has.
[[nodiscard]] bool is_readable_on(const Scene& picture, Paper paper);

/// The part of a picture that lies in `window`, moved to the origin: lines are cut at its edges, text and
/// circles are kept where they lie inside as a whole.
[[nodiscard]] Scene cut_out(const Scene& picture, const Box& window);

/// The picture on pages of that paper: one where its letters stay (nearly) readable, else an overview with
/// the frames of the parts and each part on a page of its own. Neighbouring parts overlap, so that every name
/// of usual length stands whole on one of them.
[[nodiscard]] std::vector<Scene> on_pages(const Scene& picture, Paper paper);

/// Several titled pictures one below the other on upright pages, each whole and none enlarged.
[[nodiscard]] std::vector<Scene> on_pages(const std::vector<Scene>& pictures, Paper paper);

}  // namespace ohmtrail::render
