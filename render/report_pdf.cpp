#include <optional>
#include <utility>

#include "render/pages.hpp"
#include "render/pdf.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {

namespace {

constexpr std::size_t most_pages = 5;
constexpr double few_lines = 0.25;  // of a page

struct Density {
  Brevity brevity;
  double letters = 1;
};

/// From roomy to dense: first smaller letters, then less of what matters least.
constexpr Density densities[] = {{{5, 40, 30, 60, 12}, 1},   {{5, 40, 30, 60, 12}, 0.95},
                                 {{4, 12, 20, 24, 6}, 0.93}, {{3, 6, 14, 14, 4}, 0.92},
                                 {{2, 3, 10, 10, 3}, 0.9},   {{1, 0, 8, 6, 2}, 0.88},
                                 {{1, 0, 6, 5, 1}, 0.86}};

Pages laid_out(const ReportInput& input, const ReportPictures& pictures, Paper paper,
               const Density& density) {
  Pages pages(paper, density.letters);
  tell_report(pages, input, pictures, density.brevity);
  return pages;
}

/// The same in slightly smaller letters where that saves a last page of a few lines.
Pages without_few_lines(Pages pages, const ReportInput& input, const ReportPictures& pictures, Paper paper,
                        const Density& density) {
  for (const double smaller : {0.97, 0.94, 0.91}) {
    if (pages.share_filled() > few_lines) break;
    Pages tighter = laid_out(input, pictures, paper, {density.brevity, density.letters * smaller});
    if (tighter.count() < pages.count()) return tighter;
  }
  return pages;
}

/// The roomiest density at which the report keeps to five pages, or the densest.
Pages laid_out(const ReportInput& input, const ReportPictures& pictures, Paper paper) {
  std::optional<Pages> densest;
  for (const Density& density : densities) {
    Pages pages = laid_out(input, pictures, paper, density);
    if (pages.count() <= most_pages)
      return without_few_lines(std::move(pages), input, pictures, paper, density);
    densest = std::move(pages);
  }
  return std::move(*densest);
}

}  // namespace

std::vector<Scene> report_pages(const ReportInput& input, Paper paper) {
  const ReportPictures pictures = draw_pictures(input, paper);
  Pages pages = laid_out(input, pictures, paper);
  tell_boards(pages, pictures);
  tell_extras(pages, input);
  return pages.finish(running_title(input));
}

std::string report_pdf(const ReportInput& input, Paper paper) {
  return pdf(report_pages(input, paper), running_title(input), std::string(text::report_title));
}

}  // namespace ohmtrail::render
