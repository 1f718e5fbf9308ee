#include "render/pages.hpp"
#include "render/pdf.hpp"
#include "render/report_parts.hpp"
#include "render/text.hpp"

namespace ohmtrail::render {

namespace {

constexpr std::size_t most_pages = 5;

struct Density {
  Brevity brevity;
  double letters = 1;
};

/// From roomy to dense: first smaller letters, then less of what matters least.
constexpr Density densities[] = {{{5, 40, 30, 60}, 1},   {{5, 40, 30, 60}, 0.95}, {{4, 12, 20, 24}, 0.93},
                                 {{3, 6, 14, 14}, 0.92}, {{2, 3, 10, 10}, 0.9},   {{1, 0, 8, 6}, 0.88}};

/// The roomiest density at which the report keeps to five pages, or the densest.
Pages laid_out(const ReportInput& input, const ReportPictures& pictures, Paper paper) {
  for (const Density& density : densities) {
    Pages pages(paper, density.letters);
    tell_report(pages, input, pictures, density.brevity);
    if (pages.count() <= most_pages || &density == std::end(densities) - 1) return pages;
  }
  return Pages(paper);  // never reached
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
