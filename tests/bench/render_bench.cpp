// How long pictures and reports take. What they cost above the bare libraries shows in the same run:
// `bare_pango` lays out, and `bare_cairo` paints, the same texts and lines with nothing of ours in between.
#include <benchmark/benchmark.h>

#include <cairo-svg.h>

#include "render/diagram.hpp"
#include "render/lettering.hpp"
#include "render/picture.hpp"
#include "render/report.hpp"
#include "support/random_system.hpp"
#include "support/render_shipped.hpp"
#include "support/report_input.hpp"

namespace ohmtrail {
namespace {

struct Large {
  netlist::System system = test::random_system(1000, {300, true, true});
  solve::CaseSolution solved = *solve::solve_case(network::build(system, system.cases.front()));
};

const Large& large() {
  static const Large one;
  return one;
}

void diagram_of_300(benchmark::State& state) {
  const Large& one = large();
  for (auto _ : state) benchmark::DoNotOptimize(render::diagram(one.system, one.solved, {}));
  state.counters["runs"] = static_cast<double>(one.system.runs.size());
}

void diagram_of_300_as_svg(benchmark::State& state) {
  const Large& one = large();
  for (auto _ : state)
    benchmark::DoNotOptimize(
        render::encode(render::diagram(one.system, one.solved, {}), render::FileKind::svg));
}

/// The same labels, each measured once.
void bare_pango(benchmark::State& state) {
  const render::Scene scene = render::diagram(large().system, large().solved, {});
  std::vector<render::Text> texts;
  for (const render::Shape& shape : scene.shapes)
    if (const auto* text = std::get_if<render::Text>(&shape.what)) texts.push_back(*text);
  for (auto _ : state)
    for (const render::Text& text : texts)
      benchmark::DoNotOptimize(render::measure(text.text, text.size, text.bold));
  state.counters["texts"] = static_cast<double>(texts.size());
}

/// The same lines, stroked on a surface that goes nowhere.
void bare_cairo(benchmark::State& state) {
  const render::Scene scene = render::diagram(large().system, large().solved, {});
  for (auto _ : state) {
    cairo_surface_t* surface = cairo_svg_surface_create(nullptr, scene.width, scene.height);
    cairo_t* cr = cairo_create(surface);
    for (const render::Shape& shape : scene.shapes)
      if (const auto* line = std::get_if<render::Line>(&shape.what)) {
        for (const render::Point& p : line->points) cairo_line_to(cr, p.x, p.y);
        cairo_stroke(cr);
      }
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
  }
}

void report_as_pdf(benchmark::State& state, const char* name) {
  const render::ReportInput input = test::report_input(test::shipped(name));
  for (auto _ : state) benchmark::DoNotOptimize(render::report_pdf(input));
}

void report_as_html(benchmark::State& state, const char* name) {
  const render::ReportInput input = test::report_input(test::shipped(name));
  for (auto _ : state) benchmark::DoNotOptimize(render::report_html(input));
}

void report_of_300(benchmark::State& state) {
  const render::ReportInput input = test::report_input(large().system);
  for (auto _ : state) benchmark::DoNotOptimize(render::report_pdf(input));
}

BENCHMARK(diagram_of_300)->Unit(benchmark::kMillisecond);
BENCHMARK(diagram_of_300_as_svg)->Unit(benchmark::kMillisecond);
BENCHMARK(bare_pango)->Unit(benchmark::kMillisecond);
BENCHMARK(bare_cairo)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(report_as_pdf, yacht, "yacht-12v")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(report_as_pdf, cart, "cart-48v")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(report_as_html, yacht, "yacht-12v")->Unit(benchmark::kMillisecond);
BENCHMARK(report_of_300)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace ohmtrail
